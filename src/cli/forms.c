/* forms.c - the form that a command line asks for: by --as, else by the ending of the file to write. */
#include "cli/cli.h"

#include "base/text.h"

#include <string.h>

typedef struct gtl_form_name {
    const char *name;
    gtl_form form;
} gtl_form_name;

static const gtl_form_name words[] = {
    {"text", GTL_TEXT}, {"json", GTL_JSON}, {"csv", GTL_CSV}, {"svg", GTL_SVG}, {"html", GTL_HTML}};

static const gtl_form_name endings[] = {{".txt", GTL_TEXT}, {".json", GTL_JSON}, {".csv", GTL_CSV},
                                        {".svg", GTL_SVG},  {".html", GTL_HTML}, {".htm", GTL_HTML}};

/* Capitals do not count. */
static bool find(const gtl_form_name *names, size_t count, const char *name, gtl_form *form)
{
    for (size_t i = 0; i < count; i++) {
        if (gtl_text_compare(names[i].name, name) != 0) continue;
        *form = names[i].form;
        return true;
    }
    return false;
}

/* How a file's name ends, "" where it says nothing: a name may begin with a dot, and need not have another,
 * as /dev/null has none. */
static const char *ending_of(const char *path)
{
    const char *slash = strrchr(path, '/');
    const char *name = slash ? slash + 1 : path;
    const char *dot = strrchr(name, '.');
    return dot && dot > name && dot[1] ? dot : "";
}

bool gtl_choose_form(const gtl_arguments *read, gtl_form *form)
{
    *form = GTL_TEXT;
    if (read->form) {
        if (find(words, sizeof words / sizeof *words, read->form, form)) return true;
        gtl_say("there is no form `%s`; write --as text, json, csv, svg or html", read->form);
        return false;
    }
    /* An ending that tells no form is the user's own affair: text, as without one. */
    if (read->output) find(endings, sizeof endings / sizeof *endings, ending_of(read->output), form);
    return true;
}

/* cmd_keys.c - `gantline keys`: all that a rig file may hold, from the table that the reader itself uses. */
#include "cli/cli.h"

#include "report/document.h"
#include "report/write.h"

#include <gantline/read.h>
#include <stdlib.h>

static const char help[] = "usage: gantline keys\n"
                           "\n"
                           "Lists every kind of section that a rig file may hold, and its keys.\n"
                           "\n"
                           "  -h, --help  print this\n"
                           "\n"
                           "Exit status: 0; 2 if the command line is wrong or nothing could be written.\n";

static void compose_kind(gtl_document *document, gtl_kind kind)
{
    const char *name = gtl_kind_name(kind);
    gtl_document_heading(document, kind == GTL_SHEET ? "[%s]" : "[%s NAME]", name);
    gtl_document_paragraph(document, "%s", gtl_kind_meaning(kind));
    const gtl_key *key;
    for (size_t i = 0; (key = gtl_key_at(i)); i++)
        if (key->kind == kind)
            gtl_document_pair(document, key->key, "%s. Write %s%s%s%s", key->meaning, key->form,
                              key->unit[0] ? " [" : "", key->unit, key->unit[0] ? "]" : "");
}

int gtl_cmd_keys(int count, char **arguments)
{
    gtl_arguments read;
    if (!gtl_read_arguments(count, arguments, "h", false, &read)) return gtl_say_try_help("keys");
    if (read.help) return gtl_output_write(NULL, help, NULL) ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
    if (read.operand_count > 0) {
        gtl_say("`keys` takes no file");
        return gtl_say_try_help("keys");
    }
    gtl_document document = {0};
    for (int kind = 0; kind < GTL_KIND_COUNT; kind++) compose_kind(&document, (gtl_kind)kind);
    char *text = gtl_write_text(&document);
    gtl_document_end(&document);
    if (!text) return gtl_say("out of memory");
    bool written = gtl_output_write(NULL, text, NULL);
    free(text);
    return written ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
}

/* screen.c - the strict look at the text of a rig file, or of a table. */
#include "read/screen.h"

#include "base/grow.h"
#include "base/word.h"

#include <stdlib.h>
#include <string.h>

/* The longest kind and key; with GTL_NAME_LIMIT it keeps a look-up inside iniparser's own buffers. */
#define WORD_LIMIT 64

#define COMMENT_HINT "put a blank before it if it begins a comment, or the whole value in double quotes"

/* The screening of one line after the other. Its functions return false after a fault: the line is then left
 * out. */
typedef struct screening {
    gtl_screened *out;
    gtl_fault_list *faults;
    int line;
    const char *kind; /* of the section that the line stands in; NULL before the first */
    const char *name;
    bool skipping; /* its header could not be read: its keys belong nowhere */
    const gtl_sort_of_file *sort;
} screening;

const gtl_sort_of_file gtl_rig_file = {"rig file", "[block head], or [rig]", "[rig] or [block head]"};
const gtl_sort_of_file gtl_table_file = {"table", "[gear shackle-5t]", "[gear shackle-5t]"};

static bool refuse(screening *s, const char *text)
{
    gtl_faults_add(s->faults, s->line, "%s", text);
    return false;
}

static bool refuse_word(screening *s, gtl_word word, const char *problem)
{
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_faults_add(s->faults, s->line, "`%s` %s", gtl_excerpt(word, excerpt), problem);
    return false;
}

static bool add_entry(screening *s, const char *key, const char *value)
{
    gtl_screened *out = s->out;
    gtl_entry *entries = gtl_grow(out->entries, out->count, &out->capacity, sizeof *entries);
    if (!entries) {
        s->faults->out_of_memory = true;
        return false;
    }
    out->entries = entries;
    entries[out->count++] = (gtl_entry){s->kind, s->name, key, value, s->line};
    return true;
}

/* Make a string of a word, in the copied text: the byte after it is understood and not needed again. */
static const char *terminate(screening *s, gtl_word word)
{
    s->out->bytes[word.start + word.length - s->out->bytes] = '\0';
    return word.start;
}

/* The text without its comment, trimmed. A mark without a blank before it is a comment to iniparser, and text
 * to its writer: a fault. */
static bool cut_comment(screening *s, gtl_word *text)
{
    for (size_t i = 0; i < text->length; i++) {
        if (text->start[i] != '#' && text->start[i] != ';') continue;
        if (i > 0 && !gtl_is_blank(text->start[i - 1])) {
            return refuse_word(s, (gtl_word){text->start + i, 1}, "inside a line: " COMMENT_HINT);
        }
        text->length = i;
    }
    *text = gtl_word_trim(*text);
    return true;
}

/* The words between the brackets: a kind, and a name or none. */
static bool check_header(screening *s, gtl_word kind, gtl_word name)
{
    char excerpt[GTL_EXCERPT_SIZE];
    if (kind.length == 0) {
        gtl_faults_add(s->faults, s->line, "an empty header; write [KIND NAME], such as %s",
                       s->sort->headers);
        return false;
    }
    if (!gtl_is_name(kind) || kind.length > WORD_LIMIT) {
        gtl_faults_add(s->faults, s->line, "`%s` is no kind; write [KIND NAME], such as %s",
                       gtl_excerpt(kind, excerpt), s->sort->headers);
        return false;
    }
    if (name.length > 0 && !gtl_is_name(name)) {
        return refuse_word(s, name,
                           "cannot be a name: a name is letters, digits, `-` and `_`, without blanks");
    }
    if (name.length > GTL_NAME_LIMIT)
        return refuse_word(s, name, "is too long a name; 32 letters are the most");
    return true;
}

/* [KIND NAME] or [rig]; `text` begins with the bracket. */
static bool read_header(screening *s, gtl_word text)
{
    if (!cut_comment(s, &text)) return false;
    if (text.length < 2 || text.start[text.length - 1] != ']') {
        return refuse(s, "a header ends with `]`, and only a comment may follow; write [KIND NAME]");
    }
    gtl_word inside = gtl_word_trim((gtl_word){text.start + 1, text.length - 2});
    gtl_word kind = {inside.start, 0};
    while (kind.length < inside.length && !gtl_is_blank(inside.start[kind.length])) kind.length++;
    gtl_word name = gtl_word_trim((gtl_word){inside.start + kind.length, inside.length - kind.length});
    if (!check_header(s, kind, name)) return false;

    gtl_text_add(&s->out->clean, "[%.*s%s%.*s]\n", GTL_SPELL(kind), name.length ? " " : "", GTL_SPELL(name));
    s->kind = terminate(s, kind);
    s->name = name.length > 0 ? terminate(s, name) : "";
    return add_entry(s, NULL, NULL);
}

/* A header that cannot be read takes its whole section with it. */
static bool screen_header(screening *s, gtl_word text)
{
    s->skipping = !read_header(s, text);
    if (s->skipping) s->out->headless = true;
    return !s->skipping;
}

/* A value in quotes keeps what is in them; nothing but a comment may follow. */
static bool screen_quoted(screening *s, gtl_word *value)
{
    const char *close = memchr(value->start + 1, value->start[0], value->length - 1);
    if (!close) return refuse(s, "a quoted value without its closing quote; put the same quote at its end");
    size_t length = (size_t)(close - value->start) + 1;
    gtl_word rest = {close + 1, value->length - length};
    bool apart = rest.length > 0 && gtl_is_blank(rest.start[0]);
    rest = gtl_word_trim(rest);
    bool comment = apart && rest.length > 0 && (rest.start[0] == '#' || rest.start[0] == ';');
    if (rest.length > 0 && !comment) {
        return refuse_word(s, rest, "after the closing quote; only a blank and a comment may follow it");
    }
    value->length = length;
    return true;
}

static bool screen_value(screening *s, gtl_word *value)
{
    *value = gtl_word_trim(*value);
    if (value->length > 0 && (value->start[0] == '"' || value->start[0] == '\''))
        return screen_quoted(s, value);
    if (!cut_comment(s, value)) return false;
    if (value->length > 0 && value->start[value->length - 1] == '\\') {
        return refuse(s, "a line cannot go on in the next one; write it in one line, without the `\\`");
    }
    return true;
}

/* Whether a word can be a key at all: which key of which kind it is is asked later. */
static bool is_key(gtl_word word)
{
    if (word.length > WORD_LIMIT) return false;
    for (size_t i = 0; i < word.length; i++) {
        if (!gtl_is_name_byte(word.start[i]) && word.start[i] != ' ') return false;
    }
    return true;
}

/* KEY = VALUE. */
static bool screen_pair(screening *s, gtl_word text)
{
    if (!s->kind && !s->skipping) {
        gtl_faults_add(s->faults, s->line, "text before the first section; begin with a header such as %s",
                       s->sort->first);
        return false;
    }
    const char *equals = memchr(text.start, '=', text.length);
    if (!equals) {
        char excerpt[GTL_EXCERPT_SIZE];
        gtl_faults_add(s->faults, s->line,
                       "`%s` is no line of a %s; write KEY = VALUE, [KIND NAME] or a # comment",
                       gtl_excerpt(text, excerpt), s->sort->name);
        return false;
    }
    gtl_word key = gtl_word_trim((gtl_word){text.start, (size_t)(equals - text.start)});
    if (key.length == 0) return refuse(s, "no key before the `=`; write KEY = VALUE, such as mass = 60 kg");
    if (!is_key(key)) return refuse_word(s, key, "before the `=` is no key; a key is letters and blanks");
    gtl_word value = {equals + 1, text.length - (size_t)(equals - text.start) - 1};
    if (!screen_value(s, &value)) return false;
    if (s->skipping) return true;

    gtl_text_add(&s->out->clean, "%.*s = %.*s\n", GTL_SPELL(key), GTL_SPELL(value));
    return add_entry(s, terminate(s, key), "");
}

static bool is_control(char byte)
{
    return ((unsigned char)byte < ' ' && byte != '\t') || byte == 0x7F;
}

static bool screen_line(screening *s, gtl_word text)
{
    if (text.length > GTL_LINE_LIMIT) return refuse(s, "a line over 1,000 bytes; write a shorter one");
    text = gtl_word_trim(text);
    if (text.length == 0 || text.start[0] == '#' || text.start[0] == ';') return true;
    for (size_t i = 0; i < text.length; i++) {
        if (is_control(text.start[i]))
            return refuse(s, "a control character in the line; type the line anew");
    }
    return text.start[0] == '[' ? screen_header(s, text) : screen_pair(s, text);
}

/* Line by line; both ways to end one, LF and CRLF, are understood. */
static void screen_lines(screening *s, gtl_word rest)
{
    while (rest.length > 0) {
        const char *end = memchr(rest.start, '\n', rest.length);
        size_t length = end ? (size_t)(end - rest.start) : rest.length;
        gtl_word line = {rest.start, length};
        if (end && length > 0 && line.start[length - 1] == '\r') line.length--;
        s->line++;
        if (!screen_line(s, line)) s->out->rough = true;
        size_t used = length + (end ? 1 : 0);
        rest = (gtl_word){rest.start + used, rest.length - used};
    }
}

static int line_of(gtl_word text, const char *place)
{
    int line = 1;
    for (const char *at = text.start; at < place; at++) line += *at == '\n';
    return line;
}

/* The first carriage return that does not end a line together with a line feed. */
static const char *lone_return(gtl_word text)
{
    for (size_t i = 0; i < text.length; i++) {
        if (text.start[i] == '\r' && (i + 1 == text.length || text.start[i + 1] != '\n'))
            return text.start + i;
    }
    return NULL;
}

static bool begins(gtl_word text, const char *bytes, size_t length)
{
    return text.length >= length && memcmp(text.start, bytes, length) == 0;
}

/* What spoils the text as a whole, so that looking at its lines would only tell nonsense. */
static bool check_whole(gtl_word text, const gtl_sort_of_file *sort, gtl_fault_list *faults)
{
    const char *zero = text.length > 0 ? memchr(text.start, '\0', text.length) : NULL;
    const char *lone = lone_return(text);
    bool wide = zero && zero - text.start < 2; /* UTF-16 without a mark: every other byte is zero */
    if (text.length > GTL_FILE_LIMIT) {
        gtl_faults_add(faults, 0, "more than 256 KiB; a %s is shorter: split it, or check that it is one",
                       sort->name);
    } else if (wide || begins(text, "\xFF\xFE", 2) || begins(text, "\xFE\xFF", 2)) {
        gtl_faults_add(faults, 0, "this is UTF-16 text; save the file as UTF-8");
    } else if (zero) {
        gtl_faults_add(faults, line_of(text, zero),
                       "a zero byte in the line; save the file as plain UTF-8 text");
    } else if (lone) {
        gtl_faults_add(faults, line_of(text, lone),
                       "a carriage return alone in the line; save the file with LF or CRLF line ends");
    } else {
        return true;
    }
    return false;
}

bool gtl_screen(const char *text, size_t size, const gtl_sort_of_file *sort, gtl_screened *screened,
                gtl_fault_list *faults)
{
    static const char mark[] = "\xEF\xBB\xBF";
    *screened = (gtl_screened){0};
    gtl_word all = {text, size};
    if (!check_whole(all, sort, faults)) return false;
    size_t skipped = begins(all, mark, 3) ? 3 : 0;
    screened->bytes = gtl_text_copy(text + skipped, size - skipped);
    if (!screened->bytes) {
        faults->out_of_memory = true;
        return false;
    }
    screening s = {.out = screened, .faults = faults, .sort = sort};
    screen_lines(&s, (gtl_word){screened->bytes, size - skipped});
    if (screened->clean.failed) faults->out_of_memory = true;
    return !faults->out_of_memory;
}

void gtl_screened_end(gtl_screened *screened)
{
    free(screened->clean.bytes);
    free(screened->entries);
    free(screened->bytes);
    *screened = (gtl_screened){0};
}

/* table_unknown.c - what to say of a kind or a key that hardware tables do not have. */
#include "read/table_unknown.h"

#include "base/suggest.h"
#include "base/text.h"
#include "read/keys.h"
#include "read/table_keys.h"
#include "rig/kind.h"

#include <stdlib.h>

/* The fault of a finished message, which is given back. */
static void tell(gtl_fault_list *faults, int line, gtl_text *message)
{
    char *words = gtl_text_take(message);
    if (words) {
        gtl_faults_add(faults, line, "%s", words);
    } else {
        faults->out_of_memory = true;
    }
    free(words);
}

static void add_kinds(gtl_text *message)
{
    for (int i = 0; i < GTL_HW_KIND_COUNT; i++)
        gtl_text_add(message, "%s %s", i == 0 ? "" : ",", gtl_hardware_kind_name((gtl_hardware_kind)i));
}

static int nearest_kind(gtl_word word)
{
    gtl_suggestion near = {.wanted = word, .best = -1};
    for (int i = 0; i < GTL_HW_KIND_COUNT; i++)
        gtl_suggest_try(&near, gtl_word_of(gtl_hardware_kind_name((gtl_hardware_kind)i)), i);
    return near.best;
}

void gtl_table_refuse_kind(const gtl_entry *header, gtl_fault_list *faults)
{
    gtl_word word = gtl_word_of(header->kind);
    int near = nearest_kind(word);
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_text message = {0};
    gtl_excerpt(word, excerpt);
    if (gtl_kind_find(word) < GTL_KIND_COUNT) {
        gtl_text_add(
            &message,
            "`%s` is a kind of rig files, and this is a hardware table; describe a piece of gear under "
            "[gear NAME]. A table's kinds are",
            excerpt);
        add_kinds(&message);
    } else if (near >= 0) {
        gtl_text_add(&message, "unknown kind `%s`; did you mean `%s`?", excerpt,
                     gtl_hardware_kind_name((gtl_hardware_kind)near));
    } else {
        gtl_text_add(&message, "unknown kind `%s`; a table's kinds are", excerpt);
        add_kinds(&message);
    }
    tell(faults, header->line, &message);
}

static bool takes(const gtl_table_key *key, gtl_hardware_kind kind)
{
    return key->kind == kind || key->kind == GTL_HW_KIND_COUNT;
}

static const char *nearest_key(gtl_word word, gtl_hardware_kind kind)
{
    gtl_suggestion near = {.wanted = word, .best = -1};
    const gtl_table_key *key;
    for (int i = 0; (key = gtl_table_key_at(i)); i++) {
        if (takes(key, kind)) gtl_suggest_try(&near, gtl_word_of(key->key), i);
    }
    return near.best >= 0 ? gtl_table_key_at(near.best)->key : NULL;
}

/* "[gear NAME] takes wll, ..." */
static void add_keys(gtl_text *message, gtl_hardware_kind kind)
{
    const char *comma = "";
    const gtl_table_key *key;
    gtl_text_add(message, "; [%s NAME] takes", gtl_hardware_kind_name(kind));
    for (int i = 0; (key = gtl_table_key_at(i)); i++) {
        if (!takes(key, kind)) continue;
        gtl_text_add(message, "%s %s", comma, key->key);
        comma = ",";
    }
}

/* The first kind of table that has a key of that name, GTL_HW_KIND_COUNT for none. */
static gtl_hardware_kind owner(gtl_word word)
{
    gtl_hardware_kind kind = GTL_HW_GEAR;
    while (kind < GTL_HW_KIND_COUNT && gtl_table_key_find(kind, word) < 0) kind++;
    return kind;
}

/* The first kind of rig file that has it, GTL_KIND_COUNT for none. */
static gtl_kind owner_in_rigs(gtl_word word)
{
    gtl_kind kind = GTL_SHEET;
    while (kind < GTL_KIND_COUNT && !gtl_key_find(kind, word)) kind++;
    return kind;
}

void gtl_table_refuse_key(const gtl_entry *entry, gtl_hardware_kind kind, gtl_fault_list *faults)
{
    gtl_word word = gtl_word_of(entry->key);
    const char *near = nearest_key(word, kind);
    gtl_hardware_kind other = owner(word);
    gtl_kind in_rigs = owner_in_rigs(word);
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_text message = {0};
    gtl_excerpt(word, excerpt);
    if (other < GTL_HW_KIND_COUNT) {
        gtl_text_add(&message, "`%s` is no key of [%s NAME], though [%s NAME] has it", excerpt,
                     gtl_hardware_kind_name(kind), gtl_hardware_kind_name(other));
    } else if (in_rigs < GTL_KIND_COUNT) {
        gtl_text_add(&message, "`%s` is a key of %s in a rig file, and this is a hardware table", excerpt,
                     in_rigs == GTL_SHEET ? "[rig]" : gtl_a_kind(in_rigs));
    } else if (near) {
        gtl_text_add(&message, "unknown key `%s`; did you mean `%s`?", excerpt, near);
    } else {
        gtl_text_add(&message, "unknown key `%s`", excerpt);
    }
    if (other < GTL_HW_KIND_COUNT || in_rigs < GTL_KIND_COUNT || !near) add_keys(&message, kind);
    tell(faults, entry->line, &message);
}

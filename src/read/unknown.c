/* unknown.c - what to say of a kind or a key that the table does not have. */
#include "read/unknown.h"

#include "base/suggest.h"
#include "base/text.h"
#include "read/keys.h"
#include "read/later.h"
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

static const char *nearest_kind(gtl_word word)
{
    gtl_suggestion near = {.wanted = word, .best = -1};
    for (int i = 0; i < GTL_KIND_COUNT; i++) {
        gtl_suggest_try(&near, gtl_word_of(gtl_kind_name((gtl_kind)i)), i);
    }
    return near.best >= 0 ? gtl_kind_name((gtl_kind)near.best) : NULL;
}

void gtl_refuse_kind(const gtl_entry *header, gtl_fault_list *faults)
{
    gtl_word word = gtl_word_of(header->kind);
    const char *near = nearest_kind(word);
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_text message = {0};
    if (gtl_is_later_kind(word)) {
        gtl_text_add(&message, "the kind `%s` is not supported yet; leave it out, or describe it by these:",
                     header->kind);
    } else if (near) {
        gtl_faults_add(faults, header->line, "unknown kind `%s`; did you mean `%s`?", header->kind, near);
        return;
    } else {
        gtl_text_add(&message, "unknown kind `%s`; there are", gtl_excerpt(word, excerpt));
    }
    for (int i = 0; i < GTL_KIND_COUNT; i++) {
        gtl_text_add(&message, "%s %s", i == 0 ? "" : ",", gtl_kind_name((gtl_kind)i));
    }
    tell(faults, header->line, &message);
}

static const char *nearest_key(gtl_word word, gtl_kind kind)
{
    gtl_suggestion near = {.wanted = word, .best = -1};
    const gtl_key *key;
    for (int i = 0; (key = gtl_key_at((size_t)i)); i++) {
        if (key->kind == kind) gtl_suggest_try(&near, gtl_word_of(key->key), i);
    }
    return near.best >= 0 ? gtl_key_at((size_t)near.best)->key : NULL;
}

/* The keys of a kind, after a comma each but the first. */
static void add_keys(gtl_text *message, gtl_kind kind)
{
    const char *comma = "";
    const gtl_key *key;
    for (size_t i = 0; (key = gtl_key_at(i)); i++) {
        if (key->kind != kind) continue;
        gtl_text_add(message, "%s %s", comma, key->key);
        comma = ",";
    }
}

/* The first kind that has a key of that name, GTL_KIND_COUNT for none. */
static gtl_kind owner(gtl_word word)
{
    gtl_kind kind = GTL_SHEET;
    while (kind < GTL_KIND_COUNT && !gtl_key_find(kind, word)) kind++;
    return kind;
}

void gtl_refuse_key(const gtl_entry *entry, gtl_kind kind, gtl_fault_list *faults)
{
    gtl_word word = gtl_word_of(entry->key);
    const char *near = nearest_key(word, kind);
    gtl_kind other = owner(word);
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_text message = {0};
    gtl_excerpt(word, excerpt);
    if (gtl_is_later_key(word)) {
        gtl_text_add(&message,
                     "`%s` is not supported yet; leave it out, and let the values you type allow for it",
                     excerpt);
    } else if (other < GTL_KIND_COUNT) {
        gtl_text_add(&message, "`%s` is no key of %s, though %s has it; %s takes", excerpt, gtl_a_kind(kind),
                     gtl_a_kind(other), gtl_a_kind(kind));
        add_keys(&message, kind);
    } else if (near) {
        gtl_text_add(&message, "unknown key `%s`; did you mean `%s`?", excerpt, near);
    } else {
        gtl_text_add(&message, "unknown key `%s`; %s takes", excerpt, gtl_a_kind(kind));
        add_keys(&message, kind);
    }
    tell(faults, entry->line, &message);
}

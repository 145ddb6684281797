/* store_batten.c - what stands along a batten: the points that lines tie to, and what hangs on it. */
#include "read/storing.h"

#include <gantline/units.h>
#include <stdio.h>
#include <string.h>

/* The longest name, as in a header. */
#define MOST_NAME 32

/* Where a word, blanks around it, stands in a text: what is before it into `before`, what is after it stays
 * in `rest`. False, and nothing changed, where it does not stand there. */
static bool cut_word(gtl_word *rest, const char *word, gtl_word *before)
{
    gtl_word ahead = *rest;
    while (ahead.length > 0) {
        gtl_word next = gtl_first_word(&ahead);
        if (next.start == rest->start || !gtl_word_is(next, word)) continue;
        *before = gtl_word_trim((gtl_word){rest->start, (size_t)(next.start - rest->start)});
        *rest = ahead;
        return true;
    }
    return false;
}

static bool no_memory(const gtl_storing *s)
{
    s->faults->out_of_memory = true;
    return false;
}

/* The whole list cannot be relied on, and names may be missing. */
static bool refuse(const gtl_storing *s, gtl_word piece)
{
    char excerpt[GTL_EXCERPT_SIZE];
    if (piece.length == 0)
        gtl_faults_add(s->faults, s->entry->line, "`%s`: there is nothing between two commas; write %s",
                       s->row->key.key, s->row->key.form);
    else
        gtl_faults_add(s->faults, s->entry->line, "`%s`: cannot read `%s`; write %s", s->row->key.key,
                       gtl_excerpt(piece, excerpt), s->row->key.form);
    return false;
}

static bool read_quantity(const gtl_storing *s, gtl_word word, gtl_quantity quantity, double *value)
{
    char text[GTL_LINE_LIMIT + 1];
    char why[GTL_WHY_SIZE];
    if (word.length > GTL_LINE_LIMIT) word.length = GTL_LINE_LIMIT;
    snprintf(text, sizeof text, "%.*s", GTL_SPELL(word));
    if (gtl_parse_quantity(text, quantity, s->draft->gravity, value, &s->draft->mass_typed, why)) return true;
    gtl_faults_add(s->faults, s->entry->line, "`%s`: %s%s", s->row->key.key, why,
                   strchr(s->entry->value, ',') ? " (commas stand between its items; decimals take a point)"
                                                : "");
    s->draft->mass_typed = true; /* what cannot be read may have been a mass */
    return false;
}

/* NAME at PLACE */
static bool store_pick(const gtl_storing *s, gtl_word piece)
{
    gtl_word rest = piece, name;
    double at;
    if (!cut_word(&rest, "at", &name) || !gtl_is_name(name) || name.length > MOST_NAME ||
        gtl_word_is(name, "via"))
        return refuse(s, piece);
    if (!read_quantity(s, rest, GTL_LENGTH, &at)) return false;
    return gtl_draft_add_pick(s->draft, name, at) || no_memory(s);
}

/* WEIGHT at PLACE, or WEIGHT from PLACE to PLACE */
static bool store_hung(const gtl_storing *s, gtl_word piece)
{
    gtl_word rest = piece, weight, from;
    gtl_hung hung = {0};
    char excerpt[GTL_EXCERPT_SIZE];
    if (cut_word(&rest, "from", &weight)) {
        if (!cut_word(&rest, "to", &from)) return refuse(s, piece);
    } else if (cut_word(&rest, "at", &weight)) {
        from = rest;
    } else {
        return refuse(s, piece);
    }
    if (!read_quantity(s, weight, GTL_FORCE, &hung.weight) ||
        !read_quantity(s, from, GTL_LENGTH, &hung.from) || !read_quantity(s, rest, GTL_LENGTH, &hung.to))
        return false;
    if (!(hung.weight > 0)) {
        gtl_faults_add(s->faults, s->entry->line,
                       "`loads`: `%s` weighs nothing; what hangs on a batten has a mass of more than 0",
                       gtl_excerpt(piece, excerpt));
        return false;
    }
    if (hung.from > hung.to) {
        gtl_faults_add(
            s->faults, s->entry->line,
            "`loads`: `%s` runs backwards; write the place nearer to the batten's first end behind `from`",
            gtl_excerpt(piece, excerpt));
        return false;
    }
    return gtl_draft_add_hung(s->draft, &hung) || no_memory(s);
}

/* Items with commas between them; after a fault the list stays empty, and the section is rough. */
static void store_all(const gtl_storing *s, gtl_list *list, const int *count,
                      bool (*store)(const gtl_storing *, gtl_word))
{
    int first = *count;
    gtl_word rest = gtl_word_of(s->entry->value), piece;
    bool well = true;
    while (well && gtl_word_cut(&rest, ',', &piece)) well = store(s, piece);
    if (well) {
        list->first = first;
        list->count = *count - first;
    } else {
        s->item->rough = true;
        s->draft->whole = false;
    }
}

void gtl_store_picks(const gtl_storing *s)
{
    store_all(s, &s->item->picks, &s->draft->pick_count, store_pick);
    if (s->item->picks.count == 0) s->draft->names_missing = true;
}

void gtl_store_hung(const gtl_storing *s)
{
    store_all(s, &s->item->hung, &s->draft->hung_count, store_hung);
}

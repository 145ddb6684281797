/* store_stretch.c - how far a line stretches: an elongation, and the force that it is at. */
#include "read/storing.h"

#include <gantline/units.h>
#include <math.h>
#include <stdio.h>

#define STRETCH_HINT "write an elongation and the force that it is at, such as 3 %% at 2 kN"

/* Cut `text` at the word `at`; false where it is not there with something on both sides. */
static bool cut_at(gtl_word text, gtl_word *share, gtl_word *force)
{
    gtl_word rest = text;
    while (rest.length > 0) {
        const char *begin = rest.start;
        if (gtl_word_is(gtl_first_word(&rest), "at")) {
            *share = gtl_word_trim((gtl_word){text.start, (size_t)(begin - text.start)});
            *force = rest;
            return share->length > 0 && force->length > 0;
        }
    }
    return false;
}

/* One of the two numbers, above 0 and at most `most`; false after a fault. */
static bool read(const gtl_storing *s, gtl_word piece, gtl_quantity quantity, double most, double *value)
{
    char text[GTL_LINE_LIMIT + 1];
    char why[GTL_WHY_SIZE];
    bool weighed = false;
    if (piece.length > GTL_LINE_LIMIT) piece.length = GTL_LINE_LIMIT;
    snprintf(text, sizeof text, "%.*s", GTL_SPELL(piece));
    bool well = gtl_parse_quantity(text, quantity, s->draft->gravity, value, &weighed, why);
    if (weighed || !well) s->draft->mass_typed = true; /* what cannot be read may have been a mass */
    if (!well) {
        gtl_faults_add(s->faults, s->entry->line, "`stretch`: %s", why);
        return false;
    }
    if (*value > 0 && *value <= most) return true;
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_faults_add(s->faults, s->entry->line, "`stretch`: `%s` is out of range; it has to be more than 0%s",
                   gtl_excerpt(piece, excerpt), quantity == GTL_FRACTION ? " and at most 100 %" : "");
    return false;
}

void gtl_store_stretch(const gtl_storing *s)
{
    gtl_word text = gtl_word_trim(gtl_word_of(s->entry->value));
    gtl_word share_text, force_text;
    char excerpt[GTL_EXCERPT_SIZE];
    double share = NAN, force = NAN;
    if (!cut_at(text, &share_text, &force_text)) {
        gtl_faults_add(s->faults, s->entry->line,
                       "`stretch`: cannot read `%s`; " STRETCH_HINT " (the elongation alone says nothing)",
                       gtl_excerpt(text, excerpt));
        return;
    }
    if (!read(s, share_text, GTL_FRACTION, 1, &share) || !read(s, force_text, GTL_FORCE, INFINITY, &force))
        return;
    s->item->numbers[GTL_F_STRETCH].value = share;
    s->item->numbers[GTL_F_STRETCH_FORCE].value = force;
}

/* store_timber.c - what is said of a piece of timber: its species, its diameters, which end of its density's
 * spread. */
#include "read/storing.h"
#include "read/typed_timber.h"

void gtl_store_species(const gtl_storing *s)
{
    char name[GTL_LINE_LIMIT + 1];
    gtl_word typed = gtl_word_trim(gtl_word_of(s->entry->value));
    char excerpt[GTL_EXCERPT_SIZE];
    if (!gtl_typed_species(typed, name)) {
        s->item->rough = true;
        gtl_faults_add(
            s->faults, s->entry->line,
            typed.length == 0
                ? "`species`: a name is missing%s; write one such as white-oak"
                : "`species`: `%s` is no name, which is words of letters; write one such as white-oak",
            gtl_excerpt(typed, excerpt));
        return;
    }
    const char *kept = gtl_draft_keep_name(s->draft, gtl_word_of(name));
    if (kept)
        s->item->rows[s->row->slot].name = gtl_word_of(kept);
    else
        s->faults->out_of_memory = true;
}

void gtl_store_diameters(const gtl_storing *s)
{
    gtl_diameters_typed *diameters = &s->item->diameters;
    char why[GTL_TYPED_WHY];
    if (!gtl_typed_diameters(s->entry->value, diameters->of, &diameters->count, why))
        gtl_faults_add(s->faults, s->entry->line, "`diameter`: %s", why);
}

void gtl_store_wood_end(const gtl_storing *s)
{
    gtl_word value = gtl_word_trim(gtl_word_of(s->entry->value));
    char excerpt[GTL_EXCERPT_SIZE];
    s->item->wood_end = gtl_word_is(value, "mean") ? GTL_WOOD_MEAN : GTL_WOOD_HEAVY;
    if (s->item->wood_end == GTL_WOOD_MEAN || gtl_word_is(value, "heavy")) return;
    s->item->rough = true;
    gtl_faults_add(s->faults, s->entry->line, "`density end`: cannot read `%s`; write heavy or mean",
                   gtl_excerpt(value, excerpt));
}

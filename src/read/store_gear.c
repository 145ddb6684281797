/* store_gear.c - names of rows of the hardware tables, and what stands beside them: hitch, axis, files. */
#include "read/storing.h"

#include <gantline/units.h>
#include <stdio.h>
#include <string.h>

void gtl_store_row(const gtl_storing *s)
{
    gtl_word name = gtl_word_trim(gtl_word_of(s->entry->value));
    char excerpt[GTL_EXCERPT_SIZE];
    if (gtl_is_name(name)) {
        s->item->rows[s->row->slot].name = name;
        return;
    }
    s->item->rough = true;
    if (name.length == 0) {
        gtl_faults_add(s->faults, s->entry->line, "`%s`: a name is missing; write %s", s->row->key.key,
                       s->row->key.form);
    } else {
        gtl_faults_add(s->faults, s->entry->line, "`%s`: `%s` is no name, which has no blanks; write %s",
                       s->row->key.key, gtl_excerpt(name, excerpt), s->row->key.form);
    }
}

void gtl_store_hitch(const gtl_storing *s)
{
    gtl_word name = gtl_word_trim(gtl_word_of(s->entry->value));
    char excerpt[GTL_EXCERPT_SIZE];
    if (gtl_word_is(name, "straight") || gtl_word_is(name, "choke") || gtl_word_is(name, "basket")) {
        s->item->rows[s->row->slot].name = name;
        return;
    }
    s->item->rough = true;
    gtl_faults_add(s->faults, s->entry->line, "`hitch`: cannot read `%s`; write straight, choke or basket",
                   gtl_excerpt(name, excerpt));
}

/* One number of an axis; false after a fault. */
static bool store_component(const gtl_storing *s, gtl_word piece, double *value)
{
    char text[GTL_LINE_LIMIT + 1];
    char why[GTL_WHY_SIZE];
    if (piece.length > GTL_LINE_LIMIT) piece.length = GTL_LINE_LIMIT;
    snprintf(text, sizeof text, "%.*s", GTL_SPELL(piece));
    if (gtl_parse_quantity(text, GTL_NUMBER, s->draft->gravity, value, NULL, why)) return true;
    gtl_faults_add(s->faults, s->entry->line, "`axis`: %s (or write down, or up)", why);
    return false;
}

void gtl_store_axis(const gtl_storing *s)
{
    gtl_direction_typed *axis = &s->item->axis;
    gtl_word rest = gtl_word_of(s->entry->value);
    gtl_word piece = gtl_word_trim(rest);
    int count = 0;
    axis->upright = gtl_word_is(piece, "up") ? 1 : gtl_word_is(piece, "down") ? -1 : 0;
    if (axis->upright != 0) return;
    while (gtl_word_cut(&rest, ',', &piece)) {
        if (count == 3) {
            gtl_faults_add(s->faults, s->entry->line, "`axis`: more than three numbers; write %s",
                           s->row->key.form);
            return;
        }
        if (!store_component(s, piece, &axis->to[count++])) return;
    }
    if (axis->to[0] == 0 && axis->to[1] == 0 && axis->to[2] == 0) {
        gtl_faults_add(s->faults, s->entry->line, "`axis`: all 0 is no direction; write %s",
                       s->row->key.form);
        return;
    }
    axis->count = count;
}

/* The files are looked at once all sections are read. */
void gtl_store_tables(const gtl_storing *s)
{
    s->item->tables.name = gtl_word_of(s->entry->value);
}

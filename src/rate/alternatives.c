/* alternatives.c - what a rig may be where its figures are ranges.
 *
 * Each stop whose friction is a range, and each batten, is a switch with two ends. Tried are: all switches of
 * one sort at one end, all at the other, and each alone at its other end, from either; the sorts combined.
 * The rig itself has every switch off: all friction at its greatest, every batten on level lines that do not
 * give.
 */
#include "rate/rating.h"

#include <math.h>
#include <stdlib.h>

/* More combinations of the two sorts than this are not worked: then each sort varies by itself. */
#define MOST_COMBINED 200

/* What is varied together. */
typedef struct sort {
    int count;                             /* of its switches */
    void (*turn)(gtl_rig *rig, int which); /* turn a switch on */
    const int *index;                      /* what each stands for */
} sort;

static void turn_friction(gtl_rig *rig, int thing)
{
    gtl_thing *bend = &rig->things[thing];
    double *end = isnan(bend->friction) ? &bend->efficiency : &bend->friction;
    *end = bend->freest;
}

static void turn_batten(gtl_rig *rig, int batten)
{
    for (int i = 0; i < rig->battens[batten].pick_count; i++) {
        const gtl_pick *pick = &rig->picks[rig->battens[batten].first_pick + i];
        gtl_thing *load = &rig->things[pick->thing];
        rig->nodes[load->node].weight += pick->springs - load->weight;
        load->weight = pick->springs;
    }
}

/* How many patterns of a sort there are: all off, all on, each alone on, each alone off. */
static int patterns(const sort *s)
{
    if (s->count == 0) return 1;
    return s->count <= 2 ? 2 * s->count : 2 + 2 * s->count;
}

/* Whether switch `which` is on in a pattern: 0 all off, 1 all on, then each alone. */
static bool is_on(const sort *s, int pattern, int which)
{
    if (pattern < 2) return pattern == 1;
    pattern -= 2;
    return pattern < s->count ? pattern == which : pattern - s->count != which;
}

static void set(gtl_rig *rig, const sort *s, int pattern)
{
    for (int i = 0; i < s->count; i++)
        if (is_on(s, pattern, i)) s->turn(rig, s->index[i]);
}

static bool add(gtl_sheet *sheet, const sort *friction, int rubs, const sort *battens, int hangs)
{
    gtl_rig *rig = gtl_rig_copy(sheet->rig);
    if (!rig) return false;
    set(rig, friction, rubs);
    set(rig, battens, hangs);
    sheet->alternatives[sheet->alternative_count++] = rig;
    return true;
}

static bool list(gtl_sheet *sheet, const sort *friction, const sort *battens)
{
    int most_rubs = patterns(friction), most_hangs = patterns(battens);
    bool combined = most_rubs * most_hangs <= MOST_COMBINED;
    sheet->alternatives = calloc((size_t)most_rubs * (size_t)most_hangs, sizeof(gtl_rig *));
    bool made = sheet->alternatives != NULL;
    /* The free end first, as the header has it; pattern 0 of both is the rig itself. */
    if (friction->count > 0) made = made && add(sheet, friction, 1, battens, 0);
    for (int hangs = 0; hangs < most_hangs; hangs++)
        for (int rubs = 0; made && rubs < most_rubs; rubs++) {
            bool listed = hangs == 0 && rubs <= 1;
            bool wanted = combined || hangs == 0 || rubs <= 1;
            if (!listed && wanted) made = add(sheet, friction, rubs, battens, hangs);
        }
    return made;
}

bool gtl_list_alternatives(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    int *rub = calloc((size_t)rig->thing_count + 1, sizeof *rub);
    int *hang = calloc((size_t)rig->batten_count + 1, sizeof *hang);
    sort friction = {0, turn_friction, rub}, battens = {0, turn_batten, hang};
    bool made = rub && hang;
    for (int i = 0; made && i < rig->thing_count; i++)
        if (!isnan(rig->things[i].freest)) rub[friction.count++] = i;
    for (int i = 0; made && i < rig->batten_count; i++) hang[battens.count++] = i;
    if (made && friction.count + battens.count > 0) made = list(sheet, &friction, &battens);
    free(rub);
    free(hang);
    return made;
}

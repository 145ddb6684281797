/* alternatives.c - what a rig may be where its figures are ranges.
 *
 * Each running stop whose friction is a range, and each batten, is a switch with two ends. The rig itself has
 * every switch off: all friction at its greatest, every batten on level lines that do not give.
 *
 * Where no body moves, every tension is a quotient of two sums that each hold a stop's ratio at most once: a
 * force then runs along a straight line as that ratio varies, and no force is greater anywhere between than
 * at one of the two ends. So every corner is worked, as long as there are few enough stops. That is also why
 * a block that rope runs over twice is two switches. With more stops each is tried alone from either side,
 * and along the ropes all up to a stop one way, the rest the other, which is where tensions are greatest.
 *
 * Where a lifted batten is caught, nobody knows by which pick: each may be.
 */
#include "rate/rating.h"

#include <math.h>
#include <stdlib.h>

/* More combinations of the two sorts than this are not worked: then each sort varies by itself. */
#define MOST_COMBINED 200
/* Shares that differ by no more than this, over all that hangs, are the same [1]. */
#define SAME 1e-9
/* Up to so many stops every corner is worked. */
#define MOST_CORNERS 6
#define MOST_BATTENS 3

/* What is varied together. */
typedef struct sort {
    int count;                             /* of its switches */
    int patterns;                          /* 0 all off, 1 all on, then the others */
    bool corners;                          /* every combination is one of them */
    void (*turn)(gtl_rig *rig, int which); /* turn a switch on */
    const int *index;                      /* what each stands for */
} sort;

static void turn_friction(gtl_rig *rig, int run)
{
    rig->stops[rig->runs[run].stop].freest = true;
}

static void turn_batten(gtl_rig *rig, int batten)
{
    for (int i = 0; i < rig->battens[batten].pick_count; i++) {
        const gtl_pick *pick = &rig->picks[rig->battens[batten].first_pick + i];
        gtl_thing *load = &rig->things[pick->thing];
        rig->nodes[load->node].weight += pick->springs - load->weight;
        load->weight = pick->springs;
        rig->nodes[load->node].limp = rig->nodes[load->node].weight == 0;
    }
}

/* All stops at their free end: then the things themselves say so, since such a rig may be printed. */
static void free_all(gtl_rig *rig)
{
    for (int i = 0; i < rig->thing_count; i++) gtl_free_bend(&rig->things[i]);
}

static int pattern_count(const sort *s)
{
    if (s->count == 0) return 1;
    if (s->corners) return 1 << s->count;
    return s->count <= 2 ? 2 * s->count : 2 + 2 * s->count + 2 * (s->count - 1);
}

/* Whether switch `which` is on in a pattern beyond the first two, where not every corner is one: each alone
 * on, each alone off, all up to one on, all from one on. */
static bool is_on_singly(const sort *s, int pattern, int which)
{
    if (pattern < s->count) return pattern == which;
    pattern -= s->count;
    if (pattern < s->count) return pattern != which;
    pattern -= s->count;
    return pattern < s->count - 1 ? which <= pattern : which > pattern - (s->count - 1);
}

static bool is_on(const sort *s, int pattern, int which)
{
    if (pattern < 2) return pattern == 1;
    if (!s->corners) return is_on_singly(s, pattern - 2, which);
    int corner = pattern - 1; /* 0 and the last are the first two */
    return (corner >> which & 1) != 0;
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
    if (rubs == 1)
        free_all(rig);
    else
        set(rig, friction, rubs);
    set(rig, battens, hangs);
    sheet->alternatives[sheet->alternative_count++] = rig;
    return true;
}

/* How many more picks than the one lifted a batten may be caught by. */
static int other_picks(const gtl_rig *rig)
{
    int batten = rig->load < 0 || !gtl_rig_asks(rig, GTL_JAM) ? -1 : gtl_batten_of(rig, rig->load);
    return batten < 0 ? 0 : rig->battens[batten].pick_count - 1;
}

/* The rig, and as it is with every switch on, caught by each other pick of its batten. */
static bool add_caught(gtl_sheet *sheet, const sort *friction, const sort *battens)
{
    const gtl_rig *rig = sheet->rig;
    const gtl_batten *batten = other_picks(rig) > 0 ? &rig->battens[gtl_batten_of(rig, rig->load)] : NULL;
    bool made = true;
    for (int i = 0; batten && i < batten->pick_count; i++) {
        int pick = rig->picks[batten->first_pick + i].thing;
        for (int on = 0; made && pick != rig->load && on < 2; on++) {
            made = add(sheet, friction, on, battens, on);
            if (made) sheet->alternatives[sheet->alternative_count - 1]->load = pick;
        }
    }
    return made;
}

static bool list(gtl_sheet *sheet, const sort *friction, const sort *battens)
{
    bool combined = friction->patterns * battens->patterns <= MOST_COMBINED;
    size_t most =
        (size_t)friction->patterns * (size_t)battens->patterns + 2 * (size_t)other_picks(sheet->rig);
    sheet->alternatives = calloc(most, sizeof(gtl_rig *));
    bool made = sheet->alternatives != NULL;
    /* The free end first, as the header has it; pattern 0 of both is the rig itself. */
    if (friction->count > 0) made = made && add(sheet, friction, 1, battens, 0);
    for (int hangs = 0; hangs < battens->patterns; hangs++)
        for (int rubs = 0; made && rubs < friction->patterns; rubs++) {
            bool listed = hangs == 0 && rubs <= 1 && (rubs == 0 || friction->count > 0);
            bool wanted = combined || hangs == 0 || rubs <= 1;
            if (!listed && wanted) made = add(sheet, friction, rubs, battens, hangs);
        }
    made = made && add_caught(sheet, friction, battens);
    sheet->frees_all = friction->count > 0;
    sheet->every_corner = friction->corners && combined;
    return made;
}

/* Whether the two ways to share a batten's weight differ at all: two lines share by statics alone. */
static bool is_open(const gtl_rig *rig, const gtl_batten *batten)
{
    bool open = false;
    for (int i = 0; i < batten->pick_count; i++) {
        const gtl_pick *pick = &rig->picks[batten->first_pick + i];
        open |= fabs(pick->stiff - pick->springs) > SAME * batten->total;
    }
    return open;
}

bool gtl_list_alternatives(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    int *rub = calloc((size_t)rig->run_count + 1, sizeof *rub);
    int *hang = calloc((size_t)rig->batten_count + 1, sizeof *hang);
    sort friction = {.turn = turn_friction, .index = rub}, battens = {.turn = turn_batten, .index = hang};
    bool made = rub && hang;
    for (int i = 0; made && i < rig->run_count; i++)
        if (!isnan(rig->things[rig->runs[i].thing].freest)) rub[friction.count++] = i;
    for (int i = 0; made && i < rig->batten_count; i++)
        if (is_open(rig, &rig->battens[i])) hang[battens.count++] = i;
    friction.corners = friction.count <= MOST_CORNERS;
    battens.corners = battens.count <= MOST_BATTENS;
    friction.patterns = pattern_count(&friction);
    battens.patterns = pattern_count(&battens);
    if (made && friction.count + battens.count + other_picks(rig) > 0)
        made = list(sheet, &friction, &battens);
    free(rub);
    free(hang);
    return made;
}

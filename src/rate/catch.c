/* catch.c - a load that has fallen free is caught by what gives: the peak by energy.
 *
 * What one newton more at the load brings into each part of line is found from two states of the rig at rest.
 * By Castigliano's theorem the load then goes down, for each newton, by the sum of (that share)^2 L / EA over
 * all parts that give, EA being a line's force at its stretch over that stretch. A load that has fallen h
 * meets a spring of that stiffness k: W (h + x) = k x^2 / 2. */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>

/* A share of the load under this is rounding, and so is a body this near to where it was, over the rig's size
 * [1]. */
#define NONE 1e-6

typedef struct catching {
    const gtl_rig *rig;
    const gtl_state *hold;
    int node;      /* of what falls */
    double *share; /* one a part: newtons more for one more at the load [1] */
    double *gives; /* one a part: 1, or 0 beyond a holding point [1] */
    double *eased; /* one a part: likewise, less what friction keeps from it [1] */
    gtl_drop *drop;
} catching;

void gtl_drop_free(gtl_drop *drop)
{
    if (drop) free(drop->lines);
    free(drop);
}

static int node_of(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].node;
}

/* The stop before part i of a piece; after its last part for i = part_count. */
static int stop_at(const gtl_rig *rig, const gtl_piece *piece, int i)
{
    if (i < piece->part_count) return rig->parts[piece->first_part + i].from;
    return rig->parts[piece->first_part + i - 1].to;
}

/* Let what a part does reach on over a running stop of its piece. */
static void pass(const catching *c, int run, double *gives, double *eased)
{
    bool holds = c->rig->things[c->rig->runs[run].thing].turns > 0;
    *gives = holds ? 0 : *gives;
    *eased = holds ? 0 : *eased * exp(-gtl_friction_log(c->rig, c->hold, run));
}

/* From a stop along the path, or against it. */
static void spread(const catching *c, const gtl_piece *piece, int from, int way)
{
    double gives = 1, eased = 1;
    for (int i = way > 0 ? from : from - 1; i >= 0 && i < piece->part_count; i += way) {
        bool first = i == (way > 0 ? from : from - 1);
        if (!first) pass(c, piece->first_run + (way > 0 ? i - 1 : i), &gives, &eased);
        c->gives[piece->first_part + i] = fmax(c->gives[piece->first_part + i], gives);
        c->eased[piece->first_part + i] = fmax(c->eased[piece->first_part + i], eased);
    }
}

/* The load pulls on a piece where it is tied to it or rides on it, or else where a body does that can move.
 */
static void find_giving(const catching *c, const gtl_piece *piece)
{
    bool straight = false;
    for (int i = 0; i <= piece->part_count; i++)
        straight |= node_of(c->rig, stop_at(c->rig, piece, i)) == c->node;
    for (int i = 0; i <= piece->part_count; i++) {
        int node = node_of(c->rig, stop_at(c->rig, piece, i));
        if (straight ? node != c->node : c->rig->nodes[node].fixed) continue;
        spread(c, piece, i, 1);
        spread(c, piece, i, -1);
    }
}

/* [m] */
static double length_of(const catching *c, const gtl_part *part)
{
    const double *from = c->hold->at + 3 * node_of(c->rig, part->from);
    const double *to = c->hold->at + 3 * node_of(c->rig, part->to);
    return hypot(hypot(to[0] - from[0], to[1] - from[1]), to[2] - from[2]);
}

/* How far the load goes down for one newton more: where tensions are equal at every stop, and where friction
 * acts [m/N]. */
static void add_up(const catching *c, double *free_giving, double *eased_giving)
{
    for (int p = 0; p < c->rig->part_count; p++) {
        const gtl_part *part = &c->rig->parts[p];
        const gtl_line *line = &c->rig->lines[part->line];
        gtl_drop_line *done = &c->drop->lines[part->line];
        double share = fabs(c->share[p]), length = length_of(c, part);
        done->share = fmax(done->share, share);
        if (share < NONE || line->kind == GTL_SPAR) continue;
        done->elastic += length * c->gives[p];
        if (!(line->stretch > 0)) continue;
        double giving = share * share * length * line->stretch / line->stretch_force;
        *free_giving += giving * c->gives[p];
        *eased_giving += giving * c->eased[p];
    }
}

/* Of the lines that state their stretch, the one that takes most. */
static int find_catcher(const catching *c)
{
    int found = -1;
    for (int i = 0; i < c->rig->line_count; i++) {
        const gtl_drop_line *line = &c->drop->lines[i];
        bool gives = c->rig->lines[i].stretch > 0 && line->elastic > 0;
        if (gives && (found < 0 || line->share > c->drop->lines[found].share * (1 + NONE))) found = i;
    }
    return found;
}

static double peak_of(const gtl_drop *drop, double stiffness)
{
    return drop->weight * (1 + sqrt(1 + 2 * drop->fall * stiffness / drop->weight));
}

/* A body with a weight of its own where the lines that catch are tied, or run: it is jerked along. */
static int find_along(const catching *c)
{
    for (int p = 0; p < c->rig->part_count; p++) {
        const int ends[] = {node_of(c->rig, c->rig->parts[p].from), node_of(c->rig, c->rig->parts[p].to)};
        for (int k = 0; fabs(c->share[p]) >= NONE && k < 2; k++) {
            const gtl_node *node = &c->rig->nodes[ends[k]];
            if (!node->fixed && node->weight > 0 && ends[k] != c->node) return node->root;
        }
    }
    return -1;
}

static int find_let_out(const catching *c)
{
    for (int p = 0; p < c->rig->part_count; p++) {
        int hand = c->rig->pieces[c->rig->parts[p].piece].hand;
        if (hand >= 0 && fabs(c->share[p]) >= NONE && gtl_is_behind_turns(c->rig, hand)) return hand;
    }
    return -1;
}

static bool moved(const catching *c, const gtl_state *twice)
{
    double size = gtl_rig_size(c->rig);
    for (int i = 0; i < 3 * c->rig->node_count; i++)
        if (fabs(twice->at[i] - c->hold->at[i]) > NONE * size) return true;
    return false;
}

static void fill(const catching *c, const gtl_state *twice)
{
    gtl_drop *drop = c->drop;
    const gtl_thing *load = &c->rig->things[drop->load];
    double free_giving = 0, eased_giving = 0;
    for (int p = 0; p < c->rig->piece_count; p++) find_giving(c, &c->rig->pieces[p]);
    add_up(c, &free_giving, &eased_giving);
    drop->stiffness = 1 / free_giving;
    drop->held = 1 / eased_giving;
    drop->peak = peak_of(drop, drop->stiffness);
    drop->checked = fmax(drop->peak, peak_of(drop, drop->held)) / (1 - GTL_DROP_LEFT_OUT);
    drop->give = drop->peak / drop->stiffness;
    drop->catcher = find_catcher(c);
    drop->fall_factor = drop->catcher < 0 ? NAN : drop->fall / drop->lines[drop->catcher].elastic;
    drop->run_average = drop->weight * (1 + drop->fall / load->run_out);
    drop->run_peak = 2 * drop->run_average;
    drop->shifts = moved(c, twice);
    drop->along = find_along(c);
    drop->let_out = find_let_out(c);
}

gtl_drop *gtl_find_catch(const gtl_rig *rig, const gtl_state *hold, const gtl_state *twice)
{
    size_t parts = (size_t)rig->part_count + 1;
    const gtl_thing *load = &rig->things[rig->dropped];
    catching c = {rig,
                  hold,
                  load->node,
                  calloc(parts, sizeof(double)),
                  calloc(parts, sizeof(double)),
                  calloc(parts, sizeof(double)),
                  calloc(1, sizeof(gtl_drop))};
    if (c.drop) c.drop->lines = calloc((size_t)rig->line_count + 1, sizeof *c.drop->lines);
    bool made = c.share && c.gives && c.eased && c.drop && c.drop->lines;
    if (made) {
        c.drop->load = rig->dropped;
        c.drop->weight = rig->nodes[load->node].weight;
        c.drop->fall = load->fall;
        for (int p = 0; p < rig->part_count; p++)
            c.share[p] = (twice->tension[p] - hold->tension[p]) / c.drop->weight;
        fill(&c, twice);
    } else {
        gtl_drop_free(c.drop);
        c.drop = NULL;
    }
    free(c.share);
    free(c.gives);
    free(c.eased);
    return c.drop;
}

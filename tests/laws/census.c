/* census.c - counting by what is in the rig and its states, else by how it was made. */
#include "laws/census.h"
#include <stdio.h>
#include <string.h>

static const double least_share = 0.08;
/* Of fewer rigs the mix says nothing. */
enum { LEAST_RIGS = 200 };

static bool has_several_ropes(const specimen *s)
{
    int ropes = 0;
    for (int i = 0; i < s->rig->line_count; i++) ropes += s->rig->lines[i].kind == GTL_ROPE;
    return ropes >= 2;
}

static bool has_burton(const specimen *s)
{
    return strcmp(s->made.lift, "burton") == 0;
}

/* A rope tied to a joint in its middle that runs over something too. */
static bool has_hitch(const specimen *s)
{
    for (int i = 0; i < s->rig->line_count; i++) {
        const gtl_line *line = &s->rig->lines[i];
        bool hitched = false;
        bool runs = false;
        for (int k = 1; k + 1 < line->stop_count; k++) {
            const gtl_stop *stop = &s->rig->stops[line->first_stop + k];
            hitched |= stop->tied && s->rig->things[stop->thing].kind == GTL_JOINT;
            runs |= !stop->tied;
        }
        if (hitched && runs) return true;
    }
    return false;
}

static bool has_floating_redirect(const specimen *s)
{
    return s->made.floating_redirect;
}

static bool is_in_space(const specimen *s)
{
    return s->rig->dim == 3;
}

static bool has_guide(const specimen *s)
{
    for (int n = 0; n < s->rig->node_count; n++)
        if (s->rig->nodes[n].guided) return true;
    return false;
}

static bool has_slack_line(const specimen *s)
{
    for (int p = 0; s->possible[GTL_HOLD] && p < s->rig->piece_count; p++)
        if (s->states[GTL_HOLD]->slack[p]) return true;
    return false;
}

static bool has_spar(const specimen *s)
{
    for (int i = 0; i < s->rig->line_count; i++)
        if (s->rig->lines[i].kind == GTL_SPAR) return true;
    return false;
}

static bool is_tied_off(const specimen *s)
{
    return s->rig->hand < 0;
}

static bool has_known_pull(const specimen *s)
{
    for (int p = 0; p < s->rig->piece_count; p++)
        if (s->rig->pieces[p].rule == GTL_PULLED) return true;
    return false;
}

static struct {
    const char *name;
    bool (*is)(const specimen *);
    int count;
} kinds[] = {
    {"two ropes or more", has_several_ropes, 0}, {"a burton", has_burton, 0},
    {"a hitch on a running rope", has_hitch, 0}, {"a floating redirect", has_floating_redirect, 0},
    {"three dimensions", is_in_space, 0},        {"a guided body", has_guide, 0},
    {"a line slack in hold", has_slack_line, 0}, {"a spar", has_spar, 0},
    {"no hand worked out", is_tied_off, 0},      {"a known pull", has_known_pull, 0},
};

void census_count(const specimen *s)
{
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) kinds[i].count += kinds[i].is(s);
}

void census_judge(int rigs, int *passed, int *failed)
{
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        bool enough = rigs < LEAST_RIGS || kinds[i].count >= least_share * rigs;
        printf("rigs with %s: %d of %d%s\n", kinds[i].name, kinds[i].count, rigs, enough ? "" : ", too few");
        *passed += enough;
        *failed += !enough;
    }
}

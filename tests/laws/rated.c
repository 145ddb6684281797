/* rated.c - invented ratings and cases for random rigs. */
#include "laws/rated.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static double some_rating(chance *c, double unrated)
{
    return chance_of(c, unrated) ? NAN : exp(chance_between(c, log(500), log(60000)));
}

/* Ratings on all that may have one. Some rigs are rated throughout, and generously, so that some hold. */
static void add_ratings(sketch *s, chance *c)
{
    double unrated = chance_of(c, 0.7) ? 0 : 0.1;
    double more = chance_of(c, 0.5) ? 100 : 1;
    bool factored = false;
    for (int i = 0; i < s->thing_count; i++) {
        gtl_kind kind = s->things[i].kind;
        /* A hand without a limit is no component, so that the verdict may be lost for other reasons alone. */
        if (kind == GTL_HAND && isnan(s->things[i].pull)) s->things[i].limit = more * some_rating(c, 0.3);
        if (kind == GTL_HAND || kind == GTL_LOAD) continue;
        s->things[i].wll = more * some_rating(c, unrated);
        bool breaking = chance_of(c, 0.3);
        if (breaking) s->things[i].mbs = 5 * more * some_rating(c, 0);
        factored |= breaking;
    }
    for (int i = 0; i < s->line_count; i++) {
        s->lines[i].wll = more * some_rating(c, unrated);
        if (s->lines[i].kind == GTL_SPAR) s->lines[i].push_wll = more * some_rating(c, unrated);
    }
    for (int i = 0; i < s->connector_count; i++) s->connectors[i] = more * some_rating(c, unrated);
    if (factored && chance_of(c, 0.9)) s->design_factor = chance_between(c, 2, 10);
}

static void add_cases(const specimen *s, sketch *drawn, chance *c)
{
    if (s->rig->hand < 0 || chance_of(c, 0.6)) return;
    for (int k = 0; k < BASIC_CASES; k++) drawn->cases[k] = chance_of(c, 0.5);
}

void rate(const specimen *s, rated *r)
{
    chance c = chance_begin(s->seed ^ 0xA5A5A5A5u);
    sketch drawn = s->made.sketch;
    add_ratings(&drawn, &c);
    add_cases(s, &drawn, &c);
    rate_drawn(&drawn, r);
}

void rate_drawn(const sketch *drawn, rated *r)
{
    gtl_fault_list faults;
    memset(r, 0, sizeof *r);
    r->drawn = *drawn;
    char *text = sketch_text(&r->drawn, NULL);
    gtl_faults_begin(&faults, "rig");
    r->rig = gtl_read_text(text, strlen(text), &faults);
    if (!r->rig) fprintf(stderr, "%s\n", faults.items[0].text);
    r->answered = r->rig && gtl_rate(r->rig, &r->sheet) == GTL_OK;
    gtl_faults_end(&faults);
    free(text);
}

void rated_end(rated *r)
{
    if (r->rig) gtl_sheet_end(&r->sheet);
    gtl_rig_free(r->rig);
}

bool any_friction(const gtl_rig *rig)
{
    for (int i = 0; i < rig->run_count; i++)
        if (rig->things[rig->runs[i].thing].friction_stated) return true;
    return false;
}

bool any_unstated(const gtl_rig *rig)
{
    for (int i = 0; i < rig->run_count; i++)
        if (!rig->things[rig->runs[i].thing].friction_stated) return true;
    return false;
}

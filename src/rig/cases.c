/* cases.c - what cases are worked: those named, or all that the file has data for; and the data themselves.
 */
#include "rig/building.h"

#include "base/text.h"

#include <math.h>
#include <stdlib.h>

/* Sudden transfer of a load that does not drop doubles its force. */
#define LOSS_FACTOR 2.0

static const gtl_number *sheet_number(const gtl_building *b, gtl_field field)
{
    return &b->draft->sheet.numbers[field];
}

static bool asks(const gtl_building *b, gtl_case_kind kind)
{
    return b->draft->cases[kind];
}

/* How fast what moves is brought to its speed, or to rest. */
static void settle_acceleration(gtl_building *b)
{
    gtl_rig *rig = b->rig;
    rig->acceleration = sheet_number(b, GTL_F_ACCELERATION)->value;
    rig->speed = sheet_number(b, GTL_F_SPEED)->value;
    rig->time = sheet_number(b, GTL_F_TIME)->value;
    if (isnan(rig->acceleration)) rig->acceleration = rig->speed / rig->time;
}

static bool any_acceleration(const gtl_building *b)
{
    return sheet_number(b, GTL_F_ACCELERATION)->stated.yes || sheet_number(b, GTL_F_SPEED)->stated.yes ||
           sheet_number(b, GTL_F_TIME)->stated.yes;
}

/* The first hand of whom nobody says how much it can pull, -1 for none. */
static int unlimited_hand(const gtl_building *b)
{
    for (int i = 0; i < b->rig->thing_count; i++) {
        const gtl_item *item = gtl_thing_item(b, i);
        bool stated = item->numbers[GTL_F_LIMIT].stated.yes || item->numbers[GTL_F_PEOPLE].stated.yes ||
                      item->numbers[GTL_F_EACH].stated.yes;
        if (item->kind == GTL_HAND && !stated && !item->rough) return i;
    }
    return -1;
}

/* A key that only some cases read. */
static void refuse_unused(gtl_building *b, gtl_field field, const char *key, const char *cases)
{
    const gtl_stated *stated = &sheet_number(b, field)->stated;
    if (!stated->yes || b->draft->sheet.rough) return; /* a case that could not be read may read it */
    gtl_faults_add(b->faults, stated->line, "`%s` changes nothing here: %s to `cases`, or leave it out", key,
                   cases);
}

static void check_acceleration(gtl_building *b)
{
    bool used = asks(b, GTL_START) || asks(b, GTL_STOP);
    const gtl_stated *speed = &sheet_number(b, GTL_F_SPEED)->stated;
    const gtl_stated *time = &sheet_number(b, GTL_F_TIME)->stated;
    const gtl_stated *direct = &sheet_number(b, GTL_F_ACCELERATION)->stated;
    static const char none[] = "neither start nor stop is worked; add one of them";
    if (direct->yes && speed->yes)
        gtl_faults_add(b->faults, speed->line,
                       "`acceleration` and `speed` are two spellings of one thing; keep `acceleration`, or "
                       "`speed` and `time`");
    if (speed->yes != time->yes)
        gtl_faults_add(b->faults, speed->yes ? speed->line : time->line,
                       "`speed` and `time` belong together: in what time which speed is reached, such as "
                       "speed = 0.5 m/s and time = 0.2 s");
    if (used && !any_acceleration(b))
        gtl_faults_add(
            b->faults, b->draft->sheet.cases.line,
            "`cases` asks for %s, which needs `acceleration`, or `speed` and `time`; add them, such "
            "as acceleration = 0.5 m/s2",
            gtl_case_name(asks(b, GTL_START) ? GTL_START : GTL_STOP));
    if (used) return;
    refuse_unused(b, GTL_F_ACCELERATION, "acceleration", none);
    refuse_unused(b, GTL_F_SPEED, "speed", none);
    refuse_unused(b, GTL_F_TIME, "time", none);
}

static void check_jam(gtl_building *b)
{
    int hand = unlimited_hand(b);
    if (!asks(b, GTL_JAM) || hand < 0) return;
    gtl_faults_add(
        b->faults, b->draft->sheet.cases.line,
        "`cases` asks for jam, which needs the most that `%s` can pull (line %d): add `people` and "
        "`each`, or `limit`",
        b->rig->things[hand].name, b->rig->things[hand].line);
}

/* Without a hand that is worked out there is nothing to lift, raise, lower, jam, start or stop. */
static void check_idle_sheet(gtl_building *b)
{
    const gtl_item *sheet = &b->draft->sheet;
    if (sheet->load.stated.yes) {
        gtl_faults_add(
            b->faults, sheet->load.stated.line,
            "`load` changes nothing, since nobody hauls; leave it out, or add a hand without `pull`");
    }
    for (int kind = GTL_RAISE; kind < GTL_LOST; kind++) {
        if (!asks(b, (gtl_case_kind)kind)) continue;
        gtl_faults_add(
            b->faults, sheet->cases.line,
            "`cases` asks for %s, but nobody hauls; write cases = hold, or add a hand without `pull`",
            gtl_case_name((gtl_case_kind)kind));
        return;
    }
}

static void check_loss_factor(gtl_building *b)
{
    const gtl_number *factor = sheet_number(b, GTL_F_LOSS_FACTOR);
    b->rig->loss_factor_stated = factor->stated.yes;
    b->rig->loss_factor = factor->stated.yes ? factor->value : LOSS_FACTOR;
    if (!asks(b, GTL_LOST))
        refuse_unused(b, GTL_F_LOSS_FACTOR, "loss factor", "no loss is worked; add lost and a name");
}

/* `all` is what the file has data for; without a word it is what every rig that is hauled can be worked in.
 */
static void widen(gtl_building *b)
{
    bool *cases = b->draft->cases;
    bool all = b->draft->all_cases;
    bool hauled = b->rig->hand >= 0;
    bool plain = !b->draft->sheet.cases.yes;
    if (hauled && (all || plain)) cases[GTL_RAISE] = cases[GTL_LOWER] = true;
    if (hauled && all && unlimited_hand(b) < 0) cases[GTL_JAM] = true;
    if (hauled && all && any_acceleration(b)) cases[GTL_START] = cases[GTL_STOP] = true;
    if (all && gtl_any_fall(b)) cases[GTL_DROP] = true;
    cases[GTL_HOLD] = true;
}

static void add_case(gtl_building *b, gtl_case_kind kind, const gtl_item *lost, int index)
{
    gtl_text name = {0};
    gtl_text_add(&name, "%s%s%s", gtl_case_name(kind), lost ? " " : "", lost ? lost->name : "");
    gtl_asked *asked = &b->rig->cases[b->rig->case_count++];
    *asked = (gtl_asked){kind, lost ? lost->kind : GTL_SHEET, index, gtl_text_take(&name)};
    if (!asked->name) b->faults->out_of_memory = true;
}

static void refuse_loss(gtl_building *b, gtl_word name, int line)
{
    char excerpt[GTL_EXCERPT_SIZE];
    int near = gtl_draft_nearest(b->draft, name);
    gtl_excerpt(name, excerpt);
    if (near >= 0)
        gtl_faults_add(b->faults, line,
                       "`cases`: lost `%s`: no section has that name; did you mean `%s` (line %d)?", excerpt,
                       b->draft->items[near].name, b->draft->items[near].line);
    else
        gtl_faults_add(b->faults, line,
                       "`cases`: lost `%s`: no section has that name; mend it, or leave the case out",
                       excerpt);
}

/* What may let go; what else comes down with it is worked out from there. */
static void add_loss(gtl_building *b, gtl_word name, int line)
{
    int found = gtl_draft_find(b->draft, name);
    const gtl_item *item = found < 0 ? NULL : &b->draft->items[found];
    unsigned allowed = GTL_LINE_KINDS | GTL_ONE_KIND(GTL_ANCHOR) | GTL_ONE_KIND(GTL_CONNECTOR);
    if (!item) {
        refuse_loss(b, name, line);
    } else if (!gtl_is_of(item->kind, allowed)) {
        gtl_faults_add(b->faults, line,
                       "`cases`: lost `%s`: that is %s; what lets go is an anchor, a line or a connector",
                       item->name, gtl_a_kind(item->kind));
    } else {
        for (int i = 0; i < b->rig->case_count; i++)
            if (b->rig->cases[i].lost_kind == item->kind && b->rig->cases[i].lost == b->index[found])
                gtl_faults_add(b->faults, line, "`cases` names lost %s twice; once will do", item->name);
        add_case(b, GTL_LOST, item, b->index[found]);
    }
}

static void list_cases(gtl_building *b)
{
    const gtl_list *lost = &b->draft->sheet.losses;
    b->rig->cases = gtl_room(b, GTL_CASE_KIND_COUNT + lost->count, sizeof *b->rig->cases);
    if (!b->rig->cases) return;
    for (int kind = GTL_HOLD; kind < GTL_LOST; kind++)
        if (asks(b, (gtl_case_kind)kind) && (kind == GTL_HOLD || b->rig->hand >= 0))
            add_case(b, (gtl_case_kind)kind, NULL, -1);
    for (int i = 0; i < lost->count; i++)
        add_loss(b, b->draft->refs[lost->first + i].name, b->draft->sheet.cases.line);
    if (asks(b, GTL_DROP)) add_case(b, GTL_DROP, NULL, -1);
}

void gtl_settle_cases(gtl_building *b)
{
    if (b->rig->hand < 0) check_idle_sheet(b);
    widen(b);
    settle_acceleration(b);
    check_acceleration(b);
    check_jam(b);
    check_loss_factor(b);
    gtl_settle_drop(b);
    list_cases(b);
}

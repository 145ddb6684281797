/* pair.c - two hands on the two sides of an endless line: only one of them pulls, whichever need not push. As
 * read the first in the file is worked out, and the second is let go. */
#include "rig/building.h"

/* No more is said of a rig whose pairs are not clear: who is worked out depends on them. */
#define REFUSE(b, line, ...)                                                                                 \
    do {                                                                                                     \
        gtl_faults_add((b)->faults, (line), __VA_ARGS__);                                                    \
        (b)->draft->whole = false;                                                                           \
    } while (0)

static gtl_stated or_of(const gtl_building *b, int hand)
{
    return gtl_thing_item(b, hand)->other.stated;
}

/* The first hand before this one whose `or` names the same, -1 for none. */
static int rival(const gtl_building *b, int hand)
{
    for (int i = 0; i < hand; i++)
        if (or_of(b, i).yes && b->rig->things[i].other == b->rig->things[hand].other) return i;
    return -1;
}

static bool names_well(gtl_building *b, int hand, int other)
{
    const gtl_thing *things = b->rig->things;
    int line = or_of(b, hand).line;
    int before = rival(b, hand);
    if (other == hand)
        REFUSE(b, line, "hand `%s` names itself after `or`; name the hand on the other side of the line",
               things[hand].name);
    else if (before >= 0)
        REFUSE(b, line, "`%s` is the other hand of `%s` already (line %d); two hands make a pair, not three",
               things[other].name, things[before].name, or_of(b, before).line);
    else if (or_of(b, other).yes && things[other].other != hand)
        REFUSE(b, line, "`%s` has an `or` of its own (line %d); two hands make a pair, not three",
               things[other].name, or_of(b, other).line);
    else if (or_of(b, other).yes && hand > other)
        REFUSE(b, line, "`%s` says already that it is one or the other (line %d); leave it out here",
               things[other].name, or_of(b, other).line);
    else
        return !or_of(b, other).yes;
    return false;
}

/* Whether the pull of a hand that is one of a pair is known; that is a fault. */
static bool is_known(gtl_building *b, int hand)
{
    gtl_stated pull = gtl_thing_item(b, hand)->numbers[GTL_F_PULL].stated;
    if (!pull.yes) return false;
    REFUSE(b, pull.line,
           "hand `%s` is one of two of which the one that pulls is worked out; leave its `pull` out, or the "
           "`or`",
           b->rig->things[hand].name);
    return true;
}

static void pair(gtl_building *b, int hand, int other)
{
    bool known = is_known(b, hand);
    known = is_known(b, other) || known;
    if (known) return;
    gtl_thing *second = &b->rig->things[hand > other ? hand : other];
    b->rig->things[other].other = hand;
    second->pull = 0;
    second->let_go = true;
}

void gtl_pair_hands(gtl_building *b)
{
    for (int i = 0; i < b->rig->thing_count; i++) {
        int other = b->rig->things[i].other;
        if (or_of(b, i).yes && other >= 0 && names_well(b, i, other)) pair(b, i, other);
    }
}

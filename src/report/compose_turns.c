/* compose_turns.c - posts and bollards of the hauled rope: what whole turns on them do. */
#include "base/text.h"
#include "report/compose.h"

#include <math.h>

static void cell(gtl_composer *composer, double force)
{
    gtl_document_cell(composer->document, "%s", gtl_figure_force(&composer->units, force).text);
}

static void table(gtl_composer *composer, const gtl_post *post)
{
    const gtl_column columns[] = {{"Turns", false},      {"to hold", true}, {"to raise", true},
                                  {"in the lead", true}, {"on it", true},   {"on its anchor", true}};
    gtl_document_table(composer->document, columns, (int)(sizeof columns / sizeof *columns));
    for (int turns = 0; turns <= GTL_POST_TURNS; turns++) {
        const gtl_post_turn *turn = &post->turns[turns];
        bool stated = turns == composer->rig->things[post->thing].turns;
        gtl_document_cell(composer->document, "%d%s", turns, stated ? ", as stated" : "");
        cell(composer, turn->hold);
        cell(composer, turn->raise);
        cell(composer, turn->lead);
        cell(composer, turn->force);
        cell(composer, turn->anchor);
    }
}

/* How many turns the hand needs, by what it can pull. */
static void enough(gtl_composer *composer, const gtl_post *post)
{
    const gtl_thing *hand = &composer->rig->things[composer->rig->hand];
    const char *name = composer->rig->things[post->thing].name;
    if (isnan(hand->limit))
        gtl_document_bullet(composer->document,
                            "%s: what %s can pull is not stated, so that the turns needed are not known",
                            name, hand->name);
    else if (post->enough < 0)
        gtl_document_bullet(composer->document, "%s: %d whole turns are not enough for %s to hold the load",
                            name, GTL_POST_TURNS, hand->name);
    else
        gtl_document_bullet(composer->document,
                            "%s: %d whole turn%s %s the least with which %s, at %s, can keep the load from "
                            "running",
                            name, post->enough, post->enough == 1 ? "" : "s",
                            post->enough == 1 ? "is" : "are", hand->name,
                            gtl_figure_rating_unit(&composer->units, hand->limit).text);
}

void gtl_compose_turns(gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    if (sheet->post_count == 0) return;
    gtl_document_heading(composer->document, "Turns on a post [%s]", composer->units.force);
    gtl_document_paragraph(composer->document,
                           "Whole turns beside the bend that is drawn. To hold: what %s has to hold as the "
                           "load comes down slowly, "
                           "all friction at the least that is stated; less, and it runs. To raise: all "
                           "friction at its most, with "
                           "what is then in the rope that leads to the post, on the post and on its anchor.",
                           composer->rig->things[composer->rig->hand].name);
    for (int i = 0; i < sheet->post_count; i++) {
        gtl_document_paragraph(composer->document, "%s:", composer->rig->things[sheet->posts[i].thing].name);
        table(composer, &sheet->posts[i]);
    }
    for (int i = 0; i < sheet->post_count; i++) enough(composer, &sheet->posts[i]);
    gtl_document_bullet(
        composer->document,
        "a wet, worn, resined or polished post, and a turn that rides over another, hold less "
        "or jam: none of that is in these figures");
}

/* body_figure.c - a body cut free with the forces on it, as a figure of a worked solution. */
#include "explain/body_figure.h"
#include "explain/body_spokes.h"
#include "report/drawing_frame.h"
#include "report/escape.h"

#include <stdlib.h>

/* Between what stands side by side. */
#define GAP 16.0
/* So many entries of a list stand in one column. */
#define ONE_COLUMN 4

/* What came through the door for user text; NULL without memory. `text` is empty afterwards. */
static char *clean_of(gtl_text *text)
{
    char *raw = gtl_text_take(text), *clean = raw ? gtl_escape_for_people(raw) : NULL;
    free(raw);
    return clean;
}

/* Words below what stands already; where they end. */
static double add_words(gtl_drawing *drawing, double foot, int most, bool bold, gtl_text *text)
{
    char *words = clean_of(text);
    if (words)
        foot = gtl_frame_words(drawing, (gtl_point){GTL_MARGIN, foot}, GTL_FULL_WIDTH, most, bold, words);
    else
        drawing->failed = true;
    free(words);
    return foot;
}

static double add_title(const gtl_body *body, gtl_drawing *drawing)
{
    gtl_text text = {0};
    gtl_add_body_name(&text, body->lesson, body->node);
    gtl_text_add(&text, ", cut free%s", body->outcome->kind == GTL_HOLD ? "" : ", with friction");
    drawing->title = clean_of(&text);
    if (!drawing->title) drawing->failed = true;
    if (!drawing->title) return 0;
    return gtl_frame_words(drawing, (gtl_point){GTL_MARGIN, GTL_TEXT_STEP + 2}, GTL_FULL_WIDTH, 2, true,
                           drawing->title);
}

/* --- views --- */

/* In heights or a plane one view, its labels written out if they fit. */
static bool draw_one(const gtl_body *body, gtl_drawing *drawing, double *foot)
{
    gtl_body_view view = {.spot = {GTL_DRAWING_WIDTH / 2, *foot}, .width = GTL_FULL_WIDTH};
    if (gtl_body_view_draw(body, drawing, &view, foot)) return false;
    view.keyed = true;
    gtl_body_view_draw(body, drawing, &view, foot);
    return true;
}

/* In space an elevation and a side view, side by side, with keys. */
static bool draw_two(const gtl_body *body, gtl_drawing *drawing, double *foot)
{
    static const char *const names[] = {"elevation: x across, height up", "side view: y across, height up"};
    double width = (GTL_FULL_WIDTH - GAP) / 2, lowest = *foot;
    for (int i = 0; i < 2; i++) {
        double left = GTL_MARGIN + i * (width + GAP), end;
        gtl_body_view view = {.number = i,
                              .across = i,
                              .keyed = true,
                              .spot = {left + width / 2, *foot + GTL_TEXT_STEP},
                              .width = width};
        gtl_shape_text(drawing, GTL_ROLE_FRAME, (gtl_point){left, *foot}, false, "%s", names[i]);
        gtl_body_view_draw(body, drawing, &view, &end);
        if (end > lowest) lowest = end;
    }
    *foot = lowest;
    return true;
}

/* --- what stands below --- */

/* An entry of the list; NULL without memory. */
static char *entry_of(const gtl_body *body, int force)
{
    const gtl_force *of = &body->forces[force];
    gtl_figure key = gtl_force_key(body, force), name = gtl_force_name(of);
    gtl_text text = {0};
    bool letter = key.text[1] == '\0' && key.text[0] >= 'a';
    if (letter) gtl_text_add(&text, "%s: ", key.text);
    gtl_text_add(&text, "%s %s, ", name.text, gtl_force_size(body, of).text);
    gtl_add_way_words(&text, body, of);
    return clean_of(&text);
}

/* In one column, or in two. */
static double put_list(gtl_drawing *drawing, char *const *entries, int count, bool two, double foot)
{
    double width = (GTL_FULL_WIDTH - GAP) / 2, lowest = foot;
    int rows = two ? (count + 1) / 2 : count;
    double at = foot;
    for (int i = 0; i < count; i++) {
        int column = i / rows;
        if (i % rows == 0) at = foot;
        gtl_point place = {GTL_MARGIN + column * (width + GAP), at};
        at = gtl_frame_words(drawing, place, two ? width : GTL_FULL_WIDTH, 2, false, entries[i]);
        if (at > lowest) lowest = at;
    }
    return lowest;
}

static double add_list(const gtl_body *body, gtl_drawing *drawing, double foot)
{
    char *entries[GTL_MOST_FORCES];
    bool made = true;
    for (int i = 0; i < body->count; i++) {
        entries[i] = entry_of(body, i);
        made = made && entries[i];
    }
    if (made)
        foot = put_list(drawing, entries, body->count, body->count > ONE_COLUMN && body->lesson->rig->dim < 3,
                        foot);
    else
        drawing->failed = true;
    for (int i = 0; i < body->count; i++) free(entries[i]);
    return foot;
}

static bool any_lengthened(const gtl_body *body)
{
    for (int i = 0; i < body->count; i++)
        if (body->forces[i].least * gtl_arrow_scale(body) < GTL_LEAST_ARROW) return true;
    return false;
}

static bool any_in_part(const gtl_body *body)
{
    for (int i = 0; i < body->count; i++)
        if (body->forces[i].count > GTL_MOST_ALIKE || body->forces[i].last.text[0]) return true;
    return false;
}

static double add_scale(const gtl_body *body, gtl_drawing *drawing, double foot)
{
    gtl_text text = {0};
    if (body->count == 0)
        gtl_text_add(&text, "No force acts on it.");
    else
        gtl_text_add(&text, "Arrows are to one scale, the longest is %s.",
                     gtl_exact_force(body->lesson, body->largest).text);
    if (any_lengthened(body)) gtl_text_add(&text, " The shortest are drawn longer, to be seen.");
    if (any_in_part(body)) gtl_text_add(&text, " Of many side by side a few are drawn.");
    if (body->left_out > 0) gtl_text_add(&text, " Forces that are not drawn: %d.", body->left_out);
    if (body->idle > 0) gtl_text_add(&text, " Parts that pull nothing here: %d.", body->idle);
    return add_words(drawing, foot, 3, false, &text);
}

static void draw(const gtl_body *body, gtl_drawing *drawing)
{
    drawing->width = GTL_DRAWING_WIDTH;
    double foot = add_title(body, drawing);
    bool keyed = (body->lesson->rig->dim == 3 ? draw_two : draw_one)(body, drawing, &foot);
    foot += GTL_TEXT_STEP + 4;
    if (keyed) foot = add_list(body, drawing, foot);
    drawing->height = add_scale(body, drawing, foot) - GTL_TEXT_STEP / 2;
}

/* --- the figure --- */

static void put(gtl_lesson *lesson, const gtl_body *body, const gtl_drawing *drawing)
{
    gtl_text id = {0}, markup = {0};
    char *words = gtl_body_words(body), *clean = words ? gtl_escape_for_people(words) : NULL;
    gtl_text_add(&id, "%s-%d", lesson->prefix, ++lesson->figures);
    char *prefix = gtl_text_take(&id);
    if (clean && prefix && !drawing->failed) {
        gtl_write_drawing(&markup, drawing, prefix, clean);
        gtl_document_figure(lesson->document, drawing->title, &markup);
    } else {
        lesson->document->failed = true;
    }
    free(prefix);
    free(clean);
    free(words);
}

void gtl_lesson_body_figure(gtl_lesson *lesson, const gtl_outcome *outcome, int node)
{
    gtl_body body;
    if (lesson->wish.form == GTL_TEXT) return; /* text leaves figures out */
    gtl_drawing *drawing = calloc(1, sizeof *drawing);
    if (drawing && gtl_body_gather(&body, lesson, outcome, node)) {
        draw(&body, drawing);
        put(lesson, &body, drawing);
    } else {
        lesson->document->failed = true;
    }
    gtl_drawing_end(drawing);
}

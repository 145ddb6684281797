/* write_svg.c - a drawing as an <svg> element. Black on white; all text is <text>. */
#include "report/drawing_pieces.h"
#include "report/escape.h"

#include <math.h>

#define HALF_TURN 3.141592653589793 /* [rad] */
/* Beyond this no drawing has anything; keeps the digits countable. */
#define FARTHEST 1e9

/* At most two decimals, whatever the locale. */
static void add_number(gtl_text *out, const char *before, double number, const char *after)
{
    long long hundredths = llround(fmin(fmax(number, -FARTHEST), FARTHEST) * 100);
    unsigned long long size = (unsigned long long)(hundredths < 0 ? -hundredths : hundredths);
    gtl_text_add(out, "%s%s%llu", before, hundredths < 0 ? "-" : "", size / 100);
    if (size % 10)
        gtl_text_add(out, ".%02llu", size % 100);
    else if (size % 100)
        gtl_text_add(out, ".%llu", size % 100 / 10);
    gtl_text_add(out, "%s", after);
}

static void add_point(gtl_text *out, const char *before, gtl_point at)
{
    add_number(out, before, at.x, " ");
    add_number(out, "", at.y, "");
}

static gtl_point on_arc(const gtl_shape *arc, double angle)
{
    return (gtl_point){arc->a.x + arc->radius * cos(angle), arc->a.y + arc->radius * sin(angle)};
}

static void add_line(gtl_text *out, const gtl_shape *line)
{
    add_number(out, "<line x1=\"", line->a.x, "\"");
    add_number(out, " y1=\"", line->a.y, "\"");
    add_number(out, " x2=\"", line->b.x, "\"");
    add_number(out, " y2=\"", line->b.y, "\"");
}

/* In halves, since an arc of a whole turn begins where it ends. */
static void add_arc(gtl_text *out, const gtl_shape *arc)
{
    bool large = fabs(arc->sweep / 2) > HALF_TURN;
    add_point(out, "<path d=\"M", on_arc(arc, arc->from));
    for (int half = 1; half <= 2; half++) {
        add_number(out, "A", arc->radius, " ");
        add_number(out, "", arc->radius, " 0 ");
        gtl_text_add(out, "%d %d", large, arc->sweep > 0);
        add_point(out, " ", on_arc(arc, arc->from + arc->sweep * half / 2));
    }
    gtl_text_add(out, "\"");
}

static void add_circle(gtl_text *out, const gtl_shape *circle)
{
    add_number(out, "<circle cx=\"", circle->a.x, "\"");
    add_number(out, " cy=\"", circle->a.y, "\"");
    add_number(out, " r=\"", circle->radius, "\"");
}

static void add_box(gtl_text *out, const gtl_shape *box)
{
    add_number(out, "<rect x=\"", box->a.x, "\"");
    add_number(out, " y=\"", box->a.y, "\"");
    add_number(out, " width=\"", box->b.x - box->a.x, "\"");
    add_number(out, " height=\"", box->b.y - box->a.y, "\"");
}

static void add_head(gtl_text *out, const gtl_shape *head)
{
    add_point(out, "<path d=\"M", head->a);
    add_point(out, "L", head->b);
    add_point(out, "L", head->c);
    gtl_text_add(out, "Z\"");
}

static void add_text(gtl_text *out, const gtl_shape *text)
{
    add_number(out, "<text x=\"", text->a.x, "\"");
    add_number(out, " y=\"", text->a.y, "\"");
    if (text->align != GTL_ALIGN_LEFT)
        gtl_text_add(out, " text-anchor=\"%s\"", text->align == GTL_ALIGN_MIDDLE ? "middle" : "end");
    gtl_text_add(out, "%s>", text->bold ? " font-weight=\"bold\"" : "");
    gtl_escape_markup(out, text->text);
    gtl_text_add(out, "</text>\n");
}

/* The drawing's own pen is black and fills nothing: only what differs is said. */
static void add_pen(gtl_text *out, const gtl_shape *shape)
{
    add_number(out, " stroke-width=\"", shape->width, "\"");
    if (shape->dashed) gtl_text_add(out, " stroke-dasharray=\"7 5\"");
    if (shape->fill != GTL_FILL_NONE)
        gtl_text_add(out, " fill=\"%s\"", shape->fill == GTL_FILL_WHITE ? "#fff" : "#000");
    gtl_text_add(out, "/>\n");
}

static void add_shape(gtl_text *out, const gtl_shape *shape)
{
    static void (*const add[])(gtl_text *, const gtl_shape *) = {
        [GTL_SHAPE_LINE] = add_line, [GTL_SHAPE_ARC] = add_arc,   [GTL_SHAPE_CIRCLE] = add_circle,
        [GTL_SHAPE_BOX] = add_box,   [GTL_SHAPE_HEAD] = add_head,
    };
    if (shape->kind == GTL_SHAPE_TEXT) return;
    add[shape->kind](out, shape);
    add_pen(out, shape);
}

/* The element of the piece from `top` to `foot`. */
static void add_opening(gtl_text *out, const gtl_drawing *drawing, double top, double foot)
{
    gtl_text_add(out, "<svg xmlns=\"http://www.w3.org/2000/svg\"");
    double width = drawing->bare ? drawing->width : GTL_DRAWING_WIDTH;
    if (drawing->bare) gtl_text_add(out, " class=\"bare\"");
    add_number(out, " viewBox=\"", drawing->left, " ");
    add_number(out, "", top, " ");
    add_number(out, "", width, " ");
    add_number(out, "", foot - top, "\"");
    add_number(out, " width=\"", width, "\"");
    add_number(out, " height=\"", foot - top, "\"");
}

/* Title and alternative stand in the first piece, and tell the whole. */
static void add_names(gtl_text *out, const gtl_drawing *drawing, const char *prefix, const char *alternative)
{
    gtl_text_add(out, " role=\"img\" aria-labelledby=\"%s-title %s-desc\">\n", prefix, prefix);
    gtl_text_add(out, "<title id=\"%s-title\">", prefix);
    gtl_escape_markup(out, drawing->title);
    gtl_text_add(out, "</title>\n<desc id=\"%s-desc\">", prefix);
    gtl_escape_markup(out, alternative);
    gtl_text_add(out, "</desc>\n");
}

static void add_shapes(gtl_text *out, const gtl_drawing *drawing, double top, double foot)
{
    add_number(out, "<rect y=\"", top, "\"");
    add_number(out, " width=\"", GTL_DRAWING_WIDTH, "\"");
    add_number(out, " height=\"", foot - top, "\" fill=\"#fff\"/>\n");
    gtl_text_add(out, "<g fill=\"none\" stroke=\"#000\" stroke-linecap=\"round\">\n");
    for (int i = 0; i < drawing->count; i++)
        if (gtl_shape_within(&drawing->shapes[i], top, foot)) add_shape(out, &drawing->shapes[i]);
    gtl_text_add(out, "</g>\n<g fill=\"#000\" font-family=\"sans-serif\" font-size=\"16\">\n");
    for (int i = 0; i < drawing->count; i++)
        if (drawing->shapes[i].kind == GTL_SHAPE_TEXT && gtl_shape_within(&drawing->shapes[i], top, foot))
            add_text(out, &drawing->shapes[i]);
    gtl_text_add(out, "</g>\n</svg>\n");
}

void gtl_write_drawing(gtl_text *out, const gtl_drawing *drawing, const char *prefix, const char *alternative)
{
    add_opening(out, drawing, drawing->top, drawing->height);
    add_names(out, drawing, prefix, alternative);
    add_shapes(out, drawing, drawing->top, drawing->height);
}

void gtl_write_drawing_pieces(gtl_text *out, const gtl_drawing *drawing, const char *prefix,
                              const char *alternative)
{
    double top = 0;
    while (top < drawing->height) {
        double foot = gtl_drawing_cut(drawing, top);
        add_opening(out, drawing, top, foot);
        if (top > 0)
            gtl_text_add(out, " aria-hidden=\"true\">\n");
        else
            add_names(out, drawing, prefix, alternative);
        add_shapes(out, drawing, top, foot);
        top = foot;
    }
}

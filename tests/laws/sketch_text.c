/* sketch_text.c - a drawn rig as the text of a rig file. Numbers have 17 digits: what is read is what was
 * drawn. */
#define _POSIX_C_SOURCE 200809L
#include "laws/sketch.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

void sketch_name(char name[GTL_NAME_LIMIT + 1], gtl_kind kind, int index)
{
    snprintf(name, GTL_NAME_LIMIT + 1, "%s-%d", gtl_kind_name(kind), index);
}

static void write_name(FILE *out, gtl_kind kind, int index)
{
    char name[GTL_NAME_LIMIT + 1];
    sketch_name(name, kind, index);
    fputs(name, out);
}

static void write_header(FILE *out, gtl_kind kind, int index)
{
    fprintf(out, "\n[%s ", gtl_kind_name(kind));
    write_name(out, kind, index);
    fputs("]\n", out);
}

static void write_number(FILE *out, const char *key, double value, const char *unit)
{
    if (!isnan(value)) fprintf(out, "%s = %.17g%s\n", key, value, unit);
}

static void write_word(FILE *out, const char *key, const char *word)
{
    if (word[0]) fprintf(out, "%s = %s\n", key, word);
}

static void write_via(FILE *out, sketch_via via)
{
    for (int i = 0; i < via.count; i++) {
        fputs(i == 0 ? " via " : " + ", out);
        write_name(out, GTL_CONNECTOR, via.first + i);
    }
}

static void write_place(FILE *out, const sketch *s, int index)
{
    const sketch_thing *thing = &s->things[index];
    if (thing->on >= 0) {
        fputs("on = ", out);
        write_name(out, s->things[thing->on].kind, thing->on);
        write_via(out, thing->via);
        fputs("\n", out);
        return;
    }
    double at[3];
    sketch_place(s, index, at);
    fputs("at = ", out);
    for (int k = 0; k < s->dim; k++) fprintf(out, "%s%.17g m", k == 0 ? "" : ", ", at[k]);
    fputs("\n", out);
}

static void write_thing(FILE *out, const sketch *s, int index)
{
    const sketch_thing *thing = &s->things[index];
    write_header(out, thing->kind, index);
    write_place(out, s, index);
    if (thing->guided) fputs("guide = vertical\n", out);
    if (thing->turns > 0) fprintf(out, "turns = %d\n", thing->turns);
    write_number(out, "weight", thing->weight, " N");
    write_number(out, "efficiency", thing->efficiency, "");
    write_number(out, "friction", thing->friction, "");
    write_number(out, "wrap", thing->wrap, " rad");
    write_number(out, "pull", thing->pull, " N");
    write_number(out, "limit", thing->limit, " N");
    write_number(out, "wll", thing->wll, " N");
    write_number(out, "mbs", thing->mbs, " N");
    write_number(out, "wear", thing->wear, "");
}

static void write_line(FILE *out, const sketch *s, int index)
{
    const sketch_line *line = &s->lines[index];
    write_header(out, line->kind, index);
    fputs("path = ", out);
    for (int i = 0; i < line->stop_count; i++) {
        if (i > 0) fputs(", ", out);
        write_name(out, s->things[line->stops[i].thing].kind, line->stops[i].thing);
        write_via(out, line->stops[i].via);
    }
    fputs("\n", out);
    write_number(out, "length", line->length, " m");
    write_number(out, "weight", line->weight, " N");
    write_number(out, "wll", line->wll, " N");
    write_number(out, "push wll", line->push_wll, " N");
    write_number(out, "wear", line->wear, "");
    write_number(out, "wet", line->wet, "");
    write_word(out, "knot", line->knot);
    write_word(out, "hitch", line->hitch);
}

static void write_cases(FILE *out, const bool cases[BASIC_CASES])
{
    const char *before = "cases = ";
    for (int k = 0; k < BASIC_CASES; k++) {
        if (!cases[k]) continue;
        fprintf(out, "%s%s", before, gtl_case_name((gtl_case_kind)k));
        before = ", ";
    }
    if (before[0] == ',') fputs("\n", out);
}

static void write_sheet(FILE *out, const sketch *s)
{
    fputs("[rig]\ntitle = Invented\n", out);
    write_number(out, "design factor", s->design_factor, "");
    write_number(out, "acceleration", s->acceleration, " m/s2");
    if (s->all_cases)
        fputs("cases = all\n", out);
    else
        write_cases(out, s->cases);
    if (s->load < 0) return;
    fputs("load = ", out);
    write_name(out, GTL_LOAD, s->load);
    fputs("\n", out);
}

/* Section `index` of all: things, then lines, then connectors. */
static void write_section(FILE *out, const sketch *s, int index)
{
    if (index < s->thing_count) {
        write_thing(out, s, index);
    } else if (index < s->thing_count + s->line_count) {
        write_line(out, s, index - s->thing_count);
    } else {
        int connector = index - s->thing_count - s->line_count;
        write_header(out, GTL_CONNECTOR, connector);
        write_number(out, "wll", s->connectors[connector], " N");
    }
}

static void shuffle_order(int *order, int count, chance *c)
{
    for (int i = count - 1; i > 0; i--) {
        int other = chance_below(c, i + 1);
        int kept = order[i];
        order[i] = order[other];
        order[other] = kept;
    }
}

char *sketch_text(const sketch *s, chance *shuffle)
{
    int order[SKETCH_THINGS + SKETCH_LINES + SKETCH_CONNECTORS];
    int count = s->thing_count + s->line_count + s->connector_count;
    char *text = NULL;
    size_t size = 0;
    FILE *out = open_memstream(&text, &size);
    if (!out) abort();
    for (int i = 0; i < count; i++) order[i] = i;
    if (shuffle) shuffle_order(order, count, shuffle);
    write_sheet(out, s);
    for (int i = 0; i < count; i++) write_section(out, s, order[i]);
    if (fclose(out) != 0) abort();
    return text;
}

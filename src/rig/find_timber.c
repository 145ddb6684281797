/* find_timber.c - loads and spars that are pieces of timber: what is missing, what says a thing twice, and
 * what each weighs. */
#include "rig/building.h"
#include "rig/gear.h"

#include <math.h>

bool gtl_is_timber(const gtl_item *item)
{
    return item->rows[GTL_R_SPECIES].stated.yes || item->numbers[GTL_F_DENSITY].stated.yes;
}

static gtl_stated stated(const gtl_item *item, gtl_field field)
{
    return item->numbers[field].stated;
}

/* Where it says what wood it is. */
static gtl_stated wood_stated(const gtl_item *item)
{
    const gtl_stated *species = &item->rows[GTL_R_SPECIES].stated;
    return species->yes ? *species : stated(item, GTL_F_DENSITY);
}

static int later(int one, int other)
{
    return one > other ? one : other;
}

/* Its weight, or its wood, said twice. */
static void check_once(gtl_building *b, const gtl_item *item)
{
    gtl_stated species = item->rows[GTL_R_SPECIES].stated;
    gtl_stated density = stated(item, GTL_F_DENSITY), mass = stated(item, GTL_F_MASS);
    if (!mass.yes) mass = stated(item, GTL_F_WEIGHT);
    if (species.yes && density.yes)
        gtl_faults_add(b->faults, later(species.line, density.line),
                       "`species` and `density` are two spellings of one thing; keep one of them");
    if (mass.yes)
        gtl_faults_add(
            b->faults, later(mass.line, wood_stated(item).line),
            "`%s` gives a mass, and so does `%s`; keep the one that was weighed, or else the timber",
            species.yes ? "species" : "density", stated(item, GTL_F_MASS).yes ? "mass" : "weight");
}

static void check_measured(gtl_building *b, const gtl_item *item)
{
    const char *wood = item->rows[GTL_R_SPECIES].stated.yes ? "species" : "density";
    int line = wood_stated(item).line;
    bool length = stated(item, GTL_F_STEM_LENGTH).yes;
    if (length && item->diameters.stated.yes) return;
    if (!length && !item->diameters.stated.yes)
        gtl_faults_add(b->faults, line,
                       "`%s` needs `length` and `diameter` of the piece, such as length = 2 m and diameter = "
                       "45 cm, 35 cm",
                       wood);
    else
        gtl_faults_add(b->faults, line, "`%s` needs `%s` of the piece, such as %s", wood,
                       length ? "diameter" : "length", length ? "diameter = 45 cm, 35 cm" : "length = 2 m");
}

/* Nothing can be chosen where there is no spread. */
static void check_end(gtl_building *b, const gtl_item *item)
{
    const gtl_number *density = &item->numbers[GTL_F_DENSITY];
    bool single = density->stated.yes && !isnan(density->value) && isnan(density->high);
    if (item->wood_end_stated.yes && single)
        gtl_faults_add(b->faults, item->wood_end_stated.line,
                       "`density end` changes nothing: one `density` has no spread; give it as a range, or "
                       "leave this out");
}

/* What belongs to timber, of an item that is none. */
static void check_idle(gtl_building *b, gtl_item *item)
{
    const struct {
        gtl_stated stated;
        const char *key;
    } keys[] = {{item->diameters.stated, "diameter"},
                {stated(item, GTL_F_STEM_LENGTH), "length"},
                {stated(item, GTL_F_BARK), "bark"},
                {item->wood_end_stated, "density end"}};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        if (!keys[i].stated.yes) continue;
        gtl_faults_add(b->faults, keys[i].stated.line,
                       "`%s` needs `species` or `density`: what wood it is, such as species = white-oak%s",
                       keys[i].key, item->kind == GTL_SPAR ? "; a spar is as long as it is drawn" : "");
        item->rough = true; /* its weight may be what is meant */
        return;
    }
}

static double value(const gtl_item *item, gtl_field field)
{
    return item->numbers[field].value;
}

/* NaN wherever something is missing, or could not be read: both are told. */
static gtl_timber measured(const gtl_item *item, const gtl_hardware_row *row)
{
    const gtl_number *density = &item->numbers[GTL_F_DENSITY];
    gtl_timber timber = {.length = value(item, GTL_F_STEM_LENGTH),
                         .diameter_count = item->diameters.count,
                         .bark = value(item, GTL_F_BARK),
                         .row = row,
                         .typed = {density->value, isnan(density->high) ? density->value : density->high},
                         .end = item->wood_end};
    for (int i = 0; i < timber.diameter_count; i++) timber.diameters[i] = item->diameters.of[i];
    if (stated(item, GTL_F_BARK).yes && isnan(timber.bark)) timber.length = NAN;
    gtl_timber_work(&timber);
    return timber;
}

void gtl_find_timber(gtl_building *b)
{
    for (int i = 0; i < b->draft->item_count; i++) {
        gtl_item *item = &b->draft->items[i];
        if (item->lost || !gtl_is_of(item->kind, GTL_TIMBER_KINDS)) continue;
        if (gtl_is_timber(item)) {
            check_once(b, item);
            if (!item->rough) check_measured(b, item);
            if (!item->rough) check_end(b, item);
            b->timber[i] = measured(item, gtl_named_row(b, item, GTL_R_SPECIES));
        } else if (!item->rough) {
            check_idle(b, item);
        }
    }
}

void gtl_keep_timber(gtl_building *b)
{
    gtl_rig *rig = b->rig;
    rig->woods = gtl_room(b, b->draft->item_count, sizeof *rig->woods);
    for (int i = 0; i < b->draft->item_count && rig->woods; i++) {
        const gtl_item *item = &b->draft->items[i];
        if (item->lost || !gtl_is_of(item->kind, GTL_TIMBER_KINDS) || !gtl_is_timber(item)) continue;
        rig->woods[rig->wood_count++] = (gtl_wood){item->kind, b->index[i], b->timber[i]};
    }
}

/* A spar may stand out beyond its stops, but not end before it reaches them. */
void gtl_check_timber(gtl_building *b)
{
    const gtl_rig *rig = b->rig;
    for (int i = 0; i < rig->wood_count; i++) {
        const gtl_wood *wood = &rig->woods[i];
        if (wood->kind != GTL_SPAR) continue;
        const gtl_item *item = gtl_line_item(b, wood->index);
        double between = gtl_drawn_length(rig, rig->lines[wood->index].first_piece);
        if (wood->timber.length < between * (1 - 1e-9))
            gtl_faults_add(b->faults, stated(item, GTL_F_STEM_LENGTH).line,
                           "`length`: spar `%s` is shorter than the way between its stops, %.3g m; see which "
                           "of them is mistyped",
                           item->name, between);
    }
}

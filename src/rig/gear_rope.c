/* gear_rope.c - what ropes and slings are made of, what their ends and hitches leave of their rating, and
 * what of that contradicts itself. */
#include "rig/gear.h"

#include <math.h>
#include <stdio.h>

/* Longer than the names of a hitch and of a material together. */
#define NAME_SIZE 80

static gtl_rope_class class_of(const gtl_hardware_row *material)
{
    return material ? material->rope_class : GTL_CLASS_NONE;
}

static bool is_fibre(gtl_rope_class rope_class)
{
    return rope_class == GTL_CLASS_FIBRE || rope_class == GTL_CLASS_NATURAL_FIBRE;
}

/* Knots are for fibre, and not for every fibre. */
static void check_knot(gtl_building *b, const gtl_item *item, const gtl_gear *gear)
{
    int line = item->rows[GTL_R_KNOT].stated.line;
    const gtl_hardware_row *end = gear->termination;
    const gtl_hardware_row *material = gear->material;
    if (!gear->knot) return;
    if (material && !is_fibre(material->rope_class))
        gtl_faults_add(b->faults, line,
                       "`knot`: `%s` is %s, and knots are for fibre rope; write its `termination`, or leave "
                       "`knot` out",
                       material->name, gtl_rope_class_name(material->rope_class));
    else if (material && material->no_knots)
        gtl_faults_add(
            b->faults, line,
            "`knot`: `%s` loses far more in a knot than other fibres, so none of the knot figures may "
            "be applied to it; leave `knot` out, and type a rating that allows for its ends, as its "
            "maker gives it",
            material->name);
    if (end && !gtl_hardware_suits(end, GTL_CLASS_FIBRE) && !gtl_hardware_suits(end, GTL_CLASS_NATURAL_FIBRE))
        gtl_faults_add(b->faults, line,
                       "`knot` is for fibre rope, and `termination = %s` is not; keep the one that is there",
                       end->name);
}

/* A shipped end for fibre at large is not for one that takes no figure of a knot; a row of the user's own is
 * the user's figure for just this rope. */
static void check_termination(gtl_building *b, const gtl_item *item, const gtl_gear *gear)
{
    int line = item->rows[GTL_R_TERMINATION].stated.line;
    const gtl_hardware_row *end = gear->termination;
    const gtl_hardware_row *material = gear->material;
    if (!end || !material) return;
    if (!gtl_hardware_suits(end, material->rope_class))
        gtl_faults_add(b->faults, line,
                       "`termination`: `%s` is not for %s, which `%s` is; name another, or mend `material` "
                       "(`gantline hardware %s` says what it is for)",
                       end->name, gtl_rope_class_name(material->rope_class), material->name, end->name);
    else if (is_fibre(material->rope_class) && material->no_knots && end->shipped)
        gtl_faults_add(
            b->faults, line,
            "`termination`: none of the figures for ends of fibre rope may be applied to `%s`; write "
            "a row of your own from its maker's figure (`tables` in [rig]), or leave `termination` "
            "out and type a rating that allows for its ends",
            material->name);
}

static const gtl_hardware_row *special_hitch(gtl_building *b, gtl_word hitch, const char *of)
{
    char name[NAME_SIZE];
    snprintf(name, sizeof name, "%.*s-%s", GTL_SPELL(hitch), of);
    return gtl_hardware_find(b->rig->hardware, GTL_HW_HITCH, name);
}

/* The row for the material, else for its class, else for any sling. */
static void find_hitch(gtl_building *b, gtl_item *item, gtl_gear *gear)
{
    gtl_word hitch = item->rows[GTL_R_HITCH].name;
    const gtl_hardware_row *material = gear->material;
    if (hitch.length == 0) return;
    if (material) gear->hitch = special_hitch(b, hitch, material->name);
    if (material && !gear->hitch)
        gear->hitch = special_hitch(b, hitch, gtl_rope_class_name(material->rope_class));
    if (!gear->hitch) gear->hitch = gtl_named_row(b, item, GTL_R_HITCH);
    if (!material || !gear->hitch || gtl_hardware_suits(gear->hitch, material->rope_class)) return;
    const char *rope_class = gtl_rope_class_name(material->rope_class);
    gtl_faults_add(
        b->faults, item->rows[GTL_R_HITCH].stated.line,
        "`hitch`: [hitch %s] is not for %s, which `%s` is; write a row [hitch %.*s-%s] that is, into "
        "a table of your own (`tables` in [rig])",
        gear->hitch->name, rope_class, material->name, GTL_SPELL(hitch), rope_class);
}

static bool is_choked(const gtl_item *item)
{
    return gtl_word_compare(item->rows[GTL_R_HITCH].name, gtl_word_of("choke")) == 0;
}

/* What the angle of choke leaves: by class where there is a row for it, else as of slings at large. Without a
 * material nothing is known of the class: the row is there to be shown, and rating says that more is needed.
 */
static void find_choke(gtl_building *b, const gtl_item *item, gtl_gear *gear)
{
    gtl_stated stated = item->numbers[GTL_F_CHOKE_ANGLE].stated;
    gtl_rope_class rope_class = class_of(gear->material);
    const gtl_hardware *set = b->rig->hardware;
    gear->choked = is_choked(item);
    if (!gear->choked) return;
    gear->choke = gtl_hardware_find(set, GTL_HW_CHOKE, gtl_rope_class_name(rope_class));
    if (!gear->choke)
        gear->choke = gtl_needed_row(b, item->rows[GTL_R_HITCH].stated.line, GTL_HW_CHOKE, "sling");
    if (!gear->material || !gear->choke || gtl_hardware_suits(gear->choke, rope_class)) return;
    gear->choke = NULL;
    if (!stated.yes) return;
    gtl_faults_add(
        b->faults, stated.line,
        "`choke angle`: no table says what it leaves of %s, which `%s` is; write a [choke %s] into a "
        "table of your own (`tables` in [rig]), or leave it out",
        gtl_rope_class_name(rope_class), gear->material->name, gtl_rope_class_name(rope_class));
}

static void check_choke_angle(gtl_building *b, const gtl_item *item)
{
    gtl_stated stated = item->numbers[GTL_F_CHOKE_ANGLE].stated;
    bool unread = item->rows[GTL_R_HITCH].stated.yes && item->rows[GTL_R_HITCH].name.length == 0;
    if (!stated.yes || is_choked(item) || unread) return;
    gtl_faults_add(b->faults, stated.line,
                   "`choke angle` changes nothing without hitch = choke; write that too, or leave it out");
}

void gtl_find_rope_gear(gtl_building *b, gtl_item *item, gtl_gear *gear)
{
    bool typed = item->rows[GTL_R_MATERIAL].stated.yes;
    gear->material = gtl_named_row(b, item, GTL_R_MATERIAL);
    if (!typed && gear->row)
        gear->material = gtl_hardware_find(b->rig->hardware, GTL_HW_MATERIAL, gear->row->material);
    gear->knot = gtl_named_row(b, item, GTL_R_KNOT);
    gear->termination = gtl_named_row(b, item, GTL_R_TERMINATION);
    check_knot(b, item, gear);
    check_termination(b, item, gear);
    gtl_rope_class rope_class = class_of(gear->material);
    if (!isnan(gear->diameter) && (rope_class == GTL_CLASS_WIRE || rope_class == GTL_CLASS_NONE))
        gear->bend = gtl_needed_row(b, item->line, GTL_HW_BEND, "wire-rope");
    gear->choke_angle = item->numbers[GTL_F_CHOKE_ANGLE].value;
    find_hitch(b, item, gear);
    find_choke(b, item, gear);
    check_choke_angle(b, item);
}

/* given.c - what a problem gives: the figures of each part of the rig, as the rig file has them. */
#include "worksheet/worked.h"

#include <stdlib.h>

/* The keys that a pull is worked out from, with what they are called on a sheet; friction only where it is
 * asked for. Ratings are no part of a problem. */
static const struct given_key {
    const char *key;
    const char *words;
    bool friction;
} keys[] = {
    {"mass", "mass", false},
    {"weight", "weight", false},
    {"efficiency", "efficiency of one sheave", true},
    {"friction", "friction", true},
    {"turns", "whole turns", true},
    {"wrap", "wrap", true},
    {"pull", "pulls", false},
    {"length", "length", false},
    {"guide", "track", false},
};

#define KEY_COUNT (sizeof keys / sizeof *keys)

/* The value of a key in the section that begins at a header, NULL where it is not there. */
static const char *typed(const gtl_worked *worked, const gtl_entry *header, const char *key)
{
    const gtl_entry *end = worked->entries + worked->problem->rig.count;
    for (const gtl_entry *entry = header + 1; entry < end && entry->key; entry++)
        if (gtl_text_compare(entry->key, key) == 0) return entry->value;
    return NULL;
}

bool gtl_is_typed(const gtl_worked *worked, const gtl_thing *thing, const char *key)
{
    for (size_t i = 0; i < worked->problem->rig.count; i++) {
        const gtl_entry *header = &worked->entries[i];
        if (!header->key && gtl_text_compare(header->name, thing->name) == 0)
            return typed(worked, header, key) != NULL;
    }
    return false;
}

static void add(gtl_text *text, const char *words, const char *value)
{
    gtl_text_add(text, "%s%s %s", text->length > 0 ? ", " : "", words, value);
}

/* The rig's thing of that name, NULL for a line or connector. */
static const gtl_thing *thing_named(const gtl_rig *rig, const char *name)
{
    for (int i = 0; i < rig->thing_count; i++)
        if (gtl_text_compare(rig->things[i].name, name) == 0) return &rig->things[i];
    return NULL;
}

/* What the section leaves to [rig] or to a row of a table. */
static void add_from_rig(gtl_text *text, const gtl_worked *worked, const gtl_entry *header,
                         const gtl_thing *thing)
{
    double mass = thing->weight / worked->rig->gravity;
    bool runs = thing->kind == GTL_BLOCK || thing->kind == GTL_FAIRLEAD;
    if (mass > 0 && !typed(worked, header, "mass") && !typed(worked, header, "weight"))
        add(text, "mass", gtl_figure_mass_unit(&worked->lesson.units, mass).text);
    if (runs && thing->friction_stated && gtl_problem_raises(worked->problem) &&
        !typed(worked, header, "efficiency") && !typed(worked, header, "friction"))
        add(text, "efficiency of one sheave", gtl_exact_percent(thing->efficiency).text);
}

/* Heights alone do not matter; places do. */
static void add_place(gtl_text *text, const gtl_worked *worked, const gtl_entry *header)
{
    static const char *const axes[] = {"across", "along", "high"};
    const char *at = typed(worked, header, "at");
    gtl_word rest = gtl_word_of(at ? at : ""), length;
    if (!at || worked->rig->dim == 1) return;
    for (int axis = 0; axis < 3 && gtl_word_cut(&rest, ',', &length); axis += worked->rig->dim == 2 ? 2 : 1)
        gtl_text_add(text, "%s%.*s %s", text->length > 0 ? ", " : "", GTL_SPELL(length), axes[axis]);
}

static void put_section(gtl_document *document, const gtl_worked *worked, const gtl_entry *header)
{
    bool raises = gtl_problem_raises(worked->problem);
    const gtl_thing *thing = thing_named(worked->rig, header->name);
    gtl_text text = {0}, label = {0};
    for (size_t i = 0; i < KEY_COUNT; i++) {
        const char *value = typed(worked, header, keys[i].key);
        if (value && (raises || !keys[i].friction)) add(&text, keys[i].words, value);
    }
    if (thing) add_from_rig(&text, worked, header, thing);
    add_place(&text, worked, header);
    if (text.length == 0 && !text.failed) return;
    gtl_text_add(&label, "%s %s", header->kind, header->name);
    char *words = gtl_text_take(&label);
    if (words)
        gtl_document_put(document, GTL_PAIR, words, &text);
    else
        document->failed = true;
    free(words);
    free(text.bytes);
}

/* Gravity is said once for all, but where the rig has its own. */
static void put_gravity(gtl_document *document, const gtl_worked *worked)
{
    if (worked->rig->gravity_stated)
        gtl_document_pair(document, "gravity here", "%s m/s2", gtl_figure_gravity(worked->rig->gravity).text);
}

void gtl_compose_given(gtl_document *document, const gtl_worked *worked)
{
    for (size_t i = 0; i < worked->problem->rig.count; i++) {
        const gtl_entry *entry = &worked->entries[i];
        if (!entry->key && entry->name[0]) put_section(document, worked, entry);
    }
    put_gravity(document, worked);
}

void gtl_add_drawn(gtl_text *text, const gtl_worked *worked)
{
    const gtl_problem *problem = worked->problem;
    const char *between = "";
    for (int i = 0; i < problem->varied_count; i++) {
        const gtl_entry *entry = &worked->entries[problem->varied[i].entry];
        gtl_text_add(text, "%s%s of %s %s", between, entry->key, entry->name[0] ? entry->name : entry->kind,
                     entry->value);
        between = ", ";
    }
    if (problem->lift.count > 0)
        gtl_text_add(text, "%slift %s", between, worked->lift_text);
    else if (problem->varied_count == 0)
        gtl_text_add(text, "as in the rig file");
}

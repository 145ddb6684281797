/* resolve.c - names to indices. */
#include "rig/building.h"

/* Where a name stands, for messages, and what it may name there. */
typedef struct spot {
    int line;
    const char *key;
    unsigned allowed;
    const char *takes; /* the allowed kinds in words */
} spot;

static void refuse_unknown(gtl_building *b, const spot *where, gtl_word name)
{
    char excerpt[GTL_EXCERPT_SIZE];
    if (b->draft->names_missing) return;
    int near = gtl_draft_nearest(b->draft, name);
    if (near >= 0) {
        const gtl_item *meant = &b->draft->items[near];
        gtl_faults_add(b->faults, where->line, "unknown %s `%s`; did you mean `%s` (line %d)?",
                       meant->lost ? "name" : gtl_kind_name(meant->kind), gtl_excerpt(name, excerpt),
                       meant->name, meant->line);
    } else {
        gtl_faults_add(b->faults, where->line,
                       "unknown name `%s`: no section has it; mend the name, or add a section for it (%s)",
                       gtl_excerpt(name, excerpt), where->takes);
    }
}

/* The item of a name; -1 after a fault. */
static int find(gtl_building *b, const spot *where, gtl_word name)
{
    int found = gtl_draft_find(b->draft, name);
    const gtl_item *item = found >= 0 ? &b->draft->items[found] : NULL;
    if (!item) {
        refuse_unknown(b, where, name);
    } else if (!item->lost && item->kind == GTL_BATTEN && !gtl_is_of(item->kind, where->allowed)) {
        gtl_faults_add(
            b->faults, where->line,
            "`%s` is a batten (line %d); `%s` takes its picks, by the names that `picks` gives them",
            item->name, item->line, where->key);
    } else if (!item->lost && !gtl_is_of(item->kind, where->allowed)) {
        gtl_faults_add(b->faults, where->line, "`%s` is %s (line %d); `%s` takes %s", item->name,
                       gtl_a_kind(item->kind), item->line, where->key, where->takes);
    } else if (!item->lost) {
        return b->index[found];
    }
    b->draft->whole = false;
    return -1;
}

/* A connector stands in one place only: gear that takes several lines has a force of its own. */
static void use_connector(gtl_building *b, int connector, int line)
{
    if (b->used[connector] >= 0) {
        gtl_faults_add(
            b->faults, line,
            "connector `%s` stands in a `via` already (line %d); make it a joint if it takes several lines",
            b->rig->connectors[connector].name, b->used[connector]);
        return;
    }
    b->used[connector] = line;
}

/* The connectors of one reference, which stand at a thing or at a stop (the other is -1). */
static gtl_via resolve_vias(gtl_building *b, const gtl_ref *ref, int line, int thing, int stop)
{
    spot where = {line, "via", GTL_ONE_KIND(GTL_CONNECTOR), "a connector"};
    gtl_via via = {b->rig->via_count, 0};
    for (int i = 0; i < ref->via_count; i++) {
        int connector = find(b, &where, b->draft->vias[ref->first_via + i]);
        if (connector < 0) continue;
        use_connector(b, connector, line);
        b->rig->connectors[connector].thing = thing;
        b->rig->connectors[connector].stop = stop;
        b->rig->vias[b->rig->via_count++] = connector;
        via.count++;
    }
    return via;
}

static void resolve_on(gtl_building *b, int thing, const gtl_item *item)
{
    static const unsigned rides = GTL_ONE_KIND(GTL_BLOCK) | GTL_ONE_KIND(GTL_JOINT);
    spot where = {item->on.stated.line, "on", GTL_BODY_KINDS,
                  "an anchor, block, fairlead, joint, load or arbor"};
    if (item->kind == GTL_ARBOR) where = (spot){where.line, "on", rides, "a block or joint"};
    if (item->on.count == 0) return;
    const gtl_ref *ref = &b->draft->refs[item->on.first];
    b->rig->things[thing].on = find(b, &where, ref->name);
    b->rig->things[thing].via = resolve_vias(b, ref, where.line, thing, -1);
}

/* Tied at both ends, and at whatever has no sheave or bend to run over. */
static bool is_tied(const gtl_building *b, const gtl_line *line, int stop, int thing)
{
    bool end = stop == line->first_stop || stop == line->first_stop + line->stop_count - 1;
    return end || thing < 0 || !gtl_is_of(b->rig->things[thing].kind, GTL_RUNNING_KINDS);
}

static void resolve_path(gtl_building *b, gtl_line *line, const gtl_item *item)
{
    spot where = {item->path.stated.line, "path", GTL_THING_KINDS,
                  "an anchor, block, fairlead, joint, load, arbor or hand"};
    line->first_stop = b->rig->stop_count;
    line->stop_count = item->path.count;
    for (int i = 0; i < line->stop_count; i++) {
        const gtl_ref *ref = &b->draft->refs[item->path.first + i];
        int at = b->rig->stop_count++;
        gtl_stop *stop = &b->rig->stops[at];
        stop->thing = find(b, &where, ref->name);
        stop->tied = is_tied(b, line, at, stop->thing);
        stop->via = resolve_vias(b, ref, where.line, -1, at);
    }
}

static void resolve_load(gtl_building *b)
{
    const gtl_list *load = &b->draft->sheet.load;
    spot where = {load->stated.line, "load", GTL_ONE_KIND(GTL_LOAD) | GTL_ONE_KIND(GTL_BATTEN),
                  "a load or a batten"};
    if (load->count == 0) return;
    gtl_word name = b->draft->refs[load->first].name;
    int found = find(b, &where, name);
    bool batten = found >= 0 && b->draft->items[gtl_draft_find(b->draft, name)].kind == GTL_BATTEN;
    b->load = batten ? gtl_heaviest_pick(b->rig, found) : found;
}

static void resolve_or(gtl_building *b, int thing, const gtl_item *item)
{
    spot where = {item->other.stated.line, "or", GTL_ONE_KIND(GTL_HAND), "a hand"};
    if (item->other.count == 0) return;
    b->rig->things[thing].other = find(b, &where, b->draft->refs[item->other.first].name);
}

void gtl_resolve(gtl_building *b)
{
    for (int i = 0; i < b->rig->thing_count; i++) resolve_on(b, i, gtl_thing_item(b, i));
    for (int i = 0; i < b->rig->thing_count; i++) resolve_or(b, i, gtl_thing_item(b, i));
    for (int i = 0; i < b->rig->line_count; i++) resolve_path(b, &b->rig->lines[i], gtl_line_item(b, i));
    resolve_load(b);
}

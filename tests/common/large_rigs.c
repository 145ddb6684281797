/* large_rigs.c - see large_rigs.h. */
#include "common/large_rigs.h"

#include <gantline/read.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* ---- entries ---- */

/* Entries whose texts are their own. */
typedef struct entry_list {
    gtl_entry *items;
    size_t count;
    size_t capacity;
    bool failed;
} entry_list;

static char *formatted(const char *format, va_list arguments)
{
    va_list again;
    va_copy(again, arguments);
    int size = vsnprintf(NULL, 0, format, again);
    va_end(again);
    char *text = malloc((size_t)size + 1);
    if (text) vsnprintf(text, (size_t)size + 1, format, arguments);
    return text;
}

static gtl_entry *append(entry_list *list)
{
    if (list->count == list->capacity) {
        size_t capacity = 2 * list->capacity + 16;
        gtl_entry *items = realloc(list->items, capacity * sizeof *items);
        if (!items) {
            list->failed = true;
            return NULL;
        }
        list->items = items;
        list->capacity = capacity;
    }
    gtl_entry *entry = &list->items[list->count++];
    *entry = (gtl_entry){.line = (int)list->count};
    return entry;
}

/* A section's header; the name is printf's format. The keys that follow belong to it. */
static void add_section(entry_list *list, const char *kind, const char *format, ...) GTL_PRINTF(3, 4);

static void add_section(entry_list *list, const char *kind, const char *format, ...)
{
    gtl_entry *entry = append(list);
    if (!entry) return;
    va_list arguments;
    va_start(arguments, format);
    entry->kind = kind;
    entry->name = formatted(format, arguments);
    list->failed |= !entry->name;
    va_end(arguments);
}

static void add_key(entry_list *list, const char *key, const char *format, ...) GTL_PRINTF(3, 4);

static void add_key(entry_list *list, const char *key, const char *format, ...)
{
    gtl_entry *entry = append(list);
    if (!entry) return;
    va_list arguments;
    va_start(arguments, format);
    entry->kind = entry[-1].kind;
    entry->name = entry[-1].name;
    entry->key = key;
    entry->value = formatted(format, arguments);
    list->failed |= !entry->value;
    va_end(arguments);
}

/* The rig of the entries, which are given back. */
static gtl_rig *take_rig(entry_list *list)
{
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "large rig");
    gtl_rig *rig = list->failed ? NULL : gtl_read_entries(list->items, list->count, &faults);
    gtl_faults_end(&faults);
    for (size_t i = 0; i < list->count; i++) {
        bool header = !list->items[i].key;
        free((char *)(header ? list->items[i].name : list->items[i].value));
    }
    free(list->items);
    return rig;
}

/* ---- tackle ---- */

static const double lifted = 1000; /* [N] */

/* beam, tail, head, tail, head, ... crew; NULL without memory. */
static char *reeving(int sheaves)
{
    const size_t stop = strlen(", tail");
    char *path = malloc(strlen("beam") + (size_t)sheaves * stop + strlen(", crew") + 1);
    if (!path) return NULL;
    char *end = path + sprintf(path, "beam");
    for (int i = 0; i < sheaves; i++) end += sprintf(end, i % 2 ? ", head" : ", tail");
    sprintf(end, ", crew");
    return path;
}

gtl_rig *large_tackle(int sheaves, const char *efficiency)
{
    entry_list list = {0};
    char *path = reeving(sheaves);
    add_section(&list, "rig", "%s", "");
    add_key(&list, "efficiency", "%s", efficiency);
    add_section(&list, "anchor", "beam");
    add_key(&list, "at", "9 m");
    add_section(&list, "block", "head");
    add_key(&list, "on", "beam");
    add_section(&list, "block", "tail");
    add_key(&list, "at", "2 m");
    add_section(&list, "load", "crate");
    add_key(&list, "on", "tail");
    add_key(&list, "weight", "%g N", lifted);
    add_section(&list, "hand", "crew");
    add_key(&list, "at", "1 m");
    add_section(&list, "rope", "fall");
    add_key(&list, "path", "%s", path ? path : "");
    list.failed |= !path;
    free(path);
    return take_rig(&list);
}

double large_tackle_effort(int sheaves, double efficiency)
{
    double carried = 0; /* by the parts at the lower block, for a pull of 1 */
    double tension = 1;
    for (int i = 0; i < sheaves; i++) {
        tension *= efficiency;
        carried += tension;
    }
    return lifted / carried;
}

/* ---- chain ---- */

static void add_joint(entry_list *list, int index, int joints)
{
    double across = (double)index / (joints + 1);
    add_section(list, "joint", "j%d", index);
    add_key(list, "at", "%.17g m, %.17g m", CHAIN_SPAN * across, -8 * across * (1 - across));
    add_key(list, "weight", "%.17g N", CHAIN_WEIGHT / (joints + 1));
}

static void add_link(entry_list *list, int index, int joints)
{
    add_section(list, "sling", "link%d", index);
    if (index == 0)
        add_key(list, "path", "left, j1");
    else if (index == joints)
        add_key(list, "path", "j%d, right", joints);
    else
        add_key(list, "path", "j%d, j%d", index, index + 1);
    add_key(list, "length", "%.17g m", CHAIN_LENGTH / (joints + 1));
}

gtl_rig *large_chain(int joints)
{
    entry_list list = {0};
    add_section(&list, "anchor", "left");
    add_key(&list, "at", "0 m, 0 m");
    add_section(&list, "anchor", "right");
    add_key(&list, "at", "%g m, 0 m", CHAIN_SPAN);
    for (int i = 1; i <= joints; i++) add_joint(&list, i, joints);
    for (int i = 0; i <= joints; i++) add_link(&list, i, joints);
    return take_rig(&list);
}

/* How far links reach across and down with a given level pull. */
static double reach(int joints, double level, double *sag)
{
    double link = CHAIN_LENGTH / (joints + 1);
    double weight = CHAIN_WEIGHT / (joints + 1);
    double across = 0;
    double down = 0;
    *sag = 0;
    for (int i = 0; i <= joints; i++) {
        double up = weight * (0.5 * joints - i); /* what the link carries of the weight, by symmetry */
        double pull = hypot(level, up);
        across += link * level / pull;
        down += link * up / pull;
        *sag = fmax(*sag, down);
    }
    return across;
}

/* The more level pull, the further across: halve until nothing is left to halve. */
chain_figures chain_of_links(int joints)
{
    chain_figures figures;
    double low = 0;
    double high = 100 * CHAIN_WEIGHT;
    for (int i = 0; i < 200; i++) {
        figures.level = (low + high) / 2;
        if (reach(joints, figures.level, &figures.sag) < CHAIN_SPAN)
            low = figures.level;
        else
            high = figures.level;
    }
    return figures;
}

/* y = a cosh(x/a): the length is 2 a sinh(span/2a), the level pull a times the weight of a metre. */
chain_figures catenary(void)
{
    double low = 0.01 * CHAIN_SPAN;
    double high = 100 * CHAIN_SPAN;
    double a = 0;
    for (int i = 0; i < 200; i++) {
        a = (low + high) / 2;
        if (2 * a * sinh(CHAIN_SPAN / (2 * a)) > CHAIN_LENGTH)
            low = a;
        else
            high = a;
    }
    return (chain_figures){a * CHAIN_WEIGHT / CHAIN_LENGTH, a * (cosh(CHAIN_SPAN / (2 * a)) - 1)};
}

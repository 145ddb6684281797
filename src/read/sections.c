/* sections.c - entries to a draft: first all headers, so that every name is known, then [rig], since its
 * gravity turns masses to forces, then the keys of all others. */
#include "read/sections.h"

#include "base/text.h"
#include "read/picks.h"
#include "read/store.h"
#include "read/unknown.h"
#include "rig/kind.h"

typedef struct reading {
    const gtl_entry *entries;
    size_t count;
    bool rough; /* lines are missing for faults told already */
    gtl_draft *draft;
    gtl_fault_list *faults;
} reading;

/* Whether the header's name suits its kind; false after a fault. */
static bool check_name(reading *r, const gtl_entry *header, gtl_kind kind)
{
    gtl_word name = gtl_word_of(header->name);
    if (kind == GTL_SHEET) {
        if (name.length == 0) return true;
        gtl_faults_add(r->faults, header->line,
                       "[rig] has no name; write [rig], and what it is as its `title`");
    } else if (name.length == 0) {
        gtl_faults_add(r->faults, header->line, "%s needs a name; write [%s NAME]", gtl_a_kind(kind),
                       gtl_kind_name(kind));
    } else if (gtl_word_compare(name, gtl_word_of("via")) == 0) {
        gtl_faults_add(r->faults, header->line,
                       "`via` is a word of paths, so it cannot be a name; choose another");
    } else if (!gtl_is_name(name)) {
        gtl_faults_add(r->faults, header->line,
                       "`%s` cannot be a name: a name is letters, digits, `-` and `_`", header->name);
    } else {
        return true;
    }
    return false;
}

static void add_sheet(reading *r, const gtl_item *sheet)
{
    if (!r->draft->has_sheet) {
        r->draft->sheet = *sheet;
        r->draft->has_sheet = true;
        return;
    }
    gtl_faults_add(r->faults, sheet->line, "a second [rig] (the first is in line %d); write all of it in one",
                   r->draft->sheet.line);
    r->draft->sheet.lost = true;
    r->draft->whole = false;
}

/* The item that a header begins. Where something is wrong with it it is lost, but others may refer to it. */
static void begin_section(reading *r, size_t at)
{
    const gtl_entry *header = &r->entries[at];
    gtl_kind kind = gtl_kind_find(gtl_word_of(header->kind));
    bool known = kind < GTL_KIND_COUNT;
    if (!known) gtl_refuse_kind(header, r->faults);
    gtl_item item = gtl_item_blank(known ? kind : GTL_JOINT, header->name, header->line);
    item.lost = !known || !check_name(r, header, kind);
    item.rough = r->rough;
    item.first_entry = at + 1;
    if (item.lost) r->draft->whole = false;
    if (item.lost && header->name[0] == '\0') r->draft->names_missing = true;
    if (kind == GTL_SHEET) {
        add_sheet(r, &item);
    } else if (!gtl_draft_add_item(r->draft, &item)) {
        r->faults->out_of_memory = true;
    }
}

static void begin_sections(reading *r)
{
    bool inside = false;
    for (size_t i = 0; i < r->count; i++) {
        if (!r->entries[i].key) {
            begin_section(r, i);
            inside = true;
        } else if (!inside) {
            gtl_faults_add(r->faults, r->entries[i].line,
                           "`%s` stands before any section; begin with a header", r->entries[i].key);
        }
    }
}

/* Two items of one name are both lost: nobody can tell which one is meant, and their keys may be mixed up. */
static void tell_twins(reading *r)
{
    const gtl_named *named = r->draft->by_name;
    for (int i = 1; i < r->draft->item_count; i++) {
        gtl_item *first = &r->draft->items[named[i - 1].item];
        gtl_item *second = &r->draft->items[named[i].item];
        bool same = gtl_word_compare(named[i - 1].name, named[i].name) == 0;
        if (!same || named[i].name.length == 0) continue; /* a name that is missing is told already */
        gtl_faults_add(r->faults, second->line, "the name `%s` is taken already (line %d); choose another",
                       second->name, first->line);
        first->lost = second->lost = true;
        r->draft->whole = false;
    }
}

/* Another entry of the section with the same key, NULL for none. */
static const gtl_entry *find_twin(const reading *r, const gtl_item *item, const gtl_entry *entry)
{
    const gtl_entry *other = r->entries + item->first_entry;
    for (; other < r->entries + r->count && other->key; other++) {
        if (other != entry && gtl_text_compare(other->key, entry->key) == 0) return other;
    }
    return NULL;
}

static void read_key(reading *r, gtl_item *item, const gtl_entry *entry)
{
    const gtl_key_row *row = gtl_key_find(item->kind, gtl_word_of(entry->key));
    if (!row) {
        gtl_refuse_key(entry, item->kind, r->faults);
        item->rough = true;
        r->draft->whole = false;
        return;
    }
    const gtl_entry *twin = find_twin(r, item, entry);
    if (!twin) {
        gtl_store(r->draft, item, row, entry, r->faults);
        return;
    }
    /* Which of the two is meant nobody can tell, so neither value is read; the second is told. */
    if (twin < entry) {
        gtl_faults_add(r->faults, entry->line, "`%s` is given twice (first in line %d); keep one of them",
                       row->key.key, twin->line);
    }
    gtl_store_nothing(r->draft, item, row, entry->line);
}

static bool belongs(const gtl_item *item, const gtl_entry *entry)
{
    return gtl_kind_find(gtl_word_of(entry->kind)) == item->kind &&
           gtl_text_compare(entry->name, item->name) == 0;
}

static void read_keys(reading *r, gtl_item *item)
{
    if (item->lost) return;
    for (size_t i = item->first_entry; i < r->count && r->entries[i].key; i++) {
        const gtl_entry *entry = &r->entries[i];
        if (belongs(item, entry)) {
            read_key(r, item, entry);
        } else {
            gtl_faults_add(r->faults, entry->line,
                           "`%s` stands outside its section [%s %s]; its header goes before it", entry->key,
                           entry->kind, entry->name);
            r->draft->whole = false;
        }
    }
}

void gtl_read_sections(const gtl_entry *entries, size_t count, gtl_draft *draft, gtl_fault_list *faults)
{
    reading r = {entries, count, draft->sheet.rough, draft, faults};
    begin_sections(&r);
    if (!gtl_draft_sort_names(draft)) faults->out_of_memory = true;
    if (faults->out_of_memory) return;
    tell_twins(&r);
    if (draft->has_sheet) read_keys(&r, &draft->sheet);
    double gravity = draft->sheet.numbers[GTL_F_GRAVITY].value;
    if (gravity > 0) draft->gravity = gravity; /* not where it is absent */
    for (int i = 0; i < draft->item_count; i++) read_keys(&r, &draft->items[i]);
    gtl_add_picks(draft, faults);
}

/* store_cases.c - the cases that a rig asks for. */
#include "read/storing.h"

#define CASES_HINT "write hold, raise, lower, jam, start, stop, lost NAME, drop, some of them, or all"

static void refuse_case(const gtl_storing *s, gtl_word word)
{
    char excerpt[GTL_EXCERPT_SIZE];
    s->item->rough = true; /* what was meant may need what seems to change nothing */
    if (word.length == 0) {
        gtl_faults_add(s->faults, s->entry->line, "`cases`: a case is missing; " CASES_HINT);
        return;
    }
    gtl_faults_add(s->faults, s->entry->line, "`cases`: `%s` is no case; " CASES_HINT,
                   gtl_excerpt(word, excerpt));
}

/* lost NAME: a case of its own for each name. */
static void store_loss(const gtl_storing *s, gtl_word piece)
{
    gtl_word name = piece;
    gtl_list *lost = &s->item->losses;
    gtl_first_word(&name);
    if (name.length == 0) {
        gtl_faults_add(s->faults, s->entry->line,
                       "`cases`: lost what? write lost and the name of an anchor, a line or a connector");
        s->item->rough = true;
    } else if (!gtl_is_name(name)) {
        refuse_case(s, piece);
    } else {
        if (lost->count == 0) lost->first = s->draft->ref_count;
        lost->count++;
        s->draft->cases[GTL_LOST] = true;
        if (!gtl_draft_add_ref(s->draft, name)) s->faults->out_of_memory = true;
    }
}

static gtl_case_kind case_named(gtl_word word)
{
    int kind = 0;
    while (kind < GTL_CASE_KIND_COUNT && !gtl_word_is(word, gtl_case_name((gtl_case_kind)kind))) kind++;
    return (gtl_case_kind)kind;
}

static void store_case(const gtl_storing *s, gtl_word piece)
{
    gtl_word rest = piece;
    gtl_case_kind kind = case_named(gtl_first_word(&rest));
    bool all = gtl_word_is(piece, "all");
    if (kind == GTL_LOST) {
        store_loss(s, piece);
    } else if (!all && (kind == GTL_CASE_KIND_COUNT || rest.length > 0)) {
        refuse_case(s, piece);
    } else if (all ? s->draft->all_cases : s->draft->cases[kind]) {
        gtl_faults_add(s->faults, s->entry->line, "`cases` names %s twice; once will do",
                       all ? "all" : gtl_case_name(kind));
    } else if (all) {
        s->draft->all_cases = true;
    } else {
        s->draft->cases[kind] = true;
    }
}

void gtl_store_cases(const gtl_storing *s)
{
    gtl_word rest = gtl_word_of(s->entry->value);
    gtl_word piece;
    while (gtl_word_cut(&rest, ',', &piece)) store_case(s, piece);
}

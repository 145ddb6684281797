/* table_finish.c - a row of a hardware table as a whole: what it lacks, what contradicts itself, and how its
 * factor follows from an angle or a ratio. */
#include "read/table_row.h"

#include "base/text.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define PI 3.14159265358979323846
/* Pipe is made of nothing lighter than magnesium, nor heavier than steel with its coat [kg/m3]. */
#define LIGHTEST 1500
#define HEAVIEST 9500

static void tell(gtl_table_row *r, int line, const char *text)
{
    gtl_faults_add(r->faults, line, "%s", text);
    r->rough = true;
}

static void tell_missing(gtl_table_row *r, const char *key, const char *example)
{
    gtl_faults_add(r->faults, r->row->line, "[%s %s] has no `%s`; write it, such as %s = %s",
                   gtl_hardware_kind_name(r->row->kind), r->row->name, key, key, example);
    r->rough = true;
}

static void check_needed(gtl_table_row *r)
{
    const gtl_table_key *key;
    for (int i = 0; (key = gtl_table_key_at(i)); i++) {
        if (key->kind == r->row->kind && key->needed && r->lines[i] == 0)
            tell_missing(r, key->key, key->example);
    }
}

/* A shipped figure without its source is one that nobody can check. */
static void check_origin(gtl_table_row *r)
{
    if (!r->shipped) return;
    if (r->row->source[0] == '\0') tell_missing(r, "source", "the book or the standard, and the page");
    if (gtl_table_line(r, "seen") == 0) tell_missing(r, "seen", "seen");
}

/* Whether any figure is stated, or a material, which says what may be done with the gear. */
static bool says_something(const gtl_table_row *r)
{
    const gtl_table_key *key;
    for (int i = 0; (key = gtl_table_key_at(i)); i++) {
        bool telling = key->how == GTL_TABLE_NUMBER || key->how == GTL_TABLE_MATERIAL;
        if (telling && r->lines[i] > 0) return true;
    }
    return false;
}

static void check_says_something(gtl_table_row *r)
{
    if (says_something(r)) return;
    gtl_faults_add(r->faults, r->row->line, "[%s %s] states no figure; write what is known of it, such as %s",
                   gtl_hardware_kind_name(r->row->kind), r->row->name,
                   r->row->kind == GTL_HW_USE ? "wire rope = 5" : "wll = 2.5 kN");
    r->rough = true;
}

static void check_gear(gtl_table_row *r)
{
    const double *numbers = r->row->numbers;
    check_says_something(r);
    if (numbers[GTL_HW_WLL] > numbers[GTL_HW_MBS]) {
        tell(r, gtl_table_line(r, "wll"),
             "`wll` is more than `mbs`, at which it breaks; see which of them is mistyped");
    }
    if (gtl_table_line(r, "efficiency") > 0 && gtl_table_line(r, "friction") > 0) {
        tell(r, gtl_table_line(r, "friction"),
             "`friction` and `efficiency` say the same thing twice; keep the one that its maker gives");
    }
}

static void check_range(gtl_table_row *r)
{
    if (r->row->numbers[GTL_HW_LOW] > r->row->numbers[GTL_HW_HIGH])
        tell(r, gtl_table_line(r, "low"), "`low` is more than `high`; change them round");
}

/* A wall of half the diameter or more leaves no pipe; a weight that no metal has with those sizes is a slip.
 */
static void check_pipe(gtl_table_row *r)
{
    const double *numbers = r->row->numbers;
    double outer = numbers[GTL_HW_DIAMETER], wall = numbers[GTL_HW_WALL];
    double density = numbers[GTL_HW_LINEAR_MASS] / (PI * wall * (outer - wall));
    if (2 * wall > outer)
        tell(r, gtl_table_line(r, "wall"),
             "`wall` is more than half the `diameter`; see which of them is mistyped");
    else if (density < LIGHTEST || density > HEAVIEST)
        tell(r, gtl_table_line(r, "weight"),
             "`weight` is not that of a metal pipe of that `diameter` and `wall`; see which of them is "
             "mistyped");
}

/* A bend has either steps or a formula. */
static void check_bend(gtl_table_row *r)
{
    bool stepped = gtl_table_line(r, "keeps") > 0;
    int coefficient = gtl_table_line(r, "coefficient");
    int power = gtl_table_line(r, "power");
    if (stepped && (coefficient > 0 || power > 0)) {
        tell(r, coefficient > 0 ? coefficient : power,
             "a bend has either steps (`from`, `keeps`) or a formula (`from`, `coefficient`, `power`); "
             "keep one of them");
    } else if (!stepped && coefficient == 0 && power == 0) {
        tell_missing(r, "keeps", "50 %, 65 %, 75 % (or `coefficient` and `power`)");
    } else if (!stepped && coefficient == 0) {
        tell_missing(r, "coefficient", "0.5");
    } else if (!stepped && power == 0) {
        tell_missing(r, "power", "0.5");
    }
}

static void check_formula(gtl_table_row *r)
{
    gtl_hardware_row *row = r->row;
    row->rule = GTL_HW_FORMULA;
    if (r->edge_count != 1) {
        tell(r, gtl_table_line(r, "from"), "`from`: a formula begins at one ratio; write from = 1");
    } else if (!(1 - row->shares[0] / pow(row->edges[0], row->shares[1]) > 0)) {
        tell(r, gtl_table_line(r, "coefficient"),
             "at `from` the formula 1 - coefficient / ratio^power keeps nothing; begin at a larger ratio, or "
             "see which number is mistyped");
    }
}

/* The other way round: the lists may fall in the file, but never in a row. */
static void turn(double *list, int count)
{
    for (int i = 0; i < count / 2; i++) {
        double first = list[i];
        list[i] = list[count - 1 - i];
        list[count - 1 - i] = first;
    }
}

static bool rises(const double *list, int count)
{
    for (int i = 1; i < count; i++) {
        if (!(list[i] > list[i - 1])) return false;
    }
    return true;
}

/* Whether every step towards the harder pull keeps no more than the one before: a wider angle from the axis,
 * a tighter bend or choke. Else the lists do not stand in the same order, which would flatter. */
static bool weakens(const gtl_hardware_row *row)
{
    for (int i = 1; i < row->step_count; i++) {
        bool more = row->shares[i] > row->shares[i - 1];
        bool less = row->shares[i] < row->shares[i - 1];
        if (row->rule == GTL_HW_UP_TO ? more : less) return false;
    }
    return true;
}

static void check_steps(gtl_table_row *r, const char *edges)
{
    gtl_hardware_row *row = r->row;
    row->step_count = r->edge_count;
    bool falls = row->rule == GTL_HW_FROM && row->step_count > 1 && row->edges[1] < row->edges[0];
    if (r->edge_count != r->share_count) {
        gtl_faults_add(r->faults, gtl_table_line(r, "keeps"),
                       "`keeps` has %d value%s and `%s` has %d; every step needs one of each", r->share_count,
                       r->share_count == 1 ? "" : "s", edges, r->edge_count);
        r->rough = true;
        return;
    }
    if (falls) turn(row->edges, row->step_count);
    if (falls) turn(row->shares, row->step_count);
    if (!rises(row->edges, row->step_count)) {
        gtl_faults_add(r->faults, gtl_table_line(r, edges),
                       "`%s`: its values do not stand in order; write them %s, each one once", edges,
                       row->rule == GTL_HW_FROM ? "rising, or falling" : "rising");
        r->rough = true;
    } else if (!weakens(row)) {
        tell(r, gtl_table_line(r, "keeps"),
             row->rule == GTL_HW_UP_TO
                 ? "`keeps`: a pull further off the axis would keep more; see that both lists stand in the "
                   "same order"
                 : "`keeps`: a tighter bend or choke would keep more; see that both lists stand in the same "
                   "order");
    }
}

/* How the factor follows, for kinds with lists. */
static void settle_rule(gtl_table_row *r)
{
    bool formula = r->row->kind == GTL_HW_BEND && gtl_table_line(r, "keeps") == 0;
    switch (r->row->kind) {
    case GTL_HW_BEND:
    case GTL_HW_CHOKE:
        r->row->rule = GTL_HW_FROM;
        if (formula)
            check_formula(r);
        else
            check_steps(r, "from");
        break;
    case GTL_HW_FITTING:
    case GTL_HW_SIDE_LOAD:
        r->row->rule = GTL_HW_UP_TO;
        check_steps(r, "up to");
        break;
    default:
        break;
    }
}

void gtl_table_finish(gtl_table_row *r)
{
    static void (*const checks[GTL_HW_KIND_COUNT])(gtl_table_row *) = {
        [GTL_HW_GEAR] = check_gear,
        [GTL_HW_BEND] = check_bend,
        [GTL_HW_USE] = check_says_something,
        [GTL_HW_SHEAVE] = check_range,
        [GTL_HW_FRICTION] = check_range,
        [GTL_HW_PIPE] = check_pipe,
        [GTL_HW_GREEN_WOOD] = gtl_table_check_wood,
    };
    if (r->rough) return;
    check_origin(r);
    check_needed(r);
    if (checks[r->row->kind]) checks[r->row->kind](r);
    if (!r->rough) settle_rule(r);
}

/* try_set.c - every value of a set is worked once before a sheet is drawn: with the others at their first
 * value, and all of them together at their last. */
#include "worksheet/worked.h"

/* What is said of a value that does not do. */
static void tell(const gtl_problem *problem, int line, const char *value, const char *why,
                 gtl_fault_list *faults)
{
    if (value)
        gtl_faults_add(faults, line, "[problem %s] with %s: %s", problem->name, value, why);
    else
        gtl_faults_add(faults, line, "[problem %s]: %s", problem->name, why);
}

/* Whether the problem can be worked with these values; told if not. */
static bool try(const gtl_problem *problem, const gtl_choice *choice, int line, const char *value,
                gtl_fault_list *faults)
{
    gtl_worked worked;
    char why[GTL_REASON_SIZE];
    bool well = gtl_work_problem(problem, choice, &worked, why);
    if (worked.failed)
        faults->out_of_memory = true;
    else if (!well)
        tell(problem, line, value, why, faults);
    gtl_worked_end(&worked);
    return well;
}

static void try_values(const gtl_problem *problem, int varied, gtl_fault_list *faults)
{
    const gtl_vary *vary = varied < problem->varied_count ? &problem->varied[varied] : &problem->lift;
    gtl_choice choice = {{0}};
    for (int i = 1; i < vary->count && !faults->out_of_memory; i++) {
        choice.value[varied] = i;
        if (!try(problem, &choice, vary->line, vary->values[i], faults)) return;
    }
}

void gtl_set_try(const gtl_set *set, gtl_fault_list *faults)
{
    for (int i = 0; i < set->problem_count && !faults->out_of_memory; i++) {
        const gtl_problem *problem = &set->problems[i];
        gtl_choice first = {{0}}, last = gtl_problem_choice(problem, gtl_problem_sets(problem) - 1);
        const char *value = problem->varied_count > 0 ? "the first value of each range" : NULL;
        if (!try(problem, &first, problem->ask_line, value, faults)) continue;
        size_t before = faults->count;
        for (int k = 0; k <= problem->varied_count; k++) try_values(problem, k, faults);
        if (faults->count == before)
            try(problem, &last, problem->ask_line, "the last value of each range", faults);
    }
}

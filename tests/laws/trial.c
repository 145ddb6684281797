/* trial.c - the loop over random rigs, and the account of what became of each. */
#include "laws/trial.h"
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A generator that makes sick rigs proves little: more than this share without an answer is a failure. */
static const double most_unanswered = 0.03;
/* Breaches of a law that are printed. */
enum { MOST_SHOWN = 5, MOST_LAWS = 32 };

void ruling_break(ruling *r, const char *format, ...)
{
    if (r->broken[0]) return;
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(r->broken, sizeof r->broken, format, arguments);
    va_end(arguments);
}

int trial_default(int plain)
{
#if defined(__SANITIZE_ADDRESS__)
    return plain / 10;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
    return plain / 10;
#endif
#endif
    return plain;
}

static finding work_cases(specimen *s, char *why, size_t size)
{
    for (int k = 0; k < BASIC_CASES; k++) {
        s->states[k] = gtl_state_new(s->rig);
        if (!s->states[k]) abort();
        if (!gtl_rig_asks(s->rig, (gtl_case_kind)k)) continue;
        gtl_case which = {.kind = (gtl_case_kind)k};
        if (gtl_solve(s->rig, &which, s->states[k]) != GTL_OK) {
            snprintf(why, size, "%s: %s", gtl_case_name(which.kind), s->states[k]->reason);
            return NO_ANSWER;
        }
        s->possible[k] = s->states[k]->possible;
    }
    return WORKED;
}

finding specimen_begin(specimen *s, const sketch *drawn, chance *shuffle, char *why, size_t size)
{
    gtl_fault_list faults;
    memset(s, 0, sizeof *s);
    s->made.sketch = *drawn;
    s->text = sketch_text(drawn, shuffle);
    gtl_faults_begin(&faults, "rig");
    s->rig = gtl_read_text(s->text, strlen(s->text), &faults);
    finding found = NOT_READ;
    if (s->rig)
        found = work_cases(s, why, size);
    else
        snprintf(why, size, "%s", faults.count > 0 ? faults.items[0].text : "no memory");
    gtl_faults_end(&faults);
    return found;
}

void specimen_end(specimen *s)
{
    for (int k = 0; k < BASIC_CASES; k++) gtl_state_free(s->states[k]);
    gtl_rig_free(s->rig);
    free(s->text);
    memset(s, 0, sizeof *s);
}

typedef struct account {
    const trial_plan *plan;
    int applied[MOST_LAWS];
    int broken[MOST_LAWS];
    int rigs;
    int unanswered;
} account;

static void hold_laws(account *a, const specimen *s)
{
    for (int i = 0; i < a->plan->law_count; i++) {
        ruling r = {false, ""};
        a->plan->laws[i].hold(s, &r);
        a->applied[i] += r.applied;
        if (!r.broken[0]) continue;
        if (a->broken[i]++ < MOST_SHOWN)
            printf("seed %llu breaks `%s`: %s\n", (unsigned long long)s->seed, a->plan->laws[i].name,
                   r.broken);
    }
}

static void try_seed(account *a, uint64_t seed, bool show)
{
    generated made;
    specimen s;
    char why[GTL_REASON_SIZE + 16] = "";
    generate(seed, &made);
    finding found = specimen_begin(&s, &made.sketch, NULL, why, sizeof why);
    s.seed = seed;
    s.made = made;
    a->rigs++;
    if (show) fputs(s.text, stdout);
    if (found == WORKED) {
        if (a->plan->each) a->plan->each(&s);
        hold_laws(a, &s);
    } else {
        a->unanswered++;
        printf("seed %llu (%dD %s, %s, %s, %s) %s: %s\n", (unsigned long long)seed, made.sketch.dim,
               made.support, made.lift, made.cargo, made.lead,
               found == NOT_READ ? "is not read" : "has no answer", why);
    }
    specimen_end(&s);
}

static int summary(const account *a)
{
    int passed = 0;
    int failed = 0;
    for (int i = 0; i < a->plan->law_count; i++) {
        bool kept = a->applied[i] > 0 && a->broken[i] == 0;
        printf("%s: held on %d rigs, broken on %d\n", a->plan->laws[i].name, a->applied[i], a->broken[i]);
        passed += kept;
        failed += !kept;
    }
    bool answered = a->unanswered <= most_unanswered * a->rigs;
    printf("without an answer: %d of %d rigs\n", a->unanswered, a->rigs);
    passed += answered;
    failed += !answered;
    if (a->plan->last) a->plan->last(a->rigs, &passed, &failed);
    printf("%s: %d passed, %d failed\n", a->plan->name, passed, failed);
    return failed > 0;
}

int trial_run(const trial_plan *plan, int argc, char **argv)
{
    account a = {.plan = plan};
    long count = argc > 1 ? strtol(argv[1], NULL, 10) : plan->rigs;
    long first = argc > 2 ? strtol(argv[2], NULL, 10) : 1;
    for (long seed = first; seed < first + count; seed++) try_seed(&a, (uint64_t)seed, count == 1);
    return summary(&a);
}

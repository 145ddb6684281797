/* test_json.c - figures of the JSON report that no other test looks at. */
#include "unit/rated.h"

#include <jansson.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* Two hands at one load: one is worked out, one is known. The load rises by 1; the first gets 2 of rope, the
 * other 1. */
static const char helped[] =
    "[anchor beam]\nat = 5 m\n[block tail]\nat = 1 m\nefficiency = 100 %\n[load crate]\n"
    "on = tail\nweight = 200 N\n[hand crew]\nat = 4 m\nlimit = 300 N\n"
    "[rope fall]\npath = beam, tail, crew\n[hand helper]\nat = 3 m\npull = 40 N\n"
    "[rope help]\npath = crate, helper\n";

static json_t *report_of(const char *text)
{
    rated rig = rate_sound("%s", text);
    char *report = gtl_report(&rig.sheet, GTL_JSON);
    rated_end(&rig);
    assert_non_null(report);
    json_t *root = json_loads(report, 0, NULL);
    free(report);
    assert_non_null(root);
    return root;
}

/* The entry of a list whose `key` is `name`. */
static const json_t *entry_of(const json_t *list, const char *key, const char *name)
{
    for (size_t i = 0; i < json_array_size(list); i++) {
        const json_t *entry = json_array_get(list, i);
        if (strcmp(json_string_value(json_object_get(entry, key)), name) == 0) return entry;
    }
    fail_msg("no %s %s", key, name);
    return NULL;
}

static double number(const json_t *entry, const char *key)
{
    return json_number_value(json_object_get(entry, key));
}

static void hands_known_and_worked_out(void **state)
{
    (void)state;
    json_t *root = report_of(helped);
    const json_t *hold = entry_of(json_object_get(root, "cases"), "case", "hold");
    const json_t *hands = json_object_get(hold, "hands");
    const json_t *crew = entry_of(hands, "hand", "crew");
    const json_t *helper = entry_of(hands, "hand", "helper");
    assert_close(number(crew, "force"), 80);
    assert_close(number(crew, "travel_ratio"), 2);
    assert_close(number(crew, "limit"), 300);
    assert_close(number(helper, "force"), 40);
    assert_close(number(helper, "travel_ratio"), 1);
    assert_true(json_is_null(json_object_get(helper, "limit")));
    json_decref(root);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(hands_known_and_worked_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

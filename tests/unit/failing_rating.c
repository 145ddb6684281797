/* failing_rating.c - see failing_rating.h. */
#include "unit/failing_rating.h"
#include "unit/failing_memory.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

bool rates_with(const gtl_rig *rig, long allowed)
{
    gtl_sheet sheet;
    long before = blocks_alive();
    allow_allocations(allowed);
    gtl_status status = gtl_rate(rig, &sheet);
    bool refused = allow_all_allocations();
    assert_int_equal(status, refused ? GTL_NO_MEMORY : GTL_OK);
    gtl_sheet_end(&sheet);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

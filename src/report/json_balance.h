/* json_balance.h - the balance of each arbor as JSON. */
#ifndef REPORT_JSON_BALANCE_H
#define REPORT_JSON_BALANCE_H

#include <gantline/rate.h>
#include <jansson.h>

/* A list, one entry an arbor; NULL without memory. The caller owns it. */
json_t *gtl_json_balance(const gtl_sheet *sheet);

#endif

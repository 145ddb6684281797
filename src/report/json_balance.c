/* json_balance.c - the balance of each arbor as JSON. */
#include "report/json_balance.h"
#include "report/json_value.h"

static json_t *choice(const gtl_counterweights *choice)
{
    return json_pack("{s:o, s:o, s:o}", "put_in", gtl_json_number(choice->count), "out_of_balance",
                     gtl_json_number(choice->over), "on_hand_line", gtl_json_number(choice->on_line));
}

static json_t *balance(const gtl_sheet *sheet, const gtl_balance *of)
{
    const gtl_thing *arbor = &sheet->rig->things[of->arbor];
    gtl_json_array choices = {json_array()};
    for (int i = 0; i < of->choice_count; i++) gtl_json_append(&choices, choice(&of->choice[i]));
    return json_pack("{s:o, s:o, s:o, s:o, s:o, s:o, s:o}", "arbor", gtl_json_text(arbor->name), "weight",
                     gtl_json_number(arbor->weight), "travel_ratio", gtl_json_number(of->travel),
                     "out_of_balance", gtl_json_number(of->over), "needed", gtl_json_number(of->needed),
                     "each", gtl_json_number(arbor->each), "choices", choices.array);
}

json_t *gtl_json_balance(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->balance_count; i++)
        gtl_json_append(&list, balance(sheet, &sheet->balances[i]));
    return list.array;
}

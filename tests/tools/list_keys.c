/* list_keys - every key and unit that a rig file may hold, one a line, for comparing manuals with the
 * program. */
#include <gantline/gantline.h>
#include <stdio.h>

int main(void)
{
    const gtl_key *key;
    for (size_t index = 0; (key = gtl_key_at(index)) != NULL; index++) puts(key->key);
    for (int quantity = GTL_MASS; quantity <= GTL_TIME; quantity++) {
        for (const char *c = gtl_unit_names((gtl_quantity)quantity); *c; c++) putchar(*c == ' ' ? '\n' : *c);
        putchar('\n');
    }
    return 0;
}

/* units_oracle.c - prints one of each unit in SI, a line each: quantity, unit, value. For units_oracle.sh. */
#include <gantline/units.h>
#include <stdio.h>
#include <string.h>

int main(void)
{
    static const char *const names[] = {"mass",        "force",        "length", "angle",
                                        "fraction",    "acceleration", "speed",  "time",
                                        "linear-mass", "elasticity",   "density"};
    for (int quantity = GTL_MASS; quantity <= GTL_DENSITY; quantity++) {
        char list[100];
        snprintf(list, sizeof list, "%s", gtl_unit_names((gtl_quantity)quantity));
        for (char *unit = strtok(list, " "); unit; unit = strtok(NULL, " ")) {
            char text[40];
            char why[GTL_WHY_SIZE];
            double si = 0;
            snprintf(text, sizeof text, "1 %s", unit);
            if (!gtl_parse_quantity(text, (gtl_quantity)quantity, GTL_STANDARD_GRAVITY, &si, NULL, why))
                return 1;
            printf("%s %s %.17g\n", names[quantity], unit, si);
        }
    }
    return 0;
}

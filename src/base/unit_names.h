/* unit_names.h - the units of each quantity as messages and help texts list them. */
#ifndef BASE_UNIT_NAMES_H
#define BASE_UNIT_NAMES_H

/* tests/unit/test_units.c holds each name here against the table of factors in units.c. */
#define GTL_MASS_UNITS         "kg g t lb"
#define GTL_FORCE_UNITS        "N kN daN kgf lbf kip kg g t lb"
#define GTL_LENGTH_UNITS       "m cm mm ft in"
#define GTL_ANGLE_UNITS        "deg rad"
#define GTL_FRACTION_UNITS     "%"
#define GTL_ACCELERATION_UNITS "m/s2 ft/s2"
#define GTL_SPEED_UNITS        "m/s ft/s m/min ft/min"
#define GTL_TIME_UNITS         "s ms min"
#define GTL_LINEAR_MASS_UNITS  "kg/m lb/ft"
#define GTL_ELASTICITY_UNITS   "GPa MPa"
#define GTL_DENSITY_UNITS      "kg/m3 lb/ft3"
#define GTL_NUMBER_UNITS       ""
#define GTL_WHOLE_UNITS        ""

#endif

/* problems.h - sets of problems and the rigs that they name, all in memory and invented. */
#ifndef UNIT_PROBLEMS_H
#define UNIT_PROBLEMS_H

#include <gantline/worksheet.h>

/* Two parts of rope: 10 kg hang on them, 9 kg of it the load; the fixed block has 1 kg; 90 % a sheave. */
#define TWO_PARTS                                                                                            \
    "[rig]\ntitle = Gives it away\n[anchor beam]\nat = 3 m\n[block head]\non = beam\nefficiency = 90 %\n"    \
    "mass = 1 kg\n[block tail]\nat = 1 m\nefficiency = 90 %\nmass = 1 kg\n[load crate]\non = tail\n"         \
    "mass = 9 kg\n[hand crew]\nat = 1.5 m\n[rope fall]\npath = head, tail, head, crew\n"

/* Read a set; `faults` is begun here, and ended by the caller. NULL after a fault. The rigs are: two.ini,
 * three.ini (three parts, the hand above: 9 kg hang on them), led.ini (one part, 10 kg, over `head` and
 * `lead`), legs.ini (10 kg on two legs as 3 to 4), odd.ini (one leg to a side), fault.ini (not sound). */
gtl_set *read_set(const char *text, gtl_fault_list *faults);

/* The same, which has to be sound. */
gtl_set *read_sound_set(const char *text);

/* Fail unless reading tells exactly one fault, with these words in it. */
void assert_set_fault(const char *text, int line, const char *words);

#endif

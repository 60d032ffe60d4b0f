/* SPDX-License-Identifier: MIT
 * Places: what the machine formats ask of one place of an item.
 */
#ifndef REPORT_PLACES_H
#define REPORT_PLACES_H

#include "verdict.h"

/* The action a place counts under: milder where it is kept as a condition, -1 where it is closed or a variance covers it. */
int spot_action(const Finding *item, const Spot *spot);

/* Whether a place makes the status 1. */
bool is_at_gate(const Verdict *verdict, const Finding *item, const Spot *spot);

/* The rules that wait for what an item asks for: "ENG-11, ENG-13". */
const char *waiting_codes(const Finding *item, Arena *arena);

/* "MC-1042", or nothing. */
const char *submittal_number(const Verdict *verdict);

#endif

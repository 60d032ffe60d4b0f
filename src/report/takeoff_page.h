/* SPDX-License-Identifier: MIT
 * The takeoff in its three forms, and what they share.
 */
#ifndef REPORT_TAKEOFF_PAGE_H
#define REPORT_TAKEOFF_PAGE_H

#include "report.h"

void write_takeoff_text(Out *out, const Page *page, Arena *arena);
void write_takeoff_csv(Out *out, const Page *page, Arena *arena);
void write_takeoff_json(Out *out, const Page *page, Arena *arena);

/* A quantity to two decimals, pieces whole. */
const char *amount_text(double value, Arena *arena);

/* "counted", "waiting", "not counted". */
const char *count_state_words(CountState state);

#endif

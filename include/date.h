/* SPDX-License-Identifier: MIT
 * Days as numbers since 1970-01-01, proleptic Gregorian.
 */
#ifndef DATE_H
#define DATE_H

#include "arena.h"

#include <stdbool.h>

/* Reads YYYY-MM-DD; false for days that do not exist. */
bool date_read(const char *text, size_t length, int32_t *day);

/* "2026-04-14". */
const char *date_print(Arena *arena, int32_t day);

/* The same day so many years later, or earlier; of 29 February the 28th where there is none. */
int32_t date_years_later(int32_t day, int years);

/* Years from one day to another, counted by anniversaries. */
double date_years_between(int32_t from, int32_t to);

/* The number of working days after `from` up to and including `to`; weekends and the `count` holidays are skipped. */
int32_t date_working_days(int32_t from, int32_t to, const int32_t *holiday, size_t count);

/* The first day on which so many working days have passed after `from`; `from` itself for none. */
int32_t date_after_working_days(int32_t from, int32_t days, const int32_t *holiday, size_t count);

#endif

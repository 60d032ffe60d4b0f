/* SPDX-License-Identifier: MIT
 * Numbers in and out.
 */
#ifndef NUMBER_H
#define NUMBER_H

#include "arena.h"

#include <stdbool.h>

/* Reads a plain decimal number ("12", "-0.5", "1,200", "1.5e3") that fills `length` bytes; false for inf, nan, hex, leftovers. */
bool number_read(const char *text, size_t length, double *value);

/* The shortest form that reads back to the same value. */
const char *number_shortest(Arena *arena, double value);

/* The digits behind the point with which `count` values are told apart where they differ, at least three significant. */
int number_digits(const double *value, size_t count);

/* The value with so many digits behind the point, trailing zeros left out. */
const char *number_print(Arena *arena, double value, int digits);

/* Whether two values count as equal: relative tolerance 1e-9. */
bool number_same(double a, double b);

#endif

/* SPDX-License-Identifier: MIT
 * The plain functions: numbers in the units of their parameters' names, no records. A fact fetches the inputs and calls one.
 */
#ifndef FORMULA_H
#define FORMULA_H

#include <stddef.h>

/* ---- formula/screws ---- */

/* Steel that a drill point goes through before the threads take hold. */
double drilled_in(double clip_in, double support_in);

/* Least length of a screw into steel: what it goes through, and three full threads beyond the far side. */
double length_into_steel_in(double through_in, double threads_per_in);

/* Least length of a screw into a wood panel or board: right through. */
double length_into_wood_in(double through_in);

/* ---- formula/lives ---- */

/* The greatest of the offered terms that is not above the life; 0 if none is. */
double longest_term_yr(const double *offered_yr, size_t count, double life_yr);

/* ---- formula/spacing ---- */

/* A listed spacing as the one laid, where both are one spacing in two units (24 in laid at 610 mm): within the tolerance. */
double same_spacing_in(double listed_in, double laid_in, double tolerance_percent);

/* Spacing here over the spacing at which the class was earned; at most 1 is within the class. */
double spacing_ratio(double spacing_in, double class_spacing_in);

#endif

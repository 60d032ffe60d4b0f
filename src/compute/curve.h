/* SPDX-License-Identifier: MIT
 * The tested pressures of one listing, as a curve over the clip spacing.
 */
#ifndef CURVE_H
#define CURVE_H

#include "case.h"
#include "formula.h"

typedef struct {
	const TestPoint *test; /* ultimate pressures, from the closest spacing to the widest; never rising */
	const ListingTest *const *row; /* the row of each */
	uint32_t count;
	double fewest; /* the fewest specimens of any row: one factor of safety holds for all */
	double included; /* the greatest factor already in a row; 1: none */
} Curve;

/* The curve of the listing a test names; the listing must be known. Worked out once. */
const Curve *curve_of(Case *test);

/* The tests between which a spacing lies; one and the same at a tested spacing, and closer than the closest. */
typedef struct {
	uint32_t closer, wider;
	double at_in; /* the spacing read off: a tested one of which the laid one is the same in another unit */
	bool beyond; /* wider than the widest test */
} Bracket;
Bracket bracket_of(const Curve *curve, double laid_in, double tolerance_percent);

#endif

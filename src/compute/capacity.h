/* SPDX-License-Identifier: MIT
 * The papers that say what a zone holds, fetched for a fact.
 */
#ifndef CAPACITY_H
#define CAPACITY_H

#include "curve.h"
#include "fetch.h"

/* The test of the roof area named for capacity, with tested pressures in its listing; NULL: the fact waits, is refused, or does
 * not apply, since no paper for capacity is named: rules of their own say that one is due. The fact is borrowed where the
 * construction differs from the tested one. */
Case *fetch_capacity_test(Case *fact);

/* How pressures between two tests are taken by these criteria. */
Interpolation fetch_interpolation(Case *fact);
Interpolation interpolation_of(const Criteria *criteria);

/* The difference by which a spacing is the tested one in another unit. */
double fetch_spacing_tolerance(Case *fact);

enum { MOST_APPROVALS = 16 };

/* The tests of the roof area named for local approval, and those named for capacity after the first, whose listings are known:
 * the least of all papers governs. The fact is refused if there are too many. */
typedef struct {
	Case *at[MOST_APPROVALS];
	uint32_t count;
} Approvals;
void fetch_approvals(Case *fact, Approvals *approvals);

/* What such a paper allows: its tests at their factor, and its cap. Whoever asks has made sure that the fact is ready. */
CapacityPaper fetch_approval(Case *fact, Case *test);

#endif

/* SPDX-License-Identifier: MIT
 * Lives and terms.
 */
#include "formula.h"

/* A life that falls short of a term by less than a billionth of it reaches it: the tolerance of every comparison. */
static const double tolerance = 1e-9;

double longest_term_yr(const double *offered_yr, size_t count, double life_yr)
{
	double longest = 0;
	for (size_t i = 0; i < count; i++)
		if (offered_yr[i] <= life_yr * (1 + tolerance) && offered_yr[i] > longest)
			longest = offered_yr[i];
	return longest;
}

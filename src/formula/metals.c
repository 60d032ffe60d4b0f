/* SPDX-License-Identifier: MIT
 * Metals that touch.
 */
#include "formula.h"

#include <math.h>

double potential_difference_V(double index_a_V, double index_b_V)
{
	return fabs(index_a_V - index_b_V);
}

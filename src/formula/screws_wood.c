/* SPDX-License-Identifier: MIT
 * Withdrawal from wood, allowable level: NDS-2018 section 12.2, lb for each inch of thread in side grain.
 */
#include "formula.h"

#include <math.h>

/* W = 2850 G^2 D: equation 12.2-2. */
double wood_screw_withdrawal_lb_per_in(double gravity, double screw_in)
{
	return 2850 * gravity * gravity * screw_in;
}

/* W = 1800 G^1.5 D^0.75: equation 12.2-1. */
double lag_screw_withdrawal_lb_per_in(double gravity, double screw_in)
{
	return 1800 * pow(gravity, 1.5) * pow(screw_in, 0.75);
}

double withdrawal_lb(double per_in, double penetration_in, double duration)
{
	return per_in * penetration_in * duration;
}

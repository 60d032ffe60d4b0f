/* SPDX-License-Identifier: MIT
 * Movement of panels with temperature, from the line at which they are fixed.
 */
#include "formula.h"

#include <math.h>

static const double in_per_ft = 12;

double movement_in(double expansion_per_F, double run_ft, double difference_F)
{
	return expansion_per_F * run_ft * in_per_ft * difference_F;
}

/* A tab that is centred may go half its travel either way; one set by the mark for the day's temperature uses the whole. */
double travel_ratio_one(double expansion_in, double contraction_in, double travel_in, bool set_by_mark)
{
	if (set_by_mark)
		return (expansion_in + contraction_in) / travel_in;
	return fmax(expansion_in, contraction_in) / (travel_in / 2);
}

double longest_run_ft(double expansion_per_F, double greater_difference_F, double travel_in)
{
	return travel_in / 2 / (expansion_per_F * greater_difference_F * in_per_ft);
}

double carried_difference_F(double expansion_per_F, double run_ft, double travel_in)
{
	return travel_in / (expansion_per_F * run_ft * in_per_ft);
}

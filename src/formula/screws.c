/* SPDX-License-Identifier: MIT
 * Screws: what a drill point must go through, and how long a screw must be.
 */
#include "formula.h"

#include <math.h>

/* Threads that must show beyond the far sheet (AISI S200 wording, second-hand). The drill point and the threads cut short by it
 * need more (SAE J78, second-hand): this is the least that can be asked for without knowing the point's own length. */
static const double threads_beyond = 3;

double drilled_in(double clip_in, double support_in)
{
	return clip_in + support_in;
}

double length_into_steel_in(double through_in, double threads_per_in)
{
	return through_in + threads_beyond / threads_per_in;
}

/* 3/4 in of wood or all of it, whichever is less (IBC 2018 1507.3, a clause on tile). */
static const double wood_needed_in = 0.75;

double length_into_wood_in(double above_in, double wood_in)
{
	return above_in + fmin(wood_in, wood_needed_in);
}

/* SPDX-License-Identifier: MIT
 * Screws in tension in cold-formed steel: AISI S100-16 section J4.4 (E4.4 to S100-12). The section numbers are from memory; the
 * equations agree with published tables (tests/published).
 */
#include "formula.h"

#include <math.h>

static const double lb_per_kip = 1000;

/* Pnot = 0.85 tc d Fu2: equation J4.4.1-1. tc is the embedment, at most the thickness of the sheet away from the head. */
double screw_pullout_lb(double support_in, double screw_in, double tensile_ksi)
{
	return 0.85 * support_in * screw_in * tensile_ksi * lb_per_kip;
}

/* Pnov = 1.5 t1 dw' Fu1: equation J4.4.2-1. dw' is the head or washer, at most the cap of the edition (1/2 in for a head). */
double screw_pullover_lb(double sheet_in, double head_in, double cap_in, double tensile_ksi)
{
	return 1.5 * sheet_in * fmin(head_in, cap_in) * tensile_ksi * lb_per_kip;
}

/* Section J4: 0.08 in <= d <= 0.25 in. A 5/16 in screw needs test data. */
bool is_in_steel_range(double screw_in)
{
	const double least_in = 0.08, greatest_in = 0.25, tolerance = 1e-9;
	return screw_in >= least_in - tolerance && screw_in <= greatest_in + tolerance;
}

/* Section J4.4.3 for the screw itself. Under a clip that pulls to one side only half the pull-over counts (memory). */
double screw_nominal_lb(const ScrewTension *of)
{
	double pullover = of->one_sided ? 0.5 * of->pullover_lb : of->pullover_lb;
	return fmin(fmin(of->pullout_lb, pullover), of->tension_lb);
}

/* Section A3.1.3 (memory): min(0.75 Fu, 62 ksi). */
double low_ductility_tensile_ksi(double tensile_ksi)
{
	return fmin(0.75 * tensile_ksi, 62);
}

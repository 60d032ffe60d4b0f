/* SPDX-License-Identifier: MIT
 * Velocity pressure and the pressure it makes: ASCE 7 chapters 26 and 30, the same functions for every edition; what differs
 * stands in data/reference/wind_*.csv.
 */
#include "formula.h"

#include <math.h>

/* Kz = factor (max(z, least) / zg)^(2 / alpha), and the factor itself above the gradient height: Table 26.10-1, note 1. */
double exposure_coefficient_one(double height_ft, double least_ft, const ExposureLaw *law)
{
	double z = fmax(height_ft, least_ft);
	return z >= law->gradient_ft ? law->factor : law->factor * pow(z / law->gradient_ft, 2 / law->alpha);
}

/* Ke = exp(-0.0000362 ze): Table 26.9-1. Below the sea the table is blank, and 1 is always permitted. */
double elevation_factor_one(double ground_ft, double per_ft)
{
	return ground_ft > 0 ? exp(-per_ft * ground_ft) : 1;
}

/* Kzt = (1 + K1 K2 K3)^2: Figure 26.8-1. A hill steeper than H/Lh = 0.5 counts as one of that slope with Lh = 2 H. */
double topographic_factor_one(const Hill *hill, double height_ft)
{
	const double steepest = 0.5;
	double slope = hill->height_ft / hill->half_length_ft, half_length = hill->half_length_ft;
	if (slope > steepest) {
		slope = steepest;
		half_length = hill->height_ft / steepest;
	}
	double along = hill->distance_ft < 0 ? hill->upwind_attenuation : hill->downwind_attenuation;
	double k1 = hill->multiplier * slope;
	double k2 = fmax(0, 1 - fabs(hill->distance_ft) / (along * half_length));
	double k3 = exp(-hill->height_attenuation * height_ft / half_length);
	double root = 1 + k1 * k2 * k3;
	return root * root;
}

/* Section 26.8.1, conditions 4 and 5 (from memory). */
bool is_hill_to_count(const Hill *hill, double least_ft)
{
	return hill->height_ft >= least_ft && hill->height_ft >= 0.2 * hill->half_length_ft;
}

double velocity_pressure_psf(const VelocityPressure *of)
{
	return of->constant * of->exposure * of->topographic * of->directionality * of->elevation * of->speed_mph * of->speed_mph;
}

/* Equation 30.3-1 (30.4-1 in ASCE 7-10), section 30.2.2 for the least. The worse sign of the internal pressure adds to uplift. */
double strength_uplift_psf(double velocity_psf, double coefficient, double internal, double least_psf)
{
	return fmax(least_psf, velocity_psf * (coefficient + internal));
}

double asd_uplift_psf(double strength_psf, double factor)
{
	return factor * strength_psf;
}

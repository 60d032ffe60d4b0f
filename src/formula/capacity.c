/* SPDX-License-Identifier: MIT
 * From tested pressures to what may be used at the spacing submitted.
 *
 * Where clips govern, p s is constant; where the panel governs, p goes with 1/s^2: both curves sag below the straight line
 * between two tests, which is therefore not on the safe side.
 */
#include "formula.h"

#include <math.h>

static double by_straight_line(const TestPoint *from, const TestPoint *to, double spacing_in)
{
	double share = (spacing_in - from->spacing_in) / (to->spacing_in - from->spacing_in);
	return from->pressure_psf + share * (to->pressure_psf - from->pressure_psf);
}

/* The reaction of a clip, p s, goes by the straight line. */
static double by_reaction(const TestPoint *from, const TestPoint *to, double spacing_in)
{
	TestPoint near = { .spacing_in = from->spacing_in, .pressure_psf = from->pressure_psf * from->spacing_in };
	TestPoint far = { .spacing_in = to->spacing_in, .pressure_psf = to->pressure_psf * to->spacing_in };
	return by_straight_line(&near, &far, spacing_in) / spacing_in;
}

/* p = a s^b through both tests. */
static double by_power_law(const TestPoint *from, const TestPoint *to, double spacing_in)
{
	double power = log(to->pressure_psf / from->pressure_psf) / log(to->spacing_in / from->spacing_in);
	return from->pressure_psf * pow(spacing_in / from->spacing_in, power);
}

static double between_tests(const TestPoint *from, const TestPoint *to, double spacing_in, Interpolation how)
{
	switch (how) {
	case BY_STRAIGHT_LINE:
		return by_straight_line(from, to, spacing_in);
	case BY_REACTION:
		return by_reaction(from, to, spacing_in);
	case BY_POWER_LAW:
		return by_power_law(from, to, spacing_in);
	case BY_LESSER_CURVE:
		return fmin(by_reaction(from, to, spacing_in), by_power_law(from, to, spacing_in));
	case BY_NEXT_WIDER:
		break;
	}
	return to->pressure_psf;
}

/* A spacing within a billionth of a tested one is that one. */
static bool is_at(const TestPoint *test, double spacing_in)
{
	return fabs(spacing_in - test->spacing_in) <= 1e-9 * test->spacing_in;
}

double tested_pressure_psf(const TestPoint *test, size_t count, double spacing_in, Interpolation how)
{
	for (size_t i = 0; i < count; i++) {
		if (is_at(&test[i], spacing_in) || (i == 0 && spacing_in < test[0].spacing_in))
			return test[i].pressure_psf;
		if (spacing_in < test[i].spacing_in)
			return between_tests(&test[i - 1], &test[i], spacing_in, test[i].unlike ? BY_NEXT_WIDER : how);
	}
	return -1;
}

double allowable_pressure_psf(double pressure_psf, double factor, double factor_included)
{
	return pressure_psf * factor_included / fmax(factor, factor_included);
}

double spacing_as_tested_in(const TestPoint *test, size_t count, double laid_in, double tolerance_percent)
{
	for (size_t i = 0; i < count; i++)
		if (same_spacing_in(test[i].spacing_in, laid_in, tolerance_percent) == laid_in)
			return test[i].spacing_in;
	return laid_in;
}

/* A paper without tests allows up to its cap, whatever the spacing. */
static double paper_allows_psf(const CapacityPaper *paper, double spacing_in, Interpolation how)
{
	if (paper->count == 0)
		return paper->cap_psf;
	double tested_psf = tested_pressure_psf(paper->test, paper->count, spacing_in, how);
	double allowed_psf = tested_psf < 0 ? -1 : tested_psf / paper->factor;
	return paper->cap_psf > 0 ? fmin(allowed_psf, paper->cap_psf) : allowed_psf;
}

double least_allowable_psf(const CapacityPaper *paper, size_t papers, double spacing_in, Interpolation how)
{
	double least_psf = paper_allows_psf(&paper[0], spacing_in, how);
	for (size_t i = 1; i < papers; i++)
		least_psf = fmin(least_psf, paper_allows_psf(&paper[i], spacing_in, how));
	return least_psf;
}

double clip_load_lb(double pressure_psf, double panel_width_in, double spacing_in)
{
	return pressure_psf * effective_area_sq_ft(panel_width_in, spacing_in);
}

double effective_area_sq_ft(double panel_width_in, double spacing_in)
{
	const double sq_in_per_sq_ft = 144;
	return panel_width_in * spacing_in / sq_in_per_sq_ft;
}

/* SPDX-License-Identifier: MIT
 * The greatest spacing of clips that holds in a zone and can be built.
 *
 * Going closer is not always better: below the closest test the capacity stays while the demand of a smaller area may rise.
 * So the spacings that pass may have holes, and each one that can be built is tried, from the widest down.
 */
#include "formula.h"

#include <math.h>

static const double same = 1e-9;

static bool is_more(double value, double than)
{
	return value > than * (1 + same);
}

static bool is_wider(const SpacingSearch *of, double spacing_in, double than_in)
{
	return is_more(spacing_in, than_in * (1 + of->tolerance_percent / 100));
}

static double widest_in(const SpacingSearch *of)
{
	return of->paper[0].test[of->paper[0].count - 1].spacing_in;
}

/* What one paper allows, read off at the spacing as that paper tested it. */
static double allowed_psf(const SpacingSearch *of, double spacing_in)
{
	double least_psf = HUGE_VAL;
	for (size_t i = 0; i < of->papers; i++) {
		const CapacityPaper *paper = &of->paper[i];
		double read_in = spacing_as_tested_in(paper->test, paper->count, spacing_in, of->tolerance_percent);
		least_psf = fmin(least_psf, least_allowable_psf(paper, 1, read_in, of->how));
	}
	return least_psf;
}

unsigned spacing_binds(const SpacingSearch *of, double spacing_in)
{
	unsigned binds = NOTHING_BINDS;
	double demand_psf = of->demand.at_psf(of->demand.wind, spacing_in), allowed = allowed_psf(of, spacing_in);
	double load_lb = clip_load_lb(demand_psf, of->panel_width_in, spacing_in);
	if (allowed < 0)
		binds |= WIDEST_TEST_BINDS;
	else if (is_more(demand_psf, allowed))
		binds |= UPLIFT_BINDS;
	if (of->clip_allowable_lb > 0 && is_more(load_lb, of->clip_allowable_lb))
		binds |= FASTENING_BINDS;
	if (of->class_spacing_in > 0 && is_wider(of, spacing_in, of->class_spacing_in))
		binds |= CLASS_BINDS;
	if (of->letter_spacing_in > 0 && is_wider(of, spacing_in, of->letter_spacing_in))
		binds |= LETTER_BINDS;
	return binds;
}

GreatestSpacing greatest_spacing(const SpacingSearch *of)
{
	double unit_in = of->unit_in, most_in = widest_in(of) * (1 + of->tolerance_percent / 100);
	double first = floor(most_in / unit_in * (1 + same)), last = ceil(of->paper[0].test[0].spacing_in / unit_in * (1 - same));
	unsigned binds = spacing_binds(of, (first + 1) * unit_in);
	for (double step = first; step >= last && step > 0; step--) {
		unsigned here = spacing_binds(of, step * unit_in);
		if (here == NOTHING_BINDS)
			return (GreatestSpacing){ step * unit_in, binds };
		binds = here;
	}
	return (GreatestSpacing){ 0, binds };
}

double spacing_unit_in(double module_in, double step_in)
{
	return module_in > 0 ? module_in * fmax(1, ceil(step_in / module_in * (1 - same))) : step_in;
}

/* SPDX-License-Identifier: MIT
 * From tested pressures to what may be used in a zone, at the spacing its clips are laid.
 *
 * A capacity belongs to the construction that was tested: where the submitted one differs it is borrowed, shown and never met.
 */
#include "capacity.h"

#include "below.h"

#include <math.h>
#include <stdio.h>

static const char *const beyond = "beyond the widest tested spacing";

/* ---- the tests on either side of a spacing ---- */

typedef struct {
	const Curve *curve;
	Bracket bracket;
} Beside;

/* False: the fact waits or is refused. */
static bool fetch_beside(Case *zone, Beside *beside)
{
	Case *test = fetch_capacity_test(zone);
	double spacing = GIVEN(zone, zone, Zone, spacing_in), tolerance = fetch_spacing_tolerance(zone);
	if (!ready(zone))
		return false;
	beside->curve = curve_of(test);
	beside->bracket = bracket_of(beside->curve, spacing, tolerance);
	note(zone, ((const Listing *)test->listed)->listing.text);
	if (beside->bracket.beyond)
		REFUSE(zone, beyond);
	return ready(zone);
}

/* Its own row says what the pressure is: the value used is the ultimate one. */
static const char *row_at(const Case *zone, const ListingTest *row)
{
	return arena_printf(zone->all->arena, "listing_tests.csv %s at %g in", row->listing.text, row->clip_spacing_in.value);
}

static double spacing_of(Case *zone, bool wider)
{
	Beside beside;
	if (!fetch_beside(zone, &beside))
		return 0;
	uint32_t i = wider ? beside.bracket.wider : beside.bracket.closer;
	return fetch_constant(zone, row_at(zone, beside.curve->row[i]), beside.curve->test[i].spacing_in, NULL);
}

static double pressure_of(Case *zone, bool wider)
{
	Beside beside;
	if (!fetch_beside(zone, &beside))
		return 0;
	uint32_t i = wider ? beside.bracket.wider : beside.bracket.closer;
	return fetch_constant(zone, row_at(zone, beside.curve->row[i]), beside.curve->test[i].pressure_psf, NULL);
}

double zone_closer_spacing_in(Case *zone)
{
	return spacing_of(zone, false);
}

double zone_wider_spacing_in(Case *zone)
{
	return spacing_of(zone, true);
}

double zone_closer_pressure_psf(Case *zone)
{
	return pressure_of(zone, false);
}

double zone_wider_pressure_psf(Case *zone)
{
	return pressure_of(zone, true);
}

/* The last row of a paper, if it is closer than what was found before. */
static double narrower_last(Case *zone, const Curve *curve, double before)
{
	const ListingTest *row = curve->count > 0 ? curve->row[curve->count - 1] : NULL;
	if (row == NULL || row->clip_spacing_in.value >= before)
		return before;
	note(zone, row->listing.text);
	return fetch_constant(zone, row_at(zone, row), row->clip_spacing_in.value, NULL);
}

/* Of the capacity report and the further papers, the one that goes least far. */
double zone_widest_tested_in(Case *zone)
{
	Case *test = fetch_capacity_test(zone);
	double spacing = GIVEN(zone, zone, Zone, spacing_in), tolerance = fetch_spacing_tolerance(zone);
	Approvals approvals;
	fetch_approvals(zone, &approvals);
	if (!ready(zone))
		return 0;
	double widest = narrower_last(zone, curve_of(test), HUGE_VAL), reported = widest;
	for (uint32_t i = 0; i < approvals.count; i++)
		widest = narrower_last(zone, curve_of(approvals.at[i]), widest);
	double same = same_spacing_in(widest, spacing, tolerance);
	if (widest < reported)
		zone->now->formula = "least of the widest spacings in the papers on capacity";
	if (same != widest)
		zone->now->formula = "{spacing}";
	return same;
}

/* ---- the tested pressure at the spacing laid ---- */

static const char *const line = "{closer_pressure} + ({wider_pressure} - {closer_pressure}) * ({spacing} - {closer_spacing}) / "
				"({wider_spacing} - {closer_spacing})";
static const char *const reaction = "({closer_pressure} * {closer_spacing} + ({wider_pressure} * {wider_spacing} - "
				    "{closer_pressure} * {closer_spacing}) * ({spacing} - {closer_spacing}) / "
				    "({wider_spacing} - {closer_spacing})) / {spacing}";
static const char *const power = "{closer_pressure} * ({spacing} / {closer_spacing}) ^ "
				 "(log({wider_pressure} / {closer_pressure}) / log({wider_spacing} / {closer_spacing}))";

/* The template of the branch that gave the value. */
static const char *template_of(const Beside *beside, Interpolation how, double value)
{
	const TestPoint *test = beside->curve->test;
	uint32_t closer = beside->bracket.closer, wider = beside->bracket.wider;
	if (closer == wider)
		return "{closer_pressure}";
	if (test[wider].unlike || how == BY_NEXT_WIDER)
		return "{wider_pressure}";
	if (how == BY_STRAIGHT_LINE)
		return line;
	double by_reaction = tested_pressure_psf(test, beside->curve->count, beside->bracket.at_in, BY_REACTION);
	return by_reaction == value ? reaction : power;
}

static const char *method_of(const char *formula)
{
	if (formula == line)
		return "by a straight line between two tests";
	if (formula == reaction)
		return "by the reaction of a clip, between two tests";
	return formula == power ? "by a power of the spacing, between two tests" : "at a tested spacing";
}

static double tested_by(Case *zone, Interpolation how)
{
	Beside beside;
	bool is_beside = fetch_beside(zone, &beside);
	OF(zone, zone_closer_spacing_in);
	OF(zone, zone_closer_pressure_psf);
	OF(zone, zone_wider_spacing_in);
	OF(zone, zone_wider_pressure_psf);
	if (!is_beside || !ready(zone))
		return 0;
	const Curve *curve = beside.curve;
	double value = tested_pressure_psf(curve->test, curve->count, beside.bracket.at_in, how);
	zone->now->formula = template_of(&beside, how, value);
	bool is_denied = zone->now->formula[1] == 'w';
	const char *method = is_denied ? "that of the next wider test" : method_of(zone->now->formula);
	note(zone, arena_printf(zone->all->arena, "%s, %s", curve->row[0]->listing.text, method));
	return value;
}

double zone_tested_uplift_psf(Case *zone)
{
	return tested_by(zone, fetch_interpolation(zone));
}

double zone_straight_line_uplift_psf(Case *zone)
{
	return tested_by(zone, BY_STRAIGHT_LINE);
}

/* ---- allowable ---- */

/* The least of the further papers at a spacing; the first that has no test so wide refuses. */
static double approvals_allow(Case *zone, double spacing_in, double tolerance)
{
	Approvals approvals;
	fetch_approvals(zone, &approvals);
	double least = HUGE_VAL;
	for (uint32_t i = 0; i < approvals.count && ready(zone); i++) {
		CapacityPaper paper = fetch_approval(zone, approvals.at[i]);
		if (!ready(zone) || (paper.count == 0 && paper.cap_psf == 0))
			continue;
		double at_in = spacing_as_tested_in(paper.test, paper.count, spacing_in, tolerance);
		double allows = least_allowable_psf(&paper, 1, at_in, fetch_interpolation(zone));
		if (allows < 0)
			REFUSE(zone, "beyond the widest spacing of a further paper on capacity");
		else if (allows < least)
			note(zone, ((const Listing *)approvals.at[i]->listed)->listing.text);
		least = fmin(least, allows);
	}
	if (ready(zone) && !isfinite(least))
		return SKIP(zone, "no further paper limits the pressure");
	return ready(zone) ? least : 0;
}

double zone_approval_allowable_psf(Case *zone)
{
	double spacing = GIVEN(zone, zone, Zone, spacing_in), tolerance = fetch_spacing_tolerance(zone);
	return ready(zone) ? approvals_allow(zone, spacing, tolerance) : 0;
}

/* The capacity report at its factor, or the further papers where they allow less. */
static double least_of_papers(Case *zone, double tested, const char *both, const char *alone)
{
	Case *test = fetch_capacity_test(zone);
	double factor = test != NULL ? OF_AT(zone, test, test_safety_factor_one) : 0;
	const Fact *approved = fetch_use(zone, zone, FACT_zone_approval_allowable);
	if (approved->state != FACT_NOT_APPLICABLE)
		fetch_raise(zone, approved);
	if (!ready(zone))
		return 0;
	bool is_approved = approved->state == FACT_KNOWN;
	double allowable = allowable_pressure_psf(tested, factor, 1);
	bool is_less = is_approved && approved->value < allowable;
	const char *paper = ((const Listing *)test->listed)->listing.text;
	zone->now->formula = is_approved ? both : alone;
	note(zone, is_less ? approved->note : arena_printf(zone->all->arena, "%s at a factor of %g", paper, factor));
	return is_less ? approved->value : allowable;
}

double zone_allowable_uplift_psf(Case *zone)
{
	double tested = OF(zone, zone_tested_uplift_psf);
	return least_of_papers(zone, tested, "min({tested_uplift} / {safety_factor}, {approval_allowable})", NULL);
}

double zone_straight_line_allowable_psf(Case *zone)
{
	double tested = OF(zone, zone_straight_line_uplift_psf);
	return least_of_papers(zone, tested, "min({straight_line_uplift} / {safety_factor}, {approval_allowable})", NULL);
}

/* At the closest tested spacing: what no spacing betters. */
double zone_greatest_allowable_psf(Case *zone)
{
	Case *test = fetch_capacity_test(zone);
	double factor = test != NULL ? OF_AT(zone, test, test_safety_factor_one) : 0;
	if (!ready(zone))
		return 0;
	const Curve *curve = curve_of(test);
	double tested = fetch_constant(zone, row_at(zone, curve->row[0]), curve->test[0].pressure_psf, NULL);
	double allowable = allowable_pressure_psf(tested, factor, 1);
	Approvals approvals;
	fetch_approvals(zone, &approvals);
	for (uint32_t i = 0; i < approvals.count && ready(zone); i++) {
		CapacityPaper paper = fetch_approval(zone, approvals.at[i]);
		if (ready(zone) && (paper.count > 0 || paper.cap_psf > 0))
			allowable = fmin(allowable, least_allowable_psf(&paper, 1, 0, BY_NEXT_WIDER)); /* closer than its closest */
	}
	note(zone, ((const Listing *)test->listed)->listing.text);
	return ready(zone) ? allowable : 0;
}

/* ---- demand over allowable ---- */

double zone_uplift_ratio_one(Case *zone)
{
	double demand = OF(zone, zone_demand_psf), allowable = OF(zone, zone_allowable_uplift_psf);
	if (!ready(zone))
		return 0;
	const char *by = fact_of(zone, FACT_zone_allowable_uplift)->note;
	bool is_overhang = fact_of(zone, FACT_zone_overhang_uplift)->state == FACT_KNOWN && demand > OF(zone, zone_roof_uplift_psf);
	note(zone, is_overhang ? arena_printf(zone->all->arena, "%s; the overhang at the eave governs", by) : by);
	return demand / allowable;
}

double zone_straight_line_ratio_one(Case *zone)
{
	double demand = OF(zone, zone_demand_psf), allowable = OF(zone, zone_straight_line_allowable_psf);
	return ready(zone) ? demand / allowable : 0;
}

double zone_clip_load_lb(Case *zone)
{
	double demand = OF(zone, zone_demand_psf);
	double width = GIVEN(zone, roof_area, RoofArea, panel.width_in), spacing = GIVEN(zone, zone, Zone, spacing_in);
	return ready(zone) ? clip_load_lb(demand, width, spacing) : 0;
}

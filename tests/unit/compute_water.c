/* SPDX-License-Identifier: MIT
 * Slope under load, drag on the fixing of a panel, underlayments and joints, worked by hand.
 */
#include "compute_world.h"

#include "formula.h"

#include <math.h>

/* ---- plain functions ---- */

/* Half an inch over a span of 60 in: the fall over 30 in is less by half an inch, 0.2 in 12. */
static void a_sag_takes_from_the_slope(void **state)
{
	(void)state;
	assert_true(fabs(slope_under_load_in_12(1, 0.5, 0, 60) - 0.8) < 1e-12);
	assert_true(fabs(slope_under_load_in_12(1, 0.5, 0.5, 60) - 1) < 1e-12);
	assert_true(fabs(slope_under_load_in_12(1, 0.5, 0.75, 60) - 0.9) < 1e-12); /* camber left over */
}

/* 9:12 has a sine of 0.6: 2 psf on 10 sq ft drag with 12 lb. Thirty clips of 5 lb resist with 150 lb. */
static void what_slides_beside_snow(void **state)
{
	(void)state;
	assert_true(fabs(weight_drag_lb(2, 12, 10, 9) - 12) < 1e-12);
	assert_true(fabs(friction_drag_lb(5, 60, 24) - 150) < 1e-12);
	assert_true(fabs(carried_difference_F(0.00001, 50, 1.2) - 200) < 1e-9);
}

/* ---- slope ---- */

static void a_slope(World *w, double slope, double least)
{
	w->area.building.slope_in_12 = NUMBER_IS(slope);
	w->area.panel.least_slope_in_12 = NUMBER_IS(least);
	w->area.support.spacing_in = NUMBER_IS(60);
	w->criteria.edition.deflection_limit_one = NUMBER_IS(180);
}

static void a_deflection_that_is_stated_counts(void **state)
{
	World *w = *state;
	a_slope(w, 1, 0.5);
	w->area.support.deflection_in = NUMBER_IS(0.5);
	assert_known(w->roof, "slope_under_load", 0.8);
}

static void camber_takes_the_deflection_up(void **state)
{
	World *w = *state;
	a_slope(w, 1, 0.5);
	w->area.support.deflection_in = NUMBER_IS(0.5);
	w->area.support.camber_in = NUMBER_IS(0.25);
	assert_known(w->roof, "slope_under_load", 0.9);
}

/* Span over 180 takes 24 / 180 = 2 / 15 from the slope. */
static void a_slope_that_holds_at_the_limit_needs_no_figure(void **state)
{
	World *w = *state;
	a_slope(w, 0.5 + 2 / 15.0, 0.5);
	assert_known(w->roof, "slope_under_load", 0.5);
}

static void one_that_does_not_waits_for_the_deflection(void **state)
{
	World *w = *state;
	a_slope(w, 0.63, 0.5);
	assert_waits(w, w->roof, "slope_under_load", "deflection");
}

static void the_engineer_s_own_slope_goes_first(void **state)
{
	World *w = *state;
	a_slope(w, 1, 0.5);
	w->area.support.deflection_in = NUMBER_IS(0.5);
	w->area.building.slope_after_deflection_in_12 = NUMBER_IS(0.7);
	assert_known(w->roof, "slope_under_load", 0.7);
}

/* ---- water from above ---- */

static void a_roof_above(World *w, const char *how, double run)
{
	UpperRoof *row = TAKE(w->arena, UpperRoof, 1);
	row->how = WORD_IS(how);
	row->run_ft = NUMBER_IS(run);
	w->area.drains_from_above.of.given.said = SAID_VALUE;
	add_case(w, KIND_upper_roof, w->roof, row);
}

/* Half of 96 ft at 9:12 is 60 ft of slope. */
static void water_that_is_spread_runs_down_the_roof(void **state)
{
	World *w = *state;
	w->area.building.shape = WORD_IS("gable");
	w->area.building.width_ft = NUMBER_IS(96);
	w->area.building.slope_in_12 = NUMBER_IS(9);
	a_roof_above(w, "gutter", 90);
	a_roof_above(w, "spread", 30);
	a_roof_above(w, "spread", 20);
	assert_known(w->roof, "drained_run", 90);
}

static void a_gutter_leads_it_past(void **state)
{
	World *w = *state;
	a_roof_above(w, "gutter", 90);
	assert_state(w->roof, "drained_run", FACT_NOT_APPLICABLE);
}

/* ---- drag ---- */

static void a_zone(World *w, double spacing)
{
	Zone *row = TAKE(w->arena, Zone, 1);
	row->spacing_in = NUMBER_IS(spacing);
	add_case(w, KIND_zone, w->roof, row);
}

static void a_clip(World *w, const char *use, double force)
{
	Clip *row = TAKE(w->arena, Clip, 1);
	row->use = WORD_IS(use);
	row->slide_force_lb = NUMBER_IS(force);
	w->area.clips.of.given.said = SAID_VALUE;
	add_case(w, KIND_clip, w->roof, row);
}

static void a_steep_strip(World *w, const char *line)
{
	FixedLine *row = TAKE(w->arena, FixedLine, 1);
	row->line = WORD_IS(line);
	w->area.fixed_at.of.given.said = SAID_VALUE;
	add_case(w, KIND_fixed_line, w->roof, row);
	w->area.building.roof_snow_psf = NUMBER_IS(30);
	w->area.building.slope_in_12 = NUMBER_IS(9);
	w->area.panel.width_in = NUMBER_IS(12);
	w->area.panel.length_ft = NUMBER_IS(10);
	w->area.panel.end_laps_one = NUMBER_IS(0);
	w->area.panel.weight_psf = NUMBER_IS(2);
	a_zone(w, 24);
	a_zone(w, 12);
}

/* Snow 30 * 10 * 0.6 * 0.8 = 144 lb, weight 12 lb, ten clips of 5 lb. */
static void all_that_hangs_on_the_fixing(void **state)
{
	World *w = *state;
	a_steep_strip(w, "eave");
	a_clip(w, "running", 4);
	a_clip(w, "running", 5);
	a_clip(w, "fixity", 90);
	assert_known(w->roof, "snow_drag", 144);
	assert_known(w->roof, "weight_drag", 12);
	assert_known(w->roof, "closest_spacing", 12);
	assert_known(w->roof, "friction_drag", 50);
	assert_known(w->roof, "fixity_drag", 206);
}

/* The whole snow hangs on a line in the middle, and the clips of one half. */
static void fixed_in_the_middle(void **state)
{
	World *w = *state;
	a_steep_strip(w, "mid-slope");
	a_clip(w, "running", 5);
	assert_known(w->roof, "friction_drag", 25);
	assert_known(w->roof, "fixity_drag", 181);
}

static void a_slide_force_not_stated_is_waited_for(void **state)
{
	World *w = *state;
	a_steep_strip(w, "eave");
	a_clip(w, "running", 5);
	((Clip *)(uintptr_t)w->all.of[KIND_clip].at[0]->row)->slide_force_lb = (Number){ 0 };
	assert_waits(w, w->roof, "fixity_drag", "slide_force");
}

/* ---- underlayments ---- */

static Case *a_sheet(World *w, const char *kind, const char *where)
{
	Underlayment *row = TAKE(w->arena, Underlayment, 1);
	row->kind = WORD_IS(kind);
	row->where = WORD_IS(where);
	w->area.underlayments.of.given.said = SAID_VALUE;
	return add_case(w, KIND_underlayment, w->roof, row);
}

static Underlayment *row_of(Case *sheet)
{
	return (Underlayment *)(uintptr_t)sheet->row;
}

static void days_between_laying_and_cover(void **state)
{
	World *w = *state;
	Case *sheet = a_sheet(w, "felt", "whole roof");
	row_of(sheet)->laid = DAY_IS(20600);
	row_of(sheet)->covered = DAY_IS(20690);
	assert_known(sheet, "exposed_days", 90);
}

/* 2026-04-14 is day 20557. */
static void a_sheet_still_open_counts_until_today(void **state)
{
	World *w = *state;
	Case *sheet = a_sheet(w, "felt", "whole roof"), *planned = a_sheet(w, "felt", "eaves");
	row_of(sheet)->laid = DAY_IS(20500);
	assert_known(sheet, "exposed_days", 57);
	row_of(planned)->laid = DAY_IS(20600);
	assert_waits(w, planned, "exposed_days", "covered");
}

static void covered_before_it_is_laid_is_refused(void **state)
{
	World *w = *state;
	Case *sheet = a_sheet(w, "felt", "whole roof");
	row_of(sheet)->laid = DAY_IS(20600);
	row_of(sheet)->covered = DAY_IS(20599);
	assert_state(sheet, "exposed_days", FACT_REFUSED);
}

static void the_barrier_that_reaches_farthest_counts(void **state)
{
	World *w = *state;
	row_of(a_sheet(w, "self-adhered", "eaves"))->inside_wall_in = NUMBER_IS(20);
	row_of(a_sheet(w, "self-adhered", "eaves and valleys"))->inside_wall_in = NUMBER_IS(30);
	row_of(a_sheet(w, "felt", "eaves"))->inside_wall_in = NUMBER_IS(90);
	assert_known(w->roof, "ice_barrier_reach", 30);
}

static void a_detail(World *w, const char *place)
{
	Detail *row = TAKE(w->arena, Detail, 1);
	row->place = WORD_IS(place);
	w->area.details.of.given.said = SAID_VALUE;
	add_case(w, KIND_detail, w->roof, row);
}

static void each_edge_without_sheet_is_named_once(void **state)
{
	World *w = *state;
	a_sheet(w, "felt", "whole roof");
	a_sheet(w, "self-adhered", "valleys");
	a_detail(w, "eave");
	a_detail(w, "eave");
	a_detail(w, "valley");
	a_detail(w, "headwall");
	a_detail(w, "sidewall");
	a_detail(w, "ridge");
	assert_known(w->roof, "edges_without_sheet", 2);
	assert_string_equal(ask_fact(w->roof, "edges_without_sheet")->note, "eave, headwall");
}

/* ---- joints ---- */

static Text *only_text(World *w, const char *text)
{
	Text *one = TAKE(w->arena, Text, 1);
	*one = TEXT_IS(text);
	return one;
}

static void a_sealant(World *w, uint32_t place, uint32_t chemistry, const char *may_touch)
{
	static const char *const chemistries[] = { "butyl", "urethane" };
	Sealant *row = TAKE(w->arena, Sealant, 1);
	row->where = (Word){ GOOD, "wall", place };
	row->chemistry = (Word){ GOOD, chemistries[chemistry], chemistry };
	row->compatible_with = (Texts){ GOOD, 1, only_text(w, may_touch) };
	w->area.sealants.of.given.said = SAID_VALUE;
	add_case(w, KIND_sealant, w->roof, row);
}

static void both_sealants_must_allow_the_other(void **state)
{
	World *w = *state;
	a_sealant(w, 3, 0, "urethane");
	a_sealant(w, 3, 1, "acrylic");
	assert_known(w->roof, "sealants_fit", 0);
	assert_string_equal(ask_fact(w->roof, "sealants_fit")->note, "urethane and butyl at the wall");
}

static void sealants_of_two_places_do_not_meet(void **state)
{
	World *w = *state;
	a_sealant(w, 3, 0, "acrylic");
	a_sealant(w, 4, 1, "acrylic");
	assert_known(w->roof, "sealants_fit", 1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_sag_takes_from_the_slope),
		cmocka_unit_test(what_slides_beside_snow),
		TEST(a_deflection_that_is_stated_counts),
		TEST(camber_takes_the_deflection_up),
		TEST(a_slope_that_holds_at_the_limit_needs_no_figure),
		TEST(one_that_does_not_waits_for_the_deflection),
		TEST(the_engineer_s_own_slope_goes_first),
		TEST(water_that_is_spread_runs_down_the_roof),
		TEST(a_gutter_leads_it_past),
		TEST(all_that_hangs_on_the_fixing),
		TEST(fixed_in_the_middle),
		TEST(a_slide_force_not_stated_is_waited_for),
		TEST(days_between_laying_and_cover),
		TEST(a_sheet_still_open_counts_until_today),
		TEST(covered_before_it_is_laid_is_refused),
		TEST(the_barrier_that_reaches_farthest_counts),
		TEST(each_edge_without_sheet_is_named_once),
		TEST(both_sealants_must_allow_the_other),
		TEST(sealants_of_two_places_do_not_meet),
	};
	return cmocka_run_group_tests_name("compute: water", tests, NULL, NULL) != 0;
}

/* SPDX-License-Identifier: MIT
 * What a screw through a clip holds, and by which proof: test of the construction, tested pull-out, equation, or none.
 */
#include "compute_world.h"

#include "formula.h"

#define SIZE_IS(t, d) { .size = { GOOD, t }, .diameter_in = { GOOD, d } }
static const Screw screws[] = { SIZE_IS("#10", 0.190), SIZE_IS("#12", 0.216), SIZE_IS("#14", 0.242), SIZE_IS("1/4", 0.250),
	SIZE_IS("5/16", 0.3125) };
static const ScrewHead heads[] = {
	{ .size = { GOOD, "#10" }, .across_corners_in = { GOOD, 0.340 }, .tension_lb = { GOOD, 1158 },
		.source = { GOOD, "second-paper" } },
	{ .size = { GOOD, "#12" }, .across_corners_in = { GOOD, 0.340 }, .tension_lb = { GOOD, 2325 },
		.source = { GOOD, "second-paper" } },
	{ .size = { GOOD, "#14" }, .across_corners_in = { GOOD, 0.409 }, .source = { GOOD, "second-paper" } },
};
static const Gauge gauges[] = {
	{ .use = { GOOD, "sheet" }, .gauge_one = { GOOD, 22 }, .thickness_in = { GOOD, 0.0299 }, .source = { GOOD, "memory-paper" } },
	{ .use = { GOOD, "deck" }, .gauge_one = { GOOD, 22 }, .thickness_in = { GOOD, 0.0295 }, .source = { GOOD, "read-paper" } },
	{ .use = { GOOD, "deck" }, .gauge_one = { GOOD, 20 }, .thickness_in = { GOOD, 0.0358 }, .source = { GOOD, "read-paper" } },
};
static const TradeSize sizes[] = {
	{ .family = { GOOD, "deck" }, .size = { GOOD, "22 ga" }, .sold_as_in = { GOOD, 0.0295 }, .source = { GOOD, "read-paper" } },
	{ .family = { GOOD, "deck" }, .size = { GOOD, "22 ga" }, .sold_as_in = { GOOD, 0.0280 }, .source = { GOOD, "read-paper" } },
};
static const SteelGrade grades[] = {
	{ .grade_ksi = { GOOD, 33 }, .tensile_ksi = { GOOD, 45 }, .low_ductility = { GOOD, false }, .source = { GOOD, "memory-paper" } },
	{ .grade_ksi = { GOOD, 50 }, .tensile_ksi = { GOOD, 65 }, .low_ductility = { GOOD, false }, .source = { GOOD, "memory-paper" } },
	{ .grade_ksi = { GOOD, 80 }, .tensile_ksi = { GOOD, 82 }, .low_ductility = { GOOD, true }, .source = { GOOD, "memory-paper" } },
};
static const WoodKind woods[] = { { .wood = { GOOD, "plywood" },
	.gravity_one = { GOOD, 0.42 }, .source = { GOOD, "memory-paper" } } };

#define TABLE_IS(w, table, rows) ((w)->reference.table.row = rows, (w)->reference.table.count = sizeof rows / sizeof *rows)
static void tables(World *w)
{
	TABLE_IS(w, screws, screws);
	TABLE_IS(w, screw_heads, heads);
	TABLE_IS(w, gauges, gauges);
	TABLE_IS(w, trade_sizes, sizes);
	TABLE_IS(w, steel_grades, grades);
	TABLE_IS(w, woods, woods);
	w->submittal.specification.requirements.of.given.said = SAID_NONE;
}

static Clip *a_clip(World *w)
{
	Clip *row = TAKE(w->arena, Clip, 1);
	row->use = WORD_IS("running");
	row->metal = WORD_IS("steel");
	row->thickness_in = NUMBER_IS(0.0598);
	row->one_sided = YES_IS(true);
	w->area.clips.of.given.said = SAID_VALUE;
	add_case(w, KIND_clip, w->roof, row);
	return row;
}

static Fastener *a_screw(World *w, double size, Case **at)
{
	Fastener *row = TAKE(w->arena, Fastener, 1);
	row->item = TEXT_IS("screw-x");
	row->use = WORD_IS("clip");
	row->kind = WORD_IS("self-drilling screw");
	row->head = WORD_IS("hex washer");
	row->size_in = NUMBER_IS(size);
	row->per_one = NUMBER_IS(2);
	row->length_in = NUMBER_IS(1);
	w->area.fasteners.of.given.said = SAID_VALUE;
	*at = add_case(w, KIND_fastener, w->roof, row);
	return row;
}

static void on_deck(World *w, double thickness, double grade)
{
	tables(w);
	a_clip(w);
	w->area.support.kind = WORD_IS("steel deck");
	w->area.support.thickness_in = NUMBER_IS(thickness);
	w->area.support.grade_ksi = NUMBER_IS(grade);
}

/* 22 ga of grade 33 and two #12 a clip: composed example E-A. */
static void two_screws_in_steel_deck(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.028, 33); /* the least delivered of 22 ga is 22 ga */
	a_screw(w, 0.216, &at);
	assert_known(w->roof, "design_thickness", 0.0295);
	assert_known(w->roof, "design_tensile", 45);
	assert_known(at, "screw_pullout", 243.729);
	assert_known(at, "screw_pullover", 1372.41);
	assert_known(at, "screw_tension", 2325);
	assert_known(at, "screw_hold", 81.243);
	assert_known(at, "allowable_per_clip", 162.486);
	assert_known(w->roof, "clip_screws_allowable", 162.486);
	assert_int_equal(ask_fact(at, "screw_hold")->known_by, KNOWN_MEMORY);
	assert_state(at, "screw_withdrawal", FACT_NOT_APPLICABLE);
	assert_state(at, "tested_pullout", FACT_NOT_APPLICABLE);
}

static void grades_of_steel(void **state)
{
	World *w = *state;
	tables(w);
	w->area.support.grade_ksi = NUMBER_IS(80);
	w->area.support.tensile_ksi = NUMBER_IS(82);
	assert_known(w->roof, "design_tensile", 61.5);
}

static void a_grade_between_counts_as_the_lower_one(void **state)
{
	World *w = *state;
	tables(w);
	w->area.support.grade_ksi = NUMBER_IS(55);
	assert_known(w->roof, "design_tensile", 65);
}

static void no_grade_is_the_lowest(void **state)
{
	World *w = *state;
	tables(w);
	assert_known(w->roof, "design_tensile", 45);
	assert_string_equal(ask_fact(w->roof, "design_tensile")->note, "grade not stated: the lowest, 33 ksi, is assumed");
}

static void a_grade_below_all_is_refused(void **state)
{
	World *w = *state;
	tables(w);
	w->area.support.grade_ksi = NUMBER_IS(30);
	assert_state(w->roof, "design_tensile", FACT_REFUSED);
}

static void outside_the_equation(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.0295, 33);
	a_screw(w, 0.3125, &at);
	assert_state(at, "screw_pullout", FACT_REFUSED);
	assert_state(at, "allowable_per_clip", FACT_REFUSED);
	assert_known(at, "proof_found", 0);
	assert_known(w->roof, "screws_proven", 0);
	a_screw(w, 0.25, &at);
	assert_known(at, "screw_pullout", 282.09375);
	a_screw(w, 0.216, &at)->kind = WORD_IS("nail");
	assert_state(at, "screw_pullout", FACT_REFUSED);
	a_screw(w, 0.216, &at)->head = WORD_IS("flat");
	assert_state(at, "screw_pullover", FACT_REFUSED);
	a_screw(w, 0.216, &at)->use = WORD_IS("trim");
	assert_state(at, "screw_pullout", FACT_NOT_APPLICABLE);
}

static void clips_of_other_metals(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.0295, 33);
	a_clip(w)->metal = WORD_IS("aluminum");
	a_screw(w, 0.216, &at);
	assert_known(at, "screw_pullout", 243.729);
	assert_state(at, "screw_pullover", FACT_REFUSED);
	assert_known(at, "proof_found", 0);
}

/* A thin clip under thick steel: pull-over governs, half of it where the clip is one-sided or on one screw. */
static void one_sided_clips(void **state)
{
	World *w = *state;
	Case *at;
	tables(w);
	Clip *clip = a_clip(w);
	clip->thickness_in = NUMBER_IS(0.0239);
	clip->one_sided = YES_IS(false);
	w->area.support.kind = WORD_IS("purlin");
	w->area.support.thickness_in = NUMBER_IS(0.0966);
	w->area.support.grade_ksi = NUMBER_IS(50);
	a_screw(w, 0.216, &at);
	assert_known(at, "screw_allowable", 182.835); /* 1.5 * 0.0239 * 0.340 * 45000 / 3 */
	a_screw(w, 0.216, &at)->per_one = NUMBER_IS(1);
	assert_known(at, "screw_allowable", 91.4175);
}

static void sizes_the_tables_leave_out(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.0295, 33);
	a_screw(w, 0.242, &at);
	assert_known(at, "screw_tension", 2325);
	assert_string_equal(ask_fact(at, "screw_tension")->note, "#12");
	Fastener *stated = a_screw(w, 0.242, &at);
	stated->tension_lb = NUMBER_IS(2600);
	stated->head_diameter_in = NUMBER_IS(0.430);
	assert_known(at, "screw_tension", 2600);
	assert_known(at, "head_bearing", 0.430);
	a_screw(w, 0.242, &at)->head = WORD_IS("pancake");
	assert_known(at, "head_bearing", 0.409);
	assert_int_equal(ask_fact(at, "head_bearing")->known_by, KNOWN_PRACTICE);
}

/* ---- wood ---- */

/* 15/32 plywood and two #10: composed example E-B. */
static void wood_panels_are_an_estimate(void **state)
{
	World *w = *state;
	Case *at;
	tables(w);
	a_clip(w);
	w->area.support.kind = WORD_IS("plywood");
	w->area.support.thickness_in = NUMBER_IS(0.46875);
	a_screw(w, 0.190, &at)->kind = WORD_IS("wood screw");
	w->criteria.edition.wood_panel_estimate = YES_IS(false);
	assert_known(at, "screw_withdrawal", 95.5206);
	assert_state(at, "screw_hold", FACT_REFUSED);
	assert_known(at, "proof_found", 0);
	w->criteria.edition.wood_panel_estimate = YES_IS(true);
	a_screw(w, 0.190, &at)->kind = WORD_IS("wood screw");
	assert_known(at, "screw_hold", 71.64045);
	assert_known(at, "allowable_per_clip", 143.2809);
}

static void solid_wood_states_its_gravity(void **state)
{
	World *w = *state;
	Case *at;
	tables(w);
	a_clip(w);
	w->area.support.given.said = SAID_VALUE;
	w->area.support.kind = WORD_IS("wood");
	w->area.support.thickness_in = NUMBER_IS(3.5);
	Fastener *screw = a_screw(w, 0.25, &at);
	screw->kind = WORD_IS("lag screw");
	screw->length_in = NUMBER_IS(2.0598);
	assert_waits(w, at, "screw_withdrawal", "specific_gravity");
	w->area.support.specific_gravity_one = NUMBER_IS(0.50);
	screw = a_screw(w, 0.25, &at);
	screw->kind = WORD_IS("lag screw");
	screw->length_in = NUMBER_IS(2.0598);
	w->roof->fact = NULL; /* the gravity is stated now */
	assert_known(at, "thread_penetration", 2);
	assert_true(fabs(ask_fact(at, "screw_withdrawal")->value - 225) < 0.5); /* NDS-2018 Table 12.2A */
	assert_true(fabs(ask_fact(at, "screw_hold")->value - 720) < 1.6);
}

/* ---- tests go before equations ---- */

static const PullOut pullouts[] = { { .item = { GOOD, "screw-x" }, .support = { GOOD, "steel deck", 0 },
	.thickness_in = { GOOD, 0.0295 },
	.load_lb = { GOOD, 210 }, .tests_one = { GOOD, 5 }, .basis = { GOOD, "read-paper" } } };

static void tested_pull_out_goes_before_the_equation(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.028, 33);
	w->criteria.pullouts.row = pullouts;
	w->criteria.pullouts.count = 1;
	a_screw(w, 0.216, &at);
	assert_known(at, "tested_pullout", 210);
	assert_known(at, "screw_hold", 70); /* the equation gives 81.2 */
	a_screw(w, 0.216, &at)->item = TEXT_IS("screw-y");
	assert_known(at, "screw_hold", 81.243);
	w->area.support.pull_tests_one = NUMBER_IS(10);
	w->area.support.pull_lowest_lb = NUMBER_IS(240);
	a_screw(w, 0.216, &at);
	assert_known(at, "screw_hold", 80);
	assert_string_equal(ask_fact(at, "screw_hold")->note, "by pull tests on site");
}

static void a_requirement(World *w, const char *at_least)
{
	Requirement *row = TAKE(w->arena, Requirement, 1);
	row->topic = TEXT_IS("fastener factor of safety");
	if (at_least != NULL)
		row->at_least = TEXT_IS(at_least);
	w->submittal.specification.requirements.of.given.said = SAID_VALUE;
	add_case(w, KIND_requirement, w->at, row);
}

static void factors_the_specification_asks_for(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.0295, 33);
	a_requirement(w, "4");
	a_screw(w, 0.216, &at);
	assert_known(at, "test_factor", 4);
	assert_known(at, "equation_factor", 4);
	assert_known(at, "screw_hold", 60.93225);
}

static void guide_factors_by_count(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.0295, 33);
	a_requirement(w, "3.00 for one, 2.25 for more");
	a_screw(w, 0.216, &at);
	assert_known(at, "test_factor", 2.25);
	assert_known(at, "equation_factor", 3);
	a_screw(w, 0.216, &at)->per_one = NUMBER_IS(1);
	assert_known(at, "test_factor", 3);
}

/* UFGS 07416A, p. 12: read there. */
static void guide_factors_carry_their_page(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.0295, 33);
	a_requirement(w, "3.00 for one, 2.25 for more");
	a_screw(w, 0.216, &at);
	const Fact *factor = ask_fact(at, "test_factor");
	assert_string_equal(factor->formula, "{guide_factor}");
	const Use *guide = NULL;
	for (uint32_t i = factor->first_use; i != 0; i = w->all.use[i - 1].next)
		guide = w->all.use[i - 1].kind == USED_CONSTANT ? &w->all.use[i - 1] : guide;
	assert_non_null(guide);
	assert_string_equal(guide->source, "ufgs-07416a-p12");
}

static void the_greater_of_a_number_and_the_guide_counts(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.0295, 33);
	a_requirement(w, "3.00 for one, 2.25 for more");
	a_requirement(w, "2");
	a_screw(w, 0.216, &at);
	assert_known(at, "test_factor", 2.25);
	assert_string_equal(ask_fact(at, "test_factor")->formula, "max({asked_factor}, {guide_factor})");
}

static void without_a_requirement_the_factor_is_three(void **state)
{
	World *w = *state;
	Case *at;
	on_deck(w, 0.0295, 33);
	a_screw(w, 0.216, &at);
	assert_known(at, "test_factor", 3);
	assert_known(at, "equation_factor", 3);
}

static void this_construction_on_this_support(void **state)
{
	static const Listing listing = { .listing = { GOOD, "report-x" }, .role = { GOOD, "capacity", 1 },
		.substrate_tested = { GOOD, "steel deck", 0 }, .status = { GOOD, "in force", 0 } };
	World *w = *state;
	on_deck(w, 0.0295, 33);
	AreaTest *test = TAKE(w->arena, AreaTest, 1);
	test->listing = TEXT_IS("report-x");
	test->role = WORD_IS("capacity");
	w->area.tests.of.given.said = SAID_VALUE;
	add_case(w, KIND_test, w->roof, test)->listed = &listing;
	assert_known(w->roof, "tested_on_this_support", 1);
	w->area.support.kind = WORD_IS("purlin");
	w->roof->fact = NULL;
	assert_known(w->roof, "tested_on_this_support", 0);
	test->role = WORD_IS("class");
	w->area.support.kind = WORD_IS("steel deck");
	w->roof->fact = NULL;
	assert_known(w->roof, "tested_on_this_support", 0);
}

/* ---- properties ---- */

/* A larger screw, thicker or stronger steel never holds less; pull-out goes in proportion to each. */
static void more_never_holds_less(void **state)
{
	static const double size[] = { 0.138, 0.164, 0.190, 0.216, 0.242, 0.250 }, thick[] = { 0.0179, 0.0295, 0.0358, 0.0474, 0.0598 };
	(void)state;
	for (size_t i = 0; i + 1 < sizeof size / sizeof *size; i++)
		for (size_t j = 0; j + 1 < sizeof thick / sizeof *thick; j++) {
			double here = screw_pullout_lb(thick[j], size[i], 45);
			assert_true(screw_pullout_lb(thick[j], size[i + 1], 45) > here);
			assert_true(screw_pullout_lb(thick[j + 1], size[i], 45) > here);
			assert_true(screw_pullout_lb(thick[j], size[i], 55) > here);
			assert_close(screw_pullout_lb(2 * thick[j], size[i], 45), 2 * here, 1e-12);
			assert_true(wood_screw_withdrawal_lb_per_in(0.42, size[i + 1]) > wood_screw_withdrawal_lb_per_in(0.42, size[i]));
			assert_true(screw_pullover_lb(thick[j + 1], 0.34, 0.5, 45) > screw_pullover_lb(thick[j], 0.34, 0.5, 45));
		}
	assert_close(screw_pullout_lb(0.0295, 0.242, 45) / screw_pullout_lb(0.0295, 0.216, 45), 0.242 / 0.216, 1e-12);
	assert_close(screw_pullover_lb(0.06, 0.6, 0.5, 45), screw_pullover_lb(0.06, 0.5, 0.5, 45), 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(two_screws_in_steel_deck),
		TEST(grades_of_steel),
		TEST(a_grade_between_counts_as_the_lower_one),
		TEST(no_grade_is_the_lowest),
		TEST(a_grade_below_all_is_refused),
		TEST(outside_the_equation),
		TEST(clips_of_other_metals),
		TEST(one_sided_clips),
		TEST(sizes_the_tables_leave_out),
		TEST(wood_panels_are_an_estimate),
		TEST(solid_wood_states_its_gravity),
		TEST(tested_pull_out_goes_before_the_equation),
		TEST(factors_the_specification_asks_for),
		TEST(guide_factors_by_count),
		TEST(guide_factors_carry_their_page),
		TEST(the_greater_of_a_number_and_the_guide_counts),
		TEST(without_a_requirement_the_factor_is_three),
		TEST(this_construction_on_this_support),
		TEST(more_never_holds_less),
	};
	return cmocka_run_group_tests_name("compute: fastening", tests, NULL, NULL) != 0;
}

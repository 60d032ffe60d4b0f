/* SPDX-License-Identifier: MIT
 * The overhang at the eave: which zones reach it, what a table prints for it, the letter's word on it, and that it counts in what the
 * clips have to hold.
 */
#include "../wind_roof.h"

#include "formula.h"

static World world;

static int setup(void **state)
{
	*state = arena_make();
	return 0;
}

static int teardown(void **state)
{
	arena_free(*state);
	return 0;
}

#define TEST(f) cmocka_unit_test_setup_teardown(f, setup, teardown)

/* A roof with an overhang and letters as YAML; a NULL overhang is left out. */
static Cases *overhung(Arena *arena, const WindRoof *roof, const char *overhang, const char *letters)
{
	const Source *source;
	Node *root = wind_nodes(arena, roof, &source);
	assert_true(edit_nodes(arena, root, "building.overhang", overhang != NULL ? overhang : "-"));
	assert_true(edit_nodes(arena, root, "engineering", letters));
	return wind_resolve(&world, arena, root, source);
}

static const Fact *of_zone(const Cases *all, const char *zone, const char *fact)
{
	return wind_fact(zone_named(all, zone), fact);
}

/* ---- published ---- */

/* RAS 127-20, Table 8 (read): hip over 4:12 to 6:12, exposure C, 175 mph, at 30 ft: 82, 105 and 129 psf in zones 1, 2 and 3, in
 * whole psf, ASD, with internal pressure. At 10 sq ft and less: the clips of the clean example hold 2.7 sq ft. */
static void a_printed_table_of_overhangs(void **state)
{
	WindRoof hip = { "ASCE 7-16", "hip", "enclosed", "C", 5, 30, 200, 120, 175, 0, 0 };
	Cases *all = overhung(*state, &hip, "2 ft", "none");
	assert_true(fabs(of_zone(all, "2e", "overhang_uplift")->value - 105) < 1);
	assert_true(fabs(of_zone(all, "3", "overhang_uplift")->value - 129) < 1);
	assert_string_equal(of_zone(all, "1", "overhang_uplift")->reason, "this zone does not reach the eave");
}

/* 0.00256 * 0.945229 * 115^2 = 32.0015 by the power law at 25 ft, times 0.85; a hip of 6:12 at 20 sq ft: roof 2.4 - 1.1 log10(2) /
 * log10(20) of zone 2; here zone 3, 2.6 - 1.2 * 0.231378 = 2.322346, and the wall 1 - 0.3 log10(2) / log10(50) = 0.946845. */
static void from_2022_on_the_wall_below_pushes_too(void **state)
{
	WindRoof hip = { "ASCE 7-22", "hip", "enclosed", "C", 3, 25, 80, 32, 115, 0, 0 };
	Cases *all = overhung(*state, &hip, "2 ft", "none");
	Case *zone = zone_named(all, "3");
	set_area(zone, 20);
	assert_close(wind_value(zone, "overhang_coefficient"), 2.322346 + 0.946845, 1e-6);
	assert_close(wind_value(zone, "overhang_strength"), wind_value(zone->up, "velocity_pressure") * 0.85 * (2.322346 + 0.946845 + 0.18),
		     1e-6);
}

static void walls_above_60_ft_push_less(void **state)
{
	WindRoof high = { "ASCE 7-22", "gable", "enclosed", "C", 4, 70, 200, 120, 115, 0, 0 };
	assert_close(of_zone(overhung(*state, &high, "2 ft", "none"), "1", "overhang_coefficient")->value, 2.0 + 0.9, 1e-12);
	high.height = 60;
	assert_close(of_zone(overhung(*state, &high, "2 ft", "none"), "1", "overhang_coefficient")->value, 2.0 + 1.0, 1e-12);
}

/* ---- which zones ---- */

static void zones_that_reach_the_eave(void **state)
{
	(void)state;
	static const struct {
		Layout layout;
		const char *at, *away; /* one zone a letter, with its mark */
	} plans[] = { { LAYOUT_EDGES, "2 3 ", "1 " }, { LAYOUT_HIGH, "2 3 ", "1 " }, { LAYOUT_LOW_SLOPE, "2 3 ", "1 1' " },
		{ LAYOUT_GABLE_2010, "2 3 ", "1 " }, { LAYOUT_LOW_HIP_2010, "2 ", "1 3 " }, { LAYOUT_HIP_2010, "2 3 ", "1 " },
		{ LAYOUT_GABLE_2016, "2e 3e ", "1 2n 2r 3r " }, { LAYOUT_HIP_2016, "2e 3 ", "1 2r " },
		{ LAYOUT_GABLE_2022, "1 2 ", "3 " }, { LAYOUT_STEEP_GABLE_2022, "1 3 ", "2 " }, { LAYOUT_HIP_2022, "3 ", "1 2 " },
		{ LAYOUT_MONOSLOPE, "2 3 ", "1 2' 3' " } };
	assert_int_equal(sizeof plans / sizeof *plans, LAYOUTS);
	for (size_t i = 0; i < LAYOUTS; i++)
		for (int away = 0; away < 2; away++)
			for (const char *at = away ? plans[i].away : plans[i].at; *at != '\0'; at += strcspn(at, " ") + 1) {
				char zone[4] = "";
				memcpy(zone, at, strcspn(at, " "));
				RoofPlan plan = { 200, 120, plans[i].layout == LAYOUT_LOW_SLOPE ? 20 : 9, plans[i].layout };
				if (is_zone_at_eave(&plan, zone) == away)
					fail_msg("layout %u: zone %s", (unsigned)plans[i].layout, zone);
			}
}

static void no_overhang_is_no_uplift(void **state)
{
	static const WindRoof gable = { "ASCE 7-16", "gable", "enclosed", "C", 4, 24, 200, 120, 115, 0, 0 };
	static const char *const none[] = { NULL, "0 ft" };
	for (int i = 0; i < 2; i++) {
		Cases *all = overhung(*state, &gable, none[i], "none");
		assert_int_equal(of_zone(all, "3e", "overhang_uplift")->state, FACT_NOT_APPLICABLE);
		assert_close(of_zone(all, "3e", "demand")->value, of_zone(all, "3e", "asd_uplift")->value, 0);
	}
	assert_int_equal(of_zone(overhung(*state, &gable, "unknown", "none"), "3e", "demand")->state, FACT_WAITING);
}

/* ---- demand ---- */

static void the_clips_at_the_eave_hold_the_overhang(void **state)
{
	static const WindRoof gable = { "ASCE 7-16", "gable", "enclosed", "C", 4, 24, 200, 120, 115, 0, 0 };
	Cases *all = overhung(*state, &gable, "1 ft", "none");
	double velocity = wind_value(all->of[KIND_roof_area].at[0], "velocity_pressure");
	assert_close(of_zone(all, "3e", "demand")->value, 0.6 * velocity * (4.1 + 0.18), 1e-12);
	assert_string_equal(of_zone(all, "3e", "demand")->note, "the overhang at the eave governs");
	assert_close(of_zone(all, "3r", "demand")->value, of_zone(all, "3r", "asd_uplift")->value, 0);
}

#define LETTER(pressures) "[{letter: A, areas: [Main roof], standard: ASCE 7-16, level: strength, pressures: " pressures "}]"

static void the_letter_may_state_it(void **state)
{
	static const WindRoof gable = { "ASCE 7-16", "gable", "enclosed", "C", 4, 24, 200, 120, 115, 0, 0 };
	Cases *all = overhung(*state, &gable, "1 ft", LETTER("{field: 40 psf, perimeter: 50 psf, corner: 60 psf, overhang: 150 psf}"));
	assert_close(of_zone(all, "3e", "letter_overhang")->value, 90, 1e-12);
	assert_close(of_zone(all, "3e", "overhang_uplift")->value, 90, 1e-12);
	assert_close(of_zone(all, "3e", "demand")->value, 90, 1e-12);
	assert_close(of_zone(all, "3e", "letter_uplift")->value, 36, 1e-12);
	all = overhung(*state, &gable, "1 ft", LETTER("{field: 40 psf, overhang: 50 psf}"));
	assert_true(of_zone(all, "3e", "overhang_uplift")->value > 60);
}

/* Without a curve the letter stands alone; without either nothing is judged. */
static void a_figure_without_overhangs_leaves_it_to_the_letter(void **state)
{
	static const WindRoof roofs[] = { { "ASCE 7-16", "flat", "enclosed", "C", 1, 70, 200, 120, 115, 0, 0 },
		{ "ASCE 7-16", "monoslope", "enclosed", "C", 1, 24, 200, 120, 115, 0, 0 } };
	for (int i = 0; i < 2; i++) {
		Cases *all = overhung(*state, &roofs[i], "1 ft", "none");
		assert_int_equal(of_zone(all, "3", "overhang_uplift")->state, FACT_REFUSED);
		assert_int_equal(of_zone(all, "3", "demand")->state, FACT_REFUSED);
		assert_string_equal(of_zone(all, "3", "demand")->reason,
				    "no figure gives the pressure of this overhang: the engineer's letter has to state it");
		assert_int_equal(of_zone(all, "1", "demand")->state, FACT_KNOWN);
		all = overhung(*state, &roofs[i], "1 ft", LETTER("{perimeter: 50 psf, overhang: 200 psf}"));
		assert_close(of_zone(all, "3", "overhang_uplift")->value, 120, 1e-12);
		assert_close(of_zone(all, "3", "demand")->value, 120, 1e-12);
	}
}

/* The eave lies in no zone of a roof that no figure covers: all but the field may reach it. */
static void without_a_figure_the_letter_has_to_state_the_overhang(void **state)
{
	static const WindRoof open = { "ASCE 7-16", "gable", "open", "C", 1, 24, 200, 120, 115, 0, 0 };
	Cases *all = overhung(*state, &open, "1 ft", LETTER("{field: 40 psf, perimeter: 50 psf, corner: 60 psf}"));
	assert_int_equal(of_zone(all, "perimeter", "demand")->state, FACT_REFUSED);
	assert_close(of_zone(all, "perimeter", "roof_uplift")->value, 30, 1e-12);
	assert_close(of_zone(all, "field", "demand")->value, 24, 1e-12);
	all = overhung(*state, &open, "1 ft", LETTER("{field: 40 psf, perimeter: 50 psf, corner: 100 psf, overhang: 80 psf}"));
	assert_close(of_zone(all, "perimeter", "demand")->value, 48, 1e-12);
	assert_close(of_zone(all, "corner", "demand")->value, 60, 1e-12);
	assert_close(of_zone(all, "field", "demand")->value, 24, 1e-12);
	all = overhung(*state, &open, "1 ft", LETTER("90 psf"));
	assert_close(of_zone(all, "perimeter", "demand")->value, 54, 1e-12);
	all = overhung(*state, &open, "0 ft", LETTER("{field: 40 psf, perimeter: 50 psf, corner: 60 psf}"));
	assert_close(of_zone(all, "corner", "demand")->value, 36, 1e-12);
}

/* What stands on the roof is not pulled from below: the cap said to be in the corner is held against 3.0 of zone 3e, not 4.1. */
static void nothing_on_the_roof_is_held_against_the_overhang(void **state)
{
	static const WindRoof gable = { "ASCE 7-16", "gable", "enclosed", "C", 4, 24, 200, 120, 115, 0, 0 };
	Cases *all = overhung(*state, &gable, "1 ft", "none");
	double velocity = wind_value(all->of[KIND_roof_area].at[0], "velocity_pressure");
	Case *cap = NULL;
	for (uint32_t i = 0; i < all->of[KIND_detail].count; i++)
		if (strcmp(((const Detail *)all->of[KIND_detail].at[i]->row)->place.text, "ridge") == 0)
			cap = all->of[KIND_detail].at[i];
	assert_non_null(cap);
	assert_close(wind_value(cap, "zone_uplift"), 0.6 * velocity * (3.0 + 0.18), 1e-12);
	assert_true(of_zone(all, "3e", "demand")->value > wind_value(cap, "zone_uplift"));
}

/* A word for the overhang, or for an interior the figure has none of, speaks for no zone the letter leaves out. */
static void words_of_the_letter_go_where_they_belong(void **state)
{
	static const WindRoof gable = { "ASCE 7-16", "gable", "enclosed", "C", 4, 24, 200, 120, 115, 0, 0 };
	Cases *all = overhung(*state, &gable, "1 ft", LETTER("{interior: 90 psf, field: 40 psf, corner: 60 psf, overhang: 150 psf}"));
	assert_close(of_zone(all, "1", "letter_uplift")->value, 54, 1e-12);
	assert_close(of_zone(all, "3e", "letter_uplift")->value, 36, 1e-12);
	assert_int_equal(of_zone(all, "2r", "letter_uplift")->state, FACT_NOT_APPLICABLE);
	all = overhung(*state, &gable, "1 ft", LETTER("{field: 40 psf, edges: 50 psf}"));
	assert_close(of_zone(all, "2r", "letter_uplift")->value, 30, 1e-12);
}

static int start(void **state)
{
	(void)state;
	world = world_make();
	return 0;
}

static int stop(void **state)
{
	(void)state;
	arena_free(world.run);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(a_printed_table_of_overhangs),
		TEST(from_2022_on_the_wall_below_pushes_too),
		TEST(walls_above_60_ft_push_less),
		TEST(zones_that_reach_the_eave),
		TEST(no_overhang_is_no_uplift),
		TEST(the_clips_at_the_eave_hold_the_overhang),
		TEST(the_letter_may_state_it),
		TEST(a_figure_without_overhangs_leaves_it_to_the_letter),
		TEST(without_a_figure_the_letter_has_to_state_the_overhang),
		TEST(nothing_on_the_roof_is_held_against_the_overhang),
		TEST(words_of_the_letter_go_where_they_belong),
	};
	return cmocka_run_group_tests_name("wind_overhang", tests, start, stop) != 0;
}

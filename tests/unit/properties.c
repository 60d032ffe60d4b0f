/* SPDX-License-Identifier: MIT
 * What must hold of any roof and of any tests, over thousands of random ones: which way uplift moves with the wind, the height, the
 * zone and the area, and which way a capacity moves with the spacing.
 */
#include "../small_roof.h"

#include "formula.h"

static World world;

enum { DRAWS = 4000 };

/* ---- random roofs ---- */

static void any_shape(Dice *dice, Building *building)
{
	static const char *const shapes[] = { "flat", "gable", "hip", "monoslope" };
	static const double steepest[] = { 1.473, 12, 6.1, 6.9 }; /* covered in every edition */
	uint32_t shape = dice_roll(dice, 4);
	building->shape = word(&Building_record, "shape", shapes[shape]);
	building->slope_in_12.value = dice_between(dice, 0.05, steepest[shape]);
	building->length_ft.value = dice_between(dice, 60, 500);
	building->width_ft.value = dice_between(dice, 30, 250);
	building->eave_height_ft.value = building->mean_roof_height_ft.value = dice_between(dice, 8, dice_roll(dice, 3) == 0 ? 400 : 60);
	building->enclosure = word(&Building_record, "enclosure", dice_roll(dice, 2) ? "enclosed" : "partially enclosed");
	building->parapet_height_ft.value = dice_roll(dice, 4) == 0 ? 3 : 0;
}

static void any_wind(Dice *dice, Wind *wind)
{
	static const char *const standards[] = { "ASCE 7-10", "ASCE 7-16", "ASCE 7-22" }, *const exposures[] = { "B", "C", "D" },
		*const hills[] = { "none", "none", "ridge", "escarpment", "hill" };
	wind->standard.text = standards[dice_roll(dice, 3)];
	wind->exposure = word(&Wind_record, "exposure", exposures[dice_roll(dice, 3)]);
	wind->basic_speed_mph.value = dice_between(dice, 85, 250);
	wind->ground_elevation_ft.value = dice_between(dice, -100, 8000);
	wind->topography.terrain = word(&Topography_record, "terrain", hills[dice_roll(dice, 5)]);
	wind->topography.height_ft.value = dice_between(dice, 5, 300);
	wind->topography.half_length_ft.value = dice_between(dice, 100, 800);
	wind->topography.distance_ft.value = dice_between(dice, -500, 500);
}

static void any_roof(Dice *dice, Submittal *submittal)
{
	any_shape(dice, &submittal->building);
	any_wind(dice, &submittal->wind);
}

/* One zone of a roof, as it was before something changes. */
typedef struct {
	const char *zone, *figure;
	double uplift;
} Before;

static double uplift_at(Case *zone, double area_sq_ft)
{
	set_area(zone, area_sq_ft);
	return wind_value(zone, "strength_uplift");
}

/* A random zone of the roof as the records stand. */
static Before uplift_before(Dice *dice, Arena *arena, const Submittal *submittal, double area_sq_ft)
{
	Cases *all = small_cases(&world, arena, submittal);
	assert_true(all->of[KIND_zone].count > 0);
	Case *zone = all->of[KIND_zone].at[dice_roll(dice, all->of[KIND_zone].count)];
	const Zone *row = zone->row;
	return (Before){ row->name.text, row->figure.text, uplift_at(zone, area_sq_ft) };
}

/* The same zone of the same figure after a change: never less. False: the change led to another figure, or off the plan. */
static bool is_no_less(Arena *arena, const Submittal *submittal, const Before *before, double area_sq_ft)
{
	Cases *all = small_cases(&world, arena, submittal);
	Case *zone = zone_or_null(all, before->zone);
	if (zone == NULL || strcmp(((const Zone *)zone->row)->figure.text, before->figure) != 0)
		return false;
	double after = uplift_at(zone, area_sq_ft);
	if (after < before->uplift * (1 - 1e-12))
		fail_msg("zone %s of %s fell from %.17g to %.17g", before->zone, before->figure, before->uplift, after);
	return true;
}

/* ---- uplift ---- */

static void uplift_never_falls_when_the_speed_rises(void **state)
{
	Submittal *submittal = small_roof(&world, *state);
	Dice dice = { 31 };
	for (int i = 0; i < dice_draws(DRAWS); i++) {
		Arena *arena = arena_make();
		any_roof(&dice, submittal);
		double area = dice_between(&dice, 0.5, 600);
		Before before = uplift_before(&dice, arena, submittal, area);
		submittal->wind.basic_speed_mph.value += dice_between(&dice, 0, 50);
		assert_true(is_no_less(arena, submittal, &before, area));
		arena_free(arena);
	}
}

/* On level ground: higher above a hill the wind is less sped up. */
static void uplift_never_falls_when_the_height_rises_within_a_figure(void **state)
{
	Submittal *submittal = small_roof(&world, *state);
	Dice dice = { 32 };
	int compared = 0;
	for (int i = 0; i < dice_draws(DRAWS); i++) {
		Arena *arena = arena_make();
		any_roof(&dice, submittal);
		submittal->wind.topography.terrain = word(&Topography_record, "terrain", "none");
		double area = dice_between(&dice, 0.5, 600);
		Before before = uplift_before(&dice, arena, submittal, area);
		double higher = submittal->building.eave_height_ft.value + dice_between(&dice, 0, 30);
		submittal->building.eave_height_ft.value = submittal->building.mean_roof_height_ft.value = higher;
		compared += is_no_less(arena, submittal, &before, area);
		arena_free(arena);
	}
	assert_true(compared > dice_draws(DRAWS) / 2);
}

static void uplift_never_rises_with_the_area(void **state)
{
	Submittal *submittal = small_roof(&world, *state);
	Dice dice = { 33 };
	for (int i = 0; i < dice_draws(DRAWS); i++) {
		Arena *arena = arena_make();
		any_roof(&dice, submittal);
		double area = dice_between(&dice, 0.5, 600);
		Before before = uplift_before(&dice, arena, submittal, area);
		assert_true(is_no_less(arena, submittal, &before, area * dice_between(&dice, 0.1, 1)));
		arena_free(arena);
	}
}

/* At 10 sq ft, from the middle of the roof outwards; behind a parapet zone 3 is zone 2, and a figure may give two zones one curve. */
static void uplift_rises_from_the_field_to_the_corner(void **state)
{
	static const char *const outwards[] = { "1'", "1", "2", "3" };
	Submittal *submittal = small_roof(&world, *state);
	Dice dice = { 34 };
	int steps = 0, higher = 0;
	for (int i = 0; i < dice_draws(DRAWS); i++) {
		Arena *arena = arena_make();
		any_roof(&dice, submittal);
		const Cases *all = small_cases(&world, arena, submittal);
		double before = 0;
		for (int z = 0; z < 4; z++) {
			Case *zone = zone_or_null(all, outwards[z]);
			double here = zone != NULL ? uplift_at(zone, 10) : before;
			if (here < before * (1 - 1e-12))
				fail_msg("zone %s of %s: %g after %g", outwards[z], ((const Zone *)zone->row)->figure.text, here, before);
			steps += before > 0 && zone != NULL;
			higher += before > 0 && here > before;
			before = here;
		}
		arena_free(arena);
	}
	assert_true(steps > dice_draws(DRAWS) && higher * 4 > steps * 3);
}

/* ---- capacity ---- */

enum { MOST_TESTS = 6, MOST_PAPERS = 3 };

static size_t any_tests(Dice *dice, TestPoint *test)
{
	size_t count = 1 + dice_roll(dice, MOST_TESTS);
	double spacing = dice_between(dice, 4, 24), pressure = dice_between(dice, 60, 220);
	for (size_t i = 0; i < count; i++) {
		test[i] = (TestPoint){ spacing, pressure, i > 0 && dice_roll(dice, 4) == 0 };
		spacing += dice_between(dice, 1, 18);
		pressure *= dice_roll(dice, 5) == 0 ? 1 : dice_between(dice, 0.3, 1);
	}
	return count;
}

static void pressure_by_test_never_rises_with_the_spacing(void **state)
{
	(void)state;
	Dice dice = { 35 };
	for (int i = 0; i < dice_draws(5 * DRAWS); i++) {
		TestPoint test[MOST_TESTS];
		size_t count = any_tests(&dice, test);
		double closer = dice_between(&dice, 2, 80), wider = closer + dice_between(&dice, 0, 20);
		for (int how = BY_STRAIGHT_LINE; how <= BY_NEXT_WIDER; how++) {
			double before = tested_pressure_psf(test, count, closer, (Interpolation)how);
			assert_false(tested_pressure_psf(test, count, wider, (Interpolation)how) > before * (1 + 1e-12) && before >= 0);
			assert_true(before >= 0 || tested_pressure_psf(test, count, wider, (Interpolation)how) < 0);
		}
	}
}

static void pressure_between_tests_lies_between_them_and_below_the_line(void **state)
{
	(void)state;
	Dice dice = { 36 };
	for (int i = 0; i < dice_draws(5 * DRAWS); i++) {
		TestPoint test[MOST_TESTS];
		size_t count = any_tests(&dice, test);
		if (count < 2)
			continue;
		size_t from = dice_roll(&dice, (uint32_t)count - 1);
		const TestPoint *near = &test[from], *far = &test[from + 1];
		double spacing = dice_between(&dice, near->spacing_in, far->spacing_in);
		double share = (spacing - near->spacing_in) / (far->spacing_in - near->spacing_in);
		double straight = near->pressure_psf + share * (far->pressure_psf - near->pressure_psf);
		for (int how = BY_STRAIGHT_LINE; how <= BY_NEXT_WIDER; how++) {
			double here = tested_pressure_psf(test, count, spacing, (Interpolation)how);
			assert_true(here <= straight * (1 + 1e-12));
			if (far->unlike && spacing > near->spacing_in * (1 + 1e-8))
				assert_close(here, far->pressure_psf, 0); /* two ways of failing: no curve joins them */
			assert_true(here >= far->pressure_psf * (1 - 1e-12) && here <= near->pressure_psf * (1 + 1e-12));
		}
	}
}

static void what_all_papers_allow_never_rises_with_the_spacing(void **state)
{
	(void)state;
	Dice dice = { 37 };
	for (int i = 0; i < dice_draws(5 * DRAWS); i++) {
		TestPoint test[MOST_PAPERS][MOST_TESTS];
		CapacityPaper paper[MOST_PAPERS];
		size_t papers = 1 + dice_roll(&dice, MOST_PAPERS);
		for (size_t p = 0; p < papers; p++) {
			bool is_cap = p > 0 && dice_roll(&dice, 3) == 0;
			size_t count = is_cap ? 0 : any_tests(&dice, test[p]);
			double cap = is_cap || dice_roll(&dice, 3) == 0 ? dice_between(&dice, 20, 120) : 0;
			paper[p] = (CapacityPaper){ test[p], count, dice_between(&dice, 1.5, 3), cap };
		}
		double closer = dice_between(&dice, 2, 60), wider = closer + dice_between(&dice, 0, 20);
		double before = least_allowable_psf(paper, papers, closer, BY_LESSER_CURVE);
		double after = least_allowable_psf(paper, papers, wider, BY_LESSER_CURVE);
		assert_true(before < 0 ? after < 0 : after <= before * (1 + 1e-12));
		for (size_t p = 0; p < papers; p++)
			assert_true(before <= least_allowable_psf(&paper[p], 1, closer, BY_LESSER_CURVE));
	}
}

static int start(void **state)
{
	world = world_make();
	*state = arena_make();
	return 0;
}

static int stop(void **state)
{
	arena_free(*state);
	arena_free(world.run);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(uplift_never_falls_when_the_speed_rises),
		cmocka_unit_test(uplift_never_falls_when_the_height_rises_within_a_figure),
		cmocka_unit_test(uplift_never_rises_with_the_area),
		cmocka_unit_test(uplift_rises_from_the_field_to_the_corner),
		cmocka_unit_test(pressure_by_test_never_rises_with_the_spacing),
		cmocka_unit_test(pressure_between_tests_lies_between_them_and_below_the_line),
		cmocka_unit_test(what_all_papers_allow_never_rises_with_the_spacing),
	};
	return cmocka_run_group_tests_name("properties", tests, start, stop) != 0;
}

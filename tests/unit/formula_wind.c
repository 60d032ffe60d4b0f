/* SPDX-License-Identifier: MIT
 * The plain functions of the wind: values worked out by hand, corners of curves, and zones that add up to the roof.
 */
#include "../check.h"

#include "formula.h"

#include <stdlib.h>

static const ExposureLaw exposure_c = { 9.5, 900, 2.01 };

static void exposure_is_a_power_law_with_a_floor_and_a_top(void **state)
{
	(void)state;
	/* 2.01 exp(-2/9.5 ln 37.5) = 2.01 exp(-0.763017) */
	assert_close(exposure_coefficient_one(24, 15, &exposure_c), 0.937176, 1e-6);
	assert_close(exposure_coefficient_one(5, 15, &exposure_c), exposure_coefficient_one(15, 15, &exposure_c), 0);
	assert_close(exposure_coefficient_one(15, 30, &exposure_c), exposure_coefficient_one(30, 15, &exposure_c), 0);
	assert_close(exposure_coefficient_one(900, 15, &exposure_c), 2.01, 0);
	assert_close(exposure_coefficient_one(2000, 15, &exposure_c), 2.01, 0);
}

static void elevation_counts_above_the_sea(void **state)
{
	(void)state;
	assert_close(elevation_factor_one(4000, 0.0000362), 0.8652, 5e-5);
	assert_close(elevation_factor_one(-100, 0.0000362), 1, 0);
	assert_close(elevation_factor_one(4000, 0), 1, 0);
}

static void hills_speed_up_the_wind(void **state)
{
	(void)state;
	Hill ridge = { 1.45, 3, 1.5, 1.5, 80, 160, 50 }, escarpment = { 0.85, 2.5, 1.5, 4, 80, 160, 50 };
	assert_close(topographic_factor_one(&ridge, 30), 1.7610, 5e-5);
	assert_close(topographic_factor_one(&escarpment, 30), 1.5505, 5e-5);
	/* twice as steep: H/Lh stays 0.5 and Lh becomes 2 H, so the same */
	Hill steep = { 1.45, 3, 1.5, 1.5, 80, 80, 50 };
	assert_close(topographic_factor_one(&steep, 30), 1.7610, 5e-5);
	Hill far = { 1.45, 3, 1.5, 1.5, 80, 160, 240 };
	assert_close(topographic_factor_one(&far, 30), 1, 0);
	assert_true(is_hill_to_count(&ridge, 15));
	assert_false(is_hill_to_count(&(Hill){ .height_ft = 14.9, .half_length_ft = 30 }, 15));
	assert_false(is_hill_to_count(&(Hill){ .height_ft = 30, .half_length_ft = 151 }, 15));
}

static void uplift_is_never_below_the_least(void **state)
{
	(void)state;
	assert_close(strength_uplift_psf(10, 0.9, 0.18, 16), 16, 0);
	assert_close(strength_uplift_psf(30, 1.7, 0.18, 16), 56.4, 1e-12);
	assert_close(asd_uplift_psf(56.4, 0.6), 33.84, 1e-12);
}

static void curves_are_straight_over_the_logarithm_between_plateaus(void **state)
{
	(void)state;
	static const Corner corner[] = { { 10, -1.7 }, { 100, -1.6 }, { 500, -1.1 } };
	assert_close(curve_at(corner, 3, 1), -1.7, 0);
	assert_close(curve_at(corner, 3, 10), -1.7, 0);
	assert_close(curve_at(corner, 3, sqrt(1000)), -1.65, 1e-12);
	assert_close(curve_at(corner, 3, 100), -1.6, 1e-12);
	assert_close(curve_at(corner, 3, 500), -1.1, 0);
	assert_close(curve_at(corner, 3, 9999), -1.1, 0);
	assert_close(curve_at(corner, 1, 9999), -1.7, 0);
	assert_close(between(0.65, 0.5, -1.3, 0.8, -1.8), -1.55, 1e-12);
	assert_close(between(0.4, 0.5, -1.3, 0.8, -1.8), -1.3, 0);
	assert_close(between(0.9, 0.5, -1.3, 0.8, -1.8), -1.8, 0);
	assert_close(slope_angle_deg(12), 45, 1e-12);
}

static void strips_have_a_width(void **state)
{
	(void)state;
	assert_close(zone_width_ft(120, 24), 9.6, 1e-12);
	assert_close(zone_width_ft(80, 24), 8, 1e-12);
	assert_close(zone_width_ft(400, 20), 16, 1e-12); /* 0.04 of the width is more than 0.4 h */
	assert_close(zone_width_ft(20, 20), 3, 0);
	assert_close(high_zone_width_ft(120), 12, 1e-12);
}

static double area(Layout layout, double strip, double length, const char *zone)
{
	return plan_area_sq_ft(&(RoofPlan){ length, 50, strip, layout }, zone);
}

/* 100 by 50 ft: strips of 4 ft, or h of 10 ft. */
static void zones_by_hand(void **state)
{
	(void)state;
	assert_close(area(LAYOUT_EDGES, 4, 100, "3"), 64, 1e-12);
	assert_close(area(LAYOUT_EDGES, 4, 100, "2"), 2 * (100 + 42) * 4 - 64, 1e-9);
	assert_close(area(LAYOUT_HIGH, 4, 100, "3"), 256, 1e-9);
	/* an L: two legs of 6 by 2 ft that share 2 by 2 ft */
	assert_close(area(LAYOUT_LOW_SLOPE, 10, 100, "3"), 4 * 20, 1e-9);
	assert_close(area(LAYOUT_LOW_SLOPE, 10, 100, "2"), 5000 - 88 * 38 - 80, 1e-9);
	assert_close(area(LAYOUT_LOW_SLOPE, 10, 100, "1"), 88 * 38 - 76 * 26, 1e-9);
	assert_close(area(LAYOUT_LOW_SLOPE, 10, 100, "1'"), 76 * 26, 1e-9);
	assert_close(area(LAYOUT_GABLE_2010, 4, 100, "3"), 4 * 16 + 2 * 32, 1e-9);
	assert_close(area(LAYOUT_GABLE_2016, 4, 100, "3r"), 2 * 4 * 8, 1e-9);
	assert_close(area(LAYOUT_GABLE_2016, 4, 100, "2r"), 92 * 8, 1e-9);
	assert_close(area(LAYOUT_GABLE_2016, 4, 100, "2n"), 2 * 4 * (50 - 8 - 8), 1e-9);
	assert_close(area(LAYOUT_GABLE_2022, 4, 100, "3"), 64, 1e-9);
	assert_close(area(LAYOUT_STEEP_GABLE_2022, 4, 100, "2"), 2 * 4 * 42, 1e-9);
	assert_close(area(LAYOUT_HIP_2022, 4, 100, "3"), 5000 - 92 * 42, 1e-9);
	/* field of a hip: side faces from 4 to 21 ft above the eave, 100 - 8 sqrt 2 - 2 y long: 1700 - 192.333 - 425 = 1082.667;
	 * end faces from 4 to 25 - 4 sqrt 2 ft, 50 - 8 sqrt 2 - 2 x long: 235.412; two of each */
	assert_close(area(LAYOUT_HIP_2022, 4, 100, "1"), 2636.158, 1e-6);
	assert_close(area(LAYOUT_MONOSLOPE, 4, 100, "3'"), 2 * 16 * 8, 1e-9);
	assert_close(area(LAYOUT_MONOSLOPE, 4, 100, "2'"), (100 - 32) * 8, 1e-9);
	assert_close(area(LAYOUT_MONOSLOPE, 4, 100, "3"), 2 * 64, 1e-9);
	assert_close(area(LAYOUT_GABLE_2016, 4, 100, "3"), -1, 0);
	assert_close(area(LAYOUTS, 4, 100, "1"), -1, 0);
}

static void zones_of_small_roofs_vanish(void **state)
{
	(void)state;
	assert_close(area(LAYOUT_LOW_SLOPE, 25, 100, "1'"), 0, 0); /* least width 2.0 h */
	assert_close(area(LAYOUT_LOW_SLOPE, 42, 100, "1"), 0, 0); /* 1.19 h */
	assert_close(area(LAYOUT_LOW_SLOPE, 251, 100, "3"), 5000, 1e-9); /* the greatest width is below 0.4 h */
	assert_close(area(LAYOUT_EDGES, 25, 100, "1"), 0, 0);
}

static void a_hip_roof_is_the_same_either_way_round(void **state)
{
	(void)state;
	static const char *const zones[] = { "1", "2e", "2r", "3" };
	for (int i = 0; i < 4; i++) {
		double along = plan_area_sq_ft(&(RoofPlan){ 80, 30, 3, LAYOUT_HIP_2016 }, zones[i]);
		assert_close(along, plan_area_sq_ft(&(RoofPlan){ 30, 80, 3, LAYOUT_HIP_2016 }, zones[i]), 1e-12);
		assert_true(along > 0);
	}
}

static void all_zones_add_up_to_the_roof(void **state)
{
	(void)state;
	static const char *const zones[] = { "1'", "1", "2", "2'", "2e", "2n", "2r", "3", "3'", "3e", "3r" };
	srand(7);
	for (int i = 0; i < 2000; i++) {
		double length = 5 + rand() % 3000 / 10.0, width = 5 + rand() % 3000 / 10.0, strip = 1 + rand() % 600 / 10.0;
		RoofPlan plan = { length, width, strip, (Layout)(rand() % LAYOUTS) };
		double sum = 0;
		for (size_t z = 0; z < sizeof zones / sizeof *zones; z++)
			sum += fmax(0, plan_area_sq_ft(&plan, zones[z]));
		assert_close(sum / (length * width), 1, 1e-12);
	}
}

static void layouts_have_names(void **state)
{
	(void)state;
	assert_int_equal(layout_named("low slope"), LAYOUT_LOW_SLOPE);
	assert_int_equal(layout_named("monoslope"), LAYOUT_MONOSLOPE);
	assert_int_equal(layout_named("not drawn"), LAYOUTS);
	RoofPlan flat = { 200, 120, 0, LAYOUT_LOW_SLOPE }, edges = { 200, 120, 0, LAYOUT_EDGES };
	assert_close(layout_strip_ft(&flat, 24, 60), 24, 0);
	assert_close(layout_strip_ft(&edges, 24, 60), 9.6, 1e-12);
	assert_close(layout_strip_ft(&edges, 60.5, 60), 12, 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(exposure_is_a_power_law_with_a_floor_and_a_top),
		cmocka_unit_test(elevation_counts_above_the_sea),
		cmocka_unit_test(hills_speed_up_the_wind),
		cmocka_unit_test(uplift_is_never_below_the_least),
		cmocka_unit_test(curves_are_straight_over_the_logarithm_between_plateaus),
		cmocka_unit_test(strips_have_a_width),
		cmocka_unit_test(zones_by_hand),
		cmocka_unit_test(zones_of_small_roofs_vanish),
		cmocka_unit_test(a_hip_roof_is_the_same_either_way_round),
		cmocka_unit_test(all_zones_add_up_to_the_roof),
		cmocka_unit_test(layouts_have_names),
	};
	return cmocka_run_group_tests_name("formula_wind", tests, NULL, NULL) != 0;
}

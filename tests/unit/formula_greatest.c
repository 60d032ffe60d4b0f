/* SPDX-License-Identifier: MIT
 * Capacity between tests and the greatest spacing: figures by hand, what binds alone, and properties over random tests.
 */
#include "check.h"

#include "formula.h"

#include <math.h>

#define assert_near(a, b) assert_close(a, b, 1e-12)

static const TestPoint far_apart[] = { { .spacing_in = 12, .pressure_psf = 105 }, { .spacing_in = 48, .pressure_psf = 45 } };

static double at_least(const void *wind, double spacing_in)
{
	(void)spacing_in;
	return *(const double *)wind;
}

/* A search that nothing but the tests limits: one paper at factor 1, 16 in panels, one inch steps. */
static SpacingSearch search(const CapacityPaper *paper, const double *demand_psf)
{
	return (SpacingSearch){ .paper = paper, .papers = 1, .how = BY_LESSER_CURVE, .demand = { at_least, demand_psf },
		.panel_width_in = 16, .tolerance_percent = 0.5, .unit_in = 1 };
}

static void no_credit_outside_the_tests(void **state)
{
	(void)state;
	for (Interpolation how = BY_STRAIGHT_LINE; how <= BY_NEXT_WIDER; how++) {
		assert_near(tested_pressure_psf(far_apart, 2, 6, how), 105);
		assert_near(tested_pressure_psf(far_apart, 2, 12, how), 105);
		assert_near(tested_pressure_psf(far_apart, 2, 48, how), 45);
		assert_true(tested_pressure_psf(far_apart, 2, 48.01, how) < 0);
	}
}

static void unlike_modes_give_the_wider_ones_value(void **state)
{
	(void)state;
	TestPoint test[] = { far_apart[0], far_apart[1] };
	test[1].unlike = true;
	for (Interpolation how = BY_STRAIGHT_LINE; how <= BY_NEXT_WIDER; how++)
		assert_near(tested_pressure_psf(test, 2, 30, how), 45);
	assert_near(tested_pressure_psf(test, 2, 12, BY_LESSER_CURVE), 105);
}

static void one_spacing_in_two_units_is_one(void **state)
{
	(void)state;
	assert_near(spacing_as_tested_in(far_apart, 2, 610 / 25.4, 0.5), 610 / 25.4); /* 24 in is no tested one */
	assert_near(spacing_as_tested_in(far_apart, 2, 305 / 25.4, 0.5), 12);
	assert_near(spacing_as_tested_in(far_apart, 2, 12.059, 0.5), 12);
	assert_near(spacing_as_tested_in(far_apart, 2, 12.07, 0.5), 12.07);
	assert_near(spacing_as_tested_in(far_apart, 2, 11.99, 0.5), 11.99);
}

static void the_least_paper_governs(void **state)
{
	(void)state;
	CapacityPaper paper[] = { { far_apart, 2, 2, 0 }, { NULL, 0, 1, 50 } };
	assert_near(least_allowable_psf(paper, 2, 12, BY_LESSER_CURVE), 50); /* 52.5 and a cap of 50 */
	assert_near(least_allowable_psf(paper, 2, 48, BY_LESSER_CURVE), 22.5);
	assert_true(least_allowable_psf(paper, 2, 49, BY_LESSER_CURVE) < 0);
}

static void units_clips_can_be_set_by(void **state)
{
	(void)state;
	assert_near(spacing_unit_in(0, 1), 1);
	assert_near(spacing_unit_in(6, 1), 6);
	assert_near(spacing_unit_in(6, 6), 6);
	assert_near(spacing_unit_in(0.75, 1), 1.5);
}

/* Flutes 6 in apart, 26.4 in by uplift: 24 in. */
static void steps_down_to_what_can_be_built(void **state)
{
	(void)state;
	CapacityPaper paper = { far_apart, 2, 1, 0 };
	double demand = tested_pressure_psf(far_apart, 2, 26.4, BY_LESSER_CURVE);
	SpacingSearch of = search(&paper, &demand);
	assert_near(greatest_spacing(&of).spacing_in, 26);
	of.unit_in = 6;
	assert_near(greatest_spacing(&of).spacing_in, 24);
	assert_int_equal(greatest_spacing(&of).binds, UPLIFT_BINDS);
	of.unit_in = 60; /* purlins 60 in apart: none can be reached */
	assert_near(greatest_spacing(&of).spacing_in, 0);
}

static void each_binder_alone(void **state)
{
	(void)state;
	CapacityPaper paper = { far_apart, 2, 1, 0 };
	double low = 40, high = 70;
	SpacingSearch of = search(&paper, &low);
	assert_near(greatest_spacing(&of).spacing_in, 48);
	assert_int_equal(greatest_spacing(&of).binds, WIDEST_TEST_BINDS);
	of.class_spacing_in = 24;
	assert_near(greatest_spacing(&of).spacing_in, 24);
	assert_int_equal(greatest_spacing(&of).binds, CLASS_BINDS);
	of.class_spacing_in = 0;
	of.letter_spacing_in = 18;
	assert_near(greatest_spacing(&of).spacing_in, 18);
	assert_int_equal(greatest_spacing(&of).binds, LETTER_BINDS);
	of.letter_spacing_in = 0;
	of.clip_allowable_lb = 100; /* 40 psf on 16 in: 22.5 in */
	assert_near(greatest_spacing(&of).spacing_in, 22);
	assert_int_equal(greatest_spacing(&of).binds, FASTENING_BINDS);
	of = search(&paper, &high); /* (1260 + 25 (s - 12)) / s is 70 at 21.33 in; the power curve lies above it there */
	assert_near(greatest_spacing(&of).spacing_in, 21);
	assert_int_equal(greatest_spacing(&of).binds, UPLIFT_BINDS);
}

static void nothing_holds(void **state)
{
	(void)state;
	CapacityPaper paper = { far_apart, 2, 1, 0 };
	double demand = 105.1;
	SpacingSearch of = search(&paper, &demand);
	assert_near(greatest_spacing(&of).spacing_in, 0);
	assert_int_equal(greatest_spacing(&of).binds, UPLIFT_BINDS);
	demand = 105;
	assert_near(greatest_spacing(&of).spacing_in, 12);
}

/* Demand that a smaller area raises: 20 in and closer fail, 21 to 24 pass. */
static double with_a_hole(const void *wind, double spacing_in)
{
	(void)wind;
	return spacing_in <= 20 ? 200 : 60;
}

static void spacings_that_pass_may_have_holes(void **state)
{
	(void)state;
	CapacityPaper paper = { far_apart, 2, 1, 0 };
	SpacingSearch of = search(&paper, NULL);
	of.demand.at_psf = with_a_hole;
	double greatest = greatest_spacing(&of).spacing_in; /* (1260 + 25 (s - 12)) / s is 60 at 27.4 in */
	assert_near(greatest, 27);
	assert_true(spacing_binds(&of, 20) & UPLIFT_BINDS);
}

/* ---- properties ---- */

static uint32_t next(uint32_t *seed)
{
	*seed = *seed * 1664525u + 1013904223u;
	return *seed >> 8;
}

static double random_between(uint32_t *seed, double low, double high)
{
	return low + (high - low) * (double)next(seed) / (double)(1u << 24);
}

enum { MOST = 4 };

static size_t random_tests(uint32_t *seed, TestPoint *test)
{
	size_t count = 1 + next(seed) % MOST;
	double spacing = random_between(seed, 6, 24), pressure = random_between(seed, 60, 200);
	for (size_t i = 0; i < count; i++) {
		test[i] = (TestPoint){ .spacing_in = spacing, .pressure_psf = pressure, .unlike = i > 0 && next(seed) % 5 == 0 };
		spacing += random_between(seed, 1, 30);
		pressure *= random_between(seed, 0.3, 1);
	}
	return count;
}

/* Convex only where the tests are: between two neighbours each curve stays between their values and below the chord. */
static void curves_lie_between_neighbours_and_below_the_line(void **state)
{
	(void)state;
	uint32_t seed = 12;
	for (int run = 0; run < 2000; run++) {
		TestPoint test[MOST];
		size_t count = random_tests(&seed, test);
		for (size_t i = 1; i < count; i++) {
			double at = random_between(&seed, test[i - 1].spacing_in, test[i].spacing_in);
			double line = tested_pressure_psf(test, count, at, BY_STRAIGHT_LINE);
			for (Interpolation how = BY_STRAIGHT_LINE; how <= BY_NEXT_WIDER; how++) {
				double p = tested_pressure_psf(test, count, at, how);
				assert_true(p >= test[i].pressure_psf * (1 - 1e-9) && p <= test[i - 1].pressure_psf * (1 + 1e-9));
				assert_true(p <= line * (1 + 1e-9));
			}
		}
	}
}

static void capacity_never_rises_with_spacing(void **state)
{
	(void)state;
	uint32_t seed = 7;
	for (int run = 0; run < 500; run++) {
		TestPoint test[MOST];
		CapacityPaper paper = { test, random_tests(&seed, test), 2, 0 };
		for (Interpolation how = BY_STRAIGHT_LINE; how <= BY_NEXT_WIDER; how++) {
			double before = HUGE_VAL;
			for (double s = 1; s < 80; s += 0.25) {
				double p = least_allowable_psf(&paper, 1, spacing_as_tested_in(test, paper.count, s, 0.5), how);
				assert_true(p <= before * (1 + 1e-9));
				before = p < 0 ? 0 : p;
				if (p < 0)
					break;
			}
		}
	}
}

/* What is offered holds; the next step wider does not; nor does any other wider one. */
static void the_offer_holds_and_the_next_wider_does_not(void **state)
{
	(void)state;
	uint32_t seed = 99, offers = 0, none = 0;
	for (int run = 0; run < 3000; run++) {
		TestPoint test[MOST];
		CapacityPaper paper = { test, random_tests(&seed, test), 1 + random_between(&seed, 0, 1), 0 };
		double demand = random_between(&seed, 10, 100);
		SpacingSearch of = search(&paper, &demand);
		of.unit_in = next(&seed) % 3 == 0 ? 6 : 1;
		of.class_spacing_in = next(&seed) % 2 ? random_between(&seed, 6, 60) : 0;
		of.clip_allowable_lb = next(&seed) % 2 ? random_between(&seed, 50, 400) : 0;
		GreatestSpacing offer = greatest_spacing(&of);
		double from = offer.spacing_in > 0 ? offer.spacing_in + of.unit_in : ceil(test[0].spacing_in / of.unit_in) * of.unit_in;
		for (double s = from; s < 90; s += of.unit_in)
			assert_true(spacing_binds(&of, s) != NOTHING_BINDS);
		if (offer.spacing_in > 0)
			assert_int_equal(spacing_binds(&of, offer.spacing_in), NOTHING_BINDS);
		assert_true(offer.binds != NOTHING_BINDS);
		offers += offer.spacing_in > 0;
		none += offer.spacing_in <= 0;
	}
	assert_true(offers > 500 && none > 500);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(no_credit_outside_the_tests),
		cmocka_unit_test(unlike_modes_give_the_wider_ones_value),
		cmocka_unit_test(one_spacing_in_two_units_is_one),
		cmocka_unit_test(the_least_paper_governs),
		cmocka_unit_test(units_clips_can_be_set_by),
		cmocka_unit_test(steps_down_to_what_can_be_built),
		cmocka_unit_test(each_binder_alone),
		cmocka_unit_test(nothing_holds),
		cmocka_unit_test(spacings_that_pass_may_have_holes),
		cmocka_unit_test(curves_lie_between_neighbours_and_below_the_line),
		cmocka_unit_test(capacity_never_rises_with_spacing),
		cmocka_unit_test(the_offer_holds_and_the_next_wider_does_not),
	};
	return cmocka_run_group_tests_name("capacity and greatest spacing", tests, NULL, NULL) != 0;
}

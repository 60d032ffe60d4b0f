/* SPDX-License-Identifier: MIT
 * Counting pieces, against the worked example of section 8 (composed for this project, not published) and cases counted by hand.
 */
#include "check.h"

#include "formula.h"

/* One plane of 100 ft by 40 ft in plan at 3 in 12, panels of 16 in. */
static const double eave = 100, run = 40, slope = 3, cover = 16;

static void lengths_and_panels(void **state)
{
	(void)state;
	assert_close(slope_length_ft(run, slope), 41.23106, 5e-6);
	assert_close(eave * slope_length_ft(run, slope), 4123.106, 1e-6);
	assert_close(pieces_to_cover(eave * 12, cover), 75, 0);
	assert_close(75 * slope_length_ft(run, slope), 3092.329, 1e-6);
	assert_close(pieces_to_cover(96 * 12, cover), 72, 0);
	assert_close(pieces_to_cover(96 * 12 + 0.001, cover), 73, 0);
	assert_close(pieces_to_cover(0, cover), 0, 0);
	assert_close(with_waste(75, 5), 79, 0);
	assert_close(with_waste(75, 10), 83, 0);
	assert_close(with_waste(100, 5), 105, 0);
}

static void slope_factors(void **state)
{
	(void)state;
	static const double factor[][2] = { { 0.25, 1.00022 }, { 0.5, 1.00087 }, { 1, 1.00347 }, { 2, 1.01379 }, { 3, 1.03078 },
		{ 4, 1.05409 }, { 6, 1.11803 }, { 8, 1.20185 }, { 12, 1.41421 } };
	for (size_t i = 0; i < sizeof factor / sizeof *factor; i++)
		assert_close(slope_length_ft(1, factor[i][0]), factor[i][1], 5e-6);
}

/* All zones laid alike: 22 clips in each of 74 seams. */
static void clips_at_one_spacing(void **state)
{
	(void)state;
	Plane plane = { .plan = { eave, 2 * run, 4, LAYOUT_EDGES }, .slope_in_12 = slope, .panel_width_in = cover };
	ZoneSpacing all[] = { { "1", 24 }, { "2", 24 }, { "3", 24 } };
	double clips[3] = { 0 };
	assert_true(count_clips(&plane, all, 3, clips));
	assert_close(clips[0] + clips[1] + clips[2], 1628, 0);
	ZoneSpacing one[] = { { "1", 24 }, { "2", 24 } };
	assert_false(count_clips(&plane, one, 2, clips));
}

/* By hand: a gable's half of 20 ft by 10 ft, flat, strips of 3 ft, panels of 24 in: 9 seams at 2, 4, ..., 18 ft. Spacing 24 in in
 * the field, 12 in at edges, 6 in in corners. Seams at 2 and 18 ft lie in the rake strip: from the eave 3 ft of corner, 7 ft of
 * edge. The seven others: 3 ft of edge, 7 ft of field. */
static void clips_by_zone(void **state)
{
	(void)state;
	Plane plane = { .plan = { 20, 20, 3, LAYOUT_EDGES }, .slope_in_12 = 0, .panel_width_in = 24 };
	ZoneSpacing zone[] = { { "1", 24 }, { "2", 12 }, { "3", 6 } };
	double clips[3] = { 0 };
	assert_true(count_clips(&plane, zone, 3, clips));
	assert_close(clips[0], 7 * 4, 0); /* 84 in at 24 */
	assert_close(clips[1], 2 * 7 + 7 * (1 + 3), 0);
	assert_close(clips[2], 2 * (1 + 6), 0);
	/* The panels from 2 to 4 ft and 16 to 18 ft are touched by the strip of 3 ft: their other seams are laid as the strip. */
	plane.whole_panels = true;
	double laid[3] = { 0 };
	assert_true(count_clips(&plane, zone, 3, laid));
	assert_close(laid[0], 5 * 4, 0);
	assert_close(laid[1], 4 * 7 + 5 * (1 + 3), 0);
	assert_close(laid[2], 4 * (1 + 6), 0);
	/* A foot of overhang lies in the zones of the eave. */
	plane.whole_panels = false;
	plane.overhang_ft = 1;
	double hung[3] = { 0 };
	assert_true(count_clips(&plane, zone, 3, hung));
	assert_close(hung[0], 7 * 4, 0);
	assert_close(hung[1], 2 * 7 + 7 * (1 + 4), 0);
	assert_close(hung[2], 2 * (1 + 8), 0);
}

/* The only plane of the same roof: from eave to eave 3 ft, 14 ft, 3 ft. */
static void clips_of_a_single_plane(void **state)
{
	(void)state;
	Plane plane = { .plan = { 20, 20, 3, LAYOUT_EDGES }, .slope_in_12 = 0, .panel_width_in = 24, .alone = true };
	ZoneSpacing zone[] = { { "1", 24 }, { "2", 12 }, { "3", 6 } };
	double clips[3] = { 0 };
	assert_true(count_clips(&plane, zone, 3, clips));
	assert_close(clips[0], 7 * 7, 0);
	assert_close(clips[1], 2 * 14 + 7 * (1 + 3 + 3), 0);
	assert_close(clips[2], 2 * (1 + 6 + 6), 0);
}

/* Strips of 4 ft end on the seams at 4 and 16 ft: these are laid as the closer of the two zones; the panels beyond are only
 * touched. */
static void zones_that_end_on_a_seam(void **state)
{
	(void)state;
	Plane plane = { .plan = { 20, 20, 4, LAYOUT_EDGES }, .slope_in_12 = 0, .panel_width_in = 24 };
	ZoneSpacing wide_edges[] = { { "1", 12 }, { "2", 24 }, { "3", 24 } };
	double clips[3] = { 0 };
	assert_true(count_clips(&plane, wide_edges, 3, clips));
	assert_close(clips[0], 2 * 6 + 5 * 6, 0); /* 6 ft of field, also beside the seams on the border */
	assert_close(clips[1], 2 * 3 + 5 * (1 + 2), 0);
	assert_close(clips[2], 2 * (1 + 2) + 2 * (1 + 2), 0);
	ZoneSpacing close_edges[] = { { "1", 24 }, { "2", 12 }, { "3", 6 } };
	double laid[3] = { 0 };
	plane.whole_panels = true;
	assert_true(count_clips(&plane, close_edges, 3, laid));
	assert_close(laid[0], 5 * 3, 0);
	assert_close(laid[1], 4 * 6 + 5 * (1 + 4), 0);
	assert_close(laid[2], 4 * (1 + 8), 0);
}

static void sheets(void **state)
{
	(void)state;
	Roll roll = { 36, 800, 3, 6 };
	Sheets of = sheets_of(&roll, 1200, slope_length_ft(run, slope) * 12);
	assert_close(of.courses, 15, 0);
	assert_close(of.pieces, 2, 0);
	assert_close(of.length_in, 18090, 0);
	assert_close(of.rolls, 23, 0);
	/* One course of one piece. */
	of = sheets_of(&roll, 100, 2);
	assert_close(of.courses, 1, 0);
	assert_close(of.length_in, 100, 0);
	assert_close(of.rolls, 1, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(lengths_and_panels), cmocka_unit_test(slope_factors),
		cmocka_unit_test(clips_at_one_spacing), cmocka_unit_test(clips_by_zone),
		cmocka_unit_test(clips_of_a_single_plane),
		cmocka_unit_test(zones_that_end_on_a_seam), cmocka_unit_test(sheets) };
	return cmocka_run_group_tests_name("formula_quantities", tests, NULL, NULL) != 0;
}

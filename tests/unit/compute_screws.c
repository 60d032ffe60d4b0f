/* SPDX-License-Identifier: MIT
 * Screws through clips: holes, drill points, lengths; and the plain functions behind facts.
 */
#include "compute_world.h"

#include "formula.h"

static Clip *a_clip(World *w, const char *use, const char *moves)
{
	Clip *row = TAKE(w->arena, Clip, 1);
	row->use = WORD_IS(use);
	row->moves = WORD_IS(moves);
	row->thickness_in = NUMBER_IS(0.0598);
	row->hole_in = NUMBER_IS(0.25);
	w->area.clips.of.given.said = SAID_VALUE;
	add_case(w, KIND_clip, w->roof, row);
	return row;
}

/* ---- plain functions ---- */

static void plain_functions(void **state)
{
	(void)state;
	assert_close(drilled_in(0.0598, 0.0295), 0.0893, 1e-12);
	assert_close(length_into_steel_in(0.0893, 14), 0.3035857142857143, 1e-12);
	assert_close(length_into_steel_in(0.0893, 24), 0.2143, 1e-12);
	assert_close(length_into_wood_in(0.0598, 0.46875), 0.52855, 1e-12);
	assert_close(length_into_wood_in(0.0598, 1.5), 0.8098, 1e-12);
	assert_close(spacing_ratio(24.5, 24), 1.0208333333333333, 1e-12);
	assert_close(longest_term_yr((const double[]){ 10, 20, 30 }, 3, 28), 20, 1e-12);
	assert_close(longest_term_yr((const double[]){ 10, 20, 30 }, 3, 20), 20, 1e-12);
	assert_close(longest_term_yr((const double[]){ 30, 10, 20 }, 3, 99), 30, 1e-12);
	assert_close(longest_term_yr((const double[]){ 10, 20, 30 }, 3, 9.9), 0, 1e-12);
}

/* ---- screws ---- */

static Fastener *a_screw(World *w, Case **at)
{
	Fastener *row = TAKE(w->arena, Fastener, 1);
	row->use = WORD_IS("clip");
	row->kind = WORD_IS("self-drilling screw");
	row->threads_one = NUMBER_IS(14);
	*at = add_case(w, KIND_fastener, w->roof, row);
	return row;
}

static void the_clips_a_screw_goes_through(void **state)
{
	World *w = *state;
	Case *at;
	a_screw(w, &at);
	a_clip(w, "running", "travel");
	a_clip(w, "running", "travel")->hole_in = NUMBER_IS(0.22);
	a_clip(w, "running", "travel")->thickness_in = NUMBER_IS(0.0747);
	a_clip(w, "fixity", "none")->hole_in = NUMBER_IS(0.20);
	w->area.support.kind = WORD_IS("purlin");
	w->area.support.thickness_in = NUMBER_IS(0.0598);
	assert_known(at, "clip_hole", 0.22);
	assert_known(at, "drilled_thickness", 0.1345);
	a_screw(w, &at)->use = WORD_IS("fixity");
	assert_known(at, "clip_hole", 0.20);
	assert_known(at, "drilled_thickness", 0.1196);
	a_screw(w, &at)->use = WORD_IS("trim");
	assert_state(at, "clip_hole", FACT_NOT_APPLICABLE);
	assert_state(at, "length_needed", FACT_NOT_APPLICABLE);
}

static void what_needs_no_drill_point(void **state)
{
	World *w = *state;
	Case *at;
	a_clip(w, "running", "travel");
	w->area.support.kind = WORD_IS("steel deck");
	w->area.support.thickness_in = NUMBER_IS(0.0295);
	a_screw(w, &at)->kind = WORD_IS("wood screw");
	assert_state(at, "drilled_thickness", FACT_NOT_APPLICABLE);
	assert_state(at, "drill_greatest", FACT_NOT_APPLICABLE);
	w->area.support.kind = WORD_IS("OSB");
	a_screw(w, &at);
	assert_state(at, "drilled_thickness", FACT_NOT_APPLICABLE);
	w->area.support.kind = WORD_IS("concrete");
	a_screw(w, &at);
	assert_state(at, "drilled_thickness", FACT_REFUSED);
	assert_state(at, "length_needed", FACT_REFUSED);
}

static void drill_points_of_the_table(void **state)
{
	static const Screw screws[] = { { .size = { GOOD, "#12" }, .diameter_in = { GOOD, 0.216 } } };
	static const DrillPoint points[] = {
		{ .size = { GOOD, "#12" }, .point_one = { GOOD, 2 }, .greatest_in = { GOOD, 0.140 },
			.source = { GOOD, "second-paper" } },
		{ .size = { GOOD, "#12" }, .point_one = { GOOD, 3 }, .least_in = { GOOD, 0.110 }, .greatest_in = { GOOD, 0.210 },
			.source = { GOOD, "second-paper" } },
	};
	World *w = *state;
	Case *at;
	w->reference.screws.row = screws;
	w->reference.screws.count = 1;
	w->reference.drill_points.row = points;
	w->reference.drill_points.count = 2;
	Fastener *screw = a_screw(w, &at);
	screw->size_in = NUMBER_IS(0.216);
	screw->point_one = NUMBER_IS(3);
	assert_known(at, "drill_least", 0.110);
	assert_known(at, "drill_greatest", 0.210);
	assert_int_equal(ask_fact(at, "drill_greatest")->known_by, KNOWN_SECOND_HAND);
	screw = a_screw(w, &at);
	screw->size_in = NUMBER_IS(0.216);
	screw->point_one = NUMBER_IS(2);
	assert_known(at, "drill_least", 0);
	assert_string_equal(ask_fact(at, "drill_least")->note, "the table states no least");
	screw = a_screw(w, &at);
	screw->size_in = NUMBER_IS(0.3125);
	screw->point_one = NUMBER_IS(3);
	assert_state(at, "drill_greatest", FACT_REFUSED);
	a_screw(w, &at);
	assert_waits(w, at, "drill_greatest", "size point");
}

static Layer *a_layer(World *w, double thickness)
{
	Layer *row = TAKE(w->arena, Layer, 1);
	row->thickness_in = NUMBER_IS(thickness);
	w->area.build_up.of.given.said = SAID_VALUE;
	add_case(w, KIND_layer, w->roof, row);
	return row;
}

static void lengths_through_all_that_lies_between(void **state)
{
	World *w = *state;
	Case *at;
	a_clip(w, "running", "travel");
	a_layer(w, 4);
	a_layer(w, 0)->thickness_in.given.said = SAID_NOT_APPLICABLE; /* a vapor retarder */
	w->area.support.kind = WORD_IS("steel deck");
	w->area.support.thickness_in = NUMBER_IS(0.0295);
	a_screw(w, &at);
	assert_known(at, "length_needed", 4.0893 + 3.0 / 14);
	assert_null(ask_fact(at, "length_needed")->formula);
	w->area.support.kind = WORD_IS("plywood");
	w->area.support.thickness_in = NUMBER_IS(0.46875);
	a_screw(w, &at)->threads_one.given.said = SAID_NOTHING;
	assert_known(at, "length_needed", 4.52855);
	assert_string_equal(ask_fact(at, "length_needed")->formula,
		"{running_clip_thickness} + {layers_thickness} + min({support.thickness}, 0.75)");
}

static void a_build_up_not_stated_is_waited_for(void **state)
{
	World *w = *state;
	Case *at;
	a_clip(w, "running", "travel")->thickness_in.given.said = SAID_UNKNOWN;
	w->area.build_up.of.given.said = SAID_NOTHING;
	w->area.support.given.said = SAID_VALUE;
	a_screw(w, &at);
	assert_waits(w, at, "length_needed", "thickness build_up kind");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(plain_functions),
		TEST(the_clips_a_screw_goes_through),
		TEST(what_needs_no_drill_point),
		TEST(drill_points_of_the_table),
		TEST(lengths_through_all_that_lies_between),
		TEST(a_build_up_not_stated_is_waited_for),
	};
	return cmocka_run_group_tests_name("compute: screws", tests, NULL, NULL) != 0;
}

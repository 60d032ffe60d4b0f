/* SPDX-License-Identifier: MIT
 * What roof areas, letters, openings and details are asked for.
 */
#include "compute_world.h"

/* ---- counts of a roof area ---- */

static void fixed_lines_are_counted(void **state)
{
	World *w = *state;
	FixedLine line[] = { { .line = WORD_IS("eave") }, { .line = WORD_IS("none") }, { .line = WORD_IS("ridge") } };
	w->area.fixed_at.of.given.said = SAID_VALUE;
	for (int i = 0; i < 3; i++)
		add_case(w, KIND_fixed_line, w->roof, &line[i]);
	assert_known(w->roof, "fixed_lines", 2);
}

static void a_list_not_stated_is_waited_for(void **state)
{
	World *w = *state;
	w->area.fixed_at.of.given.said = SAID_NOTHING;
	w->area.clips.of.given.said = SAID_UNKNOWN;
	assert_waits(w, w->roof, "fixed_lines", "fixed_at");
	assert_waits(w, w->roof, "floating_clips", "clips");
}

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

static void floating_clips_are_counted(void **state)
{
	World *w = *state;
	a_clip(w, "running", "travel");
	a_clip(w, "running", "panel slides");
	a_clip(w, "running", "none");
	a_clip(w, "fixity", "travel");
	assert_known(w->roof, "floating_clips", 2);
}

/* ---- letters ---- */

static Case *a_letter(World *w, const Text *areas, uint32_t count)
{
	Letter *row = TAKE(w->arena, Letter, 1);
	row->areas = (Texts){ GOOD, count, areas };
	w->submittal.engineering.of.given.said = SAID_VALUE;
	w->submittal.engineering.of.count++;
	return add_case(w, KIND_letter, w->at, row);
}

static void letters_cover_the_areas_they_name(void **state)
{
	static const Text both[] = { { GOOD, "main roof" }, { GOOD, "Canopy" }, { GOOD, "Main roof" } };
	World *w = *state;
	RoofArea canopy = { .name = TEXT_IS("Canopy") }, porch = { .name = TEXT_IS("Porch") };
	w->submittal.roof_areas.of.given.said = SAID_VALUE;
	Case *second = add_case(w, KIND_roof_area, w->at, &canopy), *third = add_case(w, KIND_roof_area, w->at, &porch);
	Case *one = a_letter(w, both, 3), *two = a_letter(w, both, 1);
	assert_known(w->roof, "letters_covering", 2);
	assert_known(second, "letters_covering", 1);
	assert_known(third, "letters_covering", 0);
	assert_known(w->at, "letters", 2);
	assert_known(one, "areas_known", 1);
	assert_known(two, "areas_known", 1);
}

static void a_letter_may_name_an_area_that_is_not_there(void **state)
{
	static const Text stranger[] = { { GOOD, "Main roof" }, { GOOD, "Tower" } };
	World *w = *state;
	w->submittal.roof_areas.of.given.said = SAID_VALUE;
	Case *at = a_letter(w, stranger, 2);
	assert_known(at, "areas_known", 0);
	assert_string_equal(ask_fact(at, "areas_known")->note, "Tower is no roof area of this submittal");
}

static void letters_none_and_not_stated(void **state)
{
	World *w = *state;
	assert_known(w->roof, "letters_covering", 0);
	assert_known(w->at, "letters", 0);
}

static void a_letter_of_which_it_is_not_known(void **state)
{
	World *w = *state;
	Case *at = a_letter(w, NULL, 0);
	((Letter *)at->row)->areas.given.said = SAID_UNKNOWN;
	assert_waits(w, w->roof, "letters_covering", "areas");
}

/* ---- openings ---- */

static void openings_that_need_a_curb(void **state)
{
	static const struct {
		const char *kind;
		bool crosses;
		double needs;
	} rows[] = { { "equipment curb", false, 1 }, { "hatch", false, 1 }, { "skylight", false, 1 }, { "smoke vent", false, 1 },
		{ "duct", false, 1 }, { "pipe", false, 0 }, { "pipe", true, 1 }, { "flue", false, 0 }, { "conduit", true, 1 } };
	World *w = *state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		Penetration row = { .kind = WORD_IS(rows[i].kind), .crosses_seam = YES_IS(rows[i].crosses) };
		assert_known(add_case(w, KIND_penetration, w->roof, &row), "needs_curb", rows[i].needs);
	}
	Penetration hatch = { .kind = WORD_IS("hatch") };
	assert_known(add_case(w, KIND_penetration, w->roof, &hatch), "needs_curb", 1);
	Penetration pipe = { .kind = WORD_IS("pipe") };
	assert_waits(w, add_case(w, KIND_penetration, w->roof, &pipe), "needs_curb", "crosses_seam");
}

static void the_makers_own_curb(void **state)
{
	World *w = *state;
	Penetration row = { .item = TEXT_IS("curb-050") }, in_catalogue = { .item = TEXT_IS("curb-050") };
	Case *at = add_case(w, KIND_penetration, w->roof, &row);
	assert_known(at, "maker_curb", 0);
	at = add_case(w, KIND_penetration, w->roof, &row);
	at->catalogue = &in_catalogue;
	assert_waits(w, at, "maker_curb", "supplied_by");
	row.supplied_by = TEXT_IS("panel maker");
	at = add_case(w, KIND_penetration, w->roof, &row);
	at->catalogue = &in_catalogue;
	assert_known(at, "maker_curb", 1);
	row.supplied_by = TEXT_IS("Example Supply (invented)");
	at = add_case(w, KIND_penetration, w->roof, &row);
	at->catalogue = &in_catalogue;
	assert_known(at, "maker_curb", 0);
}

/* ---- details and requirements ---- */

static void details_count_for_their_place(void **state)
{
	static const ApprovedDetail details[] = {
		{ .number = { GOOD, "D-12" }, .place = { GOOD, "ridge", 0 }, .least_slope_in_12 = { GOOD, 0.25 } },
		{ .number = { GOOD, "D-12" }, .place = { GOOD, "hip", 0 }, .least_slope_in_12 = { GOOD, 0.5 } },
	};
	World *w = *state;
	w->criteria.details.row = details;
	w->criteria.details.count = 2;
	Detail row = { .number = TEXT_IS("d-12"), .place = WORD_IS("hip") };
	Case *at = add_case(w, KIND_detail, w->roof, &row);
	assert_known(at, "approved_number", 1);
	assert_known(at, "detail_least_slope", 0.5);
	Detail elsewhere = { .number = TEXT_IS("D-12"), .place = WORD_IS("eave") };
	at = add_case(w, KIND_detail, w->roof, &elsewhere);
	assert_known(at, "approved_number", 0);
	assert_string_equal(ask_fact(at, "approved_number")->note, "D-12 is for the hip");
	assert_state(at, "detail_least_slope", FACT_NOT_APPLICABLE);
	Detail custom = { .number = TEXT_IS("custom"), .place = WORD_IS("eave") };
	assert_known(add_case(w, KIND_detail, w->roof, &custom), "approved_number", 0);
}

static void a_requirement_may_name_an_item(void **state)
{
	World *w = *state;
	Underlayment item = { .given = GOOD };
	catalogue(w, KIND_underlayment, "underlay-a", &item);
	Requirement row = { .topic = TEXT_IS("underlayment"), .exactly = TEXT_IS("underlay-a") };
	assert_known(add_case(w, KIND_requirement, w->at, &row), "names_catalogue_item", 1);
	Requirement other = { .topic = TEXT_IS("underlayment"), .exactly = TEXT_IS("underlay-z") };
	assert_known(add_case(w, KIND_requirement, w->at, &other), "names_catalogue_item", 0);
	Requirement attribute = { .topic = TEXT_IS("underlayment standard"), .exactly = TEXT_IS("D1970") };
	assert_state(add_case(w, KIND_requirement, w->at, &attribute), "names_catalogue_item", FACT_NOT_APPLICABLE);
	Requirement words = { .topic = TEXT_IS("underlayment"), .text = TEXT_IS("self-adhered") };
	assert_state(add_case(w, KIND_requirement, w->at, &words), "names_catalogue_item", FACT_NOT_APPLICABLE);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(fixed_lines_are_counted),
		TEST(a_list_not_stated_is_waited_for),
		TEST(floating_clips_are_counted),
		TEST(letters_cover_the_areas_they_name),
		TEST(a_letter_may_name_an_area_that_is_not_there),
		TEST(letters_none_and_not_stated),
		TEST(a_letter_of_which_it_is_not_known),
		TEST(openings_that_need_a_curb),
		TEST(the_makers_own_curb),
		TEST(details_count_for_their_place),
		TEST(a_requirement_may_name_an_item),
	};
	return cmocka_run_group_tests_name("compute: roof areas", tests, NULL, NULL) != 0;
}

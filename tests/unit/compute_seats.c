/* SPDX-License-Identifier: MIT
 * How clips are set and what they stand on, heads under the panel, the sheet of the panel: values worked out by hand.
 */
#include "compute_world.h"

static Case *a_clip(World *w, const char *use, double travel)
{
	Clip *row = TAKE(w->arena, Clip, 1);
	row->use = WORD_IS(use);
	row->travel_in = NUMBER_IS(travel);
	w->area.clips.of.given.said = SAID_VALUE;
	return add_case(w, KIND_clip, w->roof, row);
}

static Clip *row_of(Case *clip)
{
	return (Clip *)(uintptr_t)clip->row;
}

static void a_tab_is_set_in_the_middle_or_where_it_is_said(void **state)
{
	World *w = *state;
	Case *middle = a_clip(w, "running", 2), *set = a_clip(w, "running", 2), *beyond = a_clip(w, "running", 2);
	row_of(set)->room_to_grow_in = NUMBER_IS(0.5);
	row_of(beyond)->room_to_grow_in = NUMBER_IS(3);
	assert_known(middle, "growth_room", 1);
	assert_known(middle, "shrink_room", 1);
	assert_known(set, "growth_room", 0.5);
	assert_known(set, "shrink_room", 1.5);
	assert_known(beyond, "growth_room", 2);
	assert_known(beyond, "shrink_room", 0);
}

static void a_clip_without_travel_has_no_room(void **state)
{
	World *w = *state;
	Case *fixed = a_clip(w, "running", 0), *unknown = a_clip(w, "running", 0);
	row_of(fixed)->travel_in.given = (Given)SAID_SO(SAID_NOT_APPLICABLE);
	row_of(unknown)->travel_in.given = (Given)SAID_SO(SAID_UNKNOWN);
	assert_state(fixed, "growth_room", FACT_NOT_APPLICABLE);
	assert_waits(w, unknown, "growth_room", "travel");
}

static void insulation_is_counted(void **state)
{
	World *w = *state;
	assert_known(w->roof, "insulation_layers", 0);
	World *other = world_make();
	static const char *const layers[] = { "insulation", "bearing plate", "insulation" };
	for (size_t i = 0; i < 3; i++) {
		Layer *row = TAKE(other->arena, Layer, 1);
		row->layer = WORD_IS(layers[i]);
		other->area.build_up.of.given.said = SAID_VALUE;
		add_case(other, KIND_layer, other->roof, row);
	}
	assert_known(other->roof, "insulation_layers", 2);
	arena_free(other->arena);
}

static void first_clips_by_criteria_and_listing(void **state)
{
	World *w = *state;
	w->criteria.edition.first_clip_in = NUMBER_IS(12);
	static const double stated[] = { 0, 15, 8, 10 }; /* 0: not stated */
	for (size_t i = 0; i < sizeof stated / sizeof *stated; i++) {
		Listing *listing = TAKE(w->arena, Listing, 1);
		listing->listing = TEXT_IS("tested-1");
		if (stated[i] > 0)
			listing->tested.first_clip_in = NUMBER_IS(stated[i]);
		w->area.tests.of.given.said = SAID_VALUE;
		add_case(w, KIND_test, w->roof, TAKE(w->arena, AreaTest, 1))->listed = listing;
	}
	assert_known(w->roof, "first_clip_limit", 8);
	assert_string_equal(ask_fact(w->roof, "first_clip_limit")->note, "tested-1");
}

static Case *a_screw(World *w, const char *use)
{
	Fastener *row = TAKE(w->arena, Fastener, 1);
	row->use = WORD_IS(use);
	return add_case(w, KIND_fastener, w->roof, row);
}

static void a_head_has_the_room_of_its_own_clips(void **state)
{
	World *w = *state;
	row_of(a_clip(w, "running", 2))->head_room_in = NUMBER_IS(0.3);
	row_of(a_clip(w, "running", 2))->head_room_in = NUMBER_IS(0.2);
	row_of(a_clip(w, "fixity", 2))->head_room_in = NUMBER_IS(0.1);
	assert_known(a_screw(w, "clip"), "head_room", 0.2);
	assert_known(a_screw(w, "fixity"), "head_room", 0.1);
	World *other = world_make();
	a_clip(other, "running", 2);
	assert_state(a_screw(other, "clip"), "head_room", FACT_NOT_APPLICABLE);
	arena_free(other->arena);
}

static void sheet_by_its_readings(void **state)
{
	World *w = *state;
	w->area.panel.thickness_in = NUMBER_IS(0.024);
	w->area.panel.measured_thickness_in = NUMBER_IS(0.0228);
	w->area.panel.width_in = NUMBER_IS(18);
	Case *panel = add_case(w, KIND_panel, w->roof, &w->area.panel);
	assert_known(panel, "measured_percent", 95);
	assert_known(panel, "width_over_thickness", 750);
}

static void a_deck_is_accepted_by_somebody(void **state)
{
	World *w = *state;
	Case *nobody = add_case(w, KIND_support, w->roof, &w->area.support);
	assert_known(nobody, "acceptor_named", 0);
	Support named = { .accepted_by = TEXT_IS("steel erector") }, unknown = { .accepted_by.given = SAID_SO(SAID_UNKNOWN) };
	assert_known(add_case(w, KIND_support, w->roof, &named), "acceptor_named", 1);
	assert_waits(w, add_case(w, KIND_support, w->roof, &unknown), "acceptor_named", "accepted_by");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(a_tab_is_set_in_the_middle_or_where_it_is_said), TEST(a_clip_without_travel_has_no_room), TEST(insulation_is_counted),
		TEST(first_clips_by_criteria_and_listing), TEST(a_head_has_the_room_of_its_own_clips), TEST(sheet_by_its_readings),
		TEST(a_deck_is_accepted_by_somebody),
	};
	return cmocka_run_group_tests_name("compute: seats", tests, NULL, NULL);
}

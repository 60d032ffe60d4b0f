/* SPDX-License-Identifier: MIT
 * Movement of panels against the travel of their clips; metals that meet.
 */
#include "compute_world.h"

static const MetalRow metals[] = {
	{ .metal = { GOOD, "steel", 0 }, .expansion_one = { GOOD, 0.0000065 }, .anodic_index_V = { GOOD, 0.85 },
		.surface = { GOOD, "bare" },
		.source = { GOOD, "memory-paper" }, .index_source = { GOOD, "memory-paper" } },
	{ .metal = { GOOD, "steel", 0 }, .expansion_one = { GOOD, 0.0000065 }, .anodic_index_V = { GOOD, 1.20 },
		.surface = { GOOD, "zinc coated" }, .source = { GOOD, "memory-paper" }, .index_source = { GOOD, "memory-paper" } },
	{ .metal = { GOOD, "aluminum", 1 }, .expansion_one = { GOOD, 0.0000128 }, .anodic_index_V = { GOOD, 0.90 },
		.surface = { GOOD, "bare" }, .source = { GOOD, "memory-paper" }, .index_source = { GOOD, "memory-paper" } },
	{ .metal = { GOOD, "stainless steel", 2 }, .expansion_one = { GOOD, 0.0000096 }, .anodic_index_V = { GOOD, 0.50 },
		.surface = { GOOD, "bare" }, .source = { GOOD, "memory-paper" }, .index_source = { GOOD, "second-paper" } },
};
static const MetalPair pairs[] = {
	{ .panel = { GOOD, "aluminum", 1 }, .fastener = { GOOD, "stainless steel", 2 }, .verdict = { GOOD, "ok" },
		.source = { GOOD, "read-paper" } },
	{ .panel = { GOOD, "aluminum", 1 }, .fastener = { GOOD, "steel", 0 }, .verdict = { GOOD, "concealed" },
		.source = { GOOD, "read-paper" } },
};

static void a_roof(World *w, const char *metal, double length)
{
	w->reference.metals.row = metals;
	w->reference.metals.count = sizeof metals / sizeof *metals;
	w->reference.metal_pairs.row = pairs;
	w->reference.metal_pairs.count = sizeof pairs / sizeof *pairs;
	w->criteria.edition.temperature_high_dark_F = NUMBER_IS(180);
	w->criteria.edition.temperature_high_light_F = NUMBER_IS(150);
	w->criteria.edition.temperature_low_F = NUMBER_IS(-20);
	w->criteria.edition.installation_temperature_F = NUMBER_IS(70);
	w->area.panel.metal = WORD_IS(metal);
	w->area.panel.length_ft = NUMBER_IS(length);
	w->area.panel.end_laps_one = NUMBER_IS(0);
	w->area.panel.color = WORD_IS("dark");
}

static void fix(World *w, const char *line)
{
	FixedLine *row = TAKE(w->arena, FixedLine, 1);
	row->line = WORD_IS(line);
	w->area.fixed_at.of.given.said = SAID_VALUE;
	add_case(w, KIND_fixed_line, w->roof, row);
}

static Clip *a_clip(World *w, const char *moves, double travel)
{
	Clip *row = TAKE(w->arena, Clip, 1);
	row->use = WORD_IS("running");
	row->moves = WORD_IS(moves);
	row->travel_in = NUMBER_IS(travel);
	w->area.clips.of.given.said = SAID_VALUE;
	add_case(w, KIND_clip, w->roof, row);
	return row;
}

static void assert_near(World *w, const char *name, double value)
{
	const Fact *fact = ask_fact(w->roof, name);
	assert_int_equal(fact->state, FACT_KNOWN);
	if (fabs(fact->value - value) > 0.00005)
		fail_msg("%s is %.6f, not %.6f", name, fact->value, value);
}

/* Aluminum of 60 ft laid at 70 F between -20 and 180 F (composed, not published). */
static void a_run_fixed_at_the_eave(void **state)
{
	World *w = *state;
	a_roof(w, "aluminum", 60);
	fix(w, "eave");
	a_clip(w, "travel", 4);
	a_clip(w, "travel", 2);
	assert_near(w, "panel_expansion", 1.0138);
	assert_near(w, "panel_contraction", 0.8294);
	assert_near(w, "panel_movement", 1.8432);
	assert_near(w, "travel_ratio", 1.0138);
	assert_true(fabs(ask_fact(w->roof, "longest_run")->value - 59.19) < 0.005);
}

static void a_run_fixed_in_the_middle(void **state)
{
	World *w = *state;
	a_roof(w, "aluminum", 60);
	fix(w, "mid-slope");
	a_clip(w, "travel", 2);
	assert_near(w, "panel_movement", 0.9216);
	assert_near(w, "moving_length", 30);
}

static void lapped_panels_move_as_one(void **state)
{
	World *w = *state;
	a_roof(w, "steel", 50);
	w->area.panel.end_laps_one = NUMBER_IS(1);
	w->area.panel.color = WORD_IS("light");
	fix(w, "ridge");
	assert_near(w, "moving_length", 100);
	assert_near(w, "panel_expansion", 0.624); /* 0.0000065 * 1200 * 80 */
}

static void no_line_or_several_are_refused(void **state)
{
	World *w = *state;
	a_roof(w, "steel", 50);
	fix(w, "none");
	assert_state(w->roof, "panel_movement", FACT_REFUSED);
	fix(w, "eave");
	fix(w, "ridge");
	w->roof->fact = NULL;
	w->roof->below = NULL;
	w->all.index = NULL;
	assert_state(w->roof, "panel_movement", FACT_REFUSED);
	assert_string_equal(ask_fact(w->roof, "panel_movement")->reason, "the panels are fixed at more than one line");
}

static void clips_on_which_the_panel_slides(void **state)
{
	World *w = *state;
	a_roof(w, "steel", 50);
	fix(w, "eave");
	a_clip(w, "panel slides", 0)->travel_in.given.said = SAID_NOT_APPLICABLE;
	assert_state(w->roof, "travel_ratio", FACT_NOT_APPLICABLE);
	assert_string_equal(ask_fact(w->roof, "travel_ratio")->reason, "the panel slides on its clips");
}

static void what_is_missing_is_waited_for(void **state)
{
	World *w = *state;
	a_roof(w, "steel", 50);
	fix(w, "eave");
	w->area.panel.given.said = SAID_VALUE;
	w->area.panel.color.given.said = SAID_NOTHING;
	assert_waits(w, w->roof, "panel_expansion", "color");
}

/* ---- contacts ---- */

static Case *a_contact(World *w, RecordKind kind, const void *part, const char *metal)
{
	Met *met = TAKE(w->arena, Met, 1);
	Panel *panel = TAKE(w->arena, Panel, 1);
	panel->coating = WORD_IS("none");
	met->record.metal = WORD_IS(metal);
	met->record.other_metal = WORD_IS("aluminum");
	met->record.contact = WORD_IS("touch");
	met->part = add_case(w, kind, w->roof, part);
	met->other = add_case(w, KIND_panel, w->roof, panel);
	return add_case(w, KIND_contact, (Case *)met->part, met);
}

static Fastener *a_screw(World *w, const char *use)
{
	Fastener *row = TAKE(w->arena, Fastener, 1);
	row->use = WORD_IS(use);
	row->coating = WORD_IS("mechanical zinc");
	return row;
}

static void practice_goes_before_the_index(void **state)
{
	World *w = *state;
	a_roof(w, "aluminum", 50);
	Case *at = a_contact(w, KIND_fastener, a_screw(w, "trim"), "stainless steel");
	assert_known(at, "potential_difference", 0.40);
	assert_known(at, "in_practice", 1);
	assert_known(at, "allowed", 1);
	at = a_contact(w, KIND_fastener, a_screw(w, "trim"), "steel");
	assert_known(at, "potential_difference", 0.30);
	assert_known(at, "allowed", 0);
	at = a_contact(w, KIND_fastener, a_screw(w, "clip"), "steel");
	assert_known(at, "allowed", 1);
}

static void what_adjoins_is_not_small(void **state)
{
	World *w = *state;
	a_roof(w, "aluminum", 50);
	Adjoining *row = TAKE(w->arena, Adjoining, 1);
	Case *at = a_contact(w, KIND_adjoining_metal, row, "stainless steel");
	assert_known(at, "in_practice", 0);
	assert_state(at, "allowed", FACT_NOT_APPLICABLE);
	at = a_contact(w, KIND_adjoining_metal, row, "steel");
	assert_known(at, "in_practice", 1);
	assert_known(at, "allowed", 1);
	at = a_contact(w, KIND_adjoining_metal, row, "gold");
	assert_state(at, "potential_difference", FACT_REFUSED);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(a_run_fixed_at_the_eave),
		TEST(a_run_fixed_in_the_middle),
		TEST(lapped_panels_move_as_one),
		TEST(no_line_or_several_are_refused),
		TEST(clips_on_which_the_panel_slides),
		TEST(what_is_missing_is_waited_for),
		TEST(practice_goes_before_the_index),
		TEST(what_adjoins_is_not_small),
	};
	return cmocka_run_group_tests_name("compute: movement", tests, NULL, NULL) != 0;
}

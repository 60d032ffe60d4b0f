/* SPDX-License-Identifier: MIT
 * Capacity and letters in whole submittals: the clean one, edited. Figures by hand from the rows of report-33 (12 in 150 psf, 18 in
 * 105 psf, 24 in 82.5 psf, ultimate, two tests, clip), which clean.yaml rests on, at a factor of 2.
 */
#include "../rule_cases.h"

#include "facts.h"
#include "number.h"

typedef struct {
	World world;
} Suite;

static int make_suite(void **state)
{
	Suite *suite = calloc(1, sizeof *suite);
	suite->world = world_make();
	*state = suite;
	return 0;
}

static int free_suite(void **state)
{
	arena_free(((Suite *)*state)->world.run);
	free(*state);
	return 0;
}

#define REVIEW(suite, arena, ...) review_changed(suite, arena, (const Edit[]){ __VA_ARGS__ }, \
	sizeof((const Edit[]){ __VA_ARGS__ }) / sizeof(Edit))

static Verdict *review_changed(const Suite *suite, Arena *arena, const Edit *change, size_t count)
{
	RuleCase c = { .code = "", .name = "" };
	for (size_t i = 0; i < count; i++)
		c.edit[c.edits++] = change[i];
	return review_case(&suite->world, arena, &c);
}

static Case *zone_named(const Verdict *verdict, const char *name)
{
	const Cases *cases = verdict->cases;
	for (uint32_t i = 0; i < cases->of[KIND_zone].count; i++)
		if (strcmp(((const Zone *)cases->of[KIND_zone].at[i]->row)->name.text, name) == 0)
			return cases->of[KIND_zone].at[i];
	fail_msg("no zone %s", name);
	return NULL;
}

static const Fact *zone_fact(const Verdict *verdict, const char *zone, FactId id)
{
	return fact_of(zone_named(verdict, zone), id);
}

static void assert_value(const Fact *fact, double value)
{
	if (fact->state != FACT_KNOWN)
		print_error("state %d: %s\n", fact->state, fact->reason != NULL ? fact->reason : "");
	assert_int_equal(fact->state, FACT_KNOWN);
	assert_close(fact->value, value, 1e-9);
}

/* Puts clips of the perimeter at a spacing, with a letter that allows it and states this uplift. */
#define PERIMETER(spacing, uplift) { "roof_areas.0.clips.0.spacing.perimeter", spacing }, \
	{ "engineering.0.clip_spacing.perimeter", spacing }, { "engineering.0.pressures.perimeter", uplift }

static void clean_is_carried(void **state)
{
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, { "submittal", "MC-1042" });
	assert_value(zone_fact(verdict, "3", FACT_zone_tested_uplift), 150);
	assert_value(zone_fact(verdict, "3", FACT_zone_allowable_uplift), 75);
	assert_value(zone_fact(verdict, "2", FACT_zone_uplift_ratio), 39.3 / 52.5);
	assert_value(zone_fact(verdict, "2", FACT_zone_clip_load), 39.3 * 16 * 18 / 144);
	assert_int_equal(verdict->items, 0);
	arena_free(arena);
}

/* 105 at 18 in and 82.5 at 24 in: at 21 in 93.75 straight, 1935 / 21 = 92.142857 by the reaction, 92.27 by the power. */
static void the_lower_curve_is_the_default(void **state)
{
	static const struct {
		const char *method;
		double tested;
	} methods[] = { { "lesser curve", 1935.0 / 21 }, { "straight line", 93.75 }, { "none", 82.5 } };
	for (size_t i = 0; i < 3; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = REVIEW(*state, arena, PERIMETER("21 in", "30 psf"), { "criteria.interpolation", methods[i].method });
		assert_value(zone_fact(verdict, "2", FACT_zone_tested_uplift), methods[i].tested);
		assert_value(zone_fact(verdict, "2", FACT_zone_straight_line_uplift), 93.75);
		arena_free(arena);
	}
}

static void unlike_or_unstated_modes_give_the_wider_value(void **state)
{
	static const char *const modes[] = { "panel", "not stated" };
	for (size_t i = 0; i < 2; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = REVIEW(*state, arena, PERIMETER("21 in", "30 psf"), { "criteria.listing_tests.2.failure_mode", modes[i] });
		assert_value(zone_fact(verdict, "2", FACT_zone_tested_uplift), 82.5);
		assert_value(zone_fact(verdict, "2", FACT_zone_straight_line_uplift), 82.5);
		arena_free(arena);
	}
}

/* One specimen entered three ways: 150 psf ultimate; 75 allowable with 2 in it; last step held. */
static void what_a_pressure_is_does_not_raise_it(void **state)
{
	static const struct {
		const char *pressure, *is, *factor, *tests;
		double allowable;
	} ways[] = { { "120 psf", "ultimate", "-", "2", 60 }, { "60 psf", "allowable", "2", "2", 60 }, { "120 psf", "last step held", "-", "2", 60 },
		{ "120 psf", "ultimate", "-", "3", 120 / 1.67 }, { "60 psf", "allowable", "2", "3", 60 } };
	for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = REVIEW(*state, arena, { "criteria.listing_tests.0.pressure", ways[i].pressure },
			{ "criteria.listing_tests.0.pressure_is", ways[i].is }, { "criteria.listing_tests.0.factor_included", ways[i].factor },
			{ "criteria.listing_tests.0.tests", ways[i].tests }, { "criteria.listing_tests.1.tests", ways[i].tests },
			{ "criteria.listing_tests.2.tests", ways[i].tests });
		assert_value(zone_fact(verdict, "3", FACT_zone_tested_uplift), 120);
		assert_value(zone_fact(verdict, "3", FACT_zone_allowable_uplift), ways[i].allowable);
		arena_free(arena);
	}
}

/* The fewest specimens of a paper's rows set one factor for all of them. */
static void the_fewest_tests_count(void **state)
{
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, { "criteria.listing_tests.0.tests", "5" });
	assert_value(zone_fact(verdict, "3", FACT_zone_allowable_uplift), 75);
	arena_free(arena);
}

static void the_specification_s_factor_governs_where_greater(void **state)
{
	static const struct {
		const char *value;
		double allowable;
	} asked[] = { { "2.5", 60 }, { "1.65", 75 } };
	for (size_t i = 0; i < 2; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = REVIEW(*state, arena, { "specification.requirements.8.topic", "uplift factor of safety" },
			{ "specification.requirements.8.exactly", "-" }, { "specification.requirements.8.at_least", asked[i].value });
		assert_value(zone_fact(verdict, "3", FACT_zone_allowable_uplift), asked[i].allowable);
		arena_free(arena);
	}
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, { "specification.requirements.8.topic", "uplift factor of safety" },
		{ "specification.requirements.8.exactly", "as the code says" });
	assert_int_equal(zone_fact(verdict, "3", FACT_zone_allowable_uplift)->state, FACT_REFUSED);
	arena_free(arena);
}

/* approval-5: cap 60; allowable 60 at 12 in and 41 at 24 in, factor 2 in them. At 18 in by the reaction 852 / 18 = 47.33. */
static void a_local_approval_limits(void **state)
{
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, { "roof_areas.0.tests.2", "{listing: approval-5, for: local approval}" });
	assert_value(zone_fact(verdict, "3", FACT_zone_allowable_uplift), 60);
	assert_value(zone_fact(verdict, "2", FACT_zone_allowable_uplift), 852.0 / 18);
	assert_value(zone_fact(verdict, "1", FACT_zone_allowable_uplift), 41);
	arena_free(arena);
}

/* report-38: 135 psf at 12 in and 97.5 at 18 in, ultimate, factor 2; at 15 in by the reaction,
 * 135 * 12 = 1620 and 97.5 * 18 = 1755 halfway, 1687.5 / 15 = 112.5; the power law gives more. report-33 allows more throughout. */
static void the_least_of_several_capacity_papers_governs(void **state)
{
	static const char *const orders[] = { "[{listing: tested-210, for: class}, {listing: report-33, for: capacity}, "
		"{listing: report-38, for: capacity}]", "[{listing: tested-210, for: class}, {listing: report-38, for: capacity}, "
		"{listing: report-33, for: capacity}]" };
	for (size_t i = 0; i < 2; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = REVIEW(*state, arena, { "roof_areas.0.tests", orders[i] }, PERIMETER("15 in", "30 psf"));
		assert_value(zone_fact(verdict, "3", FACT_zone_allowable_uplift), 67.5);
		assert_value(zone_fact(verdict, "2", FACT_zone_allowable_uplift), 112.5 / 2);
		assert_value(zone_fact(verdict, "1", FACT_zone_widest_tested), 18);
		assert_int_equal(zone_fact(verdict, "1", FACT_zone_allowable_uplift)->state, FACT_REFUSED);
		assert_value(zone_fact(verdict, "3", FACT_zone_greatest_allowable), 67.5);
		assert_true(zone_fact(verdict, "3", FACT_zone_greatest_spacing)->value <= 18);
		assert_non_null(item_of(verdict, "ENG-15")); /* 24 in was not tested by both */
		arena_free(arena);
	}
}

static void beyond_the_widest_test_is_refused(void **state)
{
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, PERIMETER("24.2 in", "30 psf"));
	const Fact *tested = zone_fact(verdict, "2", FACT_zone_tested_uplift);
	assert_int_equal(tested->state, FACT_REFUSED);
	assert_string_equal(tested->reason, "beyond the widest tested spacing");
	arena_free(arena);
}

static void one_spacing_in_metric_is_the_tested_one(void **state)
{
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, PERIMETER("610 mm", "30 psf"));
	assert_value(zone_fact(verdict, "2", FACT_zone_tested_uplift), 82.5);
	assert_null(item_of(verdict, "ENG-15"));
	arena_free(arena);
}

/* By the curve 92.142857 / 2 = 46.07, straight 46.875. */
static void the_straight_line_holds_and_does_not_pass(void **state)
{
	static const struct {
		const char *uplift, *code;
	} cases[] = { { "46 psf", NULL }, { "46.2 psf", "ENG-09b" }, { "46.8 psf", "ENG-09b" }, { "47 psf", "ENG-09" } };
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = REVIEW(*state, arena, PERIMETER("21 in", cases[i].uplift));
		static const char *const codes[] = { "ENG-09", "ENG-09b" };
		for (size_t j = 0; j < 2; j++)
			assert_int_equal(item_of(verdict, codes[j]) != NULL, cases[i].code != NULL && strcmp(codes[j], cases[i].code) == 0);
		arena_free(arena);
	}
}

/* The shown ratio stays, but no rule is met on it. */
static void what_differs_from_the_test_borrows_its_capacity(void **state)
{
	static const Edit changes[] = { { "roof_areas.0.clips.0.item", "clip-b-float" }, { "roof_areas.0.panel.profile", "B" },
		{ "roof_areas.0.fasteners.0.size", "#10" }, { "roof_areas.0.panel.width", "18 in" }, { "roof_areas.0.support.thickness", "0.020 in" },
		{ "roof_areas.0.panel.thickness", "0.018 in" } };
	for (size_t i = 0; i < sizeof changes / sizeof *changes; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = review_changed(*state, arena, &changes[i], 1);
		for (uint32_t z = 0; z < verdict->cases->of[KIND_zone].count; z++) {
			const Fact *ratio = fact_of(verdict->cases->of[KIND_zone].at[z], FACT_zone_uplift_ratio);
			assert_int_equal(ratio->state, FACT_KNOWN);
			assert_true(ratio->borrowed);
		}
		uint32_t not_judged = 0;
		for (uint32_t n = 0; n < verdict->not_yets; n++)
			not_judged += strcmp(verdict->not_yet[n].rule->code, "ENG-09") == 0;
		assert_int_equal(not_judged, verdict->cases->of[KIND_zone].count);
		arena_free(arena);
	}
}

/* ---- a test on open framing over deck ---- */

static void open_framing_over_deck_goes_by_the_switch(void **state)
{
	static const struct {
		const char *accepted, *paper, *code; /* the item that stands for it */
	} cases[] = { { "no", "product data", "DCK-02" }, { "no", "statement on open-framing test", "DCK-02" },
		{ "with statement", "product data", "ENG-16b" }, { "with statement", "statement on open-framing test", NULL },
		{ "yes", "product data", NULL } };
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = REVIEW(*state, arena, { "criteria.open_framing_test_over_deck", cases[i].accepted },
			{ "roof_areas.0.tests.1.listing", "report-53" }, { "documents.4.kind", cases[i].paper });
		static const char *const codes[] = { "DCK-02", "ENG-16b" };
		for (size_t j = 0; j < 2; j++)
			assert_int_equal(item_of(verdict, codes[j]) != NULL, cases[i].code != NULL && strcmp(codes[j], cases[i].code) == 0);
		arena_free(arena);
	}
}

static void a_deck_test_never_serves_open_framing(void **state)
{
	static const char *const accepted[] = { "no", "with statement", "yes" };
	for (size_t i = 0; i < 3; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = REVIEW(*state, arena, { "criteria.open_framing_test_over_deck", accepted[i] },
			{ "roof_areas.0.support.kind", "purlin" }, { "documents.4.kind", "statement on open-framing test" });
		assert_non_null(item_of(verdict, "LST-10a"));
		arena_free(arena);
	}
}

/* ---- the greatest spacing ---- */

/* Puts what is offered in: nothing of capacity, class or fastening is left; one flute more, 6 in, and something is. */
static void the_offer_is_judged_itself(void **state)
{
	static const char *const uplifts[] = { "40 psf", "42 psf", "45 psf", "52 psf", "54 psf", "60 psf", "74 psf" };
	static const char *const codes[] = { "ENG-09", "ENG-09b", "ENG-13", "ENG-15", "LST-09", "FST-17" };
	for (size_t i = 0; i < sizeof uplifts / sizeof *uplifts; i++) {
		Arena *arena = arena_make();
		Verdict *first = REVIEW(*state, arena, PERIMETER("24 in", uplifts[i]));
		const Fact *offer = zone_fact(first, "2", FACT_zone_greatest_spacing);
		assert_int_equal(offer->state, FACT_KNOWN);
		for (int more = 0; more < 2; more++) {
			const char *spacing = arena_printf(arena, "%g in", offer->value + 6 * more);
			Verdict *verdict = REVIEW(*state, arena, PERIMETER(spacing, uplifts[i]));
			bool broken = false;
			for (size_t c = 0; c < sizeof codes / sizeof *codes; c++)
				broken |= item_of(verdict, codes[c]) != NULL;
			assert_int_equal(broken, more);
		}
		arena_free(arena);
	}
}

static void flutes_and_purlins_are_the_module(void **state)
{
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, PERIMETER("24 in", "45 psf")); /* 21 in holds; flutes stand 6 in apart */
	assert_value(zone_fact(verdict, "2", FACT_zone_greatest_spacing), 18);
	verdict = REVIEW(*state, arena, PERIMETER("24 in", "45 psf"), { "roof_areas.0.support.kind", "purlin" });
	const Fact *none = zone_fact(verdict, "2", FACT_zone_greatest_spacing);
	assert_int_equal(none->state, FACT_REFUSED); /* purlins stand 60 in apart */
	verdict = REVIEW(*state, arena, PERIMETER("24 in", "45 psf"), { "roof_areas.0.support.kind", "purlin" },
		{ "roof_areas.0.support.edge_spacing", "20 in" });
	assert_value(zone_fact(verdict, "2", FACT_zone_greatest_spacing), 20); /* closer at edges: 21 in holds */
	arena_free(arena);
}

static void each_limit_binds_alone(void **state)
{
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, PERIMETER("18 in", "30 psf"));
	assert_string_equal(zone_fact(verdict, "2", FACT_zone_greatest_spacing)->note, "the letter's clip spacing");
	verdict = REVIEW(*state, arena, PERIMETER("24 in", "45 psf"));
	assert_string_equal(zone_fact(verdict, "2", FACT_zone_greatest_spacing)->note, "the uplift");
	verdict = REVIEW(*state, arena, PERIMETER("24 in", "30 psf"), { "engineering.0.clip_spacing.perimeter", "48 in" },
		{ "criteria.listing_tests.3.listing", "report-33" }, { "criteria.listing_tests.3.clip_spacing", "60 in" });
	assert_string_equal(zone_fact(verdict, "2", FACT_zone_greatest_spacing)->note, "the spacing of the class");
	arena_free(arena);
}

/* ---- which inputs give a letter's figures ---- */

static const char *remedy_of(const Verdict *verdict, const char *code)
{
	const Finding *item = item_of(verdict, code);
	assert_non_null(item);
	return item->remedy;
}

/* 32, 54, 80 psf claimed as ASCE 7-16 at allowable level: ASCE 7-10 at strength level, and nothing else. */
static void a_letter_of_another_edition_and_level(void **state)
{
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, { "engineering.0.pressures", "{field: 32 psf, perimeter: 54 psf, corner: 80 psf}" });
	assert_non_null(strstr(remedy_of(verdict, "ENG-26"), "its figures are those of ASCE 7-10 at strength level"));
	assert_null(strstr(remedy_of(verdict, "ENG-26"), ", or of "));
	arena_free(arena);
}

static void no_input_gives_a_letter_out_of_thin_air(void **state)
{
	Arena *arena = arena_make();
	Verdict *verdict = REVIEW(*state, arena, { "engineering.0.pressures", "{interior: 40 psf, field: 12 psf, perimeter: 39 psf, corner: 21 psf}" });
	assert_non_null(strstr(remedy_of(verdict, "ENG-22"), "was tried"));
	arena_free(arena);
}

/* For each change of one input or two: a letter made by the facts of the changed submittal, rounded to whole psf, is found again. */
static const struct {
	Edit change[2];
	size_t count;
	const char *words;
} inputs[] = {
	{ { { "wind.standard", "ASCE 7-10" } }, 1, "ASCE 7-10" },
	{ { { "wind.exposure", "B" } }, 1, "Exposure B" },
	{ { { "wind.exposure", "D" } }, 1, "Exposure D" },
	{ { { "building.enclosure", "partially enclosed" } }, 1, "partially enclosed building" },
	{ { { "wind.standard", "ASCE 7-10" }, { "wind.exposure", "B" } }, 2, "ASCE 7-10 and Exposure B" },
	{ { { "wind.exposure", "D" }, { "building.enclosure", "partially enclosed" } }, 2, "Exposure D and partially enclosed building" },
	{ { { "wind.standard", "ASCE 7-10" }, { "building.enclosure", "partially enclosed" } }, 2, "ASCE 7-10 and partially enclosed building" },
};

static const char *letter_of(const Verdict *verdict, Arena *arena)
{
	const char *text = "{";
	for (uint32_t i = 0; i < verdict->cases->of[KIND_zone].count; i++) {
		Case *zone = verdict->cases->of[KIND_zone].at[i];
		const Fact *uplift = fact_of(zone, FACT_zone_asd_uplift);
		assert_int_equal(uplift->state, FACT_KNOWN);
		text = arena_printf(arena, "%s%s%s: %.0f psf", text, i > 0 ? ", " : "", ((const Zone *)zone->row)->places.text, uplift->value);
	}
	return arena_printf(arena, "%s}", text);
}

static void changed_inputs_are_found_again(void **state)
{
	for (size_t i = 0; i < sizeof inputs / sizeof *inputs; i++) {
		Arena *arena = arena_make();
		Verdict *made = review_changed(*state, arena, inputs[i].change, inputs[i].count);
		Verdict *verdict = REVIEW(*state, arena, { "engineering.0.pressures", letter_of(made, arena) });
		const Finding *item = item_of(verdict, "ENG-22") != NULL ? item_of(verdict, "ENG-22") : item_of(verdict, "ENG-26");
		assert_non_null(item);
		if (strstr(item->remedy, inputs[i].words) == NULL)
			fail_msg("%s is not among: %s", inputs[i].words, item->remedy);
		arena_free(arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(clean_is_carried),
		cmocka_unit_test(the_lower_curve_is_the_default),
		cmocka_unit_test(unlike_or_unstated_modes_give_the_wider_value),
		cmocka_unit_test(what_a_pressure_is_does_not_raise_it),
		cmocka_unit_test(the_fewest_tests_count),
		cmocka_unit_test(the_specification_s_factor_governs_where_greater),
		cmocka_unit_test(a_local_approval_limits),
		cmocka_unit_test(the_least_of_several_capacity_papers_governs),
		cmocka_unit_test(beyond_the_widest_test_is_refused),
		cmocka_unit_test(one_spacing_in_metric_is_the_tested_one),
		cmocka_unit_test(the_straight_line_holds_and_does_not_pass),
		cmocka_unit_test(what_differs_from_the_test_borrows_its_capacity),
		cmocka_unit_test(open_framing_over_deck_goes_by_the_switch),
		cmocka_unit_test(a_deck_test_never_serves_open_framing),
		cmocka_unit_test(the_offer_is_judged_itself),
		cmocka_unit_test(flutes_and_purlins_are_the_module),
		cmocka_unit_test(each_limit_binds_alone),
		cmocka_unit_test(a_letter_of_another_edition_and_level),
		cmocka_unit_test(no_input_gives_a_letter_out_of_thin_air),
		cmocka_unit_test(changed_inputs_are_found_again),
	};
	return cmocka_run_group_tests_name("capacity", tests, make_suite, free_suite) != 0;
}

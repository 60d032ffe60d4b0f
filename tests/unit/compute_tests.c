/* SPDX-License-Identifier: MIT
 * Operands of every kind, and every relation at its edge.
 */
#include "compute_world.h"

static Operand number(double x)
{
	return (Operand){ .from = FROM_CONSTANT, .gives = VALUE_NUMBER, .factor = 1, .value = x };
}

static Operand words(const char *x)
{
	return (Operand){ .from = FROM_CONSTANT, .gives = VALUE_TEXT, .word = x };
}

static Operand list(const char *name)
{
	return (Operand){ .from = FROM_LIST, .gives = VALUE_LIST, .word = name };
}

static Operand field(const Record *record, const char *key, ValueKind gives)
{
	const Field *found = field_find(record, key, strlen(key));
	return (Operand){ .from = FROM_FIELD, .gives = (uint8_t)gives, .at = (RecordKind)record->kind, .offset = found->offset,
		.field = found, .factor = 1, .word = key };
}

static Operand fact(FactId id)
{
	return (Operand){ .from = FROM_FACT, .gives = VALUE_NUMBER, .fact = id, .factor = 1 };
}

static TestOutcome outcome(const Case *at, Operand left, Relation relation, Operand right)
{
	return test_case(at, &(Test){ .left = left, .right = right, .relation = relation }).outcome;
}

static TestOutcome numbers(const World *w, double left, Relation relation, double right)
{
	return outcome(w->roof, number(left), relation, number(right));
}

static void numbers_at_their_edges(void **state)
{
	const World *w = *state;
	static const struct {
		Relation relation;
		TestOutcome below, just_below, equal, just_above, above; /* 1 - 1e-8, 1 - 5e-10, 1, 1 + 5e-10, 1 + 1e-8 */
	} edges[] = {
		{ RELATION_IS, TEST_BROKEN, TEST_MET, TEST_MET, TEST_MET, TEST_BROKEN },
		{ RELATION_IS_NOT, TEST_MET, TEST_BROKEN, TEST_BROKEN, TEST_BROKEN, TEST_MET },
		{ RELATION_AT_LEAST, TEST_BROKEN, TEST_MET, TEST_MET, TEST_MET, TEST_MET },
		{ RELATION_AT_MOST, TEST_MET, TEST_MET, TEST_MET, TEST_MET, TEST_BROKEN },
		{ RELATION_MORE_THAN, TEST_BROKEN, TEST_BROKEN, TEST_BROKEN, TEST_BROKEN, TEST_MET },
		{ RELATION_LESS_THAN, TEST_MET, TEST_BROKEN, TEST_BROKEN, TEST_BROKEN, TEST_BROKEN },
	};
	for (size_t i = 0; i < sizeof edges / sizeof *edges; i++) {
		assert_int_equal(numbers(w, 1 - 1e-8, edges[i].relation, 1), edges[i].below);
		assert_int_equal(numbers(w, 1 - 5e-10, edges[i].relation, 1), edges[i].just_below);
		assert_int_equal(numbers(w, 1, edges[i].relation, 1), edges[i].equal);
		assert_int_equal(numbers(w, 1 + 5e-10, edges[i].relation, 1), edges[i].just_above);
		assert_int_equal(numbers(w, 1 + 1e-8, edges[i].relation, 1), edges[i].above);
	}
}

static void counts_are_exact(void **state)
{
	const World *w = *state;
	assert_int_equal(numbers(w, 1, RELATION_AT_LEAST, 2), TEST_BROKEN);
	assert_int_equal(numbers(w, 0, RELATION_MORE_THAN, 0), TEST_BROKEN);
	assert_int_equal(numbers(w, 1, RELATION_MORE_THAN, 0), TEST_MET);
}

static void a_factor_brings_both_sides_to_one_unit(void **state)
{
	World *w = *state;
	w->area.building.length_ft = NUMBER_IS(2);
	w->area.building.given.said = SAID_VALUE;
	const Field *building = field_find(&RoofArea_record, "building", 8), *length = field_find(&Building_record, "length", 6);
	Operand feet = { .from = FROM_FIELD, .gives = VALUE_NUMBER, .at = KIND_roof_area,
		.offset = building->offset + length->offset, .field = length, .factor = 12 };
	assert_int_equal(outcome(w->roof, number(24), RELATION_IS, feet), TEST_MET);
	assert_close(operand_value(w->roof, &feet).number, 24, 1e-12);
	Operand inches = number(2);
	inches.factor = 12;
	assert_int_equal(outcome(w->roof, number(24), RELATION_IS, inches), TEST_MET);
}

static void days_are_before_and_after(void **state)
{
	World *w = *state;
	w->submittal.date = DAY_IS(20557);
	Operand date = field(&Submittal_record, "date", VALUE_DATE);
	Operand other = { .from = FROM_CONSTANT, .gives = VALUE_DATE, .value = 20558, .factor = 1 };
	assert_int_equal(outcome(w->roof, date, RELATION_BEFORE, other), TEST_MET);
	assert_int_equal(outcome(w->roof, date, RELATION_AFTER, other), TEST_BROKEN);
	other.value = 20557;
	assert_int_equal(outcome(w->roof, date, RELATION_BEFORE, other), TEST_BROKEN);
	assert_int_equal(outcome(w->roof, date, RELATION_AFTER, other), TEST_BROKEN);
	assert_int_equal(outcome(w->roof, date, RELATION_IS, other), TEST_MET);
	other.value = 20556;
	assert_int_equal(outcome(w->roof, date, RELATION_AFTER, other), TEST_MET);
}

static void yes_and_no(void **state)
{
	World *w = *state;
	w->area.warranted = YES_IS(true);
	Operand warranted = field(&RoofArea_record, "warranted", VALUE_YES);
	Operand yes = { .from = FROM_CONSTANT, .gives = VALUE_YES, .value = 1, .factor = 1 };
	assert_int_equal(outcome(w->roof, warranted, RELATION_IS, yes), TEST_MET);
	assert_int_equal(outcome(w->roof, warranted, RELATION_IS_NOT, yes), TEST_BROKEN);
	w->area.warranted.yes = false;
	assert_int_equal(outcome(w->roof, warranted, RELATION_IS, yes), TEST_BROKEN);
}

static void words_and_texts_in_either_case(void **state)
{
	World *w = *state;
	w->area.work = WORD_IS("re-cover");
	Operand work = field(&RoofArea_record, "work", VALUE_WORD), name = field(&RoofArea_record, "name", VALUE_TEXT);
	assert_int_equal(outcome(w->roof, work, RELATION_IS, words("Re-Cover")), TEST_MET);
	assert_int_equal(outcome(w->roof, work, RELATION_IS, words("new")), TEST_BROKEN);
	assert_int_equal(outcome(w->roof, work, RELATION_IS_NOT, words("new")), TEST_MET);
	assert_int_equal(outcome(w->roof, name, RELATION_IS, words("  main ROOF ")), TEST_MET);
	assert_int_equal(outcome(w->roof, name, RELATION_IS, words("main roof 2")), TEST_BROKEN);
}

static const NamedWord entries[] = {
	{ .list = { GOOD, "metals kept apart" }, .entry = { GOOD, "copper" } },
	{ .list = { GOOD, "metals kept apart" }, .entry = { GOOD, "lead" } },
};

static void in_lists_of_the_edition(void **state)
{
	World *w = *state;
	w->criteria.lists.row = entries;
	w->criteria.lists.count = 2;
	w->area.panel.metal = WORD_IS("copper");
	w->area.panel.given.said = SAID_VALUE;
	Case *panel = add_case(w, KIND_panel, w->roof, &w->area.panel);
	Operand metal = field(&Panel_record, "metal", VALUE_WORD);
	assert_int_equal(outcome(panel, metal, RELATION_IN, list("metals kept apart")), TEST_MET);
	assert_int_equal(outcome(panel, metal, RELATION_NOT_IN, list("metals kept apart")), TEST_BROKEN);
	w->area.panel.metal = WORD_IS("zinc");
	assert_int_equal(outcome(panel, metal, RELATION_IN, list("metals kept apart")), TEST_BROKEN);
	assert_int_equal(outcome(panel, metal, RELATION_NOT_IN, list("metals kept apart")), TEST_MET);
}

static void texts_in_texts(void **state)
{
	World *w = *state;
	static const Text states[] = { { GOOD, "Northmark" }, { GOOD, "Southmark" } };
	w->criteria.edition.territory = (Texts){ GOOD, 2, states };
	w->submittal.project.state = TEXT_IS("northmark");
	const Field *project = field_find(&Submittal_record, "project", 7);
	Operand here = field(&Project_record, "state", VALUE_TEXT), territory = field(&Edition_record, "territory", VALUE_LIST);
	here.at = KIND_submittal;
	here.offset += project->offset;
	territory.from = FROM_EDITION;
	assert_int_equal(outcome(w->at, here, RELATION_IN, territory), TEST_MET);
	w->submittal.project.state = TEXT_IS("Westmark");
	assert_int_equal(outcome(w->at, here, RELATION_IN, territory), TEST_BROKEN);
	assert_int_equal(outcome(w->at, here, RELATION_NOT_IN, territory), TEST_MET);
	assert_int_equal(outcome(w->at, territory, RELATION_IN, territory), TEST_MET);
	assert_int_equal(outcome(w->at, territory, RELATION_IS, territory), TEST_MET);
}

static void given_asks_whether_something_was_said(void **state)
{
	static const struct {
		Said said;
		TestOutcome given, not_given;
	} ways[] = { { SAID_VALUE, TEST_MET, TEST_BROKEN }, { SAID_ASSUMED, TEST_MET, TEST_BROKEN },
		{ SAID_NOTHING, TEST_BROKEN, TEST_MET },
		{ SAID_UNKNOWN, TEST_BROKEN, TEST_MET }, { SAID_BY_OTHERS, TEST_BROKEN, TEST_MET },
		{ SAID_UNREADABLE, TEST_WAITS, TEST_WAITS }, { SAID_NOT_APPLICABLE, TEST_BROKEN, TEST_MET } };
	World *w = *state;
	Operand name = field(&RoofArea_record, "name", VALUE_TEXT), clips = field(&RoofArea_record, "clips", VALUE_LIST);
	for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
		w->area.name.given.said = ways[i].said;
		assert_int_equal(outcome(w->roof, name, RELATION_GIVEN, words(NULL)), ways[i].given);
		assert_int_equal(outcome(w->roof, name, RELATION_NOT_GIVEN, words(NULL)), ways[i].not_given);
	}
	/* The words of a submittal; `any` of a catalogue is another matter. */
	w->area.name.given = (Given){ .said = SAID_NOT_APPLICABLE, .place = { .line = 3, .source = SOURCE_FIRST_SHARED } };
	assert_int_equal(outcome(w->roof, name, RELATION_GIVEN, words(NULL)), TEST_NOT_APPLICABLE);
	assert_int_equal(outcome(w->roof, clips, RELATION_GIVEN, words(NULL)), TEST_MET); /* `none` is an answer */
	w->area.clips.of.given.said = SAID_NOTHING;
	assert_int_equal(outcome(w->roof, clips, RELATION_GIVEN, words(NULL)), TEST_BROKEN);
}

static void what_is_not_there_is_neither_met_nor_broken(void **state)
{
	static const struct {
		Said said;
		TestOutcome outcome;
	} ways[] = { { SAID_NOTHING, TEST_WAITS }, { SAID_UNKNOWN, TEST_WAITS }, { SAID_BY_OTHERS, TEST_WAITS },
		{ SAID_UNREADABLE, TEST_WAITS }, { SAID_NOT_APPLICABLE, TEST_NOT_APPLICABLE } };
	World *w = *state;
	Operand name = field(&RoofArea_record, "name", VALUE_TEXT);
	for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
		w->area.name.given.said = ways[i].said;
		assert_int_equal(outcome(w->roof, name, RELATION_IS, words("Main roof")), ways[i].outcome);
		assert_int_equal(outcome(w->roof, name, RELATION_IS_NOT, words("Main roof")), ways[i].outcome);
		assert_int_equal(outcome(w->roof, words("Main roof"), RELATION_IS, name), ways[i].outcome);
	}
	Tested tested = test_case(w->roof, &(Test){ .left = name, .right = words("x"), .relation = RELATION_IS });
	assert_ptr_equal(tested.left.given, &w->area.name.given);
	assert_ptr_equal(tested.left.at, w->roof);
	assert_string_equal(tested.left.field->key, "name");
	assert_string_equal(tested.left.reason, "typed");
}

static void the_listing_the_catalogue_and_their_blanks(void **state)
{
	World *w = *state;
	Panel listed = { .thickness_in = NUMBER_IS(0.0239) };
	Panel in_catalogue = { .thickness_in = { .given = SAID_SO(SAID_NOT_APPLICABLE) } };
	Case *panel = add_case(w, KIND_panel, w->roof, &w->area.panel);
	Operand from_listing = field(&Panel_record, "thickness", VALUE_NUMBER), from_catalogue = from_listing;
	from_listing.from = FROM_LISTED;
	from_catalogue.from = FROM_CATALOGUE;
	assert_int_equal(operand_value(panel, &from_listing).state, OPERAND_REFUSED);
	assert_int_equal(operand_value(panel, &from_catalogue).state, OPERAND_NOT_APPLICABLE);
	panel->listed = &listed;
	panel->catalogue = &in_catalogue;
	assert_close(operand_value(panel, &from_listing).number, 0.0239, 1e-12);
	assert_int_equal(operand_value(panel, &from_catalogue).state, OPERAND_NOT_APPLICABLE); /* `any` */
	listed.thickness_in.given.said = SAID_NOTHING;
	OperandValue blank = operand_value(panel, &from_listing);
	assert_int_equal(blank.state, OPERAND_REFUSED);
	assert_string_equal(blank.reason, "the listing does not state it");
	w->criteria.edition.least_class_one = NUMBER_IS(90);
	Operand least = field(&Edition_record, "least_class", VALUE_NUMBER);
	least.from = FROM_EDITION;
	assert_close(operand_value(panel, &least).number, 90, 1e-12);
}

/* A role of the whole submittal stands in no roof area. */
static void a_name_outwards_of_nothing_does_not_apply(void **state)
{
	World *w = *state;
	Operand name = field(&RoofArea_record, "name", VALUE_TEXT), life = fact(FACT_roof_area_least_life);
	assert_int_equal(outcome(w->at, name, RELATION_IS, words("Main roof")), TEST_NOT_APPLICABLE);
	assert_int_equal(outcome(w->at, life, RELATION_AT_LEAST, number(20)), TEST_NOT_APPLICABLE);
}

static void facts_bring_their_state(void **state)
{
	World *w = *state;
	assert_int_equal(outcome(w->roof, fact(FACT_roof_area_fixed_lines), RELATION_AT_LEAST, number(0)), TEST_MET);
	assert_int_equal(outcome(w->roof, fact(FACT_roof_area_fixed_lines), RELATION_AT_LEAST, number(1)), TEST_BROKEN);
	assert_int_equal(outcome(w->roof, fact(FACT_roof_area_uplift_class), RELATION_AT_LEAST, number(90)), TEST_REFUSED);
	assert_int_equal(outcome(w->roof, fact(FACT_submittal_term_offered), RELATION_IS, number(1)), TEST_WAITS);
	assert_int_equal(outcome(w->roof, fact(FACT_roof_area_least_life), RELATION_AT_LEAST, number(1)), TEST_NOT_APPLICABLE);
}

static void all_conditions(void **state)
{
	World *w = *state;
	w->area.work = WORD_IS("new");
	Operand work = field(&RoofArea_record, "work", VALUE_WORD), warranted = field(&RoofArea_record, "warranted", VALUE_YES);
	Test met = { .left = work, .relation = RELATION_IS, .right = words("new") };
	Test broken = { .left = work, .relation = RELATION_IS, .right = words("re-cover") };
	Test waits = { .left = warranted, .relation = RELATION_IS, .right = number(1) };
	Test refused = { .left = fact(FACT_roof_area_uplift_class), .relation = RELATION_IS, .right = number(90) };
	Test apart = { .left = fact(FACT_roof_area_least_life), .relation = RELATION_IS, .right = number(1) };
	Tested blocking = { .outcome = TEST_MET };
	assert_int_equal(test_all(w->roof, NULL, 0, &blocking), TEST_MET);
	assert_int_equal(test_all(w->roof, (Test[]){ met, met }, 2, &blocking), TEST_MET);
	assert_int_equal(test_all(w->roof, (Test[]){ waits, broken }, 2, &blocking), TEST_BROKEN);
	assert_int_equal(test_all(w->roof, (Test[]){ waits, apart }, 2, &blocking), TEST_NOT_APPLICABLE);
	assert_int_equal(test_all(w->roof, (Test[]){ apart, waits }, 2, &blocking), TEST_NOT_APPLICABLE);
	assert_int_equal(test_all(w->roof, (Test[]){ met, waits }, 2, &blocking), TEST_WAITS);
	assert_int_equal(blocking.outcome, TEST_WAITS);
	assert_ptr_equal(blocking.left.given, &w->area.warranted.given);
	assert_int_equal(test_all(w->roof, (Test[]){ met, refused }, 2, &blocking), TEST_WAITS);
	assert_int_equal(blocking.outcome, TEST_REFUSED);
}

/* A class of a construction that differs from ours is shown, never met; where it falls short it is broken all the same. */
static void what_is_borrowed_is_never_met(void **state)
{
	World *w = *state;
	Listing listing = { .listing = TEXT_IS("tested-210"), .uplift_class_one = NUMBER_IS(90) };
	AreaTest test = { .listing = TEXT_IS("tested-210"), .role = WORD_IS("class") };
	w->area.tests.of.given.said = SAID_VALUE;
	Case *at = add_case(w, KIND_test, w->roof, &test);
	at->listed = &listing;
	Compared clip = { .test = at, .field = field_find(&Clip_record, "item", 4) };
	clip.record.step = WORD_IS("other");
	add_case(w, KIND_comparison, w->roof, &clip);
	assert_known(at, "differences", 1);
	assert_known(w->roof, "uplift_class", 90);
	assert_true(ask_fact(w->roof, "uplift_class")->borrowed);
	assert_int_equal(outcome(w->roof, fact(FACT_roof_area_uplift_class), RELATION_AT_LEAST, number(90)), TEST_BORROWED);
	assert_int_equal(outcome(w->roof, number(90), RELATION_AT_MOST, fact(FACT_roof_area_uplift_class)), TEST_BORROWED);
	assert_int_equal(outcome(w->roof, fact(FACT_roof_area_uplift_class), RELATION_AT_LEAST, number(105)), TEST_BROKEN);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(numbers_at_their_edges),
		TEST(counts_are_exact),
		TEST(a_factor_brings_both_sides_to_one_unit),
		TEST(days_are_before_and_after),
		TEST(yes_and_no),
		TEST(words_and_texts_in_either_case),
		TEST(in_lists_of_the_edition),
		TEST(texts_in_texts),
		TEST(given_asks_whether_something_was_said),
		TEST(what_is_not_there_is_neither_met_nor_broken),
		TEST(the_listing_the_catalogue_and_their_blanks),
		TEST(a_name_outwards_of_nothing_does_not_apply),
		TEST(facts_bring_their_state),
		TEST(all_conditions),
		TEST(what_is_borrowed_is_never_met),
	};
	return cmocka_run_group_tests_name("compute: tests", tests, NULL, NULL) != 0;
}

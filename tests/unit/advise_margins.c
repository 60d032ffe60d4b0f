/* SPDX-License-Identifier: MIT
 * Margins: every value that is said to hold or to use a margin up is put into the submittal or the criteria, and the ratio is worked
 * out again from the beginning.
 */
#include "rule_cases.h"

static Cases *cases_of(const World *world, Arena *arena, Node *root, const Source *source)
{
	Complaints complaints = { .arena = arena };
	Submittal *submittal = read_submittal(arena, root, source, world->reference, &complaints);
	assert_int_equal(complaints.count, 0);
	Inputs inputs = { .submittal = submittal, .criteria = world->criteria, .reference = world->reference,
		.registers = world->registers, .as_of = INT32_MIN };
	return resolve(arena, &inputs);
}

typedef struct {
	const char *path, *value;
} Varied;

static void change(World *world, Arena *arena, Node *root, const Varied *c)
{
	static const char factors[] = "criteria.safety_factors.";
	if (c->path == NULL)
		return;
	if (strncmp(c->path, factors, sizeof factors - 1) != 0) {
		assert_true(edit_nodes(arena, root, c->path, c->value));
		return;
	}
	Criteria *copy = TAKE(arena, Criteria, 1);
	*copy = *world->criteria;
	uint32_t count = copy->edition.safety_factors.of.count, at = (uint32_t)strtoul(c->path + sizeof factors - 1, NULL, 10);
	SafetyFactor *row = TAKE(arena, SafetyFactor, count);
	memcpy(row, copy->edition.safety_factors.of.row, count * sizeof *row);
	assert_true(at < count);
	row[at].factor_one.value = strtod(c->value, NULL);
	copy->edition.safety_factors.of.row = row;
	world->criteria = copy;
}

/* The fact of the record of this name in the clean example, with one change. */
static const Fact *fact_with(const World *given, Arena *arena, const SheetLine *line, const Varied *c)
{
	World world = *given;
	const Source *source;
	Node *root = builtin_nodes(arena, "examples/clean.yaml", &source);
	change(&world, arena, root, c);
	Cases *cases = cases_of(&world, arena, root, source);
	for (uint32_t i = 0; i < cases->of[line->at->kind].count; i++)
		if (strcmp(cases->of[line->at->kind].at[i]->name, line->at->name) == 0)
			return fact_of(cases->of[line->at->kind].at[i], line->id);
	fail_msg("no record %s", line->at->name);
	return NULL;
}

static Sheet *clean_sheet(const World *world, Arena *arena, const Varied *c)
{
	World changed = *world;
	const Source *source;
	Node *root = builtin_nodes(arena, "examples/clean.yaml", &source);
	change(&changed, arena, root, c);
	Verdict *verdict = review_nodes(&changed, arena, root, source);
	Sheet *sheet = make_sheet(verdict, arena);
	find_margins(sheet, verdict, arena);
	return sheet;
}

static const char *written(Arena *arena, double value, Unit unit)
{
	return arena_printf(arena, "%.10g%s%s", value, unit == UNIT_one ? "" : " ", unit_row(unit)->printed);
}

static uint32_t check_input(const World *world, Arena *arena, const Margin *margin, const UsedUp *by)
{
	const char *holds = by->is_word ? by->word_holds : written(arena, by->holds, by->unit);
	const char *lost = by->is_word ? by->word_lost : written(arena, by->lost, by->unit);
	if (holds != NULL) {
		const Fact *fact = fact_with(world, arena, margin->line, &(Varied){ by->path, holds });
		if (fact->state != FACT_KNOWN || fact->value > 1 + 1e-9)
			fail_msg("%s of %s: %s does not hold: %.12g", by->path, margin->line->at->name, holds, fact->value);
	}
	if (!by->is_lost)
		return 0;
	const Fact *fact = fact_with(world, arena, margin->line, &(Varied){ by->path, lost });
	if (by->why != NULL) {
		assert_int_not_equal(fact->state, FACT_KNOWN);
		return 0;
	}
	if (fact->state != FACT_KNOWN || fact->value <= 1)
		fail_msg("%s of %s: %s is not above 1: %.12g", by->path, margin->line->at->name, lost, fact->value);
	assert_close(fact->value, by->ratio, 1e-12);
	return 1;
}

static uint32_t check_sheet(const World *world, Arena *arena, const Sheet *sheet)
{
	uint32_t lost = 0;
	assert_false(sheet->untried);
	for (uint32_t m = 0; m < sheet->margins; m++)
		for (uint32_t i = 0; i < sheet->margin[m].inputs; i++)
			lost += check_input(world, arena, &sheet->margin[m], &sheet->margin[m].by[i]);
	return lost;
}

static void values_printed_are_true(void **state)
{
	(void)state;
	World world = world_make();
	Arena *arena = arena_make();
	const Sheet *sheet = clean_sheet(&world, arena, &(Varied){ NULL, NULL });
	assert_true(sheet->margins >= 3);
	assert_true(check_sheet(&world, arena, sheet) >= 6);
	arena_free(arena);
	arena_free(world.run);
}

/* The clips of the corner of the listed class stand at 24 in: at 24 in the ratio is 1, which is met and thin. */
static void one_exactly_is_met_and_thin(void **state)
{
	(void)state;
	World world = world_make();
	Arena *arena = arena_make();
	const Sheet *sheet = clean_sheet(&world, arena, &(Varied){ NULL, NULL });
	const Margin *first = &sheet->margin[0];
	assert_string_equal(fact_spec(first->line->id)->name, "class_spacing_ratio");
	assert_true(first->line->fact->value == 1);
	assert_true(first->thin);
	assert_int_equal(first->others, 1);
	assert_int_equal(sheet->above, 0);
	assert_int_equal(first->inputs, 1);
	assert_string_equal(first->by[0].what, "clip spacing");
	assert_true(first->by[0].holds == 24);
	assert_true(first->by[0].lost == 25);
	arena_free(arena);
	arena_free(world.run);
}

/* The thinnest come first, no two the same, none above 1; each kind of ratio that is known is among them. */
static void thinnest_come_first(void **state)
{
	(void)state;
	World world = world_make();
	Arena *arena = arena_make();
	const Sheet *sheet = clean_sheet(&world, arena, &(Varied){ "wind.basic_speed", "132 mph" });
	double third = sheet->margin[2].line->fact->value;
	for (uint32_t m = 1; m < sheet->margins; m++)
		assert_true(sheet->margin[m].line->fact->value < sheet->margin[m - 1].line->fact->value);
	for (uint32_t i = 0; i < sheet->lines; i++) {
		const SheetLine *line = &sheet->line[i];
		const char *name = fact_spec(line->id)->name;
		bool is_ratio = strcmp(name, "uplift_ratio") == 0 || strcmp(name, "fastening_ratio") == 0 || strcmp(name, "travel_ratio") == 0;
		if (!is_ratio || line->fact->state != FACT_KNOWN || line->fact->value <= third || line->fact->value > 1)
			continue;
		bool found = false;
		for (uint32_t m = 0; m < 3; m++)
			found |= sheet->margin[m].line->fact->value == line->fact->value;
		assert_true(found);
	}
	assert_true(sheet->margin[1].thin);
	arena_free(arena);
	arena_free(world.run);
}

static void a_ratio_above_one_leaves_no_margin(void **state)
{
	(void)state;
	World world = world_make();
	Arena *arena = arena_make();
	const Sheet *sheet = clean_sheet(&world, arena, &(Varied){ "roof_areas.0.clips.0.spacing.corner", "30 in" });
	assert_true(sheet->above >= 1);
	for (uint32_t m = 0; m < sheet->margins; m++)
		assert_true(sheet->margin[m].line->fact->value <= 1);
	arena_free(arena);
	arena_free(world.run);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(values_printed_are_true),
		cmocka_unit_test(one_exactly_is_met_and_thin),
		cmocka_unit_test(thinnest_come_first),
		cmocka_unit_test(a_ratio_above_one_leaves_no_margin),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* SPDX-License-Identifier: MIT
 * A pressure at strength level never stands beside an allowable one: no fact but the two that bring it down takes both, no rule
 * names one, and no line of any output of any example prints one without saying so, or next to a capacity.
 */
#include "../examples.h"
#include "../wind_roof.h"

#include "report.h"

#include "report/calcs.h"

#include <ctype.h>

static World world;

/* Levels as the sheet of calculations calls them. */
static bool is_at_level(FactId id, const char *words)
{
	const char *level = level_of(id);
	return level != NULL && strstr(level, words) != NULL;
}

static bool is_strength(FactId id)
{
	return is_at_level(id, "strength") || id == FACT_roof_area_velocity_pressure;
}

/* ---- facts ---- */

static void every_pressure_of_a_zone_has_a_level(void **state)
{
	(void)state;
	for (FactId id = FACTS_BEGIN_zone; id < FACTS_STOP_zone; id++)
		if (fact_spec(id)->unit == UNIT_psf && level_of(id) == NULL)
			fail_msg("%s: at which level?", fact_spec(id)->name);
	assert_true(is_at_level(FACT_zone_strength_uplift, "strength"));
	assert_true(is_at_level(FACT_zone_demand, "allowable") && is_at_level(FACT_zone_allowable_uplift, "allowable"));
}

static int check_uses(const Cases *all, Case *at, FactId id)
{
	int strength = 0;
	const Fact *fact = fact_of(at, id);
	for (uint32_t u = fact->first_use; u != 0; u = all->use[u - 1].next)
		strength += all->use[u - 1].kind == USED_FACT && is_strength(all->use[u - 1].what.fact);
	bool brings_down = id == FACT_zone_asd_uplift || id == FACT_zone_overhang_asd;
	if (strength > 0 && !is_strength(id) && !brings_down)
		fail_msg("%s of %s takes a pressure at strength level", fact_spec(id)->name, at->name);
	return strength;
}

static int check_facts(const Cases *all)
{
	int strength = 0;
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; i < all->of[kind].count; i++)
			for (FactId id = 0; id < FACT_COUNT; id++)
				if (has_fact(all->of[kind].at[i], id))
					strength += check_uses(all, all->of[kind].at[i], id);
	return strength;
}

static Verdict *review_example(Arena *arena, const char *path)
{
	const Source *source;
	Node *root = example_nodes(arena, path, &source);
	return review_nodes(&world, arena, root, source);
}

static void only_two_facts_bring_strength_down(void **state)
{
	(void)state;
	int strength = 0;
	Examples all;
	examples_open(&all);
	for (const char *path = examples_next(&all); path != NULL; path = examples_next(&all)) {
		Arena *arena = arena_make();
		strength += check_facts(review_example(arena, path)->cases);
		arena_free(arena);
	}
	assert_true(strength > 100);
}

/* ---- rules ---- */

static void no_rule_names_a_pressure_at_strength_level(void **state)
{
	(void)state;
	const Criteria *criteria = world.criteria;
	assert_true(criteria->rule_rows.count > 100);
	for (uint32_t i = 0; i < criteria->rule_rows.count; i++) {
		const RuleRow *row = &criteria->rule_rows.row[i];
		const Text *const texts[] = { &row->fact, &row->limit, &row->when, &row->finding, &row->remedy, &row->remedy_else };
		for (size_t t = 0; t < sizeof texts / sizeof *texts; t++)
			for (FactId id = 0; id < FACT_COUNT && is_value(&texts[t]->given); id++)
				if (is_strength(id) && strstr(texts[t]->text, fact_spec(id)->name) != NULL)
					fail_msg("%s: %s", row->code.text, texts[t]->text);
	}
}

/* ---- outputs ---- */

enum { MOST_PRESSURES = 4000 };

typedef struct {
	double strength[MOST_PRESSURES], other[MOST_PRESSURES];
	size_t strengths, others;
	int told; /* times a strength-level pressure was printed */
	const char *where;
} Printed;

static void add_pressures(Printed *printed, Case *zone)
{
	for (FactId id = FACTS_BEGIN_zone; id < FACTS_STOP_zone; id++) {
		const Fact *fact = fact_of(zone, id);
		if (fact->state != FACT_KNOWN || fact_spec(id)->unit != UNIT_psf)
			continue;
		assert_true(printed->strengths < MOST_PRESSURES && printed->others < MOST_PRESSURES);
		if (is_strength(id))
			printed->strength[printed->strengths++] = fact->value;
		else
			printed->other[printed->others++] = fact->value;
	}
}

static bool is_among_them(const double *value, size_t count, double printed)
{
	for (size_t i = 0; i < count; i++)
		if (fabs(value[i] - printed) <= 0.0008 * value[i])
			return true;
	return false;
}

/* A number of a text that is only ever a pressure at strength level. */
static bool is_strength_number(const Printed *printed, double value)
{
	return is_among_them(printed->strength, printed->strengths, value) && !is_among_them(printed->other, printed->others, value);
}

static const char *const capacities[] = { "allow", "capacity", "holds", "fastening", "screws", "uplift ratio", "tested" };

static void check_line(Printed *printed, const char *line, bool may_tell)
{
	bool tells = false;
	for (const char *at = line; *at != '\0';) {
		char *end;
		double value = isdigit((unsigned char)*at) ? strtod(at, &end) : 0;
		bool is_number = isdigit((unsigned char)*at);
		tells |= is_number && strncmp(end, " psf", 4) == 0 && is_strength_number(printed, value);
		at = is_number ? end : at + 1;
	}
	printed->told += tells;
	if (tells && (!may_tell || strstr(line, "strength") == NULL))
		fail_msg("%s prints a pressure at strength level: %s", printed->where, line);
	for (size_t i = 0; tells && i < sizeof capacities / sizeof *capacities; i++)
		if (strstr(line, capacities[i]) != NULL)
			fail_msg("%s prints it beside a capacity: %s", printed->where, line);
}

static void check_output(Printed *printed, Arena *arena, const char *text, bool may_tell)
{
	for (; *text != '\0'; text += text[strcspn(text, "\n")] == '\n' ? strcspn(text, "\n") + 1 : strcspn(text, "\n"))
		check_line(printed, arena_text(arena, text, strcspn(text, "\n")), may_tell);
}

/* Every format of the review, and the sheet, where it may stand under its own name. */
static void check_outputs(Printed *printed, Arena *arena, Verdict *verdict, const char *path)
{
	const ReportFormat *format;
	for (size_t i = 0; (format = report_format_at(i)) != NULL; i++) {
		Out *out = out_make(arena, format->escape);
		format->write(out, verdict, arena);
		printed->where = arena_printf(arena, "%s as %s", path, format->name);
		check_output(printed, arena, out_text(out, NULL), false);
		assert_true(printed->told == 0);
	}
	Sheet *sheet = make_sheet(verdict, arena);
	find_margins(sheet, verdict, arena);
	const PageFormat *page = page_format("calcs", "text");
	Out *out = out_make(arena, page->escape);
	page->write(out, &(Page){ .sheet = sheet }, arena);
	printed->where = arena_printf(arena, "the sheet of %s", path);
	check_output(printed, arena, out_text(out, NULL), true);
}

static void no_line_prints_strength_beside_a_capacity(void **state)
{
	(void)state;
	int told = 0;
	Examples all;
	examples_open(&all);
	for (const char *path = examples_next(&all); path != NULL; path = examples_next(&all)) {
		Arena *arena = arena_make();
		Verdict *verdict = review_example(arena, path);
		Printed *printed = TAKE(arena, Printed, 1);
		for (uint32_t i = 0; i < verdict->cases->of[KIND_zone].count; i++)
			add_pressures(printed, verdict->cases->of[KIND_zone].at[i]);
		check_outputs(printed, arena, verdict, path);
		told += printed->told;
		arena_free(arena);
	}
	print_message("%d lines tell a pressure at strength level, all by name\n", told);
	assert_true(told > 50);
}

static int start(void **state)
{
	(void)state;
	world = world_make();
	return 0;
}

static int stop(void **state)
{
	(void)state;
	arena_free(world.run);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_pressure_of_a_zone_has_a_level),
		cmocka_unit_test(only_two_facts_bring_strength_down),
		cmocka_unit_test(no_rule_names_a_pressure_at_strength_level),
		cmocka_unit_test(no_line_prints_strength_beside_a_capacity),
	};
	return cmocka_run_group_tests_name("levels", tests, start, stop) != 0;
}

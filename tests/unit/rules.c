/* SPDX-License-Identifier: MIT
 * Every rule against its cases (rule_cases.h), and every rule has the cases it needs.
 */
#include "../rule_cases.h"

/* ---- the tests ---- */

typedef struct {
	World world;
	RuleCases cases;
} Suite;

static int make_suite(void **state)
{
	Suite *suite = calloc(1, sizeof *suite);
	suite->world = world_make();
	suite->cases = read_cases(suite->world.run);
	*state = suite;
	return 0;
}

static int free_suite(void **state)
{
	Suite *suite = *state;
	arena_free(suite->world.run);
	free(suite);
	return 0;
}

static void clean_is_clean(void **state)
{
	Suite *suite = *state;
	Arena *arena = arena_make();
	RuleCase nothing = { .code = "", .name = "met" };
	Verdict *verdict = review_case(&suite->world, arena, &nothing);
	print_items(verdict);
	assert_int_equal(verdict->items, 0);
	assert_true(verdict->tally.met > 60);
	arena_free(arena);
}

static void every_case_holds(void **state)
{
	Suite *suite = *state;
	uint32_t wrong = 0;
	assert_true(suite->cases.count > 0);
	Arena *met_arena = NULL;
	Verdict *met = NULL;
	for (uint32_t i = 0; i < suite->cases.count; i++) {
		Arena *arena = arena_make();
		const RuleCase *c = &suite->cases.at[i];
		Verdict *verdict = review_case(&suite->world, arena, c);
		if (!holds_case(c, verdict, met)) {
			wrong++;
			print_error("%s: %s %s; found:\n", c->file, c->code, c->name);
			print_items(verdict);
		}
		if (met_arena != NULL)
			arena_free(met_arena);
		met = verdict;
		met_arena = arena;
	}
	if (met_arena != NULL)
		arena_free(met_arena);
	print_message("%u rule cases\n", suite->cases.count);
	assert_int_equal(wrong, 0);
}

/* A broken case follows its met one and differs from it in one value. */
static void broken_differs_in_one_value(void **state)
{
	Suite *suite = *state;
	uint32_t wrong = 0;
	for (uint32_t i = 0; i < suite->cases.count; i++) {
		const RuleCase *c = &suite->cases.at[i], *before = i > 0 ? c - 1 : NULL;
		if (!is_case(c, "broken"))
			continue;
		bool follows = before != NULL && strcmp(before->code, c->code) == 0 && is_case(before, "met");
		if (!follows || edits_apart(before, c) + edits_apart(c, before) > 2) {
			wrong++;
			print_error("%s broken is more than one value from its met case\n", c->code);
		}
	}
	assert_int_equal(wrong, 0);
}

static void no_case_of_an_unknown_kind(void **state)
{
	Suite *suite = *state;
	for (uint32_t i = 0; i < suite->cases.count; i++) {
		const RuleCase *c = &suite->cases.at[i];
		if (!is_case(c, "met") && !is_case(c, "broken") && !is_case(c, "silent") && !is_case(c, "waits"))
			fail_msg("%s: a case cannot be called %s", c->code, c->name);
	}
}

static bool has_case(const RuleCases *cases, const char *code, const char *name)
{
	for (uint32_t i = 0; i < cases->count; i++)
		if (strcmp(cases->at[i].code, code) == 0 && strcmp(cases->at[i].name, name) == 0)
			return true;
	return false;
}

static void every_rule_has_its_cases(void **state)
{
	Suite *suite = *state;
	uint32_t wrong = 0;
	for (uint32_t i = 0; i < suite->world.criteria->rules; i++) {
		const Rule *rule = &suite->world.criteria->rule[i];
		const char *missing = !has_case(&suite->cases, rule->code, "met") ? "met"
			: !has_case(&suite->cases, rule->code, "broken")              ? "broken"
			: rule->conditions > 0 && !has_case(&suite->cases, rule->code, "silent") ? "silent"
			: rule->causes > 0 && !has_case(&suite->cases, rule->code, "waits")      ? "waits"
																				 : NULL;
		if (missing != NULL) {
			wrong++;
			print_error("%s has no case %s\n", rule->code, missing);
		}
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(clean_is_clean),
		cmocka_unit_test(every_case_holds),
		cmocka_unit_test(broken_differs_in_one_value),
		cmocka_unit_test(no_case_of_an_unknown_kind),
		cmocka_unit_test(every_rule_has_its_cases),
	};
	return cmocka_run_group_tests_name("rules", tests, make_suite, free_suite) != 0;
}

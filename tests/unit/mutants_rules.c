/* SPDX-License-Identifier: MIT
 * Whether the cases would notice a changed rule: relations turned, limits moved, words and lists exchanged, conditions and causes
 * dropped, another action. Each change must turn a case of that rule red, or the clean package; else it stands in
 * tests/mutants/rules.csv with the reason why nothing can notice it.
 *
 * MUTANTS=CODE tries one rule or family only. What is not noticed is printed as a row of that file.
 */
#include "../mutate.h"

enum { MOST_TESTS = 12 };

static bool holds_clean(Mutation *m)
{
	Arena *arena = arena_make();
	bool clean = is_clean(judge(arena, m->clean.cases, &m->clean.complaints, m->clean.source));
	arena_free(arena);
	return clean;
}

/* Whether a case of `code` no longer holds, or one whose rule is about records of a kind. */
static bool cases_go_red(Mutation *m, const char *code, RecordKind kind)
{
	bool red = false;
	Arena *met_arena = arena_make();
	Verdict *met = NULL;
	for (uint32_t i = 0; i < m->cases.count && !red; i++) {
		Played *p = &m->played[i];
		if (code != NULL ? strcmp(p->of->code, code) != 0 : p->kind != kind)
			continue;
		Arena *arena = arena_make();
		Verdict *verdict = judge(arena, p->cases, &p->complaints, p->source);
		red = !holds_case(p->of, verdict, met);
		arena_free(met_arena);
		met_arena = arena;
		met = verdict;
	}
	arena_free(met_arena);
	return red;
}

static bool goes_red(Mutation *m, const char *code)
{
	return cases_go_red(m, code, KIND_edition) || !holds_clean(m);
}

/* ---- one change ---- */

/* What is changed: a condition, or the rule's own test (`condition` is then the number of conditions). */
typedef struct {
	Mutation *m;
	uint32_t rule, condition;
	const char *cause; /* the cause that is dropped */
} At;

/* What tells comparisons apart, and what a rule waits for, shows in the cases of the other comparisons and of the cause. */
static bool others_go_red(const At *at, const Rule *rule)
{
	if (at->cause != NULL)
		return cases_go_red(at->m, at->cause, KIND_edition);
	return rule->for_each == KIND_comparison && cases_go_red(at->m, NULL, KIND_comparison);
}

static void try_rule(const At *at, const Rule *changed, const char *change)
{
	Rule *rule = &at->m->rule[at->rule], whole = *rule;
	*rule = *changed;
	at->m->tried++;
	if (!goes_red(at->m, whole.code) && !others_go_red(at, &whole))
		survives(at->m, whole.code, change);
	*rule = whole;
}

static const Test *test_at(const At *at)
{
	const Rule *rule = &at->m->rule[at->rule];
	return at->condition == rule->conditions ? &rule->is : &rule->when[at->condition];
}

static const char *words_of(const At *at, const Test *test, const char *limit)
{
	bool asks = test->relation == RELATION_GIVEN || test->relation == RELATION_NOT_GIVEN;
	return arena_printf(at->m->world.run, "%s %s%s%s", test->left.word, relation_words(test->relation), asks ? "" : " ",
			    asks ? "" : limit);
}

/* The rule with one test in the place of its own or of a condition; `limit` in words. */
static void try_test(const At *at, const Test *test, const char *limit)
{
	Rule changed = at->m->rule[at->rule];
	Test when[MOST_TESTS];
	assert_true(changed.conditions <= MOST_TESTS);
	if (at->condition == changed.conditions) {
		changed.is = *test;
	} else {
		memcpy(when, changed.when, changed.conditions * sizeof *when);
		when[at->condition] = *test;
		changed.when = when;
	}
	try_rule(at, &changed, words_of(at, test, limit));
}

/* ---- relations ---- */

static void turn_relation(const At *at)
{
	static const struct {
		Relation from, to;
	} turns[] = { { RELATION_IS, RELATION_IS_NOT }, { RELATION_IS_NOT, RELATION_IS }, { RELATION_AT_LEAST, RELATION_LESS_THAN },
		{ RELATION_AT_LEAST, RELATION_AT_MOST }, { RELATION_AT_LEAST, RELATION_MORE_THAN },
		{ RELATION_AT_MOST, RELATION_MORE_THAN }, { RELATION_AT_MOST, RELATION_AT_LEAST },
		{ RELATION_AT_MOST, RELATION_LESS_THAN }, { RELATION_MORE_THAN, RELATION_AT_LEAST },
		{ RELATION_MORE_THAN, RELATION_AT_MOST }, { RELATION_LESS_THAN, RELATION_AT_MOST },
		{ RELATION_LESS_THAN, RELATION_AT_LEAST }, { RELATION_BEFORE, RELATION_AFTER }, { RELATION_AFTER, RELATION_BEFORE },
		{ RELATION_IN, RELATION_NOT_IN }, { RELATION_NOT_IN, RELATION_IN },
		{ RELATION_INCLUDES, RELATION_INCLUDES_NOT }, { RELATION_INCLUDES_NOT, RELATION_INCLUDES },
		{ RELATION_GIVEN, RELATION_NOT_GIVEN }, { RELATION_NOT_GIVEN, RELATION_GIVEN } };
	const Test *whole = test_at(at);
	for (size_t i = 0; i < sizeof turns / sizeof *turns; i++) {
		Test test = *whole;
		test.relation = turns[i].to;
		if (turns[i].from == whole->relation)
			try_test(at, &test, test.right.word);
	}
}

/* ---- limits ---- */

static void try_number(const At *at, double value)
{
	Test test = *test_at(at);
	char limit[32];
	snprintf(limit, sizeof limit, "%.6g", value);
	test.right.value = value;
	try_test(at, &test, limit);
}

static void try_factor(const At *at, double factor)
{
	Test test = *test_at(at);
	char limit[96];
	snprintf(limit, sizeof limit, "%.6g times %s", factor, test.right.word);
	test.right.factor = (test.right.factor != 0 ? test.right.factor : 1) * factor;
	try_test(at, &test, limit);
}

static bool is_size(const Test *test)
{
	return test->left.field != NULL && test->left.field->kind == IS_SIZE;
}

/* Days and counts go by one, sizes of screws by one size. */
static bool is_counted(const Test *test)
{
	if (test->left.gives == VALUE_DATE || test->left.unit == UNIT_day)
		return true;
	bool is_ratio = strstr(test->left.word, "ratio") != NULL || strstr(test->left.word, "factor") != NULL;
	return test->left.unit == UNIT_one && !is_ratio;
}

static void move_size(const At *at, const Test *test)
{
	const Reference *reference = at->m->world.reference;
	for (uint32_t i = 0; i < reference->screws.count; i++) {
		if (reference->screws.row[i].diameter_in.value != test->right.value)
			continue;
		if (i > 0)
			try_number(at, reference->screws.row[i - 1].diameter_in.value);
		if (i + 1 < reference->screws.count)
			try_number(at, reference->screws.row[i + 1].diameter_in.value);
	}
}

static void move_constant(const At *at, const Test *test)
{
	double value = test->right.value;
	if (is_size(test)) {
		move_size(at, test);
	} else if (is_counted(test)) {
		try_number(at, value - 1);
		try_number(at, value + 1);
	} else {
		try_number(at, value != 0 ? value * 0.98 : -0.02);
		try_number(at, value != 0 ? value * 1.02 : 0.02);
	}
}

/* A limit that is another value is multiplied: by 2 per cent, by a size of screws, or so far that a count changes. */
static void move_limit(const At *at)
{
	const Test *test = test_at(at);
	bool is_number = test->left.gives == VALUE_NUMBER || test->left.gives == VALUE_DATE;
	if (!is_number || test->relation == RELATION_GIVEN || test->relation == RELATION_NOT_GIVEN)
		return;
	if (test->right.from == FROM_CONSTANT) {
		move_constant(at, test);
	} else if (test->left.gives == VALUE_NUMBER) {
		bool coarse = is_counted(test) && strstr(test->left.word, "class") == NULL;
		bool years = test->left.unit == UNIT_yr;
		try_factor(at, coarse ? -1 : is_size(test) ? 0.87 : years ? 0.95 : 0.98);
		try_factor(at, coarse ? 2 : is_size(test) ? 1.13 : years ? 1.05 : 1.02);
	}
}

/* ---- words, texts, lists ---- */

static void try_word(const At *at, const char *word)
{
	Test test = *test_at(at);
	test.right.word = word;
	try_test(at, &test, word);
}

static void change_word(const At *at, const Test *test)
{
	int number = word_find(test->left.field->words, test->right.word, strlen(test->right.word));
	for (int i = number - 1; i <= number + 1; i += 2) {
		size_t length = 0;
		const char *word = i >= 0 ? word_text(test->left.field->words, i, &length) : NULL;
		if (word != NULL)
			try_word(at, arena_text(at->m->world.run, word, length));
	}
}

static bool can_hold(const Mutation *m, const Test *test, const char *list)
{
	for (uint32_t i = 0; i < m->criteria->lists.count; i++) {
		const NamedWord *row = &m->criteria->lists.row[i];
		bool is_in = strcmp(row->list.text, list) == 0;
		if (is_in && test->left.gives == VALUE_WORD &&
		    word_find(test->left.field->words, row->entry.text, strlen(row->entry.text)) < 0)
			return false;
	}
	return true;
}

/* The next list that the left side may be held against. */
static void exchange_list(const At *at, const Test *test)
{
	const Mutation *m = at->m;
	uint32_t count = m->criteria->lists.count, i = 0;
	while (i < count && strcmp(m->criteria->lists.row[i].list.text, test->right.word) != 0)
		i++;
	for (uint32_t step = 1; step < count; step++) {
		const char *list = m->criteria->lists.row[(i + step) % count].list.text;
		if (strcmp(list, test->right.word) != 0 && can_hold(m, test, list)) {
			try_word(at, list);
			return;
		}
	}
}

static void exchange_words(const At *at)
{
	const Test *test = test_at(at);
	if (test->right.from == FROM_LIST)
		exchange_list(at, test);
	else if (test->right.from == FROM_CONSTANT && test->right.word != NULL && test->left.gives == VALUE_WORD)
		change_word(at, test);
	else if (test->right.from == FROM_CONSTANT && test->right.gives == VALUE_TEXT)
		try_word(at, "other words");
}

/* ---- the rule as a whole ---- */

static void drop_condition(const At *at)
{
	Rule changed = at->m->rule[at->rule];
	Test when[MOST_TESTS];
	const Test *dropped = test_at(at);
	assert_true(changed.conditions <= MOST_TESTS);
	if (at->condition == changed.conditions)
		return;
	uint32_t kept = 0;
	for (uint32_t i = 0; i < changed.conditions; i++)
		if (i != at->condition)
			when[kept++] = changed.when[i];
	changed.when = when;
	changed.conditions = kept;
	try_rule(at, &changed, arena_printf(at->m->world.run, "without %s", words_of(at, dropped, dropped->right.word)));
}

static void drop_causes(const At *at)
{
	const Rule *rule = &at->m->rule[at->rule];
	uint16_t after[64];
	assert_true(rule->causes <= 64);
	for (uint32_t gone = 0; gone < rule->causes; gone++) {
		Rule changed = *rule;
		uint32_t kept = 0;
		for (uint32_t i = 0; i < rule->causes; i++)
			if (i != gone)
				after[kept++] = rule->after[i];
		changed.after = after;
		changed.causes = kept;
		At dropped = *at;
		dropped.cause = at->m->rule[rule->after[gone]].code;
		try_rule(&dropped, &changed, arena_printf(at->m->world.run, "not after %s", dropped.cause));
	}
}

static void change_action(const At *at)
{
	Rule changed = at->m->rule[at->rule];
	changed.action = (Action)((changed.action + 1) % ACTION_COUNT);
	try_rule(at, &changed, action_words(changed.action));
	changed = at->m->rule[at->rule];
	changed.rejects = !changed.rejects;
	if (changed.action == ACTION_REJECTED)
		try_rule(at, &changed, changed.rejects ? "rejects the system" : "rejects no system");
}

static void mutate_rule(Mutation *m, uint32_t rule)
{
	At at = { .m = m, .rule = rule };
	change_action(&at);
	drop_causes(&at);
	for (at.condition = 0; at.condition <= m->rule[rule].conditions; at.condition++) {
		turn_relation(&at);
		move_limit(&at);
		exchange_words(&at);
		drop_condition(&at);
	}
}

/* ---- the tests ---- */

static int make(void **state)
{
	*state = mutation_make("tests/mutants/rules.csv");
	return 0;
}

static int unmake(void **state)
{
	mutation_free(*state);
	return 0;
}

/* That they hold is the test `rules`; here, that a tree of cases may be judged twice: one rule in ten. */
static void cases_hold_when_judged_again(void **state)
{
	Mutation *m = *state;
	for (uint32_t i = 0; i < m->criteria->rules; i += 10)
		if (goes_red(m, m->rule[i].code) || goes_red(m, m->rule[i].code))
			fail_msg("%s goes red unchanged", m->rule[i].code);
}

static void a_changed_rule_is_noticed(void **state)
{
	Mutation *m = *state;
	const char *only = getenv("MUTANTS");
	for (uint32_t i = 0; i < m->criteria->rules; i++)
		if (only == NULL || strncmp(m->rule[i].code, only, strlen(only)) == 0)
			mutate_rule(m, i);
	assert_true(only != NULL || m->tried > 1600);
}

/* After the others: what survived stands in the list, with its reason, and nothing stands there that does not survive. */
static void survivors_are_known(void **state)
{
	const Mutation *m = *state;
	print_message("%u changes of rules, %u unnoticed, %u of them without a reason\n", m->tried, m->survived, m->unknown);
	assert_int_equal(m->unknown, 0);
	assert_true(getenv("MUTANTS") != NULL || knows_no_more(m));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold_when_judged_again),
		cmocka_unit_test(a_changed_rule_is_noticed),
		cmocka_unit_test(survivors_are_known),
	};
	return cmocka_run_group_tests_name("mutants_rules", tests, make, unmake) != 0;
}

/* SPDX-License-Identifier: MIT
 * Rows of rules.csv to rules: words of the closed sets, names bound, and what a rule of each authority must hold.
 *
 * A row at fault stays in its place, so that numbers of rules are numbers of rows; an edition with a fault is refused whole.
 */
#include "rules.h"

#include <ctype.h>
#include <string.h>

enum { RULES_LIMIT = 65535 };

static void complain_at(const Binding *b, MessageId id, const Text *cell, const char *want)
{
	complain(b->loading->complaints, id, cell->given.place, (About){ .value = cell->text, .want = want });
}

/* A code is a family in capitals, a line, a number and at most one letter: CLP-01, LST-10a. */
static bool is_code(const char *code)
{
	size_t family = 0, digits = 0;
	while (isupper((unsigned char)code[family]))
		family++;
	if (family < 2 || family > 4 || code[family] != '-')
		return false;
	const char *rest = code + family + 1;
	while (isdigit((unsigned char)rest[digits]))
		digits++;
	bool letter = islower((unsigned char)rest[digits]);
	return digits >= 2 && digits <= 3 && rest[digits + letter] == '\0';
}

/* The readers' codes are taken. */
static bool is_readers_code(const char *code)
{
	for (int i = 0; i < MESSAGE_COUNT; i++)
		if (strcmp(message_of((MessageId)i)->code, code) == 0)
			return true;
	return false;
}

static void bind_code(const Binding *b, const RuleRow *row, Rule *rule)
{
	rule->code = row->code.text != NULL ? row->code.text : "";
	if (row->code.given.said != SAID_VALUE)
		return;
	if (!is_code(rule->code))
		complain_at(b, MESSAGE_TAB_87, &row->code, NULL);
	else if (is_readers_code(rule->code))
		complain_at(b, MESSAGE_TAB_88, &row->code, NULL);
}

static const char *actions_listed(Arena *arena)
{
	const char *listed = action_words((Action)0);
	for (int i = 1; i < ACTION_COUNT; i++)
		listed = arena_printf(arena, "%s, %s", listed, action_words((Action)i));
	return listed;
}

/* The words of closed sets: action, authority, rejects, waivable. */
static void bind_words(const Binding *b, const RuleRow *row, Rule *rule)
{
	int action = row->action.text != NULL ? action_find(row->action.text) : -1;
	int authority = row->authority.text != NULL ? authority_find(row->authority.text) : -1;
	if (action < 0 && row->action.given.said == SAID_VALUE)
		complain_at(b, MESSAGE_TAB_74, &row->action, actions_listed(b->loading->arena));
	if (authority < 0 && row->authority.given.said == SAID_VALUE)
		complain_at(b, MESSAGE_TAB_76, &row->authority, NULL);
	rule->action = action >= 0 ? (Action)action : ACTION_HOLD;
	rule->authority = authority >= 0 ? (Authority)authority : AUTHORITY_PROGRAM;
	rule->rejects = row->rejects.given.said == SAID_VALUE;
	if (rule->rejects && (strcmp(row->rejects.text, "system") != 0 || (action >= 0 && action != ACTION_REJECTED)))
		complain_at(b, MESSAGE_TAB_85, &row->rejects, NULL);
	const char *waivable = row->waivable.text != NULL ? row->waivable.text : "";
	rule->waivable = strcmp(waivable, "yes") == 0;
	if (row->waivable.given.said == SAID_VALUE && !rule->waivable && strcmp(waivable, "no") != 0)
		complain_at(b, MESSAGE_TAB_86, &row->waivable, NULL);
	if (authority == AUTHORITY_PROGRAM)
		check_voice(b, row);
}

static bool begins(const char *text, const char *with)
{
	return text != NULL && strncmp(text, with, strlen(with)) == 0;
}

/* Whether a condition speaks of the specification or of the code in force. */
static bool is_condition_on(Authority authority, const Test *test)
{
	const char *name = test->left.word, *limit = test->right.word;
	if (authority == AUTHORITY_CODE)
		return begins(name, "project.code") || begins(limit, "project.code");
	if (test->left.at == KIND_requirement || begins(name, "specification.") || begins(limit, "specification."))
		return true;
	return begins(name, "with") && test->relation == RELATION_IS && limit != NULL && strcmp(limit, "specification") == 0;
}

/* What is asked for by a specification or a code is asked for only where that one governs. */
static void check_authority(const Binding *b, const RuleRow *row, const Rule *rule)
{
	if (rule->authority != AUTHORITY_SPECIFICATION && rule->authority != AUTHORITY_CODE)
		return;
	if (rule->authority == AUTHORITY_SPECIFICATION && rule->for_each == KIND_requirement)
		return; /* there is no requirement without a specification */
	for (uint32_t i = 0; i < rule->conditions; i++)
		if (is_condition_on(rule->authority, &rule->when[i]))
			return;
	const char *want = rule->authority == AUTHORITY_CODE ? "`project.code.name is IBC`" : "`with is specification`";
	complain_at(b, MESSAGE_TAB_82, &row->authority, want);
}

static void bind_tests(const Binding *b, const RuleRow *row, Rule *rule)
{
	Written written = { span_of(&row->fact.given), span_of(&row->relation.given), span_of(&row->limit.given) };
	if (written.limit.length == 0)
		written.limit.cell = row->limit.given.place;
	bool bound = tests_bind(b, &row->when, &rule->when, &rule->conditions);
	if (row->fact.given.said != SAID_VALUE || row->relation.given.said != SAID_VALUE)
		return;
	bool is_bound = test_bind(b, &written, &rule->is);
	for (uint32_t i = 0; bound && i < rule->conditions; i++)
		check_given(b, &rule->when[i], rule->when, rule->conditions);
	if (bound && is_bound && rule->conditions == 0)
		check_given(b, &rule->is, NULL, 0); /* under a condition the key is owed, and the rule waits for it */
	if (bound)
		check_authority(b, row, rule);
}

static void bind_rule(const Binding *base, const RuleRow *row, Rule *rule)
{
	Binding b = *base;
	*rule = (Rule){
		.basis = row->basis.text, .answer_by = row->answer_by.text, .why = row->why.text, .place = row->given.place
	};
	bind_code(&b, row, rule);
	bind_words(&b, row, rule);
	if (row->for_each.given.said != SAID_VALUE)
		return;
	if (!for_each_find(row->for_each.text, &b.for_each)) {
		complain_at(&b, MESSAGE_TAB_75, &row->for_each, for_each_words(b.loading->arena));
		return;
	}
	rule->for_each = b.for_each;
	bind_tests(&b, row, rule);
	bool worded = wording_bind(&b, &row->finding, &rule->is, &rule->finding);
	worded &= wording_bind(&b, &row->remedy, &rule->is, &rule->remedy);
	worded &= wording_bind(&b, &row->remedy_else, &rule->is, &rule->remedy_else);
	if (worded)
		check_advise(&b, row, rule);
}

void rules_bind(const Binding *base, Criteria *criteria, bool whole)
{
	uint32_t count = criteria->rule_rows.count;
	if (count > RULES_LIMIT) {
		complain(base->loading->complaints, MESSAGE_TAB_10, criteria->rule_rows.row[RULES_LIMIT].given.place,
			 (About){ .want = "65,535 rules" });
		return;
	}
	Rule *rule = TAKE(base->loading->arena, Rule, count);
	for (uint32_t i = 0; i < count; i++)
		bind_rule(base, &criteria->rule_rows.row[i], &rule[i]);
	criteria->rule = rule;
	criteria->rules = count;
	causes_bind(base, rule, whole);
}

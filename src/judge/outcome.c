/* SPDX-License-Identifier: MIT
 * Outcome: the recommended action and the order line. The program advises; a person decides, and nothing here approves.
 */
#include "date.h"
#include "judge.h"

#include <string.h>

static void count_items(Judging *judging)
{
	Verdict *verdict = judging->verdict;
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[i];
		int action = counted_action(item);
		if (action < 0)
			continue;
		verdict->by_action[action]++;
		judging->rejects |= action == ACTION_REJECTED && item->rule != NULL && item->rule->rejects;
	}
}

static const char *recommended(const Judging *judging)
{
	const Verdict *verdict = judging->verdict;
	if (verdict->broken_file)
		return action_leads_to(ACTION_NOT_REVIEWED);
	if (judging->rejects && verdict->by_action[ACTION_NOT_ELIGIBLE] == 0)
		return action_leads_to(ACTION_NOT_ELIGIBLE);
	for (int action = 0; action < ACTION_COUNT; action++)
		if (verdict->by_action[action] > 0)
			return action_leads_to((Action)action);
	return action_leads_to(ACTION_ADVISORY);
}

/* ---- the order line ---- */

static const char *lapse_of(const Approval *row, const Cases *cases, Arena *arena)
{
	const Number *term = &cases->submittal->warranty.term_yr, *greatest = &row->greatest_term_yr;
	const char *letter = cut_text(row->letter.text, arena);
	if (!is_approval_for(row, &cases->submittal->project.name))
		return arena_printf(arena, "approval %s is for another project", letter);
	if (cases->as_of == INT32_MIN)
		return "the day of this submittal is not known";
	if (!is_value(&row->issued.given) || row->issued.day > cases->as_of)
		return arena_printf(arena, "approval %s is not issued yet", letter);
	if (!is_value(&row->expires.given) || row->expires.day < cases->as_of)
		return arena_printf(arena, "approval %s ended on %s", letter, date_print(arena, row->expires.day));
	if (!is_value(&term->given))
		return arena_printf(arena, "approval %s cannot be held against a term that is not stated", letter);
	if (!is_value(&greatest->given) || term->value > greatest->value * (1 + 1e-9))
		return arena_printf(arena, "approval %s does not reach to a term of %g yr", letter, term->value);
	return NULL;
}

static const char *condition_of(const Approval *row)
{
	return is_value(&row->condition.given) && *row->condition.text != '\0' ? row->condition.text : NULL;
}

/* The approval that counts, one without a condition before others; else NULL, with what is wrong with the last that does not. */
static const Approval *approval_of(const Cases *cases, const char **why, Arena *arena)
{
	const Approval *best = NULL;
	*why = "no approval of this submittal is in the register";
	for (uint32_t i = 0; cases->registers != NULL && i < cases->registers->approvals.count; i++) {
		const Approval *row = &cases->registers->approvals.row[i];
		if (!is_package_approval(row, cases->submittal))
			continue;
		const char *lapse = lapse_of(row, cases, arena);
		if (lapse != NULL)
			*why = lapse;
		else if (best == NULL || (condition_of(best) != NULL && condition_of(row) == NULL))
			best = row;
	}
	return best;
}

static const char *joined(const char *text, const char *more, Arena *arena)
{
	return *text == '\0' ? more : arena_printf(arena, "%s; %s", text, more);
}

/* "1.02, 1.05": what was to be noted in earlier rounds and is not shown done; NULL: nothing. */
static const char *conditions_open(const Judging *judging)
{
	enum { MOST_NAMED = 12 };
	const Verdict *verdict = judging->verdict;
	const char *numbers = NULL;
	uint32_t count = 0;
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[i];
		if (item_state(item) != ITEM_CONDITION || item->round == 0 || count++ >= MOST_NAMED)
			continue;
		numbers = numbers == NULL ? arena_printf(judging->arena, "%u.%02u", item->round, item->item)
			: arena_printf(judging->arena, "%s, %u.%02u", numbers, item->round, item->item);
	}
	return count > MOST_NAMED ? arena_printf(judging->arena, "%s and %u more", numbers, count - MOST_NAMED) : numbers;
}

static void add_conditions(Judging *judging)
{
	Verdict *verdict = judging->verdict;
	const char *numbers = conditions_open(judging);
	if (numbers == NULL)
		return;
	const char *conditions = arena_printf(judging->arena, "to be shown done: %s", numbers);
	verdict->order_condition = verdict->order_condition == NULL ? conditions
		: arena_printf(judging->arena, "%s; %s", verdict->order_condition, conditions);
}

static void order_line(Judging *judging)
{
	Verdict *verdict = judging->verdict;
	Arena *arena = judging->arena;
	const char *against = "", *why = NULL;
	uint32_t open = 0;
	for (int action = 0; action <= ACTION_NOT_REVIEWED; action++)
		open += verdict->by_action[action];
	const Approval *approval = approval_of(verdict->cases, &why, arena);
	if (verdict->broken_file)
		against = "the file could not be read to its end";
	if (judging->stage != STAGE_order && judging->stage != STAGE_close_out)
		against = joined(against, "the package is not at stage order", arena);
	if (open > 0)
		against = joined(against, arena_printf(arena, open == 1 ? "%u item stands open" : "%u items stand open", open),
				 arena);
	if (approval == NULL)
		against = joined(against, why, arena);
	else if (condition_of(approval) != NULL)
		verdict->order_condition = arena_printf(arena, "on condition: %s", cut_text(condition_of(approval), arena));
	verdict->may_order = *against == '\0';
	if (verdict->may_order)
		verdict->order_line = arena_printf(arena, "nothing found here stands in the way of ordering (approval letter %s)",
						   cut_text(approval->letter.text, arena));
	else
		verdict->order_line = arena_printf(arena, "Do not order: %s", against);
}

void conclude(Judging *judging)
{
	count_items(judging);
	if (!judging->verdict->self_check)
		judging->verdict->recommended_action = recommended(judging);
	order_line(judging);
	add_conditions(judging);
}

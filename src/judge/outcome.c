/* SPDX-License-Identifier: MIT
 * Outcome: the recommended action and the order line. The program advises; a person decides, and nothing here approves.
 */
#include "date.h"
#include "judge.h"

#include <string.h>

static bool is_open(const Finding *item)
{
	for (uint32_t i = 0; i < item->spots; i++)
		if (item->spot[i].state != ITEM_CLOSED && item->spot[i].state != ITEM_CONDITION &&
		    item->spot[i].state != ITEM_VARIANCE)
			return true;
	return false;
}

/* An item kept as a condition is one that may go on if its note is followed. */
static bool is_condition(const Finding *item)
{
	for (uint32_t i = 0; i < item->spots; i++)
		if (item->spot[i].state == ITEM_CONDITION)
			return true;
	return false;
}

static void count_items(Judging *judging)
{
	Verdict *verdict = judging->verdict;
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[i];
		if (is_open(item)) {
			verdict->by_action[item->action]++;
			judging->rejects |= item->action == ACTION_REJECTED && item->rule != NULL && item->rule->rejects;
		} else if (is_condition(item)) {
			verdict->by_action[item->action > ACTION_CORRECTIONS ? item->action : ACTION_CORRECTIONS]++;
		}
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

static bool is_text(const Text *text, const char *wanted)
{
	return is_value(&text->given) && text->text != NULL && strcmp(text->text, wanted) == 0;
}

/* The approval of the package as a whole: its item is the submittal's number, plain or behind the word. */
static bool approves(const Approval *row, const Submittal *submittal)
{
	static const char word[] = "submittal ";
	if (!is_value(&row->item.given) || !is_value(&submittal->submittal.given) || !is_value(&submittal->project.name.given))
		return false;
	const char *item = row->item.text;
	if (strncmp(item, word, sizeof word - 1) == 0)
		item += sizeof word - 1;
	return strcmp(item, submittal->submittal.text) == 0 && is_text(&row->project, submittal->project.name.text);
}

static const char *lapse_of(const Approval *row, const Cases *cases, Arena *arena)
{
	const Number *term = &cases->submittal->warranty.term_yr;
	if (cases->as_of == INT32_MIN)
		return "the day of this submittal is not known";
	if (!is_value(&row->issued.given) || row->issued.day > cases->as_of)
		return arena_printf(arena, "approval %s is not issued yet", row->letter.text);
	if (!is_value(&row->expires.given) || row->expires.day < cases->as_of)
		return arena_printf(arena, "approval %s ended on %s", row->letter.text, date_print(arena, row->expires.day));
	if (!is_value(&term->given) || !is_value(&row->greatest_term_yr.given) ||
	    term->value > row->greatest_term_yr.value * (1 + 1e-9))
		return arena_printf(arena, "approval %s is not for this term", row->letter.text);
	return NULL;
}

/* The approval in force, or NULL and why there is none. */
static const Approval *approval_of(const Cases *cases, const char **why, Arena *arena)
{
	*why = "no approval of this submittal is in the register";
	for (uint32_t i = 0; cases->registers != NULL && i < cases->registers->approvals.count; i++) {
		const Approval *row = &cases->registers->approvals.row[i];
		if (!approves(row, cases->submittal))
			continue;
		*why = lapse_of(row, cases, arena);
		if (*why == NULL)
			return row;
	}
	return NULL;
}

static const char *joined(const char *text, const char *more, Arena *arena)
{
	return *text == '\0' ? more : arena_printf(arena, "%s; %s", text, more);
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
}

/* SPDX-License-Identifier: MIT
 * Numbers: the sorted groups become items with round and number, and the rules not judged learn which item asks for them.
 */
#include "judge.h"

/* The rules that wait for what an item asks for. */
static void gather_rules(Judging *judging)
{
	size_t words = judging->cases->criteria != NULL ? judging->cases->criteria->rules / 64 + 1 : 1;
	for (const Wait *wait = judging->first_wait; wait != NULL; wait = wait->next) {
		const Raw *raw = wait->raw != 0 ? judging->raw[wait->raw - 1] : NULL;
		if (raw == NULL || raw->item == 0 || wait->rules == NULL)
			continue;
		Group *group = &judging->group[raw->item - 1];
		if (group->rules == NULL)
			group->rules = TAKE(judging->arena, uint64_t, words);
		for (size_t i = 0; i < words; i++)
			group->rules[i] |= wait->rules[i];
	}
}

/* The item a raw ended in, its cause's where it was held back; NULL if it was left out. */
static const Finding *item_of(const Judging *judging, const Raw *raw)
{
	for (int step = 0; raw->cause != 0 && step < 64; step++)
		raw = judging->raw[raw->cause - 1];
	return raw->item != 0 && raw->item <= judging->verdict->items ? &judging->verdict->item[raw->item - 1] : NULL;
}

static void fill_not_yet(const Judging *judging, const Open *open, NotYet *not_yet)
{
	*not_yet = (NotYet){ .rule = open->rule, .where = open->where };
	if (open->cause != 0) {
		const Raw *raw = judging->raw[open->cause - 1];
		not_yet->waits_for = raw_code(judging->raw[raw->cause - 1]);
		not_yet->item = item_of(judging, raw);
		return;
	}
	not_yet->waits_for = wait_words(judging, open->wait);
	if (open->wait != NULL && open->wait->raw != 0)
		not_yet->item = item_of(judging, judging->raw[open->wait->raw - 1]);
}

static void fill_not_yets(Judging *judging)
{
	NotYet *not_yet = TAKE(judging->arena, NotYet, judging->opens + 1);
	for (uint32_t i = 0; i < judging->opens; i++)
		fill_not_yet(judging, &judging->open[i], &not_yet[i]);
	judging->verdict->not_yet = not_yet;
	judging->verdict->not_yets = judging->opens;
}

/* What the list has no room for counts all the same. */
static void count_left_out(Judging *judging)
{
	Verdict *verdict = judging->verdict;
	verdict->left_out = judging->left_out;
	for (uint32_t i = verdict->items; i < judging->groups; i++) {
		const Raw *raw = judging->group[i].raw[0];
		verdict->by_action[raw->action]++;
		verdict->left_out++;
		judging->rejects |= raw->rule != NULL && raw->rule->rejects && raw->action == ACTION_REJECTED;
	}
}

void number_items(Judging *judging)
{
	Verdict *verdict = judging->verdict;
	gather_rules(judging);
	verdict->items = judging->groups < MOST_ITEMS ? judging->groups : MOST_ITEMS;
	verdict->item = TAKE(judging->arena, Finding, verdict->items + 1);
	uint16_t number = 0;
	for (uint32_t i = 0; i < verdict->items; i++) {
		const EarlierItem *earlier = judging->group[i].raw[0]->earlier;
		fill_item(judging, &judging->group[i], &verdict->item[i]);
		if (judging->stage == STAGE_bid)
			continue;
		verdict->item[i].round = earlier != NULL ? earlier->round : verdict->round;
		verdict->item[i].item = earlier != NULL ? earlier->item : ++number;
	}
	count_left_out(judging);
	fill_not_yets(judging);
}

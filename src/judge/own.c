/* SPDX-License-Identifier: MIT
 * The reviewer's own items and his dispositions. Both count only if the file is for this submittal and round.
 */
#include "judge.h"

#include <stdlib.h>
#include <string.h>

static const char *text_of(const Text *text)
{
	return is_value(&text->given) && text->text != NULL ? text->text : "";
}

bool is_review_for(const Review *review, const Submittal *submittal)
{
	bool same_number = strcmp(text_of(&review->submittal), text_of(&submittal->submittal)) == 0;
	bool both_rounds = is_value(&review->round_one.given) && is_value(&submittal->round_one.given);
	return same_number && (!both_rounds || review->round_one.value == submittal->round_one.value);
}

void add_own_items(Judging *judging)
{
	const Review *review = judging->cases->review;
	if (review == NULL || !is_review_for(review, judging->cases->submittal))
		return;
	for (uint32_t i = 0; i < review->own.of.count; i++) {
		const OwnItem *own = &review->own.of.row[i];
		int action = is_value(&own->action.given) ? action_find(own->action.text) : -1;
		Raw raw = { .found_by = FOUND_BY_REVIEWER, .action = ACTION_NOT_REVIEWED, .own = own, .place = own->given.place };
		if (action >= 0)
			raw.action = (Action)action;
		raw_add(judging, &raw);
	}
}

Finding *item_numbered(const Verdict *verdict, const char *number)
{
	char *end;
	unsigned long round = strtoul(number, &end, 10);
	if (end == number || *end != '.')
		return NULL;
	const char *second = end + 1;
	unsigned long item = strtoul(second, &end, 10);
	if (end == second || *end != '\0' || item == 0)
		return NULL;
	uint32_t low = 0, high = verdict->items; /* items stand in the order of their numbers */
	while (low < high) {
		uint32_t middle = low + (high - low) / 2;
		Finding *found = &verdict->item[middle];
		if (found->round == round && found->item == item)
			return found;
		if (found->round < round || (found->round == round && found->item < item))
			low = middle + 1;
		else
			high = middle;
	}
	return NULL;
}

ItemState state_for(const char *disposition)
{
	static const struct {
		const char *word;
		ItemState state;
	} states[] = {
		{ "closed", ITEM_CLOSED },
		{ "withdrawn", ITEM_CLOSED },
		{ "superseded", ITEM_CLOSED },
		{ "closed as noted", ITEM_CONDITION },
		{ "deferred to field", ITEM_CONDITION },
	};
	for (size_t i = 0; i < sizeof states / sizeof *states; i++)
		if (strcmp(states[i].word, disposition) == 0)
			return states[i].state;
	return ITEM_OPEN;
}

/* That a thing is gone from the roof is confirmed, not waived. */
bool may_dispose(const Finding *item, ItemState state)
{
	bool is_gone = item->found_by == FOUND_EARLIER && item->spot[0].where == NULL;
	bool is_grave = item->action == ACTION_REJECTED || item->action == ACTION_NOT_ELIGIBLE;
	return state == ITEM_OPEN || is_gone || !is_grave || item->rule == NULL || item->rule->waivable;
}

/* A disposition without its reason closes nothing, nor does one of what may not be waived. */
static void apply(Judging *judging, const Disposition *row)
{
	Finding *item = item_numbered(judging->verdict, text_of(&row->number));
	if (item == NULL || !is_value(&row->disposition.given))
		return;
	ItemState state = state_for(row->disposition.text);
	const char *reason = text_of(&row->reason);
	if ((*reason == '\0' && state != ITEM_OPEN) || !may_dispose(item, state))
		return;
	for (uint32_t i = 0; i < item->spots; i++)
		item->spot[i].state = state;
	const char *words = row->disposition.text;
	item->disposition = *reason == '\0' ? words : arena_printf(judging->arena, "%s: %s", words, cut_text(reason, judging->arena));
}

void apply_dispositions(Judging *judging)
{
	const Review *review = judging->cases->review;
	if (review == NULL || !is_review_for(review, judging->cases->submittal))
		return;
	for (uint32_t i = 0; i < review->items.of.count; i++)
		apply(judging, &review->items.of.row[i]);
}

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

static bool is_for_this(const Judging *judging)
{
	const Review *review = judging->cases->review;
	const Submittal *submittal = judging->cases->submittal;
	bool same_number = strcmp(text_of(&review->submittal), text_of(&submittal->submittal)) == 0;
	bool both_rounds = is_value(&review->round_one.given) && is_value(&submittal->round_one.given);
	return same_number && (!both_rounds || review->round_one.value == submittal->round_one.value);
}

static const char *package_words(const Text *number, const Number *round, Arena *arena)
{
	const char *name = *text_of(number) != '\0' ? cut_text(text_of(number), arena) : "no submittal";
	return is_value(&round->given) ? arena_printf(arena, "%s round %.0f", name, round->value) : name;
}

static void refuse_file(Judging *judging)
{
	const Review *review = judging->cases->review;
	const Submittal *submittal = judging->cases->submittal;
	Raw raw = { .message = MESSAGE_MIS_10, .place = review->given.place };
	raw.what = package_words(&review->submittal, &review->round_one, judging->arena);
	raw.reason = package_words(&submittal->submittal, &submittal->round_one, judging->arena);
	raise_missing(judging, &raw, NULL);
}

void add_own_items(Judging *judging)
{
	const Review *review = judging->cases->review;
	if (review == NULL)
		return;
	if (!is_for_this(judging)) {
		refuse_file(judging);
		return;
	}
	for (uint32_t i = 0; i < review->own.of.count; i++) {
		const OwnItem *own = &review->own.of.row[i];
		int action = is_value(&own->action.given) ? action_find(own->action.text) : -1;
		Raw raw = { .found_by = FOUND_BY_REVIEWER, .action = ACTION_NOT_REVIEWED, .own = own, .place = own->given.place };
		if (action >= 0)
			raw.action = (Action)action;
		raw_add(judging, &raw);
		if (action >= 0 || own->action.given.said != SAID_VALUE)
			continue;
		Raw unknown = { .message = MESSAGE_MIS_11, .what = own->action.text, .place = own->action.given.place };
		raise_missing(judging, &unknown, NULL);
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
	if (end == second || *end != '\0' || item == 0 || item > verdict->items)
		return NULL;
	Finding *found = &verdict->item[item - 1];
	return found->round == round && found->item == item ? found : NULL;
}

static ItemState state_for(const char *disposition)
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

/* A disposition without its reason closes nothing. */
static void apply(Judging *judging, const Disposition *row)
{
	Finding *item = item_numbered(judging->verdict, text_of(&row->number));
	if (item == NULL || !is_value(&row->disposition.given))
		return;
	ItemState state = state_for(row->disposition.text);
	const char *reason = text_of(&row->reason);
	if (*reason == '\0' && state != ITEM_OPEN)
		return;
	for (uint32_t i = 0; i < item->spots; i++)
		item->spot[i].state = state;
	if (*reason != '\0')
		item->remedy = arena_printf(judging->arena, "%s (%s by the reviewer: %s)", item->remedy, row->disposition.text,
					    cut_text(reason, judging->arena));
}

void apply_dispositions(Judging *judging)
{
	const Review *review = judging->cases->review;
	if (review == NULL || !is_for_this(judging))
		return;
	for (uint32_t i = 0; i < review->items.of.count; i++)
		apply(judging, &review->items.of.row[i]);
}

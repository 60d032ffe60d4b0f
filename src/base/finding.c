/* SPDX-License-Identifier: MIT
 * What an item counts as once the reviewer has spoken: judge counts it so, the letter heads it so.
 */
#include "finding.h"

#include <string.h>

bool is_open_item(const Finding *item)
{
	for (uint32_t i = 0; i < item->spots; i++)
		if (item->spot[i].state != ITEM_CLOSED && item->spot[i].state != ITEM_CONDITION &&
			item->spot[i].state != ITEM_VARIANCE)
			return true;
	return false;
}

bool is_condition_item(const Finding *item)
{
	for (uint32_t i = 0; i < item->spots; i++)
		if (item->spot[i].state == ITEM_CONDITION)
			return true;
	return false;
}

ItemState item_state(const Finding *item)
{
	bool is_new = true, is_variance = false;
	for (uint32_t i = 0; i < item->spots; i++) {
		is_new &= item->spot[i].state == ITEM_NEW;
		is_variance |= item->spot[i].state == ITEM_VARIANCE;
	}
	if (is_open_item(item))
		return is_new ? ITEM_NEW : ITEM_OPEN;
	return is_condition_item(item) ? ITEM_CONDITION : is_variance ? ITEM_VARIANCE : ITEM_CLOSED;
}

int counted_as(Action action, ItemState state)
{
	switch (state) {
	case ITEM_CLOSED:
	case ITEM_VARIANCE:
		return -1;
	case ITEM_CONDITION:
		return action > ACTION_CORRECTIONS ? (int)action : (int)ACTION_CORRECTIONS;
	default:
		return (int)action;
	}
}

int counted_action(const Finding *item)
{
	return counted_as(item->action, item_state(item));
}

static bool is_for_contractor(const Finding *item)
{
	return item->answer_by == NULL || strcmp(item->answer_by, "contractor") == 0 || strcmp(item->answer_by, "applicant") == 0;
}

/* What is refused and is not the contractor's to change cannot be bid as drawn; of what the specification alone asks, its
 * designer can be asked. A question open, or an answer that another party owes, is asked before the bid; what is left he
 * prices. */
BidGroup bid_group(const Finding *item)
{
	Action action = item->action;
	bool rejects = action == ACTION_REJECTED && item->rule != NULL && item->rule->rejects;
	bool is_drawn = action == ACTION_REJECTED && !is_for_contractor(item) && item->authority != AUTHORITY_SPECIFICATION;
	if (action == ACTION_NOT_ELIGIBLE || rejects || is_drawn)
		return BID_CANNOT_BE_MET;
	if (action == ACTION_CONFLICT || action == ACTION_HOLD || action == ACTION_NOT_REVIEWED || !is_for_contractor(item))
		return BID_ASK_BEFORE;
	return BID_WILL_COST;
}

const char *bid_group_words(BidGroup group)
{
	static const char *const words[BID_GROUPS] = { "cannot be met", "will cost money", "ask before bid" };
	return words[group];
}

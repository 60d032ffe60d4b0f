/* SPDX-License-Identifier: MIT
 * What an item counts as once the reviewer has spoken: judge counts it so, the letter heads it so.
 */
#include "finding.h"

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

int counted_action(const Finding *item)
{
	if (is_open_item(item))
		return (int)item->action;
	if (is_condition_item(item))
		return item->action > ACTION_CORRECTIONS ? (int)item->action : (int)ACTION_CORRECTIONS;
	return -1;
}

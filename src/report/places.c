/* SPDX-License-Identifier: MIT
 * What the machine formats ask of one place of an item.
 */
#include "places.h"

int spot_action(const Finding *item, const Spot *spot)
{
	return counted_as(item->action, spot->state);
}

bool is_at_gate(const Verdict *verdict, const Finding *item, const Spot *spot)
{
	int action = spot_action(item, spot);
	return action >= 0 && action <= (int)verdict->gate;
}

const char *waiting_codes(const Finding *item, Arena *arena)
{
	const char *codes = "";
	for (uint32_t i = 0; i < item->waiting; i++)
		codes = arena_printf(arena, "%s%s%s", codes, i > 0 ? ", " : "", item->waits[i]);
	return codes;
}

const char *submittal_number(const Verdict *verdict)
{
	const Text *number = &verdict->cases->submittal->submittal;
	return is_value(&number->given) && number->text != NULL ? number->text : "";
}

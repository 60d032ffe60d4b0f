/* SPDX-License-Identifier: MIT
 * Coil in an order: nobody can read grade, thickness and coating off a finished panel, so that its certificate is due with it.
 */
#include "holding.h"

#include "facts.h"

#include <string.h>

void know_certificates(Holding *holding)
{
	const Submittal *submittal = holding->order->basis.submitted->cases->submittal;
	for (uint32_t i = 0; i < submittal->purchases.of.count; i++) {
		const Purchase *purchase = &submittal->purchases.of.row[i];
		for (uint32_t j = 0; is_word(&purchase->kind, "coil certificate") && j < purchase->lines.of.count; j++) {
			const Text *item = &purchase->lines.of.row[j].item;
			Known *known = is_value(&item->given) ? known_find(holding, item->text) : NULL;
			if (known != NULL)
				known->is_certified = true;
		}
	}
}

static bool says_coil(const char *text)
{
	return text != NULL && strcasestr(text, "coil") != NULL;
}

/* Panels formed on site are bought as coil, by the pound or the foot. */
static bool is_coil(const OrderLine *line, const Known *known)
{
	const Panel *panel = known->part != NULL ? known->part->row : NULL;
	bool from_coil = panel != NULL && is_value(&panel->coil_width_in.given);
	return line->unit == BY_POUND || (line->unit == BY_FOOT && from_coil) || says_coil(line->words) || says_coil(line->code);
}

void check_coil(Holding *holding, OrderedLine *line, const Known *known)
{
	if (known->is_certified || !is_coil(line->line, known))
		return;
	OrderFinding found = { .fault = ORDER_COIL, .item = known->item };
	const char *file = holding->order->basis.submitted->source->name;
	found.finding = arena_printf(holding->arena, "coil is ordered for %s, and no certificate of a coil for it is among the "
		"purchases of %s", known->item, file);
	found.remedy = "send the mill's certificate, and list it under purchases with the number of the coil";
	find_against(holding, found, line);
}

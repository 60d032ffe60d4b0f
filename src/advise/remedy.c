/* SPDX-License-Identifier: MIT
 * Remedies of broken rules whose wording names what only a varied copy can answer.
 */
#include "advising.h"

#include <string.h>

static bool asks_for(const Wording *wording, const char *name)
{
	for (uint32_t i = 0; i < wording->count; i++) {
		const Piece *piece = &wording->piece[i];
		if (piece->for_advise && piece->operand.word != NULL && strcmp(piece->operand.word, name) == 0)
			return true;
	}
	return false;
}

static bool asks_anything(const Wording *wording)
{
	for (uint32_t i = 0; i < wording->count; i++)
		if (wording->piece[i].for_advise)
			return true;
	return false;
}

/* A place whose record is gone has nothing to vary. */
static bool is_found_now(const Finding *item)
{
	for (uint32_t i = 0; i < item->spots; i++)
		if (item->spot[i].where == NULL)
			return false;
	return true;
}

void fill_remedy(Advising *advising, Finding *item)
{
	const Wording *remedy = item->rule != NULL ? &item->rule->remedy : NULL;
	if (remedy == NULL || item->judged == NULL || !is_found_now(item) || !asks_anything(remedy) || !may_try(advising))
		return;
	Advice advice = { .nearest_listing = NULL };
	if (asks_for(remedy, "accepted_items"))
		advice.accepted_items = accepted_items(advising, item);
	if (asks_for(remedy, "nearest_listing"))
		advice.nearest_listing = nearest_listing(advising, item);
	if (asks_for(remedy, "longest_term"))
		advice.longest_term = longest_term(advising, item);
	if (asks_for(remedy, "greatest_spacing"))
		advice.greatest_spacing = greatest_spacings(advising, item);
	if (asks_for(remedy, "letter_inputs"))
		advice.letter_inputs = letter_inputs(advising, item);
	const char *reviewed = strstr(item->remedy, " by the reviewer: ");
	if (reviewed == NULL)
		item->remedy = finding_remedy(item, &advice, advising->arena);
}

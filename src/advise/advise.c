/* SPDX-License-Identifier: MIT
 * Advise: what would be accepted instead, found by changing a copy and judging it. It adds to remedies and decides nothing.
 */
#include "advising.h"

void advise(Verdict *verdict, Arena *arena)
{
	Advising advising = { .verdict = verdict, .arena = arena };
	if (verdict->broken_file || verdict->cases->criteria == NULL)
		return;
	for (uint32_t i = 0; i < verdict->items && advising.tries < MOST_TRIES; i++)
		fill_remedy(&advising, &verdict->item[i]);
}

/* SPDX-License-Identifier: MIT
 * The criteria themselves: whether they are in force on the day papers are judged at.
 */
#include "date.h"
#include "fetch.h"

double submittal_edition_in_force_yes(Case *submittal)
{
	const Edition *edition = &submittal->all->criteria->edition;
	int32_t day = fetch_as_of(submittal);
	CONSTANT(submittal, "criteria.yaml", "effective", edition->effective.day, NULL);
	CONSTANT(submittal, "criteria.yaml", "expires", edition->expires.day, NULL);
	if (!ready(submittal))
		return 0;
	if (day >= edition->effective.day && day <= edition->expires.day)
		return 1;
	Arena *arena = submittal->all->arena;
	note(submittal, arena_printf(arena, "%s is in force from %s to %s", edition->edition.text,
				     date_print(arena, edition->effective.day), date_print(arena, edition->expires.day)));
	return 0;
}

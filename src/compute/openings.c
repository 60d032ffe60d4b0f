/* SPDX-License-Identifier: MIT
 * Openings in the roof: how many, which need a curb, and whose curb it is.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

/* Kinds of opening that are rectangular by their nature. */
static bool is_rectangular(const char *kind)
{
	return is_among(kind, "equipment curb;hatch;skylight;smoke vent;duct");
}

/* A round pipe takes a boot, unless it crosses a seam. */
double penetration_needs_curb_yes(Case *opening)
{
	const char *kind = GIVEN(opening, penetration, Penetration, kind);
	if (ready(opening) && is_rectangular(kind))
		return 1;
	bool crosses = GIVEN(opening, penetration, Penetration, crosses_seam);
	return ready(opening) && crosses;
}

double penetration_maker_curb_yes(Case *opening)
{
	double in_catalogue = OF(opening, part_in_catalogue_yes);
	if (!ready(opening) || in_catalogue == 0)
		return 0;
	double from_maker = OF(opening, part_supplied_by_maker_yes);
	return ready(opening) && from_maker != 0;
}

double roof_area_openings_one(Case *area)
{
	const List *openings = fetch_list(area, area, offsetof(RoofArea, penetrations));
	return openings != NULL ? openings->count : 0;
}

/* Hatches, skylights and smoke vents stand on the architect's drawings alone. */
double roof_area_trade_openings_one(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, penetrations)) == NULL)
		return 0;
	double count = 0;
	for (Case *at = first_below(area, KIND_penetration); at != NULL; at = at->next) {
		const char *kind = GIVEN_AT(area, at, Penetration, kind);
		count += ready(area) && !list_has(area->all->criteria, "openings the architect draws", kind);
	}
	return count;
}

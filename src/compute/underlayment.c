/* SPDX-License-Identifier: MIT
 * Underlayments: how long they lie open, how far the ice barrier reaches, and which edges have no self-adhered sheet.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

#include <math.h>

/* A sheet that is not covered yet has lain open until the day papers are judged at. */
double underlayment_exposed_days_day(Case *sheet)
{
	int32_t laid = GIVEN(sheet, underlayment, Underlayment, laid);
	bool is_open = ask(sheet, offsetof(Underlayment, covered)).given->said == SAID_NOTHING;
	int32_t until = is_open && ready(sheet) ? fetch_as_of(sheet) : 0;
	if (is_open && until > laid) {
		sheet->now->formula = "the day papers are judged at - {laid}";
		note(sheet, "it is not covered yet");
		return ready(sheet) ? until - laid : 0;
	}
	int32_t covered = GIVEN(sheet, underlayment, Underlayment, covered);
	if (ready(sheet) && covered < laid)
		return REFUSE(sheet, "it is covered before it is laid");
	return ready(sheet) ? covered - laid : 0;
}

/* A self-adhered sheet over the whole roof is a barrier everywhere. */
double roof_area_ice_barrier_reach_in(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, underlayments)) == NULL)
		return 0;
	double greatest = 0;
	for (Case *sheet = first_below(area, KIND_underlayment); sheet != NULL; sheet = sheet->next) {
		const char *kind = GIVEN_AT(area, sheet, Underlayment, kind);
		const char *where = GIVEN_AT(area, sheet, Underlayment, where);
		if (!same_text(kind, "self-adhered"))
			continue;
		if (same_text(where, "whole roof"))
			return SKIP(area, "the whole roof lies on a self-adhered sheet");
		if (is_among(where, "eaves;eaves and valleys"))
			greatest = fmax(greatest, GIVEN_AT(area, sheet, Underlayment, inside_wall_in));
	}
	return greatest;
}

/* ---- edges ---- */

enum { EAVES = 1, VALLEYS = 2, HIPS = 4, WALLS = 8, ALL_EDGES = 15 };

static unsigned edges_of_sheet(const char *where)
{
	return same_text(where, "whole roof") ? ALL_EDGES
		: same_text(where, "eaves and valleys") ? EAVES | VALLEYS
		: same_text(where, "eaves")             ? EAVES
		: same_text(where, "valleys")           ? VALLEYS
		: same_text(where, "hips")              ? HIPS
		: same_text(where, "walls")             ? WALLS
							: 0;
}

static unsigned edge_of_detail(const char *place)
{
	return same_text(place, "eave") ? EAVES
		: same_text(place, "valley")             ? VALLEYS
		: same_text(place, "hip")                ? HIPS
		: is_among(place, "headwall;sidewall") ? WALLS
							 : 0;
}

double roof_area_edges_without_sheet_one(Case *area)
{
	bool stated = fetch_list(area, area, offsetof(RoofArea, underlayments)) != NULL;
	stated &= fetch_list(area, area, offsetof(RoofArea, details)) != NULL;
	if (!stated)
		return 0;
	unsigned covered = 0;
	for (Case *sheet = first_below(area, KIND_underlayment); sheet != NULL; sheet = sheet->next)
		if (same_text(GIVEN_AT(area, sheet, Underlayment, kind), "self-adhered"))
			covered |= edges_of_sheet(GIVEN_AT(area, sheet, Underlayment, where));
	double count = 0;
	for (Case *at = first_below(area, KIND_detail); at != NULL; at = at->next) {
		const char *place = GIVEN_AT(area, at, Detail, place);
		unsigned edge = edge_of_detail(place) & ~covered;
		if (edge == 0)
			continue;
		const char *named = area->now->note;
		note(area, named != NULL ? arena_printf(area->all->arena, "%s, %s", named, place) : place);
		covered |= edge;
		count++;
	}
	return count;
}

/* SPDX-License-Identifier: MIT
 * Joints: sealants that meet in one place, what an elastomeric one is made for, and ribs that no closure closes.
 */
#include "below.h"
#include "fetch.h"
#include "text.h"

/* The places and chemistries of sealants, closures' places and those of details are words of words.def, fewer than this. */
enum { WORDS_OF_A_FIELD = 32 };

double sealant_use_fits_metal_yes(Case *sealant)
{
	const Texts *uses = GIVEN(sealant, sealant, Sealant, uses);
	bool fits = false;
	for (uint32_t i = 0; i < uses->count; i++)
		fits |= is_among(uses->at[i].text, "M;O");
	return fits;
}

/* ---- unlike sealants in one place ---- */

static bool names(const Texts *texts, const char *chemistry)
{
	for (uint32_t i = 0; i < texts->count; i++)
		if (same_text(texts->at[i].text, chemistry))
			return true;
	return false;
}

/* Whether a sealant may touch all others of its place; those it may not are noted. */
static bool fits_neighbors(Case *area, Case *sealant, const char *const *neighbor)
{
	const char *own = GIVEN_AT(area, sealant, Sealant, chemistry);
	const Texts *may = NULL;
	bool fits = true;
	for (int i = 0; i < WORDS_OF_A_FIELD; i++) {
		if (neighbor[i] == NULL || same_text(neighbor[i], own))
			continue;
		may = may != NULL ? may : GIVEN_AT(area, sealant, Sealant, compatible_with);
		if (!ready(area) || names(may, neighbor[i]))
			continue;
		const char *where = GIVEN_AT(area, sealant, Sealant, where);
		note(area, arena_printf(area->all->arena, "%s and %s at the %s", own, neighbor[i], where));
		fits = false;
	}
	return fits;
}

double roof_area_sealants_fit_yes(Case *area)
{
	const char *at_place[WORDS_OF_A_FIELD][WORDS_OF_A_FIELD] = { { NULL } };
	if (fetch_list(area, area, offsetof(RoofArea, sealants)) == NULL)
		return 0;
	for (Case *at = first_below(area, KIND_sealant); at != NULL; at = at->next) {
		const Sealant *row = at->row;
		const char *chemistry = GIVEN_AT(area, at, Sealant, chemistry);
		GIVEN_AT(area, at, Sealant, where);
		if (is_value(&row->where.given) && is_value(&row->chemistry.given))
			at_place[row->where.word][row->chemistry.word] = chemistry;
	}
	bool fits = true;
	for (Case *at = first_below(area, KIND_sealant); ready(area) && at != NULL; at = at->next)
		fits &= fits_neighbors(area, at, at_place[((const Sealant *)at->row)->where.word]);
	return fits;
}

/* ---- ribs ---- */

/* Ridge and eave are roles of their own. */
static bool has_open_ribs(const char *place)
{
	return is_among(place, "hip;valley;headwall");
}

double roof_area_ribs_left_open_one(Case *area)
{
	const char *closed[WORDS_OF_A_FIELD] = { NULL };
	bool stated = fetch_list(area, area, offsetof(RoofArea, closures)) != NULL;
	stated &= fetch_list(area, area, offsetof(RoofArea, details)) != NULL;
	if (!stated)
		return 0;
	for (Case *at = first_below(area, KIND_closure); at != NULL; at = at->next) {
		const Closure *row = at->row;
		const char *where = GIVEN_AT(area, at, Closure, where);
		if (is_value(&row->where.given))
			closed[row->where.word] = where;
	}
	double count = 0;
	for (Case *at = first_below(area, KIND_detail); at != NULL; at = at->next) {
		const char *place = GIVEN_AT(area, at, Detail, place);
		bool is_closed = !has_open_ribs(place);
		for (int i = 0; i < WORDS_OF_A_FIELD && !is_closed; i++)
			is_closed = closed[i] != NULL && same_text(closed[i], place);
		if (is_closed)
			continue;
		note(area, place);
		count++;
	}
	return count;
}

/* SPDX-License-Identifier: MIT
 * What the engineer's letters state beside pressures and clips: for each roof area the least of its letters, and for each letter
 * the greatest of its roof areas.
 */
#include "below.h"
#include "letters.h"
#include "text.h"
#include "wind.h"

#include <math.h>

/* ---- of a roof area: what its letters state ---- */

static double least_of_letters(Case *area, uint32_t offset)
{
	Letters letters = fetch_letters(area);
	double least = HUGE_VAL;
	for (uint32_t i = 0; i < letters.count; i++) {
		double value = fetch_number(area, ask(letters.at[i], offset));
		if (value < least)
			note(area, letters.at[i]->name);
		least = fmin(least, value);
	}
	return ready(area) ? least : 0;
}

double roof_area_letter_fastener_factor_one(Case *area)
{
	return least_of_letters(area, offsetof(Letter, fastener_factor_one));
}

double roof_area_letter_concentrated_load_lb(Case *area)
{
	return least_of_letters(area, offsetof(Letter, gravity.concentrated_load_lb));
}

double roof_area_letter_live_load_psf(Case *area)
{
	return least_of_letters(area, offsetof(Letter, gravity.live_load_psf));
}

double roof_area_letter_deflection_one(Case *area)
{
	return least_of_letters(area, offsetof(Letter, gravity.deflection_one));
}

double roof_area_letter_prying_yes(Case *area)
{
	Letters letters = fetch_letters(area);
	bool counted = true;
	for (uint32_t i = 0; i < letters.count; i++)
		counted &= GIVEN_AT(area, letters.at[i], Letter, prying);
	return ready(area) && counted;
}

/* ---- of a letter: what its roof areas ask for ---- */

/* The greatest of a fact over the areas a letter names; an area for which nothing is computed asks for nothing. */
static double greatest_of_areas(Case *letter, FactId id, const Case **which)
{
	const Texts *areas = GIVEN(letter, letter, Letter, areas);
	fetch_list(letter, outward(letter, KIND_submittal), offsetof(Submittal, roof_areas));
	double greatest = -1;
	for (uint32_t i = 0; ready(letter) && i < areas->count; i++) {
		Case *area = area_called(letter, areas->at[i].text);
		if (area == NULL)
			continue;
		const Fact *one = fetch_use(letter, area, id);
		if (one->state == FACT_REFUSED || one->state == FACT_NOT_APPLICABLE)
			continue;
		fetch_raise(letter, one);
		*which = one->value > greatest ? area : *which;
		greatest = fmax(greatest, one->value);
	}
	if (ready(letter) && greatest < 0)
		return SKIP(letter, "nothing is computed for the roof areas it names");
	return ready(letter) ? greatest : 0;
}

double letter_areas_height_ft(Case *letter)
{
	const Case *which = NULL;
	double height = greatest_of_areas(letter, FACT_roof_area_design_height, &which);
	note(letter, which != NULL ? which->name : NULL);
	return height;
}

double letter_areas_topographic_factor_one(Case *letter)
{
	const Case *which = NULL;
	double factor = greatest_of_areas(letter, FACT_roof_area_topographic_factor, &which);
	note(letter, which != NULL ? which->name : NULL);
	return factor;
}

/* Zones that are drawn wider than they must be are on the safe side. */
double letter_width_shortfall_percent(Case *letter)
{
	double drawn = GIVEN(letter, letter, Letter, zone_width_ft);
	const Case *which = NULL;
	double width = greatest_of_areas(letter, FACT_roof_area_edge_width, &which);
	if (!ready(letter))
		return 0;
	note(letter, arena_printf(letter->all->arena, "%.1f ft on %s", width, which->name));
	return 100 * fmax(0, width / drawn - 1);
}

/* From ASCE 7-16 on a low slope has edge zones of 0.6 h, other figures strips of `a`. */
double roof_area_edge_width_ft(Case *area)
{
	Case *zone = first_below(area, KIND_zone);
	if (fetch_list(area, area, offsetof(RoofArea, clips)) == NULL)
		return 0;
	if (zone == NULL)
		return SKIP(area, "no clips are spaced here, so no zones are laid out");
	const ZoneHere *here = fetch_zone_of(area, zone);
	if (here == NULL)
		return 0;
	if (!same_text(here->figure->layout.text, "low slope"))
		return OF(area, roof_area_zone_width_ft);
	double height = fetch_height_ft(area);
	area->now->formula = "0.6 * {design_height}";
	return ready(area) ? 0.6 * height : 0;
}

/* ---- the changed framing ---- */

double letter_framing_shown_yes(Case *letter)
{
	const char *number = GIVEN_OR(letter, letter, Letter, framing_revision, NULL);
	Case *submittal = (Case *)outward(letter, KIND_submittal);
	if (fetch_list(letter, submittal, offsetof(Submittal, documents)) == NULL)
		return 0;
	if (ready(letter) && number == NULL)
		note(letter, "no paper is named");
	for (const Case *paper = first_below(submittal, KIND_document); paper != NULL && number != NULL; paper = paper->next) {
		const char *known = GIVEN_AT(letter, paper, Document, number);
		if (ready(letter) && same_text(known, number))
			return 1;
	}
	if (ready(letter) && number != NULL)
		note(letter, arena_printf(letter->all->arena, "%s is not in the package", number));
	return 0;
}

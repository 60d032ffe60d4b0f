/* SPDX-License-Identifier: MIT
 * Uplift that the sealed letters give for a zone, at allowable level.
 *
 * A letter may speak of the zone by its own name or by the places it takes in; the greatest counts. Words that are no place of
 * the figure count wherever the letter names nothing: no part of the roof may slip between two vocabularies.
 */
#include "below.h"
#include "formula.h"
#include "text.h"
#include "wind.h"

#include <math.h>
#include <string.h>

/* More zones than any roof has. */
enum { MOST_PRESSURES = 64 };

static bool is_zone_of(const WindZone *zone, const WindFigure *figure)
{
	return strcmp(zone->standard.text, figure->standard.text) == 0 && strcmp(zone->figure.text, figure->figure.text) == 0 &&
		strcmp(zone->layout.text, figure->layout.text) == 0;
}

static bool is_in_figure(const Case *zone, const WindFigure *figure, const char *words)
{
	const Reference *reference = zone->all->reference;
	for (uint32_t i = 0; i < reference->wind_zones.count; i++) {
		const WindZone *row = &reference->wind_zones.row[i];
		if (is_zone_of(row, figure) && (strcmp(row->zone.text, words) == 0 || is_among(words, row->places.text)))
			return true;
	}
	return false;
}

/* How well a word of the letter fits the zone: its own name, a place of it or all zones, no place at all, another zone. */
typedef enum { OTHER_ZONE, NO_PLACE, ITS_PLACE, ITS_NAME } Fit;

static Fit fit_of(const Case *zone, const char *words)
{
	const ZoneHere *here = zone->row;
	const char *name = here->record.name.text;
	if (strcmp(words, name) == 0)
		return ITS_NAME;
	if (here->zone != NULL && strcmp(words, "overhang") == 0)
		return OTHER_ZONE; /* a fact of its own */
	bool is_interior = here->zone != NULL && strcmp(words, "interior") == 0 && !is_in_figure(zone, here->figure, words);
	if (is_interior) /* who sets an interior apart where the figure does not means its field */
		return is_among("field", here->zone->places.text) ? ITS_PLACE : OTHER_ZONE;
	bool is_everywhere = strcmp(words, "all zones") == 0 || strcmp(name, "all zones") == 0;
	if (is_everywhere || (here->zone != NULL && is_among(words, here->zone->places.text)))
		return ITS_PLACE;
	return here->zone == NULL || is_in_figure(zone, here->figure, words) ? OTHER_ZONE : NO_PLACE;
}

/* The greatest pressure among the words that fit best; -1 if none does. All zones counts beside the zone's own name. */
static double pressure_for(Case *zone, const ByZone *pressures)
{
	double greatest[ITS_NAME + 1] = { -1, -1, -1, -1 }, everywhere = -1;
	for (uint32_t i = 0; i < pressures->count; i++) {
		const ZoneValue *value = &pressures->at[i];
		ArenaMark mark = arena_mark(zone->all->arena);
		const char *words = zone_words(zone->all->arena, value->zone);
		Fit fit = fit_of(zone, words);
		if (strcmp(words, "all zones") == 0)
			everywhere = fmax(everywhere, value->value);
		greatest[fit] = fmax(greatest[fit], value->value);
		arena_back(zone->all->arena, mark);
	}
	if (greatest[ITS_NAME] >= 0)
		return fmax(greatest[ITS_NAME], everywhere);
	return greatest[ITS_PLACE] >= 0 ? greatest[ITS_PLACE] : greatest[NO_PLACE];
}

/* A pressure at strength level goes by the factor of the letter's own standard. */
static double at_allowable_level(Case *zone, const Case *letter, double pressure)
{
	const char *level = GIVEN_AT(zone, letter, Letter, level);
	if (!ready(zone) || !same_text(level, "strength"))
		return pressure;
	double factor = fetch_wind_constant(zone, GIVEN_AT(zone, letter, Letter, standard), "asd_factor");
	return ready(zone) ? asd_uplift_psf(pressure, factor) : 0;
}

/* The greatest pressure of a place that is no zone, or of one value for all; -1 if neither is named. */
static double pressure_of_overhang(Case *zone, const ByZone *pressures)
{
	double greatest = -1;
	for (uint32_t i = 0; i < pressures->count; i++) {
		const char *words = zone_words(zone->all->arena, pressures->at[i].zone);
		if (strcmp(words, "overhang") == 0 || strcmp(words, "all zones") == 0)
			greatest = fmax(greatest, pressures->at[i].value);
	}
	return greatest;
}

typedef double PressureIn(Case *zone, const ByZone *pressures);

static double of_letter(Case *zone, const Case *letter, PressureIn *find)
{
	const ByZone *pressures = GIVEN_AT(zone, letter, Letter, pressures_psf);
	if (pressures->count > MOST_PRESSURES)
		return REFUSE(zone, "the letter names more zones than a roof has");
	double pressure = find(zone, pressures);
	return pressure >= 0 ? at_allowable_level(zone, letter, pressure) : -1;
}

static Case *const *fetch_letters(Case *zone, uint32_t *count)
{
	const char *name = GIVEN(zone, roof_area, RoofArea, name);
	fetch_list(zone, outward(zone, KIND_submittal), offsetof(Submittal, engineering));
	*count = 0;
	if (!ready(zone))
		return NULL;
	uint32_t unknowns;
	Case *const *unknown = letters_unknown(zone, &unknowns);
	for (uint32_t i = 0; i < unknowns; i++)
		GIVEN_AT(zone, unknown[i], Letter, areas);
	return letters_covering(zone, name, count);
}

static double greatest_of_letters(Case *zone, PressureIn *find)
{
	uint32_t letters;
	Case *const *letter = fetch_letters(zone, &letters);
	if (letters > MOST_COVERING)
		return REFUSE(zone, "more letters cover this area than are compared");
	double greatest = -1;
	for (uint32_t i = 0; i < letters; i++) {
		double pressure = of_letter(zone, letter[i], find);
		if (pressure > greatest)
			note(zone, letter[i]->name);
		greatest = fmax(greatest, pressure);
	}
	if (!ready(zone))
		return 0;
	if (greatest < 0)
		return SKIP(zone, letters == 0 ? "no letter covers this area" : "no letter gives a pressure here");
	return greatest;
}

double zone_letter_uplift_psf(Case *zone)
{
	return greatest_of_letters(zone, pressure_for);
}

double zone_letter_overhang_psf(Case *zone)
{
	return greatest_of_letters(zone, pressure_of_overhang);
}

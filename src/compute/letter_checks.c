/* SPDX-License-Identifier: MIT
 * The engineer's letter against what is submitted: its clip schedule and zones, the parts it rests on, letters that differ.
 *
 * A place of a zone that a letter does not name takes the strictest of what it names.
 */
#include "below.h"
#include "fetch.h"
#include "formula.h"
#include "text.h"

#include <ctype.h>
#include <math.h>
#include <string.h>

/* More zones than any roof has. */
enum { MOST_VALUES = 64 };

/* The letters that cover the roof area. */
typedef struct {
	Case *const *at;
	uint32_t count;
} Letters;

static Letters fetch_letters(Case *fact)
{
	const char *name = GIVEN(fact, roof_area, RoofArea, name);
	Letters letters = { NULL, 0 };
	fetch_list(fact, outward(fact, KIND_submittal), offsetof(Submittal, engineering));
	if (!ready(fact))
		return letters;
	uint32_t unknowns;
	Case *const *unknown = letters_unknown(fact, &unknowns);
	for (uint32_t i = 0; i < unknowns; i++)
		GIVEN_AT(fact, unknown[i], Letter, areas);
	if (!ready(fact))
		return letters;
	letters.at = letters_covering(fact, name, &letters.count);
	if (letters.count > MOST_COVERING)
		REFUSE(fact, "more letters cover this area than are compared");
	else if (letters.count == 0)
		SKIP(fact, "no letter covers this area");
	letters.count = ready(fact) ? letters.count : 0;
	return letters;
}

/* ---- values by place ---- */

/* "Ridge_end" and "zone 2e" of a letter against "ridge end" and "2e". */
static bool is_key(const char *key, const char *place, size_t length)
{
	static const char zone[] = "zone";
	if (strncasecmp(key, zone, sizeof zone - 1) == 0 && (key[4] == ' ' || key[4] == '_'))
		key += 5;
	for (; length > 0 && *key != '\0'; key++, place++, length--)
		if (tolower((unsigned char)*key) != tolower((unsigned char)*place) && !(*key == '_' && *place == ' '))
			return false;
	return length == 0 && *key == '\0';
}

static const ZoneValue *value_for(const ByZone *by_zone, const char *place, size_t length)
{
	for (uint32_t i = 0; i < by_zone->count; i++)
		if (is_key(by_zone->at[i].zone, place, length))
			return &by_zone->at[i];
	return NULL;
}

/* Calls `take` for each value that holds in a zone. False if a place of it is not named. */
static bool each_value(const ByZone *by_zone, const Zone *zone, void (*take)(void *user, const ZoneValue *), void *user)
{
	const ZoneValue *whole = value_for(by_zone, "", 0), *own = value_for(by_zone, zone->name.text, strlen(zone->name.text));
	if (whole != NULL || own != NULL) {
		take(user, own != NULL ? own : whole);
		return true;
	}
	bool all = is_value(&zone->places.given) || same_text(zone->name.text, "all zones");
	for (const char *place = is_value(&zone->places.given) ? zone->places.text : ""; *place != '\0'; place += strcspn(place, ";"), place += strspn(place, "; ")) {
		const ZoneValue *value = value_for(by_zone, place, strcspn(place, ";"));
		all &= value != NULL;
		if (value != NULL)
			take(user, value);
	}
	for (uint32_t i = 0; !all && i < by_zone->count; i++)
		take(user, &by_zone->at[i]);
	return all;
}

static void take_nothing(void *user, const ZoneValue *value)
{
	(void)user;
	(void)value;
}

static void take_closest(void *user, const ZoneValue *value)
{
	double *least = user;
	if (is_value(&value->given))
		*least = fmin(*least, value->value);
}

double zone_letter_spacing_in(Case *zone)
{
	double spacing = GIVEN(zone, zone, Zone, spacing_in);
	double tolerance = CONSTANT(zone, "criteria.yaml", "spacing_tolerance", zone->all->criteria->edition.spacing_tolerance_percent.value, NULL);
	Letters letters = fetch_letters(zone);
	double least = HUGE_VAL;
	for (uint32_t i = 0; i < letters.count; i++) {
		const ByZone *schedule = GIVEN_AT(zone, letters.at[i], Letter, clip_spacing_in);
		if (schedule->count <= MOST_VALUES)
			each_value(schedule, zone->row, take_closest, &least);
	}
	if (ready(zone) && !isfinite(least))
		return REFUSE(zone, "the letter's clip spacing cannot be read");
	return ready(zone) ? same_spacing_in(least, spacing, tolerance) : 0;
}

double zone_letter_names_zone_yes(Case *zone)
{
	Letters letters = fetch_letters(zone);
	bool named = false;
	for (uint32_t i = 0; i < letters.count; i++) {
		const ByZone *pressures = GIVEN_AT(zone, letters.at[i], Letter, pressures_psf);
		named |= pressures->count <= MOST_VALUES && each_value(pressures, zone->row, take_nothing, NULL);
	}
	return ready(zone) && named;
}

double zone_letter_shortfall_percent(Case *zone)
{
	double letter = OF(zone, zone_letter_uplift_psf), computed = OF(zone, zone_asd_uplift_psf);
	return ready(zone) && letter > 0 ? 100 * fmax(0, computed / letter - 1) : 0;
}

/* ---- letters that differ ---- */

static bool is_same_pressures(const ByZone *a, const ByZone *b)
{
	bool same = a->count == b->count && a->count <= MOST_VALUES;
	for (uint32_t i = 0; same && i < a->count; i++) {
		const ZoneValue *other = value_for(b, a->at[i].zone, strlen(a->at[i].zone));
		same = other != NULL && other->value == a->at[i].value;
	}
	return same;
}

double roof_area_letters_agree_yes(Case *area)
{
	Letters letters = fetch_letters(area);
	const ByZone *first = NULL;
	for (uint32_t i = 0; i < letters.count && ready(area); i++) {
		const ByZone *pressures = GIVEN_AT(area, letters.at[i], Letter, pressures_psf);
		if (first == NULL)
			first = pressures;
		if (!ready(area) || is_same_pressures(first, pressures))
			continue;
		note(area, arena_printf(area->all->arena, "%s and %s", ((const Letter *)letters.at[0]->row)->letter.text,
			((const Letter *)letters.at[i]->row)->letter.text));
		return 0;
	}
	return ready(area);
}

/* ---- the parts it rests on ---- */

/* The next roof area that a letter covers. */
static Case *next_area(Case *letter, const Texts *areas, uint32_t *i)
{
	const Cases *all = letter->all;
	for (; *i < all->of[KIND_roof_area].count; (*i)++) {
		Case *area = all->of[KIND_roof_area].at[*i];
		const Text *name = &((const RoofArea *)area->row)->name;
		for (uint32_t n = 0; is_value(&name->given) && n < areas->count; n++)
			if (same_text(areas->at[n].text, name->text)) {
				(*i)++;
				return area;
			}
	}
	return NULL;
}

double letter_clip_as_assumed_yes(Case *letter)
{
	const Texts *areas = GIVEN(letter, letter, Letter, areas);
	const char *assumed = GIVEN(letter, letter, Letter, assumes.clip);
	uint32_t i = 0;
	for (Case *area = next_area(letter, areas, &i); ready(letter) && area != NULL; area = next_area(letter, areas, &i)) {
		fetch_list(letter, area, offsetof(RoofArea, clips));
		for (Case *clip = first_below(area, KIND_clip); clip != NULL; clip = clip->next) {
			if (!same_text(GIVEN_AT(letter, clip, Clip, use), "running") || same_text(GIVEN_AT(letter, clip, Clip, item), assumed))
				continue;
			if (ready(letter))
				note(letter, clip->name);
			return 0;
		}
	}
	return ready(letter);
}

/* Bigger screws, and more of them, hold what the letter counts on. */
static double screws_hold(Case *letter, uint32_t offset, double assumed)
{
	const Texts *areas = GIVEN(letter, letter, Letter, areas);
	uint32_t i = 0;
	for (Case *area = next_area(letter, areas, &i); ready(letter) && area != NULL; area = next_area(letter, areas, &i)) {
		fetch_list(letter, area, offsetof(RoofArea, fasteners));
		for (Case *screw = first_below(area, KIND_fastener); screw != NULL; screw = screw->next) {
			if (!same_text(GIVEN_AT(letter, screw, Fastener, use), "clip"))
				continue;
			double here = fetch_number(letter, ask(screw, offset));
			if (!ready(letter) || here >= assumed * (1 - 1e-9))
				continue;
			note(letter, screw->name);
			return 0;
		}
	}
	return ready(letter);
}

double letter_screw_as_assumed_yes(Case *letter)
{
	return screws_hold(letter, offsetof(Fastener, size_in), GIVEN(letter, letter, Letter, assumes.fastener_size_in));
}

double letter_count_as_assumed_yes(Case *letter)
{
	return screws_hold(letter, offsetof(Fastener, per_one), GIVEN(letter, letter, Letter, assumes.per_clip_one));
}

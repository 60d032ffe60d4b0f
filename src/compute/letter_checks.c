/* SPDX-License-Identifier: MIT
 * The engineer's letter against what is submitted: its clip schedule and zones, the parts it rests on, letters that differ.
 *
 * A place of a zone that a letter does not name takes the strictest of what it names.
 */
#include "below.h"
#include "by_zone.h"
#include "capacity.h"
#include "formula.h"
#include "letters.h"
#include "text.h"

#include <math.h>
#include <string.h>

Letters fetch_letters(Case *fact)
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

static void take_closest(void *user, const ZoneValue *value)
{
	double *least = user;
	if (is_value(&value->given))
		*least = fmin(*least, value->value);
}

double zone_letter_spacing_in(Case *zone)
{
	double spacing = GIVEN(zone, zone, Zone, spacing_in);
	double tolerance = fetch_spacing_tolerance(zone);
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
		named |= names_zone(pressures, zone->row);
	}
	return ready(zone) && named;
}

double zone_letter_shortfall_percent(Case *zone)
{
	double letter = OF(zone, zone_letter_uplift_psf);
	const Fact *asd = fetch_use(zone, zone, FACT_zone_asd_uplift);
	if (asd->state == FACT_REFUSED && ready(zone))
		return SKIP(zone, "nothing is computed for this roof");
	fetch_raise(zone, asd);
	double computed = asd->value;
	return ready(zone) && letter > 0 ? 100 * fmax(0, computed / letter - 1) : 0;
}

/* Two pressures of a zone, `over` above the other. Zones that have not both are left out. */
typedef struct {
	double letter, computed;
} Pair;

static bool fetch_pair(Case *area, Case *zone, Pair *pair)
{
	const Fact *letter = fetch_use(area, zone, FACT_zone_letter_uplift), *computed = fetch_use(area, zone, FACT_zone_asd_uplift);
	if ((letter->state > computed->state ? letter->state : computed->state) == FACT_WAITING) {
		fetch_raise(area, letter);
		fetch_raise(area, computed);
	}
	*pair = (Pair){ letter->value, computed->value };
	return letter->state == FACT_KNOWN && computed->state == FACT_KNOWN && letter->value > 0 && computed->value > 0;
}

/* The greatest excess, in percent, of the letter over the computed uplift, or the other way round. */
static double greatest_over(Case *area, bool is_letter_over)
{
	double greatest = 0;
	bool found = false;
	for (Case *zone = first_below(area, KIND_zone); zone != NULL; zone = zone->next) {
		Pair pair;
		if (!fetch_pair(area, zone, &pair))
			continue;
		double over = 100 * (is_letter_over ? pair.letter / pair.computed - 1 : pair.computed / pair.letter - 1);
		if (over > greatest)
			note(area, arena_printf(area->all->arena, "zone %s: %.1f psf in the letter, %.1f psf computed",
				((const Zone *)zone->row)->name.text, pair.letter, pair.computed));
		greatest = fmax(greatest, over);
		found = true;
	}
	return ready(area) && !found ? SKIP(area, "no zone has both a letter's uplift and a computed one") : greatest;
}

double roof_area_letter_excess_percent(Case *area)
{
	return greatest_over(area, true);
}

double roof_area_greatest_shortfall_percent(Case *area)
{
	return greatest_over(area, false);
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

static const char *letter_number(const Case *letter)
{
	return ((const Letter *)letter->row)->letter.text;
}

double clip_as_in_letter_yes(Case *clip)
{
	const char *item = GIVEN(clip, clip, Clip, item);
	if (!same_text(GIVEN(clip, clip, Clip, use), "running") && ready(clip))
		return SKIP(clip, "it is no running clip");
	Letters letters = fetch_letters(clip);
	for (uint32_t i = 0; i < letters.count; i++) {
		const char *assumed = GIVEN_AT(clip, letters.at[i], Letter, assumes.clip);
		if (!ready(clip) || same_text(item, assumed))
			continue;
		note(clip, arena_printf(clip->all->arena, "%s rests on %s", letter_number(letters.at[i]), assumed));
		return 0;
	}
	return ready(clip);
}

/* Bigger screws, and more of them, hold what a letter counts on. */
static double holds_assumed(Case *screw, double here, uint32_t assumed_at)
{
	if (!same_text(GIVEN(screw, fastener, Fastener, use), "clip") && ready(screw))
		return SKIP(screw, "it holds no clip");
	Letters letters = fetch_letters(screw);
	for (uint32_t i = 0; i < letters.count; i++) {
		double assumed = fetch_number(screw, ask(letters.at[i], assumed_at));
		if (!ready(screw) || here >= assumed * (1 - 1e-9))
			continue;
		const Given *given = ask(letters.at[i], assumed_at).given;
		const char *typed = given->typed != NULL ? given->typed : "more";
		note(screw, arena_printf(screw->all->arena, "%s rests on %s", letter_number(letters.at[i]), typed));
		return 0;
	}
	return ready(screw);
}

double fastener_size_as_in_letter_yes(Case *screw)
{
	return holds_assumed(screw, GIVEN(screw, fastener, Fastener, size_in), offsetof(Letter, assumes.fastener_size_in));
}

double fastener_count_as_in_letter_yes(Case *screw)
{
	return holds_assumed(screw, GIVEN(screw, fastener, Fastener, per_one), offsetof(Letter, assumes.per_clip_one));
}

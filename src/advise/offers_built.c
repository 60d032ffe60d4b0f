/* SPDX-License-Identifier: MIT
 * One construction: a candidate laid at the greatest spacing of each zone, judged, and kept if it holds.
 */
#include "counting.h"
#include "offering.h"

#include <stdio.h>
#include <string.h>

/* False, with the reason, where a zone has none. */
static bool widest_spacings(Cases *cases, ZoneValue *spacing, Construction *made, const char **why)
{
	uint32_t count = cases->of[KIND_zone].count;
	*why = "what the zones of the roof hang on is not stated";
	if (count == 0 || count > MOST_OFFERED_ZONES)
		return false;
	for (uint32_t i = 0; i < count; i++) {
		Case *zone = cases->of[KIND_zone].at[i];
		const Fact *greatest = fact_of(zone, FACT_zone_greatest_spacing);
		if (greatest->state != FACT_KNOWN) {
			*why = greatest->reason != NULL ? greatest->reason : waits_for(cases, greatest, cases->arena);
			return false;
		}
		const char *name = ((const ZoneHere *)zone->row)->record.name.text;
		spacing[i] = (ZoneValue){ { .typed = "as offered", .said = SAID_VALUE }, name, greatest->value };
		made->zone[i].zone = name;
		made->zone[i].spacing_in = greatest->value;
		made->zone[i].binds = greatest->note;
	}
	made->zones = count;
	return true;
}

/* By the plan; else by the effective area of a clip. */
static void count_its_clips(Cases *cases, Construction *made)
{
	made->is_counted = true;
	for (uint32_t i = 0; i < cases->of[KIND_zone].count; i++) {
		const Fact *clips = fact_of(cases->of[KIND_zone].at[i], FACT_zone_clips_laid);
		made->is_counted &= clips->state == FACT_KNOWN;
		made->clips += clips->value;
	}
	if (made->is_counted)
		return;
	made->clips = 0;
	for (uint32_t i = 0; i < cases->of[KIND_zone].count; i++) {
		const Fact *area = fact_of(cases->of[KIND_zone].at[i], FACT_zone_effective_area);
		made->clips += area->state == FACT_KNOWN ? 100 / area->value / cases->of[KIND_zone].count : 0;
	}
}

/* Text of a copy, kept beyond it. */
static void keep_words(Construction *made, char words[][LONGEST_WORDS])
{
	for (uint32_t i = 0; i < made->zones; i++) {
		const char *pieces[] = { made->zone[i].zone, made->zone[i].binds != NULL ? made->zone[i].binds : "" };
		for (uint32_t j = 0; j < 2; j++) {
			size_t length = strnlen(pieces[j], LONGEST_WORDS - 1);
			memcpy(words[2 * i + j], pieces[j], length);
			words[2 * i + j][length] = '\0';
		}
	}
}

static void take_words(Arena *arena, Construction *made, char words[][LONGEST_WORDS])
{
	for (uint32_t i = 0; i < made->zones; i++) {
		made->zone[i].zone = arena_text(arena, words[2 * i], strlen(words[2 * i]));
		made->zone[i].binds = arena_text(arena, words[2 * i + 1], strlen(words[2 * i + 1]));
	}
}

/* The construction that comes nearest is told where none is offered: its words may lie in the copy. */
static void keep_nearest(Offering *offering, const Candidate *of, const Holding *holding)
{
	if (offering->nearest[0] != '\0' && holding->blocks >= offering->blocks)
		return;
	const Listing *class_listing = of->class_listing;
	int length = snprintf(offering->nearest, sizeof offering->nearest, "%s with %s and %s (%s%s%s) is held back by ",
		of->panel->item.text, of->clip->item.text, of->fastener->item.text,
		class_listing != NULL ? class_listing->listing.text : "", class_listing != NULL ? ", " : "",
		of->capacity_listing->listing.text);
	uint32_t codes = holding->blocks < MOST_CODES ? holding->blocks : holding->blocks == MOST_BLOCKS ? 1 : MOST_CODES;
	for (uint32_t i = 0; i < codes && length > 0 && (size_t)length < sizeof offering->nearest; i++)
		length += snprintf(offering->nearest + length, sizeof offering->nearest - (size_t)length, "%s%s", i > 0 ? ", " : "",
			holding->blocked_by[i]);
	if (holding->missing[0] != '\0' && length > 0 && (size_t)length < sizeof offering->nearest)
		snprintf(offering->nearest + length, sizeof offering->nearest - (size_t)length, "; state first of the support: %s",
			holding->missing);
	offering->blocks = holding->blocks;
}

void try_candidate(Offering *offering, const Candidate *of)
{
	Advising *advising = offering->advising;
	Arena *arena = advising->arena;
	ArenaMark mark = arena_mark(arena);
	Construction made = { .area = offering->area, .class_listing = of->class_listing, .capacity_listing = of->capacity_listing };
	char words[2 * MOST_OFFERED_ZONES][LONGEST_WORDS];
	Holding holding = { .blocks = MOST_BLOCKS };
	offering->offers->tries++;
	Cases *cases = resolve_copy(advising, copy_with(offering, of, closest_spacing(offering, of), 1));
	ZoneValue *widest = TAKE(arena, ZoneValue, MOST_OFFERED_ZONES);
	if (widest_spacings(cases, widest, &made, &holding.blocked_by[0])) {
		Cases *laid = resolve_copy(advising, copy_with(offering, of, widest, made.zones));
		holding.blocks = 0;
		judge_candidate(offering, laid, &holding);
		if (holding.blocks == 0)
			count_its_clips(laid, &made);
		const Fastener *fastener = laid->submittal->roof_areas.of.row[0].fasteners.of.row;
		made.per_clip = fastener->per_one.value;
	}
	keep_words(&made, words);
	if (holding.blocks > 0)
		keep_nearest(offering, of, &holding);
	arena_back(arena, mark);
	if (holding.blocks > 0)
		return;
	take_words(arena, &made, words);
	made.panel = of->panel->item.text;
	made.clip = of->clip->item.text;
	made.fastener = of->fastener->item.text;
	if (holding.to_state[0] != '\0')
		made.to_state = arena_text(arena, holding.to_state, strlen(holding.to_state));
	Offers *offers = offering->offers;
	offers->construction = arena_more(arena, offers->construction, offers->constructions, &offers->construction_room, sizeof made);
	offers->construction[offers->constructions++] = made;
}

bool is_held_back_by(Offering *offering, const Candidate *of, RecordKind kind)
{
	Arena *arena = offering->advising->arena;
	ArenaMark mark = arena_mark(arena);
	offering->offers->tries++;
	Cases *cases = resolve_copy(offering->advising, copy_with(offering, of, closest_spacing(offering, of), 1));
	bool held = is_held_by_part(offering, cases, kind);
	arena_back(arena, mark);
	return held;
}

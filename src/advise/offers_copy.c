/* SPDX-License-Identifier: MIT
 * The copy of a roof area with a candidate in it: tests, panel, running clip and clip screw in the place of the submitted ones.
 */
#include "offering.h"

#include "number.h"

#include <string.h>

static void set_test(AreaTest *test, const Listing *listing, const char *role)
{
	*test = (AreaTest){ .given.said = SAID_VALUE };
	test->listing = (Text){ { .typed = listing->listing.text, .said = SAID_VALUE }, listing->listing.text };
	set_word(&AreaTest_record, test, "for", role);
}

/* Local approvals, fire and water tests stay; class and capacity are the candidate's. */
static void put_tests(Arena *arena, RoofArea *area, const Candidate *of)
{
	const AreaTest *old = area->tests.of.row;
	AreaTest *test = TAKE(arena, AreaTest, area->tests.of.count + 2);
	uint32_t count = 0;
	set_test(&test[count++], of->capacity_listing, "capacity");
	if (of->class_listing != NULL)
		set_test(&test[count++], of->class_listing, "class");
	for (uint32_t i = 0; i < area->tests.of.count; i++)
		if (!is_word(&old[i].role, "class") && !is_word(&old[i].role, "capacity"))
			test[count++] = old[i];
	area->tests.of.row = test;
	area->tests.of.count = count;
	area->tests.of.given.said = SAID_VALUE;
}

/* The parts of another use stay behind the new one. */
static void *put_first(Arena *arena, List *list, const Record *record, const char *use)
{
	const Field *field = field_find(record, "use", 3);
	char *first = list_with_room(arena, list, record), *to = first + record->size;
	uint32_t kept = 1;
	const void *model = NULL;
	for (uint32_t i = 1; i < list->count; i++) {
		const char *from = first + i * record->size;
		if (is_word((const Word *)(const void *)given_in(field, from), use)) {
			model = model == NULL ? memcpy(arena_take(arena, 1, record->size), from, record->size) : model;
			continue;
		}
		memmove(to, from, record->size);
		to += record->size;
		kept++;
	}
	list->count = kept;
	memcpy(first, model != NULL ? model : part_made(arena, record), record->size);
	set_word(record, first, "use", use);
	return first;
}

static void put_spacing(Clip *clip, const ZoneValue *value, uint32_t count)
{
	clip->spacing_in = (ByZone){ { .typed = "as offered", .said = SAID_VALUE }, count, value };
}

static double least_spacing_in(const Criteria *criteria, const Listing *listing)
{
	double least = 0;
	for (uint32_t i = 0; i < criteria->listing_tests.count; i++) {
		const ListingTest *test = &criteria->listing_tests.row[i];
		if (strcmp(test->listing.text, listing->listing.text) == 0 && (least == 0 || test->clip_spacing_in.value < least))
			least = test->clip_spacing_in.value;
	}
	return least;
}

/* The number in each clip is the tested one, or the submitted one where it is greater. */
static void put_fastener(Arena *arena, RoofArea *area, const Candidate *of)
{
	Fastener *fastener = put_first(arena, &area->fasteners.list, &Fastener_record, "clip");
	const Fastener *tested = of->capacity_listing->tested.fasteners.of.row;
	place_item(&Fastener_record, fastener, of->fastener);
	if (is_value(&tested->per_one.given) && (!is_value(&fastener->per_one.given) || fastener->per_one.value < tested->per_one.value))
		fastener->per_one = (Number){ { .typed = number_shortest(arena, tested->per_one.value), .said = SAID_VALUE },
			tested->per_one.value };
}

/* Before a bid there is no letter yet, and nobody asked for the shape of the ground: what is taken for them is told. */
static void take_as_bid(Offering *offering, Copy *copy)
{
	Given *letters = &copy->submittal.engineering.of.given;
	Topography *ground = &copy->submittal.wind.topography;
	offering->offers->without_letter |= letters->said == SAID_NOTHING;
	if (letters->said == SAID_NOTHING)
		letters->said = SAID_NONE;
	if (ground->factor_one.given.said != SAID_NOTHING || ground->terrain.given.said != SAID_NOTHING)
		return;
	ground->given.said = SAID_VALUE;
	ground->factor_one = (Number){ { .typed = "1", .said = SAID_ASSUMED }, 1 };
	offering->offers->flat_ground = true;
}

Copy *copy_with(Offering *offering, const Candidate *of, const ZoneValue *spacing, uint32_t spacings)
{
	Arena *arena = offering->advising->arena;
	Copy *copy = copy_submittal(offering->advising, offering->number);
	RoofArea *area = copy->submittal.roof_areas.of.row;
	take_as_bid(offering, copy);
	place_item(&Panel_record, &area->panel, of->panel);
	area->panel.given.said = SAID_VALUE;
	put_tests(arena, area, of);
	Clip *clip = put_first(arena, &area->clips.list, &Clip_record, "running");
	place_item(&Clip_record, clip, of->clip);
	put_spacing(clip, spacing, spacings);
	put_fastener(arena, area, of);
	return copy;
}

ZoneValue *closest_spacing(Offering *offering, const Candidate *of)
{
	ZoneValue *spacing = TAKE(offering->advising->arena, ZoneValue, 1);
	*spacing = (ZoneValue){ { .typed = "as offered", .said = SAID_VALUE }, "",
		least_spacing_in(offering->advising->verdict->cases->criteria, of->capacity_listing) };
	return spacing;
}

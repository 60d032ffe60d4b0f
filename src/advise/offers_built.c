/* SPDX-License-Identifier: MIT
 * Constructions: each pair of a class and a capacity listing on the submitted support, with each panel and screw of the catalogue
 * that could be theirs, laid at the greatest spacing of each zone, and judged.
 *
 * Nothing here says what is allowed: a construction is offered if the judged copy finds nothing of NOT REVIEWED or worse that
 * rests on its panel, clip, screw, listings or zones. What only is not stated of them yet is told.
 */
#include "counting.h"
#include "offering.h"

#include "number.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { LONGEST_WORDS = 160, MOST_NAMED_FIELDS = 6, MOST_CODES = 6, MOST_BLOCKS = 1000 };

typedef struct {
	const Listing *class_listing, *capacity_listing;
	const Panel *panel;
	const Clip *clip;
	const Fastener *fastener;
} Candidate;

/* ---- the copy ---- */

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

static Copy *copy_with(Offering *offering, const Candidate *of, const ZoneValue *spacing, uint32_t spacings)
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

/* ---- whether it holds ---- */

typedef struct {
	uint32_t blocks; /* distinct codes that hold it back, or MOST_BLOCKS where a zone has no greatest spacing */
	const char *blocked_by[MOST_CODES]; /* the first codes, or that reason */
	char to_state[LONGEST_WORDS];
	uint32_t fields;
} Holding;

static bool is_part_of_it(const Case *at)
{
	switch (at->kind) {
	case KIND_panel:
	case KIND_zone:
	case KIND_test:
		return true;
	case KIND_clip:
		return is_word(&((const Clip *)at->row)->use, "running");
	case KIND_fastener:
		return is_word(&((const Fastener *)at->row)->use, "clip");
	case KIND_comparison: {
		const Case *part = ((const Compared *)at->row)->part;
		return part == NULL || is_part_of_it(part) || part->kind == KIND_layer || part->kind == KIND_support;
	}
	default:
		return false;
	}
}

/* Facts use facts as deep as facts.def goes. */
static bool rests_on_it(const Cases *all, const Fact *fact)
{
	for (uint32_t i = fact->first_use; i != 0; i = all->use[i - 1].next) {
		const Use *use = &all->use[i - 1];
		if (use->kind == USED_CONSTANT || use->at == NULL)
			continue;
		if (is_part_of_it(use->at))
			return true;
		if (use->kind == USED_FACT && rests_on_it(all, fact_of((Case *)use->at, use->what.fact)))
			return true;
	}
	return false;
}

/* A rule on the area as a whole speaks of the construction if its fact looked at it. */
static bool concerns_it(const Trouble *trouble)
{
	const Case *where = trouble->where;
	if (where == NULL)
		return false;
	if (is_part_of_it(where))
		return true;
	bool may_rest_on_it = where->kind == KIND_roof_area || where->kind == KIND_support; /* the support is as submitted */
	if (!may_rest_on_it || trouble->rule == NULL)
		return false;
	Tested tested = test_case((Case *)where, &trouble->rule->is);
	return tested.left.fact != NULL && rests_on_it(where->all, tested.left.fact);
}

/* "panel color", "SLP-01": what is still to be said, or waits for it. */
static void name_open(Holding *holding, const char *const *piece, size_t pieces)
{
	char words[LONGEST_WORDS / 2];
	size_t length = 0, used = strlen(holding->to_state);
	for (size_t i = 0; i < pieces; i++)
		for (const char *c = piece[i]; *c != '\0' && length + 1 < sizeof words; c++)
			words[length++] = *c == '_' ? ' ' : *c;
	words[length] = '\0';
	bool is_told = strstr(holding->to_state, words) != NULL;
	if (is_told || holding->fields++ >= MOST_NAMED_FIELDS || used + length + 3 >= LONGEST_WORDS)
		return;
	if (used > 0)
		memcpy(holding->to_state + used, ", ", 3);
	memcpy(holding->to_state + used + (used > 0 ? 2 : 0), words, length + 1);
}

static void name_field(Holding *holding, const Trouble *trouble)
{
	name_open(holding, (const char *const[]){ record_of(trouble->where->kind)->name, " ", trouble->field->key }, 3);
}

/* What only is not shown, and a rule that waits for what is not due yet, hold nothing back; that it was not judged is told. */
static bool only_waits(const Trouble *trouble)
{
	Tested blocking = { .outcome = TEST_MET };
	if (trouble->rule == NULL || trouble->where == NULL)
		return false;
	if (trouble->rule->action == ACTION_NOT_REVIEWED)
		return true;
	TestOutcome when = test_all(trouble->where, trouble->rule->when, trouble->rule->conditions, &blocking);
	return when == TEST_WAITS || (when == TEST_MET && test_case(trouble->where, &trouble->rule->is).outcome == TEST_WAITS);
}

static void hold_back(Holding *holding, const char *code)
{
	for (uint32_t i = 0; i < holding->blocks && i < MOST_CODES; i++)
		if (strcmp(holding->blocked_by[i], code) == 0)
			return;
	if (holding->blocks < MOST_CODES)
		holding->blocked_by[holding->blocks] = code;
	holding->blocks++;
}

static bool take_trouble(void *user, const Trouble *trouble)
{
	Holding *holding = user;
	if (!concerns_it(trouble))
		return true;
	RecordKind kind = trouble->where->kind;
	bool is_of_a_part = kind == KIND_panel || kind == KIND_clip || kind == KIND_fastener;
	if (trouble->rule == NULL && trouble->field != NULL && is_of_a_part)
		name_field(holding, trouble);
	else if (only_waits(trouble))
		name_open(holding, (const char *const[]){ trouble->code, " not judged yet" }, 2);
	else
		hold_back(holding, trouble->code != NULL ? trouble->code : "what is not stated");
	return true;
}

static void judge_it(Offering *offering, Cases *cases, Holding *holding)
{
	Trial trial = { .first = &cases->criteria->rule[0], .found = take_trouble, .user = holding };
	judge_trial(offering->advising->arena, cases, &trial);
}

/* ---- one candidate ---- */

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
	offering->blocks = holding->blocks;
}

static void try_candidate(Offering *offering, const Candidate *of)
{
	Advising *advising = offering->advising;
	Arena *arena = advising->arena;
	ArenaMark mark = arena_mark(arena);
	Construction made = { .area = offering->area, .class_listing = of->class_listing, .capacity_listing = of->capacity_listing };
	char words[2 * MOST_OFFERED_ZONES][LONGEST_WORDS];
	Holding holding = { .blocks = MOST_BLOCKS };
	ZoneValue *spacing = TAKE(arena, ZoneValue, MOST_OFFERED_ZONES);
	spacing[0] = (ZoneValue){ { .typed = "as offered", .said = SAID_VALUE }, "",
		least_spacing_in(advising->verdict->cases->criteria, of->capacity_listing) };
	offering->offers->tries++;
	Cases *cases = resolve_copy(advising, copy_with(offering, of, spacing, 1));
	ZoneValue *widest = TAKE(arena, ZoneValue, MOST_OFFERED_ZONES);
	if (widest_spacings(cases, widest, &made, &holding.blocked_by[0])) {
		Cases *laid = resolve_copy(advising, copy_with(offering, of, widest, made.zones));
		holding.blocks = 0;
		judge_it(offering, laid, &holding);
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

/* ---- candidates ---- */

static bool is_usable(const Offering *offering, const Listing *listing, const char *role)
{
	int32_t day = offering->area->all->as_of;
	bool in_force = is_word(&listing->status, "in force") && (!is_value(&listing->expires.given) || listing->expires.day >= day);
	const Word *kind = &((const RoofArea *)offering->area->row)->support.kind;
	bool has_parts = listing->tested.clips.of.count > 0 && listing->tested.fasteners.of.count > 0;
	return is_word(&listing->role, role) && in_force && has_parts &&
	       (!is_value(&kind->given) || is_word(&listing->substrate_tested, kind->text));
}

static bool is_same_text(const Text *a, const Text *b)
{
	return is_value(&a->given) && is_value(&b->given) && strcmp(a->text, b->text) == 0;
}

static bool is_same_word(const Word *a, const Word *b)
{
	return is_value(&a->given) && is_value(&b->given) && strcmp(a->text, b->text) == 0;
}

static void try_parts(Offering *offering, Candidate *of)
{
	const Criteria *criteria = offering->area->all->criteria;
	const RoofArea *tested = &of->capacity_listing->tested;
	const char *clip = tested->clips.of.row[0].item.text;
	of->clip = clip != NULL ? item_find(criteria, KIND_clip, clip) : NULL;
	for (uint32_t p = 0; of->clip != NULL && p < criteria->panels.count; p++) {
		of->panel = &criteria->panels.row[p];
		if (!is_same_text(&of->panel->profile, &tested->panel.profile) || !is_same_word(&of->panel->metal, &tested->panel.metal))
			continue;
		for (uint32_t f = 0; f < criteria->fasteners.count && may_offer(offering); f++) {
			of->fastener = &criteria->fasteners.row[f];
			if (is_same_word(&of->fastener->kind, &tested->fasteners.of.row[0].kind))
				try_candidate(offering, of);
		}
	}
}

static bool is_class_due(const Offering *offering)
{
	return !is_word(&offering->area->all->criteria->edition.class_due, "never");
}

static void try_capacity(Offering *offering, const Listing *capacity)
{
	const Criteria *criteria = offering->area->all->criteria;
	Candidate of = { .capacity_listing = capacity };
	if (!is_class_due(offering)) {
		try_parts(offering, &of);
		return;
	}
	for (uint32_t i = 0; i < criteria->listings.count; i++) {
		of.class_listing = &criteria->listings.row[i];
		if (is_usable(offering, of.class_listing, "class") &&
			is_same_text(&of.class_listing->tested.clips.of.row[0].item, &capacity->tested.clips.of.row[0].item))
			try_parts(offering, &of);
	}
}

static int by_clips(const void *a, const void *b)
{
	const Construction *x = a, *y = b;
	if (x->clips != y->clips)
		return x->clips < y->clips ? -1 : 1;
	int order = strcmp(x->panel, y->panel);
	order = order != 0 ? order : strcmp(x->fastener, y->fastener);
	order = order != 0 ? order : strcmp(x->capacity_listing->listing.text, y->capacity_listing->listing.text);
	if (order != 0 || x->class_listing == NULL || y->class_listing == NULL)
		return order;
	return strcmp(x->class_listing->listing.text, y->class_listing->listing.text);
}


static const char *why_none(Offering *offering, uint32_t tried)
{
	if (tried == 0)
		return "no capacity report in force, with a class listing for the same clip, was tested on this support";
	return arena_printf(offering->advising->arena, "%u that were tested on this support were tried; the nearest, %s", tried,
		offering->nearest);
}

void offer_constructions(Offering *offering)
{
	Offers *offers = offering->offers;
	const Criteria *criteria = offering->area->all->criteria;
	uint32_t first = offers->constructions, before = offers->tries;
	for (uint32_t i = 0; i < criteria->listings.count; i++)
		if (is_usable(offering, &criteria->listings.row[i], "capacity"))
			try_capacity(offering, &criteria->listings.row[i]);
	uint32_t made = offers->constructions - first;
	if (made > 0)
		qsort(offers->construction + first, made, sizeof *offers->construction, by_clips);
	else
		offers->none[offering->number - 1] = why_none(offering, offers->tries - before);
}

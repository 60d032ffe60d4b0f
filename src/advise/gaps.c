/* SPDX-License-Identifier: MIT
 * What an edition lacks: parts that were never tested, terms that no part lasts, rules that are silent for ever, papers about to
 * expire, wide steps between tested spacings. None of it is a fault: whoever keeps the criteria decides.
 */
#include "gaps.h"

#include "date.h"
#include "number.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

typedef struct {
	EditionCheck *check;
	Arena *arena;
	Gap *gap;
	uint32_t gaps, room;
} Gapping;

static void add_gap(Gapping *gapping, GapKind kind, const Given *row, const Gap *gap)
{
	gapping->gap = arena_more(gapping->arena, gapping->gap, gapping->gaps, &gapping->room, sizeof *gapping->gap);
	Gap *own = &gapping->gap[gapping->gaps++];
	*own = *gap;
	own->kind = kind;
	own->line = row->place.line;
}

static bool is_same(const char *a, const char *b)
{
	return a != NULL && b != NULL && strcasecmp(a, b) == 0;
}

/* ---- parts no listing uses ---- */

/* Whether "a; b; c" holds an entry. */
static bool is_one_of(const char *entries, const char *wanted)
{
	while (entries != NULL && *entries != '\0') {
		entries += strspn(entries, "; ");
		size_t length = strcspn(entries, ";"), plain = length;
		while (plain > 0 && entries[plain - 1] == ' ')
			plain--;
		if (plain == strlen(wanted) && strncasecmp(entries, wanted, plain) == 0)
			return true;
		entries += length;
	}
	return false;
}

/* A fire test may take any clip: what holds the roof down is a class or a capacity. */
static bool is_of_strength(const Listing *listing)
{
	return listing != NULL && (is_word(&listing->role, "class") || is_word(&listing->role, "capacity"));
}

static bool is_clip_listed(const Criteria *criteria, const char *item)
{
	for (uint32_t i = 0; i < criteria->listings.count; i++) {
		const RoofArea *tested = &criteria->listings.row[i].tested;
		for (uint32_t j = 0; j < tested->clips.of.count; j++)
			if (is_of_strength(&criteria->listings.row[i]) && is_same(tested->clips.of.row[j].item.text, item))
				return true;
	}
	for (uint32_t i = 0; i < criteria->listing_terms.count; i++) {
		const ListingTerm *term = &criteria->listing_terms.row[i];
		bool is_of_clip = is_same(term->attribute.text, "clip.item") && is_of_strength(listing_find(criteria, term->listing.text));
		if (is_of_clip && (is_same(term->relation.text, "any") || is_one_of(term->value.text, item)))
			return true;
	}
	return false;
}

static bool is_panel_listed(const Criteria *criteria, const Panel *panel)
{
	for (uint32_t i = 0; i < criteria->listings.count; i++) {
		const Panel *tested = &criteria->listings.row[i].tested.panel;
		bool profile = !is_value(&tested->profile.given) || is_same(tested->profile.text, panel->profile.text);
		bool variant = !is_value(&tested->variant.given) || is_same(tested->variant.text, panel->variant.text);
		if (profile && variant && is_of_strength(&criteria->listings.row[i]))
			return true;
	}
	return false;
}

static void find_unused(Gapping *gapping)
{
	const Criteria *criteria = gapping->check->criteria;
	for (uint32_t i = 0; i < criteria->panels.count; i++) {
		const Panel *panel = &criteria->panels.row[i];
		if (!is_panel_listed(criteria, panel))
			add_gap(gapping, GAP_UNUSED_PART, &panel->given, &(Gap){ .file = criteria->panels.source->name,
				.what = panel->item.text, .why = "no listing was tested with a panel of its profile and variant" });
	}
	for (uint32_t i = 0; i < criteria->clips.count; i++) {
		const Clip *clip = &criteria->clips.row[i];
		if (is_word(&clip->use, "running") && !is_clip_listed(criteria, clip->item.text))
			add_gap(gapping, GAP_UNUSED_PART, &clip->given, &(Gap){ .file = criteria->clips.source->name,
				.what = clip->item.text, .why = "no listing was tested with it, and none takes it" });
	}
}

/* ---- terms nothing lasts ---- */

/* The longest life stated for an item of a kind; -1 where none is. */
static double longest_life(const Criteria *criteria, RecordKind kind)
{
	double longest = -1;
	for (uint32_t i = 0; i < criteria->lives.count; i++) {
		const Life *life = &criteria->lives.row[i];
		if (life->service_life_yr.value > longest && item_find(criteria, kind, life->item.text) != NULL)
			longest = life->service_life_yr.value;
	}
	return longest;
}

static void find_unmet(Gapping *gapping)
{
	const Criteria *criteria = gapping->check->criteria;
	Arena *arena = gapping->arena;
	for (uint32_t i = 0; i < criteria->terms.count; i++)
		for (int kind = 0; kind < RECORD_KINDS; kind++) {
			const Term *term = &criteria->terms.row[i];
			const KindRow *row = is_part((RecordKind)kind) ? kind_find(criteria, (RecordKind)kind) : NULL;
			double longest = row != NULL && row->life_judged.yes && !row->renewable.yes ? longest_life(criteria, (RecordKind)kind) : 1e9;
			if (longest >= term->term_yr.value)
				continue;
			const char *why = longest < 0 ? arena_printf(arena, "no %s has a stated life", row->kind.text)
				: arena_printf(arena, "no %s lasts it; the longest lasts %s yr", row->kind.text, number_print(arena, longest, 0));
			add_gap(gapping, GAP_UNMET_TERM, &term->given, &(Gap){ .file = criteria->terms.source->name,
				.what = arena_printf(arena, "term of %s yr", number_print(arena, term->term_yr.value, 0)), .why = why });
		}
}

/* ---- rules ---- */

static void find_silent(Gapping *gapping)
{
	const Criteria *criteria = gapping->check->criteria;
	for (uint32_t i = 0; i < criteria->rules; i++) {
		const char *why = why_silent(criteria, &criteria->rule[i], gapping->arena);
		if (why != NULL)
			add_gap(gapping, GAP_SILENT_RULE, &criteria->rule_rows.row[i].given,
				&(Gap){ .file = criteria->rule_rows.source->name, .what = criteria->rule[i].code, .why = why });
	}
}

/* ---- what is about to expire ---- */

typedef struct {
	const Given *row;
	const Date *expires;
	const char *file, *what;
} Expiring;

static void look_at_expiry(Gapping *gapping, const Expiring *of)
{
	int32_t as_of = gapping->check->as_of;
	if (!is_value(&of->expires->given))
		return;
	int32_t day = of->expires->day;
	if (day < as_of || day > as_of + EXPIRY_DAYS)
		return;
	add_gap(gapping, GAP_EXPIRING, of->row, &(Gap){ .file = of->file, .what = of->what,
		.why = arena_printf(gapping->arena, "it is in force until %s, %d days from %s", date_print(gapping->arena, day),
			(int)(day - as_of), date_print(gapping->arena, as_of)) });
}

static void find_expiring(Gapping *gapping)
{
	const Criteria *criteria = gapping->check->criteria;
	const Registers *registers = gapping->check->registers;
	if (gapping->check->as_of == INT32_MIN)
		return;
	look_at_expiry(gapping, &(Expiring){ &criteria->edition.expires.given, &criteria->edition.expires, criteria->source[0]->name,
		criteria->edition.edition.text });
	for (uint32_t i = 0; i < criteria->listings.count; i++) {
		const Listing *listing = &criteria->listings.row[i];
		look_at_expiry(gapping, &(Expiring){ &listing->given, &listing->expires, criteria->listings.source->name,
			listing->listing.text });
	}
	for (uint32_t i = 0; registers != NULL && i < registers->approvals.count; i++) {
		const Approval *approval = &registers->approvals.row[i];
		look_at_expiry(gapping, &(Expiring){ &approval->given, &approval->expires, registers->approvals.source->name,
			arena_printf(gapping->arena, "%s of %s", approval->letter.text, approval->item.text) });
	}
}

/* ---- wide steps between tests ---- */

static int by_listing(const void *left, const void *right)
{
	const ListingTest *a = *(const ListingTest *const *)left, *b = *(const ListingTest *const *)right;
	int order = strcmp(a->listing.text, b->listing.text);
	if (order != 0)
		return order;
	return (a->clip_spacing_in.value > b->clip_spacing_in.value) - (a->clip_spacing_in.value < b->clip_spacing_in.value);
}

/* More than twice the spacing, and what lies between is interpolated over a long way. */
static void find_wide(Gapping *gapping)
{
	const Criteria *criteria = gapping->check->criteria;
	uint32_t count = criteria->listing_tests.count;
	const ListingTest **test = TAKE(gapping->arena, const ListingTest *, (size_t)count + 1);
	for (uint32_t i = 0; i < count; i++)
		test[i] = &criteria->listing_tests.row[i];
	if (count > 0)
		qsort((void *)test, count, sizeof *test, by_listing);
	for (uint32_t i = 1; i < count; i++) {
		double near = test[i - 1]->clip_spacing_in.value, far = test[i]->clip_spacing_in.value;
		if (strcmp(test[i - 1]->listing.text, test[i]->listing.text) != 0 || far <= 2 * near)
			continue;
		const char *why = arena_printf(gapping->arena, "nothing was tested between clips at %s in and at %s in",
			number_shortest(gapping->arena, near), number_shortest(gapping->arena, far));
		add_gap(gapping, GAP_WIDE_TESTS, &test[i]->given, &(Gap){ .file = criteria->listing_tests.source->name,
			.what = test[i]->listing.text, .why = why });
	}
}

void find_gaps(EditionCheck *check, Arena *arena)
{
	Gapping gapping = { .check = check, .arena = arena };
	find_unused(&gapping);
	find_unmet(&gapping);
	find_silent(&gapping);
	find_expiring(&gapping);
	find_wide(&gapping);
	check->gap = gapping.gap;
	check->gaps = gapping.gaps;
}

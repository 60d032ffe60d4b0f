/* SPDX-License-Identifier: MIT
 * Constructions of a roof area: each pair of a class and a capacity listing with each panel, clip and screw of the catalogue.
 *
 * Most of them need not be laid: a listing pair, or one part with it, that is held back by itself is so whatever stands by it.
 */
#include "offering.h"

#include <stdlib.h>
#include <string.h>

static bool is_usable(const Listing *listing, const char *role)
{
	return is_word(&listing->role, role) && listing->tested.clips.of.count > 0 && listing->tested.fasteners.of.count > 0;
}

/* ---- parts ---- */

static const void **part_of(Candidate *of, RecordKind kind)
{
	if (kind == KIND_panel)
		return (const void **)&of->panel;
	return kind == KIND_clip ? (const void **)&of->clip : (const void **)&of->fastener;
}

typedef struct {
	const void **row;
	uint32_t count;
} Kept;

/* The items of a kind that are not held back by themselves, beside whatever else stands in `of`. */
static Kept keep_items(Offering *offering, Candidate *of, RecordKind kind)
{
	Items items = items_of(offering->area->all->criteria, kind, false);
	Kept kept = { TAKE(offering->advising->arena, const void *, items.count + 1), 0 };
	Candidate trying = *of;
	for (uint32_t i = 0; i < items.count && may_offer(offering); i++) {
		const void *item = items.row + i * record_of(kind)->size;
		*part_of(&trying, kind) = item;
		if (!is_held_back_by(offering, &trying, kind))
			kept.row[kept.count++] = item;
	}
	return kept;
}

static void try_together(Offering *offering, Candidate *of, const Kept *clips, const Kept *fasteners)
{
	for (uint32_t c = 0; c < clips->count; c++)
		for (uint32_t f = 0; f < fasteners->count && may_offer(offering); f++) {
			of->clip = clips->row[c];
			of->fastener = fasteners->row[f];
			try_candidate(offering, of);
		}
}

static void try_pair(Offering *offering, Candidate *of)
{
	const Criteria *criteria = offering->area->all->criteria;
	of->panel = criteria->panels.row;
	of->clip = criteria->clips.row;
	of->fastener = criteria->fasteners.row;
	if (!may_offer(offering) || is_held_back_by(offering, of, RECORD_KINDS))
		return;
	offering->pairs++;
	Kept panels = keep_items(offering, of, KIND_panel);
	if (panels.count == 0)
		return;
	of->panel = panels.row[0];
	Kept clips = keep_items(offering, of, KIND_clip), fasteners = keep_items(offering, of, KIND_fastener);
	for (uint32_t p = 0; p < panels.count; p++) {
		of->panel = panels.row[p];
		try_together(offering, of, &clips, &fasteners);
	}
}

/* ---- listings ---- */

static void try_capacity(Offering *offering, const Listing *capacity, void (*try)(Offering *offering, Candidate *of))
{
	const Criteria *criteria = offering->area->all->criteria;
	Candidate of = { .capacity_listing = capacity };
	if (is_word(&criteria->edition.class_due, "never")) {
		try(offering, &of);
		return;
	}
	for (uint32_t i = 0; i < criteria->listings.count; i++) {
		of.class_listing = &criteria->listings.row[i];
		if (is_usable(of.class_listing, "class"))
			try(offering, &of);
	}
}

static void try_listings(Offering *offering, void (*try)(Offering *offering, Candidate *of))
{
	const Criteria *criteria = offering->area->all->criteria;
	bool has_parts = criteria->panels.count > 0 && criteria->clips.count > 0 && criteria->fasteners.count > 0;
	for (uint32_t i = 0; has_parts && i < criteria->listings.count; i++)
		if (is_usable(&criteria->listings.row[i], "capacity"))
			try_capacity(offering, &criteria->listings.row[i], try);
}

static int by_clips(const void *a, const void *b)
{
	const Construction *x = a, *y = b;
	if (x->clips != y->clips)
		return x->clips < y->clips ? -1 : 1;
	const char *of_x[] = { x->panel, x->clip, x->fastener, x->capacity_listing->listing.text,
		x->class_listing != NULL ? x->class_listing->listing.text : "" };
	const char *of_y[] = { y->panel, y->clip, y->fastener, y->capacity_listing->listing.text,
		y->class_listing != NULL ? y->class_listing->listing.text : "" };
	int order = 0;
	for (size_t i = 0; order == 0 && i < sizeof of_x / sizeof *of_x; i++)
		order = strcmp(of_x[i], of_y[i]);
	return order;
}

/* ---- where there is none ---- */

static bool is_same_text(const Text *a, const Text *b)
{
	return is_value(&a->given) && is_value(&b->given) && strcmp(a->text, b->text) == 0;
}

static bool is_same_word(const Word *a, const Word *b)
{
	return is_value(&a->given) && is_value(&b->given) && strcmp(a->text, b->text) == 0;
}

/* What comes nearest is sought among the panels and screws of the tested kind, with the tested clip. */
static void try_near(Offering *offering, Candidate *of)
{
	const Criteria *criteria = offering->area->all->criteria;
	const RoofArea *tested = &of->capacity_listing->tested;
	const Text *clip = &tested->clips.of.row[0].item;
	bool is_tested = of->class_listing == NULL || is_same_text(&of->class_listing->tested.clips.of.row[0].item, clip);
	of->clip = is_value(&clip->given) ? item_find(criteria, KIND_clip, clip->text) : NULL;
	of->panel = criteria->panels.row;
	of->fastener = criteria->fasteners.row;
	if (of->clip == NULL || !is_tested || is_held_back_by(offering, of, RECORD_KINDS))
		return;
	for (uint32_t p = 0; p < criteria->panels.count; p++) {
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

static const char *why_none(Offering *offering)
{
	if (offering->pairs > 0)
		try_listings(offering, try_near);
	if (offering->nearest[0] == '\0')
		return "no capacity report in force, with a class listing for the same clip, was tested on this support";
	return arena_printf(offering->advising->arena, "of those tested on this support, the nearest, %s", offering->nearest);
}

void offer_constructions(Offering *offering)
{
	Offers *offers = offering->offers;
	uint32_t first = offers->constructions;
	try_listings(offering, try_pair);
	uint32_t made = offers->constructions - first;
	if (made > 0)
		qsort(offers->construction + first, made, sizeof *offers->construction, by_clips);
	else
		offers->none[offering->number - 1] = why_none(offering);
}

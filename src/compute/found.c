/* SPDX-License-Identifier: MIT
 * What was found on the roof at close-out, against the parts submitted for each roof area. One pass over parts and findings when
 * the first question comes.
 */
#include "below.h"
#include "fetch.h"
#include "hash.h"
#include "parts.h"
#include "text.h"

#include <string.h>

/* What was found in one roof area. */
typedef struct {
	const Case **entry;
	uint32_t count, room;
} FoundHere;

typedef struct {
	Hash *part; /* folded area, a line break, folded item: the part submitted under it */
	Hash *area; /* folded area to FoundHere */
} Found;

static const char *key_of(Arena *arena, const char *area, const char *item)
{
	size_t length;
	const char *first = folded(arena, area, &length);
	return arena_printf(arena, "%s\n%s", first, folded(arena, item, &length));
}

static void put_part(const Found *found, Arena *arena, const Case *part)
{
	const Text *item = &((const Panel *)part->row)->item;
	const Case *area = area_of(part);
	const Text *name = area != NULL ? &((const RoofArea *)area->row)->name : NULL;
	if (name == NULL || !is_value(&name->given) || !is_value(&item->given))
		return;
	const char *key = key_of(arena, name->text, item->text);
	if (hash_get(found->part, key, strlen(key)) == NULL)
		hash_put(found->part, key, strlen(key), (void *)(uintptr_t)part);
}

static void put_entry(const Found *found, Arena *arena, const Case *entry)
{
	const Installed *row = entry->row;
	size_t length;
	if (!is_value(&row->area.given))
		return;
	const char *key = folded(arena, row->area.text, &length);
	FoundHere *here = hash_get(found->area, key, length);
	if (here == NULL) {
		here = TAKE(arena, FoundHere, 1);
		hash_put(found->area, key, length, here);
	}
	here->entry = arena_more(arena, here->entry, here->count, &here->room, sizeof *here->entry);
	here->entry[here->count++] = entry;
}

static const Found *found_of(const Case *at)
{
	void **kept = kept_found(at);
	if (*kept != NULL)
		return *kept;
	const Cases *all = at->all;
	Found *found = TAKE(all->arena, Found, 1);
	*kept = found;
	found->part = hash_make(all->arena, 64);
	found->area = hash_make(all->arena, all->of[KIND_roof_area].count);
	for (uint32_t kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; is_part(kind) && i < all->of[kind].count; i++)
			put_part(found, all->arena, all->of[kind].at[i]);
	for (uint32_t i = 0; i < all->of[KIND_installed].count; i++)
		put_entry(found, all->arena, all->of[KIND_installed].at[i]);
	return found;
}

/* The part of an item that is submitted for an area, or NULL. */
static const Case *part_called(const Case *at, const char *area, const char *item)
{
	const char *key = key_of(at->all->arena, area, item);
	return hash_get(found_of(at)->part, key, strlen(key));
}

/* ---- one part ---- */

double installed_area_known_yes(Case *installed)
{
	const char *area = GIVEN(installed, installed, Installed, area);
	fetch_list(installed, outward(installed, KIND_submittal), offsetof(Submittal, roof_areas));
	return ready(installed) && is_area_name(installed, area);
}

/* "clip-a-float is submitted there": the first part of the kind that the catalogue has the item under. */
static const char *submitted_instead(const Case *installed, const char *area, const char *item)
{
	const Cases *all = installed->all;
	const Case *at = area_called(installed, area);
	bool in_catalogue = false;
	for (RecordKind kind = 0; at != NULL && kind < RECORD_KINDS; kind++) {
		if (!is_part(kind) || item_find(all->criteria, kind, item) == NULL)
			continue;
		in_catalogue = true;
		const Case *part = first_below(at, kind);
		const Text *other = part != NULL ? &((const Panel *)part->row)->item : NULL;
		if (other != NULL && is_value(&other->given))
			return arena_printf(all->arena, "%s is submitted there", other->text);
	}
	return in_catalogue ? "no part of its kind is submitted there" : "the catalogue has no such item";
}

double installed_part_submitted_yes(Case *installed)
{
	const char *item = GIVEN(installed, installed, Installed, item), *area = GIVEN(installed, installed, Installed, area);
	fetch_list(installed, outward(installed, KIND_submittal), offsetof(Submittal, roof_areas));
	if (!ready(installed))
		return 0;
	if (part_called(installed, area, item) != NULL)
		return 1;
	note(installed, submitted_instead(installed, area, item));
	return 0;
}

/* ---- a roof area ---- */

static bool is_panel(const Case *area, const char *name, const char *item)
{
	const Case *part = part_called(area, name, item);
	return part != NULL ? part->kind == KIND_panel : item_find(area->all->criteria, KIND_panel, item) != NULL;
}

double roof_area_squares_found_square(Case *area)
{
	const char *name = GIVEN(area, roof_area, RoofArea, name);
	fetch_list(area, outward(area, KIND_submittal), offsetof(Submittal, installed));
	if (!ready(area))
		return 0;
	size_t length;
	const char *key = folded(area->all->arena, name, &length);
	const FoundHere *here = hash_get(found_of(area)->area, key, length);
	double squares = 0;
	for (uint32_t i = 0; here != NULL && i < here->count; i++) {
		const char *item = GIVEN_AT(area, here->entry[i], Installed, item);
		double laid = GIVEN_AT(area, here->entry[i], Installed, laid_square);
		squares += ready(area) && is_panel(area, name, item) ? laid : 0;
	}
	return squares;
}

double roof_area_squares_due_square(Case *area)
{
	double squares = OF(area, roof_area_squares_square);
	double tolerance = area->all->criteria->edition.quantity_tolerance_percent.value;
	CONSTANT(area, "criteria.yaml", "quantity_tolerance", tolerance, NULL);
	return ready(area) ? squares * (1 - tolerance / 100) : 0;
}

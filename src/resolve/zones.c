/* SPDX-License-Identifier: MIT
 * The zones of each roof area: those of its figure, with the clip spacing that holds there; without a figure, what the clips and
 * the engineer's letters name.
 *
 * Clips are spaced by places (field, perimeter, corner, ridge, ridge end, hip, interior) or by the zone's own name. A zone may
 * take in several places: the widest of their spacings counts in all of it, and the widest of all where one is not named. Words
 * that are no place of the figure lie in the field. Where two kinds of running clip name one place, the wider spacing is the
 * one judged. A spacing that is not stated makes the zones wait.
 */
#include "resolving.h"

#include <string.h>

/* A roof has no more zones than these, a file may name more: letters add so many to one area, and to all. */
enum { MOST_OF_LETTERS = 32, MOST_FROM_LETTERS = 4096 };

static const char all_zones[] = "all zones";

/* A place or zone that something names; `spacing` is the widest of the running clips. */
typedef struct Key Key;
struct Key {
	Key *next;
	const char *name;
	ZoneValue spacing;
	bool is_spaced, is_taken;
};

/* The keys of one roof area. */
typedef struct {
	Resolving *r;
	Case *area;
	Hash *by_name;
	Key *first, *last;
	const ZoneValue *widest; /* of all */
} Keys;

static Key *key_named(Keys *keys, const char *name)
{
	Key *key = hash_get(keys->by_name, name, strlen(name));
	if (key != NULL)
		return key;
	key = TAKE(keys->r->arena, Key, 1);
	key->name = name;
	hash_put(keys->by_name, name, strlen(name), key);
	if (keys->last != NULL)
		keys->last->next = key;
	else
		keys->first = key;
	keys->last = key;
	return key;
}

/* A value that cannot be read is worse than any that can. */
static const ZoneValue *wider(const ZoneValue *a, const ZoneValue *b)
{
	if (a == NULL || b == NULL)
		return a != NULL ? a : b;
	if (!is_value(&a->given))
		return a;
	return !is_value(&b->given) || b->value > a->value ? b : a;
}

static void put_spacing(Keys *keys, const ZoneValue *value)
{
	Key *key = key_named(keys, zone_words(keys->r->arena, value->zone));
	key->spacing = *wider(key->is_spaced ? &key->spacing : NULL, value);
	key->is_spaced = true;
}

static const ZoneValue *spacing_named(const Keys *keys, const char *name)
{
	const Key *key = hash_get(keys->by_name, name, strlen(name));
	return key != NULL && key->is_spaced ? &key->spacing : NULL;
}

/* ---- zone records ---- */

static Text made_text(const char *text, Place place)
{
	return (Text){ { place, text, text != NULL ? SAID_VALUE : SAID_NOTHING }, text };
}

static ZoneHere *zone_add(const Keys *keys, const char *name, const ZoneValue *spacing)
{
	ZoneHere *zone = TAKE(keys->r->arena, ZoneHere, 1);
	Place place = spacing->given.place;
	zone->record.given = (Given){ place, NULL, SAID_VALUE };
	zone->record.name = made_text(name, place);
	zone->record.spacing_in = (Number){ spacing->given, spacing->value };
	zone->record.figure.given.place = zone->record.places.given.place = zone->record.places_not_named.given.place = place;
	Case *at = case_add(keys->r, KIND_zone, keys->area, zone);
	at->listed = keys->area->listed;
	at->name = name_made(keys->r, keys->area, name);
	return zone;
}

/* ---- zones of a figure ---- */

static bool is_zone_of(const WindZone *zone, const WindFigure *figure)
{
	return strcmp(zone->standard.text, figure->standard.text) == 0 && strcmp(zone->figure.text, figure->figure.text) == 0 &&
		strcmp(zone->layout.text, figure->layout.text) == 0;
}

static void take(const Keys *keys, const char *name)
{
	Key *key = hash_get(keys->by_name, name, strlen(name));
	if (key != NULL)
		key->is_taken = true;
}

static void take_places(const Keys *keys, const WindZone *zone)
{
	take(keys, zone->zone.text);
	take(keys, all_zones);
	const char *joined = zone->places.text;
	for (const char *place = next_place(keys->r->arena, &joined); place != NULL; place = next_place(keys->r->arena, &joined))
		take(keys, place);
}

/* The widest spacing among the places of a zone; `*missing` is the places that nothing names, or NULL. */
static const ZoneValue *spacing_of_places(const Keys *keys, const WindZone *zone, const char **missing, bool *has_field)
{
	const ZoneValue *everywhere = spacing_named(keys, all_zones), *widest = everywhere;
	const char *joined = zone->places.text;
	Arena *arena = keys->r->arena;
	for (const char *place = next_place(arena, &joined); place != NULL; place = next_place(arena, &joined)) {
		const ZoneValue *spacing = spacing_named(keys, place);
		if (spacing == NULL && strcmp(place, "interior") == 0)
			spacing = spacing_named(keys, "field"); /* who names no interior lays it as the field, where the wind pulls more */
		widest = wider(widest, spacing);
		*has_field |= strcmp(place, "field") == 0;
		if (spacing == NULL && everywhere == NULL)
			*missing = *missing == NULL ? place : arena_printf(arena, "%s; %s", *missing, place);
	}
	return *missing != NULL ? keys->widest : widest;
}

static const ZoneValue *widest_not_taken(const Keys *keys)
{
	const ZoneValue *widest = NULL;
	for (const Key *key = keys->first; key != NULL; key = key->next)
		if (!key->is_taken && key->is_spaced)
			widest = wider(widest, &key->spacing);
	return widest;
}

static void add_figure_zone(const Keys *keys, const WindFigure *figure, const WindZone *zone)
{
	const char *missing = NULL;
	bool has_field = false;
	const ZoneValue *spacing = spacing_of_places(keys, zone, &missing, &has_field), *own = spacing_named(keys, zone->zone.text);
	if (own != NULL) {
		missing = NULL;
		spacing = wider(own, spacing_named(keys, all_zones));
	}
	if (has_field)
		spacing = wider(spacing, widest_not_taken(keys));
	ZoneHere *made = zone_add(keys, zone->zone.text, spacing);
	made->figure = figure;
	made->zone = zone;
	made->record.figure = made_text(figure->figure.text, made->record.given.place);
	made->record.places = made_text(zone->places.text, made->record.given.place);
	made->record.places_not_named = made_text(missing, made->record.given.place);
}

static void add_figure_zones(const Keys *keys, const WindFigure *figure)
{
	const Reference *reference = keys->r->all->reference;
	const WindZone *zone = reference->wind_zones.row;
	for (uint32_t i = 0; i < reference->wind_zones.count; i++)
		if (is_zone_of(&zone[i], figure))
			take_places(keys, &zone[i]);
	for (uint32_t i = 0; i < reference->wind_zones.count; i++)
		if (is_zone_of(&zone[i], figure) && !is_without_zone(keys->r, keys->area->row, figure, zone[i].zone.text))
			add_figure_zone(keys, figure, &zone[i]);
}

/* ---- zones without a figure ---- */

static void add_named_zones(const Keys *keys, const char *why)
{
	for (const Key *key = keys->first; key != NULL; key = key->next) {
		const ZoneValue *everywhere = spacing_named(keys, all_zones);
		const ZoneValue *spacing = key->is_spaced ? wider(&key->spacing, everywhere) : everywhere;
		ZoneHere *zone = zone_add(keys, key->name, spacing != NULL ? spacing : keys->widest);
		zone->why = why;
		if (spacing == NULL)
			zone->record.places_not_named = made_text(key->name, zone->record.given.place);
	}
}

/* ---- letters ---- */

typedef struct Lettered Lettered;
struct Lettered {
	const Letter *letter;
	Lettered *next;
};

typedef struct {
	Resolving *r;
	Hash *letters; /* of a roof area's name; made when the first area without a figure comes */
	uint32_t from_letters;
} Zoning;

static const char *area_key(Arena *arena, const char *name)
{
	return name != NULL ? zone_words(arena, name) : "";
}

static void gather_letters(Zoning *z)
{
	const Cases *all = z->r->all;
	z->letters = hash_make(z->r->arena, all->of[KIND_letter].count);
	for (uint32_t i = 0; i < all->of[KIND_letter].count; i++) {
		const Letter *letter = all->of[KIND_letter].at[i]->row;
		for (uint32_t n = 0; n < letter->areas.count; n++) {
			const char *key = area_key(z->r->arena, letter->areas.at[n].text);
			Lettered *lettered = TAKE(z->r->arena, Lettered, 1);
			*lettered = (Lettered){ letter, hash_get(z->letters, key, strlen(key)) };
			hash_put(z->letters, key, strlen(key), lettered);
		}
	}
}

/* A zone that only a letter names has clips as well: at a spacing that nobody stated for it. */
static void put_letter_keys(Zoning *z, Keys *keys)
{
	if (z->letters == NULL)
		gather_letters(z);
	const char *name = area_key(z->r->arena, ((const RoofArea *)keys->area->row)->name.text);
	uint32_t added = 0;
	for (const Lettered *at = hash_get(z->letters, name, strlen(name)); at != NULL; at = at->next) {
		const ByZone *pressures = &at->letter->pressures_psf;
		for (uint32_t i = 0; i < pressures->count; i++) {
			if (added++ >= MOST_OF_LETTERS || z->from_letters++ >= MOST_FROM_LETTERS)
				return;
			if (pressures->at[i].zone != NULL && pressures->at[i].zone[0] != '\0')
				key_named(keys, zone_words(z->r->arena, pressures->at[i].zone));
		}
	}
}

/* ---- all areas ---- */

static void finish_area(Zoning *z, Keys *keys)
{
	for (const Key *key = keys->first; key != NULL; key = key->next)
		keys->widest = wider(keys->widest, &key->spacing);
	if (keys->widest == NULL)
		return;
	const char *why;
	const WindFigure *figure = figure_of(z->r, keys->area->row, &why);
	if (figure != NULL) {
		add_figure_zones(keys, figure);
		return;
	}
	put_letter_keys(z, keys);
	add_named_zones(keys, why);
}

static void gather_clip(Keys *keys, Case *clip)
{
	const ByZone *spacing = &((const Clip *)clip->row)->spacing_in;
	const Field *field = field_find(&Clip_record, "spacing", strlen("spacing"));
	if (!is_value(&spacing->given))
		wait_for_list(keys->r, &(WaitingList){ KIND_zone, clip, field, &spacing->given });
	for (uint32_t i = 0; i < spacing->count; i++)
		put_spacing(keys, &spacing->at[i]);
}

void make_zones(Resolving *r)
{
	const Cases *all = r->all;
	Zoning zoning = { .r = r };
	Keys keys = { .r = r };
	for (uint32_t i = 0; i < all->of[KIND_clip].count; i++) {
		Case *clip = all->of[KIND_clip].at[i];
		if (!is_tested_use(KIND_clip, clip->row))
			continue;
		if (clip->up != keys.area) {
			if (keys.area != NULL)
				finish_area(&zoning, &keys);
			keys = (Keys){ .r = r, .area = clip->up, .by_name = hash_make(r->arena, 8) };
		}
		gather_clip(&keys, clip);
	}
	if (keys.area != NULL)
		finish_area(&zoning, &keys);
}

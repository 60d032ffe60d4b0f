/* SPDX-License-Identifier: MIT
 * The zones of each roof area, from the spacing keys of its running clips.
 *
 * A key is a zone of that name ("ridge_end" is "ridge end"); a single value is the zone "all zones". Where two kinds of running
 * clip name one zone, the wider spacing is the one judged. A spacing that is not stated makes the zones wait.
 */
#include "resolving.h"

#include <ctype.h>
#include <string.h>

/* "Ridge_End" as "ridge end". */
static const char *zone_name(Arena *arena, const char *key)
{
	if (key == NULL || key[0] == '\0')
		return "all zones";
	char *name = arena_text(arena, key, strlen(key));
	for (char *c = name; *c != '\0'; c++)
		*c = *c == '_' ? ' ' : (char)tolower((unsigned char)*c);
	return name;
}

static Zone *zone_of(Resolving *r, Hash *zones, Case *area, const ZoneValue *value)
{
	const char *name = zone_name(r->arena, value->zone);
	Zone *zone = hash_get(zones, name, strlen(name));
	if (zone != NULL)
		return zone;
	zone = TAKE(r->arena, Zone, 1);
	zone->given = (Given){ value->given.place, NULL, SAID_VALUE };
	zone->name = (Text){ { value->given.place, name, SAID_VALUE }, name };
	zone->spacing_in = (Number){ value->given, value->value };
	hash_put(zones, name, strlen(name), zone);
	Case *at = case_add(r, KIND_zone, area, zone);
	at->listed = area->listed;
	at->name = name_made(r, area, name);
	return zone;
}

/* A value that cannot be read is worse than any that can. */
static void keep_wider(Zone *zone, const ZoneValue *value)
{
	bool is_known = is_value(&zone->spacing_in.given);
	if (is_known && (!is_value(&value->given) || value->value > zone->spacing_in.value))
		zone->spacing_in = (Number){ value->given, value->value };
}

static const Field *spacing_field(void)
{
	return field_find(&Clip_record, "spacing", strlen("spacing"));
}

void make_zones(Resolving *r)
{
	Cases *all = r->all;
	Hash *zones = NULL;
	const Case *area = NULL;
	for (uint32_t i = 0; i < all->of[KIND_clip].count; i++) {
		Case *clip = all->of[KIND_clip].at[i];
		const ByZone *spacing = &((const Clip *)clip->row)->spacing_in;
		if (!is_tested_use(KIND_clip, clip->row))
			continue;
		if (clip->up != area)
			zones = hash_make(r->arena, spacing->count);
		area = clip->up;
		if (!is_value(&spacing->given))
			wait_for_list(r, &(WaitingList){ KIND_zone, clip, spacing_field(), &spacing->given });
		for (uint32_t z = 0; z < spacing->count; z++)
			keep_wider(zone_of(r, zones, clip->up, &spacing->at[z]), &spacing->at[z]);
	}
}

/* SPDX-License-Identifier: MIT
 * Values by zone, as letters and schedules write them: which of them hold in a zone of the figure.
 */
#include "by_zone.h"

#include "text.h"

#include <ctype.h>
#include <string.h>

/* How long "zone " stands before the name of a zone: a letter's "zone 2e" is 2e. */
static size_t zone_word(const char *key)
{
	static const char zone[] = "zone";
	return strncasecmp(key, zone, sizeof zone - 1) == 0 && (key[4] == ' ' || key[4] == '_') ? sizeof zone : 0;
}

/* "Ridge_end" and "zone 2e" of a letter against "ridge end" and "2e". */
static bool is_key(const char *key, const char *place, size_t length)
{
	size_t word = zone_word(place);
	key += zone_word(key);
	place += word;
	length -= word < length ? word : length;
	for (; length > 0 && *key != '\0'; key++, place++, length--)
		if (tolower((unsigned char)*key) != tolower((unsigned char)*place) && !(*key == '_' && *place == ' '))
			return false;
	return length == 0 && *key == '\0';
}

const ZoneValue *value_for(const ByZone *by_zone, const char *place, size_t length)
{
	for (uint32_t i = 0; i < by_zone->count; i++)
		if (is_key(by_zone->at[i].zone, place, length))
			return &by_zone->at[i];
	return NULL;
}

/* Letters that do not set the interior apart mean it by the field, where the wind pulls harder. */
static const ZoneValue *value_at(const ByZone *by_zone, const char *place, size_t length)
{
	static const char interior[] = "interior", field[] = "field";
	const ZoneValue *value = value_for(by_zone, place, length);
	bool is_interior = length == sizeof interior - 1 && strncmp(place, interior, length) == 0;
	return value == NULL && is_interior ? value_for(by_zone, field, sizeof field - 1) : value;
}

bool each_value(const ByZone *by_zone, const Zone *zone, void (*take)(void *user, const ZoneValue *), void *user)
{
	const ZoneValue *whole = value_for(by_zone, "", 0), *own = value_at(by_zone, zone->name.text, strlen(zone->name.text));
	if (whole != NULL || own != NULL) {
		take(user, own != NULL ? own : whole);
		return true;
	}
	bool all = is_value(&zone->places.given) || same_text(zone->name.text, "all zones");
	const char *place = is_value(&zone->places.given) ? zone->places.text : "";
	for (size_t length; *place != '\0'; place += length, place += strspn(place, "; ")) {
		length = strcspn(place, ";");
		const ZoneValue *value = value_at(by_zone, place, length);
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

bool names_zone(const ByZone *by_zone, const Zone *zone)
{
	return by_zone->count > 0 && by_zone->count <= MOST_VALUES && each_value(by_zone, zone, take_nothing, NULL);
}

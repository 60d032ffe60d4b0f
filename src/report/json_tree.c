/* SPDX-License-Identifier: MIT
 * Putting a JSON tree together: every call that runs out of memory ends the program, so that no value vanishes.
 */
#include "json_tree.h"

#include "fail.h"

#include <math.h>
#include <string.h>
#include <utf8proc.h>

json_t *json_made(json_t *value)
{
	if (value == NULL)
		fail("out of memory", NULL);
	return value;
}

static bool is_utf8(const char *text, size_t length)
{
	while (length > 0) {
		if ((unsigned char)*text < 0x80) {
			text++;
			length--;
			continue;
		}
		utf8proc_int32_t point;
		utf8proc_ssize_t taken = utf8proc_iterate((const utf8proc_uint8_t *)text, (utf8proc_ssize_t)length, &point);
		if (taken <= 0)
			return false;
		text += taken;
		length -= (size_t)taken;
	}
	return true;
}

/* File names may hold any byte; those beyond ASCII are shown by their number. */
static const char *shown_bytes(const char *text, size_t length, Arena *arena)
{
	static const char digit[] = "0123456789abcdef";
	char *shown = arena_take(arena, length * 4 + 1, 1), *end = shown;
	for (size_t i = 0; i < length; i++) {
		unsigned char byte = (unsigned char)text[i];
		if (byte < 0x80) {
			*end++ = (char)byte;
			continue;
		}
		*end++ = '\\';
		*end++ = 'x';
		*end++ = digit[byte >> 4];
		*end++ = digit[byte & 15];
	}
	return shown;
}

json_t *json_words(const char *text, Arena *arena)
{
	if (text == NULL)
		return json_made(json_null());
	size_t length = strlen(text);
	return json_made(json_string_nocheck(is_utf8(text, length) ? text : shown_bytes(text, length, arena)));
}

json_t *json_figure(double value)
{
	return json_made(isfinite(value) ? json_real(value) : json_null());
}

void json_put(json_t *object, const char *key, json_t *value)
{
	if (json_object_set_new(object, key, json_made(value)) != 0)
		fail("out of memory", NULL);
}

void json_add(json_t *array, json_t *value)
{
	if (json_array_append_new(array, json_made(value)) != 0)
		fail("out of memory", NULL);
}

/* ---- records ---- */

/* What stands in place of a value. */
static json_t *said_otherwise(const Given *given, Arena *arena)
{
	json_t *object;
	switch (given->said) {
	case SAID_NONE:
		return json_words("none", arena);
	case SAID_UNKNOWN:
		return json_words("unknown", arena);
	case SAID_BY_OTHERS:
		object = json_made(json_object());
		json_put(object, "by others", json_words(given->typed, arena));
		return object;
	case SAID_NOT_APPLICABLE:
		object = json_made(json_object());
		json_put(object, "not applicable", json_words(given->typed, arena));
		return object;
	default:
		return json_words(given->typed, arena);
	}
}

static json_t *zone_values(const ByZone *zones, Arena *arena)
{
	if (zones->count == 1 && zones->at[0].zone[0] == '\0')
		return json_words(zones->at[0].given.typed, arena);
	json_t *object = json_made(json_object());
	for (uint32_t i = 0; i < zones->count; i++) {
		json_t *value = json_words(zones->at[i].given.typed, arena);
		if (json_object_set_new_nocheck(object, zones->at[i].zone, value) != 0)
			fail("out of memory", NULL);
	}
	return object;
}

static json_t *text_values(const Texts *texts, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < texts->count; i++)
		json_add(array, json_words(texts->at[i].given.typed != NULL ? texts->at[i].given.typed : texts->at[i].text, arena));
	return array;
}

static json_t *list_values(const Field *field, const List *list, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < list->count; i++)
		json_add(array, json_record(field->record, (const char *)list->row + i * field->record->size, arena));
	return array;
}

static json_t *field_value(const Field *field, const void *row, Arena *arena)
{
	const Given *given = given_in(field, row);
	if (given->said == SAID_NOTHING || given->said == SAID_ASSUMED)
		return NULL;
	if (given->said != SAID_VALUE)
		return said_otherwise(given, arena);
	switch (field->kind) {
	case IS_ONE:
		return json_record(field->record, given, arena);
	case IS_LIST:
		return list_values(field, (const List *)(const void *)given, arena);
	case IS_TEXTS:
		return text_values((const Texts *)(const void *)given, arena);
	case IS_BY_ZONE:
		return zone_values((const ByZone *)(const void *)given, arena);
	default:
		return json_words(given->typed, arena);
	}
}

/* Calls itself as deep as the form's own table is, whatever the file holds. */
json_t *json_record(const Record *record, const void *row, Arena *arena)
{
	json_t *object = json_made(json_object());
	for (uint32_t i = 0; i < record->count; i++) {
		json_t *value = field_value(&record->field[i], row, arena);
		if (value != NULL)
			json_put(object, record->field[i].key, value);
	}
	return object;
}

/* SPDX-License-Identifier: MIT
 * Attributes by the field table: a new key of the form shows here by itself.
 */
#include "attributes.h"

#include "number.h"
#include "parts.h"

#include <string.h>

const Field *attribute_next(const Case *at, uint32_t *i)
{
	const Record *record = record_of(at->kind);
	while (at->row != NULL && *i < record->count) {
		const Field *field = &record->field[(*i)++];
		const Given *given = given_in(field, at->row);
		bool is_plain = field->kind != IS_ONE && field->kind != IS_LIST && field->kind != IS_TEXTS && field->kind != IS_BY_ZONE;
		if (is_plain && given->said == SAID_VALUE && given->typed != NULL && *given->typed != '\0')
			return field;
	}
	return NULL;
}

/* As typed; a bare number of a table, whose unit stands in the header, gets it here. */
static const char *value_of(const Field *field, const Given *given, Arena *arena)
{
	double number;
	const char *unit = field->kind == IS_NUMBER || field->kind == IS_SIZE ? unit_row(field->unit)->printed : "";
	if (*unit == '\0' || !number_read(given->typed, strlen(given->typed), &number))
		return given->typed;
	return arena_printf(arena, field->unit == UNIT_in_12 ? "%s%s" : "%s %s", given->typed, unit);
}

static const char *listed_value(const Case *at, const Field *field, Arena *arena)
{
	const Given *listed = at->listed != NULL && is_value(given_in(field, at->row)) ? given_in(field, at->listed) : NULL;
	return listed != NULL && is_value(listed) && listed->typed != NULL ? value_of(field, listed, arena) : NULL;
}

static bool is_part_row(const Case *at)
{
	return record_of(at->kind)->sort == RECORD_PART;
}

const char *attribute_text(const Case *at, const Field *field, Arena *arena)
{
	const char *own = value_of(field, given_in(field, at->row), arena);
	const char *listed = is_part_row(at) ? listed_value(at, field, arena) : NULL;
	const char *name = plain_words(field->key, arena);
	return listed != NULL && strcmp(listed, own) != 0 ? arena_printf(arena, "%s: %s (tested: %s)", name, own, listed)
		: arena_printf(arena, "%s: %s", name, own);
}

const char *attributes_text(const Case *at, Arena *arena)
{
	const char *text = "";
	uint32_t i = 0;
	for (const Field *field; (field = attribute_next(at, &i)) != NULL;) {
		if (field->kind == IS_NAME || field->stricter == OWN || strcmp(field->key, "item") == 0)
			continue;
		const char *own = value_of(field, given_in(field, at->row), arena);
		text = arena_printf(arena, "%s%s%s %s", text, *text != '\0' ? "; " : "", plain_words(field->key, arena), own);
	}
	return text;
}

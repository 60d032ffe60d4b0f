/* SPDX-License-Identifier: MIT
 * Values in words for the two sides of a comparison: as typed, with the unit where that stood elsewhere.
 */
#include "compare.h"
#include "number.h"

#include <string.h>

static const char *with_unit(Arena *arena, const char *number, Unit unit)
{
	const char *printed = unit_row(unit)->printed;
	const char *gap = printed[0] == '\0' || printed[0] == ':' ? "" : " ";
	size_t first = strlen(number), second = strlen(gap), third = strlen(printed);
	char *text = arena_take(arena, first + second + third + 1, 1);
	memcpy(text, number, first);
	memcpy(text + first, gap, second);
	memcpy(text + first + second, printed, third);
	return text;
}

static const char *plain_number(Arena *arena, double value, Unit unit)
{
	return with_unit(arena, number_print(arena, value, number_digits(&value, 1)), unit);
}

/* A bare number comes from a table whose header has the unit, which may be another than the field's. */
static const char *shown_number(const Resolving *r, const Field *field, const Number *number)
{
	const char *typed = number->given.typed;
	double read;
	if (typed == NULL)
		return plain_number(r->arena, number->value, field->unit);
	if (field->unit == UNIT_one || !number_read(typed, strlen(typed), &read))
		return typed;
	if (number_same(read, number->value))
		return with_unit(r->arena, typed, field->unit);
	return plain_number(r->arena, number->value, field->unit);
}

/* A size that came with a whole screw mark is shown without the rest of the mark. */
static const char *shown_size(const Resolving *r, const Number *size)
{
	const char *typed = size->given.typed;
	if (typed != NULL && screw_diameter(r->all->reference, typed) > 0)
		return typed;
	const char *known = screw_size(r->all->reference, size->value);
	return known != NULL ? known : typed != NULL ? typed : plain_number(r->arena, size->value, UNIT_in);
}

static const char *shown_zones(const Resolving *r, const Field *field, const ByZone *by_zone)
{
	enum { MOST_SHOWN = 8 };
	const char *shown = "";
	for (uint32_t i = 0; i < by_zone->count && i < MOST_SHOWN; i++) {
		const ZoneValue *value = &by_zone->at[i];
		const char *gap = value->zone[0] != '\0' ? " " : "", *comma = i > 0 ? ", " : "";
		const Number number = { value->given, value->value };
		shown = arena_printf(r->arena, "%s%s%s%s%s", shown, comma, value->zone, gap, shown_number(r, field, &number));
	}
	return by_zone->count > MOST_SHOWN ? arena_printf(r->arena, "%s, ...", shown) : shown;
}

static const char *shown_texts(const Resolving *r, const Texts *texts)
{
	enum { MOST_SHOWN = 8 };
	const char *shown = "";
	for (uint32_t i = 0; i < texts->count && i < MOST_SHOWN; i++)
		shown = arena_printf(r->arena, "%s%s%s", shown, i > 0 ? ", " : "", texts->at[i].text);
	return texts->count > MOST_SHOWN ? arena_printf(r->arena, "%s, ...", shown) : shown;
}

static const char *shown_words(const Resolving *r, const Field *field, const void *value)
{
	const Given *given = value;
	switch (field->kind) {
	case IS_NUMBER:
		return shown_number(r, field, value);
	case IS_SIZE:
		return shown_size(r, value);
	case IS_WORD:
		return ((const Word *)value)->text;
	case IS_NAME:
	case IS_TEXT:
	case IS_MARK:
		return ((const Text *)value)->text;
	case IS_YES:
		return ((const Yes *)value)->yes ? "yes" : "no";
	case IS_BY_ZONE:
		return shown_zones(r, field, value);
	case IS_TEXTS:
		return shown_texts(r, value);
	case IS_DATE:
	case IS_ONE:
	case IS_LIST:
		break;
	}
	return given->typed;
}

const char *shown_value(const Resolving *r, const Field *field, const void *row)
{
	const Given *given = given_in(field, row);
	if (is_value(given))
		return shown_words(r, field, given);
	if (given->said == SAID_NONE)
		return "none";
	bool is_answered = given->said == SAID_NOT_APPLICABLE || given->said == SAID_BY_OTHERS || given->said == SAID_UNKNOWN;
	if (!is_answered)
		return NULL;
	if (given->typed != NULL && strcmp(given->typed, "any") == 0)
		return "any";
	return given->said == SAID_NOT_APPLICABLE ? "not applicable" : given->said == SAID_UNKNOWN ? "unknown" : "by others";
}

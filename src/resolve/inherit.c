/* SPDX-License-Identifier: MIT
 * Values in force: what is written, else what the catalogue says (of a building: the submittal's), else what the form assumes.
 *
 * The reader has put the form's assumptions in already, so here the better source goes before them. A value that was called
 * unknown, or left to others, stays so. Each value keeps its place, which says whose it is.
 */
#include "resolving.h"

#include <string.h>

static size_t size_of_value(const Field *field)
{
	switch (field->kind) {
	case IS_NAME:
	case IS_TEXT:
	case IS_MARK:
		return sizeof(Text);
	case IS_TEXTS:
		return sizeof(Texts);
	case IS_WORD:
		return sizeof(Word);
	case IS_NUMBER:
	case IS_SIZE:
		return sizeof(Number);
	case IS_DATE:
		return sizeof(Date);
	case IS_YES:
		return sizeof(Yes);
	case IS_BY_ZONE:
		return sizeof(ByZone);
	case IS_ONE:
	case IS_LIST:
		break;
	}
	return 0;
}

static bool is_open(const Given *given)
{
	return given->said == SAID_NOTHING || given->said == SAID_ASSUMED;
}

/* `any` in a catalogue is an answer too: the attribute does not apply. So is `unknown` of the submittal's building: it waits.
 * What the form assumes of that building holds for a roof area that says nothing. */
static bool is_answer(const Given *given, const Given *own)
{
	return !is_open(given) || (given->said == SAID_ASSUMED && own->said == SAID_NOTHING);
}

/* Records inside parts and buildings hold no lists; a form that put one there would leave it as written. */
static void take_over_values(const Record *record, void *row, const void *from)
{
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		if (field->stricter == OWN || field->kind == IS_ONE || field->kind == IS_LIST)
			continue;
		if (is_open(given_at(field, row)) && is_answer(given_in(field, from), given_at(field, row)))
			memcpy((char *)row + field->offset, (const char *)from + field->offset, size_of_value(field));
	}
}

void take_over(const Record *record, void *row, const void *from)
{
	Given *own = row;
	take_over_values(record, row, from);
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		if (field->kind == IS_ONE) /* as deep as the form goes, whatever a file says */
			take_over(field->record, (char *)row + field->offset, (const char *)from + field->offset);
	}
	if (own->said == SAID_NOTHING && ((const Given *)from)->said == SAID_VALUE)
		own->said = SAID_VALUE;
}

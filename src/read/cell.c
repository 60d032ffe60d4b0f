/* SPDX-License-Identifier: MIT
 * How a cell ends: accepted, refused with one complaint, or as an answer that is no value.
 */
#include "filling.h"

#include <string.h>

const char *example_of(const Field *field, Arena *arena)
{
	const char *example = field->example != NULL && *field->example != '\0' ? field->example : "...";
	if (field->kind == IS_BY_ZONE) { /* "{field: 24 in, perimeter: 18 in}" */
		const char *value = strstr(example, ": ");
		if (value != NULL)
			return arena_text(arena, value + 2, strcspn(value + 2, ",}"));
	}
	return *example == '#' ? arena_printf(arena, "\"%s\"", example) : example;
}

void refuse_cell(Cell *cell, MessageId id, const char *want)
{
	cell->given->said = SAID_UNREADABLE;
	reading_complain(cell->reading, id, cell->given->place, (About){ .key = cell->key, .value = cell->given->typed, .want = want });
}

void refuse_cell_like(Cell *cell, MessageId id)
{
	refuse_cell(cell, id, example_of(cell->field, cell->reading->arena));
}

bool accept_cell(Cell *cell)
{
	cell->given->said = SAID_VALUE;
	return true;
}

void take_said(Cell *cell, Said said, const char *rest)
{
	bool is_mine = said != SAID_NOT_APPLICABLE || cell->field->may_not_apply;
	if (!is_mine)
		refuse_cell_like(cell, MESSAGE_FRM_25);
	else if (said != SAID_UNKNOWN && *rest == '\0')
		refuse_cell(cell, MESSAGE_FRM_26, said == SAID_BY_OTHERS ? "{by others: NAME}" : "{not applicable: REASON}");
	else {
		cell->given->said = said;
		if (said != SAID_UNKNOWN)
			cell->given->typed = rest;
	}
}

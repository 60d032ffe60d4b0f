/* SPDX-License-Identifier: MIT
 * Finds a value by its offset in a record, with its field, for rules and messages to name it by.
 */
#include "fetch.h"

#include <assert.h>

/* Offsets rise in the order of the fields, as both come from the same rows of form.def. */
static const Field *field_before(const Record *record, uint32_t offset)
{
	uint32_t low = 0, high = record->count;
	while (high - low > 1) {
		uint32_t middle = low + (high - low) / 2;
		if (record->field[middle].offset <= offset)
			low = middle;
		else
			high = middle;
	}
	return &record->field[low];
}

/* A record that was answered as a whole by `unknown`, `by others` or `not applicable`, or could not be read. */
static bool is_answered_whole(const Given *given)
{
	return !is_value(given) && given->said != SAID_NOTHING && given->said != SAID_NONE;
}

Asked ask(const Case *where, uint32_t offset)
{
	const Record *record = record_of(where->kind);
	const char *row = where->row;
	Asked whole = {where, NULL, NULL};
	for (;;) {
		const Field *field = field_before(record, offset);
		const Given *given = given_in(field, row);
		if (field->offset == offset || field->kind != IS_ONE) {
			assert(field->offset == offset);
			bool is_silent = given->said == SAID_NOTHING && whole.given != NULL;
			return is_silent ? whole : (Asked){where, field, given};
		}
		if (whole.given == NULL && is_answered_whole(given))
			whole = (Asked){where, field, given};
		record = field->record;
		row += field->offset;
		offset -= field->offset;
	}
}

const Case *outward(const Case *at, RecordKind kind)
{
	const Case *found = kind == RECORD_KINDS ? at : case_outward(at, kind);
	assert(found != NULL);
	return found;
}

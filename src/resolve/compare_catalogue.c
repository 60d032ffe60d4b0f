/* SPDX-License-Identifier: MIT
 * Comparisons with the catalogue: values written beside an item that are not those of the item.
 *
 * Only what differs is set down; a part that repeats its catalogue row has nothing to be judged.
 */
#include "compare.h"

static bool is_compared(const Field *field, const Case *part)
{
	bool is_apart = field->stricter == OWN || field->kind == IS_ONE || field->kind == IS_LIST || field->kind == IS_BY_ZONE;
	if (is_apart || field->kind == IS_NAME)
		return false;
	return given_in(field, part->submitted)->said == SAID_VALUE && given_in(field, part->catalogue)->said == SAID_VALUE;
}

static void compare_field(Resolving *r, const Case *part, const Field *field)
{
	Attribute exactly = { r->all->criteria, r->all->reference, part->kind, field, 0 };
	if (step_between(&exactly, part->submitted, part->catalogue) == STEP_SAME)
		return;
	Draft draft = { .part = part, .field = field, .with = WITH_CATALOGUE, .kind = part->kind, .may_go = MAY_SAME };
	draft.here_row = part->submitted;
	draft.there_row = part->catalogue;
	draft.paper = &r->all->criteria->edition.edition;
	draft.may = substitution_of(r, part->kind, field);
	Attribute attribute = attribute_of(r, &draft);
	draft.may = NULL; /* a catalogue is not met by a step up */
	draft.step = step_between(&attribute, part->submitted, part->catalogue);
	if (draft.step != STEP_SAME)
		compare_add(r, &draft);
}

static void compare_parts(Resolving *r, RecordKind kind)
{
	const Record *record = record_of(kind);
	for (uint32_t i = 0; i < r->all->of[kind].count; i++) {
		const Case *part = r->all->of[kind].at[i];
		if (part->catalogue == NULL)
			continue;
		for (uint32_t f = 0; f < record->count; f++)
			if (is_compared(&record->field[f], part))
				compare_field(r, part, &record->field[f]);
	}
}

void compare_catalogue(Resolving *r)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		if (record_of((RecordKind)kind)->sort == RECORD_PART)
			compare_parts(r, (RecordKind)kind);
}

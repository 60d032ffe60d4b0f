/* SPDX-License-Identifier: MIT
 * The two files that people write by hand: the submittal, and the reviewer's file beside it.
 */
#include "fill.h"
#include "filling.h"
#include "pipeline.h"

static void *read_form(const Record *record, Node *root, Place whole, Reading *reading)
{
	void *row = arena_take(reading->arena, 1, record->size);
	((Given *)row)->place = whole;
	if (root == NULL || (root->kind != NODE_MAP && root->fault != NODE_WHOLE))
		return row;
	if (root->kind != NODE_MAP) {
		complain(reading->complaints, MESSAGE_FRM_08, root->place, (About){ .value = root->kind == NODE_LIST ? "a list" : root->text });
		reading->complaints->broken = true;
		return row;
	}
	struct Standing here = { .map = root, .record = record };
	reading->standing = &here;
	fill_record(record, root, row, reading);
	return row;
}

Submittal *read_submittal(Arena *arena, Node *root, const Source *source, const Reference *reference, Complaints *complaints)
{
	Reading reading = { .arena = arena, .reference = reference, .complaints = complaints };
	return read_form(&Submittal_record, root, (Place){ .source = source->id }, &reading);
}

Review *read_review(Arena *arena, Node *root, const Source *source, const Reference *reference, Complaints *complaints)
{
	Reading reading = { .arena = arena, .reference = reference, .complaints = complaints };
	return read_form(&Review_record, root, (Place){ .source = source->id }, &reading);
}

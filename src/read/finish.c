/* SPDX-License-Identifier: MIT
 * What can be read only when a record is complete: a gauge needs the metal beside it, a screw mark fills size, threads, length
 * and point, and what nobody wrote is assumed where the form says so.
 */
#include "filling.h"
#include "gauge.h"
#include "number.h"
#include "screw_mark.h"

#include <math.h>
#include <string.h>

/* One thing that a mark says, for the key that says it alone. */
typedef struct {
	const char *key, *typed;
	double value, tolerance; /* in the key's unit; relative: lengths are rounded when they are converted */
} Part;

static Number *number_at(const Field *field, void *row)
{
	return (Number *)(void *)given_at(field, row);
}

static void refuse_part(const Field *field, const Part *part, const Given *mark, Number *beside, Reading *reading)
{
	beside->given.said = SAID_UNREADABLE;
	beside->value = 0;
	reading_complain(reading, MESSAGE_FRM_21, beside->given.place,
		(About){ .key = field->key, .value = beside->given.typed, .want = part->typed, .also = mark->place });
}

/* Fills the key, or holds what is written there against the mark. */
static void finish_part(const Record *record, const Part *part, const Given *mark, void *row, Reading *reading)
{
	const Field *field = field_find(record, part->key, strlen(part->key));
	if (field == NULL)
		return;
	Number *number = number_at(field, row);
	if (mark->said == SAID_UNREADABLE && number->given.said == SAID_NOTHING)
		number->given = (Given){ mark->place, mark->typed, SAID_UNREADABLE }; /* the mark has its message */
	else if (part->typed == NULL || mark->said != SAID_VALUE)
		return;
	else if (number->given.said == SAID_NOTHING) {
		read_value(field, part->typed, strlen(part->typed), mark->place, row, reading);
	} else if (is_value(&number->given) && fabs(number->value - part->value) > part->tolerance * part->value)
		refuse_part(field, part, mark, number, reading);
}

static void finish_mark(const Record *record, const Field *field, void *row, Reading *reading)
{
	const Text *text = (const Text *)(const void *)given_in(field, row);
	ScrewMark mark = { 0 };
	if (text->given.said == SAID_VALUE)
		read_screw_mark(text->text, strlen(text->text), reading, &mark);
	const Part part[] = { { "size", mark.size, mark.size_in, 0.005 }, { "threads", mark.threads, mark.threads_per_in, 1e-9 },
		{ "length", mark.length, mark.length_in, 0.02 }, { "point", mark.point, mark.point_number, 1e-9 } };
	/* A mark need not name the point; if it cannot be read, the others are what it would have said. */
	size_t count = text->given.said == SAID_VALUE ? 4 : 3;
	for (size_t i = 0; i < count; i++)
		finish_part(record, &part[i], &text->given, row, reading);
}

/* An absent ASSUMED key gets the conservative value of the form. A list assumed to be none is an answer. */
static void assume(const Field *field, void *row, Reading *reading)
{
	Given *given = given_at(field, row);
	Place place = ((const Given *)row)->place;
	if (read_value(field, field->assumed, strlen(field->assumed), place, row, reading) && given->said == SAID_VALUE)
		given->said = SAID_ASSUMED;
}

static bool is_waiting_gauge(const Field *field, void *row)
{
	return field->kind == IS_NUMBER && given_at(field, row)->said == SAID_UNREADABLE && number_at(field, row)->value > 0;
}

void finish_record(const Record *record, void *row, Reading *reading)
{
	bool assumes = !reading->table && (reading->standing == NULL || !reading->standing->overrides);
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		if (field->kind == IS_MARK && given_at(field, row)->said != SAID_NOTHING)
			finish_mark(record, field, row, reading);
		else if (is_waiting_gauge(field, row))
			finish_gauge(record, field, row, reading);
		else if (field->need == NEED_ASSUMED && assumes && given_at(field, row)->said == SAID_NOTHING)
			assume(field, row, reading);
	}
}

/* SPDX-License-Identifier: MIT
 * A gauge number is another thickness in each metal and use: sheet by its metal, steel deck and cold-formed framing by their own
 * tables. So it waits until the record is complete. Which table goes for what: reference table gauges, column `use`.
 */
#include "gauge.h"

#include "number.h"

#include <string.h>

/* What the word beside a gauge makes of it. */
static const struct {
	const char *word, *table, *called;
} tables[] = {
	{ "steel", "sheet", "steel sheet" },
	{ "stainless steel", "stainless", "stainless steel sheet" },
	{ "aluminum", "aluminum", "aluminum sheet" },
	{ "steel deck", "deck", "steel deck" },
	{ "purlin", "framing", "cold-formed framing" },
	{ "sub-purlin", "framing", "cold-formed framing" },
};

/* The field beside it that says what the gauge is a gauge of. */
static const Field *field_beside(const Record *record)
{
	static const char *const keys[] = { "metal", "support", "tested_metal" };
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		const Field *field = field_find(record, keys[i], strlen(keys[i]));
		if (field != NULL && field->kind == IS_WORD)
			return field;
	}
	return record == &Support_record ? field_find(record, "kind", 4) : NULL;
}

static void refuse(MessageId id, const Field *field, const char *want, void *row, Reading *reading)
{
	Number *number = (Number *)(void *)given_at(field, row);
	number->value = 0;
	reading_complain(reading, id, number->given.place, (About){ .key = field->key, .value = number->given.typed, .want = want });
}

static void convert(const Field *field, const char *word, void *row, Reading *reading)
{
	Number *number = (Number *)(void *)given_at(field, row);
	for (size_t i = 0; i < sizeof tables / sizeof *tables; i++) {
		if (strcmp(tables[i].word, word) != 0)
			continue;
		double inches = reading->reference != NULL ? gauge_thickness(reading->reference, tables[i].table, number->value) : 0;
		if (!(inches > 0)) {
			refuse(MESSAGE_FRM_23, field, tables[i].called, row, reading);
			return;
		}
		number->value = unit_convert(inches, UNIT_in, field->unit);
		number->given.said = SAID_VALUE;
		return;
	}
	refuse(MESSAGE_FRM_24, field, NULL, row, reading);
}

void finish_gauge(const Record *record, const Field *field, void *row, Reading *reading)
{
	const Field *beside = field_beside(record);
	if (beside == NULL) {
		refuse(MESSAGE_FRM_24, field, NULL, row, reading);
		return;
	}
	const Word *word = (const Word *)(const void *)given_in(beside, row);
	if (is_value(&word->given))
		convert(field, word->text, row, reading);
	else if (word->given.said != SAID_UNREADABLE)
		refuse(MESSAGE_FRM_22, field,
			arena_printf(reading->arena, "%s beside it, as in %s: %s", beside->key, beside->key, beside->example), row, reading);
	else { /* the message of the word stands for the gauge as well */
		Number *number = (Number *)(void *)given_at(field, row);
		number->value = 0;
		number->given.place = word->given.place;
	}
}

/* SPDX-License-Identifier: MIT
 * Records filled by hand: values as a reader would set them, without a file. Edition and reference of a few rows.
 */
#ifndef HAND_H
#define HAND_H

#include "check.h"

#include "hash.h"
#include "pipeline.h"

static inline Given said(const char *typed)
{
	return (Given){ .place = { .line = 1, .column = 1 }, .typed = typed, .said = SAID_VALUE };
}

static inline Text text(const char *value)
{
	return (Text){ said(value), value };
}

static inline Number number(const char *typed, double value)
{
	return (Number){ said(typed), value };
}

static inline Yes yes_or_no(bool yes)
{
	return (Yes){ said(yes ? "yes" : "no"), yes };
}

/* A word of a field of a record, as the reader gives it. */
static inline Word word(const Record *record, const char *key, const char *value)
{
	const Field *field = field_find(record, key, strlen(key));
	assert_non_null(field);
	int found = word_find(field->words, value, strlen(value));
	assert_true(found >= 0);
	return (Word){ said(value), value, (uint32_t)found };
}

static inline const Field *key_of(const Record *record, const char *key)
{
	const Field *field = field_find(record, key, strlen(key));
	assert_non_null(field);
	return field;
}

/* The row of a list of `count` records. */
#define HAND_LIST(rows, n) { .of = { .given = { .place = { .line = 1, .column = 1 }, .said = SAID_VALUE }, .count = (n), .row = (rows) } }
#define HAND_NONE { .of = { .given = { .place = { .line = 1, .column = 1 }, .typed = "none", .said = SAID_NONE } } }

#endif

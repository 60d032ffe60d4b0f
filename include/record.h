/* SPDX-License-Identifier: MIT
 * Record and Field: the rows of form.def as data. One field table drives structs, readers, missing items, rules and the docs.
 */
#ifndef RECORD_H
#define RECORD_H

#include "unit.h"
#include "value.h"

typedef enum { STAGE_bid, STAGE_application, STAGE_order, STAGE_close_out } Stage;

typedef enum {
	NEED_REQUIRED, /* absent from its stage on: one NOT REVIEWED item */
	NEED_STATED, /* a list: absent or empty is one NOT REVIEWED item; `none` is an answer */
	NEED_ASSUMED, /* absent means the conservative value of the row, printed under "Assumed" */
	NEED_OPTIONAL, /* no rule may use it except behind `is given` */
	NEED_MADE /* filled by resolve; nobody writes it */
} Need;

typedef enum {
	EITHER, /* no direction: any difference counts */
	UP, /* more is stricter */
	DOWN, /* less is stricter */
	OWN /* each paper's own value: never taken over from the catalogue, never compared with it */
} Stricter;

typedef enum {
	IS_NAME, IS_TEXT, IS_TEXTS, IS_WORD, IS_NUMBER, IS_SIZE, IS_DATE, IS_YES, IS_MARK, IS_BY_ZONE, IS_ONE, IS_LIST
} FieldKind;

typedef struct Record Record;

typedef struct {
	const char *key;
	const char *one; /* a list: the singular, by which rules and CSV headers call its records */
	FieldKind kind;
	Unit unit;
	uint32_t offset; /* of the value in the record */
	Need need;
	Stage due; /* first stage at which it is due */
	const char *assumed;
	bool may_not_apply; /* the form takes {not applicable: REASON} here */
	double low, high; /* a number's range, in `unit` */
	Stricter stricter;
	const Record *record; /* of ONE and LIST */
	const char *words; /* of WORD: the allowed words, "a|b|other spelling=a" */
	const char *title, *example;
} Field;

typedef enum { RECORD_PLAIN, RECORD_PART, RECORD_MADE } RecordSort;

struct Record {
	const char *name; /* "roof_area" */
	RecordSort sort;
	uint8_t kind; /* RecordKind of form.h */
	const Field *field;
	uint32_t count;
	size_t size;
};

/* The field of a key among `count`, or NULL. */
const Field *field_find(const Record *record, const char *key, size_t length);

/* The value of a field in a row; every value begins with Given. */
static inline Given *given_at(const Field *field, void *row)
{
	return (Given *)(void *)((char *)row + field->offset);
}
static inline const Given *given_in(const Field *field, const void *row)
{
	return (const Given *)(const void *)((const char *)row + field->offset);
}

/* The number (from 0) of a word among "a|b|spelling=a", or -1; and the US spelling of word `number`. */
int word_find(const char *words, const char *text, size_t length);
const char *word_text(const char *words, int number, size_t *length);

#endif

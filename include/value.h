/* SPDX-License-Identifier: MIT
 * The kinds of value a field can hold. Each begins with Given: how it was said, where, and as typed.
 */
#ifndef VALUE_H
#define VALUE_H

#include "source.h"

/* Only SAID_VALUE and SAID_ASSUMED are read as values. */
typedef enum {
	SAID_NOTHING,
	SAID_VALUE,
	SAID_ASSUMED, /* the conservative value of the form, printed under "Assumed" */
	SAID_NONE, /* a list: `none` was written */
	SAID_UNKNOWN,
	SAID_BY_OTHERS, /* typed: who */
	SAID_NOT_APPLICABLE, /* typed: why */
	SAID_UNREADABLE /* a reader's message stands for it already */
} Said;

typedef struct {
	Place place;
	const char *typed; /* as written; NULL if nothing was */
	Said said;
} Given;

typedef struct {
	Given given;
	const char *text;
} Text;

typedef struct {
	Given given;
	const char *text; /* one of the field's words, in US spelling */
	uint32_t word; /* its number among the field's words, from 0 */
} Word;

typedef struct {
	Given given;
	double value; /* the unit is in the member's name; a screw size is its diameter in inches */
} Number;

typedef struct {
	Given given;
	int32_t day; /* days since 1970-01-01 */
} Date;

typedef struct {
	Given given;
	bool yes;
} Yes;

typedef struct {
	Given given;
	uint32_t count;
	const Text *at;
} Texts;

typedef struct {
	Given given;
	const char *zone; /* "" stands for all zones */
	double value;
} ZoneValue;

typedef struct {
	Given given;
	uint32_t count;
	const ZoneValue *at;
} ByZone;

/* A list of records; form.h lays a typed row over it. SAID_VALUE: records, SAID_NONE: `none`, else waiting. */
typedef struct {
	Given given;
	uint32_t count;
	void *row;
} List;

static inline bool is_value(const Given *given)
{
	return given->said == SAID_VALUE || given->said == SAID_ASSUMED;
}

#endif

/* SPDX-License-Identifier: MIT
 * Names in rules, bound: a path from the record outwards, with `listed.`, `catalogue.` or `criteria.` before it.
 */
#ifndef NAMES_H
#define NAMES_H

#include "criteria.h"
#include "facts.h"
#include "table.h"

/* A part of a cell's text. */
typedef struct {
	const char *text;
	size_t length;
	Place cell;
	size_t at; /* bytes of the cell's text before it */
} Span;

/* The rows of one list of lists.csv: the first, and from each to the next. */
#define LIST_END UINT32_MAX
typedef struct {
	uint32_t first, last;
} ListRows;
typedef struct {
	Hash *by_name, *checked;
	uint32_t *next;
	const char *names; /* for messages */
	bool whole;        /* a list that is not there is nowhere */
} Lists;

typedef struct {
	const Loading *loading;
	const Criteria *criteria;
	const Lists *lists;
	const Source *source; /* of the cells */
	RecordKind for_each;  /* RECORD_KINDS: every kind of part */
} Binding;

typedef enum { NAME_FOUND, NAME_UNKNOWN, NAME_IN_LIST, NAME_BY_ZONE } NameResult;

/* Looks a name up, quietly. NAME_IN_LIST: `operand->field` is the list in the way. */
NameResult name_find(const Binding *binding, Span name, Operand *operand);

/* Looks a name up and complains if there is none. */
bool name_bind(const Binding *binding, Span name, Operand *operand);

/* The place of a span in its file. */
Place span_place(const Binding *binding, Span span);

/* The record a rule may be written for: "part" is RECORD_KINDS; false if the word is none. Blanks and underscores are alike. */
bool for_each_find(const char *words, RecordKind *kind);

/* The words a rule's record may be called by, with commas between. */
const char *for_each_words(Arena *arena);

/* The kind of part a word names; false if it is none. */
bool part_find(const char *word, size_t length, RecordKind *kind);

/* The same for what may fill a role: a part or a detail. */
bool filler_find(const char *word, size_t length, RecordKind *kind);

/* Fills the value an operand gives from its field. */
void operand_of_field(Operand *operand, const Field *field);

#endif

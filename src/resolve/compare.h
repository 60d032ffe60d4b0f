/* SPDX-License-Identifier: MIT
 * Draft: a comparison to be made; what its kinds of paper have in common is filled in by compare.c.
 */
#ifndef COMPARE_H
#define COMPARE_H

#include "resolving.h"
#include "step.h"

/* In the order of papers_of_comparison and of directions; a unit test compares them. */
typedef enum { WITH_LISTING, WITH_CATALOGUE, WITH_SPECIFICATION } With;
typedef enum { MAY_UP, MAY_DOWN, MAY_SAME, MAY_ANY, MAY_WITHIN } MayGo;

typedef struct {
	const Case *part, *test, *requirement; /* as in Compared */
	const BoundSubstitution *may;
	const BoundTerm *term;
	const Field *field;
	const void *here_row, *there_row;
	const Word *role; /* of the test; NULL: none */
	const Text *paper; /* NULL: none */
	With with;
	RecordKind kind; /* of part */
	MayGo may_go;
	Step step;
	const char *attribute; /* NULL: the key of the field, in words */
	const char *here, *there; /* the sides in words; NULL: as typed in their rows */
} Draft;

/* A comparison below the roof area of its part; nothing but a wait beyond MOST_COMPARISONS. */
void compare_add(Resolving *r, const Draft *draft);

/* What the edition says of an attribute, or NULL. */
const BoundSubstitution *substitution_of(const Resolving *r, RecordKind kind, const Field *field);

/* The attribute of a draft, with the tolerance of its row of the edition if it has one. */
Attribute attribute_of(const Resolving *r, const Draft *draft);

MayGo may_go_of(const BoundSubstitution *may);

/* A value as typed, with its unit if that stood in a table's header; NULL if there is none. */
const char *shown_value(const Resolving *r, const Field *field, const void *row);

#endif

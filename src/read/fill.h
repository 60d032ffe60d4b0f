/* SPDX-License-Identifier: MIT
 * Texts and nodes to records by the rows of form.def. The form, the tables of criteria and the limits of rules all read through
 * here, so that `24 ga` or `1/2 in 12` means the same wherever it stands.
 */
#ifndef FILL_H
#define FILL_H

#include "complaint.h"
#include "node.h"
#include "quantity.h"

/* Where a node stands in its file, for complaints; fill.c keeps it. */
struct Standing;

/* What reading a value needs beside its text. Zero is a valid start except for `arena`. */
typedef struct Reading {
	Arena *arena;
	const Reference *reference; /* screw sizes and gauges; NULL while the reference itself is read */
	Complaints *complaints; /* NULL: quiet, only the result tells */
	const char *where; /* the record being read, for people; may be NULL */
	Unit bare; /* unit of a number written without one: that of a column's header; UNIT_one (0): a bare number is refused */
	bool table; /* a cell of a CSV table: `any` is SAID_NOT_APPLICABLE; no `unknown`, no `by others`; nothing is assumed */
	const struct Standing *standing;
} Reading;

/* Reads one scalar into its value in `row` and complains if it cannot; true: it is a value (or waits as below).
 * An empty text is SAID_NOTHING with its place, and false. `unknown`, `by others: NAME`, `not applicable: REASON` are read, and
 * are false. A LIST takes `none` only. A gauge (`24 ga`) waits until finish_record, as it needs the metal beside it:
 * until then the value is SAID_UNREADABLE, and what is returned is true. `text` need not end in NUL; what is kept is copied. */
bool read_value(const Field *field, const char *text, size_t length, Place place, void *row, Reading *reading);

/* To be called once when all values of one record are set (for each record inside, too): gauges become thicknesses, a screw mark
 * fills size, threads, length and point or must agree with them, absent ASSUMED values are set (not in a table). */
void finish_record(const Record *record, void *row, Reading *reading);

/* Fills a whole record, and all inside, from a map; finishes them. Always gives a usable row. */
void fill_record(const Record *record, Node *map, void *row, Reading *reading);

/* Complains with `reading->where` or, in a file of nodes, with where the record stands; nothing if quiet. */
void reading_complain(Reading *reading, MessageId id, Place place, About about);

#endif

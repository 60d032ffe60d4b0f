/* SPDX-License-Identifier: MIT
 * Parts: the small pieces that several formats print alike. Texts are made in the arena given.
 */
#ifndef REPORT_PARTS_H
#define REPORT_PARTS_H

#include "out.h"
#include "verdict.h"

enum { PAGE_WIDTH = 100 };

/* "1.03"; NULL at stage bid, which numbers nothing. */
const char *item_number(const Finding *item, Arena *arena);

/* The action an item counts under; CLOSED where the reviewer closed it. */
const char *item_heading(const Finding *item);

/* The record an item was found at, at one of its places, and the sheet it names: "Main roof / RTU-1 (A5, detail 3)". */
const char *item_where(const Finding *item, const Spot *spot, Arena *arena);

/* All the places an item was found at, with file and line where `verdict` is given. */
const char *item_places(const Finding *item, const Verdict *verdict, Arena *arena);

/* The name of a record within its roof area. */
const char *name_within(const Case *at, const Case *area);

/* a, b, ..., z, aa, ab, ... */
const char *place_letter(uint32_t number, Arena *arena);

const char *known_by_words(KnownBy known_by);
const char *item_state_words(ItemState state);
const char *stage_words(Stage stage);

/* An identifier of the tables in words: roof_area is "roof area". */
const char *plain_words(const char *name, Arena *arena);

/* A basis in words: document, place and how well known for each id of the table of sources, all else as it is. */
const char *basis_text(const Reference *reference, const char *basis, Arena *arena);

/* How a value was said: as typed, "unknown", "by others: NAME", "none", "not stated". */
const char *said_text(const Given *given, Arena *arena);

/* The name of the file a place stands in, its line and its column; a place in no line is the file's first character. */
const char *place_file(const Verdict *verdict, const Place *place);
uint32_t place_line(const Place *place);
uint32_t place_column(const Place *place);

/* "610 mm" for a value in "in"; NULL for a unit that has no other in SI. */
const char *si_text(double value, const char *unit, Arena *arena);

/* How many items stand between the package and approval: NOT REVIEWED or worse. */
uint32_t items_in_the_way(const Verdict *verdict);

/* "nothing found against it", "not cleared (1.04)", "depends on 1.03"; at stage bid with the code. */
const char *clearance_text(const PartLine *part, Arena *arena);

/* The number of an item, at stage bid its code; "an open item" for NULL. */
const char *item_called(const Finding *item, Arena *arena);

/* A label of the program in a column of its own, and a text wrapped beside it. */
typedef struct {
	int indent, width;
} LabelColumn;
void put_label(Out *out, LabelColumn column, const char *label, const char *text);

/* As much of a text as fits into `room` columns: a name from a file may be as long as a page. */
void put_cut(Out *out, const char *text, int room);

/* "file:line:column:" */
void put_place(Out *out, const char *file, const Place *place);

#endif

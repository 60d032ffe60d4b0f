/* SPDX-License-Identifier: MIT
 * Order: a list of purchases as it was read, and how it stands against what was submitted. Reports take it const.
 */
#ifndef ORDER_H
#define ORDER_H

#include "earlier.h"
#include "takeoff.h"

/* How a line counts. */
typedef enum { BY_NOTHING, BY_PIECE, BY_PACKAGE, BY_FOOT, BY_SQUARE_FOOT, BY_POUND } OrderUnit;

typedef struct {
	Place place, words_place, quantity_place; /* place: of the part's code, else of its words */
	const char *code, *words, *supplier; /* NULL: blank, or there is no such column */
	double quantity; /* a return is negative */
	OrderUnit unit;
	const char *unit_words; /* as written; NULL: not said */
	const char *package; /* "box"; NULL: not by the package */
	double content; /* what one package holds, if the line says so; else 0 */
	bool is_dated;
	int32_t day;
} OrderLine;

typedef struct OrderList {
	const Source *source;
	OrderLine *line;
	uint32_t lines, room;
	uint32_t before, sums, heads; /* rows above the header, rows of totals, heads said again: not read as lines */
	bool has_supplier, has_date;
	const char *left_out; /* the columns that were not read, joined by commas; NULL: none */
} OrderList;

typedef enum {
	ORDER_UNKNOWN, ORDER_AMBIGUOUS, ORDER_LOOKS_LIKE, ORDER_STEPPED_DOWN, ORDER_WRONG_PART, ORDER_UNIT, ORDER_SUPPLIER,
	ORDER_APPROVAL, ORDER_CHANGED, ORDER_REPORT, ORDER_COIL, ORDER_MISSING, ORDER_SHORT, ORDER_LONG, ORDER_FAULTS
} OrderFault;

/* What an order is held against. */
typedef struct {
	const Verdict *submitted; /* of the file */
	const Verdict *approved; /* of the package in the report given as approved; NULL: none was given */
	const Earlier *report;
} OrderBasis;

/* Something against the order. */
typedef struct {
	OrderFault fault;
	const OrderLine *line; /* NULL: of the order as a whole */
	const char *item; /* or NULL */
	const char *finding, *remedy;
} OrderFinding;

/* A line, and what it was held against. */
typedef struct {
	const OrderLine *line;
	const char *item; /* of the catalogue or the submittal; NULL: not told */
	bool counted;
	double amount; /* in `unit`, where it was counted */
	const char *unit;
	const PartLine *clearance; /* of the part in the submittal; NULL: not told which, or not submitted */
	const char *against; /* "against the submitted, not approved, assembly" */
	uint32_t findings;
} OrderedLine;

/* All that was ordered of an item of the takeoff. */
typedef struct {
	const Total *total;
	double ordered, least, most;
	double laid, feet; /* of panels: pieces as laid and how long they are together; 0: not counted */
	uint32_t lines, uncounted; /* uncounted: lines that may be of it, and are not in the sum */
	const char *why; /* not compared; NULL: compared */
	uint32_t found; /* number + 1 of the finding that it is missing, short or over; 0: it is none of these */
} OrderedItem;

typedef struct Order {
	const Verdict *verdict; /* of the package it is held against: approved, else submitted */
	OrderBasis basis;
	const char *against; /* "against the takeoff of the submitted assembly" */
	const Takeoff *takeoff;
	const OrderList *list;
	OrderedLine *line; /* one for each of the list */
	OrderedItem *item; /* one for each total of the takeoff */
	OrderFinding *finding;
	uint32_t findings, room;
} Order;

#endif

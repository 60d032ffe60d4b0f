/* SPDX-License-Identifier: MIT
 * Reading a list of purchases: its columns by the words of their heads, its quantities and units.
 */
#ifndef READ_ORDER_READ_H
#define READ_ORDER_READ_H

#include "csv.h"
#include "order.h"

typedef enum { ORDER_CODE, ORDER_WORDS, ORDER_QUANTITY, ORDER_UNITS, ORDER_FROM, ORDER_DATE, ORDER_COLUMNS } OrderColumn;

typedef struct {
	int at[ORDER_COLUMNS]; /* number of the cell; -1: there is no such column */
	uint32_t cells;
	const char *const *head; /* of each cell; NULL: blank */
	const char *unit; /* that the head of the quantity says: "Qty (boxes)"; NULL: none */
	bool may_be_number; /* the column of the part may hold the running number of the line */
} OrderHeader;

/* Whether a row is the header: it names a column for the part and one for the quantity. */
bool is_order_header(const Cell *cell, uint32_t cells);

/* Binds the columns; false if two of them may be the same, or one says more than its name, which has been said. */
bool order_header_bind(OrderHeader *header, const Cell *cell, uint32_t cells, Complaints *complaints);

/* Whether a row says the heads again, as sheets printed on several pages do. */
bool is_order_header_again(const OrderHeader *header, const Cell *cell, uint32_t cells, Arena *arena);

/* The columns that are not read, joined by commas; NULL: all are. */
const char *order_left_out(const OrderHeader *header, const Cell *cell, Arena *arena);

/* The text of a cell without blanks around it, also those that do not break a line; NULL if nothing is left. */
const char *order_cell_text(const Cell *cell, Arena *arena);

typedef struct {
	const Cell *quantity, *unit; /* unit: NULL if there is no such column */
	const Cell *behind; /* a cell of words right behind the quantity; NULL: there is none */
	const char *head_unit; /* NULL: the head says none */
	char separator; /* of the file */
	Complaints *complaints;
} QuantityCells;

/* Whether a text is a unit. */
bool is_order_unit(const char *text);

/* Reads the quantity and the unit of a line; false if one cannot be read, which has been said. */
bool order_quantity_read(OrderLine *line, const QuantityCells *cells);

#endif

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
} OrderHeader;

/* Whether a row is the header: it names a column for the part and one for the quantity. */
bool is_order_header(const Cell *cell, uint32_t cells);

/* Binds the columns; false if two of them may be the same, which has been said. */
bool order_header_bind(OrderHeader *header, const Cell *cell, uint32_t cells, Complaints *complaints);

/* The columns that are not read, joined by commas; NULL: all are. */
const char *order_left_out(const OrderHeader *header, const Cell *cell, Arena *arena);

/* The text of a cell without blanks around it, also those that do not break a line; NULL if nothing is left. */
const char *order_cell_text(const Cell *cell, Arena *arena);

typedef struct {
	const Cell *quantity, *unit; /* unit: NULL if there is no such column */
	char separator; /* of the file */
	Complaints *complaints;
} QuantityCells;

/* Reads the quantity and the unit of a line; false if one cannot be read, which has been said. */
bool order_quantity_read(OrderLine *line, const QuantityCells *cells);

#endif

/* SPDX-License-Identifier: MIT
 * An order held against a submittal as a table for spreadsheets: one row for each thing against it, then one for each line that
 * nothing is against.
 */
#include "order_page.h"

#include "cells.h"
#include "parts.h"

/* A line, something against it, or both; NULL: not so. */
typedef struct {
	const OrderedLine *held;
	const OrderFinding *found;
} Row;

static void put_row(Cells *cells, const Order *order, Row row, Arena *arena)
{
	const OrderedLine *held = row.held;
	const OrderFinding *found = row.found;
	const OrderLine *line = held != NULL ? held->line : NULL;
	cell_number(cells, line != NULL ? arena_printf(arena, "%u", place_line(&line->place)) : NULL);
	cell(cells, line != NULL ? line->code : NULL);
	cell(cells, line != NULL ? line->words : NULL);
	cell(cells, found != NULL ? found->item : held->item);
	cell(cells, line != NULL ? order_quantity_text(line, arena) : NULL);
	cell(cells, found != NULL ? order_fault_words(found->fault) : "nothing");
	cell(cells, found != NULL ? found->finding : NULL);
	cell(cells, found != NULL ? found->remedy : NULL);
	cell(cells, held != NULL ? held->against : order->against);
	cell(cells, held != NULL ? order_clearance_text(held, arena) : NULL);
	row_end(cells);
}

void write_order_csv(Out *out, const Page *page, Arena *arena)
{
	const Order *order = page->order;
	Cells cells = { .out = out };
	SAY(out, "line,code,description,item,quantity,against it,finding,remedy,held,clearance\r\n");
	for (uint32_t i = 0; i < order->findings; i++) {
		const OrderLine *line = order->finding[i].line;
		put_row(&cells, order, (Row){ line != NULL ? &order->line[line - order->list->line] : NULL, &order->finding[i] }, arena);
	}
	for (uint32_t i = 0; i < order->list->lines; i++)
		if (order->line[i].findings == 0)
			put_row(&cells, order, (Row){ &order->line[i], NULL }, arena);
}

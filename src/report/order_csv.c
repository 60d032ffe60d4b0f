/* SPDX-License-Identifier: MIT
 * An order held against a submittal as a table for spreadsheets: one row for each thing against it, then one for each line that
 * nothing is against.
 */
#include "order_page.h"

#include "parts.h"

static void put_cell(Out *out, const char *text)
{
	SAY(out, "\"");
	put(out, text != NULL ? text : "");
	SAY(out, "\",");
}

/* A line, something against it, or both; NULL: not so. */
typedef struct {
	const OrderedLine *held;
	const OrderFinding *found;
} Row;

static void put_row(Out *out, const Order *order, Row row, Arena *arena)
{
	const OrderedLine *held = row.held;
	const OrderFinding *found = row.found;
	const OrderLine *line = held != NULL ? held->line : NULL;
	put_cell(out, line != NULL ? arena_printf(arena, "%u", place_line(&line->place)) : NULL);
	put_cell(out, line != NULL ? line->code : NULL);
	put_cell(out, line != NULL ? line->words : NULL);
	put_cell(out, found != NULL ? found->item : held->item);
	put_cell(out, line != NULL ? order_quantity_text(line, arena) : NULL);
	put_cell(out, found != NULL ? order_fault_words(found->fault) : "nothing");
	put_cell(out, found != NULL ? found->finding : NULL);
	put_cell(out, found != NULL ? found->remedy : NULL);
	put_cell(out, held != NULL ? held->against : order->against);
	SAY(out, "\"");
	put(out, held != NULL ? order_clearance_text(held, arena) : "");
	SAY(out, "\"\r\n");
}

void write_order_csv(Out *out, const Page *page, Arena *arena)
{
	const Order *order = page->order;
	SAY(out, "line,code,description,item,quantity,against it,finding,remedy,held,clearance\r\n");
	for (uint32_t i = 0; i < order->findings; i++) {
		const OrderLine *line = order->finding[i].line;
		put_row(out, order, (Row){ line != NULL ? &order->line[line - order->list->line] : NULL, &order->finding[i] }, arena);
	}
	for (uint32_t i = 0; i < order->list->lines; i++)
		if (order->line[i].findings == 0)
			put_row(out, order, (Row){ &order->line[i], NULL }, arena);
}

/* SPDX-License-Identifier: MIT
 * An order held against a submittal as a table for spreadsheets: one line for each thing against it.
 */
#include "order_page.h"

#include "parts.h"

static void put_cell(Out *out, const char *text)
{
	SAY(out, "\"");
	put(out, text != NULL ? text : "");
	SAY(out, "\",");
}

static void put_row(Out *out, const Order *order, const OrderFinding *found, Arena *arena)
{
	const OrderLine *line = found->line;
	const OrderedLine *held = line != NULL ? &order->line[line - order->list->line] : NULL;
	put_cell(out, line != NULL ? arena_printf(arena, "%u", place_line(&line->place)) : NULL);
	put_cell(out, line != NULL ? line->code : NULL);
	put_cell(out, line != NULL ? line->words : NULL);
	put_cell(out, found->item);
	put_cell(out, line != NULL ? order_quantity_text(line, arena) : NULL);
	put_cell(out, order_fault_words(found->fault));
	put_cell(out, found->finding);
	put_cell(out, found->remedy);
	SAY(out, "\"");
	put(out, held != NULL ? held->against : "against the takeoff of the submitted assembly");
	SAY(out, "\"\r\n");
}

void write_order_csv(Out *out, const Page *page, Arena *arena)
{
	SAY(out, "line,code,description,item,quantity,against it,finding,remedy,held\r\n");
	for (uint32_t i = 0; i < page->order->findings; i++)
		put_row(out, page->order, &page->order->finding[i], arena);
}

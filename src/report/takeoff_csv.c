/* SPDX-License-Identifier: MIT
 * The takeoff as a table for spreadsheets: one line a quantity; what was not counted has its reason in the last column.
 */
#include "takeoff_page.h"

#include "cells.h"
#include "number.h"

static void put_figure(Cells *row, const Amount *amount, double value, Arena *arena)
{
	cell_number(row, amount->state == COUNTED ? amount_text(value, arena) : NULL);
}

static void put_row(Cells *row, const Takeoff *takeoff, const Amount *amount, Arena *arena)
{
	const Text *number = &takeoff->verdict->cases->submittal->submittal;
	cell(row, is_value(&number->given) ? number->text : NULL);
	cell(row, amount->area->name);
	cell(row, amount->kind);
	cell(row, amount->item);
	cell(row, amount->where);
	cell(row, count_state_words(amount->state));
	put_figure(row, amount, amount->exact, arena);
	put_figure(row, amount, amount->laid, arena);
	put_figure(row, amount, amount->needed, arena);
	cell(row, amount->state == COUNTED ? amount->unit : NULL);
	cell(row, amount->sold_in);
	cell(row, amount->state == COUNTED ? amount->how : amount->why);
	row_end(row);
}

/* Spreadsheets have no place for cautions but a line. */
void write_takeoff_csv(Out *out, const Page *page, Arena *arena)
{
	SAY(out, "submittal,area,kind,item,where,state,by plan,as laid,needed,unit,sold in,how\r\n");
	Cells row = { .out = out };
	for (uint32_t i = 0; i < page->takeoff->amounts; i++)
		put_row(&row, page->takeoff, &page->takeoff->amount[i], arena);
}

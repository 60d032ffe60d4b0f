/* SPDX-License-Identifier: MIT
 * The takeoff as a table for spreadsheets: one line a quantity; what was not counted has its reason in the last column.
 */
#include "takeoff_page.h"

#include "number.h"

static void put_cell(Out *out, const char *text)
{
	SAY(out, ",\"");
	put(out, text != NULL ? text : "");
	SAY(out, "\"");
}

static void put_figure(Out *out, const Amount *amount, double value, Arena *arena)
{
	SAY(out, ",");
	if (amount->state == COUNTED)
		put(out, amount_text(value, arena));
}

static void put_row(Out *out, const Takeoff *takeoff, const Amount *amount, Arena *arena)
{
	const Text *number = &takeoff->verdict->cases->submittal->submittal;
	SAY(out, "\"");
	put(out, is_value(&number->given) ? number->text : "");
	SAY(out, "\"");
	put_cell(out, amount->area->name);
	put_cell(out, amount->kind);
	put_cell(out, amount->item);
	put_cell(out, amount->where);
	put_cell(out, count_state_words(amount->state));
	put_figure(out, amount, amount->exact, arena);
	put_figure(out, amount, amount->laid, arena);
	put_figure(out, amount, amount->needed, arena);
	put_cell(out, amount->state == COUNTED ? amount->unit : NULL);
	put_cell(out, amount->sold_in);
	put_cell(out, amount->state == COUNTED ? amount->how : amount->why);
	SAY(out, "\r\n");
}

/* Spreadsheets have no place for cautions but a line. */
void write_takeoff_csv(Out *out, const Page *page, Arena *arena)
{
	SAY(out, "submittal,area,kind,item,where,state,by plan,as laid,needed,unit,sold in,how\r\n");
	for (uint32_t i = 0; i < page->takeoff->amounts; i++)
		put_row(out, page->takeoff, &page->takeoff->amount[i], arena);
}

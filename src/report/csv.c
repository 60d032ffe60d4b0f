/* SPDX-License-Identifier: MIT
 * The items as a table for spreadsheets: one line a place of an item, so that it can be sorted and filtered. Round and item stand
 * in columns of their own, as a spreadsheet would turn 1.10 into 1.1.
 */
#include "formats.h"
#include "parts.h"
#include "places.h"

#include <inttypes.h>

static void put_cell(Out *out, const char *text)
{
	SAY(out, ",\"");
	put(out, text != NULL ? text : "");
	SAY(out, "\"");
}

static void put_number(Out *out, uint32_t value)
{
	SAY(out, ",");
	if (value > 0)
		put_count(out, value);
}

static void put_submittal(Out *out, const Verdict *verdict)
{
	SAY(out, "\"");
	put(out, submittal_number(verdict));
	SAY(out, "\"");
}

static void put_place_cells(Out *out, const Verdict *verdict, const Finding *item, uint32_t number, Arena *arena)
{
	const Spot *spot = &item->spot[number];
	put_cell(out, item->spots > 1 ? place_letter(number, arena) : "");
	put_cell(out, item_state_words(spot->state));
	put_cell(out, item_heading(item));
	put_cell(out, item->code);
	put_cell(out, plain_words(spot->where != NULL ? record_of(spot->where->kind)->name : item->record != NULL ? item->record : "",
		arena));
	put_cell(out, item_where(item, spot, arena));
	put_cell(out, place_file(verdict, &spot->place));
	put_number(out, place_line(&spot->place));
	put_number(out, place_column(&spot->place));
}

static void put_row(Out *out, const Verdict *verdict, const Finding *item, uint32_t number, Arena *arena)
{
	const Spot *spot = &item->spot[number];
	put_submittal(out, verdict);
	put_number(out, item->item > 0 ? item->round : 0);
	put_number(out, item->item);
	put_place_cells(out, verdict, item, number, arena);
	put_cell(out, item->finding);
	put_cell(out, item->submitted.text);
	put_cell(out, item->limit.text);
	put_cell(out, authority_words(item->authority));
	put_cell(out, item->cites);
	put_cell(out, item->basis);
	put_cell(out, known_by_words(item->known_by));
	put_cell(out, item->remedy);
	put_cell(out, item->answer_by);
	put_cell(out, item->disposition);
	put_cell(out, arena_printf(arena, "%016" PRIx64, spot->fingerprint));
	SAY(out, "\r\n");
}

/* What the list had no room for is said in a line of its own, all of whose other cells are empty. */
static void put_left_out(Out *out, const Verdict *verdict, Arena *arena)
{
	put_submittal(out, verdict);
	SAY(out, ",,,,,\"NOT REVIEWED\",,,");
	put_cell(out, verdict->source->name);
	SAY(out, ",,");
	put_cell(out, arena_printf(arena, "%u more items are not listed", verdict->left_out));
	SAY(out, ",,,,,,,,,,\r\n");
}

void write_csv(Out *out, const Verdict *verdict, Arena *arena)
{
	for (uint32_t i = 0; i < verdict->items; i++)
		for (uint32_t j = 0; j < verdict->item[i].spots; j++)
			put_row(out, verdict, &verdict->item[i], j, arena);
	if (verdict->left_out > 0)
		put_left_out(out, verdict, arena);
}

static void begin_csv(Out *out, Arena *arena)
{
	(void)arena;
	SAY(out, "submittal,round,item,place,state,action,code,record,where,file,line,column,finding,submitted,allowed,authority,cites,"
		"basis,known by,remedy,answer by,reviewer,fingerprint\r\n");
}

const ReportDocument csv_document = { .begin = begin_csv, .between = "", .end = NULL };

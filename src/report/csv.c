/* SPDX-License-Identifier: MIT
 * The items as a table for spreadsheets: one line a place of an item, so that it can be sorted and filtered. Round and item stand
 * in columns of their own, as a spreadsheet would turn 1.10 into 1.1.
 */
#include "cells.h"
#include "formats.h"
#include "parts.h"
#include "places.h"

#include <inttypes.h>

/* 0 stands for none. */
static void put_number(Cells *row, uint32_t value, Arena *arena)
{
	cell_number(row, value > 0 ? arena_printf(arena, "%u", value) : NULL);
}

static void put_place_cells(Cells *row, const Verdict *verdict, const Finding *item, uint32_t number, Arena *arena)
{
	const Spot *spot = &item->spot[number];
	cell(row, item->spots > 1 ? place_letter(number, arena) : "");
	cell(row, item_state_words(spot->state));
	cell(row, item_heading(item));
	cell(row, item->code);
	cell(row, plain_words(spot->where != NULL ? record_of(spot->where->kind)->name : item->record != NULL ? item->record : "",
		arena));
	cell(row, item_where(item, spot, arena));
	cell(row, place_file(verdict, &spot->place));
	put_number(row, place_line(&spot->place), arena);
	put_number(row, place_column(&spot->place), arena);
}

static void put_row(Cells *row, const Verdict *verdict, const Finding *item, uint32_t number, Arena *arena)
{
	const Spot *spot = &item->spot[number];
	cell(row, submittal_number(verdict));
	put_number(row, item->item > 0 ? item->round : 0, arena);
	put_number(row, item->item, arena);
	put_place_cells(row, verdict, item, number, arena);
	cell(row, item->finding);
	cell(row, item->submitted.text);
	cell(row, item->limit.text);
	cell(row, authority_words(item->authority));
	cell(row, item->cites);
	cell(row, item->basis);
	cell(row, known_by_words(item->known_by));
	cell(row, item->remedy);
	cell(row, item->answer_by);
	cell(row, item->disposition);
	cell(row, arena_printf(arena, "%016" PRIx64, spot->fingerprint));
	row_end(row);
}

static void put_blanks(Cells *row, int count)
{
	while (count-- > 0)
		cell_number(row, NULL);
}

/* What the list had no room for is said in a line of its own, all of whose other cells are empty. */
static void put_left_out(Cells *row, const Verdict *verdict, Arena *arena)
{
	cell(row, submittal_number(verdict));
	put_blanks(row, 4);
	cell(row, action_words(ACTION_NOT_REVIEWED));
	put_blanks(row, 3);
	cell(row, verdict->source->name);
	put_blanks(row, 2);
	cell(row, arena_printf(arena, "%u more items are not listed", verdict->left_out));
	put_blanks(row, 10);
	row_end(row);
}

void write_csv(Out *out, const Verdict *verdict, Arena *arena)
{
	Cells row = { .out = out };
	for (uint32_t i = 0; i < verdict->items; i++)
		for (uint32_t j = 0; j < verdict->item[i].spots; j++)
			put_row(&row, verdict, &verdict->item[i], j, arena);
	if (verdict->left_out > 0)
		put_left_out(&row, verdict, arena);
}

static void begin_csv(Out *out, Arena *arena)
{
	(void)arena;
	SAY(out, "submittal,round,item,place,state,action,code,record,where,file,line,column,finding,submitted,allowed,authority,cites,"
		"basis,known by,remedy,answer by,reviewer,fingerprint\r\n");
}

const ReportDocument csv_document = { .begin = begin_csv, .between = "", .end = NULL };

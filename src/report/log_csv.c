/* SPDX-License-Identifier: MIT
 * The log as a table for spreadsheets.
 */
#include "log_page.h"

#include "cells.h"
#include "date.h"
#include "parts.h"

static const char *day_cell(int32_t day, Arena *arena)
{
	return day != NO_DAY ? date_print(arena, day) : NULL;
}

static const char *number_cell(bool known, int32_t number, Arena *arena)
{
	return known ? arena_printf(arena, "%d", (int)number) : NULL;
}

static void put_row(Cells *cells, const SubmittalLog *log, const LogRow *row, Arena *arena)
{
	int32_t days, margin;
	bool has_days = log_days(log, row, &days), has_margin = log_margin(log, row, &margin);
	cell(cells, row->submittal);
	cell(cells, row->project);
	cell(cells, row->term);
	cell(cells, stage_words(row->stage));
	cell_number(cells, number_cell(row->round > 0, row->round, arena));
	cell(cells, log_action_text(row));
	for (int action = 0; action < ACTION_COUNT; action++)
		cell_number(cells, number_cell(true, (int32_t)row->open[action], arena));
	cell(cells, row->waiting_for);
	cell(cells, day_cell(row->since, arena));
	cell(cells, day_cell(row->until, arena));
	cell_number(cells, number_cell(has_days, days, arena));
	cell(cells, row->needed_for);
	cell(cells, day_cell(row->needed_by, arena));
	cell_number(cells, number_cell(has_margin, margin, arena));
	cell(cells, row->also);
	cell(cells, row->report);
	row_end(cells);
}

void write_log_csv(Out *out, const Page *page, Arena *arena)
{
	SAY(out, "submittal,project,term,stage,round,recommended action,");
	for (int action = 0; action < ACTION_COUNT; action++) {
		put(out, action_words((Action)action));
		SAY(out, ",");
	}
	SAY(out, "waiting for,received,returned,days in round,next,needed by,days left,also,report\r\n");
	Cells cells = { .out = out };
	for (uint32_t i = 0; i < page->log->rows; i++)
		put_row(&cells, page->log, &page->log->row[i], arena);
}

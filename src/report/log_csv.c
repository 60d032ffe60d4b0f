/* SPDX-License-Identifier: MIT
 * The log as a table for spreadsheets.
 */
#include "log_page.h"

#include "date.h"
#include "parts.h"

#include <stdlib.h>

static void put_cell(Out *out, const char *text)
{
	SAY(out, "\"");
	put(out, text != NULL ? text : "");
	SAY(out, "\",");
}

/* A number of ours is no formula, though it begins with a sign. */
static void put_number(Out *out, bool known, int32_t number)
{
	SAY(out, "\"");
	if (known && number < 0)
		SAY(out, "-");
	if (known)
		put_count(out, (unsigned long)labs((long)number));
	SAY(out, "\",");
}

static const char *day_cell(int32_t day, Arena *arena)
{
	return day != NO_DAY ? date_print(arena, day) : NULL;
}

static void put_row(Out *out, const SubmittalLog *log, const LogRow *row, Arena *arena)
{
	int32_t days, margin;
	bool has_days = log_days(log, row, &days), has_margin = log_margin(log, row, &margin);
	put_cell(out, row->submittal);
	put_cell(out, row->project);
	put_cell(out, row->term);
	put_cell(out, stage_words(row->stage));
	put_cell(out, row->round > 0 ? arena_printf(arena, "%u", row->round) : NULL);
	put_cell(out, log_action_text(row));
	for (int action = 0; action < ACTION_COUNT; action++)
		put_cell(out, arena_printf(arena, "%u", row->open[action]));
	put_cell(out, row->waiting_for);
	put_cell(out, day_cell(row->since, arena));
	put_cell(out, day_cell(row->until, arena));
	put_number(out, has_days, days);
	put_cell(out, row->needed_for);
	put_cell(out, day_cell(row->needed_by, arena));
	put_number(out, has_margin, margin);
	put_cell(out, row->also);
	SAY(out, "\"");
	put(out, row->report);
	SAY(out, "\"\r\n");
}

void write_log_csv(Out *out, const Page *page, Arena *arena)
{
	SAY(out, "submittal,project,term,stage,round,recommended action,");
	for (int action = 0; action < ACTION_COUNT; action++) {
		put(out, action_words((Action)action));
		SAY(out, ",");
	}
	SAY(out, "waiting for,received,returned,days in round,next,needed by,days left,also,report\r\n");
	for (uint32_t i = 0; i < page->log->rows; i++)
		put_row(out, page->log, &page->log->row[i], arena);
}

/* SPDX-License-Identifier: MIT
 * The log as a list: a submittal in a few lines, so that nothing is cut off.
 */
#include "log_page.h"

#include "date.h"
#include "parts.h"

#include <string.h>

const char log_note[] =
	"Calendar days by the dates in the papers. A self-check is the applicant's own; nothing here is an approval.";

static const LabelColumn head_column = { 2, 14 };
static const LabelColumn row_column = { 4, 18 };

const char *log_open_text(const LogRow *row, Arena *arena)
{
	const char *list = NULL;
	for (int action = 0; action < ACTION_COUNT; action++)
		if (row->open[action] > 0)
			list = arena_printf(arena, "%s%s%u %s", list != NULL ? list : "", list != NULL ? ", " : "", row->open[action],
				action_words((Action)action));
	return list != NULL ? list : "nothing";
}

const char *log_action_text(const LogRow *row)
{
	return row->recommended != NULL ? row->recommended : "self-check";
}

static const char *counted_days(int32_t days, Arena *arena)
{
	return arena_printf(arena, "%d %s", (int)days, days == 1 ? "day" : "days");
}

const char *log_days_text(const SubmittalLog *log, const LogRow *row, Arena *arena)
{
	int32_t days;
	if (!log_days(log, row, &days))
		return row->since == NO_DAY ? "not known: no paper bears a day"
			: arena_printf(arena, "not known: %s is after the day of the log", date_print(arena, row->since));
	const char *back = row->until != NO_DAY ? arena_printf(arena, " to %s, when it went back", date_print(arena, row->until)) : "";
	if (row->until != NO_DAY && log->as_of > row->until)
		back = arena_printf(arena, "%s; %s since then", back, counted_days(log->as_of - row->until, arena));
	return arena_printf(arena, "%s, since %s%s", counted_days(days, arena), date_print(arena, row->since), back);
}

const char *log_need_text(const SubmittalLog *log, const LogRow *row, Arena *arena)
{
	int32_t days;
	if (row->needed_by == NO_DAY)
		return "nothing is planned";
	const char *what = arena_printf(arena, "%s for the %s", date_print(arena, row->needed_by), row->needed_for);
	if (!log_margin(log, row, &days))
		return what;
	return days >= 0 ? arena_printf(arena, "%s, %s left", what, counted_days(days, arena))
		: arena_printf(arena, "%s, %s late", what, counted_days(-days, arena));
}

const char *log_round_text(const LogRow *row, Arena *arena)
{
	return row->round > 0 ? arena_printf(arena, "%s, round %u", stage_words(row->stage), row->round) : stage_words(row->stage);
}

const char *log_day_text(const SubmittalLog *log, Arena *arena)
{
	if (log->as_of == NO_DAY)
		return "not known: no report bears a day, and --as-of was not given";
	return arena_printf(arena, "%s%s", date_print(arena, log->as_of), log->asked ? "" : ", the latest day in these reports");
}

static void put_row(Out *out, const SubmittalLog *log, const LogRow *row, Arena *arena)
{
	SAY(out, "\n  ");
	put(out, row->submittal != NULL ? row->submittal : "without a number");
	SAY(out, "  ");
	put(out, row->project != NULL ? row->project : "project not stated");
	SAY(out, "\n");
	put_label(out, row_column, "Asked for", row->term != NULL ? row->term : "term not stated");
	put_label(out, row_column, "Stands at", arena_printf(arena, "%s: %s", log_round_text(row, arena), log_action_text(row)));
	put_label(out, row_column, "Open", log_open_text(row, arena));
	put_label(out, row_column, "Waiting for", row->waiting_for != NULL ? row->waiting_for : "nobody: no item is in the way");
	put_label(out, row_column, "In this round", log_days_text(log, row, arena));
	put_label(out, row_column, "Needed by", log_need_text(log, row, arena));
	put_label(out, row_column, "Report", row->report);
	if (row->also != NULL)
		put_label(out, row_column, "Also", arena_printf(arena, "%s is on the same round and differs", row->also));
}

/* How many submittals wait, and for how long the longest. */
static const char *waiting_text(const SubmittalLog *log, Arena *arena)
{
	uint32_t waiting = 0;
	int32_t longest = -1, days;
	for (uint32_t i = 0; i < log->rows; i++) {
		bool waits = log_in_the_way(&log->row[i]) > 0;
		waiting += waits;
		if (waits && log_days(log, &log->row[i], &days) && days > longest)
			longest = days;
	}
	return longest < 0 ? arena_printf(arena, "%u of %u", waiting, log->rows)
		: arena_printf(arena, "%u of %u; the longest in its round: %s", waiting, log->rows, counted_days(longest, arena));
}

void write_log_text(Out *out, const Page *page, Arena *arena)
{
	const SubmittalLog *log = page->log;
	SAY(out, "LOG OF SUBMITTALS\n");
	put_label(out, head_column, "Day", log_day_text(log, arena));
	put_label(out, head_column, "Waiting", waiting_text(log, arena));
	SAY(out, "  ");
	put_wrapped(out, log_note, 2, 2, PAGE_WIDTH);
	SAY(out, "\n");
	for (uint32_t i = 0; i < log->rows; i++)
		put_row(out, log, &log->row[i], arena);
	write_cautions(out, log->reference, (CautionsFor){ "log", "" }, arena);
}

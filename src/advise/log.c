/* SPDX-License-Identifier: MIT
 * A row of the log from a report: what is open, who has to answer, since when, and by when it is needed.
 */
#include "log.h"
#include "pipeline.h"

#include <string.h>

static bool names(const char *list, const char *name)
{
	size_t length = strlen(name);
	for (const char *at = list; at != NULL; at = strstr(at, ", ") != NULL ? strstr(at, ", ") + 2 : NULL)
		if (strncmp(at, name, length) == 0 && (at[length] == ',' || at[length] == '\0'))
			return true;
	return false;
}

/* Everyone who must answer what stands in the way, in the order of the items. Those who answer are few. */
static void count_open(LogRow *row, const Earlier *report, Arena *arena)
{
	const char *list = NULL;
	for (uint32_t i = 0; i < report->items; i++) {
		const EarlierItem *item = &report->item[i];
		int action = counted_as(item->action, item->state);
		if (action < 0)
			continue;
		row->open[action]++;
		const char *who = item->answer_by;
		if (action <= ACTION_NOT_REVIEWED && who != NULL && (list == NULL || (strlen(list) < 200 && !names(list, who))))
			list = list == NULL ? who : arena_printf(arena, "%s, %s", list, who);
	}
	row->waiting_for = list;
}

/* What is planned next and has not happened: approval, order, delivery or start. */
static void find_need(LogRow *row, const Submittal *submittal)
{
	static const char *const wanted[] = { "approval", "order", "delivery", "start" };
	row->needed_by = NO_DAY;
	for (uint32_t i = 0; i < submittal->dates.of.count; i++) {
		const Event *event = &submittal->dates.of.row[i];
		if (!is_value(&event->event.given) || is_value(&event->date.given) || !is_value(&event->planned.given))
			continue;
		for (size_t w = 0; w < sizeof wanted / sizeof *wanted; w++)
			if (is_word(&event->event, wanted[w]) && (row->needed_by == NO_DAY || event->planned.day < row->needed_by)) {
				row->needed_by = event->planned.day;
				row->needed_for = wanted[w];
			}
	}
}

static int32_t day_of(const Date *date)
{
	return is_value(&date->given) ? date->day : NO_DAY;
}

LogRow log_row(const Earlier *report, const Submittal *submittal, Arena *arena)
{
	const Number *term = &submittal->warranty.term_yr;
	LogRow row = { .submittal = report->submittal, .round = report->round, .report = report->source->name,
		.recommended = report->recommended_action, .stage = report->stage };
	row.project = is_value(&submittal->project.name.given) ? submittal->project.name.text : NULL;
	row.term = is_value(&term->given) ? term->given.typed : NULL;
	row.since = report->received != NO_DAY ? report->received : day_of(&submittal->date);
	row.until = report->returned;
	row.latest = row.until != NO_DAY ? row.until : row.since;
	row.made_of = arena_printf(arena, "%s %s", report->files > 0 ? report->file[0].sha256 : "",
		report->criteria_sha256 != NULL ? report->criteria_sha256 : "");
	count_open(&row, report, arena);
	find_need(&row, submittal);
	return row;
}

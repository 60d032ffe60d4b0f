/* SPDX-License-Identifier: MIT
 * `log`: how each submittal stands, from its latest report.
 */
#include "commands.h"
#include "date.h"
#include "hash.h"
#include "log.h"
#include "pipeline.h"
#include "reports.h"
#include "say.h"
#include "targets.h"

#include <stdlib.h>
#include <string.h>

typedef struct {
	Arena *arena;
	SubmittalLog log;
	Hash *by_number;
	LogRow **row;
	uint32_t room;
} Logging;

static const char *kept(Arena *arena, const char *text)
{
	return text != NULL ? arena_text(arena, text, strlen(text)) : NULL;
}

/* What lies in the arena of one report would be gone after it. */
static void keep_row(LogRow *row, Arena *arena)
{
	const char **text[] = { &row->submittal, &row->project, &row->term, &row->recommended, &row->waiting_for, &row->report,
		&row->made_of };
	for (size_t i = 0; i < sizeof text / sizeof *text; i++)
		*text[i] = kept(arena, *text[i]);
}

/* Which of two reports on a submittal counts: that of the later round or stage; the reviewer's before the applicant's own. */
static int by_weight(const LogRow *a, const LogRow *b)
{
	if (a->round != b->round)
		return a->round > b->round ? 1 : -1;
	if (a->stage != b->stage)
		return a->stage > b->stage ? 1 : -1;
	return (a->recommended != NULL) - (b->recommended != NULL);
}

/* Of two that weigh the same the first counts, and the other is named if it was made of something else. */
static void put_row(Logging *logging, LogRow *own)
{
	const char *key = own->submittal != NULL ? own->submittal : own->report;
	LogRow *other = hash_get(logging->by_number, key, strlen(key));
	if (other == NULL) {
		LogRow *row = TAKE(logging->arena, LogRow, 1);
		*row = *own;
		hash_put(logging->by_number, key, strlen(key), row);
		logging->row = arena_more(logging->arena, (void *)logging->row, logging->log.rows, &logging->room, sizeof *logging->row);
		logging->row[logging->log.rows++] = row;
	} else if (by_weight(own, other) > 0) {
		*other = *own;
	} else if (by_weight(own, other) == 0 && strcmp(own->made_of, other->made_of) != 0) {
		other->also = own->report;
	}
}

static void take_report(void *user, const Earlier *report, Arena *arena)
{
	Logging *logging = user;
	Complaints faults = { .arena = arena };
	Submittal *submittal = read_submittal(arena, report->values, report->source, logging->log.reference, &faults);
	LogRow row = log_row(report, submittal, arena);
	keep_row(&row, logging->arena);
	if (!logging->log.asked && row.latest != NO_DAY && row.latest > logging->log.as_of)
		logging->log.as_of = row.latest;
	put_row(logging, &row);
}

static int by_number(const void *a, const void *b)
{
	const LogRow *x = *(LogRow *const *)a, *y = *(LogRow *const *)b;
	if ((x->submittal == NULL) != (y->submittal == NULL))
		return x->submittal == NULL ? 1 : -1;
	return x->submittal != NULL ? strcmp(x->submittal, y->submittal) : strcmp(x->report, y->report);
}

static void sort_rows(Logging *logging)
{
	SubmittalLog *log = &logging->log;
	if (log->rows > 0)
		qsort((void *)logging->row, log->rows, sizeof *logging->row, by_number);
	log->row = TAKE(logging->arena, LogRow, (size_t)log->rows + 1);
	for (uint32_t i = 0; i < log->rows; i++)
		log->row[i] = *logging->row[i];
}

int command_log(const Arguments *arguments)
{
	Logging logging = { .arena = arguments->arena, .log = { .as_of = NO_DAY } };
	const char *as_of = arguments->value[OPTION_as_of];
	logging.log.asked = as_of != NULL;
	const char *wrong = arguments->operands == 0 ? "log needs a FOLDER of reports, or reports, or - for standard input" : NULL;
	if (wrong == NULL && as_of != NULL && !date_read(as_of, strlen(as_of), &logging.log.as_of))
		wrong = arena_printf(arguments->arena, "--as-of takes a day such as 2026-04-14, not %s", as_of);
	Targets targets = { .count = 0 };
	if (wrong == NULL)
		wrong = read_targets(arguments, &targets);
	if (wrong != NULL) {
		say_usage(arguments->command, wrong);
		return STATUS_FAILED;
	}
	logging.log.reference = read_reference(arguments->arena);
	logging.by_number = hash_make(arguments->arena, 64);
	TakeReport take = { &logging, take_report };
	bool whole = read_reports(arguments->operand, arguments->operands, &take);
	sort_rows(&logging);
	Page page = { .log = &logging.log };
	write_targets(&targets, &page, arguments->arena);
	return whole ? STATUS_FINE : STATUS_FAILED;
}

/* SPDX-License-Identifier: MIT
 * Log: how each submittal stands, one row each, from the reports on it. Days are counted by the papers, never by the clock.
 */
#ifndef LOG_H
#define LOG_H

#include "earlier.h"
#include "reference.h"

typedef struct {
	const char *submittal, *project, *term; /* NULL: not stated */
	Stage stage;
	const char *recommended; /* NULL in a self-check */
	const char *waiting_for; /* NULL: nothing is open */
	const char *needed_for; /* the event that comes next; NULL: none is planned */
	const char *report; /* the file it was taken from */
	const char *also; /* another report on the same round that says something else; NULL */
	uint16_t round; /* 0 at stage bid */
	uint32_t open[ACTION_COUNT];
	int32_t since, until; /* when this round came in and went back */
	int32_t needed_by;
	int32_t latest; /* the latest day the report speaks of */
	const char *made_of; /* hashes of what was judged and by what: two reports with one are the same */
} LogRow;

typedef struct {
	LogRow *row; /* by number of the submittal */
	uint32_t rows;
	int32_t as_of; /* days run up to it; NO_DAY: no paper bears a day */
	bool asked; /* the day was given */
	const Reference *reference;
} SubmittalLog;

/* advise: the row of a report and of the submittal it was made of. */
LogRow log_row(const Earlier *report, const Submittal *submittal, Arena *arena);

/* base: open items of NOT REVIEWED or worse. */
uint32_t log_in_the_way(const LogRow *row);

/* base: days in this round and days left to the next event; false if a day is missing. */
bool log_days(const SubmittalLog *log, const LogRow *row, int32_t *days);
bool log_margin(const SubmittalLog *log, const LogRow *row, int32_t *days);

#endif

/* SPDX-License-Identifier: MIT
 * Reports: JSON reports read back, from files and folders: .json has one, .ndjson one a line. One at a time is held.
 */
#ifndef COMMAND_REPORTS_H
#define COMMAND_REPORTS_H

#include "command.h"
#include "earlier.h"

/* Takes each report that could be read; `arena` is wound back behind it. */
typedef struct {
	void *user;
	void (*take)(void *user, const Earlier *report, Arena *arena);
} TakeReport;

/* Goes through the operands in order, folders in the order of their paths; false if something could not be read, which has been
 * said; the rest was read all the same. */
bool read_reports(const char *const *operand, uint32_t operands, const TakeReport *take);

#endif

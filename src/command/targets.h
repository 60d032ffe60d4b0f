/* SPDX-License-Identifier: MIT
 * Targets: in which formats a page is wanted and where each goes.
 */
#ifndef COMMAND_TARGETS_H
#define COMMAND_TARGETS_H

#include "command.h"
#include "report.h"

/* One form of the page and where it goes; path NULL: standard output. */
typedef struct {
	const PageFormat *format;
	const char *path;
} Target;

typedef struct {
	Target at[MOST_OUTPUTS];
	uint32_t count;
} Targets;

/* What is wrong with the formats and outputs of the command's page; NULL if nothing is. */
const char *read_targets(const Arguments *arguments, Targets *targets);

/* Writes the page to all of them; a write that fails ends the process with status 2. */
void write_targets(const Targets *targets, const Page *page, Arena *arena);

#endif

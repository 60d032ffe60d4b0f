/* SPDX-License-Identifier: MIT
 * Pages: what the commands share that print one page of one submittal, in several formats if asked.
 */
#ifndef COMMAND_PAGES_H
#define COMMAND_PAGES_H

#include "judging.h"
#include "report.h"

/* Fills the command's part of a page from a judged submittal. */
typedef void MakePage(Page *page, Verdict *verdict, Arena *arena);

/* Runs a command that takes one FILE: formats and outputs, the run's tables, the file, the page. Returns the status. */
int print_pages(const Arguments *arguments, MakePage *make);

/* A command that takes a second file: `read` puts it into the page, or says why it cannot and gives false; `status` is that of a
 * page that was made. */
typedef struct {
	const char *needs; /* its operands, for a usage message */
	bool (*read)(Page *page, const char *path, Arena *arena);
	bool (*beside)(Page *page, Shared *shared, Arena *arena); /* what an option names; may be NULL */
	MakePage *make;
	int (*status)(const Page *page);
} TwoFiles;
int print_pages_of_two(const Arguments *arguments, const TwoFiles *two);

#endif

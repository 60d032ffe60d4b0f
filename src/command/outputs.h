/* SPDX-License-Identifier: MIT
 * Outputs: where the reports of one run go, each in its format. Standard output gets each report when it is finished; a file is
 * written whole at the end, beside the old one and renamed.
 */
#ifndef COMMAND_OUTPUTS_H
#define COMMAND_OUTPUTS_H

#include "command.h"
#include "report.h"

typedef struct {
	const ReportFormat *format;
	const char *path; /* NULL: standard output */
	Arena *arena; /* of the file's text */
	Out *whole;
	bool begun; /* of a document: something stands in it */
} Output;

typedef struct {
	Output at[MOST_OUTPUTS];
	uint32_t count;
	uint32_t reports; /* so far */
	Arena *arena;
	Gathered gathered;
	bool array; /* json of several files is one array */
} Outputs;

/* What several submittals are to a run: one, some files, or a folder. */
typedef enum { ONE_FILE, SEVERAL_FILES, A_FOLDER } Batch;

/* False if a format or a pair is wrong, which has been said. */
bool outputs_open(Outputs *outputs, const Arguments *arguments, Batch batch);

/* Whether a report written there would take the place of something the run reads. */
bool overwrites_input(const Arguments *arguments, const char *output);

/* Whether a format prints hashes. */
bool outputs_need_hash(const Outputs *outputs);

/* Whether a format prints what must be seen on site. */
bool outputs_need_site_checks(const Outputs *outputs);

void outputs_add(Outputs *outputs, const Verdict *verdict, Arena *arena);

/* Frees what was kept, where a run ends before its first report. */
void outputs_drop(Outputs *outputs);

/* Writes what is left; a failed write ends the process with status 2 and leaves the old file. */
void outputs_close(Outputs *outputs);

#endif

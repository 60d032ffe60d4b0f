/* SPDX-License-Identifier: MIT
 * Outputs: where the reports of one run go, each in its format. Standard output gets each report when it is finished; a file
 * grows beside the old one and takes its place at the end.
 */
#ifndef COMMAND_OUTPUTS_H
#define COMMAND_OUTPUTS_H

#include "command.h"
#include "file.h"
#include "report.h"

typedef struct {
	const ReportFormat *format;
	const char *path; /* NULL: standard output */
	FileWriter *file; /* once something was written */
	bool begun; /* of a document: something stands in it */
} Output;

/* The reports on one submittal, one for each output. */
typedef struct {
	const char *text[MOST_OUTPUTS];
	size_t length[MOST_OUTPUTS];
	const Criteria *criteria; /* by which it was judged; NULL: it could not be, and `unread` says why */
	const Reference *reference;
	Unread unread;
} Finished;

typedef struct {
	Arena *arena;
	Output at[MOST_OUTPUTS];
	uint32_t count;
	uint32_t reports; /* so far */
	Gathered gathered;
	bool array; /* json of several files is one array */
} Outputs;

/* What several submittals are to a run: one, some files, or a folder. */
typedef enum { ONE_FILE, SEVERAL_FILES, A_FOLDER } Batching;

/* False if a format or a pair is wrong, which has been said. */
bool outputs_open(Outputs *outputs, const Arguments *arguments, Batching batch);

/* Whether a report written there would take the place of something the run reads. */
bool overwrites_input(const Arguments *arguments, const char *output);

/* Whether a format prints hashes. */
bool outputs_need_hash(const Outputs *outputs);

/* Whether a format draws the roof areas. */
bool outputs_need_drawings(const Outputs *outputs);

/* Whether a format prints what must be seen on site. */
bool outputs_need_site_checks(const Outputs *outputs);

/* Whether a format prints what was passed. */
bool outputs_need_outcomes(const Outputs *outputs);

/* Writes the reports on a submittal into `finished`, their texts in `keep`. By any thread. */
void outputs_write(const Outputs *outputs, const Verdict *verdict, Finished *finished, Arena *keep);

/* Sends them where they go. */
void outputs_send(Outputs *outputs, const Finished *finished);

/* Writes what is left; a failed write ends the process with status 2 and leaves the old file. */
void outputs_close(Outputs *outputs);

#endif

/* SPDX-License-Identifier: MIT
 * A report format: one name, one function, one file.
 */
#ifndef REPORT_H
#define REPORT_H

#include "out.h"
#include "verdict.h"

typedef struct {
	const char *name, *title;
	void (*write)(Out *out, const Verdict *verdict, Arena *arena);
	OutEscape escape;
} ReportFormat;

/* The format of a name, or NULL; the format number `i`, or NULL after the last. */
const ReportFormat *report_format(const char *name);
const ReportFormat *report_format_at(size_t i);

/* Pages printed from the tables. */
void write_blank_form(Out *out, Stage stage);
void write_form_reference(Out *out);
void write_why(Out *out, const Criteria *criteria, const char *code, Arena *arena);
void write_faults(Out *out, const Complaints *faults, const Source *const *source, uint32_t sources, Arena *arena);
void write_cautions(Out *out, const Reference *reference, const char *command);

#endif

/* SPDX-License-Identifier: MIT
 * Formats: the writers behind the rows of report.c.
 */
#ifndef REPORT_FORMATS_H
#define REPORT_FORMATS_H

#include "report.h"

void write_text(Out *out, const Verdict *verdict, Arena *arena);
void write_lines(Out *out, const Verdict *verdict, Arena *arena);
void write_json(Out *out, const Verdict *verdict, Arena *arena);
void write_html(Out *out, const Verdict *verdict, Arena *arena);
void write_questions(Out *out, const Verdict *verdict, Arena *arena);
void write_requests(Out *out, const Verdict *verdict, Arena *arena);
void write_reply_sheet(Out *out, const Verdict *verdict, Arena *arena);
void write_schedule(Out *out, const Verdict *verdict, Arena *arena);
void write_site_text(Out *out, const Verdict *verdict, Arena *arena);
void write_site_html(Out *out, const Verdict *verdict, Arena *arena);
void write_ndjson(Out *out, const Verdict *verdict, Arena *arena);
void write_csv(Out *out, const Verdict *verdict, Arena *arena);
void write_junit(Out *out, const Verdict *verdict, Arena *arena);

void write_sarif(Out *out, const Verdict *verdict, Arena *arena);

extern const ReportDocument csv_document, junit_document, sarif_document;

#endif

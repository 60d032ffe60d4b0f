/* SPDX-License-Identifier: MIT
 * The log in its three forms, and what they share.
 */
#ifndef REPORT_LOG_PAGE_H
#define REPORT_LOG_PAGE_H

#include "report.h"

void write_log_text(Out *out, const Page *page, Arena *arena);
void write_log_csv(Out *out, const Page *page, Arena *arena);
void write_log_html(Out *out, const Page *page, Arena *arena);

/* How days are counted, and what a row is not. */
extern const char log_note[];

/* "2 REJECTED, 1 HOLD"; "nothing". */
const char *log_open_text(const LogRow *row, Arena *arena);

/* The recommended action, or "self-check". */
const char *log_action_text(const LogRow *row);

/* "12 days, since 2026-04-15"; "not known". */
const char *log_days_text(const SubmittalLog *log, const LogRow *row, Arena *arena);

/* "2026-05-20 for the approval, 24 days left"; "nothing is planned". */
const char *log_need_text(const SubmittalLog *log, const LogRow *row, Arena *arena);

/* "round 2, application". */
const char *log_round_text(const LogRow *row, Arena *arena);

/* Up to which day is counted, and why. */
const char *log_day_text(const SubmittalLog *log, Arena *arena);

#endif

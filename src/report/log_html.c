/* SPDX-License-Identifier: MIT
 * The log as one page that stands alone: a table to print on Letter or A4, no script, nothing fetched.
 */
#include "log_page.h"

#include "calcs.h"
#include "markup.h"
#include "parts.h"

#define STYLE \
	"body{font:14px/1.35 Georgia,'Times New Roman',serif;color:#111;margin:1.5rem auto;max-width:80rem;padding:0 1rem}" \
	"h1{font-size:1.4rem;margin:0 0 .3rem}h2{font-size:1.1rem;margin:1.4rem 0 .3rem}p{margin:.2rem 0}.wide{overflow-x:auto}" \
	"table{border-collapse:collapse;width:100%}th,td{border-bottom:1px solid #999;padding:.3rem .5rem;text-align:left;" \
	"vertical-align:top;overflow-wrap:anywhere}th{border-bottom:2px solid #111}tr{break-inside:avoid}" \
	".cautions{font-size:.87rem;padding-left:1.2rem}" \
	"@media print{body{margin:0;padding:0;max-width:none;font-size:9pt}thead{display:table-header-group}@page{margin:14mm}}"

static void put_row(Markup *page, const SubmittalLog *log, const LogRow *row, Arena *arena)
{
	OPEN(page, "tr");
	ELEMENT(page, "td", row->submittal != NULL ? row->submittal : "without a number");
	ELEMENT(page, "td", row->project != NULL ? row->project : "not stated");
	ELEMENT(page, "td", row->term != NULL ? row->term : "not stated");
	ELEMENT(page, "td", arena_printf(arena, "%s: %s%s%s", log_round_text(row, arena), log_action_text(row),
		row->also != NULL ? "; another report on this round differs: " : "", row->also != NULL ? row->also : ""));
	ELEMENT(page, "td", log_open_text(row, arena));
	ELEMENT(page, "td", row->waiting_for != NULL ? row->waiting_for : "nobody");
	ELEMENT(page, "td", log_days_text(log, row, arena));
	ELEMENT(page, "td", log_need_text(log, row, arena));
	CLOSE(page, "tr");
}

void write_log_html(Out *out, const Page *data, Arena *arena)
{
	static const char *const heads[] = { "Submittal", "Project", "Term", "Stands at", "Open", "Waiting for", "In this round",
		"Needed by" };
	const SubmittalLog *log = data->log;
	Markup markup = { .out = out }, *page = &markup;
	PAGE(page, "Log of submittals", STYLE);
	ELEMENT(page, "h1", "Log of submittals");
	ELEMENT(page, "p", arena_printf(arena, "Day: %s", log_day_text(log, arena)));
	ELEMENT(page, "p", log_note);
	OPEN(page, "div");
	ATTRIBUTE(page, "class", "wide");
	markup_table(page, NULL, heads, sizeof heads / sizeof *heads);
	for (uint32_t i = 0; i < log->rows; i++)
		put_row(page, log, &log->row[i], arena);
	markup_table_end(page);
	CLOSE(page, "div");
	write_cautions_page(page, log->reference, "log", arena);
	markup_page_end(page);
}

/* SPDX-License-Identifier: MIT
 * The formats of a review and of the pages of other commands: one row and one file each.
 */
#include "formats.h"

#include "calcs.h"
#include "edition_page.h"
#include "log_page.h"
#include "offers_page.h"
#include "order_page.h"
#include "takeoff_page.h"

#include <string.h>

static const ReportFormat formats[] = {
	{ "text", "the letter: numbered items with their proof", write_text, OUT_TERMINAL, REPORT_PAGES, NULL },
	{ "lines", "one line an item, for editors", write_lines, OUT_TERMINAL, REPORT_LINES, NULL },
	{ "json", "everything, for programs; several submittals make an array", write_json, OUT_TERMINAL, REPORT_LINES, NULL },
	{ "ndjson", "the same, one line a submittal", write_ndjson, OUT_TERMINAL, REPORT_LINES, NULL },
	{ "csv", "one line a place of an item, for spreadsheets", write_csv, OUT_CSV, REPORT_LINES, &csv_document },
	{ "sarif", "SARIF 2.1.0, for services that read results", write_sarif, OUT_TERMINAL, REPORT_LINES, &sarif_document },
	{ "junit", "JUnit XML, for build servers", write_junit, OUT_MARKUP, REPORT_LINES, &junit_document },
	{ "html", "the letter as a page to print, with plan, section and tested curve", write_html, OUT_MARKUP, REPORT_ALONE, NULL },
	{ "questions", "what designer and engineer must answer, ready to send", write_questions, OUT_TERMINAL, REPORT_PAGES, NULL },
	{ "requests", "requests for prior approval, filled in", write_requests, OUT_TERMINAL, REPORT_PAGES, NULL },
	{ "replies", "the reply sheet: open items with columns to fill in, read back by --replies", write_reply_sheet, OUT_CSV,
		REPORT_ALONE, NULL },
	{ "schedule", "what would be approved: parts, spacings, conditions, what is left out", write_schedule, OUT_TERMINAL,
		REPORT_PAGES, NULL },
	{ "sheet", "the inspector's sheet: what must be seen on the roof", write_site_text, OUT_TERMINAL, REPORT_PAGES, NULL },
	{ "sheet-html", "the same as a page to print", write_site_html, OUT_MARKUP, REPORT_ALONE, NULL },
};

const ReportFormat *report_format_at(size_t i)
{
	return i < sizeof formats / sizeof *formats ? &formats[i] : NULL;
}

const ReportFormat *report_format(const char *name)
{
	for (size_t i = 0; i < sizeof formats / sizeof *formats; i++)
		if (strcmp(formats[i].name, name) == 0)
			return &formats[i];
	return NULL;
}

static const PageFormat page_formats[] = {
	{ "calcs", "text", write_calcs_text, OUT_TERMINAL },
	{ "calcs", "json", write_calcs_json, OUT_TERMINAL },
	{ "calcs", "html", write_calcs_html, OUT_MARKUP },
	{ "criteria", "text", write_edition_text, OUT_TERMINAL },
	{ "criteria", "json", write_edition_json, OUT_TERMINAL },
	{ "log", "text", write_log_text, OUT_TERMINAL },
	{ "log", "csv", write_log_csv, OUT_CSV },
	{ "log", "html", write_log_html, OUT_MARKUP },
	{ "options", "text", write_offers_text, OUT_TERMINAL },
	{ "options", "csv", write_offers_csv, OUT_CSV },
	{ "options", "json", write_offers_json, OUT_TERMINAL },
	{ "order", "text", write_order_text, OUT_TERMINAL },
	{ "order", "csv", write_order_csv, OUT_CSV },
	{ "order", "json", write_order_json, OUT_TERMINAL },
	{ "takeoff", "text", write_takeoff_text, OUT_TERMINAL },
	{ "takeoff", "csv", write_takeoff_csv, OUT_CSV },
	{ "takeoff", "json", write_takeoff_json, OUT_TERMINAL },
};
enum { PAGE_FORMATS = sizeof page_formats / sizeof *page_formats };

const PageFormat *page_format(const char *page, const char *name)
{
	for (size_t i = 0; i < PAGE_FORMATS; i++)
		if (strcmp(page_formats[i].page, page) == 0 && strcmp(page_formats[i].name, name) == 0)
			return &page_formats[i];
	return NULL;
}

const char *page_formats_listed(const char *page, Arena *arena)
{
	const char *listed = "";
	for (size_t i = 0; i < PAGE_FORMATS; i++)
		if (strcmp(page_formats[i].page, page) == 0)
			listed = arena_printf(arena, "%s%s%s", listed, *listed != '\0' ? ", " : "", page_formats[i].name);
	return listed;
}

/* SPDX-License-Identifier: MIT
 * The formats of a review and of a sheet of calculations: one row and one file each.
 */
#include "formats.h"

#include "calcs.h"

#include <string.h>

static const ReportFormat formats[] = {
	{ "text", "the letter: numbered items with their proof", write_text, OUT_TERMINAL, REPORT_PAGES },
	{ "lines", "one line an item, for editors", write_lines, OUT_TERMINAL, REPORT_LINES },
	{ "json", "everything, for programs; several submittals make an array", write_json, OUT_TERMINAL, REPORT_LINES },
	{ "ndjson", "the same, one line a submittal", write_ndjson, OUT_TERMINAL, REPORT_LINES },
	{ "questions", "what designer and engineer must answer, ready to send", write_questions, OUT_TERMINAL, REPORT_PAGES },
	{ "sheet", "the inspector's sheet: what must be seen on the roof", write_site_text, OUT_TERMINAL, REPORT_PAGES },
	{ "sheet-html", "the same as a page to print", write_site_html, OUT_MARKUP, REPORT_ALONE },
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

static const SheetFormat sheet_formats[] = {
	{ "text", write_calcs_text, OUT_TERMINAL },
	{ "json", write_calcs_json, OUT_TERMINAL },
	{ "html", write_calcs_html, OUT_MARKUP },
};

const SheetFormat *sheet_format(const char *name)
{
	for (size_t i = 0; i < sizeof sheet_formats / sizeof *sheet_formats; i++)
		if (strcmp(sheet_formats[i].name, name) == 0)
			return &sheet_formats[i];
	return NULL;
}

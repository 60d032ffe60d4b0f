/* SPDX-License-Identifier: MIT
 * The formats of a review: one row and one file each.
 */
#include "formats.h"

#include <string.h>

static const ReportFormat formats[] = {
	{ "text", "the letter: numbered items with their proof", write_text, OUT_TERMINAL },
	{ "lines", "one line an item, for editors", write_lines, OUT_TERMINAL },
	{ "json", "everything, for programs; several submittals make an array", write_json, OUT_TERMINAL },
	{ "ndjson", "the same, one line a submittal", write_ndjson, OUT_TERMINAL },
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

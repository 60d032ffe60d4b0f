/* SPDX-License-Identifier: MIT
 * Whether a report would be written over something the run reads: a submittal, the reviewer's file, a table of the criteria.
 */
#include "outputs.h"

#include "file.h"
#include "walk.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

/* Whether an existing file is what was named, or stands in the folder that was named; of submittals only they count. */
static bool is_read(const char *output, const char *named, bool tables)
{
	char real[PATH_MAX];
	if (named == NULL || realpath(named, real) == NULL)
		return false;
	if (strcmp(output, real) == 0)
		return true;
	size_t length = strlen(real);
	bool inside = strncmp(output, real, length) == 0 && output[length] == '/';
	return inside && (tables || walk_wants(walk_submittals, output));
}

bool overwrites_input(const Arguments *arguments, const char *output)
{
	char real[PATH_MAX];
	if (realpath(output, real) == NULL)
		return false; /* what does not exist yet is read by nobody */
	bool read = is_read(real, arguments->value[OPTION_reviewer], false) || is_read(real, arguments->value[OPTION_criteria], true) ||
		is_read(real, arguments->value[OPTION_registers], true) || is_read(real, arguments->value[OPTION_previous], false) ||
		is_read(real, arguments->value[OPTION_reports], true) || is_read(real, arguments->value[OPTION_approved], false) ||
		is_read(real, arguments->value[OPTION_replies], true);
	for (uint32_t i = 0; i < arguments->operands && !read; i++)
		read = is_read(real, arguments->operand[i], false);
	return read;
}

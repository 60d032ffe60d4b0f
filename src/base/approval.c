/* SPDX-License-Identifier: MIT
 * Which approvals of the register speak of a package as a whole.
 */
#include "registers.h"

#include <strings.h>

bool is_package_approval(const Approval *row, const Submittal *submittal)
{
	static const char word[] = "submittal ";
	if (!is_value(&row->item.given) || !is_value(&submittal->submittal.given))
		return false;
	const char *item = row->item.text;
	if (strncasecmp(item, word, sizeof word - 1) == 0)
		item += sizeof word - 1;
	return strcasecmp(item, submittal->submittal.text) == 0;
}

static bool is_text(const Text *text, const char *wanted)
{
	return is_value(&text->given) && text->text != NULL && strcasecmp(text->text, wanted) == 0;
}

bool is_approval_for(const Approval *row, const Text *project)
{
	return is_text(&row->project, "all") || (is_value(&project->given) && is_text(&row->project, project->text));
}

/* SPDX-License-Identifier: MIT
 * `calcs`: the sheet of calculations of one submittal.
 */
#include "commands.h"
#include "pages.h"

static void make_calcs(Page *page, Verdict *verdict, Arena *arena)
{
	Sheet *sheet = make_sheet(verdict, arena);
	find_margins(sheet, verdict, arena);
	page->sheet = sheet;
}

int command_calcs(const Arguments *arguments)
{
	return print_pages(arguments, make_calcs);
}

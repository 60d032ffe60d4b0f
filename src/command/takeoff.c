/* SPDX-License-Identifier: MIT
 * `takeoff`: how much of every part one submittal needs.
 */
#include "commands.h"
#include "pages.h"

static void make_takeoff(Page *page, Verdict *verdict, Arena *arena)
{
	page->takeoff = take_off(verdict, arena);
}

int command_takeoff(const Arguments *arguments)
{
	return print_pages(arguments, make_takeoff);
}

/* SPDX-License-Identifier: MIT
 * `options`: what would be accepted in one submittal.
 */
#include "commands.h"
#include "pages.h"

static void make_options(Page *page, Verdict *verdict, Arena *arena)
{
	page->offers = make_offers(verdict, arena);
}

int command_options(const Arguments *arguments)
{
	return print_pages(arguments, make_options);
}

/* SPDX-License-Identifier: MIT
 * `order`: a list of purchases against one submittal.
 */
#include "commands.h"
#include "pages.h"
#include "opening.h"
#include "say.h"

static bool read_beside(Page *page, const char *path, Arena *arena)
{
	Complaints faults = { .arena = arena };
	const Source *source = open_file(arena, &(Opening){ path, SOURCE_ORDER, SUBMITTAL_MIB }, &faults);
	if (!faults.broken)
		page->order_list = read_order(arena, source, &faults);
	if (page->order_list == NULL)
		say_faults(arena, &faults, source);
	return page->order_list != NULL;
}

/* The report that --approved names, and its submittal judged anew: what was approved then is held by today's registers. */
static bool read_approved(Page *page, Shared *shared, Arena *arena)
{
	const char *path = shared->arguments->value[OPTION_approved];
	if (path == NULL)
		return true;
	Complaints faults = { .arena = arena };
	const Source *source;
	page->approved = open_report(arena, &(Opening){ path, SOURCE_SUBMITTAL, REPORT_MIB }, &source, &faults);
	if (page->approved == NULL) {
		say_faults(arena, &faults, source);
		say_error(arena_printf(arena, "%s: no report that can be used", path));
		return false;
	}
	Verdict *verdict = judge_earlier(shared, page->approved, arena);
	page->approved_verdict = verdict;
	if (verdict->broken_file)
		say_broken(verdict, path, arena);
	return !verdict->broken_file;
}

static void make_order(Page *page, Verdict *verdict, Arena *arena)
{
	page->order = hold_order(&(OrderBasis){ verdict, page->approved_verdict, page->approved }, page->order_list, arena);
}

static int order_status(const Page *page)
{
	return page->order->findings > 0 ? STATUS_FOUND : STATUS_FINE;
}

int command_order(const Arguments *arguments)
{
	static const TwoFiles two = { "FILE and ORDER.csv, of which one may be - for standard input", read_beside, read_approved,
		make_order, order_status };
	return print_pages_of_two(arguments, &two);
}

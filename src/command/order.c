/* SPDX-License-Identifier: MIT
 * `order`: a list of purchases against one submittal.
 */
#include "commands.h"
#include "pages.h"
#include "say.h"

#include "file.h"

enum { FILE_LIMIT = 4 * 1024 * 1024 };

/* What stops the file; nothing where its bytes are there. */
static void complain_of_file(Complaints *faults, FileState state, const char *why)
{
	Place whole = { .source = SOURCE_ORDER };
	if (state == FILE_NOT_OPENED)
		complain(faults, MESSAGE_FIL_01, whole, (About){ .value = why });
	else if (state == FILE_NOT_REGULAR)
		complain(faults, MESSAGE_FIL_02, whole, (About){ 0 });
	else if (state == FILE_TOO_LARGE)
		complain(faults, MESSAGE_TAB_17, whole, (About){ .want = "4 MiB" });
}

static bool read_beside(Page *page, const char *path, Arena *arena)
{
	Complaints faults = { .arena = arena };
	const char *bytes = "", *why = NULL;
	size_t length = 0;
	FileState state = file_read(arena, path, FILE_LIMIT, &bytes, &length, &why);
	const Source *source = source_make(arena, path, state == FILE_READ ? bytes : "", state == FILE_READ ? length : 0, SOURCE_ORDER);
	complain_of_file(&faults, state, why);
	faults.source = &source;
	faults.sources = 1;
	if (state == FILE_READ)
		page->order_list = read_order(arena, source, &faults);
	if (page->order_list != NULL)
		return true;
	Out *out = out_make(arena, OUT_TERMINAL);
	write_faults(out, &faults);
	send_error(out);
	return false;
}

/* The report that --approved names, and its submittal judged anew: what was approved then is held by today's registers. */
static bool read_approved(Page *page, Shared *shared, Arena *arena)
{
	const char *path = shared->arguments->value[OPTION_approved], *why = NULL, *bytes = "";
	size_t length = 0;
	if (path == NULL)
		return true;
	FileState state = file_read(arena, path, REPORT_LIMIT, &bytes, &length, &why);
	if (state != FILE_READ) {
		say_error(arena_printf(arena, "%s: %s", path, state == FILE_NOT_OPENED ? why : state == FILE_NOT_REGULAR ? "no regular file"
			: "too large for a report: more than 32 MiB"));
		return false;
	}
	Complaints faults = { .arena = arena };
	const Source *source = source_make(arena, path, bytes, length, SOURCE_SUBMITTAL);
	page->approved = read_earlier(arena, source, &faults);
	if (page->approved == NULL) {
		faults.source = &source;
		faults.sources = 1;
		Out *out = out_make(arena, OUT_TERMINAL);
		write_faults(out, &faults);
		send_error(out);
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
		make_order,
		order_status };
	return print_pages_of_two(arguments, &two);
}

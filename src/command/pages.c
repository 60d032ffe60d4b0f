/* SPDX-License-Identifier: MIT
 * The commands that print one page of one submittal, alone or beside a second file. They judge nothing themselves, so without a
 * second file their status is 0 unless the file cannot be read.
 */
#include "pages.h"

#include "file.h"
#include "say.h"
#include "targets.h"

#include <string.h>

/* What the reader could not make out makes facts wait: say so before anyone wonders. */
static void say_messages(const Verdict *verdict, const char *path, Arena *arena)
{
	uint32_t count = 0;
	for (uint32_t i = 0; i < verdict->items; i++)
		count += verdict->item[i].found_by == FOUND_BY_READER;
	if (count > 0)
		say_error(arena_printf(arena, "%s: %u %s about how it is written; seamstamp review prints %s", path, count,
			count == 1 ? "message" : "messages", count == 1 ? "it" : "them"));
}

static int print_file(Shared *shared, const Targets *targets, const TwoFiles *two)
{
	Arena *arena = arena_make();
	const char *path = shared->arguments->operand[0];
	Page page = { .sheet = NULL };
	int status = STATUS_FAILED;
	Verdict *verdict = judge_file(shared, path, arena);
	if (verdict->broken_file) {
		say_broken(verdict, path, arena);
	} else if (accept_review(&shared->loaded, verdict) &&
		(two->read == NULL || two->read(&page, shared->arguments->operand[1], arena)) &&
		(two->beside == NULL || two->beside(&page, shared, arena))) {
		two->make(&page, verdict, arena);
		write_targets(targets, &page, arena);
		say_messages(verdict, path, arena);
		status = two->status != NULL ? two->status(&page) : STATUS_FINE;
	}
	arena_free(arena);
	return status;
}

static const char *wrong_operands(const Arguments *arguments, const TwoFiles *two)
{
	const char *name = arguments->command->name;
	if (arguments->operands != (two->read != NULL ? 2 : 1))
		return arena_printf(arguments->arena, "%s needs %s", name, two->needs);
	for (uint32_t i = 0; i < arguments->operands; i++)
		if (file_is_folder(arguments->operand[i]))
			return arena_printf(arguments->arena, "%s takes a file, not a folder", name);
	if (two->read != NULL && strcmp(arguments->operand[0], "-") == 0 && strcmp(arguments->operand[1], "-") == 0)
		return "standard input is one file; name the other";
	return NULL;
}

int print_pages_of_two(const Arguments *arguments, const TwoFiles *two)
{
	Shared shared = { .arguments = arguments, .as_of = INT32_MIN };
	Targets targets;
	const char *wrong = wrong_operands(arguments, two);
	if (wrong == NULL)
		wrong = wrong_shared(&shared);
	if (wrong == NULL)
		wrong = read_targets(arguments, &targets);
	if (wrong != NULL) {
		say_usage(arguments->command, wrong);
		return STATUS_FAILED;
	}
	if (!load_shared(&shared))
		return STATUS_FAILED;
	return print_file(&shared, &targets, two);
}

int print_pages(const Arguments *arguments, MakePage *make)
{
	TwoFiles one = { .needs = "one FILE, or - for standard input", .make = make };
	return print_pages_of_two(arguments, &one);
}

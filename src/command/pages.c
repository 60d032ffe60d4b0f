/* SPDX-License-Identifier: MIT
 * The commands that print one page of one submittal, alone or beside a second file. They judge nothing themselves, so without a
 * second file their status is 0 unless the file cannot be read.
 */
#include "pages.h"

#include "file.h"
#include "outputs.h"
#include "say.h"

#include <string.h>

/* One form of the page and where it goes; path NULL: standard output. */
typedef struct {
	const PageFormat *format;
	const char *path;
} Target;

static bool is_same_target(const Target *a, const Target *b)
{
	return a->path == NULL || b->path == NULL ? a->path == b->path : strcmp(a->path, b->path) == 0;
}

static const char *wrong_target(const Arguments *arguments, const Target *target, uint32_t count)
{
	if (target[count].path != NULL && overwrites_input(arguments, target[count].path))
		return arena_printf(arguments->arena, "--output %s would overwrite what this run reads", target[count].path);
	for (uint32_t i = 0; i < count; i++)
		if (is_same_target(&target[i], &target[count]))
			return arena_printf(arguments->arena, "two formats go to %s; give each an --output of its own",
				target[count].path != NULL ? target[count].path : "standard output");
	return NULL;
}

/* What is wrong with the formats and outputs; NULL if nothing is. */
static const char *read_targets(const Arguments *arguments, Target target[MOST_OUTPUTS], uint32_t *count)
{
	static const Wanted text = { NULL, NULL };
	const char *page = arguments->command->name;
	uint32_t outputs = arguments->outputs > 0 ? arguments->outputs : 1;
	for (*count = 0; *count < outputs; (*count)++) {
		const Wanted *wanted = arguments->outputs > 0 ? &arguments->wanted[*count] : &text;
		bool standard = wanted->path == NULL || strcmp(wanted->path, "-") == 0;
		const char *name = wanted->format != NULL ? wanted->format : "text";
		target[*count] = (Target){ page_format(page, name), standard ? NULL : wanted->path };
		if (target[*count].format == NULL)
			return arena_printf(arguments->arena, "%s has no format %s (there are: %s)", page, name,
				page_formats_listed(page, arguments->arena));
		const char *wrong = wrong_target(arguments, target, *count);
		if (wrong != NULL)
			return wrong;
	}
	return NULL;
}

static void write_target(const Target *target, const Page *page, Arena *arena)
{
	Out *out = out_make(arena, target->format->escape);
	target->format->write(out, page, arena);
	if (target->path == NULL) {
		send_out(out);
		return;
	}
	size_t length;
	const char *text = out_text(out, &length);
	file_write(target->path, text, length);
}

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

static int print_file(Shared *shared, const Target *target, uint32_t targets, const TwoFiles *two)
{
	Arena *arena = arena_make();
	const char *path = shared->arguments->operand[0];
	Page page = { .sheet = NULL };
	int status = STATUS_FAILED;
	Verdict *verdict = judge_file(shared, path, arena);
	if (verdict->broken_file) {
		say_broken(verdict, path, arena);
	} else if (accept_review(&shared->loaded, verdict) &&
		(two->read == NULL || two->read(&page, shared->arguments->operand[1], arena))) {
		two->make(&page, verdict, arena);
		for (uint32_t i = 0; i < targets; i++)
			write_target(&target[i], &page, arena);
		flush_out();
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
	Target target[MOST_OUTPUTS];
	uint32_t targets = 0;
	const char *wrong = wrong_operands(arguments, two);
	if (wrong == NULL)
		wrong = wrong_shared(&shared);
	if (wrong == NULL)
		wrong = read_targets(arguments, target, &targets);
	if (wrong != NULL) {
		say_usage(arguments->command, wrong);
		return STATUS_FAILED;
	}
	if (!load_shared(&shared))
		return STATUS_FAILED;
	return print_file(&shared, target, targets, two);
}

int print_pages(const Arguments *arguments, MakePage *make)
{
	TwoFiles one = { .needs = "one FILE, or - for standard input", .make = make };
	return print_pages_of_two(arguments, &one);
}

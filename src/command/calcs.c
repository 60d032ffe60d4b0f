/* SPDX-License-Identifier: MIT
 * `calcs`: the sheet of calculations of one submittal. It judges nothing, so its status is 0 unless the file cannot be read.
 */
#include "commands.h"
#include "file.h"
#include "judging.h"
#include "report.h"
#include "say.h"

#include <string.h>

/* One form of the sheet and where it goes; path NULL: standard output. */
typedef struct {
	const SheetFormat *format;
	const char *path;
} Target;

static bool is_same_target(const Target *a, const Target *b)
{
	return a->path == NULL || b->path == NULL ? a->path == b->path : strcmp(a->path, b->path) == 0;
}

static const char *wrong_target(const Arguments *arguments, const Target *target, uint32_t count)
{
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
	uint32_t outputs = arguments->outputs > 0 ? arguments->outputs : 1;
	for (*count = 0; *count < outputs; (*count)++) {
		const Wanted *wanted = arguments->outputs > 0 ? &arguments->wanted[*count] : &text;
		bool standard = wanted->path == NULL || strcmp(wanted->path, "-") == 0;
		const char *name = wanted->format != NULL ? wanted->format : "text";
		target[*count] = (Target){ sheet_format(name), standard ? NULL : wanted->path };
		if (target[*count].format == NULL)
			return arena_printf(arguments->arena, "calcs has no format %s (there are: text, json, html)", name);
		const char *wrong = wrong_target(arguments, target, *count);
		if (wrong != NULL)
			return wrong;
	}
	return NULL;
}

static void write_target(const Target *target, const Sheet *sheet, Arena *arena)
{
	Out *out = out_make(arena, target->format->escape);
	target->format->write(out, sheet, arena);
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

static int print_sheet(Shared *shared, const Target *target, uint32_t targets)
{
	Arena *arena = arena_make();
	const char *path = shared->arguments->operand[0];
	Verdict *verdict = judge_file(shared, path, arena);
	bool broken = verdict->broken_file;
	if (broken) {
		say_broken(verdict, path, arena);
	} else {
		Sheet *sheet = make_sheet(verdict, arena);
		find_margins(sheet, verdict, arena);
		for (uint32_t i = 0; i < targets; i++)
			write_target(&target[i], sheet, arena);
		flush_out();
		say_messages(verdict, path, arena);
	}
	arena_free(arena);
	return broken ? STATUS_FAILED : STATUS_FINE;
}

int command_calcs(const Arguments *arguments)
{
	Shared shared = { .arguments = arguments, .as_of = INT32_MIN };
	Target target[MOST_OUTPUTS];
	uint32_t targets = 0;
	const char *wrong = arguments->operands != 1 ? "calcs needs one FILE, or - for standard input"
		: file_is_folder(arguments->operand[0])  ? "calcs takes a file, not a folder"
												 : wrong_shared(&shared);
	if (wrong == NULL)
		wrong = read_targets(arguments, target, &targets);
	if (wrong != NULL) {
		say_usage(arguments->command, wrong);
		return STATUS_FAILED;
	}
	if (!load_shared(&shared))
		return STATUS_FAILED;
	return print_sheet(&shared, target, targets);
}

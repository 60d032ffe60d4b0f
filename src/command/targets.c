/* SPDX-License-Identifier: MIT
 * The formats of a page against the command line, and the page into each of them.
 */
#include "targets.h"

#include "file.h"
#include "outputs.h"
#include "say.h"

#include <string.h>

static bool is_same_target(const Target *a, const Target *b)
{
	return a->path == NULL || b->path == NULL ? a->path == b->path : strcmp(a->path, b->path) == 0;
}

static const char *wrong_target(const Arguments *arguments, const Targets *targets, const Target *target)
{
	if (target->path != NULL && overwrites_input(arguments, target->path))
		return arena_printf(arguments->arena, "--output %s would overwrite what this run reads", target->path);
	for (uint32_t i = 0; i < targets->count; i++)
		if (is_same_target(&targets->at[i], target))
			return arena_printf(arguments->arena, "two formats go to %s; give each an --output of its own",
				target->path != NULL ? target->path : "standard output");
	return NULL;
}

const char *read_targets(const Arguments *arguments, Targets *targets)
{
	static const Wanted text = { NULL, NULL };
	const char *page = arguments->command->name;
	uint32_t outputs = arguments->outputs > 0 ? arguments->outputs : 1;
	for (targets->count = 0; targets->count < outputs; targets->count++) {
		const Wanted *wanted = arguments->outputs > 0 ? &arguments->wanted[targets->count] : &text;
		bool standard = wanted->path == NULL || strcmp(wanted->path, "-") == 0;
		const char *name = wanted->format != NULL ? wanted->format : "text";
		Target target = { page_format(page, name), standard ? NULL : wanted->path };
		if (target.format == NULL)
			return arena_printf(arguments->arena, "%s has no format %s (there are: %s)", page, name,
				page_formats_listed(page, arguments->arena));
		const char *wrong = wrong_target(arguments, targets, &target);
		if (wrong != NULL)
			return wrong;
		targets->at[targets->count] = target;
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

void write_targets(const Targets *targets, const Page *page, Arena *arena)
{
	for (uint32_t i = 0; i < targets->count; i++)
		write_target(&targets->at[i], page, arena);
	flush_out();
}

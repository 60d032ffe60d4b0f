/* SPDX-License-Identifier: MIT
 * `why CODE`: what a rule or a message asks and why. An unknown code is answered with the nearest one.
 */
#include "builtin.h"
#include "commands.h"
#include "loading.h"
#include "report.h"
#include "say.h"
#include "suggest.h"

#include <string.h>

static void say_no_code(const Arguments *arguments, const Criteria *criteria, const char *code)
{
	size_t count = 0;
	while (why_code_at(criteria, count) != NULL)
		count++;
	const char **codes = TAKE(arguments->arena, const char *, count + 1);
	for (size_t i = 0; i < count; i++)
		codes[i] = why_code_at(criteria, i);
	int nearest = suggest(code, codes, count);
	const char *hint = nearest >= 0 ? arena_printf(arguments->arena, "; did you mean %s?", codes[nearest]) : "";
	say_usage(arguments->command, arena_printf(arguments->arena, "no rule or message has the code %s%s", code, hint));
}

static int print_codes(const Arguments *arguments, const Library *library)
{
	int status = STATUS_FINE;
	Out *out = out_make(arguments->arena, OUT_TERMINAL);
	for (uint32_t i = 0; i < arguments->operands; i++) {
		if (i > 0)
			SAY(out, "\n");
		if (!write_why(out, library, arguments->operand[i], arguments->arena)) {
			say_no_code(arguments, library->criteria, arguments->operand[i]);
			status = STATUS_FAILED;
		}
	}
	if (status != STATUS_FAILED || arguments->operands > 1) {
		write_cautions(out, library->reference, (CautionsFor){ "why", "" }, arguments->arena);
		send_out(out);
	}
	flush_out();
	return status;
}

/* The submittal that the examples change. */
static Node *clean_example(Arena *arena)
{
	const Builtin *file = builtin_find("examples/clean.yaml");
	if (file == NULL)
		return NULL;
	size_t length = (size_t)(file->end - file->bytes);
	Complaints complaints = { .arena = arena };
	return read_yaml(arena, source_make(arena, file->name, file->bytes, length, SOURCE_SUBMITTAL), &complaints);
}

int command_why(const Arguments *arguments)
{
	if (arguments->operands == 0) {
		say_usage(arguments->command, "why needs a CODE, as it stands in a report: seamstamp why CLP-01");
		return STATUS_FAILED;
	}
	Loaded loaded = { .arena = arguments->arena, .reference = read_reference(arguments->arena) };
	const char *name = arguments->value[OPTION_criteria];
	const Shelf *shelf = load_criteria(&loaded, name != NULL ? name : "sample-2026", true);
	if (shelf == NULL)
		say_usage(arguments->command, arena_printf(arguments->arena, "no criteria %s: neither a folder nor one of: %s", name,
			edition_names(arguments->arena)));
	if (shelf == NULL || shelf->criteria == NULL)
		return STATUS_FAILED;
	Complaints faults = { .arena = arguments->arena };
	Library library = { shelf->criteria, loaded.reference, read_registers(arguments->arena, NULL, loaded.reference, &faults),
		clean_example(arguments->arena) };
	return print_codes(arguments, &library);
}

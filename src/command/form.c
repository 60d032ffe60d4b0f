/* SPDX-License-Identifier: MIT
 * `form`: the blank form, or the page of every key; both carry the cautions that concern them.
 */
#include "commands.h"
#include "pipeline.h"
#include "report.h"
#include "say.h"

#include <string.h>

/* The stage named; false if there is none of this name. */
static bool read_stage(const char *text, Stage *stage)
{
	const Field *field = field_find(&Submittal_record, "stage", 5);
	int word = text != NULL ? word_find(field->words, text, strlen(text)) : STAGE_application;
	*stage = (Stage)word;
	return word >= 0;
}

static int print_form(const Arguments *arguments, Stage stage)
{
	Arena *arena = arguments->arena;
	Out *out = out_make(arena, OUT_TERMINAL);
	const Reference *reference = read_reference(arena);
	bool blank = arguments->value[OPTION_blank] != NULL;
	if (blank)
		write_blank_form(out, stage, arena);
	else
		write_form_reference(out, arena);
	write_cautions(out, reference, (CautionsFor){ "form", blank ? "# " : "" }, arena);
	send_out(out);
	flush_out();
	return STATUS_FINE;
}

int command_form(const Arguments *arguments)
{
	bool blank = arguments->value[OPTION_blank] != NULL, reference = arguments->value[OPTION_reference] != NULL;
	Stage stage;
	const char *wrong = arguments->operands > 0 ? "form takes no file"
		: blank == reference                      ? "form needs --blank or --reference"
		: reference && arguments->value[OPTION_stage] != NULL ? "--stage goes with --blank"
		: !read_stage(arguments->value[OPTION_stage], &stage) ? "no such stage; write bid, application, order or close-out"
															  : NULL;
	if (wrong != NULL) {
		say_usage(arguments->command, wrong);
		return STATUS_FAILED;
	}
	return print_form(arguments, stage);
}

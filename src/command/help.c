/* SPDX-License-Identifier: MIT
 * Pages of help, printed from the tables of commands and options; nothing is listed that does not work.
 */
#include "command.h"
#include "say.h"
#include "version.h"

#include <string.h>

enum { WIDTH = 100, COLUMN = 28 };

static void put_pair(Out *out, const char *left, const char *right)
{
	SAY(out, "  ");
	put(out, left);
	int used = 2 + (int)strlen(left);
	put_spaces(out, used < COLUMN ? COLUMN - used : 2);
	put_wrapped(out, right, used < COLUMN ? COLUMN : used + 2, COLUMN, WIDTH);
	SAY(out, "\n");
}

static void put_manners(Out *out)
{
	SAY(out, "\nStatus: 0 nothing found at or above the gate, 1 something found, 2 could not be judged.\n"
		"It advises, a person decides: nothing it prints is an approval.\n");
}

void print_help(void)
{
	Arena *arena = arena_make();
	Out *out = out_make(arena, OUT_TERMINAL);
	SAY(out, "seamstamp reviews what is submitted for the weathertight warranty of a standing-seam metal roof.\n\n"
		"  seamstamp form --blank > mine.yaml     a submittal to fill in\n"
		"  seamstamp review mine.yaml             a numbered list of what stands in its way\n"
		"  seamstamp calcs mine.yaml              every figure behind it, worked out before your eyes\n"
		"  seamstamp why LST-10                   what a rule asks, and why it matters on a roof\n\n");
	const Command *command;
	for (size_t i = 0; (command = command_at(i)) != NULL; i++)
		put_pair(out, arena_printf(arena, "%s %s", command->name, command->operands), command->title);
	SAY(out, "\n`seamstamp COMMAND --help` lists the options of a command; `seamstamp --version` prints the version.\n");
	put_manners(out);
	send_out(out);
	flush_out();
	arena_free(arena);
}

void print_command_help(const Command *command)
{
	Arena *arena = arena_make();
	Out *out = out_make(arena, OUT_TERMINAL);
	const char *blank = *command->operands != '\0' ? " " : "";
	put(out, arena_printf(arena, "seamstamp %s [OPTION]...%s%s", command->name, blank, command->operands));
	SAY(out, "\n\n");
	put_wrapped(out, command->title, 0, 0, WIDTH);
	SAY(out, ".\n\n");
	for (int i = 0; i < OPTION_COUNT; i++) {
		const Option *option = option_at((size_t)i);
		if (option->commands & command->bit)
			put_pair(out, option->takes != NULL ? arena_printf(arena, "--%s %s", option->name, option->takes)
				: arena_printf(arena, "--%s", option->name), option->help);
	}
	SAY(out, "\n");
	out_literal(out, command->more, strlen(command->more));
	put_manners(out);
	send_out(out);
	flush_out();
	arena_free(arena);
}

void print_version(void)
{
	Arena *arena = arena_make();
	Out *out = out_make(arena, OUT_TERMINAL);
	SAY(out, "seamstamp " SEAMSTAMP_VERSION "\n");
	send_out(out);
	flush_out();
	arena_free(arena);
}

/* SPDX-License-Identifier: MIT
 * seamstamp: chooses a command and runs it. What the commands do stands in src/command/, what happens to a submittal in
 * include/pipeline.h. The status is 0, 1 or 2: nothing found, something found, could not be judged.
 */
#include "command.h"

#include <string.h>
#include <unistd.h>

/* What is asked for without a command: help or the version; -1 if neither. */
static int run_without_command(int count, char **word)
{
	if (count < 2 || strcmp(word[1], "--help") == 0 || strcmp(word[1], "-h") == 0) {
		print_help();
		return 0;
	}
	if (strcmp(word[1], "--version") == 0) {
		print_version();
		return 0;
	}
	if (strcmp(word[1], "help") != 0)
		return -1;
	const Command *command = count > 2 ? command_find(word[2]) : NULL;
	if (command != NULL)
		print_command_help(command);
	else
		print_help();
	return 0;
}

static int say_no_command(Arena *arena, const char *name)
{
	const char *nearest = command_nearest(name);
	const char *hint = nearest != NULL ? arena_printf(arena, "; did you mean %s?", nearest)
		: access(name, F_OK) == 0 ? arena_printf(arena, "; to review a file: seamstamp review %s", name) : "";
	say_usage(NULL, arena_printf(arena, "no command %s%s", name, hint));
	return 2;
}

static int run_command(Arena *arena, const Command *command, int count, char **word)
{
	Arguments arguments = { .arena = arena, .command = command };
	if (!arguments_read(&arguments, count, word))
		return 2;
	if (arguments.value[OPTION_help] != NULL) {
		print_command_help(command);
		return 0;
	}
	return command->run(&arguments);
}

int main(int count, char **word)
{
	int status = run_without_command(count, word);
	if (status >= 0)
		return status;
	Arena *arena = arena_make();
	const Command *command = command_find(word[1]);
	status = command != NULL ? run_command(arena, command, count - 2, word + 2) : say_no_command(arena, word[1]);
	arena_free(arena);
	return status;
}

/* SPDX-License-Identifier: MIT
 * The command line against the table of options. Names are exact: no abbreviations, which a later option would break. A wrong
 * name is answered with the nearest right one and never run.
 */
#include "command.h"
#include "suggest.h"

#include <string.h>

static const Option options[] = {
#define OPTION(id, name, takes, commands, help) { name, takes, help, commands },
#include "options.def"
};

const Option *option_at(size_t i)
{
	return i < OPTION_COUNT ? &options[i] : NULL;
}

static const char *nearest_option(const Command *command, const char *name)
{
	const char *names[OPTION_COUNT];
	size_t count = 0;
	for (int i = 0; i < OPTION_COUNT; i++)
		if (options[i].commands & command->bit)
			names[count++] = options[i].name;
	int nearest = suggest(name, names, count);
	return nearest >= 0 ? names[nearest] : NULL;
}

/* A word of the command line taken apart: --name or --name=value. */
typedef struct {
	const char *name, *value; /* value: NULL if there is no = */
} Given;

static Given take_apart(const char *word, Arena *arena)
{
	const char *name = word + 2, *equals = strchr(name, '=');
	if (equals == NULL)
		return (Given){ name, NULL };
	return (Given){ arena_text(arena, name, (size_t)(equals - name)), equals + 1 };
}

static int option_find(const Command *command, const char *name)
{
	for (int i = 0; i < OPTION_COUNT; i++)
		if ((options[i].commands & command->bit) && strcmp(options[i].name, name) == 0)
			return i;
	return -1;
}

static bool say_unknown(const Arguments *arguments, const char *word, const char *name)
{
	const char *nearest = nearest_option(arguments->command, name);
	const char *hint = nearest != NULL ? arena_printf(arguments->arena, "; did you mean --%s?", nearest) : "";
	say_usage(arguments->command, arena_printf(arguments->arena, "no option %s%s", word, hint));
	return false;
}

static bool say_wrong(const Arguments *arguments, const char *name, const char *what)
{
	say_usage(arguments->command, arena_printf(arguments->arena, "--%s %s", name, what));
	return false;
}

/* Formats and outputs go in pairs: a format opens one, an output completes it, or opens one of the text format. */
static bool take_pair(Arguments *arguments, int option, const char *value)
{
	uint32_t count = arguments->outputs;
	Wanted *last = count > 0 ? &arguments->wanted[count - 1] : NULL;
	if (option == OPTION_output && last != NULL && last->path == NULL) {
		last->path = value;
		return true;
	}
	if (count == MOST_OUTPUTS)
		return say_wrong(arguments, options[option].name, "is given too often");
	Wanted wanted = { option == OPTION_format ? value : NULL, option == OPTION_output ? value : NULL };
	arguments->wanted[arguments->outputs++] = wanted;
	return true;
}

static bool take_value(Arguments *arguments, int option, const char *value)
{
	if (option == OPTION_format || option == OPTION_output)
		return take_pair(arguments, option, value);
	if (arguments->value[option] != NULL && options[option].takes != NULL)
		return say_wrong(arguments, options[option].name, "is given twice");
	arguments->value[option] = value;
	return true;
}

bool arguments_read(Arguments *arguments, int count, char **word)
{
	const char **operand = TAKE(arguments->arena, const char *, (size_t)count + 1);
	arguments->operand = operand;
	bool ended = false;
	for (int i = 0; i < count; i++) {
		if (ended || word[i][0] != '-' || word[i][1] == '\0') {
			operand[arguments->operands++] = word[i];
			continue;
		}
		if (strcmp(word[i], "--") == 0) {
			ended = true;
			continue;
		}
		Given given = take_apart(strcmp(word[i], "-h") == 0 ? "--help" : word[i], arguments->arena);
		int option = word[i][1] == '-' || strcmp(word[i], "-h") == 0 ? option_find(arguments->command, given.name) : -1;
		if (option < 0)
			return say_unknown(arguments, word[i], given.name);
		bool takes = options[option].takes != NULL;
		if (!takes && given.value != NULL)
			return say_wrong(arguments, given.name, "takes no value");
		if (takes && given.value == NULL && i + 1 == count)
			return say_wrong(arguments, given.name, arena_printf(arguments->arena, "needs %s behind it", options[option].takes));
		if (!take_value(arguments, option, !takes ? "" : given.value != NULL ? given.value : word[++i]))
			return false;
	}
	return true;
}

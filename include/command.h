/* SPDX-License-Identifier: MIT
 * Command: one row of the table of commands. Arguments: what the command line asks of it, checked against options.def.
 */
#ifndef COMMAND_H
#define COMMAND_H

#include "arena.h"

#include <stdbool.h>
#include <stdint.h>

enum {
	FOR_REVIEW = 1, FOR_FORM = 2, FOR_WHY = 4, FOR_CALCS = 8, FOR_TAKEOFF = 16, FOR_OPTIONS = 32, FOR_ORDER = 64, FOR_LOG = 128,
	FOR_CRITERIA = 256
};

typedef enum {
#define OPTION(id, ...) OPTION_##id,
#include "options.def"
	OPTION_COUNT
} OptionId;

typedef struct {
	const char *name, *takes, *help;
	unsigned commands;
} Option;

const Option *option_at(size_t i);

enum { MOST_OUTPUTS = 8 };

/* One --format with the --output behind it; NULL where not given. */
typedef struct {
	const char *format, *path;
} Wanted;

typedef struct Command Command;

typedef struct {
	Arena *arena;
	const Command *command;
	const char *value[OPTION_COUNT]; /* as given, "" for one that takes nothing; NULL: not given */
	Wanted wanted[MOST_OUTPUTS];
	uint32_t outputs;
	const char *const *operand; /* files, folders, codes */
	uint32_t operands;
} Arguments;

struct Command {
	const char *name, *operands, *title, *more;
	unsigned bit;
	int (*run)(const Arguments *arguments); /* gives the exit status */
};

const Command *command_at(size_t i);

/* Reads the words behind the command's name; false if one is wrong, which has been said on standard error. */
bool arguments_read(Arguments *arguments, int count, char **word);

/* The command of a name, or NULL. */
const Command *command_find(const char *name);

/* The name nearest to `name` among the commands, for "did you mean"; NULL if none is near. */
const char *command_nearest(const char *name);

/* ---- what is printed outside a report ---- */

/* "seamstamp: text" on standard error, escaped; with the way to the help of a command, or to that of the program. */
void say_error(const char *text);
void say_usage(const Command *command, const char *text);

/* Pages of help from the tables: the short one with examples first; that of one command. */
void print_help(void);
void print_command_help(const Command *command);
void print_version(void);

#endif

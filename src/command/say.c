/* SPDX-License-Identifier: MIT
 * What goes to the terminal outside a report. Results go to standard output, everything else to standard error.
 */
#include "say.h"

#include "command.h"
#include "fail.h"

#include <stdio.h>

static void send_to(FILE *stream, const Out *out)
{
	size_t length;
	const char *text = out_text(out, &length);
	fwrite(text, 1, length, stream);
}

void send_out(const Out *out)
{
	send_to(stdout, out);
	if (ferror(stdout))
		fail("cannot write", "standard output");
}

void send_error(const Out *out)
{
	fflush(stdout);
	send_to(stderr, out);
}

void flush_out(void)
{
	if (fflush(stdout) != 0 || ferror(stdout))
		fail("cannot write", "standard output");
}

void say_error(const char *text)
{
	Arena *arena = arena_make();
	Out *out = out_make(arena, OUT_TERMINAL);
	SAY(out, "seamstamp: ");
	put(out, text);
	SAY(out, "\n");
	send_error(out);
	arena_free(arena);
}

void say_usage(const Command *command, const char *text)
{
	say_error(text);
	if (command != NULL)
		fprintf(stderr, "See `seamstamp %s --help`.\n", command->name);
	else
		fputs("See `seamstamp --help`.\n", stderr);
}

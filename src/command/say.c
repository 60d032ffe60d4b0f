/* SPDX-License-Identifier: MIT
 * What goes to the terminal outside a report. Results go to standard output, everything else to standard error.
 */
#include "say.h"

#include "command.h"
#include "fail.h"

#include <errno.h>
#include <stdio.h>
#include <unistd.h>

/* By write itself: what is killed behind it leaves the whole text. */
void send_text(const char *text, size_t length)
{
	flush_out();
	while (length > 0) {
		ssize_t n = write(STDOUT_FILENO, text, length);
		if (n < 0 && errno != EINTR)
			fail("cannot write", "standard output");
		text += n > 0 ? n : 0;
		length -= n > 0 ? (size_t)n : 0;
	}
}

void send_out(const Out *out)
{
	size_t length;
	const char *text = out_text(out, &length);
	send_text(text, length);
}

void send_error(const Out *out)
{
	size_t length;
	const char *text = out_text(out, &length);
	fflush(stdout);
	fwrite(text, 1, length, stderr);
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

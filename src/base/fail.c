/* SPDX-License-Identifier: MIT
 * Ends the process early with one line, without memory and without buffers: there may be none left.
 */
#include "fail.h"
#include "escape.h"

#include <string.h>
#include <unistd.h>

typedef struct {
	char bytes[1024];
	size_t used;
} Line;

static void add(Line *line, const char *text, size_t length)
{
	if (length < sizeof line->bytes - line->used) {
		memcpy(line->bytes + line->used, text, length);
		line->used += length;
	}
}

_Noreturn void fail(const char *what, const char *name)
{
	Line line = { .used = 0 };
	add(&line, "seamstamp: ", strlen("seamstamp: "));
	add(&line, what, strlen(what));
	if (name != NULL) {
		add(&line, ": ", 2);
		for (size_t left = strlen(name); left > 0;) {
			Shown shown = shown_at(name, left);
			if (shown.escape[0] != '\0')
				add(&line, shown.escape, strlen(shown.escape));
			else
				add(&line, name, shown.bytes);
			name += shown.bytes;
			left -= shown.bytes;
		}
	}
	add(&line, "\n", 1);
	/* Nobody can be told if this fails too. */
	ssize_t written = write(STDERR_FILENO, line.bytes, line.used);
	(void)written;
	_exit(2);
}

/* SPDX-License-Identifier: MIT
 * What stands at one place of a text from a file: a character to show as it is, or one to show as an escape.
 */
#ifndef ESCAPE_H
#define ESCAPE_H

#include <stddef.h>

enum { LONGEST_ESCAPE = 16 };

typedef struct {
	size_t bytes; /* it takes in the text, at least 1 */
	int width; /* columns on a terminal, of the escape if it has one */
	char escape[LONGEST_ESCAPE]; /* "" if it is shown as it is, else "\x1b", "\u{202e}", "\n" */
} Shown;

/* The character at the start of `text`; `length` is at least 1. */
Shown shown_at(const char *text, size_t length);

/* Whether a byte is printable ASCII, which needs no look at shown_at. */
static inline int is_plain(unsigned char byte)
{
	return byte >= 0x20 && byte < 0x7f;
}

#endif

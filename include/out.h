/* SPDX-License-Identifier: MIT
 * Out: the one writer. Text from files is escaped by the writer's table wherever it is printed; only literals of the program go
 * out as they are. The first error stays and is asked once.
 */
#ifndef OUT_H
#define OUT_H

#include "arena.h"

#include <stdbool.h>

typedef enum {
	OUT_TERMINAL, /* controls, bidirectional marks and the like as \x1b, \u{202e}; line breaks as \n */
	OUT_CSV, /* one cell: the same, quotes doubled, a formula's first sign prefixed by ' */
	OUT_MARKUP /* the same, and & < > " ' as entities */
} OutEscape;

typedef struct Out Out;

/* A writer that keeps its text in memory. */
Out *out_make(Arena *arena, OutEscape escape);

/* A literal of the program, as it is. */
#define SAY(out, literal) out_literal(out, "" literal "", sizeof(literal) - 1)
void out_literal(Out *out, const char *literal, size_t length);

/* Text from a file, a name or a message, escaped. */
void put(Out *out, const char *text);
void put_part(Out *out, const char *text, size_t length);

/* Text escaped, broken at blanks so that no line is longer than `width`; later lines are indented by `indent`. `at` is the column
 * already used; returns the column reached. */
int put_wrapped(Out *out, const char *text, int at, int indent, int width);

void put_count(Out *out, unsigned long value);
void put_spaces(Out *out, int count);

/* The columns a text takes on a terminal after escaping. */
int out_width(const char *text, size_t length);

/* What was written so far, NUL-terminated. */
const char *out_text(const Out *out, size_t *length);

#endif

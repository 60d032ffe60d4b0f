/* SPDX-License-Identifier: MIT
 * Source: the bytes of one file with its line starts. Place: where something stands in one.
 */
#ifndef SOURCE_H
#define SOURCE_H

#include "arena.h"

#include <stdbool.h>

/* Lines and columns count from 1, columns in Unicode code points; line 0 means the whole file. */
typedef struct {
	uint32_t line, column, length;
	uint16_t source; /* number of the Source it stands in */
} Place;

/* Numbers of the sources that belong to one submittal; files of an edition, a register or the reference come after. */
enum {
	SOURCE_SUBMITTAL, SOURCE_REVIEWER, SOURCE_PREVIOUS, SOURCE_ORDER, SOURCE_REPLIES,
	SOURCE_FIRST_SHARED, /* of an edition, up to the next */
	SOURCE_FIRST_REGISTER = 128, SOURCE_FIRST_REFERENCE = 192
};

typedef struct {
	const char *name; /* as given by the user, or "sample-2026/rules.csv" for a built-in file */
	const char *bytes; /* NUL-terminated; a byte-order mark is left out */
	size_t length;
	const uint32_t *line_start; /* byte offset of each line */
	uint32_t lines;
	uint16_t id;
	bool has_mark; /* the mark stands right before `bytes` */
} Source;

/* A source over bytes that stay; finds the line starts (LF, CRLF and lone CR end a line). */
Source *source_make(Arena *arena, const char *name, const char *bytes, size_t length, uint16_t id);

/* The bytes of one line without its end. */
const char *source_line(const Source *source, uint32_t line, size_t *length);

/* The byte offset of a place; the end of the file if it lies beyond. */
size_t source_offset(const Source *source, uint32_t line, uint32_t column);

/* The place of the byte at `offset`, with `length` code points. */
Place source_place(const Source *source, size_t offset, uint32_t length);

/* The SHA-256 of the bytes as 64 hex digits. */
const char *source_hash(const Source *source, Arena *arena);

#endif

/* SPDX-License-Identifier: MIT
 * One break of a YAML file while its cause is looked for.
 */
#ifndef ADVICE_H
#define ADVICE_H

#include "yaml_parts.h"

typedef struct {
	const Source *source;
	const Break *at;
	Arena *arena;
	Complaints *complaints;
	const char *line; /* the line of the problem */
	size_t length, byte; /* byte of the problem in it */
} Advice;

/* Complains at a place; the place of a line and column; the place of a byte of a line. */
void give_advice(const Advice *a, MessageId id, Place place, About about);
Place advice_place(const Advice *a, uint32_t line, uint32_t column);
Place advice_place_of_byte(const Advice *a, uint32_t line, size_t byte);

/* Whether libyaml's words hold these. */
bool says(const char *text, const char *words);

bool is_blank_byte(char c);

/* The blanks and dashes in front of a line. */
size_t indent_of(const char *line, size_t length);

/* A piece of a line without blanks around it, nor a comment behind it. */
const char *piece_of(const Advice *a, const char *line, size_t from, size_t to);

/* The byte behind the first `: ` of a line from `from` on, or 0. */
size_t behind_colon(const char *line, size_t length, size_t from);

/* Where the value around a byte of a line begins, and where a value that begins at `from` ends. */
size_t value_start(const char *line, size_t byte);
size_t value_end(const Advice *a, size_t from);

/* The key in front of a value that begins at `start`, with its colon (`mark: `); and that with the value in quotes. */
const char *key_before(const Advice *a, const char *line, size_t start);
const char *cured(const Advice *a, size_t start, const char *value);

/* Mistakes of whole lines. True: it was this one, and it was said. */
bool is_glued_colon(const Advice *a, uint32_t number);
bool is_line_without_colon(const Advice *a);
bool is_missing_colon(const Advice *a);
bool is_indentation(const Advice *a);

#endif

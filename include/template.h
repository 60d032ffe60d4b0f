/* SPDX-License-Identifier: MIT
 * Template: how a fact is worked out, with its inputs as {names}. In calculator notation it is an expression that anyone can put
 * numbers into; a fact that counts or looks up is said in words.
 */
#ifndef TEMPLATE_H
#define TEMPLATE_H

#include <stdbool.h>
#include <stddef.h>

/* The next piece of a template: a name without its braces, or the text up to the next one. */
typedef struct {
	const char *at;
	size_t length;
	bool is_name;
} Snippet;

/* False at the end; `*text` moves on. */
bool template_next(const char **text, Snippet *piece);

/* Whether it is calculator notation: numbers, names, + - * / ^ ( ) and the functions min max exp log log10 atan sqrt. */
bool is_calculator(const char *text);

#endif

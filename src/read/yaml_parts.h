/* SPDX-License-Identifier: MIT
 * What the YAML reader shares with the advice it gives: where libyaml stopped, and what a comment or a comma took away.
 */
#ifndef YAML_PARTS_H
#define YAML_PARTS_H

#include "complaint.h"
#include "node.h"

#include <yaml.h>

/* Where a file broke: libyaml's words and its two places, from 1; context_line 0: none. */
typedef struct {
	const char *problem, *context;
	uint32_t line, column, context_line, context_column;
} Break;

/* Explains a break in the words of the trade, with the cure, at the place where a person would look. */
void advise_break(const Source *source, const Break *at, Arena *arena, Complaints *complaints);

/* Whether a `#` may have begun a comment behind a value anywhere in the file; if not, nothing else is looked at. */
bool has_comments(const Source *source);

/* A plain scalar as it stands: under its key (NULL: in a list), up to its end. */
typedef struct {
	Node *scalar;
	const Node *key;
	yaml_mark_t end;
} Written;

/* Looks behind a plain scalar: complains and marks it if a comment took its text, or its end. */
void notice_comment(const Source *source, const Written *written, Complaints *complaints);

/* Whether a colon follows the key that ends at `end` in its source line. */
bool has_colon(const Source *source, const yaml_mark_t *end);

/* The first byte that no form may hold, or `length`: bad UTF-8, controls, breaks that editors do not count. Complains. */
size_t find_bad_bytes(const Source *source, Complaints *complaints);

#endif

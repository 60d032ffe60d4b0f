/* SPDX-License-Identifier: MIT
 * Built-in files: the reference tables, the sample edition and register, the clean example and the rule cases, by .incbin.
 */
#ifndef BUILTIN_H
#define BUILTIN_H

#include <stddef.h>

typedef struct {
	const char *name; /* "sample-2026/rules.csv", "reference/screws.csv" */
	const char *bytes, *end;
} Builtin;

/* A built-in file by name, or NULL. */
const Builtin *builtin_find(const char *name);

/* The built-in file number `i`, or NULL after the last. */
const Builtin *builtin_at(size_t i);

#endif

/* SPDX-License-Identifier: MIT
 * Tests as they are written in tables, `name relation limit`, bound.
 */
#ifndef TESTS_H
#define TESTS_H

#include "names.h"

/* One test in its three parts; an empty `limit` is none. */
typedef struct {
	Span left, relation, limit;
} Written;

/* Binds one test; complains and is false if that cannot be. */
bool test_bind(const Binding *binding, const Written *written, Test *test);

/* Binds the tests of a cell, joined by "and"; an empty cell has none. */
bool tests_bind(const Binding *binding, const Text *cell, const Test **test, uint32_t *count);

/* A whole cell as a span. */
Span span_of(const Given *given);

/* Complains of keys that need not be given, where no test among `when` says `is given`. */
void check_given(const Binding *binding, const Test *test, const Test *when, uint32_t count);

/* The words of a field with commas between, without other spellings. */
const char *words_listed(Arena *arena, const char *words);

/* Complains of a word that the field does not take. */
void complain_of_word(const Loading *loading, const Field *field, Place place, const char *word);

#endif

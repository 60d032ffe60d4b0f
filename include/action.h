/* SPDX-License-Identifier: MIT
 * Action, authority and relation: the closed sets of words that rules are written in.
 */
#ifndef ACTION_H
#define ACTION_H

#include <stddef.h>
#include <stdint.h>

typedef enum {
#define ACTION(name, ...) ACTION_##name,
#include "actions.def"
	ACTION_COUNT
} Action;

typedef enum {
	AUTHORITY_PROGRAM, AUTHORITY_LISTING, AUTHORITY_ENGINEER, AUTHORITY_SPECIFICATION, AUTHORITY_CODE, AUTHORITY_COMPUTED
} Authority;

typedef enum {
	RELATION_IS, RELATION_IS_NOT, RELATION_AT_LEAST, RELATION_AT_MOST, RELATION_MORE_THAN, RELATION_LESS_THAN, RELATION_BEFORE,
	RELATION_AFTER, RELATION_IN, RELATION_NOT_IN, RELATION_INCLUDES, RELATION_INCLUDES_NOT,
	RELATION_GIVEN, RELATION_NOT_GIVEN
} Relation;

/* The words of each, and the number of words; -1 for words that are none. */
const char *action_words(Action action);
const char *action_leads_to(Action action);
int action_find(const char *words);
const char *authority_words(Authority authority);
int authority_find(const char *words);
const char *relation_words(Relation relation);
int relation_find(const char *words, size_t length);

#endif

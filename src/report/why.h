/* SPDX-License-Identifier: MIT
 * The parts of `why`: a rule's row as sentences, and its examples, which are the tests' own cases, as a person would say them.
 */
#ifndef REPORT_WHY_H
#define REPORT_WHY_H

#include "parts.h"
#include "report.h"

/* A title of the form or of a fact as it stands within a sentence. */
const char *title_words(const char *title, Arena *arena);

/* "thickness of the panel", "least uplift class (criteria)". */
const char *operand_words(const Operand *operand, Arena *arena);

/* What a rule asks, as one sentence: "of each clip where use is running: which way it moves is not none". */
const char *question_words(const Rule *rule, const RuleRow *row, Arena *arena);

/* A finding or remedy with what it names in brackets: "a building used as [use of the building] ...". */
const char *wording_words(const Wording *wording, Arena *arena);

/* The finding or remedy of a reader's message, likewise. */
const char *message_words(const char *text, Arena *arena);

enum { MOST_EDITS = 24 };

/* One change to the clean example. */
typedef struct {
	const char *path, *value;
} WhyEdit;

typedef struct {
	const char *name; /* met, broken, silent */
	WhyEdit edit[MOST_EDITS];
	uint32_t edits;
} WhyCase;

/* The cases of a code in the order of their file; `*count` is how many. */
const WhyCase *why_cases(const char *code, uint32_t *count, Arena *arena);

/* "Main roof / clip-a-float, total travel: 1 in". */
const char *edit_words(const Library *library, const WhyEdit *edit, Arena *arena);

/* The same of a change that differs from another in one pair between braces: "the same with corner 53.5 psf"; else NULL. */
typedef struct {
	const WhyEdit *edit, *other;
} WhyPair;
const char *difference_words(const Library *library, const WhyPair *pair, Arena *arena);

#endif

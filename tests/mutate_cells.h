/* SPDX-License-Identifier: MIT
 * Changes of cells: numbers moved, words exchanged, a part of a text left out, a condition turned or dropped; and the cases that
 * are to notice them, which are those of the rules that ask the table.
 */
#ifndef MUTATE_CELLS_H
#define MUTATE_CELLS_H

#include "mutate.h"

typedef struct {
	Mutation *m;
	uint32_t *order; /* of the cases; one that noticed a change moves to the front */
	const char *only; /* a table; NULL: all */
	uint32_t unknown, too_many; /* unknown when the table began; tables beside their floor */
	const char *table;
	const char *row; /* the row in words */
	const char *codes; /* beginnings of the codes whose cases are to notice it, joined by blanks; empty: all */
	const char *item; /* in the words of a case that is to notice it; NULL: any */
} Tables;

/* Whose cases are to notice a change of a table: those of the rules that ask it. */
static const struct {
	const char *table, *codes;
} asked_by[] = {
	{ "scales.csv", "DOC-05 LST-0 CLP-0 FST-0" },
	{ "terms.csv", "ELG-06 WTY-14 DOC-14 LIF" },
	{ "kinds.csv", "LIF SUP LST-15 LST-17 UND-0 SLT-0 SLT-1 FST-1 PEN-13 PEN-19 PEN-20 DOC-17 RVC-06" },
	{ "lives.csv", "LIF FST-11 UND-06 SLT-10 PEN-13" },
	{ "listing_terms.csv", "LST CLP FST DCK PNL" },
	{ "substitutions.csv", "LST CLP FST DCK PNL" },
	{ "required.csv", "CLP-12 FST-16 UND-01 SLT-14 RVC-04 TRM-17" },
	{ "documents.csv", "DOC" },
};

/* ---- whether a case goes red ---- */

static inline bool holds(const Mutation *m, uint32_t at)
{
	const Played *p = &m->played[at], *before = at > 0 ? p - 1 : NULL;
	Arena *arena = arena_make();
	Verdict *met = NULL;
	if (is_case(p->of, "broken"))
		met = judge(arena, resolve_played(before, arena), &before->complaints, before->source);
	bool held = holds_case(p->of, judge(arena, resolve_played(p, arena), &p->complaints, p->source), met);
	arena_free(arena);
	return held;
}

static inline bool holds_clean(const Mutation *m)
{
	Arena *arena = arena_make();
	bool clean = is_clean(judge(arena, resolve_played(&m->clean, arena), &m->clean.complaints, m->clean.source));
	arena_free(arena);
	return clean;
}

static inline bool is_among_codes(const char *codes, const char *code)
{
	for (const char *at = codes; *at != '\0'; at += strspn(at, " ")) {
		size_t length = strcspn(at, " ");
		if (strncmp(at, code, length) == 0)
			return true;
		at += length;
	}
	return codes[0] == '\0';
}

/* An item that stands neither in the clean package nor in the words of a case decides nothing there. */
static inline bool is_to_notice(const Tables *t, const RuleCase *c)
{
	if (!is_among_codes(t->codes, c->code))
		return false;
	for (uint32_t i = 0; t->item != NULL && i < c->edits; i++)
		if (strstr(c->edit[i].value, t->item) != NULL)
			return true;
	return t->item == NULL;
}

static inline bool goes_red(Tables *t)
{
	if (!holds_clean(t->m))
		return true;
	for (uint32_t i = 0; i < t->m->cases.count; i++) {
		uint32_t at = t->order[i];
		if (!is_to_notice(t, &t->m->cases.at[at]) || holds(t->m, at))
			continue;
		memmove(t->order + 1, t->order, i * sizeof *t->order);
		t->order[0] = at;
		return true;
	}
	return false;
}

/* ---- one change ---- */

/* Whether a change is to be tried. */
static inline bool is_next(const Tables *t)
{
	return t->only == NULL || strcmp(t->only, t->table) == 0;
}

static inline void try_change(Tables *t, const char *change)
{
	t->m->tried++;
	if (!goes_red(t))
		survives(t->m, t->table, change);
}

static const char *change_words(const Tables *t, const Field *field, const char *now)
{
	return arena_printf(t->m->world.run, "%s: %s %s", t->row, field->key, now);
}

static inline void try_number(Tables *t, const Field *field, Number *number, double value)
{
	char now[32];
	double whole = number->value;
	snprintf(now, sizeof now, "%.6g", value);
	const char *change = change_words(t, field, now);
	if (!is_next(t))
		return;
	number->value = value;
	try_change(t, change);
	number->value = whole;
}

/* A count or year goes by one, all else by 2 per cent. */
static inline void change_number(Tables *t, const Field *field, Number *number)
{
	double step = field->unit == UNIT_one || field->unit == UNIT_yr ? 1 : number->value * 0.02;
	try_number(t, field, number, number->value - step);
	try_number(t, field, number, number->value + step);
}

static inline void try_text(Tables *t, const Field *field, const char **text, const char *value)
{
	const char *whole = *text, *change = change_words(t, field, value);
	if (!is_next(t))
		return;
	*text = value;
	try_change(t, change);
	*text = whole;
}

static inline void change_word(Tables *t, const Field *field, Word *word)
{
	for (int i = (int)word->word - 1; i <= (int)word->word + 1; i += 2) {
		size_t length = 0;
		const char *other = i >= 0 ? word_text(field->words, i, &length) : NULL;
		uint32_t whole = word->word;
		if (other == NULL)
			continue;
		word->word = (uint32_t)i;
		try_text(t, field, &word->text, arena_text(t->m->world.run, other, length));
		word->word = whole;
	}
}

static inline void change_yes(Tables *t, const Field *field, Yes *yes)
{
	const char *change = change_words(t, field, yes->yes ? "no" : "yes");
	if (!is_next(t))
		return;
	yes->yes = !yes->yes;
	try_change(t, change);
	yes->yes = !yes->yes;
}

/* Each part of "open country; town; city" left out in turn; a text of one part becomes another. */
static inline void change_parts(Tables *t, const Field *field, Text *text)
{
	const char *whole = text->text;
	if (strchr(whole, ';') == NULL) {
		try_text(t, field, &text->text, "gone");
		return;
	}
	for (const char *at = whole; *at != '\0';) {
		size_t length = strcspn(at, ";");
		const char *behind = at + length + (at[length] == ';') + (at[length] == ';' && at[length + 1] == ' ');
		const char *rest = arena_printf(t->m->world.run, "%.*s%s", (int)(at - whole), whole, behind);
		size_t kept = strlen(rest);
		while (kept > 0 && (rest[kept - 1] == ' ' || rest[kept - 1] == ';'))
			kept--;
		try_text(t, field, &text->text, arena_text(t->m->world.run, rest, kept));
		at = behind;
	}
}

/* ---- tests that were bound from a cell ---- */

static inline Relation contrary(Relation relation)
{
	static const Relation other[] = { [RELATION_IS] = RELATION_IS_NOT, [RELATION_IS_NOT] = RELATION_IS,
		[RELATION_AT_LEAST] = RELATION_LESS_THAN, [RELATION_AT_MOST] = RELATION_MORE_THAN,
		[RELATION_MORE_THAN] = RELATION_AT_MOST, [RELATION_LESS_THAN] = RELATION_AT_LEAST,
		[RELATION_BEFORE] = RELATION_AFTER, [RELATION_AFTER] = RELATION_BEFORE, [RELATION_IN] = RELATION_NOT_IN,
		[RELATION_NOT_IN] = RELATION_IN, [RELATION_INCLUDES] = RELATION_INCLUDES_NOT,
		[RELATION_INCLUDES_NOT] = RELATION_INCLUDES, [RELATION_GIVEN] = RELATION_NOT_GIVEN,
		[RELATION_NOT_GIVEN] = RELATION_GIVEN };
	return other[relation];
}

/* Each test turned, then left out. */
static inline void change_tests(Tables *t, const char *cell, const Test **tests, uint32_t *count)
{
	const Test *whole = *tests;
	uint32_t all = *count;
	Test changed[12];
	assert_true(all <= 12);
	for (uint32_t i = 0; i < 2 * all; i++) {
		uint32_t at = i / 2;
		bool turned = i % 2 == 0;
		const char *change = arena_printf(t->m->world.run, "%s: %s: %s %s", t->row, cell, whole[at].left.word,
						  turned ? relation_words(contrary(whole[at].relation)) : "not asked");
		if (!is_next(t))
			continue;
		memcpy(changed, whole, all * sizeof *changed);
		if (turned)
			changed[at].relation = contrary(changed[at].relation);
		else
			memmove(changed + at, changed + at + 1, (all - at - 1) * sizeof *changed);
		*tests = changed;
		*count = turned ? all : all - 1;
		try_change(t, change);
		*tests = whole;
		*count = all;
	}
}

/* ---- rows ---- */

/* The cells of a row by its fields; `keys`: those that may be changed, with blanks around. */
static inline void change_row(Tables *t, const Record *record, const void *const_row, const char *keys)
{
	void *row = (void *)(uintptr_t)const_row;
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		Given *given = given_at(field, row);
		if (strstr(keys, arena_printf(t->m->world.run, " %s ", field->key)) == NULL || !is_value(given))
			continue;
		if (field->kind == IS_NUMBER)
			change_number(t, field, (Number *)(void *)given);
		else if (field->kind == IS_WORD)
			change_word(t, field, (Word *)(void *)given);
		else if (field->kind == IS_YES)
			change_yes(t, field, (Yes *)(void *)given);
		else if (field->kind == IS_TEXT)
			change_parts(t, field, (Text *)(void *)given);
	}
}

#endif

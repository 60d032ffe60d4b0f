/* SPDX-License-Identifier: MIT
 * `after`: the codes a rule waits for, as numbers of rules, and no rule may wait for itself by any way round.
 */
#include "hash.h"
#include "rules.h"

#include <string.h>

bool split_next(const char *text, size_t *at, SplitPart *part)
{
	while (text[*at] != '\0') {
		size_t start = *at + strspn(text + *at, " "), length = strcspn(text + start, ";");
		*at = start + length + (text[start + length] == ';');
		while (length > 0 && text[start + length - 1] == ' ')
			length--;
		*part = (SplitPart){ text + start, length, start };
		if (length > 0)
			return true;
	}
	return false;
}

static void bind_after(const Binding *b, const Hash *codes, Rule *rule, const Text *after)
{
	uint16_t *cause = NULL;
	uint32_t room = 0;
	SplitPart part;
	if (after->given.said != SAID_VALUE)
		return;
	for (size_t at = 0; split_next(after->text, &at, &part);) {
		const Rule *found = hash_get(codes, part.text, part.length);
		if (found == NULL) {
			Span span = { part.text, part.length, after->given.place, part.at };
			complain(b->loading->complaints, MESSAGE_TAB_83, span_place(b, span),
				 (About){ .value = arena_text(b->loading->arena, part.text, part.length) });
			continue;
		}
		cause = arena_more(b->loading->arena, cause, rule->causes, &room, sizeof *cause);
		cause[rule->causes++] = (uint16_t)(found - b->criteria->rule);
	}
	rule->after = cause;
}

enum { UNSEEN, OPEN, DONE };

/* Goes the ways of `after` depth first, with a stack of its own; a way back to a rule still open is a circle. */
static void walk_from(const Binding *b, uint32_t start, uint8_t *state, uint32_t *next, uint32_t *stack)
{
	const Criteria *c = b->criteria;
	uint32_t depth = 0;
	stack[depth++] = start;
	state[start] = OPEN;
	while (depth > 0) {
		uint32_t at = stack[depth - 1];
		if (next[at] == c->rule[at].causes) {
			state[at] = DONE;
			depth--;
			continue;
		}
		uint32_t to = c->rule[at].after[next[at]++];
		if (state[to] == OPEN)
			complain(b->loading->complaints, MESSAGE_TAB_84, c->rule_rows.row[at].after.given.place,
				 (About){ .key = c->rule[at].code, .value = c->rule[to].code });
		if (state[to] != UNSEEN)
			continue;
		state[to] = OPEN;
		stack[depth++] = to;
	}
}

void causes_bind(const Binding *b, Rule *rule, bool whole)
{
	const Criteria *c = b->criteria;
	Arena *arena = b->loading->arena;
	Hash *codes = hash_make(arena, c->rules);
	if (!whole)
		return;
	for (uint32_t i = c->rules; i-- > 0;)
		hash_put(codes, rule[i].code, strlen(rule[i].code), &rule[i]);
	for (uint32_t i = 0; i < c->rules; i++)
		bind_after(b, codes, &rule[i], &c->rule_rows.row[i].after);
	uint8_t *state = TAKE(arena, uint8_t, c->rules);
	uint32_t *next = TAKE(arena, uint32_t, c->rules), *stack = TAKE(arena, uint32_t, c->rules + 1);
	for (uint32_t i = 0; i < c->rules; i++)
		if (state[i] == UNSEEN)
			walk_from(b, i, state, next, stack);
}

/* SPDX-License-Identifier: MIT
 * Binding tests: the name on the left, a relation that fits what it gives, and a limit in its notation.
 *
 * A limit is a value wherever it can be read as one, else a name. For free text, which takes everything, a limit is a name only
 * if it looks like one: it has a point or an underscore and can be found.
 */
#include "tests.h"

#include "limits.h"

#include <string.h>

Span span_of(const Given *given)
{
	const char *text = given->typed != NULL ? given->typed : "";
	return (Span){ text, strlen(text), given->place, 0 };
}

/* ---- which relation fits ---- */

enum {
	N = 1 << VALUE_NUMBER,
	D = 1 << VALUE_DATE,
	Y = 1 << VALUE_YES,
	W = 1 << VALUE_WORD,
	T = 1 << VALUE_TEXT,
	L = 1 << VALUE_LIST
};

static const uint8_t fits[] = { [RELATION_IS] = N | D | Y | W | T | L,
				[RELATION_IS_NOT] = N | D | Y | W | T | L,
				[RELATION_AT_LEAST] = N,
				[RELATION_AT_MOST] = N,
				[RELATION_MORE_THAN] = N,
				[RELATION_LESS_THAN] = N,
				[RELATION_BEFORE] = D,
				[RELATION_AFTER] = D,
				[RELATION_IN] = W | T | L,
				[RELATION_NOT_IN] = W | T | L,
				[RELATION_INCLUDES] = L,
				[RELATION_INCLUDES_NOT] = L,
				[RELATION_GIVEN] = N | D | Y | W | T | L,
				[RELATION_NOT_GIVEN] = N | D | Y | W | T | L };
enum { RELATIONS = sizeof fits / sizeof *fits };

static bool is_fitting(Relation relation, const Operand *left)
{
	bool asks_given = relation == RELATION_GIVEN || relation == RELATION_NOT_GIVEN;
	bool groups = left->gives == VALUE_LIST && left->field->kind != IS_TEXTS; /* records are given or not, no more */
	return (fits[relation] >> left->gives & 1) != 0 && !(asks_given && left->from == FROM_FACT) && (asks_given || !groups);
}

static const char *relations_listed(Arena *arena, const Operand *left)
{
	const char *listed = NULL;
	for (int i = 0; i < RELATIONS; i++)
		if (left == NULL || is_fitting((Relation)i, left))
			listed = listed == NULL ? relation_words((Relation)i)
						: arena_printf(arena, "%s, %s", listed, relation_words((Relation)i));
	return listed;
}

static bool bind_relation(const Binding *b, const Written *written, Test *test)
{
	Arena *arena = b->loading->arena;
	About about = {
		.key = arena_text(arena, written->left.text, written->left.length),
		.value = arena_text(arena, written->relation.text, written->relation.length),
	};
	int relation = relation_find(written->relation.text, written->relation.length);
	if (relation < 0) {
		about.want = relations_listed(arena, NULL);
		complain(b->loading->complaints, MESSAGE_TAB_56, span_place(b, written->relation), about);
		return false;
	}
	test->relation = (Relation)relation;
	if (is_fitting(test->relation, &test->left))
		return true;
	about.want = relations_listed(arena, &test->left);
	complain(b->loading->complaints, MESSAGE_TAB_57, span_place(b, written->relation), about);
	return false;
}

bool test_bind(const Binding *b, const Written *written, Test *test)
{
	*test = (Test){ .place = span_place(b, written->left) };
	if (!name_bind(b, written->left, &test->left) || !bind_relation(b, written, test))
		return false;
	if (test->relation != RELATION_GIVEN && test->relation != RELATION_NOT_GIVEN)
		return limit_bind(b, written, test);
	if (written->limit.length == 0)
		return true;
	complain(b->loading->complaints, MESSAGE_TAB_62, span_place(b, written->limit),
		 (About){ .key = relation_words(test->relation),
			  .value = arena_text(b->loading->arena, written->limit.text, written->limit.length) });
	return false;
}

/* ---- several tests in one cell ---- */

static Span part_of(Span whole, size_t at, size_t length)
{
	while (length > 0 && whole.text[at] == ' ') {
		at++;
		length--;
	}
	while (length > 0 && whole.text[at + length - 1] == ' ')
		length--;
	return (Span){ whole.text + at, length, whole.cell, whole.at + at };
}

/* The longest relation at the start of a text, ended by a blank or the end. */
static size_t relation_length(const char *text, size_t length)
{
	size_t longest = 0;
	for (int i = 0; i < RELATIONS; i++) {
		const char *words = relation_words((Relation)i);
		size_t n = strlen(words);
		if (n > longest && n <= length && strncmp(text, words, n) == 0 && (n == length || text[n] == ' '))
			longest = n;
	}
	return longest;
}

/* Whether a test begins here: a name without blanks, then a relation. */
static bool begins_test(const char *text)
{
	const char *behind = text + strcspn(text, " ");
	behind += strspn(behind, " ");
	return relation_length(behind, strlen(behind)) > 0;
}

/* The end of the test at `at`: before an "and" behind which another begins; words such as "metal and foam" have one of their own.
 */
static size_t test_end(const char *text, size_t at)
{
	for (const char *and = strstr(text + at, " and "); and != NULL; and = strstr(and+5, " and "))
		if (begins_test(and+5))
			return (size_t)(and-text);
	return strlen(text);
}

/* The relation of a test: the longest, unless the rest behind a plain `is` is a word of the field, as in `is in force`. */
static size_t relation_within(const Binding *b, Span name, Span rest)
{
	Operand left;
	size_t is = strlen("is ");
	if (rest.length > is && name_find(b, name, &left) == NAME_FOUND && left.gives == VALUE_WORD &&
	    word_find(left.field->words, rest.text + is, rest.length - is) >= 0)
		return is - 1;
	return relation_length(rest.text, rest.length);
}

static bool bind_one(const Binding *b, Span whole, Test *test)
{
	size_t name = 0;
	while (name < whole.length && whole.text[name] != ' ')
		name++;
	Span rest = part_of(whole, name, whole.length - name);
	Written written = { .left = part_of(whole, 0, name) };
	if (relation_length(rest.text, rest.length) == 0) {
		complain(b->loading->complaints, MESSAGE_TAB_68, span_place(b, whole),
			 (About){ .value = arena_text(b->loading->arena, whole.text, whole.length) });
		return false;
	}
	size_t relation = relation_within(b, written.left, rest);
	written.relation = part_of(rest, 0, relation);
	written.limit = part_of(rest, relation, rest.length - relation);
	return test_bind(b, &written, test);
}

bool tests_bind(const Binding *b, const Text *cell, const Test **test, uint32_t *count)
{
	Test *bound = NULL;
	uint32_t room = 0;
	bool good = true;
	*count = 0;
	if (cell->given.said != SAID_VALUE)
		return true;
	Span whole = span_of(&cell->given);
	for (size_t at = 0; at < whole.length;) {
		size_t end = test_end(whole.text, at);
		bound = arena_more(b->loading->arena, bound, *count, &room, sizeof *bound);
		good &= bind_one(b, part_of(whole, at, end - at), &bound[(*count)++]);
		at = end < whole.length ? end + strlen(" and ") : end;
	}
	*test = bound;
	return good;
}

/* ---- keys that need not be given ---- */

static bool is_said_given(const Operand *operand, const Test *when, uint32_t count)
{
	for (uint32_t i = 0; i < count; i++)
		if (when[i].relation == RELATION_GIVEN && when[i].left.from == FROM_FIELD && when[i].left.at == operand->at &&
		    when[i].left.offset == operand->offset)
			return true;
	return false;
}

void check_given(const Binding *b, const Test *test, const Test *when, uint32_t count)
{
	const Operand *side[2] = { &test->left, &test->right };
	bool asks_given = test->relation == RELATION_GIVEN || test->relation == RELATION_NOT_GIVEN;
	for (int i = asks_given; i < 2; i++) {
		bool optional = side[i]->from == FROM_FIELD && side[i]->field != NULL && side[i]->field->need == NEED_OPTIONAL;
		if (optional && !is_said_given(side[i], when, count))
			complain(b->loading->complaints, MESSAGE_TAB_66, test->place, (About){ .key = side[i]->word });
	}
}

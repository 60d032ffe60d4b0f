/* SPDX-License-Identifier: MIT
 * Limits in the notation of the left side: a quantity of its dimension, a day, a word it takes, yes or no, text, a list; else a
 * name that gives the same kind of value.
 */
#include "limits.h"

#include "date.h"
#include "hash.h"

#include <ctype.h>
#include <string.h>

static bool complain_of(const Binding *b, const Written *w, MessageId id, const char *want)
{
	Arena *arena = b->loading->arena;
	Span at = w->limit.length > 0 ? w->limit : w->relation;
	complain(b->loading->complaints, id, span_place(b, at),
		 (About){
			 .key = arena_text(arena, w->left.text, w->left.length),
			 .value = arena_text(arena, w->limit.text, w->limit.length),
			 .want = want,
		 });
	return false;
}

/* A value of the left side as an example: what its row in the form shows, else its unit. */
static const char *shown_for(const Test *test)
{
	if (test->left.field != NULL && test->left.field->example != NULL && *test->left.field->example != '\0')
		return test->left.field->example;
	return *unit_row(test->left.unit)->printed != '\0' ? unit_row(test->left.unit)->printed : "a plain number";
}

const char *words_listed(Arena *arena, const char *words)
{
	const char *listed = NULL, *word;
	size_t length;
	for (int i = 0; (word = word_text(words, i, &length)) != NULL; i++)
		listed = listed == NULL ? arena_text(arena, word, length)
					: arena_printf(arena, "%s, %.*s", listed, (int)length, word);
	return listed;
}

void complain_of_word(const Loading *loading, const Field *field, Place place, const char *word)
{
	complain(loading->complaints, MESSAGE_TAB_52, place,
		 (About){ .key = field->key, .value = word, .want = words_listed(loading->arena, field->words) });
}

/* ---- names as limits ---- */

static const char *kind_in_words(const Operand *operand)
{
	static const char *const words[] = {
		[VALUE_NUMBER] = "a number", [VALUE_DATE] = "a day",  [VALUE_YES] = "yes or no",
		[VALUE_WORD] = "a word",     [VALUE_TEXT] = "a text", [VALUE_LIST] = "a group or list"
	};
	return words[operand->gives];
}

static bool is_worded(const Operand *operand)
{
	return operand->gives == VALUE_WORD || operand->gives == VALUE_TEXT;
}

/* The one fact at strength level; all other pressures are at allowable level. */
static bool is_at_strength(const Operand *operand)
{
	return operand->word != NULL && strcmp(operand->word, "strength_uplift") == 0;
}

static bool bind_name(const Binding *b, const Written *w, Test *test)
{
	const Operand *left = &test->left;
	Operand *right = &test->right;
	if (!name_bind(b, w->limit, right))
		return false;
	if (right->gives != left->gives && !(is_worded(left) && is_worded(right)))
		return complain_of(b, w, MESSAGE_TAB_72, kind_in_words(left));
	const UnitRow *to = unit_row(left->unit), *from = unit_row(right->unit);
	if (left->gives != VALUE_NUMBER)
		return true;
	if (to->dimension != from->dimension)
		return complain_of(b, w, MESSAGE_TAB_58, shown_for(test));
	if (is_at_strength(left) != is_at_strength(right) && to->dimension == DIMENSION_PRESSURE)
		return complain_of(b, w, MESSAGE_TAB_92, NULL);
	right->factor = from->factor / to->factor;
	return true;
}

/* ---- values as limits ---- */

static void set_constant(Test *test, double value)
{
	Operand *right = &test->right;
	const char *word = right->word;
	*right = (Operand){ .from = FROM_CONSTANT,
			    .gives = test->left.gives,
			    .unit = test->left.unit,
			    .factor = 1,
			    .value = value,
			    .word = word };
}

static bool bind_number(const Binding *b, const Written *w, Test *test)
{
	const Field *field = test->left.field;
	double value = 0;
	if (field != NULL && field->kind == IS_SIZE &&
	    read_screw_size(w->limit.text, w->limit.length, b->loading->reference, &value)) {
		set_constant(test, value);
		return true;
	}
	switch (read_quantity(w->limit.text, w->limit.length, test->left.unit, &value)) {
	case QUANTITY_READ:
		set_constant(test, value);
		return true;
	case QUANTITY_BARE:
		return complain_of(b, w, MESSAGE_TAB_60, shown_for(test));
	case QUANTITY_GAUGE:
		return complain_of(b, w, MESSAGE_TAB_67, NULL);
	case QUANTITY_OTHER_DIMENSION:
		return complain_of(b, w, MESSAGE_TAB_58, shown_for(test));
	case QUANTITY_UNKNOWN_UNIT:
	case QUANTITY_NO_NUMBER:
		break;
	}
	if (!isalpha((unsigned char)*w->limit.text))
		return complain_of(b, w, MESSAGE_TAB_70, shown_for(test));
	return bind_name(b, w, test);
}

static bool bind_date(const Binding *b, const Written *w, Test *test)
{
	int32_t day;
	if (date_read(w->limit.text, w->limit.length, &day)) {
		set_constant(test, day);
		return true;
	}
	if (isdigit((unsigned char)*w->limit.text))
		return complain_of(b, w, MESSAGE_TAB_69, NULL);
	return bind_name(b, w, test);
}

static bool is_spelt(Span span, const char *word)
{
	return strlen(word) == span.length && memcmp(span.text, word, span.length) == 0;
}

static bool bind_yes(const Binding *b, const Written *w, Test *test)
{
	Operand other;
	if (is_spelt(w->limit, "yes") || is_spelt(w->limit, "no")) {
		set_constant(test, is_spelt(w->limit, "yes"));
		return true;
	}
	if (name_find(b, w->limit, &other) != NAME_FOUND)
		return complain_of(b, w, MESSAGE_TAB_71, NULL);
	return bind_name(b, w, test);
}

static bool bind_word(const Binding *b, const Written *w, Test *test)
{
	Arena *arena = b->loading->arena;
	const Field *field = test->left.field;
	int number = word_find(field->words, w->limit.text, w->limit.length);
	Operand other;
	if (number >= 0) {
		size_t length = 0;
		const char *word = word_text(field->words, number, &length);
		set_constant(test, number);
		test->right.word = arena_text(arena, word, length);
		return true;
	}
	if (name_find(b, w->limit, &other) != NAME_FOUND) {
		complain_of_word(b->loading, field, span_place(b, w->limit), arena_text(arena, w->limit.text, w->limit.length));
		return false;
	}
	return bind_name(b, w, test);
}

/* Whether free text looks like a name: small letters and underscores, with a point between. */
static bool looks_like_path(Span span)
{
	bool point = false;
	for (size_t i = 0; i < span.length; i++) {
		point |= span.text[i] == '.' && i > 0 && i + 1 < span.length;
		if (!islower((unsigned char)span.text[i]) && span.text[i] != '_' && span.text[i] != '.')
			return false;
	}
	return point;
}

static bool bind_text(const Binding *b, const Written *w, Test *test)
{
	Operand other;
	bool underscore = memchr(w->limit.text, '_', w->limit.length) != NULL;
	if (looks_like_path(w->limit) || (underscore && name_find(b, w->limit, &other) == NAME_FOUND))
		return bind_name(b, w, test);
	set_constant(test, 0);
	return true;
}

/* One text that a list of texts may hold. */
static bool bind_included(const Binding *b, const Written *w, Test *test)
{
	bool bound = bind_text(b, w, test);
	if (bound && test->right.from == FROM_CONSTANT)
		test->right.gives = VALUE_TEXT;
	return bound;
}

/* ---- lists ---- */

/* An entry that the left side can never say would be a hole in the rule. Each list is checked once for a field. */
static void check_entries(const Binding *b, const Field *field, const ListRows *rows)
{
	const char *key = arena_printf(b->loading->arena, "%p %u", (const void *)field, (unsigned)rows->first);
	if (hash_put(b->lists->checked, key, strlen(key), (void *)(uintptr_t)field) != NULL)
		return;
	for (uint32_t i = rows->first; i != LIST_END; i = b->lists->next[i]) {
		const Text *entry = &b->criteria->lists.row[i].entry;
		if (entry->text != NULL && word_find(field->words, entry->text, strlen(entry->text)) < 0)
			complain_of_word(b->loading, field, entry->given.place, entry->text);
	}
}

static bool is_texts(const Operand *operand)
{
	return operand->field != NULL && operand->field->kind == IS_TEXTS;
}

static bool bind_texts(const Binding *b, const Written *w, Test *test)
{
	if (!name_bind(b, w->limit, &test->right))
		return false;
	return is_texts(&test->right) || complain_of(b, w, MESSAGE_TAB_72, "a list of texts");
}

/* A list of lists.csv, or a list of texts by its name. */
static bool bind_list(const Binding *b, const Written *w, Test *test)
{
	Operand other;
	const ListRows *rows = hash_get(b->lists->by_name, w->limit.text, w->limit.length);
	if (rows != NULL) {
		test->right.from = FROM_LIST;
		test->right.gives = VALUE_LIST;
		test->right.factor = 1;
		if (test->left.gives == VALUE_WORD)
			check_entries(b, test->left.field, rows);
		return true;
	}
	if (name_find(b, w->limit, &other) == NAME_FOUND && is_texts(&other)) {
		test->right = other;
		return true;
	}
	return b->lists->whole ? complain_of(b, w, MESSAGE_TAB_63, b->lists->names) : false;
}

bool limit_bind(const Binding *b, const Written *w, Test *test)
{
	if (w->limit.length == 0)
		return complain_of(b, w, MESSAGE_TAB_61, NULL);
	test->right.word = arena_text(b->loading->arena, w->limit.text, w->limit.length);
	if (test->relation == RELATION_IN || test->relation == RELATION_NOT_IN)
		return bind_list(b, w, test);
	if (test->relation == RELATION_INCLUDES || test->relation == RELATION_INCLUDES_NOT)
		return bind_included(b, w, test);
	switch (test->left.gives) {
	case VALUE_NUMBER:
		return bind_number(b, w, test);
	case VALUE_DATE:
		return bind_date(b, w, test);
	case VALUE_YES:
		return bind_yes(b, w, test);
	case VALUE_WORD:
		return bind_word(b, w, test);
	case VALUE_LIST:
		return bind_texts(b, w, test);
	default:
		return bind_text(b, w, test);
	}
}

/* SPDX-License-Identifier: MIT
 * A rule's row as sentences: each name stands as the title of the key or fact it was bound to.
 */
#include "why.h"

#include "facts.h"

#include <ctype.h>
#include <string.h>

/* How long a title is without what it explains: "Mark on the box: size, threads and length in one". */
static size_t plain_length(const char *title)
{
	size_t length = strcspn(title, ":;");
	return strlen(title) > length && title[length + 1] == ' ' ? length : strlen(title);
}

/* And without what it offers besides: "Catalogue item, or other". */
static size_t short_length(const char *title)
{
	size_t length = plain_length(title);
	const char *other = strstr(title, ", or ");
	return other != NULL && (size_t)(other - title) < length ? (size_t)(other - title) : length;
}

/* "UL 580 class" keeps its capitals. */
static const char *lower_words(const char *title, size_t length, Arena *arena)
{
	char *words = arena_text(arena, title, length);
	if (words[0] != '\0' && islower((unsigned char)words[1]))
		words[0] = (char)tolower((unsigned char)words[0]);
	return words;
}

const char *title_words(const char *title, Arena *arena)
{
	return lower_words(title, short_length(title), arena);
}

/* "panel" of "panel.thickness", in words; NULL for a name without an owner. */
static const char *owner_of(const char *name, Arena *arena)
{
	const char *key = strrchr(name, '.');
	if (key == NULL)
		return NULL;
	const char *from = key;
	while (from > name && from[-1] != '.')
		from--;
	return plain_words(arena_text(arena, from, (size_t)(key - from)), arena);
}

const char *operand_words(const Operand *operand, Arena *arena)
{
	if (operand->from == FROM_FACT)
		return lower_words(fact_spec(operand->fact)->title, plain_length(fact_spec(operand->fact)->title), arena);
	if (operand->field == NULL)
		return plain_words(operand->word != NULL ? operand->word : "", arena);
	const char *title = title_words(operand->field->title, arena);
	const char *owner = operand->word != NULL ? owner_of(operand->word, arena) : NULL;
	switch (operand->from) {
	case FROM_EDITION:
		return arena_printf(arena, "%s (by the criteria)", title);
	case FROM_LISTED:
		return arena_printf(arena, "%s (of the listing)", title);
	case FROM_CATALOGUE:
		return arena_printf(arena, "%s (in the catalogue)", title);
	default:
		return owner != NULL && strstr(title, owner) == NULL ? arena_printf(arena, "%s (%s)", title, owner) : title;
	}
}

static const char *cell(const Text *text)
{
	return is_value(&text->given) && text->text != NULL ? text->text : "";
}

/* Whether a fact that answers yes or no is asked to be so: then its title says it all. */
static bool is_plain_yes(const Operand *left, const char *behind)
{
	return left->from == FROM_FACT && left->gives == VALUE_YES && strncmp(behind, " is yes", 7) == 0;
}

/* Copies a text up to a name and puts words in its place; `*text` goes behind the name. False if it is not there. */
static bool replace_name(const char **text, const Operand *operand, const char **words, Arena *arena)
{
	const char *at = operand->word != NULL && *operand->word != '\0' ? strstr(*text, operand->word) : NULL;
	if (at == NULL)
		return false;
	*words = arena_printf(arena, "%s%.*s%s", *words, (int)(at - *text), *text, operand_words(operand, arena));
	*text = at + strlen(operand->word);
	return true;
}

/* The conditions as written, with a title for each name. Names stand in the order of the tests. */
static const char *conditions_words(const Rule *rule, const char *when, Arena *arena)
{
	const char *words = "";
	for (uint32_t i = 0; i < rule->conditions; i++) {
		const Test *test = &rule->when[i];
		if (!replace_name(&when, &test->left, &words, arena))
			break;
		if (is_plain_yes(&test->left, when))
			when += strlen(" is yes");
		else if (test->right.from != FROM_CONSTANT && test->right.from != FROM_LIST)
			replace_name(&when, &test->right, &words, arena);
	}
	return arena_printf(arena, "%s%s", words, plain_words(when, arena));
}

static const char *limit_words(const Rule *rule, const RuleRow *row, Arena *arena)
{
	const Operand *right = &rule->is.right;
	if (right->from == FROM_CONSTANT)
		return plain_words(cell(&row->limit), arena);
	return right->from == FROM_LIST ? arena_printf(arena, "the list \"%s\"", cell(&row->limit)) : operand_words(right, arena);
}

static const char *test_words(const Rule *rule, const RuleRow *row, Arena *arena)
{
	const char *left = operand_words(&rule->is.left, arena), *limit = cell(&row->limit);
	bool is_answer = rule->is.left.from == FROM_FACT && rule->is.left.gives == VALUE_YES && rule->is.relation == RELATION_IS;
	if (is_answer && strcmp(limit, "yes") == 0)
		return left;
	if (is_answer && strcmp(limit, "no") == 0)
		return arena_printf(arena, "not so: %s", left);
	bool has_limit = rule->is.relation != RELATION_GIVEN && rule->is.relation != RELATION_NOT_GIVEN;
	return arena_printf(arena, "%s %s%s%s", left, relation_words(rule->is.relation), has_limit ? " " : "",
		has_limit ? limit_words(rule, row, arena) : "");
}

const char *question_words(const Rule *rule, const RuleRow *row, Arena *arena)
{
	const char *of = plain_words(cell(&row->for_each), arena), *when = cell(&row->when);
	const char *where = *when != '\0' ? arena_printf(arena, ", where %s", conditions_words(rule, when, arena)) : "";
	return arena_printf(arena, "of each %s%s: %s", of, where, test_words(rule, row, arena));
}

const char *wording_words(const Wording *wording, Arena *arena)
{
	const char *words = wording->count == 0 && wording->whole != NULL ? wording->whole : "";
	for (uint32_t i = 0; i < wording->count; i++) {
		const Piece *piece = &wording->piece[i];
		words = arena_printf(arena, "%s%s", words, piece->text != NULL ? piece->text : "");
		if (piece->has_operand)
			words = arena_printf(arena, "%s[%s]", words, operand_words(&piece->operand, arena));
	}
	return words;
}

/* What stands for {key}, {value}, {want} and {also} of a message. */
static const char *slot_words(const char *name, size_t length)
{
	static const struct {
		const char *name, *words;
	} slots[] = { { "key", "the key" }, { "value", "what was found" }, { "want", "what is wanted" }, { "also", "the other place" } };
	for (size_t i = 0; i < sizeof slots / sizeof *slots; i++)
		if (strlen(slots[i].name) == length && strncmp(slots[i].name, name, length) == 0)
			return slots[i].words;
	return "what was found";
}

const char *message_words(const char *text, Arena *arena)
{
	const char *words = "";
	while (*text != '\0') {
		size_t length = strcspn(text, "{");
		words = arena_printf(arena, "%s%.*s", words, (int)length, text);
		text += length;
		size_t name = *text == '{' ? strspn(text + 1, "abcdefghijklmnopqrstuvwxyz") : 0;
		bool is_slot = name > 0 && text[name + 1] == '}';
		if (is_slot)
			words = arena_printf(arena, "%s[%s]", words, slot_words(text + 1, name));
		else if (*text != '\0')
			words = arena_printf(arena, "%s{", words);
		text += is_slot ? name + 2 : *text != '\0';
	}
	return words;
}

/* SPDX-License-Identifier: MIT
 * Wording: the findings and remedies of rules.csv with their operands put in.
 *
 * All numbers of one finding get the same digits, as many as tell them apart. Where an item has several places whose own words
 * differ, these stand side by side.
 */
#include "judge.h"
#include "number.h"

#include <string.h>
#include <strings.h>

enum { MOST_NUMBERS = 24, MOST_WORDS = 4 };

typedef struct {
	double at[MOST_NUMBERS];
	size_t count;
} Numbers;

static void add_number(Numbers *numbers, const OperandValue *value)
{
	bool is_number = value->state == OPERAND_HAS && value->gives == VALUE_NUMBER;
	if (is_number && numbers->count < MOST_NUMBERS)
		numbers->at[numbers->count++] = value->number;
}

/* {submitted}, {allowed}, {note} and what advise knows are names and no operands. */
static bool is_name(const Piece *piece, const char *name)
{
	const Operand *operand = &piece->operand;
	return piece->has_operand && operand->from == FROM_CONSTANT && operand->word != NULL && strcmp(operand->word, name) == 0;
}

static bool is_special(const Piece *piece)
{
	return piece->for_advise || is_name(piece, "submitted") || is_name(piece, "allowed") || is_name(piece, "note");
}

static void add_numbers(Numbers *numbers, const Wording *wording, const Case *at)
{
	for (uint32_t i = 0; i < wording->count; i++) {
		const Piece *piece = &wording->piece[i];
		if (!piece->has_operand || is_special(piece))
			continue;
		OperandValue value = operand_value(at, &piece->operand);
		if (typed_text(&value, &piece->operand) == NULL)
			add_number(numbers, &value);
	}
}

void tell(Told *told, Arena *arena)
{
	Numbers numbers = { .count = 0 };
	told->tested = test_case(told->at[0], &told->rule->is);
	add_number(&numbers, &told->tested.left);
	if (told->rule->is.relation < RELATION_IN)
		add_number(&numbers, &told->tested.right);
	add_numbers(&numbers, &told->rule->finding, told->at[0]);
	add_numbers(&numbers, &told->rule->remedy, told->at[0]);
	told->digits = number_digits(numbers.at, numbers.count);
	tell_sides(told, arena);
}

static const char *advised(const Piece *piece, const Advice *advice)
{
	if (advice == NULL)
		return NULL;
	if (is_name(piece, "nearest_listing"))
		return advice->nearest_listing;
	if (is_name(piece, "accepted_items"))
		return advice->accepted_items;
	if (is_name(piece, "greatest_spacing"))
		return advice->greatest_spacing;
	if (is_name(piece, "letter_inputs"))
		return advice->letter_inputs;
	return is_name(piece, "longest_term") ? advice->longest_term : NULL;
}

static const char *operand_text(const Told *told, const Operand *operand, const Case *at, Arena *arena)
{
	OperandValue value = operand_value(at, operand);
	Shown shown = { operand, unit_of(&value, operand), told->digits };
	return value_text(&value, &shown, at->all->reference, arena);
}

/* The words of every place, each once. */
static const char *joined_text(const Told *told, const Operand *operand, Arena *arena)
{
	const char *word[MOST_WORDS] = { "" };
	uint32_t words = 0, more = 0;
	for (uint32_t i = 0; i < told->count; i++) {
		const char *text = operand_text(told, operand, told->at[i], arena);
		bool known = false;
		for (uint32_t j = 0; j < words && !known; j++)
			known = strcmp(word[j], text) == 0;
		if (!known && words < MOST_WORDS)
			word[words++] = text;
		else
			more += !known;
	}
	const char *all = word[0];
	for (uint32_t i = 1; i < words; i++)
		all = arena_printf(arena, "%s%s%s", all, i + 1 < words || more > 0 ? ", " : " and ", word[i]);
	return more > 0 ? arena_printf(arena, "%s and others", all) : all;
}

static const char *note_of(const Told *told)
{
	const Fact *fact = told->tested.left.fact;
	const char *note = fact != NULL ? fact->note : NULL;
	return note != NULL ? note : "";
}

/* What stands for one piece's operand; NULL if only advise could know it and does not. */
static const char *piece_text(const Told *told, const Piece *piece, const Advice *advice, Arena *arena)
{
	if (piece->for_advise)
		return advised(piece, advice);
	if (is_name(piece, "submitted"))
		return told->submitted.text;
	if (is_name(piece, "allowed"))
		return told->limit.text;
	if (is_name(piece, "note"))
		return cut_text(note_of(told), arena);
	return joined_text(told, &piece->operand, arena);
}

/* A note that is not there takes the colon before it along. */
static const char *without_colon(const char *text, Arena *arena)
{
	size_t length = strlen(text);
	while (length > 0 && (text[length - 1] == ' ' || text[length - 1] == ':'))
		length--;
	return arena_text(arena, text, length);
}

/* "clip " before "clip-a-float": the item says its kind itself. */
static size_t length_without_kind(const char *text, const char *value)
{
	size_t length = strlen(text), end = length, word = 0;
	if (end == 0 || text[end - 1] != ' ')
		return length;
	end--;
	while (word < end && text[end - word - 1] != ' ')
		word++;
	bool again = word > 2 && strncasecmp(text + end - word, value, word) == 0 && value[word] == '-';
	return again ? end - word : length;
}

/* "a {kind}" with a kind that begins with a vowel, but for "a one-piece clip". */
static const char *article_for(const char *text, const char *value)
{
	size_t length = strlen(text);
	bool ends_so = length >= 2 && text[length - 2] == 'a' && text[length - 1] == ' ' && (length == 2 || text[length - 3] == ' ');
	bool is_vowel = *value != '\0' && strchr("aeioAEIO", *value) != NULL && strncmp(value, "one", 3) != 0;
	return ends_so && is_vowel ? "n " : "";
}

/* A text and the value put behind it. */
static const char *with_value(const char *text, const char *value, Arena *arena)
{
	const char *article = article_for(text, value);
	size_t length = *article != '\0' ? strlen(text) - 1 : length_without_kind(text, value);
	return arena_printf(arena, "%.*s%s%s", (int)length, text, article, value);
}

const char *told_text(const Told *told, const Wording *wording, const Advice *advice, Arena *arena)
{
	if (wording->count == 0)
		return wording->whole != NULL ? wording->whole : "";
	const char *text = "";
	for (uint32_t i = 0; i < wording->count; i++) {
		const Piece *piece = &wording->piece[i];
		const char *literal = piece->text != NULL ? piece->text : "";
		const char *value = piece->has_operand ? piece_text(told, piece, advice, arena) : "";
		if (value == NULL)
			return NULL;
		text = arena_printf(arena, "%s%s", text, literal);
		if (piece->has_operand)
			text = with_value(text, value, arena);
		if (is_name(piece, "note") && *value == '\0')
			text = without_colon(text, arena);
	}
	return text;
}

const char *wording_text(const Wording *wording, const Case *at, const Advice *advice, Arena *arena)
{
	static const Rule nothing = { .code = "" };
	Numbers numbers = { .count = 0 };
	add_numbers(&numbers, wording, at);
	Told told = { .rule = &nothing, .at = &at, .count = 1, .digits = number_digits(numbers.at, numbers.count) };
	told.submitted.text = told.limit.text = "";
	return told_text(&told, wording, advice, arena);
}

const char *finding_remedy(const Finding *finding, const Advice *advice, Arena *arena)
{
	const Rule *rule = finding->rule;
	if (rule == NULL || finding->judged == NULL)
		return finding->remedy;
	Told told = { .rule = rule, .at = &finding->judged, .count = 1 };
	tell(&told, arena);
	const char *remedy = told_text(&told, &rule->remedy, advice, arena);
	if (remedy == NULL)
		remedy = told_text(&told, &rule->remedy_else, advice, arena);
	return remedy != NULL ? remedy : "ask the panel maker what would be accepted";
}

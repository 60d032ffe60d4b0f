/* SPDX-License-Identifier: MIT
 * One text to the value of one field, by the kind of the field. What cannot be read is complained of here, once, and stays in the
 * row as SAID_UNREADABLE with what was typed.
 */
#include "date.h"
#include "filling.h"
#include "said.h"
#include "screw_mark.h"
#include "suggest.h"

#include <string.h>
#include <strings.h>

enum { MOST_WORDS = 32 };

/* ---- words ---- */

typedef struct {
	const char *at[MOST_WORDS];
	size_t count;
} Choice;

static Choice words_of(const char *words, Arena *arena)
{
	Choice choice = { .count = 0 };
	size_t length;
	const char *text;
	while (choice.count < MOST_WORDS && (text = word_text(words, (int)choice.count, &length)) != NULL)
		choice.at[choice.count++] = arena_text(arena, text, length);
	return choice;
}

/* All words of a field, the nearest to what was typed first. */
static const char *choice_words(Cell *cell)
{
	Arena *arena = cell->reading->arena;
	Choice choice = words_of(cell->field->words, arena);
	Complaints *complaints = cell->reading->complaints;
	int nearest = -1;
	if (complaints != NULL && complaints->suggestions < MOST_SUGGESTIONS) {
		complaints->suggestions++;
		nearest = suggest(cell->given->typed, choice.at, choice.count);
	}
	const char *list = nearest >= 0 ? choice.at[nearest] : NULL;
	for (size_t i = 0; i < choice.count; i++)
		if ((int)i != nearest)
			list = list == NULL ? choice.at[i] : arena_printf(arena, "%s, %s", list, choice.at[i]);
	return list;
}

static bool read_word(Cell *cell, Word *word)
{
	int number = word_find(cell->field->words, cell->text, cell->length);
	if (number < 0) {
		refuse_cell(cell, MESSAGE_FRM_16, cell->reading->complaints != NULL ? choice_words(cell) : NULL);
		return false;
	}
	size_t length;
	const char *text = word_text(cell->field->words, number, &length);
	word->word = (uint32_t)number;
	word->text = arena_text(cell->reading->arena, text, length);
	return accept_cell(cell);
}

static bool is_spelt(const Cell *cell, const char *word)
{
	return strlen(word) == cell->length && strncasecmp(cell->text, word, cell->length) == 0;
}

static bool read_yes(Cell *cell, Yes *yes)
{
	yes->yes = is_spelt(cell, "yes") || is_spelt(cell, "true");
	if (yes->yes || is_spelt(cell, "no") || is_spelt(cell, "false"))
		return accept_cell(cell);
	refuse_cell(cell, MESSAGE_FRM_18, NULL);
	return false;
}

static bool read_date(Cell *cell, Date *date)
{
	if (date_read(cell->text, cell->length, &date->day))
		return accept_cell(cell);
	refuse_cell_like(cell, MESSAGE_FRM_17);
	return false;
}

static bool read_mark(Cell *cell, Text *text)
{
	ScrewMark mark;
	text->text = cell->given->typed;
	if (read_screw_mark(cell->text, cell->length, cell->reading, &mark))
		return accept_cell(cell);
	refuse_cell_like(cell, MESSAGE_FRM_20);
	return false;
}

/* ---- texts where a list, a group or a value by zone may stand ---- */

static bool read_zone_of_all(Cell *cell, ByZone *zones)
{
	ZoneValue *zone = TAKE(cell->reading->arena, ZoneValue, 1);
	if (!read_number(cell, &zone->value))
		return false;
	zone->given = *cell->given;
	zone->zone = "";
	zones->at = zone;
	zones->count = 1;
	return true;
}

/* In a table a list of texts stands in one cell, joined by ;. */
static void read_joined_texts(Cell *cell, Texts *texts)
{
	uint32_t room = 0;
	Text *text = NULL;
	accept_cell(cell);
	for (size_t at = 0; at < cell->length; at++) {
		at += strspn(cell->text + at, " ");
		size_t length = strcspn(cell->text + at, ";");
		const char *one = arena_text(cell->reading->arena, cell->text + at, length);
		text = arena_more(cell->reading->arena, text, texts->count, &room, sizeof *text);
		text[texts->count++] = (Text){ { .place = cell->given->place, .typed = one, .said = SAID_VALUE }, one };
		at += length;
	}
	texts->at = text;
}

static bool read_only_text(Cell *cell, Texts *texts)
{
	if (is_spelt(cell, "none")) {
		cell->given->said = SAID_NONE;
		return true;
	}
	if (cell->reading->table && strchr(cell->text, ';') != NULL) {
		read_joined_texts(cell, texts);
		return true;
	}
	Text *text = TAKE(cell->reading->arena, Text, 1);
	accept_cell(cell);
	*text = (Text){ *cell->given, cell->given->typed };
	texts->at = text;
	texts->count = 1;
	return true;
}

/* `panel: steel`, where keys should stand; the first key shows how. */
static bool refuse_group(Cell *cell)
{
	const Field *first = cell->field->record->field;
	Arena *arena = cell->reading->arena;
	refuse_cell(cell, MESSAGE_FRM_05, arena_printf(arena, "%s: %s", first->key, example_of(first, arena)));
	return false;
}

static bool read_no_list(Cell *cell)
{
	if (is_spelt(cell, "none")) {
		cell->given->said = SAID_NONE;
		return true;
	}
	const Field *first = cell->field->record->field;
	Arena *arena = cell->reading->arena;
	refuse_cell(cell, MESSAGE_FRM_06, arena_printf(arena, "%s: %s", first->key, example_of(first, arena)));
	return false;
}

/* `none` answers for a list; of a number or a day it says nothing. */
static bool is_none_for_a_value(const Cell *cell)
{
	FieldKind kind = cell->field->kind;
	bool is_quantity = kind == IS_NUMBER || kind == IS_SIZE || kind == IS_DATE || kind == IS_MARK || kind == IS_BY_ZONE;
	return is_quantity && is_spelt(cell, "none");
}

static bool read_by_kind(Cell *cell)
{
	void *value = cell->given;
	if (is_none_for_a_value(cell)) {
		refuse_cell_like(cell, MESSAGE_FRM_27);
		return false;
	}
	switch (cell->field->kind) {
	case IS_NAME:
	case IS_TEXT:
		((Text *)value)->text = cell->given->typed;
		return accept_cell(cell);
	case IS_TEXTS:
		return read_only_text(cell, value);
	case IS_WORD:
		return read_word(cell, value);
	case IS_NUMBER:
		return read_number(cell, &((Number *)value)->value);
	case IS_SIZE:
		return read_size(cell, value);
	case IS_DATE:
		return read_date(cell, value);
	case IS_YES:
		return read_yes(cell, value);
	case IS_MARK:
		return read_mark(cell, value);
	case IS_BY_ZONE:
		return read_zone_of_all(cell, value);
	case IS_ONE:
		return refuse_group(cell);
	case IS_LIST:
		return read_no_list(cell);
	}
	return false;
}

/* Whether the cell says one of the answers that are no values; a legal word of the field goes before it. */
static bool is_answer(Cell *cell)
{
	const char *rest = "";
	size_t rest_length = 0;
	if (cell->reading->table) {
		if (!is_spelt(cell, "any") || (cell->field->kind == IS_WORD && word_find(cell->field->words, "any", 3) >= 0))
			return false;
		cell->given->said = SAID_NOT_APPLICABLE;
		return true;
	}
	Said said = said_by_text(cell->text, cell->length, &rest, &rest_length);
	if (said == SAID_VALUE)
		return false;
	if (cell->field->kind == IS_WORD && word_find(cell->field->words, cell->text, cell->length) >= 0)
		return false;
	take_said(cell, said, arena_text(cell->reading->arena, rest, rest_length));
	return true;
}

bool read_value(const Field *field, const char *text, size_t length, Place place, void *row, Reading *reading)
{
	while (length > 0 && strchr(" \t\r\n", text[length - 1]) != NULL)
		length--;
	while (length > 0 && strchr(" \t\r\n", *text) != NULL)
		text++, length--;
	Given *given = given_at(field, row);
	*given = (Given){ .place = place, .said = SAID_NOTHING };
	if (length == 0)
		return false;
	given->typed = arena_text(reading->arena, text, length);
	Cell cell = { field, field->key, given->typed, length, given, reading };
	return !is_answer(&cell) && read_by_kind(&cell);
}

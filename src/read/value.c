/* SPDX-License-Identifier: MIT
 * One text to the value of one field, by the kind of the field. What cannot be read is complained of here, once, and stays in the
 * row as SAID_UNREADABLE with what was typed.
 */
#include "date.h"
#include "filling.h"
#include "number.h"
#include "said.h"
#include "screw_mark.h"
#include "suggest.h"

#include <string.h>
#include <strings.h>

enum { MOST_WORDS = 32, MOST_SUGGESTIONS = 50 };

const char *example_of(const Field *field, Arena *arena)
{
	const char *example = field->example != NULL && *field->example != '\0' ? field->example : "...";
	if (field->kind == IS_BY_ZONE) { /* "{field: 24 in, perimeter: 18 in}" */
		const char *value = strstr(example, ": ");
		if (value != NULL)
			return arena_text(arena, value + 2, strcspn(value + 2, ",}"));
	}
	return *example == '#' ? arena_printf(arena, "\"%s\"", example) : example;
}

static void refuse(Cell *cell, MessageId id, const char *want)
{
	cell->given->said = SAID_UNREADABLE;
	reading_complain(cell->reading, id, cell->given->place, (About){ .key = cell->key, .value = cell->given->typed, .want = want });
}

static void refuse_like(Cell *cell, MessageId id)
{
	refuse(cell, id, example_of(cell->field, cell->reading->arena));
}

static bool accept(Cell *cell)
{
	cell->given->said = SAID_VALUE;
	return true;
}

void take_said(Cell *cell, Said said, const char *rest)
{
	bool is_mine = said != SAID_NOT_APPLICABLE || cell->field->may_not_apply;
	if (!is_mine)
		refuse_like(cell, MESSAGE_FRM_25);
	else if (said != SAID_UNKNOWN && *rest == '\0')
		refuse(cell, MESSAGE_FRM_26, said == SAID_BY_OTHERS ? "{by others: NAME}" : "{not applicable: REASON}");
	else {
		cell->given->said = said;
		if (said != SAID_UNKNOWN)
			cell->given->typed = rest;
	}
}

/* ---- numbers ---- */

static const char *dimension_words(Dimension dimension)
{
	static const char *const words[] = { "a plain number", "yes or no", "a time", "a length", "an area", "a pressure", "a force",
		"a force per length", "a speed", "a slope", "an angle", "a temperature", "a difference of temperatures", "a share",
		"a potential" };
	return words[dimension];
}

/* `24 psf` for a length: the dimension that its unit has. */
static const char *kind_of_quantity(const char *text, size_t length)
{
	double value;
	for (Unit u = 0; u < UNIT_COUNT; u++) {
		Dimension dimension = unit_row(u)->dimension;
		Quantity q = dimension != DIMENSION_PURE ? read_quantity(text, length, u, &value) : QUANTITY_UNKNOWN_UNIT;
		if (q == QUANTITY_READ)
			return dimension_words(dimension);
		if (q == QUANTITY_GAUGE)
			return "a gauge";
	}
	return "of another kind";
}

static void refuse_quantity(Cell *cell, Quantity why)
{
	Dimension wanted = unit_row(cell->field->unit)->dimension;
	if (why == QUANTITY_BARE)
		refuse_like(cell, MESSAGE_FRM_10);
	else if (why == QUANTITY_NO_NUMBER)
		refuse_like(cell, MESSAGE_FRM_11);
	else if (wanted == DIMENSION_PURE)
		refuse_like(cell, MESSAGE_FRM_14);
	else if (why == QUANTITY_UNKNOWN_UNIT)
		refuse_like(cell, MESSAGE_FRM_12);
	else {
		cell->given->said = SAID_UNREADABLE;
		const char *kind = kind_of_quantity(cell->text, cell->length);
		const char *value = arena_printf(cell->reading->arena, "%s, %s", cell->given->typed, kind);
		reading_complain(cell->reading, MESSAGE_FRM_13, cell->given->place,
			(About){ .key = cell->key, .value = value, .want = dimension_words(wanted) });
	}
}

static const char *range_words(const Field *field, Arena *arena)
{
	const char *unit = unit_row(field->unit)->printed;
	const char *blank = *unit == '\0' || *unit == ':' ? "" : " ";
	const char *low = number_shortest(arena, field->low), *high = number_shortest(arena, field->high);
	return arena_printf(arena, "%s%s%s and %s%s%s", low, blank, unit, high, blank, unit);
}

static bool is_in_range(const Field *field, double value)
{
	if (field->low >= field->high && !(field->low > 0)) /* 0, 0: no range */
		return true;
	return (value >= field->low || number_same(value, field->low)) && (value <= field->high || number_same(value, field->high));
}

/* The unit of a column's header stands for the one a cell leaves out. */
static bool take_header_unit(const Cell *cell, double *value)
{
	Unit bare = cell->reading->bare;
	if (bare == UNIT_one || unit_row(bare)->dimension != unit_row(cell->field->unit)->dimension)
		return false;
	*value = unit_convert(*value, bare, cell->field->unit);
	return true;
}

bool read_number(Cell *cell, double *value)
{
	const Field *field = cell->field;
	double number = 0;
	Quantity q = read_quantity(cell->text, cell->length, field->unit, &number);
	if (q == QUANTITY_BARE && take_header_unit(cell, &number))
		q = QUANTITY_READ;
	if (q == QUANTITY_GAUGE && field->kind == IS_NUMBER && strcmp(field->key, "thickness") == 0 && number > 0) {
		cell->given->said = SAID_UNREADABLE; /* until finish_record */
		*value = number;
		return true;
	}
	if (q == QUANTITY_GAUGE)
		refuse(cell, MESSAGE_FRM_24, NULL);
	else if (q != QUANTITY_READ)
		refuse_quantity(cell, q);
	else if (!is_in_range(field, number))
		refuse(cell, MESSAGE_FRM_15, range_words(field, cell->reading->arena));
	else {
		*value = number;
		return accept(cell);
	}
	return false;
}

static bool read_size(Cell *cell, Number *number)
{
	double diameter = 0;
	if (read_screw_size(cell->text, cell->length, cell->reading->reference, &diameter)) {
		if (!is_in_range(cell->field, diameter)) {
			refuse(cell, MESSAGE_FRM_15, range_words(cell->field, cell->reading->arena));
			return false;
		}
		number->value = diameter;
		return accept(cell);
	}
	bool is_digits = cell->length > 0 && cell->length < 3 && strspn(cell->given->typed, "0123456789") == cell->length;
	if (is_digits) /* 12 was meant as #12, or as 12 mm */
		refuse(cell, MESSAGE_FRM_19, arena_printf(cell->reading->arena, "\"#%s\"", cell->given->typed));
	else
		refuse_like(cell, MESSAGE_FRM_19);
	return false;
}

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
		refuse(cell, MESSAGE_FRM_16, cell->reading->complaints != NULL ? choice_words(cell) : NULL);
		return false;
	}
	size_t length;
	const char *text = word_text(cell->field->words, number, &length);
	word->word = (uint32_t)number;
	word->text = arena_text(cell->reading->arena, text, length);
	return accept(cell);
}

static bool is_spelt(const Cell *cell, const char *word)
{
	return strlen(word) == cell->length && strncasecmp(cell->text, word, cell->length) == 0;
}

static bool read_yes(Cell *cell, Yes *yes)
{
	yes->yes = is_spelt(cell, "yes") || is_spelt(cell, "true");
	if (yes->yes || is_spelt(cell, "no") || is_spelt(cell, "false"))
		return accept(cell);
	refuse(cell, MESSAGE_FRM_18, NULL);
	return false;
}

static bool read_date(Cell *cell, Date *date)
{
	if (date_read(cell->text, cell->length, &date->day))
		return accept(cell);
	refuse_like(cell, MESSAGE_FRM_17);
	return false;
}

static bool read_mark(Cell *cell, Text *text)
{
	ScrewMark mark;
	text->text = cell->given->typed;
	if (read_screw_mark(cell->text, cell->length, cell->reading, &mark))
		return accept(cell);
	refuse_like(cell, MESSAGE_FRM_20);
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

static bool read_only_text(Cell *cell, Texts *texts)
{
	if (is_spelt(cell, "none")) {
		cell->given->said = SAID_NONE;
		return true;
	}
	Text *text = TAKE(cell->reading->arena, Text, 1);
	accept(cell);
	*text = (Text){ *cell->given, cell->given->typed };
	texts->at = text;
	texts->count = 1;
	return true;
}

/* `panel: steel`, where keys should stand; the first key shows how. */
static bool refuse_group(Cell *cell)
{
	const Field *first = cell->field->record->field;
	refuse(cell, MESSAGE_FRM_05, arena_printf(cell->reading->arena, "%s: %s", first->key, example_of(first, cell->reading->arena)));
	return false;
}

static bool read_no_list(Cell *cell)
{
	if (is_spelt(cell, "none")) {
		cell->given->said = SAID_NONE;
		return true;
	}
	const Field *first = cell->field->record->field;
	refuse(cell, MESSAGE_FRM_06, arena_printf(cell->reading->arena, "%s: %s", first->key, example_of(first, cell->reading->arena)));
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
		refuse_like(cell, MESSAGE_FRM_27);
		return false;
	}
	switch (cell->field->kind) {
	case IS_NAME:
	case IS_TEXT:
		((Text *)value)->text = cell->given->typed;
		return accept(cell);
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

/* SPDX-License-Identifier: MIT
 * Every key of every record as one Markdown page, from the form's table: the submittal, the reviewer's file, the tables of
 * criteria, registers and reference, and the records that only rules see.
 */
#include "parts.h"
#include "report.h"

#include <string.h>

/* In which chapter a record stands: the first root from which it can be reached. */
enum { CHAPTER_SUBMITTAL = 1, CHAPTER_REVIEW, CHAPTER_TABLES, CHAPTER_MADE };

typedef struct {
	Out *out;
	Arena *arena;
	uint8_t chapter[RECORD_KINDS], order[RECORD_KINDS]; /* kinds in the order they are printed in */
	uint32_t count;
} Pages;

/* ---- one row ---- */

static void put_code(Out *out, const char *text)
{
	SAY(out, "`");
	put(out, text);
	SAY(out, "`");
}

static void put_words(Out *out, const char *words)
{
	size_t length;
	const char *word;
	for (int i = 0; (word = word_text(words, i, &length)) != NULL; i++) {
		if (i > 0)
			SAY(out, ", ");
		put_part(out, word, length);
	}
}

static void put_unit(Out *out, const Field *field)
{
	const UnitRow *row = unit_row(field->unit);
	if (row->printed[0] == '\0')
		SAY(out, "a plain number");
	else
		put(out, row->printed);
}

/* What may be written. */
static void put_kind(Out *out, const Field *field)
{
	switch (field->kind) {
	case IS_WORD:
		put_words(out, field->words);
		return;
	case IS_NUMBER:
		put_unit(out, field);
		return;
	case IS_BY_ZONE:
		put_unit(out, field);
		SAY(out, ", by zone or one for all");
		return;
	case IS_ONE:
	case IS_LIST:
		if (field->kind == IS_LIST)
			SAY(out, "a list of: ");
		put_code(out, field->record->name);
		return;
	default:
		break;
	}
	static const char *const kinds[] = { [IS_NAME] = "a name, once", [IS_TEXT] = "text", [IS_TEXTS] = "a list of texts",
		[IS_SIZE] = "a screw size", [IS_DATE] = "a day", [IS_YES] = "yes or no", [IS_MARK] = "the mark of a screw" };
	put(out, kinds[field->kind]);
}

static void put_need(Out *out, const Field *field)
{
	switch (field->need) {
	case NEED_REQUIRED:
	case NEED_STATED:
		SAY(out, "from ");
		put(out, stage_words(field->due));
		if (field->need == NEED_STATED)
			SAY(out, ", or `none`");
		if (field->may_not_apply)
			SAY(out, ", or not applicable");
		return;
	case NEED_ASSUMED:
		SAY(out, "left out: ");
		put(out, field->assumed);
		return;
	case NEED_OPTIONAL:
		SAY(out, "may be left out");
		return;
	default:
		SAY(out, "made");
	}
}

static void put_range(const Pages *pages, const Field *field)
{
	if ((field->kind != IS_NUMBER && field->kind != IS_BY_ZONE) || field->high <= field->low)
		return;
	put(pages->out, arena_printf(pages->arena, "%g to %g", field->low, field->high));
}

static void put_row(const Pages *pages, const Field *field)
{
	Out *out = pages->out;
	SAY(out, "| ");
	put_code(out, field->key);
	SAY(out, " | ");
	put(out, field->title);
	SAY(out, " | ");
	put_kind(out, field);
	SAY(out, " | ");
	put_need(out, field);
	SAY(out, " | ");
	put_range(pages, field);
	SAY(out, " | ");
	if (field->example != NULL && field->example[0] != '\0')
		put_code(out, field->example);
	SAY(out, " |\n");
}

static void put_record(const Pages *pages, const Record *record)
{
	Out *out = pages->out;
	SAY(out, "\n### ");
	put(out, record->name);
	SAY(out, "\n\n| key | what it says | written as | due | range | example |\n|---|---|---|---|---|---|\n");
	for (uint32_t i = 0; i < record->count; i++)
		put_row(pages, &record->field[i]);
}

/* ---- chapters ---- */

static void assign_one(Pages *pages, uint8_t kind, uint8_t chapter)
{
	if (pages->chapter[kind] != 0)
		return;
	pages->chapter[kind] = chapter;
	pages->order[pages->count++] = kind;
}

/* Every record that can be reached from `root` and stands in no chapter yet, outer ones first. */
static void assign(Pages *pages, RecordKind root, uint8_t chapter)
{
	uint32_t at = pages->count;
	assign_one(pages, (uint8_t)root, chapter);
	for (; at < pages->count; at++) {
		const Record *record = record_of((RecordKind)pages->order[at]);
		for (uint32_t i = 0; i < record->count; i++)
			if (record->field[i].record != NULL)
				assign_one(pages, record->field[i].record->kind, chapter);
	}
}

static void assign_all(Pages *pages)
{
	assign(pages, KIND_submittal, CHAPTER_SUBMITTAL);
	assign(pages, KIND_review, CHAPTER_REVIEW);
	for (int kind = 0; kind < RECORD_KINDS; kind++) {
		bool made = record_of((RecordKind)kind)->sort == RECORD_MADE;
		assign_one(pages, (uint8_t)kind, made ? CHAPTER_MADE : CHAPTER_TABLES);
	}
}

static void put_chapter(const Pages *pages, int chapter)
{
	for (uint32_t i = 0; i < pages->count; i++)
		if (pages->chapter[pages->order[i]] == chapter)
			put_record(pages, record_of((RecordKind)pages->order[i]));
}

static void put_units(Out *out)
{
	SAY(out, "\n## Units\n\nWritten behind a number; either form is read, and a value is printed as it was typed.\n\n"
		"| unit | also written |\n|---|---|\n");
	for (int unit = UNIT_in; unit < UNIT_COUNT; unit++) {
		const UnitRow *row = unit_row((Unit)unit);
		SAY(out, "| ");
		put_code(out, row->printed);
		SAY(out, " | ");
		for (const char *at = row->spellings; *at != '\0';) {
			size_t length = strcspn(at, "|");
			SAY(out, "`");
			put_part(out, at, length);
			SAY(out, "` ");
			at += length + (at[length] == '|');
		}
		SAY(out, "|\n");
	}
}

void write_form_reference(Out *out, Arena *arena)
{
	Pages pages = { .out = out, .arena = arena };
	assign_all(&pages);
	SAY(out, "# Every key of the form\n\n"
		"Printed by `seamstamp form --reference`. A form to fill in is printed by `seamstamp form --blank`.\n\n"
		"Every dimension carries its unit: `1-1/2 in`, `20'-6\"`, `0.60 mm`, `24 ga`. A slope is `1:12`, `1/2 in 12` or\n"
		"`14 deg`. A day is `2026-04-14`. A screw size is `\"#12\"` or `1/4`, the mark of a screw `12-14 x 1-1/2`. By zone:\n"
		"`{field: 24 in, corner: 12 in}`.\n\n"
		"Any key may say `unknown` or `{by others: NAME}`; where the table says so, `{not applicable: REASON}`. A list that\n"
		"has no entries says `none`. The stages are bid, application, order, close-out; a key is due from the stage named on.\n");
	SAY(out, "\n## The submittal\n");
	put_chapter(&pages, CHAPTER_SUBMITTAL);
	SAY(out, "\n## The reviewer's file\n\nKept by the panel maker and named by `--reviewer`.\n");
	put_chapter(&pages, CHAPTER_REVIEW);
	SAY(out, "\n## Tables of criteria, registers and reference\n\nOne record a line; in the header of a CSV file a blank stands\n"
		"for an underscore, and a unit stands in brackets: `service life [yr]`.\n");
	put_chapter(&pages, CHAPTER_TABLES);
	SAY(out, "\n## Records that the program makes\n\nNobody writes them; rules speak of them.\n");
	put_chapter(&pages, CHAPTER_MADE);
	put_units(out);
}

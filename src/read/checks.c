/* SPDX-License-Identifier: MIT
 * What cannot stand beside each other in an edition: within a row, between rows, across tables.
 */
#include "date.h"
#include "edition.h"
#include "hash.h"
#include "rules.h"
#include "tests.h"

#include <stdlib.h>
#include <string.h>

static void complain_at(const EditionRead *e, MessageId id, const Given *given, About about)
{
	complain(e->loading->complaints, id, given->place, about);
}

static bool is_said(const Given *given)
{
	return given->said == SAID_VALUE;
}

/* ---- attributes ---- */

static void spell(Arena *arena, Text *text)
{
	if (text->text == NULL || strchr(text->text, ' ') == NULL)
		return;
	char *plain = arena_text(arena, text->text, strlen(text->text));
	for (char *p = plain; *p != '\0'; p++)
		if (*p == ' ')
			*p = '_';
	text->text = plain;
}

void attributes_spell(EditionRead *e)
{
	Arena *arena = e->loading->arena;
	for (uint32_t i = 0; i < e->rows[TABLE_substitutions].count; i++)
		spell(arena, &((Substitution *)row_at(&e->rows[TABLE_substitutions], i))->attribute);
	for (uint32_t i = 0; i < e->rows[TABLE_scales].count; i++)
		spell(arena, &((ScaleWord *)row_at(&e->rows[TABLE_scales], i))->attribute);
	for (uint32_t i = 0; i < e->rows[TABLE_listing_terms].count; i++)
		spell(arena, &((ListingTerm *)row_at(&e->rows[TABLE_listing_terms], i))->attribute);
}

const Field *attribute_find(const char *attribute, RecordKind *kind)
{
	size_t length = strcspn(attribute, ".");
	if (attribute[length] != '.' || !part_find(attribute, length, kind))
		return NULL;
	return field_find(record_of(*kind), attribute + length + 1, strlen(attribute + length + 1));
}

/* ---- kinds, scales, terms ---- */

/* Every kind of part has its row: else its life, source and approval would never be judged. */
static void check_kinds(const EditionRead *e)
{
	const Field *field = field_find(&KindRow_record, "kind", strlen("kind"));
	size_t length;
	for (int i = 0; e->rows[TABLE_kinds].whole && word_text(field->words, i, &length) != NULL; i++) {
		RecordKind kind;
		const char *word = word_text(field->words, i, &length);
		if (part_find(word, length, &kind) && kind_find(e->criteria, kind) == NULL)
			complain(e->loading->complaints, MESSAGE_TAB_47,
				 (Place){ .line = 1, .column = 1, .source = e->rows[TABLE_kinds].source->id },
				 (About){ .value = record_of(kind)->name });
	}
}

/* An edition without rules would pass whatever is submitted. */
static void check_rules(const EditionRead *e)
{
	const Rows *rows = &e->rows[TABLE_rule_rows];
	if (rows->whole && rows->count == 0)
		complain(e->loading->complaints, MESSAGE_TAB_93, (Place){ .line = 1, .column = 1, .source = rows->source->id },
			 (About){ 0 });
}

static void check_scales(const EditionRead *e)
{
	const Criteria *c = e->criteria;
	for (uint32_t i = 0; i < c->scales.count; i++) {
		const ScaleWord *row = &c->scales.row[i];
		RecordKind kind;
		if (!is_said(&row->attribute.given))
			continue;
		const Field *field = attribute_find(row->attribute.text, &kind);
		if (field == NULL || field->kind != IS_WORD)
			complain_at(e, field == NULL ? MESSAGE_TAB_42 : MESSAGE_TAB_51, &row->attribute.given,
				    (About){ .value = row->attribute.text });
		else if (is_said(&row->word.given) && word_find(field->words, row->word.text, strlen(row->word.text)) < 0)
			complain_of_word(e->loading, field, row->word.given.place, row->word.text);
	}
}

/* A cell that holds several words of a field, joined by ;. */
static void check_words(const EditionRead *e, const Source *source, const Text *cell, const Field *field)
{
	SplitPart part;
	if (!is_said(&cell->given))
		return;
	for (size_t at = 0; split_next(cell->text, &at, &part);)
		if (word_find(field->words, part.text, part.length) < 0)
			complain_of_word(e->loading, field, csv_place_within(source, cell->given.place, part.at, part.length),
					 arena_text(e->loading->arena, part.text, part.length));
}

static void check_terms(const EditionRead *e)
{
	const Criteria *c = e->criteria;
	const Field *seam = field_find(&Panel_record, "seam", strlen("seam"));
	const Field *surroundings = field_find(&Project_record, "surroundings", strlen("surroundings"));
	for (uint32_t i = 0; i < c->terms.count; i++) {
		check_words(e, c->terms.source, &c->terms.row[i].seam, seam);
		check_words(e, c->terms.source, &c->terms.row[i].environment, surroundings);
	}
}

/* ---- listings ---- */

static void check_classes(const EditionRead *e)
{
	const Criteria *c = e->criteria;
	for (uint32_t i = 0; i < c->listings.count; i++) {
		const Listing *row = &c->listings.row[i];
		bool has_class = is_said(&row->uplift_class_one.given);
		if (has_class && row->class_spacing_in.given.said == SAID_NOTHING)
			complain_at(e, MESSAGE_TAB_38,
				    row->class_spacing_in.given.place.line > 0 ? &row->class_spacing_in.given
									       : &row->uplift_class_one.given,
				    (About){ .key = row->listing.text, .value = row->uplift_class_one.given.typed });
		if (is_word(&row->role, "class") && row->uplift_class_one.given.said == SAID_NOTHING)
			complain_at(e, MESSAGE_TAB_29,
				    row->uplift_class_one.given.place.line > 0 ? &row->uplift_class_one.given : &row->role.given,
				    (About){ .key = row->listing.text });
	}
}

static bool is_complete_test(const ListingTest *row)
{
	return is_said(&row->listing.given) && is_said(&row->clip_spacing_in.given) && is_said(&row->pressure_psf.given) &&
	       is_said(&row->pressure_is.given);
}

/* By listing and meaning of the pressure, then from the closest spacing to the widest. */
static int compare_tests(const void *a, const void *b)
{
	const ListingTest *left = *(const ListingTest *const *)a, *right = *(const ListingTest *const *)b;
	int order = strcmp(left->listing.text, right->listing.text);
	if (order == 0)
		order = strcmp(left->pressure_is.text, right->pressure_is.text);
	if (order == 0)
		order = (left->clip_spacing_in.value > right->clip_spacing_in.value) -
			(left->clip_spacing_in.value < right->clip_spacing_in.value);
	return order != 0 ? order : (left > right) - (left < right);
}

static bool is_one_curve(const ListingTest *a, const ListingTest *b)
{
	return strcmp(a->listing.text, b->listing.text) == 0 && strcmp(a->pressure_is.text, b->pressure_is.text) == 0;
}

/* An allowable pressure has its factor in it already. */
static void check_factors(const EditionRead *e)
{
	const Criteria *c = e->criteria;
	for (uint32_t i = 0; i < c->listing_tests.count; i++) {
		const ListingTest *row = &c->listing_tests.row[i];
		const Given *factor = &row->factor_included_one.given;
		if (is_word(&row->pressure_is, "allowable") && factor->said == SAID_NOTHING)
			complain_at(e, MESSAGE_TAB_28, factor->place.line > 0 ? factor : &row->pressure_is.given,
				    (About){ .key = row->listing.text });
	}
}

/* Clips farther apart never hold more. */
static void check_pressures(const EditionRead *e)
{
	const Criteria *c = e->criteria;
	const ListingTest **sorted = TAKE(e->loading->arena, const ListingTest *, c->listing_tests.count);
	uint32_t count = 0;
	for (uint32_t i = 0; i < c->listing_tests.count; i++)
		if (is_complete_test(&c->listing_tests.row[i]))
			sorted[count++] = &c->listing_tests.row[i];
	qsort(sorted, count, sizeof *sorted, compare_tests);
	for (uint32_t i = 1; i < count; i++)
		if (is_one_curve(sorted[i - 1], sorted[i]) && sorted[i]->pressure_psf.value > sorted[i - 1]->pressure_psf.value)
			complain_at(e, MESSAGE_TAB_40, &sorted[i]->pressure_psf.given,
				    (About){
					    .key = sorted[i]->listing.text,
					    .value = sorted[i]->pressure_psf.given.typed,
					    .want = sorted[i - 1]->pressure_psf.given.typed,
					    .also = sorted[i - 1]->pressure_psf.given.place,
				    });
}

/* ---- rules, dates ---- */

static void check_site_codes(const EditionRead *e)
{
	const Criteria *c = e->criteria;
	Hash *codes = hash_make(e->loading->arena, c->rule_rows.count);
	for (uint32_t i = 0; i < c->rule_rows.count; i++) {
		const Text *code = &c->rule_rows.row[i].code;
		if (is_said(&code->given))
			hash_put(codes, code->text, strlen(code->text), (void *)(uintptr_t)code);
	}
	for (uint32_t i = 0; i < c->site_checks.count; i++) {
		const Text *code = &c->site_checks.row[i].code;
		if (is_said(&code->given) && hash_get(codes, code->text, strlen(code->text)) != NULL)
			complain_at(e, MESSAGE_TAB_89, &code->given, (About){ .value = code->text });
	}
}

static void check_dates(const EditionRead *e)
{
	const Edition *edition = &e->criteria->edition;
	if (is_said(&edition->effective.given) && is_said(&edition->expires.given) &&
	    edition->expires.day < edition->effective.day)
		complain_at(e, MESSAGE_TAB_34, &edition->expires.given,
			    (About){ .value = edition->expires.given.typed, .want = edition->effective.given.typed });
}

/* A holiday that cannot be read would count as a working day. */
static void check_holidays(const EditionRead *e)
{
	const Texts *holidays = &e->criteria->edition.holidays;
	for (uint32_t i = 0; is_said(&holidays->given) && i < holidays->count; i++) {
		const Text *text = &holidays->at[i];
		int32_t day;
		if (!date_read(text->text, strlen(text->text), &day))
			complain_at(e, MESSAGE_TAB_69, &text->given, (About){ .value = text->text });
	}
}

void edition_check(const EditionRead *e)
{
	check_dates(e);
	check_holidays(e);
	check_kinds(e);
	check_rules(e);
	check_scales(e);
	check_terms(e);
	check_classes(e);
	check_factors(e);
	check_pressures(e);
	check_site_codes(e);
}

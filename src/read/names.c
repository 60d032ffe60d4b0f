/* SPDX-License-Identifier: MIT
 * Looking up names in rules: in the record of for_each its facts, then its fields (through ONE freely, through a LIST never),
 * then the same outwards to the roof area and the submittal. The inner record wins.
 */
#include "names.h"

#include "suggest.h"

#include <assert.h>
#include <string.h>

enum { CHOICES = 512, SUGGESTIONS = 50 };

/* The rows of facts.def; the functions behind them belong to compute. */
static const struct {
	const char *record, *name;
	Unit unit;
	bool on_request;
} facts[] = {
#define FACT(record, name, unit, ...) { #record, #name, UNIT_##unit, false },
#define FACT_ON_REQUEST(record, name, unit, ...) { #record, #name, UNIT_##unit, true },
#include "facts.def"
};
_Static_assert(sizeof facts / sizeof *facts == FACT_COUNT, "facts are numbered in the order of their rows");

/* ---- records ---- */

/* The records of which there are cases, as rules may name them. */
static const RecordKind cases[] = { KIND_submittal, KIND_letter,     KIND_requirement,  KIND_roof_area, KIND_test,
				    KIND_zone,      KIND_panel,      KIND_support,      KIND_layer,     KIND_clip,
				    KIND_fastener,  KIND_fixed_line, KIND_underlayment, KIND_sealant,   KIND_rivet,
				    KIND_closure,   KIND_detail,     KIND_penetration,  KIND_accessory, KIND_adjoining_metal, KIND_touching,
				    KIND_document,  KIND_event,      KIND_change,       KIND_reply,     KIND_comparison,
				    KIND_role,      KIND_paper,      KIND_contact,      KIND_upper_roof, KIND_seam_test,
				    KIND_paper_used, KIND_departure, KIND_inspection,  KIND_photograph, KIND_punch_item,
				    KIND_installed, KIND_meeting,   KIND_purchase,   KIND_purchase_line };
enum { CASES = sizeof cases / sizeof *cases };

static bool is_alike(const char *words, const char *name)
{
	for (; *words != '\0' && (*words == *name || (*words == ' ' && *name == '_')); words++)
		name++;
	return *words == *name;
}

bool for_each_find(const char *words, RecordKind *kind)
{
	for (int i = 0; i < CASES; i++)
		if (is_alike(words, record_of(cases[i])->name)) {
			*kind = cases[i];
			return true;
		}
	*kind = RECORD_KINDS;
	return strcmp(words, "part") == 0;
}

const char *for_each_words(Arena *arena)
{
	const char *words = "part";
	for (int i = 0; i < CASES; i++)
		words = arena_printf(arena, "%s, %s", words, record_of(cases[i])->name);
	return words;
}

bool part_find(const char *word, size_t length, RecordKind *kind)
{
	for (int i = 0; i < CASES; i++) {
		const char *name = record_of(cases[i])->name;
		if (is_part(cases[i]) && strncmp(name, word, length) == 0 && name[length] == '\0') {
			*kind = cases[i];
			return true;
		}
	}
	return false;
}

bool filler_find(const char *word, size_t length, RecordKind *kind)
{
	static const char detail[] = "detail";
	if (length != sizeof detail - 1 || strncmp(word, detail, length) != 0)
		return part_find(word, length, kind);
	*kind = KIND_detail;
	return true;
}

/* The record outside another; false outside the submittal. */
static bool outwards(RecordKind *kind)
{
	switch ((int)*kind) { /* RECORD_KINDS, any part, is no case of its own */
	case KIND_submittal:
		return false;
	case KIND_roof_area:
	case KIND_letter:
	case KIND_requirement:
	case KIND_document:
	case KIND_event:
	case KIND_change:
	case KIND_reply:
	case KIND_paper:
	case KIND_departure:
	case KIND_inspection:
	case KIND_installed:
	case KIND_photograph:
	case KIND_punch_item:
	case KIND_meeting:
	case KIND_purchase:
		*kind = KIND_submittal;
		return true;
	case KIND_paper_used:
		*kind = KIND_document;
		return true;
	case KIND_purchase_line:
		*kind = KIND_purchase;
		return true;
	default:
		*kind = KIND_roof_area;
		return true;
	}
}

static bool lies_in_area(RecordKind kind)
{
	while (kind != KIND_roof_area)
		if (!outwards(&kind))
			return false;
	return true;
}

/* ---- fields ---- */

void operand_of_field(Operand *operand, const Field *field)
{
	static const uint8_t gives[] = {
		[IS_NAME] = VALUE_TEXT,     [IS_TEXT] = VALUE_TEXT,      [IS_TEXTS] = VALUE_LIST, [IS_WORD] = VALUE_WORD,
		[IS_NUMBER] = VALUE_NUMBER, [IS_SIZE] = VALUE_NUMBER,    [IS_DATE] = VALUE_DATE,  [IS_YES] = VALUE_YES,
		[IS_MARK] = VALUE_TEXT,     [IS_BY_ZONE] = VALUE_NUMBER, [IS_ONE] = VALUE_LIST,   [IS_LIST] = VALUE_LIST
	};
	operand->field = field;
	operand->gives = gives[field->kind];
	operand->unit = field->unit;
	operand->factor = 1;
}

/* A field of a record by its path through ONE. */
static NameResult path_find(const Record *record, const char *path, size_t length, Operand *operand)
{
	const char *end = path + length;
	operand->offset = 0;
	while (path < end) {
		const char *dot = memchr(path, '.', (size_t)(end - path));
		size_t key = (size_t)((dot != NULL ? dot : end) - path);
		const Field *field = field_find(record, path, key);
		for (uint32_t i = 0; field == NULL && dot != NULL && i < record->count; i++)
			if (record->field[i].one != NULL && strncmp(record->field[i].one, path, key) == 0 &&
			    record->field[i].one[key] == '\0')
				field = &record->field[i];
		if (field == NULL || (dot != NULL && field->record == NULL))
			return NAME_UNKNOWN;
		operand_of_field(operand, field);
		if (dot != NULL && field->kind == IS_LIST)
			return NAME_IN_LIST;
		operand->offset += field->offset;
		if (dot == NULL)
			return field->kind == IS_BY_ZONE ? NAME_BY_ZONE : NAME_FOUND;
		record = field->record;
		path = dot + 1;
	}
	return NAME_UNKNOWN;
}

/* Fields of any part: those that every part begins with. */
static NameResult field_find_in(RecordKind kind, const char *path, size_t length, Operand *operand)
{
	operand->at = kind;
	if (kind != RECORD_KINDS)
		return path_find(record_of(kind), path, length, operand);
	NameResult result = path_find(&Panel_record, path, length, operand);
	return result == NAME_FOUND && operand->offset > offsetof(Panel, see) ? NAME_UNKNOWN : result;
}

/* ---- facts ---- */

static bool fact_find_in(const char *record, const char *name, size_t length, Operand *operand)
{
	for (uint16_t i = 0; i < FACT_COUNT; i++) {
		if (strcmp(facts[i].record, record) != 0 || strncmp(facts[i].name, name, length) != 0 ||
		    facts[i].name[length] != '\0')
			continue;
		operand->from = FROM_FACT;
		operand->fact = i;
		operand->unit = facts[i].unit;
		operand->gives = facts[i].unit == UNIT_yes ? VALUE_YES : VALUE_NUMBER;
		operand->factor = 1;
		return true;
	}
	return false;
}

static NameResult find_in(RecordKind kind, Span name, Operand *operand)
{
	operand->at = kind;
	if (kind != RECORD_KINDS && fact_find_in(record_of(kind)->name, name.text, name.length, operand))
		return NAME_FOUND;
	if (is_part(kind) && fact_find_in("part", name.text, name.length, operand))
		return NAME_FOUND;
	operand->from = FROM_FIELD;
	return field_find_in(kind, name.text, name.length, operand);
}

/* ---- names ---- */

/* `listed.`: of a part its tested part first, then the listing, then what that tested. A test has its own listing. */
static NameResult listed_find(const Binding *b, Span name, Operand *operand)
{
	operand->from = FROM_LISTED;
	if (is_part(b->for_each) && field_find_in(b->for_each, name.text, name.length, operand) == NAME_FOUND)
		return NAME_FOUND;
	if (!lies_in_area(b->for_each))
		return NAME_UNKNOWN;
	operand->at = b->for_each == KIND_test ? KIND_test : KIND_roof_area;
	NameResult result = path_find(&Listing_record, name.text, name.length, operand);
	if (result != NAME_UNKNOWN)
		return result;
	result = path_find(&RoofArea_record, name.text, name.length, operand);
	operand->offset += (uint32_t)offsetof(Listing, tested);
	return result;
}

static NameResult catalogue_find(const Binding *b, Span name, Operand *operand)
{
	operand->from = FROM_CATALOGUE;
	return is_part(b->for_each) ? field_find_in(b->for_each, name.text, name.length, operand) : NAME_UNKNOWN;
}

static NameResult edition_find(const Binding *b, Span name, Operand *operand)
{
	(void)b;
	operand->from = FROM_EDITION;
	operand->at = KIND_edition;
	return path_find(&Edition_record, name.text, name.length, operand);
}

NameResult name_find(const Binding *b, Span name, Operand *operand)
{
	static const struct {
		const char *prefix;
		NameResult (*find)(const Binding *, Span, Operand *);
	} from[] = { { "listed.", listed_find }, { "catalogue.", catalogue_find }, { "criteria.", edition_find } };
	*operand = (Operand){ .word = arena_text(b->loading->arena, name.text, name.length) };
	for (size_t i = 0; i < sizeof from / sizeof *from; i++) {
		size_t length = strlen(from[i].prefix);
		if (name.length > length && memcmp(name.text, from[i].prefix, length) == 0) {
			Span rest = { name.text + length, name.length - length, name.cell, name.at + length };
			return from[i].find(b, rest, operand);
		}
	}
	RecordKind kind = b->for_each;
	Operand here;
	do {
		here = *operand;
		NameResult result = find_in(kind, name, &here);
		if (result != NAME_UNKNOWN) {
			*operand = here;
			return result;
		}
	} while (outwards(&kind));
	return NAME_UNKNOWN;
}

Place span_place(const Binding *b, Span span)
{
	return csv_place_within(b->source, span.cell, span.at, span.length);
}

/* The names that can stand alone: facts and fields of the record and outwards. */
static uint32_t gather(const Binding *b, const char **name)
{
	uint32_t count = 0;
	RecordKind kind = b->for_each;
	for (bool more = true; more;) {
		const Record *record = record_of(kind == RECORD_KINDS ? KIND_panel : kind);
		uint32_t fields = kind == RECORD_KINDS ? 0 : record->count;
		for (uint16_t i = 0; i < FACT_COUNT && count < CHOICES; i++)
			if (strcmp(facts[i].record, record->name) == 0 || (is_part(kind) && strcmp(facts[i].record, "part") == 0))
				name[count++] = facts[i].name;
		for (uint32_t i = 0; i < fields && count < CHOICES; i++)
			name[count++] = record->field[i].key;
		more = outwards(&kind);
	}
	return count;
}

static void complain_unknown(const Binding *b, Span name)
{
	const char *choice[CHOICES];
	Complaints *complaints = b->loading->complaints;
	const char *written = arena_text(b->loading->arena, name.text, name.length);
	const char *record = b->for_each == RECORD_KINDS ? "part" : record_of(b->for_each)->name;
	uint32_t count = gather(b, choice);
	int nearest = complaints->suggestions++ < SUGGESTIONS ? suggest(written, choice, count) : -1;
	About about = { .key = record, .value = written, .want = nearest >= 0 ? choice[nearest] : NULL };
	complain(complaints, nearest >= 0 ? MESSAGE_TAB_54 : MESSAGE_TAB_55, span_place(b, name), about);
}

bool name_bind(const Binding *b, Span name, Operand *operand)
{
	NameResult result = name_find(b, name, operand);
	About about = { .value = arena_text(b->loading->arena, name.text, name.length) };
	if (result == NAME_UNKNOWN)
		complain_unknown(b, name);
	else if (result == NAME_IN_LIST)
		about.want = operand->field->one;
	if (result == NAME_IN_LIST)
		complain(b->loading->complaints, MESSAGE_TAB_64, span_place(b, name), about);
	if (result == NAME_BY_ZONE)
		complain(b->loading->complaints, MESSAGE_TAB_65, span_place(b, name), about);
	if (result == NAME_FOUND && operand->from == FROM_FACT && facts[operand->fact].on_request) {
		complain(b->loading->complaints, MESSAGE_TAB_91, span_place(b, name), about);
		return false;
	}
	return result == NAME_FOUND;
}

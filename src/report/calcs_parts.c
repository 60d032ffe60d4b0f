/* SPDX-License-Identifier: MIT
 * The pieces of a sheet of calculations that its text and its page print alike.
 */
#include "calcs.h"

#include "date.h"
#include "number.h"
#include "template.h"
#include "unit.h"

#include <string.h>

/* Three digits more than the letter prints: the sheet is there to be worked through again. */
const char *figure(double value, Arena *arena)
{
	return number_print(arena, value, number_digits(&value, 1) + 3);
}

const char *quantity(const Sheet *sheet, double value, Unit unit, Arena *arena)
{
	const char *printed = unit_row(unit)->printed;
	const char *text = arena_printf(arena, "%s%s%s", figure(value, arena), *printed != '\0' && *printed != ':' ? " " : "", printed);
	const char *si = sheet->verdict->si ? si_text(value, printed, arena) : NULL;
	return si != NULL ? arena_printf(arena, "%s (%s)", text, si) : text;
}

static const char *value_text(const Sheet *sheet, const SheetUse *use, Arena *arena)
{
	switch (use->shown) {
	case SHOWN_NUMBER:
		return quantity(sheet, use->value, use->unit, arena);
	case SHOWN_YES:
		return use->value != 0 ? "yes" : "no";
	case SHOWN_DAY:
		return date_print(arena, (int32_t)use->value);
	case SHOWN_TEXT:
		return use->text;
	case SHOWN_NOTHING:
		break;
	}
	return NULL;
}

/* ---- levels ---- */

/* A pressure at strength level and one that is allowed are different kinds of thing: each is told by its name. */
static const struct {
	const char *record, *fact, *level;
} levels[] = {
	{ "roof_area", "velocity_pressure", "level of the load standard's basic wind speed" },
	{ "zone", "strength_uplift", "strength level" },
	{ "zone", "asd_uplift", "allowable level (ASD)" },
	{ "zone", "letter_uplift", "allowable level (ASD)" },
	{ "zone", "overhang_strength", "strength level" },
	{ "zone", "overhang_asd", "allowable level (ASD)" },
	{ "zone", "letter_overhang", "allowable level (ASD)" },
	{ "zone", "overhang_uplift", "allowable level (ASD)" },
	{ "zone", "roof_uplift", "allowable level (ASD)" },
	{ "zone", "demand", "allowable level (ASD)" },
	{ "zone", "tested_uplift", "ultimate, as tested" },
	{ "zone", "straight_line_uplift", "ultimate, as tested" },
	{ "zone", "closer_pressure", "ultimate, as tested" },
	{ "zone", "wider_pressure", "ultimate, as tested" },
	{ "zone", "approval_allowable", "allowable level (ASD)" },
	{ "zone", "straight_line_allowable", "allowable level (ASD)" },
	{ "zone", "greatest_allowable", "allowable level (ASD)" },
	{ "zone", "allowable_uplift", "allowable level (ASD)" },
};

const char *level_of(FactId id)
{
	const FactSpec *spec = fact_spec(id);
	for (size_t i = 0; i < sizeof levels / sizeof *levels; i++)
		if (strcmp(spec->record, levels[i].record) == 0 && strcmp(spec->name, levels[i].fact) == 0)
			return levels[i].level;
	return NULL;
}

/* ---- facts ---- */

const char *state_of(const Fact *fact)
{
	static const char *const words[] = {
		[FACT_KNOWN] = "known",
		[FACT_WAITING] = "waiting",
		[FACT_REFUSED] = "refused",
		[FACT_NOT_APPLICABLE] = "not applicable",
	};
	return words[fact->state];
}

const char *result_of(const Sheet *sheet, const SheetLine *line, Arena *arena)
{
	Unit unit = fact_spec(line->id)->unit;
	if (unit == UNIT_yes)
		return line->fact->value != 0 ? "yes" : "no";
	const char *text = quantity(sheet, line->fact->value, unit, arena), *level = level_of(line->id);
	return level != NULL ? arena_printf(arena, "%s, %s", text, level) : text;
}

const char *formula_in_words(const char *formula, Arena *arena)
{
	const char *words = "";
	Snippet snippet;
	while (template_next(&formula, &snippet)) {
		const char *text = arena_text(arena, snippet.at, snippet.length);
		words = arena_printf(arena, "%s%s", words, plain_words(text, arena));
	}
	return words;
}

static const SheetUse *use_named(const SheetLine *line, const Snippet *name)
{
	for (uint32_t i = 0; i < line->uses; i++) {
		const SheetUse *use = &line->use[i];
		if (use->shown == SHOWN_NUMBER && strlen(use->name) == name->length && memcmp(use->name, name->at, name->length) == 0)
			return use;
	}
	return NULL;
}

const char *formula_with_numbers(const SheetLine *line, Arena *arena)
{
	const char *filled = "", *formula = line->formula;
	Snippet snippet;
	while (template_next(&formula, &snippet)) {
		const SheetUse *use = snippet.is_name ? use_named(line, &snippet) : NULL;
		const char *number = use != NULL ? figure(use->value, arena) : arena_text(arena, snippet.at, snippet.length);
		bool below = use != NULL && use->value < 0;
		filled = arena_printf(arena, "%s%s%s%s", filled, below ? "(" : "", number, below ? ")" : "");
	}
	return filled;
}

const char *record_title(const Case *at, Arena *arena)
{
	return arena_printf(arena, "%s: %s", plain_words(record_of(at->kind)->name, arena), at->name);
}

/* ---- uses ---- */

const char *use_name(const SheetUse *use, Arena *arena)
{
	return plain_words(use->name, arena);
}

const char *use_value(const Sheet *sheet, const SheetUse *use, Arena *arena)
{
	const char *text = value_text(sheet, use, arena);
	if (use->kind == USED_FACT) {
		const char *level = level_of(use->id);
		if (text == NULL)
			return state_of(use->fact);
		return level != NULL ? arena_printf(arena, "%s, %s", text, level) : text;
	}
	return text != NULL ? text : use->given != NULL ? said_text(use->given, arena) : "not stated";
}

static const Source *find_source(const Source *const *source, uint32_t count, uint16_t id)
{
	for (uint32_t i = 0; i < count; i++)
		if (source[i]->id == id)
			return source[i];
	return NULL;
}

const Source *source_of(const Sheet *sheet, uint16_t id)
{
	const Cases *cases = sheet->verdict->cases;
	if (id >= SOURCE_FIRST_REFERENCE)
		return cases->reference != NULL ? find_source(cases->reference->source, cases->reference->count, id) : NULL;
	if (id >= SOURCE_FIRST_REGISTER)
		return cases->registers != NULL ? find_source(cases->registers->source, cases->registers->count, id) : NULL;
	return verdict_source(sheet->verdict, id);
}

const char *place_text(const Sheet *sheet, const Place *place, Arena *arena)
{
	const Source *source = source_of(sheet, place->source);
	if (source == NULL || place->line == 0)
		return NULL;
	if (place->source == SOURCE_SUBMITTAL)
		return arena_printf(arena, "%u:%u", place->line, place_column(place));
	return arena_printf(arena, "%s:%u:%u", source->name, place->line, place_column(place));
}

/* As typed, where that reads otherwise than the value: "24 ga". */
static const char *typed_text(const SheetUse *use, const char *value)
{
	const char *typed = use->given->said == SAID_VALUE ? use->given->typed : NULL;
	bool is_new = typed != NULL && strcmp(typed, value) != 0 && strlen(typed) < 60 && use->shown == SHOWN_NUMBER;
	return is_new ? typed : NULL;
}

static const char *field_origin(const Sheet *sheet, const SheetUse *use, const Case *of, Arena *arena)
{
	const char *place = place_text(sheet, &use->given->place, arena);
	const char *typed = typed_text(use, use_value(sheet, use, arena));
	const char *assumed = use->given->said == SAID_ASSUMED ? "assumed, because not stated" : NULL;
	const char *origin = assumed != NULL ? assumed : place != NULL ? place : "of this record";
	if (use->at != NULL && use->at != of && use->at->kind != KIND_submittal)
		origin = arena_printf(arena, "%s, %s", origin, record_title(use->at, arena));
	return typed != NULL ? arena_printf(arena, "%s, written %s", origin, typed) : origin;
}

static const char *constant_origin(const Sheet *sheet, const SheetUse *use, Arena *arena)
{
	const char *place = use->given != NULL ? place_text(sheet, &use->given->place, arena) : NULL;
	const char *source = use->source != NULL ? basis_short(sheet, use->source, arena) : "the panel maker's own paper";
	const char *row = *use->row != '\0' ? arena_printf(arena, ", row %s", plain_words(use->row, arena)) : "";
	return arena_printf(arena, "%s%s; %s", place != NULL ? place : use->table, row, source);
}

const char *use_origin(const Sheet *sheet, const SheetUse *use, const Case *of, Arena *arena)
{
	if (use->kind == USED_FACT)
		return use->at == of ? "worked out for this record" : arena_printf(arena, "worked out for %s", record_title(use->at, arena));
	if (use->kind == USED_CONSTANT)
		return constant_origin(sheet, use, arena);
	return use->given != NULL ? field_origin(sheet, use, of, arena) : "";
}

const char *constants_counted(const Sheet *sheet, Arena *arena)
{
	const uint32_t *known = sheet->known_by;
	return arena_printf(arena, "Of %u constants used, %u read, %u second-hand, %u from memory, %u common practice.",
		sheet->constants, known[KNOWN_READ], known[KNOWN_SECOND_HAND], known[KNOWN_MEMORY], known[KNOWN_PRACTICE]);
}

const char *sheet_made_for(const Sheet *sheet, Arena *arena)
{
	const Verdict *verdict = sheet->verdict;
	const Review *review = verdict->cases->review;
	int32_t as_of = verdict->cases->as_of;
	const char *day = as_of != INT32_MIN ? arena_printf(arena, "; papers judged as of %s", date_print(arena, as_of)) : "";
	if (review == NULL)
		return arena_printf(arena, "a self-check, not an approval%s", day);
	const Given *returned = &review->returned.given;
	return arena_printf(arena, "the review of round %u, received %s%s%s%s", verdict->round, review->received.given.typed,
		is_value(returned) ? ", returned " : "", is_value(returned) ? returned->typed : "", day);
}

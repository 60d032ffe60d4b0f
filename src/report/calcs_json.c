/* SPDX-License-Identifier: MIT
 * The sheet of calculations as one JSON object, unrounded. Keys are only ever added.
 */
#include "calcs.h"

#include "date.h"
#include "json_number.h"
#include "json_tree.h"
#include "unit.h"
#include "version.h"

static json_t *unit_tree(Unit unit, Arena *arena)
{
	return json_words(unit == UNIT_yes ? "yes" : unit_row(unit)->printed, arena);
}

/* ---- uses ---- */

static json_t *shown_value(ShownAs shown, double value, const char *text, Arena *arena)
{
	switch (shown) {
	case SHOWN_NUMBER:
		return json_figure(value);
	case SHOWN_YES:
		return json_boolean(value != 0);
	case SHOWN_DAY:
		return json_words(date_print(arena, (int32_t)value), arena);
	case SHOWN_TEXT:
		return json_words(text, arena);
	case SHOWN_NOTHING:
		break;
	}
	return json_null();
}

static void put_where(json_t *object, const Sheet *sheet, const Given *given, Arena *arena)
{
	const Source *source = given != NULL && given->place.line > 0 ? source_of(sheet, given->place.source) : NULL;
	json_put(object, "file", json_words(source != NULL ? source->name : NULL, arena));
	json_put(object, "line", source != NULL ? json_integer(given->place.line) : json_null());
	json_put(object, "column", source != NULL ? json_integer(place_column(&given->place)) : json_null());
}

static void put_record(json_t *object, const Case *at, Arena *arena)
{
	json_put(object, "record", json_words(at != NULL ? record_of(at->kind)->name : NULL, arena));
	json_put(object, "record_name", json_words(at != NULL ? at->name : NULL, arena));
}

static void put_what(json_t *object, const Sheet *sheet, const SheetUse *use, Arena *arena)
{
	switch (use->kind) {
	case USED_FACT:
		json_put(object, "fact", json_words(fact_spec(use->id)->name, arena));
		put_record(object, use->at, arena);
		json_put(object, "state", json_words(state_of(use->fact), arena));
		return;
	case USED_CONSTANT:
		json_put(object, "constant", json_words(arena_printf(arena, "%s %s", use->table, use->row), arena));
		json_put(object, "table", json_words(use->table, arena));
		json_put(object, "row", json_words(use->row, arena));
		json_put(object, "source", json_words(use->source, arena));
		put_where(object, sheet, use->given, arena);
		return;
	case USED_FIELD:
	case USED_THROUGH:
		json_put(object, "field", json_words(use->name, arena));
		put_record(object, use->at, arena);
		json_put(object, "said", json_words(use->given->said == SAID_ASSUMED ? "assumed" : said_text(use->given, arena), arena));
		put_where(object, sheet, use->given, arena);
		return;
	}
}

static json_t *use_tree(const Sheet *sheet, const SheetUse *use, Arena *arena)
{
	json_t *object = json_made(json_object());
	put_what(object, sheet, use, arena);
	json_put(object, "name", json_words(use->name, arena));
	json_put(object, "value", shown_value(use->shown, use->value, use->text, arena));
	json_put(object, "unit", use->shown == SHOWN_NUMBER || use->kind == USED_FACT ? unit_tree(use->unit, arena) : json_null());
	json_put(object, "known_by", use->kind == USED_FIELD ? json_null() : json_words(known_by_words(use->known_by), arena));
	return object;
}

static json_t *waits_tree(const SheetLine *line, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < line->waits; i++)
		json_add(array, json_words(line->wait[i].name, arena));
	return array;
}

static json_t *waiting_tree(const Sheet *sheet, const SheetLine *line, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < line->waits; i++)
		json_add(array, use_tree(sheet, &line->wait[i], arena));
	return array;
}

/* ---- facts ---- */

static json_t *value_tree(const SheetLine *line)
{
	if (line->fact->state != FACT_KNOWN)
		return json_null();
	return fact_spec(line->id)->unit == UNIT_yes ? json_boolean(line->fact->value != 0) : json_figure(line->fact->value);
}

static json_t *fact_tree(const Sheet *sheet, const SheetLine *line, Arena *arena)
{
	const FactSpec *spec = fact_spec(line->id);
	const Fact *fact = line->fact;
	json_t *object = json_made(json_object());
	json_put(object, "record", json_words(record_of(line->at->kind)->name, arena));
	json_put(object, "name", json_words(line->at->name, arena));
	json_put(object, "fact", json_words(spec->name, arena));
	json_put(object, "title", json_words(spec->title, arena));
	json_put(object, "state", json_words(state_of(fact), arena));
	json_put(object, "value", value_tree(line));
	if (fact->state == FACT_WAITING) {
		json_put(object, "waits_for", waits_tree(line, arena));
		json_put(object, "waiting", waiting_tree(sheet, line, arena));
	} else if (fact->state != FACT_KNOWN) {
		json_put(object, "reason", json_words(fact->reason, arena));
	}
	json_put(object, "unit", unit_tree(spec->unit, arena));
	json_put(object, "level", json_words(level_of(line->id), arena));
	json_put(object, "formula", json_words(line->formula, arena));
	json_put(object, "expression", json_boolean(line->is_expression));
	json_put(object, "source", json_words(spec->source, arena));
	json_put(object, "known_by", json_words(known_by_words(fact->known_by), arena));
	json_put(object, "borrowed", json_boolean(fact->borrowed));
	json_put(object, "note", json_words(fact->note, arena));
	json_t *uses = json_made(json_array());
	for (uint32_t i = 0; i < line->uses; i++)
		json_add(uses, use_tree(sheet, &line->use[i], arena));
	json_put(object, "uses", uses);
	return object;
}

/* ---- margins and constants ---- */

static json_t *used_up_tree(const UsedUp *by, Arena *arena)
{
	json_t *object = json_made(json_object());
	json_put(object, "input", json_words(by->path, arena));
	json_put(object, "what", json_words(by->what, arena));
	json_put(object, "unit", by->is_word ? json_null() : unit_tree(by->unit, arena));
	json_put(object, "now", by->is_word ? json_words(by->word_now, arena) : json_figure(by->now));
	json_put(object, "holds", by->is_word ? json_words(by->word_holds, arena) : json_figure(by->holds));
	json_t *lost = !by->is_lost ? json_null() : by->is_word ? json_words(by->word_lost, arena) : json_figure(by->lost);
	json_put(object, "used_up_at", lost);
	json_put(object, "ratio", by->is_lost && by->why == NULL ? json_figure(by->ratio) : json_null());
	json_put(object, "reason", json_words(by->why, arena));
	return object;
}

static json_t *margins_tree(const Sheet *sheet, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t m = 0; m < sheet->margins; m++) {
		const Margin *margin = &sheet->margin[m];
		json_t *object = json_made(json_object());
		json_put(object, "record", json_words(record_of(margin->line->at->kind)->name, arena));
		json_put(object, "name", json_words(margin->line->at->name, arena));
		json_put(object, "fact", json_words(fact_spec(margin->line->id)->name, arena));
		json_put(object, "value", json_figure(margin->line->fact->value));
		json_put(object, "limit", json_integer(1));
		json_put(object, "thin", json_boolean(margin->thin));
		json_t *by = json_made(json_array());
		for (uint32_t i = 0; i < margin->inputs; i++)
			json_add(by, used_up_tree(&margin->by[i], arena));
		json_put(object, "used_up_by", by);
		json_add(array, object);
	}
	return array;
}

static json_t *constants_tree(const Sheet *sheet, Arena *arena)
{
	json_t *object = json_made(json_object()), *named = json_made(json_array());
	json_put(object, "used", json_integer(sheet->constants));
	for (int known = KNOWN_READ; known <= KNOWN_PRACTICE; known++)
		json_put(object, known_by_words((KnownBy)known), json_integer(sheet->known_by[known]));
	for (uint32_t i = 0; i < sheet->constants; i++)
		if (sheet->constant[i].use->known_by == KNOWN_MEMORY)
			json_add(named, use_tree(sheet, sheet->constant[i].use, arena));
	json_put(object, "to_verify", named);
	return object;
}

void write_calcs_json(Out *out, const Page *page, Arena *arena)
{
	const Sheet *sheet = page->sheet;
	const Submittal *submittal = sheet->verdict->cases->submittal;
	const Criteria *criteria = sheet->verdict->cases->criteria;
	json_t *object = json_made(json_object()), *facts = json_made(json_array());
	json_put(object, "seamstamp", json_words(SEAMSTAMP_VERSION, arena));
	json_put(object, "submittal", json_words(is_value(&submittal->submittal.given) ? submittal->submittal.text : NULL, arena));
	json_put(object, "criteria", json_words(criteria != NULL ? criteria->folder : NULL, arena));
	json_put(object, "mode", json_words(sheet->verdict->self_check ? "self-check" : "review", arena));
	json_put(object, "round", json_integer(sheet->verdict->round));
	int32_t as_of = sheet->verdict->cases->as_of;
	json_put(object, "as_of", as_of != INT32_MIN ? json_words(date_print(arena, as_of), arena) : json_null());
	for (uint32_t i = 0; i < sheet->lines; i++)
		json_add(facts, fact_tree(sheet, &sheet->line[i], arena));
	json_put(object, "facts", facts);
	json_put(object, "margins", margins_tree(sheet, arena));
	json_put(object, "constants", constants_tree(sheet, arena));
	put_json(out, object, JSON_INDENT(2), arena);
	SAY(out, "\n");
}

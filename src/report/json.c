/* SPDX-License-Identifier: MIT
 * The whole verdict as one JSON object, for programs: json for people to look into, ndjson one line a submittal. Keys are only
 * ever added. No clock, no machine names: the same input gives the same bytes.
 */
#include "date.h"
#include "earlier.h"
#include "formats.h"
#include "json_number.h"
#include "json_tree.h"
#include "parts.h"
#include "version.h"

#include <inttypes.h>
#include <string.h>

/* ---- items ---- */

static json_t *side_tree(const Side *side, Arena *arena)
{
	json_t *object = json_made(json_object());
	json_put(object, "text", json_words(side->text, arena));
	json_put(object, "value", side->has_value ? json_figure(side->value) : json_null());
	json_put(object, "unit", json_words(side->has_value ? side->unit : NULL, arena));
	return object;
}

/* The kind of record a place is of and its name for people; of one that is gone, what it was. */
static void put_record(json_t *object, const Spot *spot, const Finding *item, Arena *arena)
{
	const Case *where = spot->where;
	const char *record = spot->record != NULL ? spot->record : item->record, *name = spot->name != NULL ? spot->name : item->name;
	json_put(object, "record", json_words(where != NULL ? record_of(where->kind)->name : record, arena));
	json_put(object, "name", json_words(where != NULL ? where->name : name, arena));
}

/* 16 hex digits; NULL if nobody took it. */
static const char *fingerprint_text(const Spot *spot, Arena *arena)
{
	return spot->fingerprint != 0 ? arena_printf(arena, "%016" PRIx64, spot->fingerprint) : NULL;
}

static json_t *place_tree(const Verdict *verdict, const Finding *item, uint32_t number, Arena *arena)
{
	const Spot *spot = &item->spot[number];
	json_t *object = json_made(json_object());
	uint32_t column = place_column(&spot->place);
	json_put(object, "letter", json_words(place_letter(number, arena), arena));
	put_record(object, spot, item, arena);
	json_put(object, "file", json_words(place_file(verdict, &spot->place), arena));
	json_put(object, "line", json_integer(place_line(&spot->place)));
	json_put(object, "column", json_integer(column));
	json_put(object, "end_column", json_integer((json_int_t)column + spot->place.length));
	json_put(object, "state", json_words(item_state_words(spot->state), arena));
	json_put(object, "fingerprint", json_words(fingerprint_text(spot, arena), arena));
	json_put(object, "path", json_words(spot->path, arena));
	json_put(object, "field", json_words(spot->field, arena));
	return object;
}

static json_t *item_tree(const Verdict *verdict, const Finding *item, Arena *arena)
{
	json_t *object = json_made(json_object());
	json_put(object, "number", json_words(item_number(item, arena), arena));
	json_put(object, "state", json_words(item_state_words(item_state(item)), arena));
	json_put(object, "action", json_words(action_words(item->action), arena));
	json_put(object, "code", json_words(item->code, arena));
	json_put(object, "record", json_words(item->record, arena));
	json_put(object, "name", json_words(item->name, arena));
	json_t *places = json_made(json_array());
	for (uint32_t i = 0; i < item->spots; i++)
		json_add(places, place_tree(verdict, item, i, arena));
	json_put(object, "places", places);
	json_put(object, "finding", json_words(item->finding, arena));
	json_put(object, "submitted", side_tree(&item->submitted, arena));
	json_put(object, "limit", side_tree(&item->limit, arena));
	json_put(object, "authority", json_words(authority_words(item->authority), arena));
	json_put(object, "basis", json_words(item->basis, arena));
	json_put(object, "known_by", json_words(known_by_words(item->known_by), arena));
	json_put(object, "remedy", json_words(item->remedy, arena));
	json_put(object, "answer_by", json_words(item->answer_by, arena));
	json_t *fields = json_made(json_array());
	for (uint32_t i = 0; i < item->fields; i++)
		json_add(fields, json_words(item->field[i], arena));
	json_put(object, "fields", fields);
	json_put(object, "fingerprint", json_words(fingerprint_text(&item->spot[0], arena), arena));
	json_put(object, "cites", json_words(item->cites, arena));
	json_put(object, "reviewer", json_words(item->disposition, arena));
	json_put(object, "bid_group", json_words(verdict->stage == STAGE_bid ? bid_group_words(bid_group(item)) : NULL, arena));
	json_put(object, "note", json_words(item->note, arena));
	json_put(object, "settled", item->settled > 0 ? json_integer(item->settled) : json_null());
	return object;
}

static json_t *items_tree(const Verdict *verdict, Arena *arena)
{
	json_t *items = json_made(json_array());
	for (uint32_t i = 0; i < verdict->items; i++)
		json_add(items, item_tree(verdict, &verdict->item[i], arena));
	return items;
}

/* ---- what was not judged, assumed, unverified ---- */

static json_t *not_judged_tree(const Verdict *verdict, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < verdict->not_yets; i++) {
		const NotYet *not_yet = &verdict->not_yet[i];
		json_t *object = json_made(json_object());
		const char *record = not_yet->rule->for_each < RECORD_KINDS ? record_of(not_yet->rule->for_each)->name : "part";
		json_put(object, "code", json_words(not_yet->rule->code, arena));
		json_put(object, "record", json_words(not_yet->where != NULL ? record_of(not_yet->where->kind)->name : record, arena));
		json_put(object, "name", json_words(not_yet->where != NULL ? not_yet->where->name : NULL, arena));
		json_put(object, "waits_for", json_words(not_yet->waits_for, arena));
		json_add(array, object);
	}
	return array;
}

/* Values the form assumed; fields said not to apply, with their reasons. */
static json_t *values_tree(const Assumption *list, uint32_t count, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < count; i++) {
		const Assumption *assumed = &list[i];
		json_t *object = json_made(json_object());
		json_put(object, "record", json_words(assumed->where != NULL ? record_of(assumed->where->kind)->name : "submittal", arena));
		json_put(object, "name", json_words(assumed->where != NULL ? assumed->where->name : NULL, arena));
		json_put(object, "field", json_words(assumed->field->key, arena));
		json_put(object, "value", json_words(assumed->value, arena));
		json_add(array, object);
	}
	return array;
}

static json_t *unverified_tree(const Verdict *verdict, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < verdict->unverifieds; i++) {
		json_t *object = json_made(json_object());
		json_put(object, "what", json_words(verdict->unverified[i].what, arena));
		json_put(object, "why", json_words(verdict->unverified[i].why, arena));
		json_add(array, object);
	}
	return array;
}

/* Each part, and how it stands: what a program that orders must know. */
static json_t *parts_tree(const Verdict *verdict, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < verdict->parts; i++) {
		const PartLine *line = &verdict->part[i];
		const Text *item = &((const Panel *)line->part->row)->item; /* PART_FIELDS lie at one place in every part */
		const char *by = line->item == NULL ? NULL : item_called(line->item, arena);
		json_t *object = json_made(json_object());
		json_put(object, "record", json_words(record_of(line->part->kind)->name, arena));
		json_put(object, "name", json_words(line->part->name, arena));
		json_put(object, "item", json_words(is_value(&item->given) ? item->text : NULL, arena));
		json_put(object, "clearance", json_words(clearance_text(line, arena), arena));
		json_put(object, "cleared", json_boolean(line->clearance == PART_CLEAR));
		json_put(object, "by", json_words(by, arena));
		json_add(array, object);
	}
	return array;
}

/* ---- files ---- */

static json_t *file_tree(const Source *source, Arena *arena)
{
	json_t *object = json_made(json_object());
	json_put(object, "path", json_words(source->name, arena));
	json_put(object, "sha256", json_words(source_hash(source, arena), arena));
	return object;
}

static json_t *files_tree(const Verdict *verdict, Arena *arena)
{
	json_t *array = json_made(json_array());
	json_add(array, file_tree(verdict->source, arena));
	if (verdict->review_source != NULL)
		json_add(array, file_tree(verdict->review_source, arena));
	if (verdict->earlier != NULL)
		json_add(array, file_tree(verdict->earlier->source, arena));
	const Registers *registers = verdict->cases->registers;
	for (uint32_t i = 0; registers != NULL && i < registers->count; i++)
		json_add(array, file_tree(registers->source[i], arena));
	if (verdict->replies_source != NULL)
		json_add(array, file_tree(verdict->replies_source, arena));
	return array;
}

/* The link to the report of the round before. */
static json_t *previous_tree(const Earlier *earlier, Arena *arena)
{
	if (earlier == NULL)
		return json_null();
	json_t *object = json_made(json_object());
	json_put(object, "path", json_words(earlier->source->name, arena));
	json_put(object, "round", earlier->round > 0 ? json_integer(earlier->round) : json_null());
	json_put(object, "sha256", json_words(earlier->sha256, arena));
	json_put(object, "edition", json_words(earlier->edition, arena));
	json_put(object, "criteria_sha256", json_words(earlier->criteria_sha256, arena));
	return object;
}

static json_t *criteria_tree(const Verdict *verdict, Arena *arena)
{
	const Criteria *criteria = verdict->cases->criteria;
	if (criteria == NULL)
		return json_null();
	const char *hash = verdict->criteria_sha256 != NULL ? verdict->criteria_sha256 : criteria_hash(criteria, arena);
	json_t *object = json_made(json_object());
	json_put(object, "name", json_words(criteria->folder, arena));
	json_put(object, "edition", json_words(criteria->edition.edition.text, arena));
	json_put(object, "sha256", json_words(hash, arena));
	return object;
}

/* ---- the whole ---- */

/* When the reviewer had the round; null in a self-check. */
static void put_days(json_t *object, const Review *review, Arena *arena)
{
	bool received = review != NULL && is_value(&review->received.given);
	bool returned = review != NULL && is_value(&review->returned.given);
	json_put(object, "received", json_words(received ? date_print(arena, review->received.day) : NULL, arena));
	json_put(object, "returned", json_words(returned ? date_print(arena, review->returned.day) : NULL, arena));
}

static json_t *verdict_tree(const Verdict *verdict, Arena *arena)
{
	const Submittal *submittal = verdict->cases->submittal;
	json_t *object = json_made(json_object());
	json_put(object, "seamstamp", json_words(SEAMSTAMP_VERSION, arena));
	json_put(object, "schema", json_integer(1));
	json_put(object, "mode", json_words(verdict->self_check ? "self-check" : "review", arena));
	json_put(object, "submittal", json_words(is_value(&submittal->submittal.given) ? submittal->submittal.text : NULL, arena));
	json_put(object, "round", verdict->stage == STAGE_bid ? json_null() : json_integer(verdict->round));
	json_put(object, "stage", json_words(stage_words(verdict->stage), arena));
	json_put(object, "criteria", criteria_tree(verdict, arena));
	json_put(object, "recommended_action", json_words(verdict->self_check ? NULL : verdict->recommended_action, arena));
	json_put(object, "order_line", json_words(verdict->order_line, arena));
	json_put(object, "items", items_tree(verdict, arena));
	json_put(object, "not_judged", not_judged_tree(verdict, arena));
	json_put(object, "assumed", values_tree(verdict->assumed, verdict->assumptions, arena));
	json_put(object, "unverified", unverified_tree(verdict, arena));
	json_put(object, "files", files_tree(verdict, arena));
	json_put(object, "not_applicable", values_tree(verdict->not_applicable, verdict->not_applicables, arena));
	json_put(object, "order_condition", json_words(verdict->order_condition, arena));
	json_put(object, "parts", parts_tree(verdict, arena));
	json_put(object, "previous", previous_tree(verdict->earlier, arena));
	put_days(object, verdict->cases->review, arena);
	json_put(object, "values", json_record(&Submittal_record, submittal, arena));
	return object;
}

/* The seal is a sum over all that stands before it. */
void write_json(Out *out, const Verdict *verdict, Arena *arena)
{
	static const char end[] = "\n}";
	Out *whole = out_make(arena, OUT_TERMINAL);
	put_json(whole, verdict_tree(verdict, arena), JSON_INDENT(2), arena);
	size_t length;
	const char *text = out_text(whole, &length);
	length -= sizeof end - 1;
	size_t sealed = length;
	const char *seal = report_seal(text, &sealed, arena);
	out_literal(out, text, length);
	out_literal(out, report_seal_key, strlen(report_seal_key));
	put(out, seal);
	SAY(out, "\"");
	out_literal(out, end, sizeof end - 1);
	SAY(out, "\n");
}

void write_ndjson(Out *out, const Verdict *verdict, Arena *arena)
{
	put_json(out, verdict_tree(verdict, arena), JSON_COMPACT, arena);
	SAY(out, "\n");
}

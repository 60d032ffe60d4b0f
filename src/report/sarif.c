/* SPDX-License-Identifier: MIT
 * The review as SARIF 2.1.0, in one run for all submittals. Here: the results of one submittal, one a line. An item gives one
 * result a place. What was met, what did not apply and what waits (`open`) is told if asked: services take only so many results,
 * and what a rule waits for is an item that names it. No clock, no machine names.
 *
 * A file that breaks is told among the results too, and not only as a notification: a service that sees no result of a file
 * takes those of yesterday for mended.
 */
#include "sarif.h"

#include "formats.h"
#include "json_number.h"
#include "parts.h"
#include "places.h"

#include <inttypes.h>
#include <string.h>

/* How a result is called: kind and level go together. */
typedef struct {
	const char *code, *kind, *level;
} Kind;

typedef struct {
	Out *out;
	const Verdict *verdict;
	Arena *arena;
	uint32_t results;
} Results;

static void put_result(Results *results, json_t *result)
{
	if (results->results++ > 0)
		SAY(results->out, ",\n");
	put_json(results->out, result, JSON_COMPACT, results->arena);
}

static json_t *result_of(const Kind *kind, json_t *message, Arena *arena)
{
	json_t *result = json_made(json_object());
	if (kind->code != NULL)
		json_put(result, "ruleId", json_words(kind->code, arena));
	json_put(result, "kind", json_words(kind->kind, arena));
	json_put(result, "level", json_words(kind->level, arena));
	json_put(result, "message", message);
	return result;
}

static json_t *array_of(json_t *only)
{
	json_t *array = json_made(json_array());
	json_add(array, only);
	return array;
}

/* ---- places ---- */

/* The record and the key in it: roof_areas[Main roof].clips[clip-b-float]. */
static json_t *logical_location(const Case *where, Arena *arena)
{
	json_t *location = json_made(json_object());
	json_put(location, "name", json_words(where->name, arena));
	json_put(location, "fullyQualifiedName", json_words(case_path(where, arena), arena));
	json_put(location, "kind", json_words("member", arena));
	return location;
}

static json_t *locations_of(const Verdict *verdict, const Spot *spot, Arena *arena)
{
	SarifPlace at = { place_file(verdict, &spot->place), verdict_source(verdict, spot->place.source), spot->place };
	json_t *location = sarif_location(&at, arena);
	if (spot->where != NULL)
		json_put(location, "logicalLocations", array_of(logical_location(spot->where, arena)));
	return array_of(location);
}

/* The row of the criteria that decided; the message links to it. */
static json_t *rule_row(const Verdict *verdict, const Rule *rule, Arena *arena)
{
	const Source *source = verdict_source(verdict, rule->place.source);
	SarifPlace at = { source->name, source, rule->place };
	json_t *location = sarif_location(&at, arena);
	json_put(location, "id", json_integer(1));
	json_put(location, "message", sarif_message("The rule row", arena));
	return array_of(location);
}

static bool has_row(const Verdict *verdict, const Rule *rule)
{
	return rule != NULL && rule->place.line > 0 && verdict_source(verdict, rule->place.source) != NULL;
}

/* ---- items ---- */

static void put_property(json_t *properties, const char *key, const char *text, Arena *arena)
{
	if (text != NULL && *text != '\0')
		json_put(properties, key, json_words(text, arena));
}

static json_t *properties_of(const Verdict *verdict, const Finding *item, uint32_t number, Arena *arena)
{
	json_t *properties = json_made(json_object());
	const Spot *spot = &item->spot[number];
	put_property(properties, "submittal", submittal_number(verdict), arena);
	put_property(properties, "item", item_number(item, arena), arena);
	put_property(properties, "place", item->spots > 1 ? place_letter(number, arena) : NULL, arena);
	put_property(properties, "state", item_state_words(spot->state), arena);
	put_property(properties, "action", action_words(item->action), arena);
	put_property(properties, "where", item_where(item, spot, arena), arena);
	put_property(properties, "submitted", item->submitted.text, arena);
	put_property(properties, "allowed", item->limit.text, arena);
	put_property(properties, "authority", authority_words(item->authority), arena);
	put_property(properties, "cites", item->cites, arena);
	put_property(properties, "basis", item->basis, arena);
	put_property(properties, "known by", known_by_words(item->known_by), arena);
	put_property(properties, "answer by", item->answer_by, arena);
	put_property(properties, "reviewer", item->disposition, arena);
	put_property(properties, "note", item->note, arena);
	return properties;
}

static const char *sentence(const char *label, const char *text, Arena *arena)
{
	return text != NULL && *text != '\0' ? arena_printf(arena, " %s: %s.", label, text) : "";
}

static json_t *item_message(const Verdict *verdict, const Finding *item, Arena *arena)
{
	const char *text = arena_printf(arena, "%s.%s%s%s%s", item->finding, sentence("Submitted", item->submitted.text, arena),
		sentence("Allowed", item->limit.text, arena), sentence("Remedy", item->remedy, arena),
		sentence("Answer by", item->answer_by, arena));
	text = arena_printf(arena, "%s%s%s", text, sentence("Rules that wait for it", waiting_codes(item, arena), arena),
		sentence("Item", item_number(item, arena), arena));
	json_t *message = sarif_message(text, arena);
	if (!has_row(verdict, item->rule))
		return message;
	const char *safe = json_string_value(json_object_get(message, "text"));
	json_put(message, "text", json_words(arena_printf(arena, "%s Decided by [the rule row](1).", safe), arena));
	return message;
}

/* How a place stands to the report of the round before: on every result of a run, or on none. */
static void put_baseline(const Verdict *verdict, json_t *result, const char *state, Arena *arena)
{
	if (verdict->in_rounds)
		json_put(result, "baselineState", json_words(state, arena));
}

/* Cured, or its record is gone, and not closed by the reviewer's word. */
static bool is_gone(const Verdict *verdict, const Finding *item, const Spot *spot)
{
	return verdict->in_rounds && spot->state == ITEM_CLOSED && item->found_by == FOUND_EARLIER;
}

static const char *baseline_of(const Verdict *verdict, const Finding *item, const Spot *spot)
{
	return is_gone(verdict, item, spot) ? "absent" : spot->state == ITEM_NEW ? "new" : "unchanged";
}

/* What a variance covers, or the reviewer closed. Every result of a run carries the array, or none may. */
static json_t *suppressions_of(const Verdict *verdict, const Finding *item, const Spot *spot, Arena *arena)
{
	json_t *suppressions = json_made(json_array());
	if (spot_action(item, spot) >= 0 || is_gone(verdict, item, spot))
		return suppressions;
	json_t *suppression = json_made(json_object());
	const char *why = item->disposition != NULL ? item->disposition : item->note;
	if (why == NULL)
		why = item_state_words(spot->state);
	json_put(suppression, "kind", json_words("external", arena));
	json_put(suppression, "status", json_words("accepted", arena));
	json_put(suppression, "justification", json_words(why, arena));
	json_add(suppressions, suppression);
	return suppressions;
}

static void put_spot(Results *results, const Finding *item, uint32_t number)
{
	const Spot *spot = &item->spot[number];
	Arena *arena = results->arena;
	int action = spot_action(item, spot);
	if (is_gone(results->verdict, item, spot) && item->settled > 0 && item->settled < results->verdict->round)
		return; /* the report of the round before had it closed */
	Kind kind = { item->code, "fail", sarif_level(action >= 0 ? (Action)action : item->action) };
	json_t *result = result_of(&kind, item_message(results->verdict, item, arena), arena);
	json_put(result, "locations", locations_of(results->verdict, spot, arena));
	if (has_row(results->verdict, item->rule))
		json_put(result, "relatedLocations", rule_row(results->verdict, item->rule, arena));
	if (spot->fingerprint != 0) {
		json_t *prints = json_made(json_object());
		json_put(prints, "seamstamp/v1", json_words(arena_printf(arena, "%016" PRIx64, spot->fingerprint), arena));
		json_put(result, "partialFingerprints", prints);
	}
	json_put(result, "suppressions", suppressions_of(results->verdict, item, spot, arena));
	put_baseline(results->verdict, result, baseline_of(results->verdict, item, spot), arena);
	json_put(result, "properties", properties_of(results->verdict, item, number, arena));
	put_result(results, result);
}

/* ---- all else ---- */

static void put_plain(Results *results, const Kind *kind, const Spot *spot, const char *text)
{
	Arena *arena = results->arena;
	json_t *result = result_of(kind, sarif_message(text, arena), arena), *properties = json_made(json_object());
	json_put(result, "locations", locations_of(results->verdict, spot, arena));
	json_put(result, "suppressions", json_array());
	put_baseline(results->verdict, result, "unchanged", arena);
	put_property(properties, "submittal", submittal_number(results->verdict), arena);
	json_put(result, "properties", properties);
	put_result(results, result);
}

static const Spot whole_file = { .where = NULL };

static void put_waiting(Results *results, const NotYet *not_yet)
{
	Kind kind = { not_yet->rule->code, "open", "none" };
	const Given *row = not_yet->where != NULL ? not_yet->where->submitted : NULL;
	Spot spot = { .where = not_yet->where };
	if (row != NULL && row->place.source < SOURCE_FIRST_SHARED)
		spot.place = row->place;
	put_plain(results, &kind, &spot, arena_printf(results->arena, "%s: not judged; it waits for %s",
		not_yet->where != NULL ? not_yet->where->name : "its records",
		not_yet->waits_for != NULL ? not_yet->waits_for : "what is missing"));
}

static void put_outcome(Results *results, const RuleOutcome *outcome)
{
	Kind met = { outcome->rule->code, "pass", "none" }, silent = { outcome->rule->code, "notApplicable", "none" };
	if (!outcome->asked)
		put_plain(results, &silent, &whole_file, "It did not apply to this submittal");
	for (uint32_t i = 0; i < outcome->mets; i++) {
		const Spot *spot = &outcome->met[i];
		put_plain(results, &met, spot, arena_printf(results->arena, "%s: met", spot->where != NULL ? spot->where->name : "met"));
	}
}

void write_sarif(Out *out, const Verdict *verdict, Arena *arena)
{
	Results results = { .out = out, .verdict = verdict, .arena = arena };
	for (uint32_t i = 0; i < verdict->items; i++)
		for (uint32_t j = 0; j < verdict->item[i].spots; j++)
			put_spot(&results, &verdict->item[i], j);
	if (verdict->left_out > 0)
		put_plain(&results, &(Kind){ NULL, "fail", "error" }, &whole_file,
			arena_printf(arena, "%u more items are not listed", verdict->left_out));
	for (uint32_t i = 0; verdict->tells_passed && i < verdict->not_yets; i++)
		put_waiting(&results, &verdict->not_yet[i]);
	for (uint32_t i = 0; verdict->tells_passed && i < verdict->outcomes; i++)
		put_outcome(&results, &verdict->outcome[i]);
}

/* SPDX-License-Identifier: MIT
 * `criteria` as JSON. No clock, no machine names; keys are only ever added.
 */
#include "date.h"
#include "edition_page.h"
#include "gaps.h"
#include "json_number.h"
#include "json_tree.h"
#include "version.h"

static json_t *cell(const Text *text, Arena *arena)
{
	return json_words(is_value(&text->given) ? text->text : NULL, arena);
}

static json_t *day(const Date *date, Arena *arena)
{
	return json_words(is_value(&date->given) ? date_print(arena, date->day) : NULL, arena);
}

static json_t *edition_tree(const Criteria *criteria, const char *sha256, Arena *arena)
{
	json_t *object = json_made(json_object());
	json_put(object, "name", json_words(criteria->folder, arena));
	json_put(object, "edition", cell(&criteria->edition.edition, arena));
	json_put(object, "maker", cell(&criteria->edition.maker, arena));
	json_put(object, "effective", day(&criteria->edition.effective, arena));
	json_put(object, "expires", day(&criteria->edition.expires, arena));
	json_put(object, "sha256", json_words(sha256, arena));
	return object;
}

static json_t *rows_tree(const Criteria *criteria)
{
	TableCount counts[MOST_TABLES];
	uint32_t tables = edition_tables(criteria, counts);
	json_t *object = json_made(json_object());
	for (uint32_t i = 0; i < tables; i++)
		json_put(object, counts[i].file, json_integer(counts[i].rows));
	return object;
}

static json_t *gaps_tree(const EditionCheck *check, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < check->gaps; i++) {
		const Gap *gap = &check->gap[i];
		json_t *object = json_made(json_object());
		json_put(object, "gap", json_words(gap_words(gap->kind), arena));
		json_put(object, "file", json_words(gap->file, arena));
		json_put(object, "line", json_integer(gap->line > 0 ? gap->line : 1));
		json_put(object, "what", json_words(gap->what, arena));
		json_put(object, "why", json_words(gap->why, arena));
		json_add(array, object);
	}
	return array;
}

static json_t *items_tree(const TurnedItem *item, uint32_t items, Arena *arena)
{
	json_t *array = json_made(json_array());
	for (uint32_t i = 0; i < items; i++) {
		json_t *object = json_made(json_object());
		json_put(object, "code", json_words(item[i].code, arena));
		json_put(object, "name", json_words(item[i].where, arena));
		json_put(object, "action", json_words(item[i].action, arena));
		json_add(array, object);
	}
	return array;
}

static json_t *turn_tree(const Turn *turn, Arena *arena)
{
	json_t *object = json_made(json_object());
	json_put(object, "submittal", json_words(turn->submittal, arena));
	json_put(object, "report", json_words(turn->report, arena));
	json_put(object, "turn", json_words(turn_words(turn->kind), arena));
	json_put(object, "before", json_integer(turn->before));
	json_put(object, "after", json_integer(turn->after));
	json_put(object, "raised", items_tree(turn->raised, turn->raiseds, arena));
	json_put(object, "gone", items_tree(turn->gone, turn->gones, arena));
	return object;
}

static json_t *against_tree(const EditionCheck *check, Arena *arena)
{
	if (check->against == NULL)
		return json_made(json_null());
	json_t *object = edition_tree(check->against, check->against_sha256, arena), *turns = json_made(json_array());
	json_put(object, "judged", json_integer(check->judged));
	for (uint32_t i = 0; i < check->turns; i++)
		json_add(turns, turn_tree(&check->turn[i], arena));
	json_put(object, "turns", turns);
	return object;
}

void write_edition_json(Out *out, const Page *page, Arena *arena)
{
	const EditionCheck *check = page->edition;
	json_t *object = json_made(json_object());
	json_put(object, "seamstamp", json_words(SEAMSTAMP_VERSION, arena));
	json_put(object, "criteria", edition_tree(check->criteria, check->sha256, arena));
	json_put(object, "rows", rows_tree(check->criteria));
	json_put(object, "as_of", json_words(check->as_of != INT32_MIN ? date_print(arena, check->as_of) : NULL, arena));
	json_put(object, "gaps", gaps_tree(check, arena));
	json_put(object, "against", against_tree(check, arena));
	put_json(out, object, JSON_INDENT(2), arena);
	SAY(out, "\n");
}

/* SPDX-License-Identifier: MIT
 * The takeoff as one JSON object, unrounded. Keys are only ever added.
 */
#include "takeoff_page.h"

#include "json_number.h"
#include "json_tree.h"
#include "parts.h"
#include "version.h"

static json_t *figure_of(const Amount *amount, double value)
{
	return amount->state == COUNTED ? json_figure(value) : json_made(json_null());
}

static json_t *amount_tree(const Amount *amount, Arena *arena)
{
	json_t *object = json_made(json_object());
	json_put(object, "area", json_words(amount->area->name, arena));
	json_put(object, "kind", json_words(amount->kind, arena));
	json_put(object, "item", json_words(amount->item, arena));
	json_put(object, "where", json_words(amount->where, arena));
	json_put(object, "state", json_words(count_state_words(amount->state), arena));
	json_put(object, "by_plan", figure_of(amount, amount->exact));
	json_put(object, "as_laid", figure_of(amount, amount->laid));
	json_put(object, "needed", figure_of(amount, amount->needed));
	json_put(object, "unit", json_words(amount->state == COUNTED ? amount->unit : NULL, arena));
	json_put(object, "waste_percent", figure_of(amount, amount->waste_percent));
	json_put(object, "sold_in", json_words(amount->sold_in, arena));
	json_put(object, "how", json_words(amount->state == COUNTED ? amount->how : NULL, arena));
	json_put(object, "why_not", json_words(amount->state == COUNTED ? NULL : amount->why, arena));
	return object;
}

static json_t *total_tree(const Total *total, Arena *arena)
{
	json_t *object = json_made(json_object());
	bool counted = total->uncounted < total->lines;
	json_put(object, "kind", json_words(total->kind, arena));
	json_put(object, "item", json_words(total->item, arena));
	json_put(object, "needed", counted ? json_figure(total->needed) : json_made(json_null()));
	json_put(object, "unit", json_words(counted ? total->unit : NULL, arena));
	json_put(object, "sold_in", json_words(total->sold_in, arena));
	json_put(object, "packages", total->packages > 0 ? json_figure(total->packages) : json_made(json_null()));
	json_put(object, "places", json_made(json_integer(total->lines)));
	json_put(object, "places_not_counted", json_made(json_integer(total->uncounted)));
	return object;
}

void write_takeoff_json(Out *out, const Page *page, Arena *arena)
{
	const Takeoff *takeoff = page->takeoff;
	const Text *number = &takeoff->verdict->cases->submittal->submittal;
	json_t *object = json_made(json_object()), *list = json_made(json_array()), *totals = json_made(json_array());
	json_put(object, "seamstamp", json_words(SEAMSTAMP_VERSION, arena));
	json_put(object, "submittal", json_words(is_value(&number->given) ? number->text : NULL, arena));
	json_put(object, "open_items", json_made(json_integer(items_in_the_way(takeoff->verdict))));
	for (uint32_t i = 0; i < takeoff->amounts; i++)
		json_add(list, amount_tree(&takeoff->amount[i], arena));
	json_put(object, "takeoff", list);
	for (uint32_t i = 0; i < takeoff->totals; i++)
		json_add(totals, total_tree(&takeoff->total[i], arena));
	json_put(object, "to_buy", totals);
	put_json(out, object, JSON_INDENT(1), arena);
	SAY(out, "\n");
}

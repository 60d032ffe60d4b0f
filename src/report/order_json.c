/* SPDX-License-Identifier: MIT
 * An order held against a submittal as one JSON object, unrounded. Keys are only ever added.
 */
#include "order_page.h"

#include "json_number.h"
#include "json_tree.h"
#include "parts.h"
#include "version.h"

static json_t *count_of(uint32_t count)
{
	return json_made(json_integer(count));
}

static json_t *finding_tree(const OrderFinding *found, Arena *arena)
{
	json_t *object = json_made(json_object());
	json_put(object, "against_it", json_words(order_fault_words(found->fault), arena));
	json_put(object, "line", found->line != NULL ? count_of(place_line(&found->line->place)) : json_made(json_null()));
	json_put(object, "item", json_words(found->item, arena));
	json_put(object, "finding", json_words(found->finding, arena));
	json_put(object, "remedy", json_words(found->remedy, arena));
	return object;
}

static json_t *line_tree(const OrderedLine *line, Arena *arena)
{
	json_t *object = json_made(json_object());
	const OrderLine *row = line->line;
	json_put(object, "line", count_of(place_line(&row->place)));
	json_put(object, "code", json_words(row->code, arena));
	json_put(object, "description", json_words(row->words, arena));
	json_put(object, "supplier", json_words(row->supplier, arena));
	json_put(object, "quantity", json_figure(row->quantity));
	json_put(object, "quantity_unit", json_words(row->unit_words, arena));
	json_put(object, "item", json_words(line->item, arena));
	json_put(object, "counted", line->counted ? json_figure(line->amount) : json_made(json_null()));
	json_put(object, "unit", json_words(line->counted ? line->unit : NULL, arena));
	json_put(object, "clearance", json_words(order_clearance_text(line, arena), arena));
	json_put(object, "held", json_words(line->against, arena));
	json_put(object, "findings", count_of(line->findings));
	return object;
}

static json_t *item_tree(const Order *order, const OrderedItem *item, Arena *arena)
{
	json_t *object = json_made(json_object());
	const Total *total = item->total;
	bool counted = total->lines > total->uncounted;
	json_put(object, "kind", json_words(total->kind, arena));
	json_put(object, "item", json_words(total->item, arena));
	json_put(object, "unit", json_words(counted ? total->unit : NULL, arena));
	json_put(object, "ordered", json_figure(item->ordered));
	json_put(object, "needed", counted ? json_figure(total->needed) : json_made(json_null()));
	json_put(object, "at_least", counted ? json_figure(item->least) : json_made(json_null()));
	json_put(object, "at_most", counted ? json_figure(item->most) : json_made(json_null()));
	json_put(object, "stands", json_words(order_item_words(order, item), arena));
	json_put(object, "why_not_compared", json_words(item->why, arena));
	return object;
}

void write_order_json(Out *out, const Page *page, Arena *arena)
{
	const Order *order = page->order;
	const Text *number = &order->verdict->cases->submittal->submittal;
	json_t *object = json_made(json_object());
	json_t *findings = json_made(json_array()), *lines = json_made(json_array()), *items = json_made(json_array());
	json_put(object, "seamstamp", json_words(SEAMSTAMP_VERSION, arena));
	json_put(object, "submittal", json_words(is_value(&number->given) ? number->text : NULL, arena));
	json_put(object, "order", json_words(order->list->source->name, arena));
	json_put(object, "sha256", json_words(source_hash(order->list->source, arena), arena));
	const Earlier *report = order->basis.report;
	json_put(object, "approved", json_words(report != NULL ? report->source->name : NULL, arena));
	json_put(object, "approved_sha256", json_words(report != NULL ? report->sha256 : NULL, arena));
	json_put(object, "held", json_words(order->against, arena));
	json_put(object, "open_items", count_of(items_in_the_way(order->verdict)));
	for (uint32_t i = 0; i < order->findings; i++)
		json_add(findings, finding_tree(&order->finding[i], arena));
	json_put(object, "findings", findings);
	for (uint32_t i = 0; i < order->list->lines; i++)
		json_add(lines, line_tree(&order->line[i], arena));
	json_put(object, "lines", lines);
	for (uint32_t i = 0; i < order->takeoff->totals; i++)
		json_add(items, item_tree(order, &order->item[i], arena));
	json_put(object, "items", items);
	put_json(out, object, JSON_INDENT(1), arena);
	SAY(out, "\n");
}

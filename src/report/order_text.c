/* SPDX-License-Identifier: MIT
 * An order held against a submittal: what is against it, line by line how it was read, then item by item how much there is.
 */
#include "order_page.h"

#include "number.h"
#include "parts.h"
#include "takeoff_page.h"

#include <string.h>

static const LabelColumn head_column = { 2, 14 };
enum { ITEM_WIDTH = 30, FIGURE_WIDTH = 12 };

const char *order_fault_words(OrderFault fault)
{
	static const char *const words[ORDER_FAULTS] = { [ORDER_UNKNOWN] = "UNKNOWN PART", [ORDER_AMBIGUOUS] = "AMBIGUOUS CODE",
		[ORDER_LOOKS_LIKE] = "WRONG PART, LOOKS ALIKE", [ORDER_STEPPED_DOWN] = "WRONG PART, STEPPED DOWN",
		[ORDER_WRONG_PART] = "WRONG PART", [ORDER_UNIT] = "QUANTITY NOT COMPARED", [ORDER_SUPPLIER] = "WRONG SUPPLIER",
		[ORDER_APPROVAL] = "BEFORE APPROVAL", [ORDER_CHANGED] = "CHANGED SINCE THE REPORT",
		[ORDER_REPORT] = "NOT AN APPROVED REPORT", [ORDER_COIL] = "NO COIL CERTIFICATE", [ORDER_MISSING] = "MISSING",
		[ORDER_SHORT] = "SHORT", [ORDER_LONG] = "OVER" };
	return words[fault];
}

const char *order_quantity_text(const OrderLine *line, Arena *arena)
{
	return arena_printf(arena, "%s%s%s", number_shortest(arena, line->quantity), line->unit_words != NULL ? " " : "",
		line->unit_words != NULL ? line->unit_words : "");
}

const char *order_item_words(const Order *order, const OrderedItem *item)
{
	const OrderFinding *found = item->found > 0 ? &order->finding[item->found - 1] : NULL;
	if (found != NULL)
		return found->fault == ORDER_MISSING ? "missing" : found->fault == ORDER_SHORT ? "short" : "over";
	return item->why != NULL ? "not compared" : "as needed";
}

/* "nothing found against it": how the part of a line stands in the review of the submittal. */
const char *order_clearance_text(const OrderedLine *line, Arena *arena)
{
	if (line->clearance != NULL)
		return clearance_text(line->clearance, arena);
	return line->item == NULL ? "not told which part it is" : "not cleared: it was not submitted";
}

static void put_order_head(Out *out, const Order *order, Arena *arena)
{
	const Verdict *verdict = order->verdict;
	const Text *number = &verdict->cases->submittal->submittal;
	const OrderList *list = order->list;
	SAY(out, "ORDER\n");
	put_label(out, head_column, "Submittal", is_value(&number->given) ? number->text : "not stated");
	put_label(out, head_column, "File", order->basis.submitted->source->name);
	if (order->basis.report != NULL)
		put_label(out, head_column, "Held against", arena_printf(arena, "report %s, round %u", order->basis.report->source->name,
			order->basis.report->round));
	put_label(out, head_column, "Order", list->source->name);
	put_label(out, head_column, "Criteria", verdict->cases->criteria->folder);
	put_label(out, head_column, "Lines", arena_printf(arena, "%u read%s%s%s", list->lines,
		list->before > 0 ? arena_printf(arena, "; rows above the header, not read: %u", list->before) : "",
		list->sums > 0 ? arena_printf(arena, "; rows of totals, not read: %u", list->sums) : "",
		list->heads > 0 ? arena_printf(arena, "; heads said again: %u", list->heads) : ""));
	if (list->left_out != NULL)
		put_label(out, head_column, "Not read", arena_printf(arena, "columns %s", list->left_out));
	if (!list->has_date)
		put_label(out, head_column, "Dates", "no column states them: whether it was bought too early is not told");
	put_label(out, head_column, "Open", items_in_the_way(verdict) == 0 ? "no item of the review"
		: arena_printf(arena, "%u items of the review: what is bought now may have to be changed", items_in_the_way(verdict)));
	put_label(out, head_column, "Against it", order->findings == 0 ? "nothing" : arena_printf(arena, "%u", order->findings));
}

static void put_finding(Out *out, const Order *order, const OrderFinding *found)
{
	SAY(out, "\n  ");
	if (found->line != NULL) {
		put_place(out, order->list->source->name, found->fault == ORDER_UNIT ? &found->line->quantity_place : &found->line->place);
		SAY(out, " ");
	}
	put(out, order_fault_words(found->fault));
	SAY(out, "\n    ");
	put_wrapped(out, found->finding, 4, 4, PAGE_WIDTH);
	SAY(out, "\n    Remedy: ");
	put_wrapped(out, found->remedy, 12, 4, PAGE_WIDTH);
	const OrderedLine *line = found->line != NULL ? &order->line[found->line - order->list->line] : NULL;
	SAY(out, "\n    ");
	put(out, line != NULL ? line->against : order->against);
	SAY(out, "\n");
}

static void put_line(Out *out, const Order *order, const OrderedLine *line, Arena *arena)
{
	const OrderLine *row = line->line;
	const char *name = row->code != NULL ? row->code : row->words;
	const char *item = line->item == NULL ? "not told which part"
		: strcmp(line->item, name) == 0 ? "" : arena_printf(arena, "read as %s", line->item);
	const char *counted = line->counted ? arena_printf(arena, " = %s %s", amount_text(line->amount, arena), line->unit) : "";
	SAY(out, "    ");
	const char *at = arena_printf(arena, "%s:%u:%u:", order->list->source->name, place_line(&row->place), place_column(&row->place));
	const char *quantity = order_quantity_text(row, arena), *comma = *item != '\0' ? ", " : "";
	put_wrapped(out, arena_printf(arena, "%s %s%s%s: %s%s; %s; %s", at, name, comma, item, quantity, counted,
		order_clearance_text(line, arena), line->against), 4, 6, PAGE_WIDTH);
	SAY(out, "\n");
}

static void put_column(Out *out, const char *text, int width)
{
	int used = out_width(text, strlen(text));
	put_spaces(out, used < width ? width - used : 1);
	put(out, text);
}

static void put_item(Out *out, const Order *order, const OrderedItem *item, Arena *arena)
{
	const Total *total = item->total;
	bool counted = total->lines > total->uncounted;
	const char *what = arena_printf(arena, "%s %s", total->kind, total->item);
	SAY(out, "    ");
	put_cut(out, what, ITEM_WIDTH);
	int used = out_width(what, strlen(what));
	put_spaces(out, used < ITEM_WIDTH ? ITEM_WIDTH - used : 0);
	put_column(out, amount_text(item->ordered, arena), FIGURE_WIDTH);
	put_column(out, counted ? amount_text(total->needed, arena) : "-", FIGURE_WIDTH);
	put_column(out, counted ? amount_text(item->least, arena) : "-", FIGURE_WIDTH);
	put_column(out, counted ? amount_text(item->most, arena) : "-", FIGURE_WIDTH);
	SAY(out, "  ");
	put(out, total->unit);
	SAY(out, "  ");
	put(out, order_item_words(order, item));
	SAY(out, "\n");
	if (item->why == NULL)
		return;
	SAY(out, "      ");
	put(out, item->why);
	SAY(out, "\n");
}

void write_order_text(Out *out, const Page *page, Arena *arena)
{
	const Order *order = page->order;
	put_order_head(out, order, arena);
	for (uint32_t i = 0; i < order->findings; i++)
		put_finding(out, order, &order->finding[i]);
	SAY(out, "\n  Lines\n");
	for (uint32_t i = 0; i < order->list->lines; i++)
		put_line(out, order, &order->line[i], arena);
	SAY(out, "\n  Quantities");
	put_spaces(out, 4 + ITEM_WIDTH - 12);
	put_column(out, "ordered", FIGURE_WIDTH);
	put_column(out, "needed", FIGURE_WIDTH);
	put_column(out, "at least", FIGURE_WIDTH);
	put_column(out, "at most", FIGURE_WIDTH);
	SAY(out, "\n");
	for (uint32_t i = 0; i < order->takeoff->totals; i++)
		put_item(out, order, &order->item[i], arena);
	write_cautions(out, order->verdict->cases->reference, (CautionsFor){ "order", "" }, arena);
}

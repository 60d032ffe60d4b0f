/* SPDX-License-Identifier: MIT
 * An order against what was submitted: line by line what part it names, from whom and when it was bought, then how much there is
 * of each part. It decides nothing about what would be allowed.
 */
#include "holding.h"

#include "date.h"
#include "pipeline.h"

#include <string.h>

void find_against(Holding *holding, OrderFinding found, OrderedLine *line)
{
	Order *order = holding->order;
	found.line = line != NULL ? line->line : NULL;
	order->finding = arena_more(holding->arena, order->finding, order->findings, &order->room, sizeof *order->finding);
	order->finding[order->findings++] = found;
	if (line != NULL)
		line->findings++;
}

/* ---- the part ---- */

static void find_unknown(Holding *holding, OrderedLine *line, const char *whose)
{
	Arena *arena = holding->arena;
	const OrderLine *row = line->line;
	const char *name = row->code != NULL ? row->code : row->words, *near = whose == NULL ? nearest_name(holding, row) : NULL;
	OrderFinding found = { .fault = ORDER_UNKNOWN };
	if (whose != NULL)
		found.finding = arena_printf(arena, "%s is no code of %s that the criteria know; %s", name, row->supplier, whose);
	else
		found.finding = arena_printf(arena, "%s is no item of the catalogue, nor a code of a supplier%s%s", name,
			near != NULL ? "; nearest: " : "", near != NULL ? near : "");
	found.remedy = "write the item of the catalogue, or the code its supplier has for it";
	find_against(holding, found, line);
}

/* A code that fits several parts is counted for none of them, and none of them is called missing for it. */
static void find_ambiguous(Holding *holding, OrderedLine *line, const Named *named)
{
	Arena *arena = holding->arena;
	const OrderLine *row = line->line;
	const char *listed = named->at[0]->item;
	for (uint32_t i = 1; i < named->count; i++)
		listed = arena_printf(arena, "%s%s%s", listed, i + 1 < named->count ? ", " : " or ", named->at[i]->item);
	for (uint32_t i = 0; i < named->count; i++)
		if (named->at[i]->ordered != NULL)
			named->at[i]->ordered->uncounted++;
	const char *words = row->code != NULL && row->words != NULL ? arena_printf(arena, " (%s)", row->words) : "";
	OrderFinding found = { .fault = ORDER_AMBIGUOUS };
	found.finding = arena_printf(arena, "%s%s may be %s", row->code != NULL ? row->code : row->words, words, listed);
	found.remedy = "write the item of the catalogue that is meant";
	find_against(holding, found, line);
}

/* ---- from whom and when ---- */

static void check_supplier(Holding *holding, OrderedLine *line, const Known *known)
{
	const Panel *row = known->row; /* PART_FIELDS lie at one place in every part */
	const Criteria *criteria = holding->cases->criteria;
	if (row == NULL || !is_value(&row->supplied_by.given) || !names_maker(criteria, row->supplied_by.text))
		return;
	const char *supplier = line->line->supplier;
	if (supplier != NULL && names_maker(criteria, supplier))
		return;
	OrderFinding found = { .fault = ORDER_SUPPLIER, .item = known->item, .remedy = "buy it from the panel maker" };
	found.finding = supplier != NULL
		? arena_printf(holding->arena, "%s must be bought from the panel maker, not from %s", known->item, supplier)
		: arena_printf(holding->arena, "%s must be bought from the panel maker, and the line does not say from whom", known->item);
	if (supplier == NULL)
		found.remedy = "name the supplier in a column of that name";
	find_against(holding, found, line);
}

const Approval *approval_on(const Cases *cases, int32_t day, const char **why, Arena *arena)
{
	const Number *term = &cases->submittal->warranty.term_yr;
	*why = "no approval of this submittal is in the register";
	for (uint32_t i = 0; cases->registers != NULL && i < cases->registers->approvals.count; i++) {
		const Approval *row = &cases->registers->approvals.row[i];
		if (!is_package_approval(row, cases->submittal) || !is_approval_for(row, &cases->submittal->project.name))
			continue;
		if (day == INT32_MIN || day < row->issued.day)
			*why = arena_printf(arena, "approval %s is of %s", row->letter.text, date_print(arena, row->issued.day));
		else if (day > row->expires.day)
			*why = arena_printf(arena, "approval %s ended on %s", row->letter.text, date_print(arena, row->expires.day));
		else if (!is_value(&term->given) || term->value > row->greatest_term_yr.value)
			*why = arena_printf(arena, "approval %s is for terms up to %g yr", row->letter.text, row->greatest_term_yr.value);
		else
			return row;
	}
	return NULL;
}

static void check_approval(Holding *holding, OrderedLine *line)
{
	Arena *arena = holding->arena;
	const OrderLine *row = line->line;
	const char *why;
	const Approval *approval = approval_on(holding->cases, row->is_dated ? row->day : holding->cases->as_of, &why, arena);
	const Earlier *report = holding->order->basis.report;
	const char *what = report == NULL ? "the submitted assembly"
		: arena_printf(arena, "the assembly of report %s", report->source->name);
	line->against = report == NULL ? "against the submitted, not approved, assembly"
		: arena_printf(arena, "against %s, without an approval in force: %s", what, why);
	if (approval != NULL) {
		bool condition = is_value(&approval->condition.given) && *approval->condition.text != '\0';
		line->against = arena_printf(arena, "against %s; approval %s is in force%s%s", what, approval->letter.text,
			condition ? ", on condition: " : "", condition ? approval->condition.text : "");
		return;
	}
	if (!row->is_dated)
		return;
	OrderFinding found = { .fault = ORDER_APPROVAL, .item = line->item };
	found.finding = arena_printf(arena, "ordered on %s without an approval in force: %s", date_print(arena, row->day), why);
	found.remedy = "wait for the approval; what was bought before it may have to be changed";
	find_against(holding, found, line);
}

/* ---- all ---- */

static void hold_line(Holding *holding, OrderedLine *line)
{
	Named named = line_names(holding, line->line);
	if (named.count == 0)
		find_unknown(holding, line, named.whose);
	else if (named.count > 1)
		find_ambiguous(holding, line, &named);
	Known *known = named.count == 1 ? named.at[0] : NULL;
	line->item = known != NULL ? known->item : NULL;
	line->clearance = known != NULL ? known->clearance : NULL;
	if (known != NULL && known->part == NULL)
		find_wrong_part(holding, line, known);
	else if (known != NULL && known->ordered != NULL)
		count_ordered(holding, line, known);
	if (known != NULL)
		check_supplier(holding, line, known);
	if (known != NULL && known->kind == KIND_panel)
		check_coil(holding, line, known);
	check_approval(holding, line);
}

Order *hold_order(const OrderBasis *basis, const OrderList *list, Arena *arena)
{
	const Verdict *verdict = basis->approved != NULL ? basis->approved : basis->submitted;
	Order *order = TAKE(arena, Order, 1);
	*order = (Order){ .verdict = verdict, .basis = *basis, .takeoff = take_off(verdict, arena), .list = list };
	order->against = basis->report == NULL ? "against the takeoff of the submitted assembly"
		: arena_printf(arena, "against the takeoff of the assembly of report %s", basis->report->source->name);
	order->line = TAKE(arena, OrderedLine, list->lines + 1);
	order->item = TAKE(arena, OrderedItem, order->takeoff->totals + 1);
	for (uint32_t i = 0; i < order->takeoff->totals; i++)
		order->item[i].total = &order->takeoff->total[i];
	Holding holding = { .order = order, .arena = arena, .cases = verdict->cases };
	know_items(&holding);
	know_lengths(&holding);
	know_certificates(&holding);
	for (uint32_t i = 0; i < list->lines; i++) {
		order->line[i].line = &list->line[i];
		hold_line(&holding, &order->line[i]);
	}
	if (basis->report != NULL)
		find_report(&holding);
	find_amounts(&holding);
	return order;
}

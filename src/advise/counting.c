/* SPDX-License-Identifier: MIT
 * One quantity: begun for a part, filled from facts and values, settled with waste and packages, or refused with a reason.
 */
#include "counting.h"

#include "hash.h"
#include "number.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

const Case *next_of(const Counting *counting, RecordKind kind, uint32_t *i)
{
	const Cases *cases = counting->area->all;
	while (*i < cases->of[kind].count) {
		const Case *at = cases->of[kind].at[(*i)++];
		if (case_outward(at, KIND_roof_area) == counting->area)
			return at;
	}
	return NULL;
}

const KindRow *kind_row(const Criteria *criteria, const char *kind)
{
	for (uint32_t i = 0; i < criteria->kinds.count; i++)
		if (strcmp(criteria->kinds.row[i].kind.text, kind) == 0)
			return &criteria->kinds.row[i];
	return NULL;
}

Amount *amount_add(Counting *counting, const Case *part, const char *kind, const char *where)
{
	Takeoff *takeoff = counting->takeoff;
	takeoff->amount = arena_more(counting->arena, takeoff->amount, takeoff->amounts, &takeoff->room, sizeof *takeoff->amount);
	Amount *amount = &takeoff->amount[takeoff->amounts++];
	*amount = (Amount){ .area = counting->area, .part = part, .kind = kind, .where = where };
	const Panel *any = part != NULL ? part->row : NULL; /* PART_FIELDS lie at one place in every part */
	if (any != NULL && is_value(&any->item.given))
		amount->item = any->item.text;
	const Panel *catalogue = part != NULL ? part->catalogue : NULL;
	if (catalogue != NULL && is_value(&catalogue->sold_in.given))
		amount->sold_in = catalogue->sold_in.text;
	if (any != NULL && is_value(&any->sold_in.given))
		amount->sold_in = any->sold_in.text;
	return amount;
}

void refuse_count(Amount *amount, const char *why)
{
	amount->state = COUNT_REFUSED;
	amount->why = why;
}

const char *waits_for(const Cases *cases, const Fact *fact, Arena *arena)
{
	for (uint32_t i = fact->first_use; i != 0; i = cases->use[i - 1].next) {
		const Use *use = &cases->use[i - 1];
		bool is_field = use->kind == USED_FIELD || use->kind == USED_THROUGH;
		if (is_field && use->given != NULL && !is_value(use->given))
			return arena_printf(arena, "not stated: %s", use->what.field->title);
	}
	return "it waits for what is not stated";
}

bool take_fact(const Case *at, FactId id, Amount *amount, double *value, Arena *arena)
{
	const Fact *fact = fact_of((Case *)at, id);
	*value = fact->value;
	if (fact->state == FACT_KNOWN)
		return true;
	amount->state = fact->state == FACT_WAITING ? COUNT_WAITS : COUNT_REFUSED;
	amount->why = fact->reason != NULL ? fact->reason : waits_for(at->all, fact, arena);
	return false;
}

bool take_number(const Number *number, const char *title, Amount *amount, Arena *arena)
{
	if (is_value(&number->given))
		return true;
	amount->state = COUNT_WAITS;
	amount->why = arena_printf(arena, "not stated: %s", title);
	return false;
}

void settle(Counting *counting, Amount *amount, double exact, double laid)
{
	const KindRow *row = kind_row(counting->area->all->criteria, amount->kind);
	bool whole = strcmp(amount->unit, "pieces") == 0 || strcmp(amount->unit, "rolls") == 0;
	amount->state = COUNTED;
	amount->exact = exact;
	amount->laid = laid;
	amount->waste_percent = row != NULL ? row->waste_percent.value : 0;
	amount->needed = laid * (1 + amount->waste_percent / 100);
	if (whole)
		amount->needed = ceil(amount->needed - 1e-9);
}

double detail_length_ft(const Counting *counting, const char *place)
{
	double length = -1;
	uint32_t i = 0;
	for (const Case *at; (at = next_of(counting, KIND_detail, &i)) != NULL;) {
		const Detail *detail = at->row;
		if (is_value(&detail->place.given) && strcmp(detail->place.text, place) == 0 && is_value(&detail->length_ft.given))
			length = fmax(length, 0) + detail->length_ft.value;
	}
	return length;
}

/* ---- packages ---- */

double content_of(const char *sold_in, const char *unit)
{
	const char *of = sold_in != NULL ? strstr(sold_in, " of ") : NULL;
	if (of == NULL)
		return 0;
	size_t digits = strspn(of + 4, "0123456789.");
	double content;
	if (digits == 0 || !number_read(of + 4, digits, &content) || content <= 0)
		return 0;
	const char *rest = of + 4 + digits;
	rest += strspn(rest, " ");
	return strcmp(*rest != '\0' ? rest : "pieces", unit) == 0 ? content : 0;
}

static Total *total_of(Takeoff *takeoff, Hash *totals, const Amount *amount, Arena *arena)
{
	const char *unit = amount->state == COUNTED ? amount->unit : "";
	const char *key = arena_printf(arena, "%s|%s", amount->kind, amount->item);
	Total *total = hash_get(totals, key, strlen(key));
	if (total == NULL) {
		total = &takeoff->total[takeoff->totals++];
		*total = (Total){ .kind = amount->kind, .item = amount->item, .unit = unit, .sold_in = amount->sold_in };
		hash_put(totals, key, strlen(key), total);
	}
	if (*total->unit == '\0')
		total->unit = unit;
	return total;
}

/* Of each item all that was counted in one unit; its other lines are told, not added. */
void add_up(Takeoff *takeoff, Arena *arena)
{
	Hash *totals = hash_make(arena, takeoff->amounts);
	takeoff->total = TAKE(arena, Total, takeoff->amounts + 1);
	for (uint32_t i = 0; i < takeoff->amounts; i++) {
		const Amount *amount = &takeoff->amount[i];
		if (amount->item == NULL || amount->part == NULL || amount->again || strcmp(amount->item, "other") == 0)
			continue;
		Total *total = total_of(takeoff, totals, amount, arena);
		total->lines++;
		if (amount->state == COUNTED && strcmp(total->unit, amount->unit) == 0)
			total->needed += amount->needed;
		else
			total->uncounted++;
	}
	for (uint32_t i = 0; i < takeoff->totals; i++) {
		Total *total = &takeoff->total[i];
		double content = content_of(total->sold_in, total->unit);
		bool by_roll = strcmp(total->unit, "rolls") == 0;
		total->packages = by_roll ? total->needed : content > 0 ? ceil(total->needed / content - 1e-9) : 0;
	}
}

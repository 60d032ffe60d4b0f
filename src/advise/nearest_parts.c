/* SPDX-License-Identifier: MIT
 * What would have to be exchanged so that a listing covers the construction: for each part that differs from the tested one, an
 * item of the catalogue that does not differ there and is otherwise most like it.
 */
#include "advising.h"

#include <math.h>
#include <string.h>

static bool is_number(const Field *field)
{
	return field->kind == IS_NUMBER || field->kind == IS_SIZE;
}

/* Whether an item has what was tested, or of a number more where more is better. */
static bool has_tested(const Field *field, const void *item, const void *tested)
{
	const Given *here = given_in(field, item), *there = given_in(field, tested);
	if (!is_value(here) || !is_value(there))
		return false;
	if (!is_number(field))
		return here->typed != NULL && there->typed != NULL && strcmp(here->typed, there->typed) == 0;
	double a = ((const Number *)(const void *)here)->value, b = ((const Number *)(const void *)there)->value;
	if (fabs(a - b) <= 1e-9 * fabs(b))
		return true;
	return (field->stricter == UP && a > b) || (field->stricter == DOWN && a < b);
}

static bool is_same(const Field *field, const void *a, const void *b)
{
	const Given *one = given_in(field, a), *other = given_in(field, b);
	return is_value(one) && is_value(other) && one->typed != NULL && other->typed != NULL && strcmp(one->typed, other->typed) == 0;
}

/* What a fitting item shares with the tested part counts most, then what it shares with the submitted one. */
static uint32_t likeness(const Record *record, const void *item, const void *tested, const void *submitted)
{
	uint32_t same = 0;
	for (uint32_t i = 0; i < record->count; i++) {
		same += is_same(&record->field[i], item, tested) ? 4 : 0;
		same += is_same(&record->field[i], item, submitted);
	}
	return same;
}

static bool fits(const Exchanges *exchanges, const Difference *part, const void *item)
{
	for (uint32_t i = 0; i < exchanges->differences; i++) {
		const Difference *other = &exchanges->difference[i];
		if (other->kind == part->kind && other->number == part->number && !has_tested(other->field, item, other->there))
			return false;
	}
	return true;
}

/* The fitting item of a rank; NULL if there are not so many. */
static const void *item_of_rank(const Advising *advising, const Exchanges *exchanges, const Difference *part, const Case *at)
{
	const Record *record = record_of(part->kind);
	Items items = items_of(advising->verdict->cases->criteria, part->kind, false);
	const void *best = NULL;
	uint32_t most = 0, below = UINT32_MAX;
	for (uint32_t rank = 0; rank <= exchanges->rank; rank++, below = most) {
		best = NULL;
		most = 0;
		for (uint32_t i = 0; i < items.count; i++) {
			const void *item = items.row + i * record->size;
			uint32_t like = fits(exchanges, part, item) ? 1 + likeness(record, item, part->there, at->row) : 0;
			if (like > most && like < below) {
				best = item;
				most = like;
			}
		}
	}
	return best;
}

/* The part of the submittal that differs in the copy. */
static const Case *part_of(const Exchanges *exchanges, const Difference *difference)
{
	const Cases *cases = exchanges->test->all;
	for (uint32_t i = 0; i < cases->of[difference->kind].count; i++) {
		const Case *at = cases->of[difference->kind].at[i];
		if (at->up == exchanges->test->up && number_in_list(at) == difference->number)
			return at;
	}
	return NULL;
}

static bool is_chosen(const Exchanges *exchanges, const Case *part)
{
	for (uint32_t i = 0; i < exchanges->exchanged; i++)
		if (exchanges->exchange[i].part == part)
			return true;
	return false;
}

bool choose_exchanges(const Advising *advising, Exchanges *exchanges)
{
	exchanges->exchanged = 0;
	for (uint32_t i = 0; i < exchanges->differences; i++) {
		const Difference *difference = &exchanges->difference[i];
		const Case *part = record_of(difference->kind)->sort == RECORD_PART ? part_of(exchanges, difference) : NULL;
		if (part != NULL && is_chosen(exchanges, part))
			continue;
		const Text *old = part != NULL ? &((const Panel *)part->row)->item : NULL;
		if (part == NULL || !is_value(&old->given) || exchanges->exchanged == MOST_EXCHANGED)
			return false;
		const void *row = item_of_rank(advising, exchanges, difference, part);
		if (row == NULL)
			return false;
		const char *item = ((const Panel *)row)->item.text;
		exchanges->exchange[exchanges->exchanged++] = (Exchange){ part, item, old->text, row };
	}
	return exchanges->exchanged > 0;
}

bool place_exchanges(Advising *advising, Copy *copy, const Exchanges *exchanges)
{
	for (uint32_t i = 0; i < exchanges->exchanged; i++) {
		const Exchange *exchange = &exchanges->exchange[i];
		const Cases *cases = exchange->part->all;
		for (uint32_t k = 0; k < cases->of[exchange->part->kind].count; k++) {
			const Case *at = cases->of[exchange->part->kind].at[k];
			const Text *item = &((const Panel *)at->row)->item;
			if (at->up != exchange->part->up || !is_value(&item->given) || strcmp(item->text, exchange->old) != 0)
				continue;
			void *row = copied_row(advising, copy, at);
			if (row == NULL)
				return false;
			place_item(record_of(at->kind), row, exchange->row);
		}
	}
	return true;
}

/* SPDX-License-Identifier: MIT
 * The nearest listing: of those that would cure an item, the one from which the submitted construction differs least.
 *
 * A listing that is not in force proves nothing and is not named.
 */
#include "advising.h"

#include <string.h>

enum { MOST_NAMED = 3, LONGEST = 200, MOST_NEAREST = 4, MOST_RANKS = 3 };

typedef struct {
	const Listing *listing;
	uint32_t differences;
	Difference difference[MOST_DIFFERENCES];
	char words[LONGEST]; /* what differs; outlives the copy that was judged */
} Nearest;

/* Those tried last are the farthest. */
typedef struct {
	Nearest at[MOST_NEAREST];
	uint32_t count;
} Near;

/* The test of the item's roof area that would name another listing: the one the item speaks of, else the one for the class. */
static const Case *test_of(const Finding *item)
{
	const Case *at = item->judged;
	if (at->kind == KIND_test)
		return at;
	if (at->kind == KIND_comparison && ((const Compared *)at->row)->test != NULL)
		return ((const Compared *)at->row)->test;
	const Case *area = case_outward(at, KIND_roof_area);
	for (uint32_t i = 0; area != NULL && i < at->all->of[KIND_test].count; i++) {
		const Case *test = at->all->of[KIND_test].at[i];
		if (test->up == area && is_word(&((const AreaTest *)test->row)->role, "class"))
			return test;
	}
	return NULL;
}

static bool is_in_force(const Listing *listing, int32_t day)
{
	return is_word(&listing->status, "in force") && (!is_value(&listing->expires.given) || listing->expires.day >= day);
}

static void add_words(Nearest *nearest, const Compared *compared)
{
	size_t used = strlen(nearest->words);
	const char *part = is_value(&compared->record.part.given) ? compared->record.part.text : "";
	const char *attribute = compared->record.attribute.text != NULL ? compared->record.attribute.text : "";
	size_t more = strlen(part) + strlen(attribute) + 4;
	if (nearest->differences > MOST_NAMED || used + more >= LONGEST)
		return;
	char *end = nearest->words + used;
	const char *pieces[] = { used > 0 ? ", " : "", part, " ", attribute };
	for (int i = 0; i < 4; i++) {
		size_t length = strlen(pieces[i]);
		memcpy(end, pieces[i], length);
		end += length;
	}
	*end = '\0';
}

/* What of the copy does not hold against the listing, or cannot be told. */
static void count_differences(Nearest *nearest, const Cases *cases)
{
	for (uint32_t i = 0; i < cases->of[KIND_comparison].count; i++) {
		Case *at = cases->of[KIND_comparison].at[i];
		const Compared *compared = at->row;
		const AreaTest *test = compared->test != NULL ? compared->test->row : NULL;
		bool is_ours = test != NULL && is_value(&test->listing.given) &&
			       strcmp(test->listing.text, nearest->listing->listing.text) == 0;
		if (!is_ours)
			continue;
		const Fact *holds = fact_of(at, FACT_comparison_holds);
		if ((holds->state == FACT_KNOWN && holds->value != 0) || holds->state == FACT_NOT_APPLICABLE)
			continue;
		if (nearest->differences < MOST_DIFFERENCES && compared->part != NULL && compared->there != NULL)
			nearest->difference[nearest->differences] = (Difference){ compared->part->kind, number_in_list(compared->part),
				compared->field, compared->there };
		nearest->differences++;
		add_words(nearest, compared);
	}
}

static bool name_listing(Advising *advising, Copy *copy, const Case *test, const Listing *listing)
{
	AreaTest *row = copied_row(advising, copy, test);
	if (row == NULL)
		return false;
	row->listing.text = listing->listing.text;
	row->listing.given.typed = row->listing.text;
	row->listing.given.said = SAID_VALUE;
	return true;
}

static bool try_listing(Advising *advising, const Finding *item, const Case *test, Nearest *nearest)
{
	ArenaMark mark = arena_mark(advising->arena);
	Copy *copy = copy_submittal(advising, area_of_item(item));
	bool cured = false;
	if (name_listing(advising, copy, test, nearest->listing)) {
		Cases *cases = resolve_copy(advising, copy);
		cured = is_cured(advising, copy, cases, &(Wanted){ .item = item, .alone = true });
		if (cured)
			count_differences(nearest, cases);
	}
	arena_back(advising->arena, mark);
	return cured;
}

/* Keeps the nearest ones, in the order of the listings where they differ alike. */
static void keep(Near *near, const Nearest *nearest)
{
	uint32_t at = near->count < MOST_NEAREST ? near->count++ : MOST_NEAREST;
	while (at > 0 && nearest->differences < near->at[at - 1].differences) {
		if (at < MOST_NEAREST)
			near->at[at] = near->at[at - 1];
		at--;
	}
	if (at < MOST_NEAREST)
		near->at[at] = *nearest;
}

static void find_near(Advising *advising, const Finding *item, const Case *test, Near *near)
{
	const Criteria *criteria = advising->verdict->cases->criteria;
	for (uint32_t i = 0; i < criteria->listings.count && may_try(advising); i++) {
		const Listing *listing = &criteria->listings.row[i];
		const AreaTest *named = test->row;
		bool same_role = is_value(&named->role.given) && is_word(&listing->role, named->role.text);
		bool is_named = is_value(&named->listing.given) && strcmp(named->listing.text, listing->listing.text) == 0;
		if (!same_role || is_named || !is_in_force(listing, test->all->as_of))
			continue;
		Nearest nearest = { .listing = listing };
		if (try_listing(advising, item, test, &nearest))
			keep(near, &nearest);
	}
}

/* ---- whether it would do ---- */

static bool is_whole_cure(Advising *advising, const Finding *item, const Listing *listing, const Exchanges *exchanges)
{
	ArenaMark mark = arena_mark(advising->arena);
	Copy *copy = copy_submittal(advising, area_of_item(item));
	bool cured = name_listing(advising, copy, exchanges->test, listing) && place_exchanges(advising, copy, exchanges) &&
		is_cured(advising, copy, resolve_copy(advising, copy), &(Wanted){ .item = item });
	arena_back(advising->arena, mark);
	return cured;
}

/* "tested-250 with deck-20 for deck-22, screw-12x2 for screw-12x1" */
static const char *exchange_text(const Listing *listing, const Exchanges *exchanges, Arena *arena)
{
	const char *text = arena_printf(arena, "%s with ", listing->listing.text);
	for (uint32_t i = 0; i < exchanges->exchanged; i++)
		text = arena_printf(arena, "%s%s%s for %s", text, i > 0 ? ", " : "", exchanges->exchange[i].item, exchanges->exchange[i].old);
	return text;
}

/* The listing as it is, or with parts exchanged; NULL if neither cures the item without a new one. */
static const char *cure_text(Advising *advising, const Finding *item, const Case *test, const Nearest *nearest)
{
	Exchanges exchanges = { .difference = nearest->difference, .differences = nearest->differences, .test = test };
	if (nearest->differences == 0)
		return may_try(advising) && is_whole_cure(advising, item, nearest->listing, &exchanges)
			? arena_printf(advising->arena, "%s fits", nearest->listing->listing.text) : NULL;
	if (nearest->differences > MOST_DIFFERENCES)
		return NULL;
	for (; exchanges.rank < MOST_RANKS && may_try(advising) && choose_exchanges(advising, &exchanges); exchanges.rank++)
		if (is_whole_cure(advising, item, nearest->listing, &exchanges))
			return exchange_text(nearest->listing, &exchanges, advising->arena);
	return NULL;
}

const char *nearest_listing(Advising *advising, const Finding *item)
{
	uint32_t area = area_of_item(item);
	const Case *test = area > 0 ? test_of(item) : NULL;
	Near near = { .count = 0 };
	if (test == NULL)
		return NULL;
	judge_unchanged(advising, item, area);
	find_near(advising, item, test, &near);
	for (uint32_t i = 0; i < near.count; i++) {
		const char *text = cure_text(advising, item, test, &near.at[i]);
		if (text != NULL)
			return text;
	}
	if (near.count == 0 || near.at[0].differences == 0)
		return NULL;
	const Nearest *best = &near.at[0];
	const char *more = best->differences > MOST_NAMED ? " and more" : "";
	return arena_printf(advising->arena, "%s, which does not fit either (differs in %s%s)", best->listing->listing.text, best->words,
		more);
}

/* SPDX-License-Identifier: MIT
 * The nearest listing: of those that would cure an item, the one from which the submitted construction differs least.
 *
 * A listing that is not in force proves nothing and is not named.
 */
#include "advising.h"

#include <string.h>

enum { MOST_DIFFERENCES = 3, LONGEST = 200 };

typedef struct {
	const Listing *listing;
	uint32_t differences;
	char words[LONGEST]; /* what differs; outlives the copy that was judged */
} Nearest;

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
	if (nearest->differences > MOST_DIFFERENCES || used + more >= LONGEST)
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
		nearest->differences++;
		add_words(nearest, compared);
	}
}

static bool try_listing(Advising *advising, const Finding *item, const Case *test, Nearest *nearest)
{
	ArenaMark mark = arena_mark(advising->arena);
	Copy *copy = copy_submittal(advising, area_of_item(item));
	AreaTest *row = copied_row(advising, copy, test);
	bool cured = false;
	if (row != NULL) {
		row->listing.text = nearest->listing->listing.text;
		row->listing.given.typed = row->listing.text;
		row->listing.given.said = SAID_VALUE;
		Cases *cases = resolve_copy(advising, copy);
		cured = is_cured(advising, copy, cases, &(Wanted){ .item = item, .alone = true });
		if (cured)
			count_differences(nearest, cases);
	}
	arena_back(advising->arena, mark);
	return cured;
}

const char *nearest_listing(Advising *advising, const Finding *item)
{
	const Criteria *criteria = advising->verdict->cases->criteria;
	const Case *test = area_of_item(item) > 0 ? test_of(item) : NULL;
	Nearest best = { .listing = NULL };
	for (uint32_t i = 0; test != NULL && i < criteria->listings.count && may_try(advising); i++) {
		const Listing *listing = &criteria->listings.row[i];
		const AreaTest *named = test->row;
		bool same_role = is_value(&named->role.given) && is_word(&listing->role, named->role.text);
		bool is_named = is_value(&named->listing.given) && strcmp(named->listing.text, listing->listing.text) == 0;
		if (!same_role || is_named || !is_in_force(listing, test->all->as_of))
			continue;
		Nearest nearest = { .listing = listing };
		if (try_listing(advising, item, test, &nearest) &&
		    (best.listing == NULL || nearest.differences < best.differences))
			best = nearest;
	}
	if (best.listing == NULL)
		return NULL;
	if (best.differences == 0)
		return arena_printf(advising->arena, "%s fits", best.listing->listing.text);
	const char *more = best.differences > MOST_DIFFERENCES ? " and more" : "";
	return arena_printf(advising->arena, "%s (differs in %s%s)", best.listing->listing.text, best.words, more);
}

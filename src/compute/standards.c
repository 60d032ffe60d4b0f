/* SPDX-License-Identifier: MIT
 * What the specification asks of tests: a fire class for each roof area, and test standards that one construction must meet.
 */
#include "below.h"
#include "fetch.h"
#include "hash.h"
#include "text.h"

#include <string.h>

/* The words a requirement on `topic` asks for, or NULL. */
static const char *fetch_asked(Case *fact, const Case *requirement, const char *topic)
{
	const Requirement *row = requirement->row;
	if (!is_value(&row->topic.given) || !same_text(row->topic.text, topic))
		return NULL;
	const char *least = GIVEN_OR_AT(fact, requirement, Requirement, at_least, NULL);
	const char *exactly = GIVEN_OR_AT(fact, requirement, Requirement, exactly, NULL);
	return least != NULL ? least : exactly;
}

static bool is_in_force(const Listing *row, int32_t day)
{
	return is_word(&row->status, "in force") && (!is_value(&row->expires.given) || row->expires.day >= day);
}

/* ---- fire ---- */

/* A is the best: its number among the words of the field is the least. */
static int class_of(const char *words)
{
	const Field *field = field_find(&Listing_record, "fire_class", strlen("fire_class"));
	return word_find(field->words, words, strlen(words));
}

/* The best class asked for; -1 if none is. */
static int fetch_class_asked(Case *area)
{
	const Cases *all = area->all;
	int best = -1;
	for (uint32_t i = 0; i < all->of[KIND_requirement].count; i++) {
		const char *asked = fetch_asked(area, all->of[KIND_requirement].at[i], "fire class");
		int one = asked != NULL ? class_of(asked) : -1;
		if (asked != NULL && one < 0)
			REFUSE(area, "the fire class asked for is none of A, B and C");
		best = one >= 0 && (best < 0 || one < best) ? one : best;
	}
	return best;
}

/* The best class among the listings in force that are named for fire; -1: none is named. */
static int fetch_class_listed(Case *area)
{
	int32_t day = fetch_as_of(area);
	int best = -1;
	if (fetch_list(area, area, offsetof(RoofArea, tests)) == NULL)
		return -1;
	for (Case *test = first_below(area, KIND_test); test != NULL; test = test->next) {
		const Listing *row = test->listed;
		if (!same_text(GIVEN_AT(area, test, AreaTest, role), "fire") || row == NULL || !is_in_force(row, day))
			continue;
		int one = is_value(&row->fire_class.given) ? (int)row->fire_class.word : -1;
		best = one >= 0 && (best < 0 || one < best) ? one : best;
	}
	return best;
}

double roof_area_fire_class_met_yes(Case *area)
{
	int asked = fetch_class_asked(area), listed = fetch_class_listed(area);
	if (!ready(area))
		return 0;
	if (asked < 0)
		return SKIP(area, "the specification asks for no fire class");
	static const char letters[] = "ABC";
	Arena *arena = area->all->arena;
	note(area, listed < 0 ? arena_printf(arena, "no listing in force is named for fire, class %c is asked for", letters[asked])
			      : arena_printf(arena, "the listing is class %c, class %c is asked for", letters[listed], letters[asked]));
	return listed >= 0 && listed <= asked;
}

/* ---- test standards ---- */

enum { MOST_STANDARDS = 16 };

typedef struct {
	const char *at[MOST_STANDARDS];
	uint32_t count;
} Standards;

static void put_standard(Standards *standards, const char *name)
{
	for (uint32_t i = 0; i < standards->count; i++)
		if (same_text(standards->at[i], name))
			return;
	if (standards->count < MOST_STANDARDS)
		standards->at[standards->count++] = name;
}

/* What must be one and the same in two tests to be built at once: panel, metal, support and clip. */
static const char *construction_of(const Listing *row, Arena *arena)
{
	const RoofArea *tested = &row->tested;
	const Clip *clip = tested->clips.of.count > 0 ? tested->clips.of.row : NULL;
	const char *item = clip != NULL && is_value(&clip->item.given) ? clip->item.text : "";
	const Given *said[] = { &tested->panel.profile.given, &tested->panel.variant.given, &tested->panel.metal.given };
	for (size_t i = 0; i < sizeof said / sizeof *said; i++)
		if (!is_value(said[i]))
			return NULL;
	return arena_printf(arena, "%s|%s|%s|%s|%s", tested->panel.profile.text, tested->panel.variant.text, tested->panel.metal.text,
		row->substrate_tested.text, item);
}

/* Whether one construction was tested by each of the standards; every listing is looked at once. */
static bool has_common(const Case *submittal, const Standards *standards, int32_t day)
{
	const Criteria *criteria = submittal->all->criteria;
	Hash *met = hash_make(submittal->all->arena, criteria->listings.count);
	for (uint32_t i = 0; i < criteria->listings.count; i++) {
		const Listing *row = &criteria->listings.row[i];
		const char *key = is_in_force(row, day) ? construction_of(row, submittal->all->arena) : NULL;
		uintptr_t bits = key != NULL ? (uintptr_t)hash_get(met, key, strlen(key)) : 0;
		for (uint32_t s = 0; key != NULL && s < standards->count; s++)
			if (same_text(row->standard.text, standards->at[s]))
				bits |= (uintptr_t)1 << s;
		if (key != NULL && bits != 0)
			hash_put(met, key, strlen(key), (void *)bits);
		if (bits == ((uintptr_t)1 << standards->count) - 1)
			return true;
	}
	return false;
}

double submittal_standards_agree_yes(Case *submittal)
{
	const Cases *all = submittal->all;
	int32_t day = fetch_as_of(submittal);
	Standards standards = { .count = 0 };
	for (uint32_t i = 0; i < all->of[KIND_requirement].count; i++) {
		const char *asked = fetch_asked(submittal, all->of[KIND_requirement].at[i], "test standard");
		if (asked != NULL)
			put_standard(&standards, asked);
	}
	if (!ready(submittal))
		return 0;
	if (standards.count < 2)
		return SKIP(submittal, "fewer than two test standards are specified");
	const char *names = standards.at[0];
	for (uint32_t i = 1; i < standards.count; i++)
		names = arena_printf(all->arena, "%s and %s", names, standards.at[i]);
	note(submittal, names);
	return has_common(submittal, &standards, day);
}

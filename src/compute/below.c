/* SPDX-License-Identifier: MIT
 * What belongs to a roof area, a test or the submittal: one pass over all cases when the first question comes.
 */
#include "below.h"

#include "hash.h"
#include "text.h"

/* So many letters whose areas are not known are named. */
enum { MOST_UNKNOWN = 64 };

typedef struct {
	Case *first, *last;
} Chain;

typedef struct Below Below;
struct Below {
	Chain of[RECORD_KINDS], compared;
	Case **role; /* by number of the row: the first one */
	Case *class_test, *open_test; /* the first test named for class; the first that is not said what it is for */
	const Case *letter; /* the last that names this area */
	uint32_t letters;
	Case *letter_at[MOST_COVERING];
	void *kept; /* of a test: what was worked out from its listing */
};

typedef struct Index Index;
struct Index {
	Hash *area; /* folded name to the first area of that name */
	Case *unknown[MOST_UNKNOWN];
	uint32_t unknowns;
	Below *whole; /* of the submittal */
	bool is_cut; /* there were more comparisons than are made */
	void *ledger; /* of the submittal: what was bought, by items */
	void *found; /* of the submittal: what was found on the roof, by areas */
};

Case *area_of(const Case *at)
{
	return (Case *)case_outward(at, KIND_roof_area);
}

static Below *below_of(Case *at)
{
	if (at->below == NULL)
		at->below = TAKE(at->all->arena, Below, 1);
	return at->below;
}

static void put_last(Chain *chain, Case *at)
{
	if (chain->last != NULL)
		chain->last->next = at;
	else
		chain->first = at;
	chain->last = at;
}

static void put_compared(Case *comparison)
{
	const Case *test = ((const Compared *)comparison->row)->test;
	if (test == NULL)
		return;
	Chain *chain = &below_of((Case *)test)->compared;
	if (chain->last != NULL)
		chain->last->next_of_test = comparison;
	else
		chain->first = comparison;
	chain->last = comparison;
}

static void put_test(Below *below, Case *test)
{
	const Word *role = &((const AreaTest *)test->row)->role;
	if (!is_value(&role->given)) {
		if (below->open_test == NULL)
			below->open_test = test;
	} else if (below->class_test == NULL && is_word(role, "class")) {
		below->class_test = test;
	}
}

static void put_role(Below *below, Case *role)
{
	const Criteria *criteria = role->all->criteria;
	uint32_t number = (uint32_t)(((const RoleDue *)role->row)->bound - criteria->role);
	if (below->role == NULL)
		below->role = TAKE(role->all->arena, Case *, criteria->roles);
	if (below->role[number] == NULL)
		below->role[number] = role;
}

static void put_case(Index *index, Case *at)
{
	Case *area = area_of(at);
	Below *below = area != NULL ? below_of(area) : index->whole;
	if (at != area)
		put_last(&below->of[at->kind], at);
	if (at->kind == KIND_comparison)
		put_compared(at);
	else if (at->kind == KIND_role)
		put_role(below, at);
	else if (at->kind == KIND_test)
		put_test(below, at);
}

/* ---- letters by the names of roof areas ---- */

static void put_area(Index *index, Case *area)
{
	const RoofArea *row = area->row;
	if (!is_value(&row->name.given))
		return;
	size_t length;
	const char *key = folded(area->all->arena, row->name.text, &length);
	if (hash_get(index->area, key, length) == NULL)
		hash_put(index->area, key, length, area);
}

static Case *area_named(const Index *index, Arena *arena, const char *name)
{
	size_t length;
	ArenaMark mark = arena_mark(arena);
	const char *key = folded(arena, name, &length);
	Case *area = hash_get(index->area, key, length);
	arena_back(arena, mark);
	return area;
}

/* A letter that names an area twice covers it once. */
static void put_letter(Index *index, Case *letter)
{
	const Letter *row = letter->row;
	if (!is_value(&row->areas.given)) {
		if (index->unknowns < MOST_UNKNOWN)
			index->unknown[index->unknowns++] = letter;
		return;
	}
	for (uint32_t i = 0; i < row->areas.count; i++) {
		Case *area = area_named(index, letter->all->arena, row->areas.at[i].text);
		if (area == NULL || below_of(area)->letter == letter)
			continue;
		Below *below = below_of(area);
		below->letter = letter;
		if (below->letters < MOST_COVERING)
			below->letter_at[below->letters] = letter;
		below->letters++;
	}
}

static Index *index_of(const Case *at)
{
	Cases *all = at->all;
	if (all->index != NULL)
		return all->index;
	Index *index = TAKE(all->arena, Index, 1);
	all->index = index;
	index->whole = TAKE(all->arena, Below, 1);
	index->area = hash_make(all->arena, all->of[KIND_roof_area].count);
	for (uint32_t kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; i < all->of[kind].count; i++)
			put_case(index, all->of[kind].at[i]);
	for (uint32_t i = 0; i < all->of[KIND_roof_area].count; i++)
		put_area(index, all->of[KIND_roof_area].at[i]);
	for (uint32_t i = 0; i < all->of[KIND_letter].count; i++)
		put_letter(index, all->of[KIND_letter].at[i]);
	for (uint32_t i = 0; i < all->waitings; i++)
		index->is_cut |= all->waiting[i].kind == KIND_comparison;
	return index;
}

/* ---- questions ---- */

Case *first_below(const Case *area, RecordKind kind)
{
	Index *index = index_of(area);
	const Below *below = area->kind == KIND_roof_area ? area->below : index->whole;
	return below != NULL ? below->of[kind].first : NULL;
}

Case *class_test_of(const Case *area, Case **open)
{
	index_of(area);
	*open = area->below != NULL ? area->below->open_test : NULL;
	return area->below != NULL ? area->below->class_test : NULL;
}

Case *first_compared(const Case *test)
{
	index_of(test);
	return test->below != NULL ? test->below->compared.first : NULL;
}

void **kept_with(Case *test)
{
	return &below_of(test)->kept;
}

void **kept_ledger(const Case *at)
{
	return &index_of(at)->ledger;
}

void **kept_found(const Case *at)
{
	return &index_of(at)->found;
}

bool are_all_compared(const Case *at)
{
	return !index_of(at)->is_cut;
}

Case *first_role(Case *role)
{
	Index *index = index_of(role);
	const Case *area = area_of(role);
	const Below *below = area != NULL ? area->below : index->whole;
	return below->role[((const RoleDue *)role->row)->bound - role->all->criteria->role];
}

uint32_t letters_naming(const Case *at, const char *name)
{
	const Case *area = area_named(index_of(at), at->all->arena, name);
	return area != NULL && area->below != NULL ? area->below->letters : 0;
}

Case *const *letters_covering(const Case *at, const char *name, uint32_t *count)
{
	Case *area = area_named(index_of(at), at->all->arena, name);
	*count = area != NULL && area->below != NULL ? area->below->letters : 0;
	return *count > 0 ? area->below->letter_at : NULL;
}

Case *const *letters_unknown(const Case *at, uint32_t *count)
{
	const Index *index = index_of(at);
	*count = index->unknowns;
	return index->unknown;
}

Case *area_called(const Case *at, const char *name)
{
	return area_named(index_of(at), at->all->arena, name);
}

bool is_area_name(const Case *at, const char *name)
{
	return area_called(at, name) != NULL;
}

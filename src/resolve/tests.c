/* SPDX-License-Identifier: MIT
 * The tests of a roof area to the listings of the criteria, and parts to the tested parts of the listing that governs.
 *
 * The listing named for capacity governs, else the one named for class. A listing speaks of one panel, one support, the running
 * clip, the screw through it, the sealant in the seam, the underlayment of the whole roof, and of layers; what else is on the
 * roof it did not test.
 */
#include "resolving.h"

#include <string.h>

/* ---- listings ---- */

static void gather_terms(Resolving *r, Known *known, const char *name)
{
	const Criteria *criteria = r->all->criteria;
	for (uint32_t i = 0; i < criteria->terms_bound; i++) {
		const BoundTerm *term = &criteria->term[i];
		if (term->row->listing.text == NULL || strcmp(term->row->listing.text, name) != 0)
			continue;
		known->term = arena_more(r->arena, known->term, known->terms, &known->room, sizeof *known->term);
		known->term[known->terms++] = term;
	}
}

Known *known_listing(Resolving *r, const AreaTest *test)
{
	if (!is_value(&test->listing.given))
		return NULL;
	const char *name = test->listing.text;
	Known *known = hash_get(r->known, name, strlen(name));
	if (known != NULL)
		return known;
	const Listing *listing = listing_find(r->all->criteria, name);
	if (listing == NULL)
		return NULL;
	known = TAKE(r->arena, Known, 1);
	known->listing = listing;
	gather_terms(r, known, name);
	hash_put(r->known, name, strlen(name), known);
	return known;
}

/* ---- tested parts ---- */

/* How a part is used, by which a listing's part is told; NULL where there is but one. */
static const Word *use_of(RecordKind kind, const void *row)
{
	switch (kind) {
	case KIND_clip:
		return &((const Clip *)row)->use;
	case KIND_fastener:
		return &((const Fastener *)row)->use;
	case KIND_sealant:
		return &((const Sealant *)row)->where;
	case KIND_underlayment:
		return &((const Underlayment *)row)->where;
	case KIND_layer:
		return &((const Layer *)row)->layer;
	default:
		return NULL;
	}
}

/* The use a listing speaks of; NULL: of any. */
static const char *tested_use(RecordKind kind)
{
	switch (kind) {
	case KIND_clip:
		return "running";
	case KIND_fastener:
		return "clip";
	case KIND_sealant:
		return "seam";
	case KIND_underlayment:
		return "whole roof";
	default:
		return NULL;
	}
}

bool has_tested_parts(RecordKind kind)
{
	return kind == KIND_panel || kind == KIND_support || use_of(kind, &(Layer){ 0 }) != NULL;
}

/* A use that was not said may be the tested one. */
bool is_tested_use(RecordKind kind, const void *row)
{
	if (kind == KIND_panel || kind == KIND_support || kind == KIND_layer)
		return true;
	const char *wanted = tested_use(kind);
	const Word *use = wanted != NULL ? use_of(kind, row) : NULL;
	return use != NULL && (!is_value(&use->given) || strcmp(use->text, wanted) == 0);
}

static bool are_said(const Layer *a, const Layer *b)
{
	return is_value(&a->layer.given) && is_value(&b->layer.given);
}

bool is_same_layer(const void *a, const void *b)
{
	const Layer *one = a, *other = b;
	return are_said(one, other) && strcmp(one->layer.text, other->layer.text) == 0;
}

bool is_other_layer(const void *a, const void *b)
{
	return are_said(a, b) && !is_same_layer(a, b);
}

const void *tested_part(const Resolving *r, const Listing *listing, RecordKind kind, const void *row, Said *said)
{
	const Field *field = r->held_in[kind];
	const char *held = (const char *)&listing->tested + field->offset;
	*said = SAID_VALUE;
	if (field->kind == IS_ONE)
		return held;
	const List *list = (const List *)(const void *)held;
	*said = list->count > 0 ? SAID_VALUE : list->given.said;
	for (uint32_t i = 0; i < list->count && kind == KIND_layer; i++) {
		const char *tested = (const char *)list->row + i * field->record->size;
		if (is_same_layer(row, tested))
			return tested;
	}
	return list->count > 0 ? list->row : NULL;
}

/* ---- the listing that governs ---- */

static bool is_case_for(const Case *test, const char *role)
{
	return test->listed != NULL && is_word(&((const AreaTest *)test->row)->role, role);
}

/* Tests stand in the order of their areas, so the first of each area that names a role is the one. */
static void bind_areas(Resolving *r, const char *role)
{
	Cases *all = r->all;
	for (uint32_t i = 0; i < all->of[KIND_test].count; i++) {
		const Case *test = all->of[KIND_test].at[i];
		if (test->up->listed == NULL && is_case_for(test, role))
			test->up->listed = test->listed;
	}
}

static void bind_parts_of_kind(Resolving *r, RecordKind kind)
{
	Cases *all = r->all;
	for (uint32_t i = 0; i < all->of[kind].count; i++) {
		Case *part = all->of[kind].at[i];
		Said said;
		if (part->up->listed != NULL && is_tested_use(kind, part->row))
			part->listed = tested_part(r, part->up->listed, kind, part->row, &said);
	}
}

void bind_tests(Resolving *r)
{
	Cases *all = r->all;
	for (uint32_t i = 0; i < all->of[KIND_test].count; i++) {
		const Known *known = known_listing(r, all->of[KIND_test].at[i]->row);
		if (known != NULL)
			all->of[KIND_test].at[i]->listed = known->listing;
	}
	bind_areas(r, "capacity");
	bind_areas(r, "class");
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		if (r->held_in[kind] != NULL && has_tested_parts((RecordKind)kind))
			bind_parts_of_kind(r, (RecordKind)kind);
}

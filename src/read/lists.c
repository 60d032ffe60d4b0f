/* SPDX-License-Identifier: MIT
 * Rows that hold names, bound: how parts may be substituted, which roles must be filled, which papers are due.
 */
#include "edition.h"
#include "hash.h"
#include "rules.h"
#include "tests.h"

#include <string.h>

Lists lists_index(const EditionRead *e)
{
	const Rows *rows = &e->rows[TABLE_lists];
	Arena *arena = e->loading->arena;
	Lists lists = {
		.by_name = hash_make(arena, 64), .checked = hash_make(arena, 64), .whole = rows->whole, .names = "none yet"
	};
	uint32_t shown = 0;
	lists.next = TAKE(arena, uint32_t, rows->count + 1);
	for (uint32_t i = 0; i < rows->count; i++) {
		const Text *name = &((const NamedWord *)row_at(rows, i))->list;
		lists.next[i] = LIST_END;
		if (name->given.said != SAID_VALUE)
			continue;
		ListRows *list = hash_get(lists.by_name, name->text, strlen(name->text));
		if (list != NULL) {
			lists.next[list->last] = i;
			list->last = i;
			continue;
		}
		list = TAKE(arena, ListRows, 1);
		*list = (ListRows){ i, i };
		hash_put(lists.by_name, name->text, strlen(name->text), list);
		if (shown < 64)
			lists.names = shown++ == 0 ? name->text : arena_printf(arena, "%s, %s", lists.names, name->text);
	}
	return lists;
}

/* ---- substitutions ---- */

static const char *const *bind_need_words(const Binding *b, const Substitution *row, uint32_t needs)
{
	const char **words = TAKE(b->loading->arena, const char *, needs);
	uint32_t count = 0;
	SplitPart part;
	if (row->needs_words.given.said == SAID_VALUE)
		for (size_t at = 0; split_next(row->needs_words.text, &at, &part); count++)
			if (count < needs)
				words[count] = arena_text(b->loading->arena, part.text, part.length);
	if (count == needs)
		return words;
	About about = { .value = arena_printf(b->loading->arena, "%u", (unsigned)count),
			.want = arena_printf(b->loading->arena, "%u", (unsigned)needs) };
	complain(b->loading->complaints, MESSAGE_TAB_49, row->needs_words.given.place, about);
	return NULL;
}

static void bind_substitution(const Binding *base, const Substitution *row, BoundSubstitution *bound)
{
	Binding b = *base;
	*bound = (BoundSubstitution){ .row = row };
	if (row->kind.given.said != SAID_VALUE || row->attribute.given.said != SAID_VALUE ||
	    !part_find(row->kind.text, strlen(row->kind.text), &b.for_each))
		return;
	bound->field = field_find(record_of(b.for_each), row->attribute.text, strlen(row->attribute.text));
	if (bound->field == NULL)
		complain(b.loading->complaints, MESSAGE_TAB_48, row->attribute.given.place,
			 (About){ .key = row->kind.text, .value = row->attribute.text });
	if (!tests_bind(&b, &row->needs, &bound->need, &bound->needs))
		return;
	for (uint32_t i = 0; i < bound->needs; i++)
		check_given(&b, &bound->need[i], bound->need, bound->needs);
	bound->need_words = bind_need_words(&b, row, bound->needs);
}

/* ---- roles, papers ---- */

static void bind_role(const Binding *base, const RequiredRole *row, BoundRole *bound)
{
	Binding b = *base;
	*bound = (BoundRole){ .row = row };
	if (row->for_each.given.said == SAID_VALUE && for_each_find(row->for_each.text, &b.for_each) &&
	    tests_bind(&b, &row->when, &bound->when, &bound->whens))
		for (uint32_t i = 0; i < bound->whens; i++)
			check_given(&b, &bound->when[i], bound->when, bound->whens);
	if (row->part.given.said != SAID_VALUE || !filler_find(row->part.text, strlen(row->part.text), &b.for_each))
		return;
	if (tests_bind(&b, &row->filled_by, &bound->filled_by, &bound->fills))
		for (uint32_t i = 0; i < bound->fills; i++)
			check_given(&b, &bound->filled_by[i], bound->filled_by, bound->fills);
}

/* A paper belongs to the submittal as a whole. */
static void bind_paper(const Binding *base, const PaperDue *row, BoundPaper *bound)
{
	Binding b = *base;
	b.for_each = KIND_submittal;
	*bound = (BoundPaper){ .row = row };
	if (tests_bind(&b, &row->when, &bound->when, &bound->whens))
		for (uint32_t i = 0; i < bound->whens; i++)
			check_given(&b, &bound->when[i], bound->when, bound->whens);
}

/* A check on site is asked of each roof area. */
static void bind_site_check(const Binding *base, const SiteCheck *row, BoundSiteCheck *bound)
{
	Binding b = *base;
	b.for_each = KIND_roof_area;
	*bound = (BoundSiteCheck){ .row = row };
	if (tests_bind(&b, &row->when, &bound->when, &bound->whens))
		for (uint32_t i = 0; i < bound->whens; i++)
			check_given(&b, &bound->when[i], bound->when, bound->whens);
}

void lists_bind(EditionRead *e, const Binding *base)
{
	Criteria *c = e->criteria;
	Arena *arena = e->loading->arena;
	Binding b = *base;
	BoundSubstitution *substitution = TAKE(arena, BoundSubstitution, c->substitutions.count);
	BoundRole *role = TAKE(arena, BoundRole, c->required.count);
	BoundPaper *paper = TAKE(arena, BoundPaper, c->documents.count);
	BoundSiteCheck *site_check = TAKE(arena, BoundSiteCheck, c->site_checks.count);
	b.source = c->substitutions.source;
	for (uint32_t i = 0; i < c->substitutions.count; i++)
		bind_substitution(&b, &c->substitutions.row[i], &substitution[i]);
	b.source = c->required.source;
	for (uint32_t i = 0; i < c->required.count; i++)
		bind_role(&b, &c->required.row[i], &role[i]);
	b.source = c->documents.source;
	for (uint32_t i = 0; i < c->documents.count; i++)
		bind_paper(&b, &c->documents.row[i], &paper[i]);
	b.source = c->site_checks.source;
	for (uint32_t i = 0; i < c->site_checks.count; i++)
		bind_site_check(&b, &c->site_checks.row[i], &site_check[i]);
	c->site_check = site_check;
	c->site_checks_bound = c->site_checks.count;
	c->substitution = substitution;
	c->substitutions_bound = c->substitutions.count;
	c->role = role;
	c->roles = c->required.count;
	c->paper = paper;
	c->papers = c->documents.count;
}

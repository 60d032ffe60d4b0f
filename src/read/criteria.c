/* SPDX-License-Identifier: MIT
 * One edition of criteria: criteria.yaml, its tables and its catalogues, checked whole.
 *
 * Every table is read before anything is bound, so that one run shows all faults. What refers to rows that were lost is not
 * checked: the lost row has its own message. An edition with any fault is refused.
 */
#include "builtin.h"
#include "edition.h"
#include "file.h"
#include "pipeline.h"
#include "rules.h"

#include <assert.h>
#include <string.h>

typedef struct {
	const char *file;
	const Record *record;
	size_t offset; /* of its rows in Criteria */
} TableRow;

static const TableRow tables[] = {
#define TABLE(member, R, file) [TABLE_##member] = { file, &R##_record, offsetof(Criteria, member) },
	EDITION_TABLES(TABLE) CATALOGUE_TABLES(TABLE)
#undef TABLE
};

static const struct {
	int table;
	const char *keys;
} apart[] = { { TABLE_kinds, "kind" },
	      { TABLE_lives, "item where environment" },
	      { TABLE_listings, "listing" },
	      { TABLE_listing_tests, "listing clip_spacing pressure_is" },
	      { TABLE_listing_terms, "listing attribute relation" },
	      { TABLE_substitutions, "kind attribute" },
	      { TABLE_scales, "attribute word" },
	      { TABLE_required, "role for_each" },
	      { TABLE_terms, "term cover_limit" },
	      { TABLE_rule_rows, "code" },
	      { TABLE_documents, "kind" },
	      { TABLE_details, "number place" },
	      { TABLE_lists, "list entry" },
	      { TABLE_pullouts, "item support thickness" },
	      { TABLE_also_known, "item supplier code words" },
	      { TABLE_site_checks, "code" },
	      { TABLE_not_judged, "subject" } };

const char *table_file(int table)
{
	return tables[table].file;
}

static void read_tables(EditionRead *e, Folder *folder)
{
	for (int t = 0; t < TABLE_COUNT; t++) {
		Rows *rows = &e->rows[t];
		rows->record = tables[t].record;
		folder_table(folder, tables[t].file, rows);
		Table *table = (Table *)(void *)((char *)e->criteria + tables[t].offset);
		*table = (Table){ rows->count, rows->row, rows->source };
	}
}

/* ---- criteria.yaml ---- */

static bool is_due(const Field *field, const void *row)
{
	return (field->need == NEED_REQUIRED || field->need == NEED_STATED) && given_in(field, row)->said == SAID_NOTHING;
}

static void check_keys(const Loading *loading, const Record *record, const void *row, Place place)
{
	for (uint32_t i = 0; i < record->count; i++)
		if (is_due(&record->field[i], row))
			complain(loading->complaints, MESSAGE_TAB_33, place,
				 (About){ .key = record->field[i].key, .want = record->field[i].title });
}

static void read_edition(const EditionRead *e, Folder *folder)
{
	const Loading *loading = e->loading;
	Edition *edition = &e->criteria->edition;
	bool read;
	const Source *source = folder_file(folder, "criteria.yaml", &read);
	Node *root = read ? read_yaml(loading->arena, source, loading->complaints) : NULL;
	Reading reading = { .arena = loading->arena, .reference = loading->reference, .complaints = loading->complaints };
	if (root == NULL)
		return;
	fill_record(&Edition_record, root, edition, &reading);
	check_keys(loading, &Edition_record, edition, (Place){ .line = 1, .column = 1, .source = source->id });
	for (uint32_t i = 0; i < edition->safety_factors.of.count; i++) {
		const SafetyFactor *row = &edition->safety_factors.of.row[i];
		check_keys(loading, &SafetyFactor_record, row, row->given.place);
		basis_check(loading, NULL, &row->basis);
	}
}

/* ---- the whole ---- */

static void bind_and_check(EditionRead *e)
{
	const Loading *loading = e->loading;
	Lists lists = lists_index(e);
	Binding base = { .loading = loading, .criteria = e->criteria, .lists = &lists };
	attributes_spell(e);
	items_index(e);
	for (size_t i = 0; i < sizeof apart / sizeof *apart; i++)
		rows_check_twice(loading, &e->rows[apart[i].table], apart[i].keys);
	for (int t = 0; t < TABLE_COUNT; t++)
		rows_check_basis(loading, &e->rows[t]);
	items_check(e);
	edition_check(e);
	lists_bind(e, &base);
	terms_bind(e, &base);
	base.source = e->rows[TABLE_rule_rows].source;
	rules_bind(&base, e->criteria, e->rows[TABLE_rule_rows].whole);
}

/* The built-in editions by name. */
static const char *builtin_editions(Arena *arena)
{
	const char *names = NULL;
	for (size_t i = 0; builtin_at(i) != NULL; i++) {
		const char *name = builtin_at(i)->name, *file = strstr(name, "/criteria.yaml");
		if (file == NULL)
			continue;
		int length = (int)(file - name);
		names = names == NULL ? arena_text(arena, name, (size_t)length)
				      : arena_printf(arena, "%s, %.*s", names, length, name);
	}
	return names != NULL ? names : "";
}

static bool is_known(const Folder *folder)
{
	if (!folder->builtin || builtin_find(arena_printf(folder->loading->arena, "%s/criteria.yaml", folder->name)) != NULL)
		return true;
	Complaints *complaints = folder->loading->complaints;
	const char *names = builtin_editions(folder->loading->arena);
	complain(complaints, MESSAGE_FIL_05, (Place){ 0 }, (About){ .value = folder->name, .want = names });
	complaints->broken = true;
	return false;
}

const Criteria *read_criteria(Arena *run, const char *name, const Reference *reference, Complaints *faults)
{
	Loading loading = { run, reference, faults };
	Folder folder = folder_of(&loading, name, SOURCE_FIRST_SHARED);
	uint32_t before = faults->count;
	if (!is_known(&folder))
		return NULL;
	Criteria *criteria = TAKE(run, Criteria, 1);
	EditionRead *edition = TAKE(run, EditionRead, 1);
	*edition = (EditionRead){ .loading = &loading, .criteria = criteria };
	criteria->folder = name;
	read_edition(edition, &folder);
	read_tables(edition, &folder);
	criteria->source = faults->source = folder_sources(&folder);
	criteria->sources = faults->sources = folder.sources;
	bind_and_check(edition);
	faults->broken |= faults->count > before;
	return faults->count > before ? NULL : criteria;
}

/* SPDX-License-Identifier: MIT
 * The reference tables, built in. They are read in order: the sources first, to which the others refer, then the screws, by which
 * sizes are read. A fault in them is the program's own and ends it.
 */
#include "edition.h"
#include "fail.h"
#include "pipeline.h"

static const struct {
	const char *file;
	const Record *record;
	size_t offset; /* of its rows in Reference */
} tables[] = {
#define TABLE(member, R, file) { file, &R##_record, offsetof(Reference, member) },
	REFERENCE_TABLES(TABLE)
#undef TABLE
};
enum { TABLES = sizeof tables / sizeof *tables };

/* Ends the program with the first fault. */
static void refuse(const Loading *loading, const Folder *folder)
{
	const Complaint *fault = &loading->complaints->at[0];
	const Message *message = message_of(fault->id);
	const char *file = folder->source[fault->place.source - SOURCE_FIRST_REFERENCE]->name;
	fail(arena_printf(loading->arena, "%s:%u:%u: %s: %s", file, (unsigned)fault->place.line, (unsigned)fault->place.column,
			  message->code, complaint_text(fault, message->finding, loading->arena)),
	     NULL);
}

const Reference *read_reference(Arena *run)
{
	Complaints faults = { .arena = run };
	Loading loading = { run, NULL, &faults };
	Folder folder = folder_of(&loading, "reference", SOURCE_FIRST_REFERENCE);
	Reference *reference = TAKE(run, Reference, 1);
	folder.builtin = true;
	for (int t = 0; t < TABLES; t++) {
		Rows rows = { .record = tables[t].record };
		folder_table(&folder, tables[t].file, &rows);
		*(Table *)(void *)((char *)reference + tables[t].offset) = (Table){ rows.count, rows.row, rows.source };
		loading.reference = reference;
		rows_check_basis(&loading, &rows);
		if (faults.count > 0)
			refuse(&loading, &folder);
	}
	reference->source = folder_sources(&folder);
	reference->count = folder.sources;
	return reference;
}

/* SPDX-License-Identifier: MIT
 * The registers: approvals, variances, installers and machines, from a folder or the built-in invented ones. They change by the
 * day and are no part of an edition.
 */
#include "edition.h"
#include "pipeline.h"

static const struct {
	const char *file;
	const Record *record;
	size_t offset; /* of its rows in Registers */
} tables[] = {
#define TABLE(member, R, file) { file, &R##_record, offsetof(Registers, member) },
	REGISTER_TABLES(TABLE)
#undef TABLE
};

/* What tells the rows of each register apart, in the same order. */
enum {
#define TABLE(member, R, file) REGISTER_##member,
	REGISTER_TABLES(TABLE)
#undef TABLE
		REGISTER_COUNT
};
static const char *const keys[REGISTER_COUNT] = {
	[REGISTER_approvals] = "letter item use project",
	[REGISTER_variances] = "number",
	[REGISTER_installers] = "certificate",
	[REGISTER_machines] = "machine profile",
};

/* An approval that ends before it begins would never be in force. */
static void check_dates(const Loading *loading, const Date *from, const Date *until)
{
	if (from->given.said == SAID_VALUE && until->given.said == SAID_VALUE && until->day < from->day)
		complain(loading->complaints, MESSAGE_TAB_34, until->given.place,
			 (About){ .value = until->given.typed, .want = from->given.typed });
}

const Registers *read_registers(Arena *run, const char *name, const Reference *reference, Complaints *faults)
{
	Loading loading = { run, reference, faults };
	Folder folder = folder_of(&loading, name != NULL ? name : "register", SOURCE_FIRST_REGISTER);
	Registers *registers = TAKE(run, Registers, 1);
	uint32_t before = faults->count;
	folder.builtin = name == NULL;
	registers->folder = name;
	for (int t = 0; t < REGISTER_COUNT; t++) {
		Rows rows = { .record = tables[t].record };
		folder_table(&folder, tables[t].file, &rows);
		*(Table *)(void *)((char *)registers + tables[t].offset) = (Table){ rows.count, rows.row, rows.source };
		rows_check_twice(&loading, &rows, keys[t]);
	}
	for (uint32_t i = 0; i < registers->approvals.count; i++)
		check_dates(&loading, &registers->approvals.row[i].issued, &registers->approvals.row[i].expires);
	for (uint32_t i = 0; i < registers->installers.count; i++)
		check_dates(&loading, &registers->installers.row[i].issued, &registers->installers.row[i].expires);
	registers->source = folder_sources(&folder);
	registers->count = folder.sources;
	if (faults->count == before)
		return registers;
	faults->source = registers->source;
	faults->sources = registers->count;
	faults->broken = true;
	return NULL;
}

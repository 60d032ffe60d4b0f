/* SPDX-License-Identifier: MIT
 * The examples of `why`: rows of the built-in rules/FAMILY.csv (code, case, path, value), which the tests apply to the clean
 * example. These tables are the program's own, so their reading here is short: cells, quotes, line ends.
 */
#include "why.h"

#include "builtin.h"

#include <string.h>

enum { CASE_CELLS = 4 };

typedef struct {
	const char *cell[CASE_CELLS];
} CaseRow;

/* Where a cell ends: at its closing quote, else at the comma or line end. */
static const char *cell_end(const char *from, const char *end, bool quoted)
{
	const char *c = from;
	for (; c < end; c++) {
		if (quoted && *c == '"' && (c + 1 == end || c[1] != '"'))
			break;
		if (!quoted && (*c == ',' || *c == '\n' || *c == '\r'))
			break;
		c += quoted && *c == '"';
	}
	return c;
}

/* The text of one cell, doubled quotes made single; `*at` goes behind it. */
static const char *take_cell(const char **at, const char *end, Arena *arena)
{
	bool quoted = *at < end && **at == '"';
	const char *from = *at + quoted, *stop = cell_end(from, end, quoted);
	char *text = arena_take(arena, (size_t)(stop - from) + 1, 1), *to = text;
	for (const char *c = from; c < stop; c++) {
		*to++ = *c;
		c += quoted && *c == '"';
	}
	*at = stop + (quoted && stop < end);
	return text;
}

/* The first cells of a row; further ones are passed over. */
static bool take_row(const char **at, const char *end, CaseRow *row, Arena *arena)
{
	while (*at < end && (**at == '\n' || **at == '\r'))
		(*at)++;
	if (*at >= end)
		return false;
	*row = (CaseRow){ { "", "", "", "" } };
	for (int i = 0;; i++) {
		const char *cell = take_cell(at, end, arena);
		if (i < CASE_CELLS)
			row->cell[i] = cell;
		if (*at >= end || **at != ',')
			return true;
		(*at)++;
	}
}

/* Rows of one code stand together; "LST-10a" is in rules/LST.csv. */
static const Builtin *family_file(const char *code, Arena *arena)
{
	size_t letters = strcspn(code, "-");
	return builtin_find(arena_printf(arena, "rules/%.*s.csv", (int)letters, code));
}

/* A dash takes the key away. */
static void put_value(Out *out, const char *value)
{
	if (strcmp(value, "-") == 0) {
		SAY(out, " is left out\n");
		return;
	}
	SAY(out, ": ");
	put(out, value);
	SAY(out, "\n");
}

/* Paths into the edition and the register say so; all others lead into the submittal. */
static void put_path(Out *out, const char *path)
{
	static const struct {
		const char *begin, *words;
	} roots[] = { { "criteria.", "in the maker's criteria: " }, { "register.", "in the register: " } };
	for (size_t i = 0; i < sizeof roots / sizeof *roots; i++) {
		size_t length = strlen(roots[i].begin);
		if (strncmp(path, roots[i].begin, length) != 0)
			continue;
		put(out, roots[i].words);
		path += length;
	}
	put(out, path);
}

/* Rows of one case stand together: others between them make the next a case of its own. */
bool put_rule_case(Out *out, const char *code, const char *which, Arena *arena)
{
	const Builtin *file = family_file(code, arena);
	if (file == NULL)
		return false;
	bool found = false, going_on = false;
	CaseRow row;
	const char *at = file->bytes;
	while (take_row(&at, file->end, &row, arena)) {
		bool wanted = strcmp(row.cell[0], code) == 0 && strcmp(row.cell[1], which) == 0;
		if (wanted && found && !going_on)
			SAY(out, "    or\n");
		going_on = wanted;
		if (!wanted)
			continue;
		found = true;
		SAY(out, "    ");
		put_path(out, row.cell[2]);
		put_value(out, row.cell[3]);
	}
	return found;
}

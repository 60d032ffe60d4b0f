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

static bool is_same_case(const WhyCase *last, const CaseRow *row)
{
	return last != NULL && strcmp(last->name, row->cell[1]) == 0 && last->edits < MOST_EDITS;
}

/* Rows of one code and case stand together: others between them make the next a case of its own. */
const WhyCase *why_cases(const char *code, uint32_t *count, Arena *arena)
{
	const Builtin *file = family_file(code, arena);
	WhyCase *all = NULL, *last = NULL;
	uint32_t room = 0;
	CaseRow row;
	*count = 0;
	if (file == NULL)
		return NULL;
	for (const char *at = file->bytes; take_row(&at, file->end, &row, arena);) {
		if (strcmp(row.cell[0], code) != 0) {
			last = NULL;
			continue;
		}
		if (!is_same_case(last, &row)) {
			all = arena_more(arena, all, *count, &room, sizeof *all);
			last = &all[(*count)++];
			*last = (WhyCase){ .name = row.cell[1] };
		}
		last->edit[last->edits++] = (WhyEdit){ row.cell[2], row.cell[3] };
	}
	return all;
}

/* SPDX-License-Identifier: MIT
 * The pages of `criteria`: an edition described, with what it lacks.
 */
#ifndef REPORT_EDITION_PAGE_H
#define REPORT_EDITION_PAGE_H

#include "report.h"

void write_edition_text(Out *out, const Page *page, Arena *arena);
void write_edition_json(Out *out, const Page *page, Arena *arena);

const char *gap_words(GapKind kind);
const char *turn_words(TurnKind kind);

/* How many rows each table of an edition has, in the order of its files. */
typedef struct {
	const char *file;
	uint32_t rows;
} TableCount;
uint32_t edition_tables(const Criteria *criteria, TableCount *counts);
enum { MOST_TABLES = 64 };

#endif

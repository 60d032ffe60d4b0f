/* SPDX-License-Identifier: MIT
 * What the files share that make the sheet of calculations.
 */
#ifndef COMPUTE_SHEETING_H
#define COMPUTE_SHEETING_H

#include "hash.h"
#include "sheet.h"

typedef struct {
	const Cases *cases;
	Arena *arena;
	Hash *cells; /* of constants, found once each */
	uint32_t looked; /* cells looked at so far */
} Sheeting;

/* The cell of a table that a constant was taken from; `field` NULL: no table has it, `given` NULL: more than one row may be
 * it. */
typedef struct {
	const Field *field;
	const Record *record;
	const Given *given;
} Cell;
Cell find_cell(Sheeting *sheeting, const Use *use);

/* A use with its name, unit and text. */
SheetUse told_use(Sheeting *sheeting, const Use *use);

/* Calls the uses of a fact as its template does; whether all its names are among them, as numbers. */
bool bind_uses(const char *formula, SheetUse *use, uint32_t count, Arena *arena);

#endif

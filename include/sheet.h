/* SPDX-License-Identifier: MIT
 * Sheet: every computed quantity of one submittal with all that it came from, for the sheet of calculations. Reports take it
 * const.
 */
#ifndef SHEET_H
#define SHEET_H

#include "verdict.h"

/* How the value of a use is printed. */
typedef enum { SHOWN_NUMBER, SHOWN_YES, SHOWN_DAY, SHOWN_TEXT, SHOWN_NOTHING } ShownAs;

/* One thing a fact used. */
typedef struct {
	UseKind kind;
	KnownBy known_by;
	const char *name; /* as the template calls it: "spacing", "support.thickness" */
	const char *title; /* NULL where it has none */
	const Case *at; /* of a field or fact */
	const Fact *fact; /* of a fact: what was used */
	FactId id;
	const char *table, *row, *source; /* of a constant: "lives.csv", "clip-a-float", the id of its source or NULL */
	const Given *given; /* of a field; of a constant its cell or, where that cannot be told, NULL */
	ShownAs shown;
	Unit unit;
	double value;
	const char *text; /* of SHOWN_TEXT */
} SheetUse;

/* One fact of one record. */
typedef struct {
	const Case *at;
	FactId id;
	const Fact *fact;
	const char *formula;
	bool is_expression; /* calculator notation whose names are all among `use` */
	const SheetUse *use;
	uint32_t uses;
	const SheetUse *wait; /* the fields it waits for, each once */
	uint32_t waits, more_waits; /* more_waits: beyond those named */
} SheetLine;

/* A figure that some fact used, counted once. */
typedef struct {
	const SheetUse *use;
	uint32_t facts; /* that used it */
} SheetConstant;

/* What would use up a margin: one input, how it stands, the last value at which the ratio holds and the first at which it does
 * not. */
typedef struct {
	const char *what, *path; /* "basic wind speed"; "wind.basic_speed", "criteria.safety_factors.0.factor" */
	Unit unit;
	bool is_word;
	double now, holds, lost; /* of a number */
	const char *word_now, *word_holds, *word_lost; /* of a word; NULL: none */
	bool is_lost; /* `lost` is a value at which the ratio is above 1, or `why` not known */
	double ratio; /* at `lost` */
	const char *why; /* what stands in the way at `lost` where there is no ratio: "beyond the widest test" */
} UsedUp;

enum { THINNEST = 3, MOST_MARGINS = 8, MOST_USED_UP = 8 };

typedef struct {
	const SheetLine *line;
	const SheetLine *also; /* another record that has the same one, or NULL */
	uint32_t others; /* how many records have the same one */
	bool thin; /* from 0.95 on */
	UsedUp by[MOST_USED_UP];
	uint32_t inputs;
} Margin;

typedef struct Sheet {
	const Verdict *verdict;
	const SheetLine *line; /* the submittal first, then each roof area with what belongs to it */
	uint32_t lines;
	uint32_t by_state[4]; /* known, waiting, refused, not applicable */
	const SheetConstant *constant; /* in order of first use */
	uint32_t constants, known_by[4];
	Margin margin[MOST_MARGINS]; /* the three greatest ratios that are not above 1, and the greatest of each other kind */
	uint32_t margins, ratios, above; /* ratios known; how many of them are above 1 */
	bool untried; /* the submittal is too large for what would use margins up */
} Sheet;

#endif

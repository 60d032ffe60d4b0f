/* SPDX-License-Identifier: MIT
 * Margins: what the two files share that find what would use a margin up.
 */
#ifndef ADVISE_MARGINS_H
#define ADVISE_MARGINS_H

#include "advising.h"
#include "facts.h"

typedef struct Trying Trying;

/* `set` writes a value into the copy, or into the criteria by which it is judged; of a word, its number among the field's
 * words. */
typedef struct {
	const char *what, *path;
	Unit unit;
	double step, most;
	void (*set)(const Trying *trying, Copy *copy, Criteria *criteria, double value);
} Probe;

/* One input of one margin. */
struct Trying {
	Advising *advising;
	const SheetLine *line;
	Probe probe;
	uint32_t area; /* number + 1 */
	uint32_t number; /* of the clip in its area, or of the safety factor */
	Place place; /* of the spacing that the zone is judged by */
	double base; /* the ratio as submitted */
};

/* The ratio in a copy, or why there is none. */
typedef struct {
	bool known;
	double ratio;
	const char *why;
} Tried;

Tried try_value(const Trying *trying, double value);

/* At most 1, within the tolerance that rules have. */
bool ratio_holds(const Tried *tried);

bool is_at_place(const Place *a, const Place *b);

void set_speed(const Trying *trying, Copy *copy, Criteria *criteria, double value);
void set_exposure(const Trying *trying, Copy *copy, Criteria *criteria, double value);
void set_length(const Trying *trying, Copy *copy, Criteria *criteria, double value);
void set_spacing(const Trying *trying, Copy *copy, Criteria *criteria, double value);
void set_factor(const Trying *trying, Copy *copy, Criteria *criteria, double value);

#endif

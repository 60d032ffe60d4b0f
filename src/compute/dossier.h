/* SPDX-License-Identifier: MIT
 * The papers and records of a submittal by their numbers and names, found once for all facts: no fact walks a list for each of
 * another.
 */
#ifndef DOSSIER_H
#define DOSSIER_H

#include "case.h"
#include "hash.h"

struct Timeline;

/* The inspections that name one roof area. */
typedef struct {
	Case **visit;
	uint32_t count, room;
} Visits;

typedef struct Dossier {
	Hash *paper; /* folded number to the document */
	Hash *record; /* folded number to the first photograph, inspection or document of it */
	Hash *photograph; /* what it shows and where, folded, with a NUL between; what it shows alone */
	Hash *visits; /* folded name of a roof area to Visits */
	Hash *declared; /* folded words between the points of each changed field */
	Hash *departure; /* folded paragraph to the departure */
	Hash *requirement; /* folded paragraph to the requirement */
	struct Timeline *timeline; /* timeline.c's own */
	int32_t *holiday; /* sorted */
	uint32_t holidays;
} Dossier;

Dossier *dossier_of(const Case *at);

/* The document of a number, or NULL. */
Case *paper_numbered(const Case *at, const char *number);

/* The photograph, inspection or document that a text names: its number, or words that begin with one; NULL if it names none. */
Case *record_named(const Case *at, const char *words);

/* Whether there is a photograph that shows this, at this place; `place` NULL: anywhere. */
bool is_photographed(const Case *at, const char *shot, const char *place);

/* The inspections of a roof area, or NULL. */
const Visits *visits_of(const Case *at, const char *area);

/* Whether a declared change names this. */
bool is_declared(const Case *at, const char *name);

/* Whether a departure from this paragraph is declared. */
bool is_departed(const Case *at, const char *paragraph);

/* Whether a requirement of this paragraph is listed. */
bool is_required(const Case *at, const char *paragraph);

/* Working days after `from` up to `to`, by weekends and the holidays of the edition. */
int32_t working_days(const Case *at, int32_t from, int32_t to);

/* The first day on which so many working days have passed after `from`. */
int32_t after_working_days(const Case *at, int32_t from, int32_t days);

#endif

/* SPDX-License-Identifier: MIT
 * Resolving: what the files of resolve/ share while the cases of one submittal are made, and what each of them gives.
 */
#ifndef RESOLVING_H
#define RESOLVING_H

#include "case.h"
#include "hash.h"
#include "history.h"

/* A submittal has at most so many comparisons; beyond them rules over comparisons wait. Two long lists in one file, such as ten
 * thousand requirements and ten thousand clips, would otherwise fill the memory. */
enum { MOST_COMPARISONS = 20000 };

/* A listing that the submittal names, looked up once. */
typedef struct {
	const Listing *listing;
	const BoundTerm **term; /* the listing's own terms */
	uint32_t terms, room;
	uint32_t area; /* order + 1 of the roof area that was compared with it last, and the roles in which it was */
	uint32_t roles;
} Known;

typedef struct {
	Cases *all;
	Arena *arena;
	Hash *names, *twins, *known;
	const Field *held_in[RECORD_KINDS]; /* the field of RoofArea that holds a kind of part */
	bool nameless;
	bool full; /* MOST_COMPARISONS was reached */
} Resolving;

/* ---- bind.c ---- */

/* The kind of a word of part_words, and the word of a kind of part. */
RecordKind kind_of_word(const Word *word);
Word part_word(RecordKind kind);

/* The catalogue row of a part, or NULL. */
const void *bind_part(const Criteria *criteria, RecordKind kind, const void *row);

/* ---- inherit.c ---- */

/* Values that `row` does not say, or that the form assumed, are taken from `from`; OWN fields are not. */
void take_over(const Record *record, void *row, const void *from);

/* ---- names.c ---- */

/* Sets the name and the twin of a case whose record the submittal states. */
void name_case(Resolving *r, Case *at);

/* "Main roof / field" for a record that resolve makes. */
const char *name_made(Resolving *r, const Case *up, const char *own);

/* What tells a record from others in its list: its name, else its item and where; `second` may be NULL. */
typedef struct {
	const char *first, *second;
} Mark;
Mark mark_of(const Case *at);

/* "cover board" for a kind cover_board; a key in words. */
const char *in_words(Arena *arena, const char *name);

/* ---- cases.c ---- */

/* A new case at the end of its kind, without a name. */
Case *case_add(Resolving *r, RecordKind kind, Case *up, const void *row);

/* The cases of the submittal and all that it states. */
void make_cases(Resolving *r, const Submittal *submittal);

/* Records of a kind that could not be made. */
void wait_for_list(Resolving *r, const WaitingList *list);

/* ---- tests.c ---- */

/* The listing a test names, with its terms; NULL if the criteria do not know it. */
Known *known_listing(Resolving *r, const AreaTest *test);

/* Whether listings speak of parts of a kind at all, and whether of one used like this: running clips, screws through clips,
 * sealant in the seam, underlayment of the whole roof. */
bool has_tested_parts(RecordKind kind);
bool is_tested_use(RecordKind kind, const void *row);

/* Whether two layers are said to be the same; whether they are said to be different. */
bool is_same_layer(const void *a, const void *b);
bool is_other_layer(const void *a, const void *b);

/* The tested part that stands beside a submitted one, or NULL; `*said` tells whether the listing states such parts at all. */
const void *tested_part(const Resolving *r, const Listing *listing, RecordKind kind, const void *row, Said *said);

/* Sets `listed` of tests, areas and parts. */
void bind_tests(Resolving *r);

/* ---- figure.c ---- */

/* The figure whose zones a roof area has; NULL where none covers it, and `*why` says why, or NULL where that is not known yet. */
const WindFigure *figure_of(const Resolving *r, const RoofArea *area, const char **why);

/* Whether an area is known to be too small for a zone of its figure. */
bool is_without_zone(const Resolving *r, const RoofArea *area, const WindFigure *figure, const char *zone);

/* ---- the rest ---- */

void make_zones(Resolving *r);
void make_contacts(Resolving *r);
void make_roles(Resolving *r);
void make_papers(Resolving *r);
void compare_listings(Resolving *r);
void compare_catalogue(Resolving *r);
void compare_specification(Resolving *r);

/* ---- identity.c ---- */

/* The last piece of a path: by the name of now, or by that of the round before, as number `twin` of its equals. */
const char *path_piece(Arena *arena, const Case *at, bool before, uint32_t twin);

/* The record a path goes through next, outwards. */
const Case *path_above(const Case *at);

/* ---- history.c, changes.c, asked.c, declared.c ---- */

/* The history of these cases; `before` NULL: the round before was a bid. */
void find_history(Cases *all, const Earlier *earlier, Cases *before);

/* What changed, and of each change whether an item asked for it and whether it is declared. */
void find_changes(History *history, const Cases *all);
void find_asked(History *history, Arena *arena);
void find_declared(History *history, const Cases *all);

#endif

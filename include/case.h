/* SPDX-License-Identifier: MIT
 * Case: one record that rules speak of, in the tree submittal > roof_area > zone, part, test, ... Made by resolve, const after.
 */
#ifndef CASE_H
#define CASE_H

#include "criteria.h"
#include "form.h"
#include "reference.h"
#include "registers.h"

typedef struct Case Case;
typedef struct Cases Cases;
struct Below;
struct Fact;
struct Index;
struct Use;

struct Case {
	Cases *all;
	Case *up;
	RecordKind kind;
	uint32_t order; /* in the file, for stable sorting */
	const char *name; /* "Main roof / clip-a-float": for people */
	const char *before; /* its path in the round before; NULL: no earlier report */
	uint32_t twin; /* how many records before it in the same list have the same name, or item and where */
	const void *row; /* the values in force: written, else catalogue, else assumed */
	const void *submitted; /* as written; equal to row for records without a catalogue */
	const void *catalogue; /* the catalogue row bound to it, or NULL */
	const void *listed; /* of a part: the tested part of the governing listing; of roof_area, zone, test: the Listing; or NULL */
	struct Fact *fact; /* one slot for each fact of its kind; made by compute when the first is asked for */
	struct Fact *now; /* the fact being computed */
	struct Below *below; /* compute's own, made on demand: of a roof area or a test, what belongs to it */
	Case *next, *next_of_test; /* with it: the next of its kind in the same roof area; the next comparison with the same test */
};

/* Why there are no cases of a kind: a list that was not stated is waiting, `none` is an answer. */
typedef enum { LIST_MADE, LIST_NONE, LIST_WAITING } ListState;

/* One list of records that could not be made; rules over it are not judged. */
typedef struct {
	RecordKind kind;
	const Case *up;
	const Field *field;
	const Given *given;
} WaitingList;

struct Cases {
	const Submittal *submittal;
	const Review *review; /* the reviewer's file, or NULL: a self-check */
	const Criteria *criteria;
	const Reference *reference;
	const Registers *registers;
	const struct History *history; /* NULL: no earlier report */
	const char *lacks_earlier; /* where it should be and is not; NULL: nobody looked, or there is none */
	Arena *arena;
	int32_t as_of; /* the day papers are judged at: --as-of, else received, else the submittal's date; INT32_MIN: unknown */
	struct {
		Case **at; /* in order of the file */
		uint32_t count, room;
	} of[RECORD_KINDS];
	WaitingList *waiting;
	uint32_t waitings, waiting_room;
	struct Use *use;
	uint32_t uses, use_room;
	struct Index *index; /* compute's own, made on demand */
	uint32_t made;
};

/* Rows of the records that resolve makes: the record first, then what compute needs to judge it. */
typedef struct {
	Comparison record;
	const Case *part; /* whose attribute is compared */
	const Case *test; /* with a listing: the test that names it */
	const Case *requirement; /* with the specification */
	const BoundSubstitution *may; /* how it may differ; NULL: same only */
	const BoundTerm *term; /* the listing's own word, which goes before `may` */
	const Field *field;
	const void *here, *there; /* the rows that hold the field */
} Compared;

typedef struct {
	Role record;
	const BoundRole *bound;
} RoleDue;

typedef struct {
	Paper record;
	const BoundPaper *bound;
} PaperDueHere;

/* Two metals that meet: the records they stand in, to ask them for their coatings. */
typedef struct {
	Contact record;
	const Case *part, *other;
} Met;

/* `zone` NULL: not a zone of a figure, but a key of the clips or letters; `why` says why the roof has no figure, NULL where it is
 * not known yet. */
typedef struct {
	Zone record;
	const WindFigure *figure;
	const WindZone *zone;
	const char *why;
} ZoneHere;

/* The case of a kind outwards from `at`, itself included; NULL if there is none. Edition lies outside the submittal and has no
 * case: its values are criteria->edition. */
const Case *case_outward(const Case *at, RecordKind kind);

/* How the key of a zone is called: "Ridge_End" is "ridge end", "Zone 2e" is "2e", none is "all zones". */
const char *zone_words(Arena *arena, const char *key);

/* The next of the places of a zone, joined by semicolons; NULL at the end. `*joined` moves on. */
const char *next_place(Arena *arena, const char **joined);

/* The path by names: `roof_areas[Main roof].penetrations[RTU-1]`. */
const char *case_path(const Case *at, Arena *arena);

#endif

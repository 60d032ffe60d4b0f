/* SPDX-License-Identifier: MIT
 * Earlier: a JSON report of `review` as read back, for rounds and logs. It is as untrusted as any file.
 */
#ifndef EARLIER_H
#define EARLIER_H

#include "finding.h"
#include "node.h"

/* NULL where the report has null, or not yet had the key. Texts stand as they were printed. */
typedef struct {
	const char *letter, *record, *name, *file;
	const char *path; /* of the record, by names, in that round */
	const char *field; /* "clip.item" */
	uint32_t line, column;
	ItemState state;
	uint64_t fingerprint; /* 0: none */
} EarlierPlace;

typedef struct {
	const char *number; /* "1.03"; NULL at stage bid */
	uint16_t round, item; /* 0 at stage bid */
	ItemState state; /* of the item as a whole */
	Action action;
	Authority authority;
	KnownBy known_by;
	const char *code, *record, *name, *finding, *basis, *remedy, *answer_by, *cites;
	const char *reviewer; /* his disposition: "closed: measured on site" */
	const char *note; /* why it is in its state */
	uint16_t settled; /* the round in which it was closed; 0: it is not, or it is not known */
	Side submitted, limit;
	const EarlierPlace *place;
	uint32_t places;
	const char *const *field; /* keys it asked for */
	uint32_t fields;
	Place at; /* in the report */
} EarlierItem;

typedef struct {
	const char *code, *record, *name, *waits_for;
} EarlierNotYet;

typedef struct {
	const char *path, *sha256;
} EarlierFile;

typedef struct Earlier {
	const Source *source;
	const char *sha256; /* of the report itself */
	const char *submittal; /* NULL: it had no number */
	bool is_review; /* else a self-check */
	uint16_t round; /* 0 at stage bid */
	Stage stage;
	const char *criteria, *edition, *criteria_sha256; /* NULL: there were none */
	const char *recommended_action, *order_line;
	int32_t received, returned; /* by the reviewer's file; NO_DAY: not said */
	const EarlierItem *item; /* by number */
	uint32_t items;
	const EarlierNotYet *not_judged;
	uint32_t not_judgeds;
	const EarlierFile *file;
	uint32_t files;
	EarlierFile before; /* the report before it; sha256 NULL: there was none */
	uint16_t before_round;
	Node *values; /* the submittal as typed */
} Earlier;

/* A day that is not known. */
#define NO_DAY INT32_MIN

/* read: JSON to nodes with their places. NULL if it is none: the message stands in `complaints`. */
Node *read_json(Arena *arena, const Source *source, Complaints *complaints);

/* read: a report. NULL if it is none, or was changed since it was printed: every fault is in `faults`, at its place. */
const Earlier *read_earlier(Arena *arena, const Source *source, Complaints *faults);

/* The submittal that a report was made of, as it was typed, is read from its `values` by read_submittal. */

/* base: what seals a report: the SHA-256 of its bytes up to the key of the seal. `*length` in: of the text; out: where the key
 * stands, the text's end where it has none. */
extern const char report_seal_key[];
const char *report_seal(const char *text, size_t *length, Arena *arena);

#endif

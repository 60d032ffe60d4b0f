/* SPDX-License-Identifier: MIT
 * Replies: what a contractor wrote into the reply sheet. It becomes part of his submittal, as if he had written it there.
 */
#ifndef REPLIES_H
#define REPLIES_H

#include "complaint.h"
#include "node.h"

typedef struct {
	const char *submittal; /* NULL: the sheet has no such column */
	const char *item, *reply, *paper; /* paper: NULL */
	Place item_at, reply_at, paper_at;
} ReplyRow;

typedef struct {
	const Source *source;
	const ReplyRow *row; /* only rows with a reply */
	uint32_t rows;
} ReplySheet;

/* read: the sheet; NULL if it cannot be used: `faults` has why, at its place. */
const ReplySheet *read_replies(Arena *arena, const Source *source, Complaints *faults);

/* read: puts the replies meant for a submittal behind those it has itself. How many these were. */
uint32_t add_replies(Arena *arena, Node *submittal, const ReplySheet *sheet);

#endif

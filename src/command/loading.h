/* SPDX-License-Identifier: MIT
 * Loading: what a run reads once: the reference, editions of the criteria, the registers, the reviewer's file.
 */
#ifndef COMMAND_LOADING_H
#define COMMAND_LOADING_H

#include "pipeline.h"
#include "replies.h"

/* An edition that was asked for, also a faulty one, so that its faults are printed once. */
typedef struct Shelf {
	const char *name;
	const Criteria *criteria; /* NULL: faulty, which has been said */
	const char *sha256; /* worked out when first asked for */
	struct Shelf *next;
} Shelf;

typedef struct {
	Arena *arena;
	const Reference *reference;
	const Registers *registers;
	const Review *review;
	const Source *review_source;
	const ReplySheet *replies;
	Shelf *shelf;
} Loaded;

/* Each prints its faults on standard error and gives false or NULL. */
bool load_registers(Loaded *loaded, const char *folder);
bool load_review(Loaded *loaded, const char *path);
bool load_replies(Loaded *loaded, const char *path);

/* Whether the reviewer's file may be used with a submittal; its slips are printed on standard error. */
bool accept_review(Loaded *loaded, const Verdict *verdict);

/* The edition of a name: a folder (if `may_be_folder`), else a built-in one; NULL if there is none. */
Shelf *load_criteria(Loaded *loaded, const char *name, bool may_be_folder);

/* The names of the built-in editions, joined by commas. */
const char *edition_names(Arena *arena);

/* Reads a file of YAML; what stops that is in the complaints. The source is never NULL. */
Node *load_yaml(Arena *arena, const char *path, uint16_t id, const Source **source, Complaints *complaints);

#endif

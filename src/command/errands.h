/* SPDX-License-Identifier: MIT
 * Errands: what a batch goes through, in order: the files and folders of the command line, then those of a list. Paths are found
 * as they are asked for, so that their number costs no memory.
 */
#ifndef COMMAND_ERRANDS_H
#define COMMAND_ERRANDS_H

#include "command.h"
#include "walk.h"

typedef struct Listing Listing;

typedef struct {
	const Arguments *arguments;
	Arena *arena; /* of the walk */
	ArenaMark start;
	uint32_t operand; /* the next one */
	Listing *listing; /* of --files-from; NULL: none is left */
	Walk *walk; /* of the folder that is on; NULL: none */
	const char *folder;
	size_t in_folder, listed;
} Errands;

/* A file to review, or what is wrong with a name of the command line or the list. */
typedef struct {
	const char *path, *fault; /* one of them is NULL */
} Errand;

/* False if the list cannot be opened: `*why` says so. */
bool errands_begin(Errands *errands, const Arguments *arguments, const char **why);

/* The next errand, its texts in `arena`; false at the end. */
bool errands_next(Errands *errands, Errand *errand, Arena *arena);

void errands_end(Errands *errands);

#endif

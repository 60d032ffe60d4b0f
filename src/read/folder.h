/* SPDX-License-Identifier: MIT
 * The files of an edition, a register or the reference: from a folder, or built in.
 */
#ifndef FOLDER_H
#define FOLDER_H

#include "table.h"

enum { FOLDER_FILES = 64 };

typedef struct {
	const Loading *loading;
	const char *name; /* the path, or the name of the built-in one */
	bool builtin;
	uint16_t first; /* id of its first source */
	const Source *source[FOLDER_FILES];
	uint32_t sources;
} Folder;

/* A folder by its path, if the name holds a `/` or a folder is called so, else built-in files under that name. */
Folder folder_of(const Loading *loading, const char *name, uint16_t first);

/* The file `name` of a folder as the next source; `*read` false if it cannot be had: the source is empty then, and a complaint
 * says why. */
const Source *folder_file(Folder *folder, const char *name, bool *read);

/* Reads the table of a file. */
void folder_table(Folder *folder, const char *file, Rows *rows);

/* Hands the sources on, for those who print the faults. */
const Source *const *folder_sources(const Folder *folder);

#endif

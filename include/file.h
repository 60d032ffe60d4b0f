/* SPDX-License-Identifier: MIT
 * Files: read once, only regular ones, with a limit on size; written beside and renamed.
 */
#ifndef FILE_H
#define FILE_H

#include "arena.h"

#include <stdbool.h>

typedef enum { FILE_READ, FILE_NOT_OPENED, FILE_NOT_REGULAR, FILE_TOO_LARGE } FileState;

/* The whole of a regular file of at most `limit` bytes, NUL-terminated; "-" is standard input. On FILE_NOT_OPENED `*why` is the
 * system's words. */
FileState file_read(Arena *arena, const char *path, size_t limit, const char **bytes, size_t *length, const char **why);

/* Writes a file beside `path` and renames it over when it is whole; ends the process with status 2 if that fails, the old file
 * untouched. */
typedef struct FileWriter FileWriter;
FileWriter *file_begin(Arena *arena, const char *path);
void file_add(FileWriter *writer, const char *bytes, size_t length);
void file_end(FileWriter *writer);

/* The same in one. */
void file_write(const char *path, const char *bytes, size_t length);

/* The paths of the .yaml and .yml files of a folder and its folders in byte order; `*count` of them; false if `path` cannot be
 * opened. Links are not followed. */
bool file_walk(Arena *arena, const char *path, const char *const **found, size_t *count);

bool file_is_folder(const char *path);

#endif

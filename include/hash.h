/* SPDX-License-Identifier: MIT
 * Hash: a table from texts to pointers, in an arena.
 */
#ifndef HASH_H
#define HASH_H

#include "arena.h"

typedef struct Hash Hash;

/* Room for about `expected` entries; it grows. */
Hash *hash_make(Arena *arena, size_t expected);

/* The value under a key, or NULL. */
void *hash_get(const Hash *hash, const char *key, size_t length);

/* Puts a value under a key that stays; returns what stood there before, or NULL. */
void *hash_put(Hash *hash, const char *key, size_t length, void *value);

#endif

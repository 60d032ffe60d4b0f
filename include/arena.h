/* SPDX-License-Identifier: MIT
 * Arena: memory that is released all at once.
 *
 * A pointer may point to memory that lives longer, never to memory that lives shorter; nothing is freed singly.
 * No other file of the program calls malloc. Memory is zeroed, aligned to max_align_t, and never NULL: out of memory ends
 * the program.
 */
#ifndef ARENA_H
#define ARENA_H

#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

typedef struct Arena Arena;
typedef struct {
	void *block;
	size_t used;
} ArenaMark;

Arena *arena_make(void);
void arena_free(Arena *arena);

/* `count` zeroed elements of `size` bytes; the product is checked. */
void *arena_take(Arena *arena, size_t count, size_t size);
#define TAKE(arena, Type, count) ((Type *)arena_take(arena, count, sizeof(Type)))

/* A copy of `length` bytes with a NUL behind it. */
char *arena_text(Arena *arena, const char *text, size_t length);

/* A formatted text. */
const char *arena_printf(Arena *arena, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Room for one more element behind `count` of `size` bytes at `old`: `old` itself while `*room` lasts, else a copy twice as
 * large. */
void *arena_more(Arena *arena, void *old, size_t count, uint32_t *room, size_t size);

/* Everything taken after the mark is given back by `arena_back`; large blocks return to the system. */
ArenaMark arena_mark(const Arena *arena);
void arena_back(Arena *arena, ArenaMark mark);

#endif

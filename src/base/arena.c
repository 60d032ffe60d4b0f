/* SPDX-License-Identifier: MIT
 * Arena: a list of blocks, filled one after the other. The only file that calls malloc.
 *
 * What lies behind `used` in a block is always zero: new blocks come zeroed, and winding back clears what it gives back. Blocks
 * up to 1 MiB stay for the next file, larger ones return to the system.
 */
#include "arena.h"
#include "fail.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { FIRST_BLOCK = 64 * 1024, LARGEST_KEPT = 1024 * 1024 };

typedef struct Block {
	struct Block *next;
	size_t size, used;
	_Alignas(max_align_t) char bytes[];
} Block;

struct Arena {
	Block *first, *at; /* blocks behind `at` are empty */
};

static Block *make_block(size_t size)
{
	if (size > SIZE_MAX - sizeof(Block))
		fail("out of memory", NULL);
	Block *block = calloc(1, sizeof(Block) + size);
	if (block == NULL)
		fail("out of memory", NULL);
	block->size = size;
	return block;
}

Arena *arena_make(void)
{
	Arena *arena = calloc(1, sizeof(Arena));
	if (arena == NULL)
		fail("out of memory", NULL);
	arena->first = arena->at = make_block(FIRST_BLOCK);
	return arena;
}

void arena_free(Arena *arena)
{
	if (arena == NULL)
		return;
	for (Block *block = arena->first; block != NULL;) {
		Block *next = block->next;
		free(block);
		block = next;
	}
	free(arena);
}

/* Blocks double up to the largest kept, so that a large file costs few of them. */
static size_t next_size(const Arena *arena, size_t need)
{
	size_t size = arena->at->size < LARGEST_KEPT / 2 ? arena->at->size * 2 : LARGEST_KEPT;
	return need > size ? need : size;
}

/* Moves on to a block with room for `need` bytes: the empty one that follows, else a new one put in between. */
static void move_on(Arena *arena, size_t need)
{
	Block *next = arena->at->next;
	if (next == NULL || next->size < need) {
		Block *made = make_block(next_size(arena, need));
		made->next = next;
		arena->at->next = made;
		next = made;
	}
	arena->at = next;
}

void *arena_take(Arena *arena, size_t count, size_t size)
{
	size_t bytes;
	if (__builtin_mul_overflow(count, size, &bytes) || bytes > SIZE_MAX / 2)
		fail("out of memory", NULL);
	bytes = (bytes + _Alignof(max_align_t) - 1) / _Alignof(max_align_t) * _Alignof(max_align_t);
	if (bytes > arena->at->size - arena->at->used)
		move_on(arena, bytes);
	void *taken = arena->at->bytes + arena->at->used;
	arena->at->used += bytes;
	return taken;
}

char *arena_text(Arena *arena, const char *text, size_t length)
{
	char *copy = arena_take(arena, length + 1, 1);
	if (length > 0)
		memcpy(copy, text, length);
	return copy;
}

const char *arena_printf(Arena *arena, const char *format, ...)
{
	/* Most texts are short: one pass into a buffer, a second one only for those that do not fit. */
	char brief[256];
	va_list list, again;
	va_start(list, format);
	va_copy(again, list);
	int length = vsnprintf(brief, sizeof brief, format, list);
	va_end(list);
	if (length < 0)
		fail("a text could not be formatted", NULL);
	char *text = arena_take(arena, (size_t)length + 1, 1);
	if ((size_t)length < sizeof brief)
		memcpy(text, brief, (size_t)length);
	else
		vsnprintf(text, (size_t)length + 1, format, again);
	va_end(again);
	return text;
}

void *arena_more(Arena *arena, void *old, size_t count, uint32_t *room, size_t size)
{
	if (count < *room)
		return old;
	uint32_t wider;
	if (__builtin_mul_overflow(*room, 2U, &wider))
		fail("out of memory", NULL);
	if (wider < 8)
		wider = 8;
	void *copy = arena_take(arena, wider, size);
	if (count > 0)
		memcpy(copy, old, count * size);
	*room = wider;
	return copy;
}

ArenaMark arena_mark(const Arena *arena)
{
	return (ArenaMark){ arena->at, arena->at->used };
}

void arena_back(Arena *arena, ArenaMark mark)
{
	Block *last = mark.block;
	for (Block **link = &last->next; *link != NULL && (*link)->used > 0;) {
		Block *block = *link;
		if (block->size > LARGEST_KEPT) {
			*link = block->next;
			free(block);
			continue;
		}
		memset(block->bytes, 0, block->used);
		block->used = 0;
		link = &block->next;
	}
	memset(last->bytes + mark.used, 0, last->used - mark.used);
	last->used = mark.used;
	arena->at = last;
}

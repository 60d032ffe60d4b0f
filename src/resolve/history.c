/* SPDX-License-Identifier: MIT
 * Which record of this round was which in the round before: by name, by `was`, else by item and where. Equals are told apart by
 * their order. Two records that say they were the same one are a split: both were it.
 */
#include "resolving.h"

#include <string.h>

/* Comparisons stand with their part, so nothing is found at them. */
static bool is_of_history(RecordKind kind)
{
	return kind != KIND_comparison;
}

static void put_then(History *history, Cases *before)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; is_of_history((RecordKind)kind) && i < before->of[kind].count; i++) {
			Case *at = before->of[kind].at[i];
			at->before = case_path(at, before->arena);
			hash_put(history->then, at->before, strlen(at->before), at);
		}
}

static void put_now(History *history, Case *at, Arena *arena)
{
	HeldAs *held = TAKE(arena, HeldAs, 1);
	held->at = at;
	HeldAs *first = hash_get(history->now, at->before, strlen(at->before));
	if (first == NULL) {
		hash_put(history->now, at->before, strlen(at->before), held);
		return;
	}
	held->next = first->next;
	first->next = held;
}

/* The path of a record whose outer one has its path already. Where it is taken and the round before had one more of that name, it
 * is that one. */
static void set_path(const History *history, Case *at, Arena *arena)
{
	const Case *up = path_above(at);
	bool is_outermost = up == NULL || up->up == NULL;
	for (uint32_t twin = at->twin;; twin++) {
		const char *piece = path_piece(arena, at, true, twin);
		const char *path = is_outermost ? piece : arena_printf(arena, "%s.%s", up->before, piece);
		bool is_next = at->before != NULL && hash_get(history->then, path, strlen(path)) == NULL;
		if (is_next)
			return; /* no further equal: it shares the path */
		at->before = path;
		if (hash_get(history->now, path, strlen(path)) == NULL || twin > at->twin + 1)
			return;
	}
}

static void set_paths(History *history, Cases *all)
{
	for (uint32_t level = 0; level < 5; level++)
		for (int kind = 0; kind < RECORD_KINDS; kind++)
			for (uint32_t i = 0; is_of_history((RecordKind)kind) && i < all->of[kind].count; i++) {
				Case *at = all->of[kind].at[i];
				uint32_t depth = 0;
				for (const Case *up = at->up; up != NULL; up = up->up)
					depth++;
				if (depth != level)
					continue;
				if (level == 0)
					at->before = case_path(at, all->arena);
				else
					set_path(history, at, all->arena);
				put_now(history, at, all->arena);
			}
}

void find_history(Cases *all, const Earlier *earlier, Cases *before)
{
	History *history = TAKE(all->arena, History, 1);
	history->earlier = earlier;
	history->before = before;
	all->history = history;
	if (before == NULL)
		return;
	history->then = hash_make(all->arena, before->made);
	history->now = hash_make(all->arena, all->made);
	put_then(history, before);
	set_paths(history, all);
	find_changes(history, all);
	find_asked(history, all->arena);
	find_declared(history, all);
}

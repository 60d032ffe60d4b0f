/* SPDX-License-Identifier: MIT
 * Reads a list of paths through a window, so that a list of any length, or one still being written, can be read.
 */
#include "listing.h"

#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <string.h>
#include <unistd.h>

enum { WINDOW = 64 * 1024 };

struct Listing {
	int from;
	size_t at, used;
	bool ended, failed, told; /* told: the separator is known */
	char separator;
	char bytes[WINDOW];
};

Listing *listing_open(Arena *arena, const char *path)
{
	int from = strcmp(path, "-") == 0 ? STDIN_FILENO : open(path, O_RDONLY | O_CLOEXEC | O_NOCTTY);
	if (from < 0)
		return NULL;
	Listing *listing = TAKE(arena, Listing, 1);
	listing->from = from;
	listing->separator = '\n';
	return listing;
}

/* Moves what is left to the front and reads on behind it. */
static void read_on(Listing *listing)
{
	memmove(listing->bytes, listing->bytes + listing->at, listing->used - listing->at);
	listing->used -= listing->at;
	listing->at = 0;
	ssize_t got;
	do
		got = read(listing->from, listing->bytes + listing->used, WINDOW - listing->used);
	while (got < 0 && errno == EINTR);
	listing->failed |= got < 0;
	listing->ended = got <= 0;
	if (got > 0)
		listing->used += (size_t)got;
	/* A zero byte stands in no path: where one is, it divides. */
	if (!listing->told && listing->used > 0) {
		listing->separator = memchr(listing->bytes, '\0', listing->used) != NULL ? '\0' : '\n';
		listing->told = memchr(listing->bytes, listing->separator, listing->used) != NULL;
	}
}

/* The end of the path at hand; NULL: it is longer than any path may be. */
static const char *find_end(Listing *listing)
{
	for (;;) {
		const char *start = listing->bytes + listing->at;
		size_t length = listing->used - listing->at;
		const char *end = memchr(start, listing->separator, length);
		if (end != NULL || listing->ended)
			return end != NULL ? end : start + length;
		if (length >= PATH_MAX)
			return NULL;
		read_on(listing);
	}
}

static void skip_path(Listing *listing)
{
	const char *end;
	while ((end = find_end(listing)) == NULL)
		listing->at = listing->used;
	listing->at = (size_t)(end - listing->bytes);
}

const char *listing_next(Listing *listing, Arena *arena, bool *too_long)
{
	*too_long = false;
	for (;;) {
		if (listing->at == listing->used && !listing->ended)
			read_on(listing);
		if (listing->at == listing->used)
			return NULL;
		const char *end = find_end(listing), *start = listing->bytes + listing->at;
		size_t length = end != NULL ? (size_t)(end - start) : PATH_MAX;
		if (end == NULL)
			skip_path(listing);
		else
			listing->at += length;
		listing->at += listing->at < listing->used; /* the separator */
		*too_long = length >= PATH_MAX;
		if (*too_long)
			return NULL;
		if (length > 0 && listing->separator == '\n' && start[length - 1] == '\r')
			length--;
		if (length > 0)
			return arena_text(arena, start, length);
	}
}

bool listing_failed(const Listing *listing)
{
	return listing->failed;
}

void listing_close(Listing *listing)
{
	if (listing != NULL && listing->from != STDIN_FILENO)
		close(listing->from);
}

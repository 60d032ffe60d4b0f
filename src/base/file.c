/* SPDX-License-Identifier: MIT
 * Reading files: opened once, asked what they are through that opening, read up to a limit.
 */
#include "file.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { FIRST_ROOM = 64 * 1024 };

static const char *system_words(Arena *arena)
{
	char buffer[128];
	const char *words = strerror_r(errno, buffer, sizeof buffer);
	return arena_text(arena, words, strlen(words));
}

static ssize_t read_some(int from, char *bytes, size_t room)
{
	ssize_t got;
	do
		got = read(from, bytes, room);
	while (got < 0 && errno == EINTR);
	return got;
}

/* Reads to the end. The size that fstat told is only a first guess: the file may grow, and a pipe has none. */
static FileState read_all(Arena *arena, int from, size_t guess, size_t limit, const char **bytes, size_t *length)
{
	size_t room = guess < limit ? guess + 1 : limit + 1, used = 0;
	char *buffer = arena_take(arena, room + 1, 1);
	for (;;) {
		ssize_t got = read_some(from, buffer + used, room - used);
		if (got < 0)
			return FILE_NOT_OPENED;
		used += (size_t)got;
		if (got == 0)
			break;
		if (used > limit)
			return FILE_TOO_LARGE;
		if (used < room)
			continue;
		room = room < limit / 2 ? room * 2 : limit + 1;
		char *wider = arena_take(arena, room + 1, 1);
		memcpy(wider, buffer, used);
		buffer = wider;
	}
	buffer[used] = '\0';
	*bytes = buffer;
	*length = used;
	return FILE_READ;
}

FileState file_read(Arena *arena, const char *path, size_t limit, const char **bytes, size_t *length, const char **why)
{
	bool is_input = strcmp(path, "-") == 0;
	int from = is_input ? STDIN_FILENO : open(path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
	struct stat what;
	FileState state = FILE_NOT_OPENED;
	*why = NULL;
	if (from >= 0 && fstat(from, &what) == 0) {
		if (is_input)
			state = read_all(arena, from, FIRST_ROOM, limit, bytes, length);
		else if (!S_ISREG(what.st_mode))
			state = FILE_NOT_REGULAR;
		else if ((uintmax_t)what.st_size > limit)
			state = FILE_TOO_LARGE;
		else
			state = read_all(arena, from, (size_t)what.st_size, limit, bytes, length);
	}
	if (state == FILE_NOT_OPENED)
		*why = system_words(arena);
	if (from >= 0 && !is_input)
		close(from);
	return state;
}

bool file_is_folder(const char *path)
{
	struct stat what;
	return stat(path, &what) == 0 && S_ISDIR(what.st_mode);
}

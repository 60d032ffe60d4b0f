/* SPDX-License-Identifier: MIT
 * Reading files: opened once, asked what they are through that opening, read up to a limit. Walking folders: one at a time, links
 * left aside.
 */
#include "file.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
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

/* ---- folders ---- */

typedef struct {
	Arena *arena;
	const char **found, **folder; /* folders not yet read */
	size_t count, folders;
	uint32_t room, folder_room;
} Walk;

static void add_path(Walk *walk, const char ***list, size_t *count, uint32_t *room, const char *path)
{
	*list = arena_more(walk->arena, (void *)*list, *count, room, sizeof **list);
	(*list)[(*count)++] = path;
}

static bool is_yaml(const char *name)
{
	const char *end = strrchr(name, '.');
	return end != NULL && (strcasecmp(end, ".yaml") == 0 || strcasecmp(end, ".yml") == 0);
}

/* Some file systems do not say in the folder what an entry is. */
static unsigned char kind_of(int folder, const struct dirent *entry)
{
	struct stat what;
	if (entry->d_type != DT_UNKNOWN)
		return entry->d_type;
	if (fstatat(folder, entry->d_name, &what, AT_SYMLINK_NOFOLLOW) != 0)
		return DT_UNKNOWN;
	return S_ISDIR(what.st_mode) ? DT_DIR : S_ISREG(what.st_mode) ? DT_REG : DT_UNKNOWN;
}

static bool read_folder(Walk *walk, const char *path, int how)
{
	int opened = open(path, O_RDONLY | O_DIRECTORY | O_CLOEXEC | how);
	DIR *folder = opened >= 0 ? fdopendir(opened) : NULL;
	if (folder == NULL) {
		if (opened >= 0)
			close(opened);
		return false;
	}
	const char *between = path[strlen(path) - 1] == '/' ? "" : "/";
	for (struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder)) {
		unsigned char kind = kind_of(opened, entry);
		bool is_folder = kind == DT_DIR;
		if (*entry->d_name == '.' || (!is_folder && (kind != DT_REG || !is_yaml(entry->d_name))))
			continue;
		const char *name = arena_printf(walk->arena, "%s%s%s", path, between, entry->d_name);
		if (is_folder)
			add_path(walk, &walk->folder, &walk->folders, &walk->folder_room, name);
		else
			add_path(walk, &walk->found, &walk->count, &walk->room, name);
	}
	closedir(folder);
	return true;
}

static int by_bytes(const void *a, const void *b)
{
	return strcmp(*(const char *const *)a, *(const char *const *)b);
}

bool file_walk(Arena *arena, const char *path, const char *const **found, size_t *count)
{
	Walk walk = { .arena = arena };
	if (*path == '\0' || !read_folder(&walk, path, 0))
		return false;
	while (walk.folders > 0) {
		const char *next = walk.folder[--walk.folders];
		/* A folder that cannot be opened is listed, so that reading it says so. */
		if (!read_folder(&walk, next, O_NOFOLLOW))
			add_path(&walk, &walk.found, &walk.count, &walk.room, next);
	}
	if (walk.count > 0)
		qsort((void *)walk.found, walk.count, sizeof *walk.found, by_bytes);
	*found = walk.found;
	*count = walk.count;
	return true;
}

/* SPDX-License-Identifier: MIT
 * Walking a folder: the names of one folder at a time, sorted, a folder among them walked where it stands.
 */
#include "walk.h"
#include "file.h"

#include <dirent.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/stat.h>
#include <unistd.h>

/* A folder on the way; all it holds lies behind `mark`. */
typedef struct Level {
	const char *path, **name; /* a folder's name ends in / */
	size_t count, next;
	uint32_t room;
	ArenaMark mark;
	struct Level *outer;
} Level;

struct Walk {
	Arena *arena;
	const char *const *endings;
	Level *level;
	ArenaMark file; /* the path given last lies behind it */
	bool given;
};

const char *const walk_submittals[] = { ".yaml", ".yml", NULL }, *const walk_reports[] = { ".json", ".ndjson", NULL };

bool walk_wants(const char *const *endings, const char *name)
{
	const char *end = strrchr(name, '.');
	for (size_t i = 0; end != NULL && endings[i] != NULL; i++)
		if (strcasecmp(end, endings[i]) == 0)
			return true;
	return false;
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

static int by_bytes(const void *a, const void *b)
{
	return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static void add_name(Walk *walk, Level *level, const char *name, bool is_folder)
{
	level->name = arena_more(walk->arena, (void *)level->name, level->count, &level->room, sizeof *level->name);
	level->name[level->count++] = arena_printf(walk->arena, "%s%s", name, is_folder ? "/" : "");
}

/* Goes into a folder; false if it cannot be opened. A name with / behind it sorts as its paths do. */
static bool enter(Walk *walk, const char *path, int how)
{
	int opened = open(path, O_RDONLY | O_DIRECTORY | O_CLOEXEC | how);
	DIR *folder = opened >= 0 ? fdopendir(opened) : NULL;
	if (folder == NULL) {
		if (opened >= 0)
			close(opened);
		return false;
	}
	Level *level = TAKE(walk->arena, Level, 1);
	*level = (Level){ .path = arena_text(walk->arena, path, strlen(path)), .mark = walk->file, .outer = walk->level };
	for (struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder)) {
		unsigned char kind = kind_of(opened, entry);
		if (*entry->d_name != '.' && (kind == DT_DIR || (kind == DT_REG && walk_wants(walk->endings, entry->d_name))))
			add_name(walk, level, entry->d_name, kind == DT_DIR);
	}
	closedir(folder);
	if (level->count > 0)
		qsort((void *)level->name, level->count, sizeof *level->name, by_bytes);
	walk->level = level;
	return true;
}

Walk *walk_begin(Arena *arena, const char *folder, const char *const *endings)
{
	Walk *walk = TAKE(arena, Walk, 1);
	walk->arena = arena;
	walk->endings = endings;
	walk->file = arena_mark(arena);
	return *folder != '\0' && enter(walk, folder, 0) ? walk : NULL;
}

/* The next name of the innermost folder as a path; leaves folders that are through. */
static const char *next_path(Walk *walk)
{
	while (walk->level != NULL && walk->level->next == walk->level->count) {
		ArenaMark mark = walk->level->mark;
		walk->level = walk->level->outer;
		arena_back(walk->arena, mark);
	}
	if (walk->level == NULL)
		return NULL;
	const char *folder = walk->level->path, *between = folder[strlen(folder) - 1] == '/' ? "" : "/";
	walk->file = arena_mark(walk->arena);
	return arena_printf(walk->arena, "%s%s%s", folder, between, walk->level->name[walk->level->next++]);
}

const char *walk_next(Walk *walk)
{
	if (walk->given)
		arena_back(walk->arena, walk->file);
	for (;;) {
		const char *path = next_path(walk);
		walk->given = path != NULL;
		if (path == NULL || path[strlen(path) - 1] != '/')
			return path;
		if (enter(walk, path, O_NOFOLLOW))
			continue;
		return arena_text(walk->arena, path, strlen(path) - 1);
	}
}

bool file_walk(Arena *arena, const char *path, const char *const **found, size_t *count)
{
	Arena *own = arena_make();
	const char **list = NULL;
	uint32_t room = 0;
	Walk *walk = walk_begin(own, path, walk_submittals);
	*count = 0;
	for (const char *next = walk != NULL ? walk_next(walk) : NULL; next != NULL; next = walk_next(walk)) {
		list = arena_more(arena, (void *)list, *count, &room, sizeof *list);
		list[(*count)++] = arena_text(arena, next, strlen(next));
	}
	*found = list;
	arena_free(own);
	return walk != NULL;
}

/* SPDX-License-Identifier: MIT
 * Writing a file whole or not at all: it has no name while it is written, then one beside its target, then the target's. A killed
 * run leaves the old file and nothing beside it. Devices and pipes have nothing to replace and are written into.
 */
#include "fail.h"
#include "file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { MOST_TRIES = 100 };

struct FileWriter {
	const char *path; /* the target, for messages */
	char folder[4096], beside[4352];
	mode_t mode;
	bool exists;
	int to;
	bool is_beside, is_into; /* has a name already; is written into as it is */
};

static _Noreturn void fail_writing(const FileWriter *target)
{
	char what[256], buffer[128];
	snprintf(what, sizeof what, "cannot write (%s)", strerror_r(errno, buffer, sizeof buffer));
	if (target->is_beside)
		unlink(target->beside);
	fail(what, target->path);
}

static void name_beside(FileWriter *target, int try)
{
	snprintf(target->beside, sizeof target->beside, "%s/.seamstamp-%ld-%d", target->folder, (long)getpid(), try);
}

/* Without a name; where the system cannot do that or could not give it one later, under a name of its own. */
static void open_beside(FileWriter *target)
{
	target->to = access("/proc/self/fd", F_OK) == 0 ? open(target->folder, O_TMPFILE | O_WRONLY | O_CLOEXEC, 0666) : -1;
	for (int try = 0; target->to < 0 && try < MOST_TRIES; try++) {
		name_beside(target, try);
		target->to = open(target->beside, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666);
		target->is_beside = target->to >= 0;
		if (target->to < 0 && errno != EEXIST)
			break;
	}
	if (target->to < 0)
		fail_writing(target);
}

static void open_into(FileWriter *target)
{
	target->to = open(target->path, O_WRONLY | O_CLOEXEC | O_NOCTTY);
	target->is_into = true;
	if (target->to < 0)
		fail_writing(target);
}

/* Gives what had no name one beside the target. */
static void link_beside(FileWriter *target)
{
	char own[64];
	snprintf(own, sizeof own, "/proc/self/fd/%d", target->to);
	for (int try = 0; !target->is_beside && try < MOST_TRIES; try++) {
		name_beside(target, try);
		target->is_beside = linkat(AT_FDCWD, own, AT_FDCWD, target->beside, AT_SYMLINK_FOLLOW) == 0;
		if (!target->is_beside && errno != EEXIST)
			break;
	}
	if (!target->is_beside)
		fail_writing(target);
}

static void find_folder(FileWriter *target)
{
	const char *end = strrchr(target->path, '/');
	size_t length = end == NULL ? 1 : end == target->path ? 1 : (size_t)(end - target->path);
	if (length >= sizeof target->folder)
		fail("the path is too long", target->path);
	memcpy(target->folder, end == NULL ? "." : target->path, length);
}

FileWriter *file_begin(Arena *arena, const char *path)
{
	FileWriter *target = TAKE(arena, FileWriter, 1);
	struct stat what, behind;
	target->path = path;
	if (lstat(path, &what) == 0) {
		bool is_link = S_ISLNK(what.st_mode);
		if (is_link && (stat(path, &behind) != 0 || S_ISREG(behind.st_mode)))
			fail("the output is a link; name the file itself", path);
		target->mode = is_link ? behind.st_mode : what.st_mode;
		if (S_ISDIR(target->mode))
			fail("the output is a folder", path);
		if (!S_ISREG(target->mode)) {
			open_into(target);
			return target;
		}
		target->exists = true;
	}
	find_folder(target);
	open_beside(target);
	return target;
}

void file_add(FileWriter *target, const char *bytes, size_t length)
{
	while (length > 0) {
		ssize_t n = write(target->to, bytes, length);
		if (n < 0 && errno == EINTR)
			continue;
		if (n < 0)
			fail_writing(target);
		bytes += n;
		length -= (size_t)n;
	}
}

/* What a file that is replaced was allowed stays so. */
void file_end(FileWriter *target)
{
	if (!target->is_into) {
		if ((target->exists && fchmod(target->to, target->mode & 0777) != 0) || fsync(target->to) != 0)
			fail_writing(target);
		link_beside(target);
	}
	if (close(target->to) != 0 || (!target->is_into && rename(target->beside, target->path) != 0))
		fail_writing(target);
}

void file_write(const char *path, const char *bytes, size_t length)
{
	Arena *arena = arena_make();
	FileWriter *target = file_begin(arena, path);
	file_add(target, bytes, length);
	file_end(target);
	arena_free(arena);
}

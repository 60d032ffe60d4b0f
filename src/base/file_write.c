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

typedef struct {
	const char *path; /* the target, for messages */
	char folder[4096], beside[4352];
	mode_t mode;
	bool exists;
} Target;

static _Noreturn void fail_writing(const Target *target, bool is_beside)
{
	char what[256], buffer[128];
	snprintf(what, sizeof what, "cannot write (%s)", strerror_r(errno, buffer, sizeof buffer));
	if (is_beside)
		unlink(target->beside);
	fail(what, target->path);
}

static void write_all(int to, const char *bytes, size_t length, const Target *target, bool is_beside)
{
	while (length > 0) {
		ssize_t n = write(to, bytes, length);
		if (n < 0 && errno == EINTR)
			continue;
		if (n < 0)
			fail_writing(target, is_beside);
		bytes += n;
		length -= (size_t)n;
	}
}

/* What a file that is replaced was allowed stays so. */
static void finish(int to, const Target *target, bool is_beside)
{
	if ((target->exists && fchmod(to, target->mode & 0777) != 0) || fsync(to) != 0)
		fail_writing(target, is_beside);
}

static void name_beside(Target *target, int try)
{
	snprintf(target->beside, sizeof target->beside, "%s/.seamstamp-%ld-%d", target->folder, (long)getpid(), try);
}

/* Writes without a name; false where the file system cannot do that. */
static bool write_unnamed(Target *target, const char *bytes, size_t length)
{
	int to = open(target->folder, O_TMPFILE | O_WRONLY | O_CLOEXEC, 0666);
	if (to < 0)
		return false;
	write_all(to, bytes, length, target, false);
	finish(to, target, false);
	char own[64];
	snprintf(own, sizeof own, "/proc/self/fd/%d", to);
	int linked = -1;
	for (int try = 0; linked != 0 && try < MOST_TRIES; try++) {
		name_beside(target, try);
		linked = linkat(AT_FDCWD, own, AT_FDCWD, target->beside, AT_SYMLINK_FOLLOW);
		if (linked != 0 && errno != EEXIST)
			break;
	}
	close(to);
	return linked == 0;
}

static void write_named(Target *target, const char *bytes, size_t length)
{
	int to = -1;
	for (int try = 0; to < 0 && try < MOST_TRIES; try++) {
		name_beside(target, try);
		to = open(target->beside, O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, 0666);
		if (to < 0 && errno != EEXIST)
			break;
	}
	if (to < 0)
		fail_writing(target, false);
	write_all(to, bytes, length, target, true);
	finish(to, target, true);
	if (close(to) != 0)
		fail_writing(target, true);
}

static void write_into(const Target *target, const char *bytes, size_t length)
{
	int to = open(target->path, O_WRONLY | O_CLOEXEC | O_NOCTTY);
	if (to < 0)
		fail_writing(target, false);
	write_all(to, bytes, length, target, false);
	if (close(to) != 0)
		fail_writing(target, false);
}

static void find_folder(Target *target)
{
	const char *end = strrchr(target->path, '/');
	size_t length = end == NULL ? 1 : end == target->path ? 1 : (size_t)(end - target->path);
	if (length >= sizeof target->folder)
		fail("the path is too long", target->path);
	memcpy(target->folder, end == NULL ? "." : target->path, length);
}

void file_write(const char *path, const char *bytes, size_t length)
{
	Target target = { .path = path };
	struct stat what, behind;
	if (lstat(path, &what) == 0) {
		bool is_link = S_ISLNK(what.st_mode);
		if (is_link && (stat(path, &behind) != 0 || S_ISREG(behind.st_mode)))
			fail("the output is a link; name the file itself", path);
		mode_t kind = is_link ? behind.st_mode : what.st_mode;
		if (S_ISDIR(kind))
			fail("the output is a folder", path);
		if (!S_ISREG(kind)) {
			write_into(&target, bytes, length);
			return;
		}
		target.mode = kind;
		target.exists = true;
	}
	find_folder(&target);
	if (!write_unnamed(&target, bytes, length))
		write_named(&target, bytes, length);
	if (rename(target.beside, path) != 0)
		fail_writing(&target, true);
}

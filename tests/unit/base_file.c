/* SPDX-License-Identifier: MIT
 * Files: what is opened and what is not, limits, walking, writing whole or not at all, the built-in ones.
 */
#include "check.h"

#include "builtin.h"
#include "file.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

typedef struct {
	Arena *arena;
	char folder[64];
} Here;

static int set_up(void **state)
{
	Here *place = calloc(1, sizeof *place);
	place->arena = arena_make();
	snprintf(place->folder, sizeof place->folder, "/tmp/seamstamp-test-XXXXXX");
	*state = place;
	return mkdtemp(place->folder) == NULL;
}

static int tear_down(void **state)
{
	Here *place = *state;
	char command[128];
	snprintf(command, sizeof command, "rm -rf '%s'", place->folder);
	int failed = system(command);
	arena_free(place->arena);
	free(place);
	return failed;
}

static const char *in(Here *place, const char *name)
{
	return arena_printf(place->arena, "%s/%s", place->folder, name);
}

static FileState state_of(Here *place, const char *path, size_t limit)
{
	const char *bytes, *why;
	size_t length;
	return file_read(place->arena, path, limit, &bytes, &length, &why);
}

static void what_is_written_is_read(void **state)
{
	Here *place = *state;
	const char *path = in(place, "a.yaml"), *bytes, *why;
	size_t length;
	file_write(path, "one\0two", 7);
	assert_int_equal(file_read(place->arena, path, 100, &bytes, &length, &why), FILE_READ);
	assert_int_equal(length, 7);
	assert_memory_equal(bytes, "one\0two", 8);
	file_write(path, "", 0);
	assert_int_equal(file_read(place->arena, path, 100, &bytes, &length, &why), FILE_READ);
	assert_int_equal(length, 0);
	assert_string_equal(bytes, "");
}

static void limits_hold(void **state)
{
	Here *place = *state;
	const char *path = in(place, "a.yaml");
	file_write(path, "0123456789", 10);
	assert_int_equal(state_of(place, path, 10), FILE_READ);
	assert_int_equal(state_of(place, path, 9), FILE_TOO_LARGE);
}

static void only_regular_files_are_read(void **state)
{
	Here *place = *state;
	const char *pipe_path = in(place, "pipe.yaml"), *bytes, *why;
	size_t length;
	assert_int_equal(mkfifo(pipe_path, 0600), 0);
	assert_int_equal(state_of(place, pipe_path, 100), FILE_NOT_REGULAR); /* and does not hang */
	assert_int_equal(state_of(place, place->folder, 100), FILE_NOT_REGULAR);
	assert_int_equal(state_of(place, "/dev/zero", 100), FILE_NOT_REGULAR);
	assert_int_equal(file_read(place->arena, in(place, "none.yaml"), 100, &bytes, &length, &why), FILE_NOT_OPENED);
	assert_string_equal(why, "No such file or directory");
}

/* Standard input is a pipe here: it has no size to ask for. */
static void standard_input_is_counted_while_it_is_read(void **state)
{
	Here *place = *state;
	int ends[2], before = dup(STDIN_FILENO);
	assert_int_equal(pipe(ends), 0);
	pid_t child = fork();
	assert_true(child >= 0);
	if (child == 0) {
		close(ends[0]);
		for (int i = 0; i < 30000; i++)
			if (write(ends[1], "0123456789", 10) != 10)
				_exit(1);
		_exit(0);
	}
	close(ends[1]);
	dup2(ends[0], STDIN_FILENO);
	close(ends[0]);
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(place->arena, "-", 300000, &bytes, &length, &why), FILE_READ);
	assert_int_equal(length, 300000);
	assert_memory_equal(bytes + 299990, "0123456789", 11);
	int status;
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_int_equal(status, 0);
	dup2(before, STDIN_FILENO);
	close(before);
}

static void writing_replaces_and_leaves_nothing_beside(void **state)
{
	Here *place = *state;
	const char *path = in(place, "report.txt");
	struct stat what;
	file_write(path, "old", 3);
	assert_int_equal(chmod(path, 0640), 0);
	file_write(path, "new", 3);
	assert_int_equal(stat(path, &what), 0);
	assert_int_equal(what.st_mode & 0777, 0640);
	assert_int_equal(what.st_size, 3);
	DIR *folder = opendir(place->folder);
	int entries = 0;
	while (readdir(folder) != NULL)
		entries++;
	closedir(folder);
	assert_int_equal(entries, 3); /* . and .. and the report */
	file_write("/dev/null", "x", 1); /* a device is written into, not replaced */
	assert_int_equal(stat("/dev/null", &what), 0);
	assert_true(S_ISCHR(what.st_mode));
}

/* In a child, as it ends the process. */
static int status_of_writing(const char *path)
{
	pid_t child = fork();
	if (child == 0) {
		if (freopen("/dev/null", "w", stderr) == NULL)
			_exit(9);
		file_write(path, "new", 3);
		_exit(0);
	}
	int status;
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_true(WIFEXITED(status));
	return WEXITSTATUS(status);
}

static void writing_that_cannot_be_done_ends_with_status_2(void **state)
{
	Here *place = *state;
	const char *kept = in(place, "kept.txt"), *bytes, *why;
	size_t length;
	file_write(kept, "kept", 4);
	assert_int_equal(symlink(kept, in(place, "link.txt")), 0);
	assert_int_equal(status_of_writing(in(place, "link.txt")), 2);
	assert_int_equal(status_of_writing(place->folder), 2);
	assert_int_equal(status_of_writing(in(place, "none/report.txt")), 2);
	assert_int_equal(status_of_writing("/dev/full"), 2);
	assert_int_equal(status_of_writing(in(place, "fine.txt")), 0);
	assert_int_equal(file_read(place->arena, kept, 10, &bytes, &length, &why), FILE_READ);
	assert_string_equal(bytes, "kept");
}

static void folders_are_walked_in_byte_order(void **state)
{
	Here *place = *state;
	static const char *const folder[] = { "b", "a", "a/deep", ".hidden", "empty.yaml" };
	static const char *const file[] = { "z.yaml", "b/2.yml", "b/10.yaml", "a/x.YAML", "a/deep/y.yaml", "a/notes.txt", "B.yaml",
		".hidden/no.yaml", "yaml" };
	for (size_t i = 0; i < sizeof folder / sizeof *folder; i++)
		assert_int_equal(mkdir(in(place, folder[i]), 0700), 0);
	for (size_t i = 0; i < sizeof file / sizeof *file; i++)
		file_write(in(place, file[i]), "x", 1);
	assert_int_equal(symlink(in(place, "z.yaml"), in(place, "link.yaml")), 0);
	assert_int_equal(symlink(place->folder, in(place, "a/loop")), 0);
	static const char *const wanted[] = { "B.yaml", "a/deep/y.yaml", "a/x.YAML", "b/10.yaml", "b/2.yml", "z.yaml" };
	const char *const *found;
	size_t count;
	assert_true(file_walk(place->arena, place->folder, &found, &count));
	assert_int_equal(count, 6);
	for (size_t i = 0; i < count; i++)
		assert_string_equal(found[i], in(place, wanted[i]));
	assert_true(file_walk(place->arena, in(place, "b/"), &found, &count));
	assert_string_equal(found[0], in(place, "b/10.yaml"));
	assert_false(file_walk(place->arena, in(place, "none"), &found, &count));
	assert_false(file_walk(place->arena, in(place, "z.yaml"), &found, &count));
	assert_true(file_walk(place->arena, in(place, "empty.yaml"), &found, &count));
	assert_int_equal(count, 0);
	assert_true(file_is_folder(place->folder));
	assert_false(file_is_folder(in(place, "z.yaml")));
}

static void built_in_files_are_the_files(void **state)
{
	Here *place = *state;
	assert_null(builtin_find("none.csv"));
	const Builtin *screws = builtin_find("reference/screws.csv");
	assert_non_null(screws);
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(place->arena, "data/reference/screws.csv", 1 << 20, &bytes, &length, &why), FILE_READ);
	assert_int_equal(screws->end - screws->bytes, length);
	assert_memory_equal(screws->bytes, bytes, length + 1);
	size_t count = 0;
	for (const Builtin *file = builtin_at(0); file != NULL; file = builtin_at(count)) {
		assert_ptr_equal(builtin_find(file->name), file);
		assert_true(file->end > file->bytes);
		assert_int_equal(*file->end, '\0');
		count++;
	}
	assert_true(count > 20);
}

int main(void)
{
#define TEST(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)
	const struct CMUnitTest tests[] = {
		TEST(what_is_written_is_read),
		TEST(limits_hold),
		TEST(only_regular_files_are_read),
		TEST(standard_input_is_counted_while_it_is_read),
		TEST(writing_replaces_and_leaves_nothing_beside),
		TEST(writing_that_cannot_be_done_ends_with_status_2),
		TEST(folders_are_walked_in_byte_order),
		TEST(built_in_files_are_the_files),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}

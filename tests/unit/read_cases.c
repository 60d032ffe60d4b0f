/* SPDX-License-Identifier: MIT
 * tests/cases/read: one folder a mistake, with the file and what its writer is to read, typed by hand. Every message of the
 * readers must stand in one of them.
 *
 * submittal.yaml is read as a submittal, review.yaml as the reviewer's file. generated.txt makes a file that is too long to keep:
 * each line `x<times> <text>`, \n for a line break.
 */
#include "check.h"
#include "file.h"
#include "out.h"
#include "pipeline.h"
#include "small_reference.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>

static const char folder[] = "tests/cases/read";
enum { LIMIT = 8 << 20 };

static const char *read_all(Arena *arena, const char *path, size_t *length)
{
	const char *bytes = NULL, *why = NULL;
	return file_read(arena, path, LIMIT, &bytes, length, &why) == FILE_READ ? bytes : NULL;
}

/* ---- files too long to keep ---- */

static void generate_line(Out *out, const char *line, size_t length)
{
	char text[200];
	size_t used = 0;
	char *end;
	unsigned long times = strtoul(line + 1, &end, 10);
	for (const char *at = end + 1; at < line + length; at++) {
		bool is_break = at[0] == '\\' && at[1] == 'n';
		text[used++] = is_break ? '\n' : *at;
		at += is_break;
	}
	for (unsigned long i = 0; i < times; i++)
		out_literal(out, text, used);
}

static const char *generate(Arena *arena, const char *recipe, size_t *length)
{
	Out *out = out_make(arena, OUT_TERMINAL);
	for (const char *line = recipe; *line == 'x';) {
		size_t n = strcspn(line, "\n");
		generate_line(out, line, n);
		line += n + (line[n] == '\n');
	}
	return out_text(out, length);
}

/* ---- what the readers say, one line each, by place ---- */

static int by_place(const void *a, const void *b)
{
	const Complaint *x = a, *y = b;
	if (x->place.line != y->place.line)
		return x->place.line < y->place.line ? -1 : 1;
	if (x->place.column != y->place.column)
		return x->place.column < y->place.column ? -1 : 1;
	return (x->id > y->id) - (x->id < y->id);
}

static const char *complaints_text(Complaints *complaints)
{
	Arena *arena = complaints->arena;
	const char *text = "";
	if (complaints->count > 0)
		qsort(complaints->at, complaints->count, sizeof *complaints->at, by_place);
	for (uint32_t i = 0; i < complaints->count; i++) {
		const Complaint *c = &complaints->at[i];
		const Message *m = message_of(c->id);
		text = arena_printf(arena, "%s%u:%u: %s: %s / %s\n", text, (unsigned)c->place.line, (unsigned)c->place.column, m->code,
			complaint_text(c, m->finding, arena), complaint_text(c, m->remedy, arena));
	}
	return text;
}

static const char *case_text(Arena *arena, const char *name)
{
	size_t length = 0;
	const char *form = read_all(arena, arena_printf(arena, "%s/%s/submittal.yaml", folder, name), &length), *review = NULL;
	if (form == NULL) {
		review = read_all(arena, arena_printf(arena, "%s/%s/review.yaml", folder, name), &length);
		form = review;
	}
	if (form == NULL) {
		const char *recipe = read_all(arena, arena_printf(arena, "%s/%s/generated.txt", folder, name), &length);
		assert_non_null(recipe);
		form = generate(arena, recipe, &length);
	}
	const Source *source = source_make(arena, name, form, length, review != NULL ? SOURCE_REVIEWER : SOURCE_SUBMITTAL);
	Complaints complaints = { .arena = arena };
	Node *root = read_yaml(arena, source, &complaints);
	if (review != NULL)
		assert_non_null(read_review(arena, root, source, &small_reference, &complaints));
	else
		assert_non_null(read_submittal(arena, root, source, &small_reference, &complaints));
	for (uint32_t i = 0; i < complaints.count; i++)
		assert_int_equal(complaints.at[i].place.source, source->id);
	return complaints_text(&complaints);
}

/* ---- the folders ---- */

static int is_folder_name(const struct dirent *entry)
{
	return entry->d_name[0] != '.';
}

typedef struct {
	char name[1000][80];
	size_t count;
} Names;

static void find_names(Names *names)
{
	struct dirent **entry;
	int count = scandir(folder, &entry, is_folder_name, alphasort);
	assert_true(count > 0);
	for (int i = 0; i < count; i++) {
		size_t length = strlen(entry[i]->d_name);
		assert_true(length < sizeof names->name[0]);
		memcpy(names->name[names->count++], entry[i]->d_name, length);
		free(entry[i]);
	}
	free(entry);
}

static void says_what_is_expected(void **state)
{
	(void)state;
	static Names names;
	find_names(&names);
	assert_true(names.count >= 45);
	size_t wrong = 0;
	for (size_t i = 0; i < names.count; i++) {
		Arena *arena = arena_make();
		size_t length = 0;
		const char *expected = read_all(arena, arena_printf(arena, "%s/%s/expected.txt", folder, names.name[i]), &length);
		const char *text = case_text(arena, names.name[i]);
		if (expected == NULL || strcmp(expected, text) != 0) {
			fprintf(stderr, "%s\n--- expected\n%s--- says\n%s", names.name[i], expected != NULL ? expected : "(no file)\n", text);
			wrong++;
		}
		arena_free(arena);
	}
	assert_int_equal(wrong, 0);
}

/* FIL-01, FIL-02 and FIL-05 are said by the commands, which open the files. */
static bool is_said_by_commands(const char *code)
{
	return strcmp(code, "FIL-01") == 0 || strcmp(code, "FIL-02") == 0 || strcmp(code, "FIL-05") == 0;
}

static bool is_said_by_readers(const char *code)
{
	return (strncmp(code, "FIL", 3) == 0 && !is_said_by_commands(code)) || strncmp(code, "YML", 3) == 0 || strncmp(code, "FRM", 3) == 0;
}

static void every_message_is_said_somewhere(void **state)
{
	(void)state;
	static Names names;
	find_names(&names);
	Arena *arena = arena_make();
	const char *all = "";
	for (size_t i = 0; i < names.count; i++) {
		size_t length = 0;
		const char *expected = read_all(arena, arena_printf(arena, "%s/%s/expected.txt", folder, names.name[i]), &length);
		all = arena_printf(arena, "%s%s", all, expected != NULL ? expected : "");
	}
	size_t missing = 0;
	for (MessageId id = 0; id < MESSAGE_COUNT; id++) {
		const char *code = message_of(id)->code;
		if (is_said_by_readers(code) && strstr(all, arena_printf(arena, " %s: ", code)) == NULL) {
			print_error("%s stands in no expected.txt\n", code);
			missing++;
		}
	}
	arena_free(arena);
	assert_int_equal(missing, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(says_what_is_expected),
		cmocka_unit_test(every_message_is_said_somewhere),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

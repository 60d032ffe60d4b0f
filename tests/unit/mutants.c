/* SPDX-License-Identifier: MIT
 * Whether the rule cases would notice a turned direction of a copy of the sample edition.
 */
#include "../rule_cases.h"

#include "file.h"

#include <sys/stat.h>
#include <unistd.h>

typedef struct {
	char folder[64];
	RuleCases cases;
	Arena *arena;
} Copy;

/* The rows of one CSV file as cells that can be changed and written again. */
typedef struct {
	Arena *arena;
	const char ***row;
	uint32_t rows, room, columns;
} CsvText;

static bool take_cells(void *user, const Cell *cell, uint32_t cells)
{
	CsvText *sheet = user;
	sheet->row = arena_more(sheet->arena, sheet->row, sheet->rows, &sheet->room, sizeof *sheet->row);
	const char **copy = TAKE(sheet->arena, const char *, cells);
	for (uint32_t i = 0; i < cells; i++)
		copy[i] = cell[i].text;
	sheet->row[sheet->rows++] = copy;
	sheet->columns = cells;
	return true;
}

static CsvText read_sheet(Arena *arena, const char *name)
{
	const Builtin *file = builtin_find(name);
	assert_non_null(file);
	CsvText sheet = { .arena = arena };
	Complaints complaints = { .arena = arena };
	const Source *source = source_make(arena, name, file->bytes, (size_t)(file->end - file->bytes), SOURCE_FIRST_SHARED);
	CsvFile csv = { arena, source, &complaints, take_cells, &sheet };
	assert_true(csv_read(&csv));
	return sheet;
}

static void write_sheet(const Copy *copy, const char *file, const CsvText *sheet)
{
	char path[160];
	snprintf(path, sizeof path, "%s/%s", copy->folder, file);
	FILE *out = fopen(path, "w");
	assert_non_null(out);
	for (uint32_t r = 0; r < sheet->rows; r++)
		for (uint32_t c = 0; c < sheet->columns; c++) {
			fputc('"', out);
			for (const char *t = sheet->row[r][c]; *t != '\0'; t++) {
				if (*t == '"')
					fputc('"', out);
				fputc(*t, out);
			}
			fputs(c + 1 < sheet->columns ? "\"," : "\"\n", out);
		}
	assert_int_equal(fclose(out), 0);
}

static uint32_t column_of(const CsvText *sheet, const char *header)
{
	for (uint32_t c = 0; c < sheet->columns; c++)
		if (strcmp(sheet->row[0][c], header) == 0)
			return c;
	fail_msg("no column %s", header);
	return 0;
}

static int make_copy(void **state)
{
	Copy *copy = calloc(1, sizeof *copy);
	copy->arena = arena_make();
	strncpy(copy->folder, "/tmp/seamstamp-edition-XXXXXX", sizeof copy->folder - 1);
	assert_non_null(mkdtemp(copy->folder));
	const Builtin *file;
	for (size_t i = 0; (file = builtin_at(i)) != NULL; i++)
		if (strncmp(file->name, "sample-2026/", 12) == 0) {
			char path[160];
			snprintf(path, sizeof path, "%s/%s", copy->folder, file->name + 12);
			file_write(path, file->bytes, (size_t)(file->end - file->bytes));
		}
	copy->cases = read_cases(copy->arena);
	*state = copy;
	return 0;
}

static int free_copy(void **state)
{
	Copy *copy = *state;
	char command[96];
	snprintf(command, sizeof command, "rm -r %s", copy->folder);
	int status = system(command);
	arena_free(copy->arena);
	free(copy);
	return status;
}

/* Whether a case goes red in a world; `code` narrows to the cases of one rule, NULL takes all. */
static bool goes_red(const World *world, const RuleCases *cases, const char *code)
{
	bool red = false;
	Arena *met_arena = arena_make();
	Verdict *met = NULL;
	for (uint32_t i = 0; i < cases->count && !red; i++) {
		const RuleCase *c = &cases->at[i];
		if (code != NULL && strcmp(c->code, code) != 0)
			continue;
		Arena *arena = arena_make();
		Verdict *verdict = review_case(world, arena, c);
		red = !holds_case(c, verdict, met);
		arena_free(met_arena);
		met_arena = arena;
		met = verdict;
	}
	arena_free(met_arena);
	return red;
}

/* Whether the changed copy is refused, or a case goes red. */
static bool is_noticed(const Copy *copy, const char *code)
{
	Complaints faults;
	World world = world_of(copy->folder, &faults);
	bool noticed = world.criteria == NULL || goes_red(&world, &copy->cases, code);
	arena_free(world.run);
	return noticed;
}

static void the_copy_itself_is_clean(void **state)
{
	assert_false(is_noticed(*state, NULL));
}

static const char *turned(const char *direction)
{
	return strcmp(direction, "up") == 0 ? "down" : strcmp(direction, "down") == 0 ? "up" : NULL;
}

static void a_turned_direction_is_noticed(void **state)
{
	const Copy *copy = *state;
	Arena *arena = arena_make();
	CsvText sheet = read_sheet(arena, "sample-2026/substitutions.csv");
	uint32_t may_go = column_of(&sheet, "may go"), turns = 0, survived = 0;
	for (uint32_t r = 1; r < sheet.rows; r++) {
		const char *whole = sheet.row[r][may_go], *other = turned(whole);
		if (other == NULL)
			continue;
		sheet.row[r][may_go] = other;
		write_sheet(copy, "substitutions.csv", &sheet);
		sheet.row[r][may_go] = whole;
		turns++;
		if (!is_noticed(copy, NULL)) {
			survived++;
			print_error("%s %s: nobody minds which way it goes\n", sheet.row[r][0], sheet.row[r][1]);
		}
	}
	write_sheet(copy, "substitutions.csv", &sheet);
	assert_true(turns >= 8);
	assert_int_equal(survived, 0);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_copy_itself_is_clean),
		cmocka_unit_test(a_turned_direction_is_noticed),
	};
	return cmocka_run_group_tests_name("mutants", tests, make_copy, free_copy) != 0;
}

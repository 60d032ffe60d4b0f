/* SPDX-License-Identifier: MIT
 * The catalogue of what a review asks, tests/catalogue.csv (code, judged as), typed by hand, against the edition: every code is a
 * row of rules.csv with or without a letter, a standing check on site, or one of the few that docs/rules-not-judged.md explains.
 */
#include "../harness.h"

#include "file.h"
#include "read/csv.h"

enum { MOST_CODES = 400, MOST_UNJUDGED = 8 };

typedef struct {
	const char *code, *as;
} Entry;

typedef struct {
	Entry at[MOST_CODES];
	uint32_t count;
	bool headed;
} Catalogue;

/* How many codes each family of the catalogue has. */
static const struct {
	const char *family;
	uint32_t codes;
} families[] = {
	{ "ELG", 13 }, { "ENG", 21 }, { "LST", 16 }, { "CLP", 10 }, { "FST", 15 }, { "DCK", 9 }, { "PNL", 12 }, { "SLP", 10 },
	{ "THM", 8 }, { "SEM", 8 }, { "UND", 15 }, { "SLT", 13 }, { "RVC", 7 }, { "PEN", 20 }, { "SNO", 6 }, { "TRM", 16 },
	{ "COR", 10 }, { "LIF", 5 }, { "SUP", 7 }, { "DOC", 21 }, { "APL", 9 }, { "RET", 9 }, { "WTY", 13 },
};

static const char *const site_codes[] = {
	"CLP-08", "CLP-10", "FST-15", "DCK-06", "DCK-08", "PNL-10", "PNL-12", "SEM-04", "SEM-08", "UND-07", "UND-10", "UND-14", "SLT-12",
	"RVC-07", "COR-10", "APL-05",
};

static bool take_entry(void *user, const Cell *cell, uint32_t cells)
{
	Catalogue *all = user;
	assert_int_equal(cells, 2);
	if (!all->headed)
		return all->headed = true;
	assert_true(all->count < MOST_CODES);
	all->at[all->count++] = (Entry){ cell[0].text, cell[1].text };
	return true;
}

static const char *text_of_file(Arena *arena, const char *path)
{
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(arena, path, 1 << 20, &bytes, &length, &why), FILE_READ);
	return arena_text(arena, bytes, length);
}

static Catalogue read_catalogue(Arena *arena)
{
	Catalogue all = { .count = 0 };
	const char *text = text_of_file(arena, "tests/catalogue.csv");
	Complaints complaints = { .arena = arena };
	CsvFile csv = { arena, source_make(arena, "catalogue.csv", text, strlen(text), 0), &complaints, take_entry, &all };
	assert_true(csv_read(&csv));
	return all;
}

/* Whether a rule has this code, or begins so before a letter. */
static bool is_rule(const Criteria *criteria, const char *code)
{
	size_t length = strlen(code);
	for (uint32_t i = 0; i < criteria->rules; i++) {
		const char *rule = criteria->rule[i].code;
		if (strncmp(rule, code, length) == 0 && (rule[length] == '\0' || (rule[length] >= 'a' && rule[length + 1] == '\0')))
			return true;
	}
	return false;
}

static bool is_site_check(const Criteria *criteria, const char *code)
{
	for (uint32_t i = 0; i < criteria->site_checks.count; i++)
		if (strcmp(criteria->site_checks.row[i].code.text, code) == 0)
			return true;
	return false;
}

/* The families, each numbered from 1 without a gap and without a code that stands twice. */
static void families_are_whole(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Catalogue all = read_catalogue(arena);
	uint32_t total = 0;
	for (size_t f = 0; f < sizeof families / sizeof *families; f++)
		for (uint32_t n = 1; n <= families[f].codes; n++, total++)
			assert_string_equal(all.at[total].code, arena_printf(arena, "%s-%02u", families[f].family, n));
	assert_int_equal(total, 273);
	assert_int_equal(all.count, total);
	arena_free(arena);
}

static void site_checks_are_the_sixteen(void **state)
{
	(void)state;
	World world = world_make();
	Catalogue all = read_catalogue(world.run);
	size_t count = sizeof site_codes / sizeof *site_codes;
	assert_int_equal(count, 16);
	for (size_t i = 0; i < count; i++)
		assert_true(is_site_check(world.criteria, site_codes[i]));
	uint32_t marked = 0;
	for (uint32_t i = 0; i < all.count; i++)
		marked += strcmp(all.at[i].as, "site check") == 0;
	assert_int_equal(marked, count);
	arena_free(world.run);
}

/* Whether the edition has a code where the catalogue says it is; false is said. */
static bool is_where_it_says(const Criteria *criteria, const Entry *entry, const char *unjudged)
{
	bool explained = strstr(unjudged, entry->code) != NULL;
	bool rule = is_rule(criteria, entry->code), site = is_site_check(criteria, entry->code);
	if (strcmp(entry->as, "rule") == 0 ? rule && !explained : strcmp(entry->as, "site check") == 0 ? site && !explained
		: strcmp(entry->as, "not judged") == 0 ? explained && !rule && !site : false)
		return true;
	print_error("%s is not found as: %s%s\n", entry->code, entry->as, rule ? "; a rule has it" : "");
	return false;
}

static void every_code_is_accounted_for(void **state)
{
	(void)state;
	World world = world_make();
	Catalogue all = read_catalogue(world.run);
	const char *unjudged = text_of_file(world.run, "docs/rules-not-judged.md");
	uint32_t wrong = 0, not_judged = 0;
	for (uint32_t i = 0; i < all.count; i++) {
		const Entry *entry = &all.at[i];
		not_judged += strcmp(entry->as, "not judged") == 0;
		wrong += !is_where_it_says(world.criteria, entry, unjudged);
	}
	assert_true(not_judged <= MOST_UNJUDGED);
	assert_int_equal(wrong, 0);
	arena_free(world.run);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(families_are_whole),
		cmocka_unit_test(site_checks_are_the_sixteen),
		cmocka_unit_test(every_code_is_accounted_for),
	};
	return cmocka_run_group_tests_name("catalogue", tests, NULL, NULL) != 0;
}

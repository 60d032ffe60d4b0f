/* SPDX-License-Identifier: MIT
 * examples/planted.csv (file, code, record, path of the key or record where the item stands) against the reviews of the examples, in both directions.
 */
#include "../harness.h"

#include "file.h"
#include "read/csv.h"

#include <stdlib.h>

typedef struct {
	const char *file, *code, *record, *at;
	bool found;
} Planted;

typedef struct {
	Arena *arena;
	Planted *at;
	uint32_t count, room;
	bool headed;
} PlantedList;

static bool take_row(void *user, const Cell *cell, uint32_t cells)
{
	PlantedList *all = user;
	assert_int_equal(cells, 4);
	if (!all->headed)
		return all->headed = true;
	all->at = arena_more(all->arena, all->at, all->count, &all->room, sizeof *all->at);
	all->at[all->count++] = (Planted){ cell[0].text, cell[1].text, cell[2].text, cell[3].text, false };
	return true;
}

/* Marks the planted row of one place of an item; false if nobody planted it. */
static bool find_planted(PlantedList *all, const char *file, Node *root, const Finding *item, const Spot *spot)
{
	const char *name = spot->where != NULL ? spot->where->name : item->name;
	for (uint32_t i = 0; i < all->count; i++) {
		Planted *p = &all->at[i];
		if (!p->found && strcmp(p->file, file) == 0 && strcmp(p->code, item->code) == 0 && line_at(root, p->at) == spot->place.line &&
			strcmp(p->record, name != NULL ? name : "") == 0)
			return p->found = true;
	}
	print_error("%s:%u: %s at %s was not planted: %s\n", file, spot->place.line, item->code, name != NULL ? name : "", item->finding);
	return false;
}

static uint32_t unplanted(const World *world, PlantedList *all, const char *path)
{
	uint32_t wrong = 0;
	Arena *arena = arena_make();
	const char *file = strrchr(path, '/') + 1;
	Node *root;
	Verdict *verdict = review_nodes_of(world, arena, path, &root);
	for (uint32_t i = 0; i < verdict->items; i++)
		for (uint32_t s = 0; s < verdict->item[i].spots; s++)
			wrong += !find_planted(all, file, root, &verdict->item[i], &verdict->item[i].spot[s]);
	if (strcmp(file, "messy-reroof.yaml") == 0 && verdict->items > 15) {
		print_error("the messy example prints %u items\n", verdict->items);
		wrong++;
	}
	arena_free(arena);
	return wrong;
}

static PlantedList read_planted(Arena *arena)
{
	PlantedList all = { .arena = arena };
	const char *bytes, *why;
	size_t length;
	assert_int_equal(file_read(arena, "examples/planted.csv", 1 << 20, &bytes, &length, &why), FILE_READ);
	Complaints complaints = { .arena = arena };
	CsvFile csv = { arena, source_make(arena, "planted.csv", bytes, length, 0), &complaints, take_row, &all };
	assert_true(csv_read(&csv));
	return all;
}

static void planted_and_found_agree(void **state)
{
	(void)state;
	World world = world_make();
	PlantedList all = read_planted(world.run);
	size_t files;
	const char *const *path;
	assert_true(file_walk(world.run, "examples", &path, &files));
	assert_true(files >= 11);
	uint32_t wrong = 0;
	for (size_t i = 0; i < files; i++)
		wrong += unplanted(&world, &all, path[i]);
	for (uint32_t i = 0; i < all.count; i++)
		if (!all.at[i].found) {
			wrong++;
			print_error("%s: %s: %s at %s was planted and not found\n", all.at[i].file, all.at[i].at, all.at[i].code, all.at[i].record);
		}
	print_message("%u planted places in %zu examples\n", all.count, files);
	assert_int_equal(wrong, 0);
	arena_free(world.run);
}

/* Rules that no package of the sample edition can break, and why. */
static const struct {
	const char *code, *why;
} nowhere[] = {
	{ "ENG-16b", "asks for an edition that wants a statement where a test over a deck stands in for one in open framing" },
	{ "SLP-03c", "a snap seam flatter than 2 in 12 lies under this edition's low slope, and SEM-01 says so first" },
	{ "THM-01d", "clips that carry this edition's range of 170 F (THM-01) carry more than 160 F" },
};

static bool is_nowhere(const char *code)
{
	for (size_t i = 0; i < sizeof nowhere / sizeof *nowhere; i++)
		if (strcmp(nowhere[i].code, code) == 0)
			return true;
	return false;
}

static bool is_planted(const PlantedList *all, const char *code)
{
	for (uint32_t i = 0; i < all->count; i++)
		if (strcmp(all->at[i].code, code) == 0)
			return true;
	return false;
}

/* Every code is shown by some whole package or stands in the list, and not in both. */
static uint32_t shown_wrongly(const PlantedList *all, const char *code, bool elsewhere)
{
	if (is_planted(all, code) != elsewhere)
		return 0;
	print_error(elsewhere ? "%s is planted: take it off the list\n" : "no example fires %s\n", code);
	return 1;
}

static void every_rule_is_shown(void **state)
{
	(void)state;
	World world = world_make();
	PlantedList all = read_planted(world.run);
	uint32_t wrong = 0;
	for (uint32_t i = 0; i < world.criteria->rules; i++)
		wrong += shown_wrongly(&all, world.criteria->rule[i].code, is_nowhere(world.criteria->rule[i].code));
	assert_int_equal(wrong, 0);
	arena_free(world.run);
}

/* What the readers of a submittal say in no whole package, because it is not read on or not judged: tests/cases/read has each. */
static const struct {
	const char *first, *last, *why;
} unread[] = {
	{ "YML-01", "YML-07", "bytes that are no text, and limits of size" },
	{ "YML-08", "YML-08", "a list as a key: the file breaks here" },
	{ "YML-17", "YML-30", "the file breaks here, and nothing of it is judged" },
	{ "FRM-08", "FRM-08", "the file is no form at all" },
	{ "MIS-07", "MIS-07", "a rule of the sample edition says how a construction differs from the tested one, and stands for it" },
	{ "MIS-08", "MIS-08", "the tables of the sample edition state whatever its rules ask of them" },
	{ "MIS-09", "MIS-09", "a value that cannot be read has its reader's message, which stands for it" },
};

static bool is_unread(const char *code)
{
	for (size_t i = 0; i < sizeof unread / sizeof *unread; i++)
		if (strcmp(unread[i].first, code) <= 0 && strcmp(code, unread[i].last) <= 0)
			return true;
	return false;
}

/* FIL, TAB and REV are said of other files: tests/cases/criteria, tests/cases/read and tests/cli have them. */
static bool is_of_submittals(const char *code)
{
	return strncmp(code, "YML-", 4) == 0 || strncmp(code, "FRM-", 4) == 0 || strncmp(code, "MIS-", 4) == 0;
}

static void every_message_is_shown(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	PlantedList all = read_planted(arena);
	uint32_t wrong = 0, shown = 0;
	for (int id = 0; id < MESSAGE_COUNT; id++) {
		const char *code = message_of((MessageId)id)->code;
		if (!is_of_submittals(code))
			continue;
		shown++;
		wrong += shown_wrongly(&all, code, is_unread(code));
	}
	assert_true(shown >= 60);
	assert_int_equal(wrong, 0);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(planted_and_found_agree), cmocka_unit_test(every_rule_is_shown),
		cmocka_unit_test(every_message_is_shown) };
	return cmocka_run_group_tests_name("planted", tests, NULL, NULL) != 0;
}

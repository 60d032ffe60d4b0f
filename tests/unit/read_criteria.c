/* SPDX-License-Identifier: MIT
 * Editions and registers: tests/cases/criteria/tiny with one edit each, and the lines that must come out.
 *
 * edit.txt: `file NAME`, then `old TEXT` and `new TEXT` (the text in its place), `repeat N TEXT` (as `new`, N times; a further
 * `new` follows it), `empty`, or `remove`. \n \t \xHH \\ are read in texts. expected.txt is typed by hand.
 */
#include "check.h"

#include "builtin.h"
#include "complaint.h"
#include "hash.h"
#include "pipeline.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#define CASES "tests/cases/criteria"

/* ---- files ---- */

static char *read_whole(Arena *arena, const char *path, size_t *length)
{
	FILE *file = fopen(path, "rb");
	if (file == NULL)
		return NULL;
	fseek(file, 0, SEEK_END);
	*length = (size_t)ftell(file);
	rewind(file);
	char *bytes = arena_take(arena, *length + 1, 1);
	assert_int_equal(fread(bytes, 1, *length, file), *length);
	fclose(file);
	return bytes;
}

static void write_whole(const char *path, const char *bytes, size_t length)
{
	FILE *file = fopen(path, "wb");
	assert_non_null(file);
	assert_int_equal(fwrite(bytes, 1, length, file), length);
	assert_int_equal(fclose(file), 0);
}

static void copy_folder(Arena *arena, const char *from, const char *to)
{
	DIR *folder = opendir(from);
	assert_non_null(folder);
	for (struct dirent *entry; (entry = readdir(folder)) != NULL;) {
		size_t length;
		if (strchr(entry->d_name, '.') == NULL || *entry->d_name == '.')
			continue;
		char *bytes = read_whole(arena, arena_printf(arena, "%s/%s", from, entry->d_name), &length);
		write_whole(arena_printf(arena, "%s/%s", to, entry->d_name), bytes, length);
	}
	closedir(folder);
}

static void remove_folder(Arena *arena, const char *path)
{
	DIR *folder = opendir(path);
	for (struct dirent *entry; folder != NULL && (entry = readdir(folder)) != NULL;)
		if (*entry->d_name != '.')
			unlink(arena_printf(arena, "%s/%s", path, entry->d_name));
	if (folder != NULL)
		closedir(folder);
	rmdir(path);
}

/* A copy of the tiny edition and its register. */
static const char *tiny_copy(Arena *arena)
{
	char *path = arena_text(arena, "/tmp/tiny-XXXXXX", 16);
	assert_non_null(mkdtemp(path));
	assert_int_equal(mkdir(arena_printf(arena, "%s/register", path), 0700), 0);
	copy_folder(arena, CASES "/tiny", path);
	copy_folder(arena, CASES "/tiny/register", arena_printf(arena, "%s/register", path));
	return path;
}

static void drop_copy(Arena *arena, const char *path)
{
	remove_folder(arena, arena_printf(arena, "%s/register", path));
	remove_folder(arena, path);
}

/* ---- edits ---- */

static char *unescape(Arena *arena, const char *text)
{
	char *plain = arena_text(arena, text, strlen(text)), *to = plain;
	for (; *text != '\0'; text++) {
		if (*text != '\\') {
			*to++ = *text;
			continue;
		}
		text++;
		if (*text == 'x') {
			char hex[3] = { text[1], text[2], '\0' };
			*to++ = (char)strtol(hex, NULL, 16);
			text += 2;
		} else
			*to++ = *text == 'n' ? '\n' : *text == 't' ? '\t' : *text;
	}
	*to = '\0';
	return plain;
}

/* Puts `count` times `new` in place of the first `old` in a file; with NULL before it. */
static void replace(Arena *arena, const char *path, const char *old, const char *new, size_t count)
{
	size_t length, old_length = strlen(old), new_length = strlen(new);
	char *bytes = read_whole(arena, path, &length);
	assert_non_null(bytes);
	char *at = strstr(bytes, old);
	if (at == NULL)
		fail_msg("%s does not hold: %s", path, old);
	char *edited = arena_take(arena, length + count * new_length + 1, 1);
	size_t before = (size_t)(at - bytes), used = before;
	memcpy(edited, bytes, before);
	for (size_t i = 0; i < count; i++, used += new_length)
		memcpy(edited + used, new, new_length);
	memcpy(edited + used, at + old_length, length - before - old_length);
	write_whole(path, edited, used + length - before - old_length);
}

static const char *after(const char *line, const char *word)
{
	size_t length = strlen(word);
	if (strncmp(line, word, length) != 0 || (line[length] != ' ' && line[length] != '\0'))
		return NULL;
	return line + length + (line[length] == ' ');
}

static void edit(Arena *arena, const char *folder, char *edits)
{
	const char *path = NULL, *old = NULL, *rest;
	for (char *line = edits, *end; *line != '\0'; line = end) {
		end = line + strcspn(line, "\n");
		if (*end != '\0')
			*end++ = '\0';
		if ((rest = after(line, "file")) != NULL)
			path = arena_printf(arena, "%s/%s", folder, rest);
		else if ((rest = after(line, "old")) != NULL)
			old = unescape(arena, rest);
		else if ((rest = after(line, "new")) != NULL)
			replace(arena, path, old, unescape(arena, rest), 1);
		else if ((rest = after(line, "repeat")) != NULL) {
			char *text;
			size_t count = strtoul(rest, &text, 10);
			replace(arena, path, old, unescape(arena, text + 1), count);
		} else if (strcmp(line, "empty") == 0)
			write_whole(path, "", 0);
		else if (strcmp(line, "remove") == 0)
			assert_int_equal(unlink(path), 0);
		else
			fail_msg("no edit: %s", line);
	}
}

/* ---- what comes out ---- */

static const char *print_faults(Arena *arena, const Complaints *faults, const char *out)
{
	for (uint32_t i = 0; i < faults->count; i++) {
		const Complaint *fault = &faults->at[i];
		const Message *message = message_of(fault->id);
		const char *file = "?";
		for (uint32_t s = 0; s < faults->sources; s++)
			if (faults->source[s]->id == fault->place.source)
				file = strrchr(faults->source[s]->name, '/') + 1;
		out = arena_printf(arena, "%s%s:%u:%u: %s: %s / %s\n", out, file, (unsigned)fault->place.line, (unsigned)fault->place.column,
			message->code, complaint_text(fault, message->finding, arena), complaint_text(fault, message->remedy, arena));
	}
	return out;
}

/* Reads the edition and the register of a folder and prints what is wrong with them. */
static const char *read_all(Arena *arena, const char *folder)
{
	const Reference *reference = read_reference(arena);
	Complaints of_criteria = { .arena = arena }, of_registers = { .arena = arena };
	const Criteria *criteria = read_criteria(arena, folder, reference, &of_criteria);
	const Registers *registers = read_registers(arena, arena_printf(arena, "%s/register", folder), reference, &of_registers);
	assert_int_equal(criteria == NULL, of_criteria.count > 0);
	assert_int_equal(registers == NULL, of_registers.count > 0);
	assert_int_equal(of_criteria.broken, of_criteria.count > 0);
	return print_faults(arena, &of_registers, print_faults(arena, &of_criteria, ""));
}

static void test_case_of_edit(void **state)
{
	Arena *arena = arena_make();
	const char *name = *state;
	size_t length;
	const char *folder = tiny_copy(arena);
	char *edits = read_whole(arena, arena_printf(arena, CASES "/%s/edit.txt", name), &length);
	char *expected = read_whole(arena, arena_printf(arena, CASES "/%s/expected.txt", name), &length);
	assert_non_null(edits);
	assert_non_null(expected);
	edit(arena, folder, edits);
	const char *printed = read_all(arena, folder);
	drop_copy(arena, folder);
	assert_true(length > 0);
	assert_string_equal(printed, expected);
	arena_free(arena);
}

/* ---- beside the cases ---- */

static void test_tiny_has_no_fault(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	assert_string_equal(read_all(arena, CASES "/tiny"), "");
	arena_free(arena);
}

static const Criteria *read_good(Arena *arena, const char *folder)
{
	const Reference *reference = read_reference(arena);
	Complaints faults = { .arena = arena };
	const Criteria *criteria = read_criteria(arena, folder, reference, &faults);
	assert_string_equal(print_faults(arena, &faults, ""), "");
	assert_non_null(criteria);
	return criteria;
}

static void test_builtin_edition_and_registers(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const Criteria *criteria = read_good(arena, "sample-2026");
	assert_string_equal(criteria->edition.edition.text, "sample-2026");
	assert_true(criteria->rules > 100);
	assert_non_null(item_find(criteria, KIND_clip, "clip-a-float"));
	assert_null(item_find(criteria, KIND_panel, "clip-a-float"));
	assert_non_null(listing_find(criteria, "tested-210"));
	Complaints faults = { .arena = arena };
	const Registers *registers = read_registers(arena, NULL, read_reference(arena), &faults);
	assert_string_equal(print_faults(arena, &faults, ""), "");
	assert_non_null(registers);
	assert_true(registers->approvals.count > 0);
	arena_free(arena);
}

static void test_unknown_edition(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Complaints faults = { .arena = arena };
	assert_null(read_criteria(arena, "sample-1999", read_reference(arena), &faults));
	assert_int_equal(faults.count, 1);
	assert_int_equal(faults.at[0].id, MESSAGE_FIL_05);
	assert_string_equal(faults.at[0].about.value, "sample-1999");
	assert_string_equal(faults.at[0].about.want, "sample-2026");
	assert_true(faults.broken);
	arena_free(arena);
}

static void test_values_of_a_listing(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const Criteria *c = read_good(arena, CASES "/tiny");
	const Listing *one = listing_find(c, "list-1"), *two = listing_find(c, "list-2");
	assert_close(one->uplift_class_one.value, 90, 1e-12);
	assert_close(one->class_spacing_in.value, 24, 1e-12);
	assert_string_equal(one->tested.panel.item.text, "panel-t");
	assert_close(one->tested.panel.width_in.value, 16, 1e-12); /* the unit of the header */
	assert_close(two->tested.panel.width_in.value, 400 / 25.4, 1e-12); /* its own */
	assert_close(two->tested.panel.thickness_in.value, 0.61 / 25.4, 1e-12);
	assert_int_equal(one->tested.build_up.of.given.said, SAID_NONE);
	assert_int_equal(two->tested.build_up.of.given.said, SAID_VALUE);
	assert_int_equal(two->tested.build_up.of.count, 1);
	assert_close(two->tested.build_up.of.row[0].thickness_in.value, 2, 1e-12);
	assert_close(one->tested.fasteners.of.row[0].size_in.value, 0.216, 1e-12); /* #12 */
	assert_int_equal(two->expires.given.said, SAID_NOTHING);
	assert_int_equal(two->expires.given.place.line, 3);
	assert_int_equal(two->expires.given.place.column, 50);
	arena_free(arena);
}

static void test_values_of_a_catalogue(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const Criteria *c = read_good(arena, CASES "/tiny");
	const Panel *panel = item_find(c, KIND_panel, "panel-t");
	const Fastener *screw = item_find(c, KIND_fastener, "screw-t");
	const Penetration *boot = item_find(c, KIND_penetration, "boot-t");
	assert_close(panel->thickness_in.value, 0.0239, 1e-12); /* 24 ga of steel sheet */
	assert_string_equal(panel->thickness_in.given.typed, "24 ga");
	assert_int_equal(panel->looks_like.given.said, SAID_NOTHING);
	assert_close(screw->length_in.value, 1.5, 1e-12);
	assert_int_equal(boot->thickness_in.given.said, SAID_NOT_APPLICABLE);
	assert_string_equal(boot->thickness_in.given.typed, "any");
	arena_free(arena);
}

static void test_terms_of_listings(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const Criteria *c = read_good(arena, CASES "/tiny");
	assert_int_equal(c->terms_bound, 4);
	assert_int_equal(c->term[0].kind, KIND_panel);
	assert_string_equal(c->term[0].field->key, "width");
	assert_int_equal(c->term[0].count, 2);
	assert_close(c->term[0].number[0], 12, 1e-12);
	assert_close(c->term[0].number[1], 16, 1e-12);
	assert_string_equal(c->term[1].row->attribute.text, "panel.seam_sealant");
	assert_int_equal(c->term[1].count, 2);
	assert_string_equal(c->term[1].word[1], "machine");
	assert_int_equal(c->term[3].count, 0);
	arena_free(arena);
}

/* A column that ends in `.most` is a term too; its cells take the unit of the header. */
static void test_terms_in_the_header(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const char *folder = tiny_copy(arena);
	const char *path = arena_printf(arena, "%s/listings.csv", folder);
	replace(arena, path, "panel.width [in]", "panel.width.most [in]", 1);
	const Criteria *c = read_good(arena, folder);
	drop_copy(arena, folder);
	assert_int_equal(c->terms_bound, 6);
	assert_string_equal(c->term[4].row->listing.text, "list-1");
	assert_string_equal(c->term[4].row->relation.text, "at most");
	assert_close(c->term[4].number[0], 16, 1e-12);
	assert_close(c->term[5].number[0], 400 / 25.4, 1e-12);
	assert_int_equal(listing_find(c, "list-1")->tested.panel.width_in.given.said, SAID_NOTHING);
	arena_free(arena);
}

static void test_bound_rules(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const Criteria *c = read_good(arena, CASES "/tiny");
	assert_int_equal(c->rules, 8);
	const Rule *one = &c->rule[0], *two = &c->rule[1], *four = &c->rule[3], *six = &c->rule[5], *eight = &c->rule[7];
	assert_int_equal(one->for_each, KIND_comparison);
	assert_int_equal(one->conditions, 3);
	assert_true(one->rejects);
	assert_int_equal(one->is.left.from, FROM_FACT);
	assert_int_equal(one->is.left.fact, FACT_comparison_holds);
	assert_close(one->is.right.value, 1, 0);
	assert_int_equal(one->remedy.count, 3);
	assert_true(one->remedy.piece[1].for_advise);
	assert_string_equal(one->remedy.piece[1].operand.word, "nearest_listing");
	assert_string_equal(one->finding.piece[1].text, " is not ");
	assert_int_equal(two->is.left.from, FROM_FIELD);
	assert_int_equal(two->is.left.at, KIND_zone);
	assert_int_equal(two->is.right.fact, FACT_zone_class_spacing);
	assert_int_equal(two->when[0].left.at, KIND_submittal);
	assert_int_equal(two->when[0].left.offset, offsetof(Submittal, warranty) + offsetof(Warranty, kind));
	assert_int_equal(two->causes, 1);
	assert_int_equal(two->after[0], 0);
	assert_string_equal(four->is.right.word, "metal and foam"); /* an "and" within a word */
	assert_int_equal(four->causes, 2);
	assert_int_equal(six->for_each, RECORD_KINDS);
	assert_int_equal(six->is.left.fact, FACT_part_life);
	assert_int_equal(eight->when[0].relation, RELATION_IS); /* is "in force", not is in "force" */
	assert_string_equal(eight->when[0].right.word, "in force");
	assert_int_equal(eight->is.left.from, FROM_LISTED);
	assert_int_equal(eight->is.left.at, KIND_test);
	assert_int_equal(eight->is.left.offset, offsetof(Listing, expires));
	assert_int_equal(eight->is.right.at, KIND_submittal);
	arena_free(arena);
}

static void test_bound_lists(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const Criteria *c = read_good(arena, CASES "/tiny");
	const BoundSubstitution *size = &c->substitution[0];
	assert_int_equal(c->substitutions_bound, 2);
	assert_string_equal(size->field->key, "size");
	assert_int_equal(size->needs, 1);
	assert_int_equal(size->need[0].left.fact, FACT_fastener_clip_hole);
	assert_int_equal(size->need[0].relation, RELATION_AT_LEAST);
	assert_int_equal(size->need[0].right.from, FROM_FIELD);
	assert_string_equal(size->need_words[0], "the clip's hole takes the screw");
	assert_string_equal(c->substitution[1].field->key, "rib_height");
	assert_int_equal(c->role[0].whens, 1);
	assert_int_equal(c->role[0].when[0].left.at, KIND_roof_area);
	assert_int_equal(c->role[0].fills, 1);
	assert_int_equal(c->role[0].filled_by[0].left.at, KIND_sealant);
	assert_int_equal(c->paper[0].whens, 1);
	assert_close(c->paper[0].when[0].right.value, 10, 1e-12);
	arena_free(arena);
}

/* Line ends, the byte-order mark and quotation marks of spreadsheets change nothing. */
static void test_saved_by_a_spreadsheet(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const char *folder = tiny_copy(arena), *path = arena_printf(arena, "%s/panels.csv", folder);
	const char *saved = "\xef\xbb\xbf\"item\",\"description\",profile,metal,\"thickness [in]\",width [in],looks like\r\n"
		"\"panel-t\",\"a panel, \"\"plain\"\" (invented)\",T,steel,\"24 ga\",\"16\",\r\n";
	write_whole(path, saved, strlen(saved));
	const Criteria *c = read_good(arena, folder);
	drop_copy(arena, folder);
	const Panel *panel = item_find(c, KIND_panel, "panel-t");
	assert_string_equal(panel->description.text, "a panel, \"plain\" (invented)");
	assert_close(panel->thickness_in.value, 0.0239, 1e-12);
	assert_close(panel->width_in.value, 16, 1e-12);
	assert_int_equal(panel->width_in.given.place.line, 2);
	arena_free(arena);
}

/* ---- all messages ---- */

static int compare_names(const void *a, const void *b)
{
	return strcmp(*(char *const *)a, *(char *const *)b);
}

static char **case_names(Arena *arena, size_t *count)
{
	char **names = arena_take(arena, 1000, sizeof *names);
	DIR *folder = opendir(CASES);
	assert_non_null(folder);
	*count = 0;
	for (struct dirent *entry; (entry = readdir(folder)) != NULL;)
		if (*entry->d_name != '.' && strcmp(entry->d_name, "tiny") != 0)
			names[(*count)++] = arena_text(arena, entry->d_name, strlen(entry->d_name));
	closedir(folder);
	qsort(names, *count, sizeof *names, compare_names);
	return names;
}

static void test_every_message_fires(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	size_t count, length;
	char **names = case_names(arena, &count);
	const char *all = "";
	assert_true(count >= 40);
	for (size_t i = 0; i < count; i++)
		all = arena_printf(arena, "%s%s", all, read_whole(arena, arena_printf(arena, CASES "/%s/expected.txt", names[i]), &length));
	for (int i = 0; i < MESSAGE_COUNT; i++) {
		const char *code = message_of((MessageId)i)->code;
		if (strncmp(code, "TAB-", 4) == 0 && strstr(all, arena_printf(arena, ": %s: ", code)) == NULL)
			fail_msg("no case of %s", code);
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest fixed[] = {
		cmocka_unit_test(test_tiny_has_no_fault), cmocka_unit_test(test_builtin_edition_and_registers),
		cmocka_unit_test(test_unknown_edition), cmocka_unit_test(test_values_of_a_listing),
		cmocka_unit_test(test_values_of_a_catalogue), cmocka_unit_test(test_terms_of_listings),
		cmocka_unit_test(test_terms_in_the_header), cmocka_unit_test(test_bound_rules), cmocka_unit_test(test_bound_lists),
		cmocka_unit_test(test_saved_by_a_spreadsheet), cmocka_unit_test(test_every_message_fires),
	};
	enum { FIXED = sizeof fixed / sizeof *fixed };
	Arena *arena = arena_make();
	size_t count;
	char **names = case_names(arena, &count);
	struct CMUnitTest *tests = arena_take(arena, FIXED + count, sizeof *tests);
	memcpy(tests, fixed, sizeof fixed);
	for (size_t i = 0; i < count; i++)
		tests[FIXED + i] = (struct CMUnitTest){ names[i], test_case_of_edit, NULL, NULL, names[i] };
	int failed = _cmocka_run_group_tests("read_criteria", tests, FIXED + count, NULL, NULL);
	arena_free(arena);
	return failed;
}

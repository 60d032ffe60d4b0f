/* SPDX-License-Identifier: MIT
 * YAML to nodes: places, what is kept of a broken file, limits, and that no file can crash it or hold it up.
 *
 * With --dump FILE... it prints the tree of each file as JSON, one line a file, for tests/published/yaml_against.py.
 */
#include "check.h"
#include "file.h"
#include "out.h"
#include "pipeline.h"
#include "small_reference.h"

#include <stdio.h>
#include <time.h>

static Node *read_text(Arena *arena, const char *text, size_t length, Complaints *complaints)
{
	*complaints = (Complaints){ .arena = arena };
	return read_yaml(arena, source_make(arena, "test.yaml", text, length, SOURCE_SUBMITTAL), complaints);
}

static void check_place(const Node *node, uint32_t line, uint32_t column, uint32_t length)
{
	assert_non_null(node);
	assert_int_equal(node->place.line, line);
	assert_int_equal(node->place.column, column);
	assert_int_equal(node->place.length, length);
}

/* ---- trees ---- */

static void places(void **state)
{
	(void)state;
	static const char text[] =
		"form: 1\n"
		"project: {name: \"Caf\xc3\xa9 roof\", use: d\xc3\xa9p\xc3\xb4t}\n"
		"roof_areas:\n"
		"  - name: Main roof\n"
		"    slope: 1:12\n"
		"  - name: Annex\n";
	Arena *arena = arena_make();
	Complaints c;
	Node *root = read_text(arena, text, sizeof text - 1, &c);
	assert_int_equal(c.count, 0);
	assert_int_equal(root->kind, NODE_MAP);
	assert_int_equal(root->count, 3);
	check_place(root->first, 1, 1, 4);
	check_place(node_at(root, "form"), 1, 7, 1);
	const Node *project = node_at(root, "project");
	assert_int_equal(project->kind, NODE_MAP);
	assert_int_equal(project->place.line, 2);
	assert_int_equal(project->place.column, 10);
	check_place(node_at(root, "project.name"), 2, 17, 11);
	assert_true(node_at(root, "project.name")->quoted);
	check_place(node_at(root, "project.use"), 2, 35, 5);
	assert_false(node_at(root, "project.use")->quoted);
	assert_string_equal(node_at(root, "project.use")->text, "d\xc3\xa9p\xc3\xb4t");
	assert_int_equal(node_at(root, "roof_areas")->count, 2);
	check_place(node_at(root, "roof_areas.0.slope"), 5, 12, 4);
	assert_string_equal(node_at(root, "roof_areas.0.slope")->text, "1:12");
	check_place(node_at(root, "roof_areas.1")->first, 6, 5, 4);
	arena_free(arena);
}

static void trade_values_stay_as_typed(void **state)
{
	(void)state;
	static const char text[] = "a: 20'-6\"\nb: 16\"\nc: 1-1/2 in\nd: 3/8\" x 7/8\"\ne: 12-14#x\nf: 24 ga, 16 in\ng: {slope: 1:12}\n"
		"h: yes\ni: 012\nj: 2026-04-14\nk: '#12'\nl: |\n  two\n  lines\nm: >\n  one\n  line\n";
	Arena *arena = arena_make();
	Complaints c;
	Node *root = read_text(arena, text, sizeof text - 1, &c);
	assert_int_equal(c.count, 0);
	static const char *const expected[][2] = { { "a", "20'-6\"" }, { "b", "16\"" }, { "c", "1-1/2 in" }, { "d", "3/8\" x 7/8\"" },
		{ "e", "12-14#x" }, { "f", "24 ga, 16 in" }, { "g.slope", "1:12" }, { "h", "yes" }, { "i", "012" }, { "j", "2026-04-14" },
		{ "k", "#12" }, { "l", "two\nlines\n" }, { "m", "one line\n" } };
	for (size_t i = 0; i < sizeof expected / sizeof *expected; i++) {
		assert_non_null(node_at(root, expected[i][0]));
		assert_string_equal(node_at(root, expected[i][0])->text, expected[i][1]);
	}
	arena_free(arena);
}

static void line_ends(void **state)
{
	(void)state;
	static const char *const texts[] = { "a: 1\nb:\n  c: 3\n", "a: 1\r\nb:\r\n  c: 3\r\n", "a: 1\rb:\r  c: 3\r", ("\xef\xbb\xbf" "a: 1\nb:\n  c: 3") };
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		Arena *arena = arena_make();
		Complaints c;
		Node *root = read_text(arena, texts[i], strlen(texts[i]), &c);
		assert_int_equal(c.count, 0);
		check_place(node_at(root, "b.c"), 3, 6, 1);
		assert_string_equal(node_at(root, "b.c")->text, "3");
		arena_free(arena);
	}
}

static void cut_values_are_marked(void **state)
{
	(void)state;
	static const char text[] = "mark: #12\nsize: no. #12\nsee: # to come\nper: 2 # two\n";
	Arena *arena = arena_make();
	Complaints c;
	Node *root = read_text(arena, text, sizeof text - 1, &c);
	assert_int_equal(c.count, 2);
	assert_false(c.broken);
	assert_int_equal(node_at(root, "mark")->fault, NODE_CUT_BY_COMMENT);
	assert_int_equal(node_at(root, "size")->fault, NODE_CUT_BY_COMMENT);
	assert_int_equal(node_at(root, "see")->fault, NODE_WHOLE);
	assert_int_equal(node_at(root, "per")->fault, NODE_WHOLE);
	arena_free(arena);
}

static void refused_values_are_marked(void **state)
{
	(void)state;
	static const char text[] = "a: 1\na: 2\nb: &x 3\nc: *x\nd: !t 4\ne: {f: 24 ga, 16 in}\ng: 5\n";
	Arena *arena = arena_make();
	Complaints c;
	Node *root = read_text(arena, text, sizeof text - 1, &c);
	static const char *const refused[] = { "a", "b", "c", "d", "e.f" };
	for (size_t i = 0; i < sizeof refused / sizeof *refused; i++)
		assert_int_equal(node_at(root, refused[i])->fault, NODE_REFUSED);
	assert_int_equal(node_at(root, "g")->fault, NODE_WHOLE);
	assert_int_equal(c.count, 5);
	assert_false(c.broken);
	arena_free(arena);
}

/* A repeated key is found among few and among many, with the place of the first. */
static void repeated_keys(void **state)
{
	(void)state;
	for (uint32_t keys = 2; keys < 40000; keys *= 3) {
		Arena *arena = arena_make();
		Out *out = out_make(arena, OUT_TERMINAL);
		for (uint32_t i = 0; i < keys; i++) {
			SAY(out, "key");
			put_count(out, i);
			SAY(out, ": 1\n");
		}
		SAY(out, "key1: 2\n");
		size_t length;
		const char *text = out_text(out, &length);
		Complaints c;
		clock_t start = clock();
		Node *root = read_text(arena, text, length, &c);
		assert_true((double)(clock() - start) / CLOCKS_PER_SEC < 2);
		assert_int_equal(root->count, keys);
		assert_int_equal(c.count, 1);
		assert_int_equal(c.at[0].id, MESSAGE_YML_09);
		assert_int_equal(c.at[0].place.line, keys + 1);
		assert_int_equal(c.at[0].about.also.line, 2);
		arena_free(arena);
	}
}

/* ---- broken files and limits ---- */

static void a_broken_file_keeps_what_came_before(void **state)
{
	(void)state;
	static const char text[] = "form: 1\nproject:\n  name: Depot\n  use: @ depot\n  city: Marrow Creek\n";
	Arena *arena = arena_make();
	Complaints c;
	Node *root = read_text(arena, text, sizeof text - 1, &c);
	assert_true(c.broken);
	assert_string_equal(node_at(root, "form")->text, "1");
	assert_string_equal(node_at(root, "project.name")->text, "Depot");
	assert_null(node_at(root, "project.city"));
	arena_free(arena);
}

static void depth(void **state)
{
	(void)state;
	for (int levels = 31; levels <= 33; levels++) {
		char text[80];
		memset(text, '[', (size_t)levels);
		text[levels] = 'x';
		memset(text + levels + 1, ']', (size_t)levels);
		Arena *arena = arena_make();
		Complaints c;
		read_text(arena, text, (size_t)levels * 2 + 1, &c);
		assert_int_equal(c.broken, levels > 32);
		assert_int_equal(c.count, levels > 32);
		if (levels > 32)
			assert_int_equal(c.at[0].id, MESSAGE_YML_05);
		arena_free(arena);
	}
}

/* libyaml alone takes minutes for this. */
static void many_brackets_end_at_once(void **state)
{
	(void)state;
	static char text[4 << 20];
	memset(text, '[', sizeof text);
	Arena *arena = arena_make();
	Complaints c;
	clock_t start = clock();
	read_text(arena, text, sizeof text, &c);
	assert_true((double)(clock() - start) / CLOCKS_PER_SEC < 2);
	assert_true(c.broken);
	assert_int_equal(c.at[0].id, MESSAGE_YML_05);
	arena_free(arena);
}

static void bad_bytes_keep_the_lines_before(void **state)
{
	(void)state;
	static const char *const bad[] = { "\xff", "\xc3", "\xc0\xaf", "\xed\xa0\x80", "\xf5\x80\x80\x80", "\x01", "\x7f", "\x1b[0m", "\xc2\x85",
		"\xe2\x80\xa9", "\xef\xbb\xbf", "\xef\xbf\xbf" };
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		Arena *arena = arena_make();
		Complaints c;
		const char *text = arena_printf(arena, "form: 1\nstage: bid\nsee: ab%scd\nround: 1\n", bad[i]);
		Node *root = read_text(arena, text, strlen(text), &c);
		assert_true(c.broken);
		assert_int_equal(c.count, 1);
		assert_int_equal(c.at[0].place.line, 3);
		assert_int_equal(c.at[0].place.column, 8);
		assert_string_equal(node_at(root, "stage")->text, "bid");
		assert_null(node_at(root, "round"));
		arena_free(arena);
	}
}

/* Good UTF-8 of every length is no complaint, wherever it falls in eight bytes. */
static void good_bytes(void **state)
{
	(void)state;
	static const char *const good[] = { "a", "\xc2\xa0", "\xc3\xa9", "\xe2\x82\xac", "\xf0\x9f\x8f\xa0", "\xee\x80\x80" };
	for (size_t i = 0; i < sizeof good / sizeof *good; i++)
		for (int blanks = 0; blanks < 9; blanks++) {
			Arena *arena = arena_make();
			Complaints c;
			const char *text = arena_printf(arena, "see: %.*s%s end\n", blanks, "xxxxxxxxx", good[i]);
			read_text(arena, text, strlen(text), &c);
			assert_int_equal(c.count, 0);
			arena_free(arena);
		}
}

/* ---- files that nobody wrote ---- */

static const char sample[] =
	"form: 1   # of the form\nsubmittal: MC-1042\nstage: application\ndate: 2026-04-14\n"
	"project: {name: \"Marrow Creek Depot\", street: '1 Sample Road', salt_water: {kind: none}, code: {name: IBC, edition: 2021}}\n"
	"parties:\n  general_contractor: {by others: Example Builders (invented)}\n  designer: \"not applicable: none\"\n"
	"warranty: {term: 20 yr, covers: [panels, flashings]}\n"
	"roof_areas:\n  - name: Main roof\n    see: |\n      two\n      lines\n    panel: {metal: steel, thickness: 24 ga, slope: \"1:12\"}\n"
	"    clips: [{item: clip-a-float, spacing: {field: 24 in, corner: 12 in}}]\n"
	"    fasteners:\n      - item: other\n        mark: no. #12\n        size: \"#12\"\n"
	"    penetrations: none\n  - &a name: *b\n  - !t {x: >\n  folded\n}\nd\xc3\xa9tails: []\n";

static void read_whatever(const char *text, size_t length)
{
	Arena *arena = arena_make();
	Complaints c = { .arena = arena };
	const Source *source = source_make(arena, "test.yaml", arena_text(arena, text, length), length, SOURCE_SUBMITTAL);
	Node *root = read_yaml(arena, source, &c);
	assert_true(root != NULL || c.broken);
	assert_non_null(read_submittal(arena, root, source, &small_reference, &c));
	for (uint32_t i = 0; i < c.count; i++) {
		const Message *m = message_of(c.at[i].id);
		assert_true(strlen(complaint_text(&c.at[i], m->finding, arena)) > 0);
		assert_true(strlen(complaint_text(&c.at[i], m->remedy, arena)) > 0);
		assert_true(c.at[i].place.line <= source->lines + 1);
	}
	arena_free(arena);
}

static void any_cut_is_answered(void **state)
{
	(void)state;
	for (size_t length = 0; length < sizeof sample; length++)
		read_whatever(sample, length);
}

static uint32_t next_random(uint32_t *seed)
{
	*seed ^= *seed << 13;
	*seed ^= *seed >> 17;
	*seed ^= *seed << 5;
	return *seed;
}

static void any_change_is_answered(void **state)
{
	(void)state;
	static const char signs[] = "#:,{}[]\"'-&*!|>%@`?\t\n \\x1\x80\xff\0";
	uint32_t seed = 20260414;
	for (int i = 0; i < 20000; i++) {
		char text[sizeof sample];
		memcpy(text, sample, sizeof sample);
		for (uint32_t n = next_random(&seed) % 4; n < 5; n++)
			text[next_random(&seed) % (sizeof sample - 1)] = signs[next_random(&seed) % (sizeof signs)];
		size_t from = next_random(&seed) % 3 == 0 ? next_random(&seed) % sizeof sample : 0;
		read_whatever(text + from, sizeof sample - 1 - from);
	}
}

/* ---- the dump ---- */

static void dump_text(FILE *out, const Node *node)
{
	putc('"', out);
	for (uint32_t i = 0; i < node->length; i++) {
		unsigned char c = (unsigned char)node->text[i];
		if (c == '"' || c == '\\' || c < 0x20)
			fprintf(out, "\\u%04x", c);
		else
			putc(c, out);
	}
	putc('"', out);
}

static void dump(FILE *out, const Node *node)
{
	if (node->kind == NODE_SCALAR) {
		dump_text(out, node);
		return;
	}
	putc(node->kind == NODE_MAP ? '{' : '[', out);
	for (const Node *n = node->first; n != NULL; n = n->next) {
		if (n->kind == NODE_KEY) {
			dump_text(out, n);
			putc(':', out);
		}
		dump(out, n->kind == NODE_KEY ? n->first : n);
		if (n->next != NULL)
			putc(',', out);
	}
	putc(node->kind == NODE_MAP ? '}' : ']', out);
}

/* A file that was refused in part reads differently elsewhere: an empty line stands for it. */
static void dump_file(const char *path)
{
	Arena *arena = arena_make();
	const char *bytes = NULL, *why = NULL;
	size_t length = 0;
	Complaints c = { .arena = arena };
	if (file_read(arena, path, 4 << 20, &bytes, &length, &why) == FILE_READ) {
		Node *root = read_yaml(arena, source_make(arena, path, bytes, length, SOURCE_SUBMITTAL), &c);
		bool is_same = root != NULL && !c.broken;
		for (uint32_t i = 0; i < c.count; i++)
			is_same = is_same && (c.at[i].id == MESSAGE_YML_14 || c.at[i].id == MESSAGE_YML_15);
		if (is_same)
			dump(stdout, root);
	}
	putchar('\n');
	arena_free(arena);
}

int main(int count, char **argument)
{
	if (count > 1 && strcmp(argument[1], "--dump") == 0) {
		for (int i = 2; i < count; i++)
			dump_file(argument[i]);
		return 0;
	}
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(places),
		cmocka_unit_test(trade_values_stay_as_typed),
		cmocka_unit_test(line_ends),
		cmocka_unit_test(cut_values_are_marked),
		cmocka_unit_test(refused_values_are_marked),
		cmocka_unit_test(repeated_keys),
		cmocka_unit_test(a_broken_file_keeps_what_came_before),
		cmocka_unit_test(depth),
		cmocka_unit_test(many_brackets_end_at_once),
		cmocka_unit_test(bad_bytes_keep_the_lines_before),
		cmocka_unit_test(good_bytes),
		cmocka_unit_test(any_cut_is_answered),
		cmocka_unit_test(any_change_is_answered),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

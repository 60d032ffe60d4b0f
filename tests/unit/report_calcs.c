/* SPDX-License-Identifier: MIT
 * The sheet of calculations: templates in and out of calculator notation, markup that cannot be broken out of, the keys of the JSON,
 * and a sheet of a submittal whose every text is hostile.
 */
#include "rule_cases.h"

#include "report.h"
#include "template.h"

#include "report/calcs.h"
#include "report/markup.h"

#include <jansson.h>

static void calculator_notation_is_told_from_words(void **state)
{
	(void)state;
	static const char *const expressions[] = { "{spacing} / {class_spacing}", "max({a}, {b.c} * (1 + {d})) ^ 2", "atan({s} / 12)",
		"log10({a} / 2.5e3)", "3", "{a}", "0 - {a}" };
	static const char *const words[] = { "least {clip.hole}", "{a}, or that of {b}", "abs({a})", "{a} and {b}", "count of engineering",
		"{a} = {b}", "{a} < {b}", "system({a})", "{a" };
	for (size_t i = 0; i < sizeof expressions / sizeof *expressions; i++)
		assert_true(is_calculator(expressions[i]));
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		assert_false(is_calculator(words[i]));
	const char *text = "2 * {b.c}";
	Snippet snippet;
	assert_true(template_next(&text, &snippet));
	assert_false(snippet.is_name);
	assert_true(template_next(&text, &snippet));
	assert_true(snippet.is_name);
	assert_int_equal(snippet.length, 3);
	assert_false(template_next(&text, &snippet));
}

static void markup_escapes_whatever_it_is_given(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Markup markup = { .out = out_make(arena, OUT_MARKUP) };
	OPEN(&markup, "p");
	ATTRIBUTE(&markup, "class", "\"'><b>&\t\n\r");
	markup_text(&markup, "</p><script>&\"'\x1b\xe2\x80\xae\xff");
	CLOSE(&markup, "p");
	assert_string_equal(out_text(markup.out, NULL), "\n<p class=\"&quot;&#39;&gt;&lt;b&gt;&amp;\\t\\n\\r\">"
		"&lt;/p&gt;&lt;script&gt;&amp;&quot;&#39;\\x1b\\u{202e}\\xff</p>");
	arena_free(arena);
}

static void an_empty_element_is_not_closed(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Markup markup = { .out = out_make(arena, OUT_MARKUP) };
	OPEN(&markup, "div");
	OPEN(&markup, "br");
	ELEMENT(&markup, "span", "a");
	CLOSE(&markup, "div");
	assert_string_equal(out_text(markup.out, NULL), "\n<div>\n<br><span>a</span></div>");
	assert_int_equal(markup.depth, 0);
	arena_free(arena);
}

/* ---- whole sheets ---- */

static const char *sheet_text(const World *world, Arena *arena, Node *root, const Source *source, const char *form)
{
	Verdict *verdict = review_nodes(world, arena, root, source);
	Sheet *sheet = make_sheet(verdict, arena);
	find_margins(sheet, verdict, arena);
	const PageFormat *format = page_format("calcs", form);
	Out *out = out_make(arena, format->escape);
	format->write(out, &(Page){ .sheet = sheet }, arena);
	return out_text(out, NULL);
}

static bool has_keys(json_t *object, const char *const *key)
{
	for (; *key != NULL; key++)
		if (json_object_get(object, *key) == NULL) {
			print_error("no key %s\n", *key);
			return false;
		}
	return true;
}

static void check_fact(json_t *fact)
{
	static const char *const keys[] = { "record", "name", "fact", "state", "value", "unit", "formula", "source", "known_by", "uses", NULL };
	static const char *const of_use[] = { "value", "unit", "known_by", NULL };
	assert_true(has_keys(fact, keys));
	const char *state = json_string_value(json_object_get(fact, "state"));
	bool known = strcmp(state, "known") == 0;
	assert_true(json_is_null(json_object_get(fact, "value")) == !known);
	assert_true((json_object_get(fact, "waits_for") != NULL) == (strcmp(state, "waiting") == 0));
	assert_true((json_object_get(fact, "reason") != NULL) == (!known && strcmp(state, "waiting") != 0));
	size_t i;
	json_t *use;
	json_array_foreach(json_object_get(fact, "uses"), i, use) {
		int kinds = json_object_get(use, "fact") != NULL;
		kinds += json_object_get(use, "field") != NULL;
		kinds += json_object_get(use, "constant") != NULL;
		assert_int_equal(kinds, 1);
		assert_true(has_keys(use, of_use));
	}
}

static void json_has_the_keys_of_the_contract(void **state)
{
	(void)state;
	static const char *const keys[] = { "seamstamp", "submittal", "facts", "margins", "constants", NULL };
	World world = world_make();
	Arena *arena = arena_make();
	const Source *source;
	Node *root = builtin_nodes(arena, "examples/clean.yaml", &source);
	assert_true(node_delete(root, "roof_areas.0.clips.0.hole"));
	assert_true(edit_nodes(arena, root, "roof_areas.0.support.thickness", "unknown"));
	json_error_t error;
	json_t *tree = json_loads(sheet_text(&world, arena, root, source, "json"), JSON_REJECT_DUPLICATES, &error);
	assert_non_null(tree);
	assert_true(has_keys(tree, keys));
	assert_string_equal(json_string_value(json_object_get(tree, "submittal")), "MC-1042");
	size_t i, waiting = 0;
	json_t *fact;
	json_array_foreach(json_object_get(tree, "facts"), i, fact) {
		check_fact(fact);
		json_t *waits = json_object_get(fact, "waits_for");
		const char *name = json_string_value(json_object_get(fact, "fact"));
		if (waits == NULL || strcmp(name, "drilled_thickness") != 0)
			continue;
		assert_string_equal(json_string_value(json_array_get(waits, 0)), "support.thickness");
		waiting++;
	}
	assert_true(i > 200);
	assert_true(waiting > 0);
	json_decref(tree);
	arena_free(arena);
	arena_free(world.run);
}

/* Every free text of the clean example becomes hostile; the page opens only elements of its own. */
static void a_hostile_submittal_makes_no_element(void **state)
{
	(void)state;
	static const char *const forms[] = { "text", "json", "html" };
	static const char *const paths[] = { "submittal", "project.name", "roof_areas.0.name", "roof_areas.0.clips.0.item",
		"roof_areas.0.penetrations.0.name", "engineering.0.letter", "roof_areas.0.tests.0.listing", "roof_areas.0.fasteners.0.item" };
	World world = world_make();
	for (size_t f = 0; f < sizeof forms / sizeof *forms; f++) {
		Arena *arena = arena_make();
		const Source *source;
		Node *root = builtin_nodes(arena, "examples/clean.yaml", &source);
		for (size_t i = 0; i < sizeof paths / sizeof *paths; i++)
			assert_true(node_set(arena, root, paths[i], "</td><script src=x>\"'& ::error:: <!-- ]]> \xe2\x80\xae"));
		const char *text = sheet_text(&world, arena, root, source, forms[f]);
		assert_null(strstr(text, "\xe2\x80\xae"));
		if (f == 2) {
			assert_null(strstr(text, "<script"));
			assert_null(strstr(text, "<!-- "));
			assert_non_null(strstr(text, "&lt;/td&gt;&lt;script src=x&gt;"));
		}
		arena_free(arena);
	}
	arena_free(world.run);
}

/* What the edition says of a figure's source is what the sheet says of the figure. */
static void constants_are_counted_once(void **state)
{
	(void)state;
	World world = world_make();
	Arena *arena = arena_make();
	const Source *source;
	Node *root = builtin_nodes(arena, "examples/clean.yaml", &source);
	const Sheet *sheet = make_sheet(review_nodes(&world, arena, root, source), arena);
	uint32_t sum = 0;
	for (int known = 0; known < 4; known++)
		sum += sheet->known_by[known];
	assert_int_equal(sum, sheet->constants);
	assert_true(sheet->constants > 20);
	for (uint32_t i = 0; i < sheet->constants; i++)
		for (uint32_t j = 0; j < i; j++) {
			const SheetUse *a = sheet->constant[i].use, *b = sheet->constant[j].use;
			assert_false(strcmp(a->table, b->table) == 0 && strcmp(a->row, b->row) == 0 && a->value == b->value);
		}
	assert_int_equal(sheet->by_state[0] + sheet->by_state[1] + sheet->by_state[2] + sheet->by_state[3], sheet->lines);
	arena_free(arena);
	arena_free(world.run);
}

static void figures_have_six_digits(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	assert_string_equal(figure(58.449999999, arena), "58.45");
	assert_string_equal(figure(1.0 / 3, arena), "0.333333");
	assert_string_equal(figure(0.0000065, arena), "0.0000065");
	assert_string_equal(figure(0, arena), "0");
	assert_string_equal(figure(24, arena), "24");
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(calculator_notation_is_told_from_words),
		cmocka_unit_test(markup_escapes_whatever_it_is_given),
		cmocka_unit_test(an_empty_element_is_not_closed),
		cmocka_unit_test(json_has_the_keys_of_the_contract),
		cmocka_unit_test(a_hostile_submittal_makes_no_element),
		cmocka_unit_test(constants_are_counted_once),
		cmocka_unit_test(figures_have_six_digits),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

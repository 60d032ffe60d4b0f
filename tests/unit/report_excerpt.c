/* SPDX-License-Identifier: MIT
 * Excerpts: the caret stands under the place by the width of what is shown, whatever the characters before it are.
 */
#include "check.h"

#include "report/excerpt.h"

/* The excerpt of a place in a one-line file. */
static const char *excerpt(Arena *arena, const char *line, uint32_t column, uint32_t length)
{
	const Source *source = source_make(arena, "a.yaml", line, strlen(line), SOURCE_SUBMITTAL);
	Out *out = out_make(arena, OUT_TERMINAL);
	Place place = { .line = 1, .column = column, .length = length };
	put_excerpt(out, source, &place, 2);
	return out_text(out, NULL);
}

static void caret_stands_under_the_value(void **state)
{
	Arena *arena = arena_make();
	(void)state;
	assert_string_equal(excerpt(arena, "    item: clip-b-float", 11, 12), "  item: clip-b-float\n        ^^^^^^^^^^^^\n");
	assert_string_equal(excerpt(arena, "a: b", 1, 0), "  a: b\n  ^\n");
	arena_free(arena);
}

static void wide_characters_take_two_columns(void **state)
{
	Arena *arena = arena_make();
	(void)state;
	assert_string_equal(excerpt(arena, "屋根: x", 5, 1), "  屋根: x\n        ^\n");
	assert_string_equal(excerpt(arena, "屋根", 2, 1), "  屋根\n    ^^\n");
	arena_free(arena);
}

static void combining_characters_take_none(void **state)
{
	Arena *arena = arena_make();
	(void)state;
	/* e and a combining acute accent are two code points on one column */
	assert_string_equal(excerpt(arena, "e\xcc\x81: x", 5, 1), "  e\xcc\x81: x\n     ^\n");
	arena_free(arena);
}

static void escapes_count_as_they_are_shown(void **state)
{
	Arena *arena = arena_make();
	(void)state;
	assert_string_equal(excerpt(arena, "a\x1b: x", 5, 1), "  a\\x1b: x\n         ^\n");
	assert_string_equal(excerpt(arena, "\xe2\x80\xae: x", 4, 1), "  \\u{202e}: x\n            ^\n");
	arena_free(arena);
}

static void tabs_stay_in_both_lines(void **state)
{
	Arena *arena = arena_make();
	(void)state;
	assert_string_equal(excerpt(arena, "a:\tb", 4, 1), "  a:\tb\n    \t^\n");
	arena_free(arena);
}

/* Words are not cut in two where the line has blanks. */
static void long_lines_are_cut_between_words(void **state)
{
	Arena *arena = arena_make();
	char line[601] = "";
	(void)state;
	for (int i = 0; i < 60; i++)
		memcpy(line + 10 * i, "built_up, ", 10);
	line[600] = '\0';
	memcpy(line + 300, "HERE", 4);
	const char *text = excerpt(arena, line, 301, 4);
	const char *second = strchr(text, '\n') + 1;
	assert_memory_equal(text, "  ... built_up, ", 16);
	assert_memory_equal(second - 14, "built_up, ...\n", 14);
	assert_int_equal(strspn(second, " "), strstr(text, "HERE") - text);
	arena_free(arena);
}

static void long_lines_are_cut_around_the_place(void **state)
{
	Arena *arena = arena_make();
	char line[601];
	(void)state;
	memset(line, 'x', 600);
	line[600] = '\0';
	memcpy(line + 300, "HERE", 4);
	const char *text = excerpt(arena, line, 301, 4);
	const char *second = strchr(text, '\n') + 1;
	const char *here = strstr(text, "HERE");
	assert_non_null(here);
	assert_true(second - text <= 101);
	assert_int_equal(strspn(second, " "), here - text);
	assert_non_null(strstr(second, "^^^^\n"));
	assert_null(strstr(second, "^^^^^"));
	assert_memory_equal(text, "  ... x", 7);
	assert_memory_equal(second - 5, " ...\n", 5);
	arena_free(arena);
}

static void no_excerpt_where_there_is_no_line(void **state)
{
	Arena *arena = arena_make();
	(void)state;
	const Source *source = source_make(arena, "a.yaml", "a: b\n", 5, SOURCE_SUBMITTAL);
	Out *out = out_make(arena, OUT_TERMINAL);
	put_excerpt(out, source, &(Place){ .line = 0 }, 2);
	put_excerpt(out, source, &(Place){ .line = 9, .column = 1 }, 2);
	put_excerpt(out, source, &(Place){ .line = 1, .column = 5000 }, 2);
	put_excerpt(out, NULL, &(Place){ .line = 1, .column = 1 }, 2);
	assert_string_equal(out_text(out, NULL), "");
	put_excerpt(out, source, &(Place){ .line = 1, .column = 90, .length = 3 }, 2); /* behind the end of its line */
	assert_string_equal(out_text(out, NULL), "  a: b\n      ^\n");
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(caret_stands_under_the_value),
		cmocka_unit_test(wide_characters_take_two_columns),
		cmocka_unit_test(combining_characters_take_none),
		cmocka_unit_test(escapes_count_as_they_are_shown),
		cmocka_unit_test(tabs_stay_in_both_lines),
		cmocka_unit_test(long_lines_are_cut_between_words), cmocka_unit_test(long_lines_are_cut_around_the_place),
		cmocka_unit_test(no_excerpt_where_there_is_no_line),
	};
	return cmocka_run_group_tests_name("report_excerpt", tests, NULL, NULL) != 0;
}

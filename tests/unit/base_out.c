/* SPDX-License-Identifier: MIT
 * The escaping writer: what must never reach a terminal, a spreadsheet, a browser or a build server as it is.
 */
#include "check.h"

#include "out.h"

static int make_arena(void **state)
{
	*state = arena_make();
	return 0;
}

static int free_arena(void **state)
{
	arena_free(*state);
	return 0;
}

static const char *written(Arena *arena, OutEscape escape, const char *text)
{
	Out *out = out_make(arena, escape);
	put(out, text);
	return out_text(out, NULL);
}

static void controls_are_shown(void **state)
{
	assert_string_equal(written(*state, OUT_TERMINAL, "a\x1b[31mb"), "a\\x1b[31mb");
	assert_string_equal(written(*state, OUT_TERMINAL, "\x01\x7f"), "\\x01\\x7f");
	assert_string_equal(written(*state, OUT_TERMINAL, "a\xc2\x9b" "b"), "a\\x9bb");
	assert_string_equal(written(*state, OUT_TERMINAL, "one\ntwo\r\n\tend"), "one\\ntwo\\r\\n\\tend");
}

static void marks_of_direction_and_hidden_characters_are_shown(void **state)
{
	assert_string_equal(written(*state, OUT_TERMINAL, "a\xe2\x80\xae" "b"), "a\\u{202e}b");
	assert_string_equal(written(*state, OUT_TERMINAL, "\xe2\x81\xa6\xe2\x81\xa9"), "\\u{2066}\\u{2069}");
	assert_string_equal(written(*state, OUT_TERMINAL, "\xe2\x80\xa8\xe2\x80\xa9"), "\\u{2028}\\u{2029}");
	assert_string_equal(written(*state, OUT_TERMINAL, "\xe2\x80\x8b"), "\\u{200b}");
	assert_string_equal(written(*state, OUT_TERMINAL, "\xef\xbb\xbf"), "\\u{feff}");
	assert_string_equal(written(*state, OUT_TERMINAL, "\xee\x80\x80"), "\\u{e000}");
	assert_string_equal(written(*state, OUT_TERMINAL, "\xef\xbf\xbe"), "\\u{fffe}");
	assert_string_equal(written(*state, OUT_TERMINAL, "\xf3\xa0\x81\x81"), "\\u{e0041}");
}

static void bytes_that_are_no_text_are_shown(void **state)
{
	assert_string_equal(written(*state, OUT_TERMINAL, "a\xff" "b\xc3"), "a\\xffb\\xc3");
	assert_string_equal(written(*state, OUT_TERMINAL, "\xed\xa0\x80"), "\\xed\\xa0\\x80"); /* a surrogate */
	assert_string_equal(written(*state, OUT_TERMINAL, "\xc0\xaf"), "\\xc0\\xaf"); /* overlong */
	Out *out = out_make(*state, OUT_TERMINAL);
	put_part(out, "a\0b", 3);
	assert_string_equal(out_text(out, NULL), "a\\x00b");
}

static void ordinary_text_stays(void **state)
{
	const char *text = "#12-14 x 1\" at 24\xe2\x80\xb3, 5\xc2\xb0, K\xc3\xbchn & S\xc3\xb8n <ok> 'x'";
	assert_string_equal(written(*state, OUT_TERMINAL, text), text);
}

static void commands_of_build_servers_are_broken(void **state)
{
	assert_string_equal(written(*state, OUT_TERMINAL, "::error::x"), "\\x3a:error::x");
	assert_string_equal(written(*state, OUT_TERMINAL, "  ::error::x"), "  \\x3a:error::x");
	assert_string_equal(written(*state, OUT_TERMINAL, "a ::b"), "a ::b");
	assert_string_equal(written(*state, OUT_TERMINAL, "see ##[error]x"), "see \\x23#[error]x");
	assert_string_equal(written(*state, OUT_TERMINAL, "##vso[task]"), "\\x23#vso[task]");
	Out *out = out_make(*state, OUT_TERMINAL);
	SAY(out, "first\n   ");
	put(out, "::warning::x");
	SAY(out, "\nname: ");
	put(out, "::x");
	assert_string_equal(out_text(out, NULL), "first\n   \\x3a:warning::x\nname: ::x");
}

static void cells_are_no_formulas(void **state)
{
	assert_string_equal(written(*state, OUT_CSV, "=1+1"), "'=1+1");
	assert_string_equal(written(*state, OUT_CSV, "+1"), "'+1");
	assert_string_equal(written(*state, OUT_CSV, "-1"), "'-1");
	assert_string_equal(written(*state, OUT_CSV, "  @x"), "'  @x");
	assert_string_equal(written(*state, OUT_CSV, "\t=x"), "'\\t=x");
	assert_string_equal(written(*state, OUT_CSV, "24\" o.c."), "24\"\" o.c.");
	assert_string_equal(written(*state, OUT_CSV, "a\nb"), "a\\nb");
	assert_string_equal(written(*state, OUT_CSV, "1-1/2"), "1-1/2");
}

static void markup_is_closed(void **state)
{
	assert_string_equal(written(*state, OUT_MARKUP, "<b a=\"x\" c='y'>&amp;"),
		"&lt;b a=&quot;x&quot; c=&#39;y&#39;&gt;&amp;amp;");
	assert_string_equal(written(*state, OUT_MARKUP, "\x1b\x02"), "\\x1b\\x02");
}

static void literals_go_as_they_are(void **state)
{
	Out *out = out_make(*state, OUT_MARKUP);
	SAY(out, "<p>");
	put_count(out, 1234567);
	put_spaces(out, 3);
	SAY(out, "</p>\n");
	put_spaces(out, 0);
	put_spaces(out, -1);
	size_t length;
	assert_string_equal(out_text(out, &length), "<p>1234567   </p>\n");
	assert_int_equal(length, 18);
}

static void long_texts_grow(void **state)
{
	Out *out = out_make(*state, OUT_TERMINAL);
	for (int i = 0; i < 10000; i++)
		put(out, "0123456789");
	put_spaces(out, 70);
	size_t length;
	const char *text = out_text(out, &length);
	assert_int_equal(length, 100070);
	assert_int_equal(strlen(text), 100070);
	assert_memory_equal(text + 99990, "0123456789", 10);
}

static void lines_break_at_blanks(void **state)
{
	Out *out = out_make(*state, OUT_TERMINAL);
	int at = put_wrapped(out, "the clip spacing is more than the listing allows", 0, 4, 20);
	assert_string_equal(out_text(out, NULL), "the clip spacing is\n    more than the\n    listing allows");
	assert_int_equal(at, 18);
	out = out_make(*state, OUT_TERMINAL);
	at = put_wrapped(out, "abcdefghijklmnopqrstuvwxyz xy", 0, 2, 10);
	assert_string_equal(out_text(out, NULL), "abcdefghijklmnopqrstuvwxyz\n  xy");
	assert_int_equal(at, 4);
	out = out_make(*state, OUT_TERMINAL);
	SAY(out, "name: ");
	at = put_wrapped(out, "ab cd", 6, 6, 11);
	assert_string_equal(out_text(out, NULL), "name: ab cd");
	assert_int_equal(at, 11);
	out = out_make(*state, OUT_TERMINAL);
	at = put_wrapped(out, "\x1b\x1b\x1b ab", 0, 0, 14); /* escapes count with what they show */
	assert_string_equal(out_text(out, NULL), "\\x1b\\x1b\\x1b\nab");
	assert_int_equal(at, 2);
}

static void widths_are_columns(void **state)
{
	(void)state;
	assert_int_equal(out_width("abc", 3), 3);
	assert_int_equal(out_width("K\xc3\xbchn", 5), 4);
	assert_int_equal(out_width("\xe6\xbc\xa2", 3), 2); /* a wide character */
	assert_int_equal(out_width("e\xcc\x81", 3), 1); /* a combining one */
	assert_int_equal(out_width("\x1b", 1), 4);
	assert_int_equal(out_width("\xe2\x80\xae", 3), 8);
	assert_int_equal(out_width("\t", 1), 2);
	assert_int_equal(out_width("", 0), 0);
}

int main(void)
{
#define TEST(name) cmocka_unit_test_setup_teardown(name, make_arena, free_arena)
	const struct CMUnitTest tests[] = {
		TEST(controls_are_shown),
		TEST(marks_of_direction_and_hidden_characters_are_shown),
		TEST(bytes_that_are_no_text_are_shown),
		TEST(ordinary_text_stays),
		TEST(commands_of_build_servers_are_broken),
		TEST(cells_are_no_formulas),
		TEST(markup_is_closed),
		TEST(literals_go_as_they_are),
		TEST(long_texts_grow),
		TEST(lines_break_at_blanks),
		TEST(widths_are_columns),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}

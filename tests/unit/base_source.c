/* SPDX-License-Identifier: MIT
 * Sources: lines, places, hashes; and the words of complaints.
 */
#include "check.h"

#include "complaint.h"
#include "source.h"

static Source *source_of(Arena *arena, const char *text)
{
	return source_make(arena, "sample.yaml", text, strlen(text), 7);
}

static void assert_line(const Source *source, uint32_t line, const char *text)
{
	size_t length;
	const char *found = source_line(source, line, &length);
	assert_int_equal(length, strlen(text));
	assert_memory_equal(found, text, length);
}

static void lines_end_by_lf_crlf_or_cr(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Source *source = source_of(arena, "one\ntwo\r\nthree\rfour\n\nsix");
	assert_int_equal(source->lines, 6);
	assert_line(source, 1, "one");
	assert_line(source, 2, "two");
	assert_line(source, 3, "three");
	assert_line(source, 4, "four");
	assert_line(source, 5, "");
	assert_line(source, 6, "six");
	assert_line(source, 0, "");
	assert_line(source, 7, "");
	assert_int_equal(source_of(arena, "")->lines, 0);
	assert_int_equal(source_of(arena, "a\n")->lines, 1);
	assert_int_equal(source_of(arena, "a\r\n\r\n")->lines, 2);
	arena_free(arena);
}

static void a_byte_order_mark_is_left_out(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Source *source = source_of(arena, "\xef\xbb\xbfname: x\n");
	assert_line(source, 1, "name: x");
	assert_int_equal(source->length, 8);
	assert_int_equal(source_place(source, 0, 4).column, 1);
	assert_int_equal(source_offset(source, 1, 1), 0);
	arena_free(arena);
}

static void assert_place(Place place, uint32_t line, uint32_t column)
{
	assert_int_equal(place.line, line);
	assert_int_equal(place.column, column);
	assert_int_equal(place.source, 7);
}

static void columns_are_code_points(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Source *source = source_of(arena, "K\xc3\xbchn: 5\xe2\x80\xb3\nb: \xf0\x9f\x98\x80x\n");
	assert_place(source_place(source, 0, 1), 1, 1);
	assert_place(source_place(source, 1, 1), 1, 2);
	assert_place(source_place(source, 3, 1), 1, 3);
	assert_place(source_place(source, 7, 1), 1, 7);
	assert_place(source_place(source, 12, 1), 2, 1);
	assert_place(source_place(source, 19, 1), 2, 5);
	assert_place(source_place(source, 21, 0), 3, 1); /* the end of the file */
	assert_place(source_place(source, 9999, 0), 3, 1);
	assert_int_equal(source_offset(source, 1, 3), 3);
	assert_int_equal(source_offset(source, 2, 5), 19);
	assert_int_equal(source_offset(source, 3, 1), 21);
	assert_int_equal(source_offset(source, 1, 999), 12); /* no further than its line */
	assert_int_equal(source_offset(source, 0, 1), 0);
	assert_place(source_place(source_of(arena, ""), 0, 0), 1, 1);
	arena_free(arena);
}

static void the_hash_is_that_of_the_file(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	/* FIPS 180-4: the text "abc"; the empty one; by sha256sum: a byte-order mark and "abc" */
	assert_string_equal(source_hash(source_of(arena, "abc"), arena),
		"ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
	assert_string_equal(source_hash(source_of(arena, ""), arena),
		"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
	assert_string_equal(source_hash(source_of(arena, "\xef\xbb\xbf" "abc"), arena),
		"1c28dc3f1f804a1ad9c9b4b4cf5e2658d16ad4ed08e3020d04a8d2865018947c");
	arena_free(arena);
}

static void complaints_fill_their_braces(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Complaint complaint = { .id = MESSAGE_FIL_01, .about = { .key = "slope", .value = "{want}", .want = "1:12" } };
	complaint.about.also.line = 9;
	assert_string_equal(complaint_text(&complaint, "{key} is {value}, not {want}; see {also}.", arena),
		"slope is {want}, not 1:12; see line 9.");
	assert_string_equal(complaint_text(&complaint, "{other} {key {} }", arena), "{other} {key {} }");
	complaint.about = (About){ .key = NULL };
	assert_string_equal(complaint_text(&complaint, "<{key}{value}{want}{also}>", arena), "<>");
	char longest[200];
	memset(longest, 'a', sizeof longest - 1);
	memcpy(longest + 79, "\xc3\xbc", 2);
	longest[199] = '\0';
	complaint.about.value = longest;
	const char *text = complaint_text(&complaint, "{value}", arena);
	assert_int_equal(strlen(text), 82); /* cut before the character that does not fit */
	assert_string_equal(text + 78, "a...");
	arena_free(arena);
}

static void complaints_are_kept_in_order(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Complaints all = { .arena = arena };
	for (uint32_t i = 0; i < 100; i++)
		complain(&all, MESSAGE_FIL_04, (Place){ .line = i + 1 }, (About){ .key = "key" });
	assert_int_equal(all.count, 100);
	for (uint32_t i = 0; i < 100; i++)
		assert_int_equal(all.at[i].place.line, i + 1);
	assert_int_equal(all.at[50].id, MESSAGE_FIL_04);
	assert_string_equal(all.at[99].about.key, "key");
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(lines_end_by_lf_crlf_or_cr),
		cmocka_unit_test(a_byte_order_mark_is_left_out),
		cmocka_unit_test(columns_are_code_points),
		cmocka_unit_test(the_hash_is_that_of_the_file),
		cmocka_unit_test(complaints_fill_their_braces),
		cmocka_unit_test(complaints_are_kept_in_order),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}

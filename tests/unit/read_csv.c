/* SPDX-License-Identifier: MIT
 * Cells of CSV files and their places.
 */
#include "check.h"

#include "../../src/read/csv.h"

#include <stdio.h>

/* What a file gave: each row as "[cell@line:column+length|...]". */
typedef struct {
	Arena *arena;
	const char *rows;
	uint32_t stop_after;
	Complaints complaints;
	const Source *source;
	bool whole;
} Read;

static bool keep_row(void *user, const Cell *cell, uint32_t cells)
{
	Read *read = user;
	read->rows = arena_printf(read->arena, "%s[", read->rows);
	for (uint32_t i = 0; i < cells; i++)
		read->rows = arena_printf(read->arena, "%s%s%s@%u:%u+%u", read->rows, i > 0 ? "|" : "", cell[i].text,
			(unsigned)cell[i].place.line, (unsigned)cell[i].place.column, (unsigned)cell[i].place.length);
	read->rows = arena_printf(read->arena, "%s]", read->rows);
	return read->stop_after == 0 || --read->stop_after > 0;
}

static Read read_bytes(const char *bytes, size_t length, uint32_t stop_after)
{
	Arena *arena = arena_make();
	Read read = { .arena = arena, .rows = "", .stop_after = stop_after, .complaints = { .arena = arena } };
	read.source = source_make(arena, "t.csv", bytes, length, 7);
	CsvFile file = { arena, read.source, &read.complaints, keep_row, &read };
	read.whole = csv_read(&file);
	return read;
}

static Read read_text(const char *text)
{
	return read_bytes(text, strlen(text), 0);
}

static void expect_rows(const char *text, const char *rows)
{
	Read read = read_text(text);
	assert_string_equal(read.rows, rows);
	assert_int_equal(read.complaints.count, 0);
	assert_true(read.whole);
	arena_free(read.arena);
}

/* One complaint at a place, and the rows that are left. */
static void expect_fault(const char *text, MessageId id, uint32_t line, uint32_t column, const char *rows)
{
	Read read = read_text(text);
	assert_int_equal(read.complaints.count, 1);
	assert_int_equal(read.complaints.at[0].id, id);
	assert_int_equal(read.complaints.at[0].place.line, line);
	assert_int_equal(read.complaints.at[0].place.column, column);
	assert_int_equal(read.complaints.at[0].place.source, 7);
	assert_string_equal(read.rows, rows);
	arena_free(read.arena);
}

static void test_places(void **state)
{
	(void)state;
	expect_rows("a,b\nc,d\n", "[a@1:1+1|b@1:3+1][c@2:1+1|d@2:3+1]");
	expect_rows("a,b\nc,d", "[a@1:1+1|b@1:3+1][c@2:1+1|d@2:3+1]");
	expect_rows("a,,\n", "[a@1:1+1|@1:3+0|@1:4+0]");
	expect_rows("", "");
}

static void test_line_ends(void **state)
{
	(void)state;
	expect_rows("a,b\r\nc,d\r\n", "[a@1:1+1|b@1:3+1][c@2:1+1|d@2:3+1]");
	expect_rows("a,b\rc,d\r", "[a@1:1+1|b@1:3+1][c@2:1+1|d@2:3+1]");
	expect_rows("a,b\r\nc,d\n", "[a@1:1+1|b@1:3+1][c@2:1+1|d@2:3+1]");
}

static void test_byte_order_mark(void **state)
{
	(void)state;
	expect_rows("\xef\xbb\xbf\"a\",b\n", "[a@1:1+3|b@1:5+1]");
}

static void test_quotes(void **state)
{
	(void)state;
	expect_rows("\"a,b\",c\n", "[a,b@1:1+5|c@1:7+1]");
	expect_rows("\"6'-0\"\"\",c\n", "[6'-0\"@1:1+8|c@1:10+1]");
	expect_rows("\"\",c\n", "[@1:1+2|c@1:4+1]");
	expect_rows("\"a\nb\",c\nd,e\n", "[a\nb@1:1+2|c@2:4+1][d@3:1+1|e@3:3+1]");
}

static void test_blanks_belong_to_the_cell(void **state)
{
	(void)state;
	expect_rows(" a , b\n", "[ a @1:1+3| b@1:5+2]");
}

static void test_columns_are_characters(void **state)
{
	(void)state;
	expect_rows("\xc3\xa4\xc3\xb6,b\n", "[\xc3\xa4\xc3\xb6@1:1+2|b@1:4+1]");
}

static void test_blank_lines(void **state)
{
	(void)state;
	expect_fault("a,b\n\nc,d\n", MESSAGE_TAB_06, 2, 1, "[a@1:1+1|b@1:3+1][c@3:1+1|d@3:3+1]");
	expect_fault("a,b\r\n\r\nc,d\r\n", MESSAGE_TAB_06, 2, 1, "[a@1:1+1|b@1:3+1][c@3:1+1|d@3:3+1]");
	expect_fault("\na,b\n", MESSAGE_TAB_06, 1, 1, "[a@2:1+1|b@2:3+1]");
	expect_rows("a\n\"\n\"\n", "[a@1:1+1][\n@2:1+1]"); /* within quotation marks a line may be empty */
}

static void test_quotation_marks_at_fault(void **state)
{
	(void)state;
	expect_fault("h\n#12,6\"\nc,d\n", MESSAGE_TAB_02, 2, 6, "[h@1:1+1][c@3:1+1|d@3:3+1]");
	expect_fault("h\na\"b,c\nd\n", MESSAGE_TAB_01, 2, 2, "[h@1:1+1][d@3:1+1]");
	expect_fault("h\n\"a\"b,c\r\nd\r\n", MESSAGE_TAB_03, 2, 4, "[h@1:1+1][d@3:1+1]");
	expect_fault("h\na, \"b\"\nd\n", MESSAGE_TAB_04, 2, 4, "[h@1:1+1][d@3:1+1]");
	expect_fault("h\na,\"b\nc,d\n", MESSAGE_TAB_05, 2, 3, "[h@1:1+1]");
}

static void test_cure_of_an_inch_mark(void **state)
{
	(void)state;
	Read read = read_text("size,length\n#12,1-1/2\"\n");
	assert_int_equal(read.complaints.count, 1);
	assert_string_equal(read.complaints.at[0].about.value, "1-1/2\"");
	assert_string_equal(read.complaints.at[0].about.want, "\"1-1/2\"\"\"");
	assert_false(read.whole);
	arena_free(read.arena);
}

/* The line at fault is lost, the next ones are read: one run shows all. */
static void test_faults_in_several_lines(void **state)
{
	(void)state;
	Read read = read_text("h\na\"\nb\nc 1\"\nd\n");
	assert_int_equal(read.complaints.count, 2);
	assert_int_equal(read.complaints.at[1].place.line, 4);
	assert_string_equal(read.rows, "[h@1:1+1][b@3:1+1][d@5:1+1]");
	arena_free(read.arena);
}

static void test_fault_in_the_header_ends_the_file(void **state)
{
	(void)state;
	expect_fault("h\"\na\"\nb\n", MESSAGE_TAB_01, 1, 2, "");
}

static void test_file_of_faults_ends(void **state)
{
	(void)state;
	char text[2 + 3 * 500 + 1] = "h\n";
	for (size_t i = 0; i < 500; i++)
		memcpy(text + 2 + 3 * i, "a\"\n", 3);
	Read read = read_text(text);
	assert_int_equal(read.complaints.count, 100);
	arena_free(read.arena);
}

static void test_bytes(void **state)
{
	(void)state;
	expect_fault("a,b\nc,\xff\n", MESSAGE_TAB_11, 2, 3, "");
	expect_fault("a,b\nc,\xc3\n", MESSAGE_TAB_11, 2, 3, "");
	expect_fault("a,b\nc,d\x01\n", MESSAGE_TAB_12, 2, 4, "[a@1:1+1|b@1:3+1][c@2:1+1|d\x01@2:3+2]");
	Read read = read_bytes("a\nb\0c\n", 6, 0);
	assert_int_equal(read.complaints.count, 1);
	assert_int_equal(read.complaints.at[0].id, MESSAGE_TAB_12);
	assert_int_equal(read.complaints.at[0].place.line, 2);
	assert_int_equal(read.complaints.at[0].place.column, 2);
	arena_free(read.arena);
}

static void test_longest_cell(void **state)
{
	(void)state;
	enum { LONGEST = 64 * 1024 };
	static char text[LONGEST + 3];
	memset(text, 'x', sizeof text);
	text[LONGEST] = '\n';
	text[LONGEST + 1] = '\0';
	Read read = read_text(text);
	assert_int_equal(read.complaints.count, 0);
	arena_free(read.arena);
	text[LONGEST] = 'x';
	text[LONGEST + 1] = '\n';
	text[LONGEST + 2] = '\0';
	read = read_text(text);
	assert_int_equal(read.complaints.count, 1);
	assert_int_equal(read.complaints.at[0].id, MESSAGE_TAB_09);
	assert_false(read.whole);
	arena_free(read.arena);
}

static void test_reader_may_stop(void **state)
{
	(void)state;
	Read read = read_bytes("a\nb\nc\n", 6, 2);
	assert_string_equal(read.rows, "[a@1:1+1][b@2:1+1]");
	assert_int_equal(read.complaints.count, 0);
	arena_free(read.arena);
}

static void expect_within(const char *text, uint32_t column, size_t index, size_t length, Place expected)
{
	Read read = read_text(text);
	Place cell = { .line = 1, .column = column, .source = 7 };
	Place place = csv_place_within(read.source, cell, index, length);
	assert_int_equal(place.line, expected.line);
	assert_int_equal(place.column, expected.column);
	assert_int_equal(place.length, expected.length);
	arena_free(read.arena);
}

static void test_places_within_a_cell(void **state)
{
	(void)state;
	expect_within("a,size is 12\n", 3, 5, 2, (Place){ .line = 1, .column = 8, .length = 2 });
	expect_within("a,\"size is 12\"\n", 3, 5, 2, (Place){ .line = 1, .column = 9, .length = 2 });
	expect_within("a,\"x \"\"y\"\" z\"\n", 3, 6, 1, (Place){ .line = 1, .column = 12, .length = 1 }); /* text: x "y" z */
	expect_within("a,  size is 12\n", 3, 5, 2, (Place){ .line = 1, .column = 10, .length = 2 });
	expect_within("a,\"b\nc d\"\n", 3, 4, 1, (Place){ .line = 2, .column = 3, .length = 1 });
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_places), cmocka_unit_test(test_line_ends), cmocka_unit_test(test_byte_order_mark),
		cmocka_unit_test(test_quotes), cmocka_unit_test(test_blanks_belong_to_the_cell),
		cmocka_unit_test(test_columns_are_characters), cmocka_unit_test(test_blank_lines),
		cmocka_unit_test(test_quotation_marks_at_fault), cmocka_unit_test(test_cure_of_an_inch_mark),
		cmocka_unit_test(test_faults_in_several_lines), cmocka_unit_test(test_fault_in_the_header_ends_the_file),
		cmocka_unit_test(test_file_of_faults_ends), cmocka_unit_test(test_bytes), cmocka_unit_test(test_longest_cell),
		cmocka_unit_test(test_reader_may_stop), cmocka_unit_test(test_places_within_a_cell),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

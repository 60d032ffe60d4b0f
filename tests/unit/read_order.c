/* SPDX-License-Identifier: MIT
 * Lists of purchases: heads, separators, quantities and units, rows that are no lines, and what is refused at its place.
 */
#include "check.h"

#include "pipeline.h"

#include <stdio.h>

typedef struct {
	Arena *arena;
	Complaints faults;
	const OrderList *list;
} Read;

static Read read_bytes(const char *bytes, size_t length)
{
	Read read = { .arena = arena_make() };
	read.faults.arena = read.arena;
	read.list = read_order(read.arena, source_make(read.arena, "t.csv", bytes, length, SOURCE_ORDER), &read.faults);
	return read;
}

static Read read_good(const char *text, uint32_t lines)
{
	Read read = read_bytes(text, strlen(text));
	for (uint32_t i = 0; i < read.faults.count; i++)
		print_error("%s: %s\n", message_of(read.faults.at[i].id)->code, text);
	assert_non_null(read.list);
	assert_int_equal(read.list->lines, lines);
	return read;
}

static void expect_fault(const char *text, MessageId id, uint32_t line, uint32_t column)
{
	Read read = read_bytes(text, strlen(text));
	assert_null(read.list);
	assert_int_equal(read.faults.count, 1);
	assert_string_equal(message_of(read.faults.at[0].id)->code, message_of(id)->code);
	assert_int_equal(read.faults.at[0].place.line, line);
	assert_int_equal(read.faults.at[0].place.column, column);
	arena_free(read.arena);
}

/* The quantity of one line `a` among commas, quoted. */
static void expect_quantity(const char *cell, double quantity, OrderUnit unit)
{
	char text[200];
	snprintf(text, sizeof text, "item,qty\na,\"%s\"\n", cell);
	Read read = read_good(text, 1);
	assert_close(read.list->line[0].quantity, quantity, 1e-12);
	assert_int_equal(read.list->line[0].unit, unit);
	arena_free(read.arena);
}

static void expect_no_quantity(const char *cell, MessageId id)
{
	char text[200];
	snprintf(text, sizeof text, "item,qty\na,\"%s\"\n", cell);
	expect_fault(text, id, 2, 3);
}

static void test_quantities(void **state)
{
	(void)state;
	expect_quantity("12", 12, BY_NOTHING);
	expect_quantity("1,250", 1250, BY_NOTHING);
	expect_quantity("1,250,000.5", 1250000.5, BY_NOTHING);
	expect_quantity("1250.000", 1250, BY_NOTHING);
	expect_quantity("0.125", 0.125, BY_NOTHING);
	expect_quantity("1.5", 1.5, BY_NOTHING);
	expect_quantity("-3", -3, BY_NOTHING);
	expect_quantity("(3)", -3, BY_NOTHING);
	expect_quantity("3 boxes", 3, BY_PACKAGE);
	expect_quantity("3 box of 250", 3, BY_PACKAGE);
	expect_quantity("40 lin ft", 40, BY_FOOT);
	expect_quantity("\xc2\xa0" "7 pcs. ", 7, BY_PIECE);
	expect_no_quantity("1.250", MESSAGE_ORD_04);
	expect_no_quantity("1.250,5", MESSAGE_ORD_04);
	expect_no_quantity("1.250.000", MESSAGE_ORD_04);
	expect_no_quantity("12,50", MESSAGE_ORD_04);
	expect_no_quantity("1250,000", MESSAGE_ORD_04);
	expect_no_quantity("0,125", MESSAGE_ORD_04);
	expect_no_quantity("", MESSAGE_ORD_05);
	expect_no_quantity("  ", MESSAGE_ORD_05);
	expect_no_quantity("many", MESSAGE_ORD_03);
	expect_no_quantity("(3", MESSAGE_ORD_03);
	expect_no_quantity("3 M", MESSAGE_ORD_03);
	expect_no_quantity("1e5", MESSAGE_ORD_03);
	expect_no_quantity("--3", MESSAGE_ORD_03);
}

static void test_units(void **state)
{
	(void)state;
	Read read = read_good("item,qty,unit\na,3,BX\nb,3,Box of 250\nc,3,bag/500 pcs\nd,3,sq ft\ne,3,\nf,3 boxes,bx\ng,3,ea.\n", 7);
	const OrderLine *line = read.list->line;
	assert_string_equal(line[0].package, "box");
	assert_close(line[0].content, 0, 0);
	assert_close(line[1].content, 250, 0);
	assert_string_equal(line[2].package, "bag");
	assert_close(line[2].content, 500, 0);
	assert_int_equal(line[3].unit, BY_SQUARE_FOOT);
	assert_int_equal(line[4].unit, BY_NOTHING);
	assert_int_equal(line[5].unit, BY_PACKAGE);
	assert_int_equal(line[6].unit, BY_PIECE);
	arena_free(read.arena);
	expect_fault("item,qty,unit\na,3,M\n", MESSAGE_ORD_06, 2, 5);
	expect_fault("item,qty,unit\na,3,box of\n", MESSAGE_ORD_06, 2, 5);
	expect_fault("item,qty,unit\na,3,piece of 5\n", MESSAGE_ORD_06, 2, 5);
	expect_fault("item,qty,unit\na,3 pcs,boxes\n", MESSAGE_ORD_11, 2, 9);
	expect_fault("item,qty,unit\na,3 box of 200,box of 250\n", MESSAGE_ORD_11, 2, 16);
}

static void test_heads(void **state)
{
	(void)state;
	Read read = read_good("Item,Part #,Description,QTY.,U/M,Vendor Name,Order Date,Price\n1,x,y,2,ea,z,2026-05-01,9\n", 1);
	const OrderLine *line = read.list->line;
	assert_string_equal(line->code, "x");
	assert_string_equal(line->words, "y");
	assert_string_equal(line->supplier, "z");
	assert_close(line->quantity, 2, 0);
	assert_true(line->is_dated);
	assert_int_equal(line->day, 20574);
	assert_string_equal(read.list->left_out, "Item, Price");
	arena_free(read.arena);
	read = read_good("code,item,qty\nx,y,2\n", 1);
	assert_string_equal(read.list->line[0].words, "y");
	arena_free(read.arena);
	expect_fault("item,price\na,2\n", MESSAGE_ORD_01, 1, 1);
	expect_fault("", MESSAGE_ORD_01, 1, 1);
	expect_fault("qty,unit\n2,ea\n", MESSAGE_ORD_01, 1, 1);
	expect_fault("item,part,qty\na,b,2\n", MESSAGE_ORD_02, 1, 6);
	expect_fault("sku,part no,qty\na,b,2\n", MESSAGE_ORD_02, 1, 5);
	expect_fault("sku,qty,qty received\na,2,2\n", MESSAGE_ORD_02, 1, 9);
	expect_fault("item,qty\n\n", MESSAGE_ORD_09, 1, 1);
}

static void test_sheets(void **state)
{
	(void)state;
	Read read = read_good("\xef\xbb\xbf" "item;qty\r\n\r\na;12\r\n;\r\nb;3;;\r\nTotal:;15\r\n", 2);
	assert_string_equal(read.list->line[1].code, "b");
	assert_int_equal(read.list->line[1].place.line, 5);
	assert_int_equal(read.list->sums, 1);
	arena_free(read.arena);
	read = read_good("Order 7\t\nitem\tqty\na\t12\n", 1);
	assert_int_equal(read.list->before, 1);
	arena_free(read.arena);
	read = read_good("sep=;\nitem;description;qty\na;\"10-16 x 1\"\", pancake\";2\n", 1);
	assert_string_equal(read.list->line[0].words, "10-16 x 1\", pancake");
	arena_free(read.arena);
	read = read_good("item,description,qty\na,total loss cover,2\n", 1);
	assert_int_equal(read.list->sums, 0);
	arena_free(read.arena);
	expect_fault("item,description,qty\na,1-1/2\" long,2\n", MESSAGE_TAB_02, 2, 8);
	expect_fault("item,description,qty\na,b\n", MESSAGE_TAB_07, 2, 1);
	expect_fault("item,qty\na,1,250\n", MESSAGE_TAB_08, 2, 5);
	expect_fault("item,qty\n,5\n", MESSAGE_ORD_10, 2, 1);
	expect_fault("item,qty,date\na,5,5/4/2026\n", MESSAGE_ORD_07, 2, 5);
	expect_fault("item;qty\na;12,5\n", MESSAGE_ORD_04, 2, 3);
	expect_fault("item;qty\na;1,250\n", MESSAGE_ORD_04, 2, 3);
	expect_fault("item,qty\n\xe9,5\n", MESSAGE_TAB_11, 2, 1);
	expect_fault("item,qty\n\"a,5\n", MESSAGE_TAB_05, 2, 1);
}

/* What sheets made for the eye do to a list. */
static void test_sheets_for_the_eye(void **state)
{
	(void)state;
	Read read = read_good("item,qty\rclip,5\r", 1);
	arena_free(read.arena);
	read = read_good("item,qty,unit\na,5,ea\nitem,qty,unit\nb,6,ea\n,,\nTotal,11,\n", 2);
	assert_int_equal(read.list->heads, 1);
	assert_int_equal(read.list->sums, 1);
	assert_string_equal(read.list->line[1].code, "b");
	arena_free(read.arena);
	expect_fault("item,qty,unit\na,5,ea\nitem,unit,qty\nb,ea,6\n", MESSAGE_ORD_12, 3, 1);
	expect_fault("Item,,Quantity,\nCode,Description,Ordered,Unit\na,b,5,ea\n", MESSAGE_ORD_12, 2, 1);
}

/* The unit in the head, and heads that name another quantity. */
static void test_quantity_heads(void **state)
{
	(void)state;
	Read read = read_good("item,Qty (boxes)\na,5\nb,6 bx\n", 2);
	assert_string_equal(read.list->line[0].package, "box");
	assert_string_equal(read.list->line[1].package, "box");
	arena_free(read.arena);
	read = read_good("item,Quantity in lin. ft\na,5\n", 1);
	assert_int_equal(read.list->line[0].unit, BY_FOOT);
	arena_free(read.arena);
	read = read_good("item,Qty [box of 50],unit\na,5,\n", 1);
	assert_close(read.list->line[0].content, 50, 0);
	arena_free(read.arena);
	expect_fault("item,Qty (boxes)\na,5 pcs\n", MESSAGE_ORD_11, 2, 3);
	expect_fault("item,Qty (boxes),unit\na,5,pcs\n", MESSAGE_ORD_11, 2, 5);
	expect_fault("item,Qty (M)\na,5\n", MESSAGE_ORD_14, 1, 6);
	expect_fault("item,Qty on hand\na,5\n", MESSAGE_ORD_14, 1, 6);
	expect_fault("item,shipped qty\na,5\n", MESSAGE_ORD_14, 1, 6);
	expect_fault("item,qty,qty (boxes)\na,5,1\n", MESSAGE_ORD_02, 1, 10);
}

/* Cells that slid aside, and values nobody named. */
static void test_loose_cells(void **state)
{
	(void)state;
	expect_fault("item,qty,,supplier\na,5,boxes,x\n", MESSAGE_ORD_13, 2, 5);
	expect_fault("item,qty,supplier\na,1,250\n", MESSAGE_ORD_04, 2, 3);
	expect_fault("item,qty,description\na,1,250\n", MESSAGE_ORD_04, 2, 3);
	Read read = read_good("item,qty,supplier\na,1,251 Supply\nb,1250,250\n", 2);
	arena_free(read.arena);
	read = read_good("item;qty;supplier\na;1;250\n", 1);
	arena_free(read.arena);
	expect_fault("item,qty\na,5\n,7\n", MESSAGE_ORD_10, 3, 1);
	expect_fault("item,description,qty\na,x,5\n,,7\n", MESSAGE_ORD_10, 3, 2);
	expect_fault("item,qty\nPANELS,\na,5\n", MESSAGE_ORD_05, 2, 8);
}

static void test_running_numbers(void **state)
{
	(void)state;
	Read read = read_good("Item,Description,Qty,Price\n1,clip,5,2\n2,\"screw, long\",6,2\n", 2);
	assert_null(read.list->line[0].code);
	assert_string_equal(read.list->line[0].words, "clip");
	assert_int_equal(read.list->line[1].place.column, 3);
	assert_string_equal(read.list->left_out, "Item, Price");
	arena_free(read.arena);
	read = read_good("Item,Description,Qty\n10,clip,5\n20,screw,6\n", 2);
	assert_null(read.list->line[1].code);
	arena_free(read.arena);
	read = read_good("Item,Description,Qty\n1,clip,5\n3,screw,6\n", 2);
	assert_string_equal(read.list->line[1].code, "3");
	arena_free(read.arena);
	read = read_good("Code,Description,Qty\n1,clip,5\n2,screw,6\n", 2);
	assert_string_equal(read.list->line[1].code, "2");
	arena_free(read.arena);
}

static void test_utf16(void **state)
{
	(void)state;
	static const char with_mark[] = "\xff\xfei\0t\0", without[] = "i\0t\0e\0m\0";
	Read read = read_bytes(with_mark, sizeof with_mark - 1);
	assert_null(read.list);
	assert_int_equal(read.faults.at[0].id, MESSAGE_ORD_08);
	arena_free(read.arena);
	read = read_bytes(without, sizeof without - 1);
	assert_null(read.list);
	assert_int_equal(read.faults.at[0].id, MESSAGE_ORD_08);
	arena_free(read.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_quantities), cmocka_unit_test(test_units), cmocka_unit_test(test_heads),
		cmocka_unit_test(test_sheets), cmocka_unit_test(test_sheets_for_the_eye), cmocka_unit_test(test_quantity_heads),
		cmocka_unit_test(test_loose_cells), cmocka_unit_test(test_running_numbers), cmocka_unit_test(test_utf16),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

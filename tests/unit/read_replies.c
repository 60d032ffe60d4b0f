/* SPDX-License-Identifier: MIT
 * The reply sheet read back: heads in any order, the 0 a spreadsheet took, what goes into the submittal's nodes and where.
 */
#include "check.h"

#include "replies.h"

#include <string.h>

typedef struct {
	Arena *arena;
	Complaints faults;
} World;

static const ReplySheet *read_sheet(World *world, const char *text)
{
	world->faults = (Complaints){ .arena = world->arena };
	const Source *source = source_make(world->arena, "sheet.csv", text, strlen(text), SOURCE_REPLIES);
	return read_replies(world->arena, source, &world->faults);
}

static int begin(void **state)
{
	World *world = test_calloc(1, sizeof *world);
	world->arena = arena_make();
	*state = world;
	return 0;
}

static int end(void **state)
{
	World *world = *state;
	arena_free(world->arena);
	test_free(world);
	return 0;
}

static void rows_without_a_reply_are_left_aside(void **state)
{
	const ReplySheet *sheet = read_sheet(*state, "paper,REPLY,x,Item\nPD-1,done,,1.02\n,,,1.03\n , agreed ,,1.04\n");
	assert_non_null(sheet);
	assert_int_equal(sheet->rows, 2);
	assert_string_equal(sheet->row[0].item, "1.02");
	assert_string_equal(sheet->row[0].paper, "PD-1");
	assert_string_equal(sheet->row[1].reply, "agreed");
	assert_null(sheet->row[1].paper);
	assert_null(sheet->row[1].submittal);
	assert_int_equal(sheet->row[1].item_at.line, 4);
	assert_int_equal(sheet->row[1].item_at.source, SOURCE_REPLIES);
}

static void a_lost_zero_is_put_back(void **state)
{
	const ReplySheet *sheet = read_sheet(*state, "item;reply\n1.1;a\n2.2;b\n1.01;c\n1.100;d\n12.0;e\nall;f\n");
	static const char *const wanted[] = { "1.10", "2.20", "1.01", "1.100", "12.0", "all" };
	assert_non_null(sheet);
	assert_int_equal(sheet->rows, 6);
	for (uint32_t i = 0; i < 6; i++)
		assert_string_equal(sheet->row[i].item, wanted[i]);
}

static void a_sheet_with_a_fault_is_none(void **state)
{
	World *world = *state;
	static const struct {
		const char *text;
		MessageId id;
		uint32_t line;
	} bad[] = {
		{ "", MESSAGE_TAB_15, 0 }, { "item,answer\n1.01,x\n", MESSAGE_TAB_23, 1 }, { "item,item,reply\n1.01,,x\n", MESSAGE_TAB_22, 1 },
		{ "item,reply,paper\n1.01,a,\n1.02,,PD-1\n", MESSAGE_TAB_30, 3 }, { "item,reply\n,a\n", MESSAGE_TAB_30, 2 },
		{ "item,reply\n1.01,\"a\n", MESSAGE_TAB_05, 2 },
	};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		assert_null(read_sheet(world, bad[i].text));
		assert_true(world->faults.count > 0);
		assert_int_equal(world->faults.at[0].id, bad[i].id);
		assert_int_equal(world->faults.at[0].place.line, bad[i].line);
	}
}

static void scalar(Arena *arena, Node *map, const char *key, const char *text)
{
	assert_true(node_set(arena, map, key, text));
}

static void replies_stand_behind_those_of_the_submittal(void **state)
{
	World *world = *state;
	const ReplySheet *sheet = read_sheet(world, "submittal,item,reply\nA-1,1.01,a\nB-2,1.01,b\nA-1,1.02,c\n");
	Node root = { .kind = NODE_MAP }, list = { .kind = NODE_LIST }, map = { .kind = NODE_MAP };
	scalar(world->arena, &root, "submittal", "A-1");
	assert_true(node_graft(world->arena, &root, "replies", &list));
	scalar(world->arena, &map, "item", "1.09");
	assert_true(node_graft(world->arena, &root, "replies.0", &map));
	assert_int_equal(add_replies(world->arena, &root, sheet), 2);
	assert_int_equal(list.count, 3);
	assert_string_equal(node_at(&root, "replies.0.item")->text, "1.09");
	assert_string_equal(node_at(&root, "replies.1.reply")->text, "a");
	assert_string_equal(node_at(&root, "replies.2.item")->text, "1.02");
	assert_int_equal(node_at(&root, "replies.2.item")->place.line, 4);
	assert_null(node_at(&root, "replies.3"));
}

static void none_gives_way_to_a_list(void **state)
{
	World *world = *state;
	const ReplySheet *sheet = read_sheet(world, "item,reply\n1.01,a\n");
	Node root = { .kind = NODE_MAP };
	scalar(world->arena, &root, "replies", "none");
	assert_int_equal(add_replies(world->arena, &root, sheet), 1);
	assert_string_equal(node_at(&root, "replies.0.reply")->text, "a");
	Node other = { .kind = NODE_SCALAR };
	assert_int_equal(add_replies(world->arena, &other, sheet), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test_setup_teardown(rows_without_a_reply_are_left_aside, begin, end),
		cmocka_unit_test_setup_teardown(a_lost_zero_is_put_back, begin, end),
		cmocka_unit_test_setup_teardown(a_sheet_with_a_fault_is_none, begin, end),
		cmocka_unit_test_setup_teardown(replies_stand_behind_those_of_the_submittal, begin, end),
		cmocka_unit_test_setup_teardown(none_gives_way_to_a_list, begin, end),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

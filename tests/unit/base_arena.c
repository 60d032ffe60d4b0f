/* SPDX-License-Identifier: MIT
 * The arena: zeroed, aligned, wound back, growing.
 */
#include "check.h"

#include "arena.h"

static void memory_is_zeroed_and_aligned(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	for (size_t i = 1; i < 200; i++) {
		char *bytes = arena_take(arena, i, 7);
		assert_int_equal((uintptr_t)bytes % _Alignof(max_align_t), 0);
		for (size_t j = 0; j < i * 7; j++)
			assert_int_equal(bytes[j], 0);
		memset(bytes, 0x55, i * 7);
	}
	arena_free(arena);
}

static void winding_back_gives_the_same_memory_zeroed(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	char *kept = arena_text(arena, "kept", 4);
	ArenaMark mark = arena_mark(arena);
	char *first = arena_take(arena, 1000, 1);
	memset(first, 'x', 1000);
	/* more than one block, and one that is too large to keep */
	for (int i = 0; i < 20; i++)
		memset(arena_take(arena, 50000, 1), 'y', 50000);
	memset(arena_take(arena, 3 << 20, 1), 'z', 3 << 20);
	memset(arena_take(arena, 100, 1), 'z', 100);
	arena_back(arena, mark);
	char *again = arena_take(arena, 1000, 1);
	assert_ptr_equal(again, first);
	for (int i = 0; i < 1000; i++)
		assert_int_equal(again[i], 0);
	for (int i = 0; i < 20; i++) {
		const char *block = arena_take(arena, 50000, 1);
		for (int j = 0; j < 50000; j++)
			assert_int_equal(block[j], 0);
	}
	assert_string_equal(kept, "kept");
	arena_free(arena);
}

static void marks_nest(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	ArenaMark outer = arena_mark(arena);
	char *a = arena_take(arena, 10, 1);
	ArenaMark inner = arena_mark(arena);
	arena_take(arena, 1 << 20, 2);
	arena_back(arena, inner);
	char *b = arena_take(arena, 10, 1);
	assert_true(b > a && b - a <= 64);
	arena_back(arena, outer);
	assert_ptr_equal(arena_take(arena, 10, 1), a);
	arena_free(arena);
}

static void texts_are_copied_and_ended(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	assert_string_equal(arena_text(arena, "roof area", 4), "roof");
	assert_string_equal(arena_text(arena, NULL, 0), "");
	assert_string_equal(arena_printf(arena, "%d clips at %s", 3, "24 in"), "3 clips at 24 in");
	char big[5000];
	memset(big, 'a', sizeof big - 1);
	big[sizeof big - 1] = '\0';
	const char *printed = arena_printf(arena, "<%s>", big);
	assert_int_equal(strlen(printed), 5001);
	assert_int_equal(printed[5000], '>');
	arena_free(arena);
}

static void a_list_grows_and_keeps_its_elements(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	uint32_t room = 0;
	int *list = NULL;
	for (uint32_t i = 0; i < 10000; i++) {
		int *before = list;
		uint32_t room_before = room;
		list = arena_more(arena, list, i, &room, sizeof *list);
		assert_true(i < room);
		if (i < room_before)
			assert_ptr_equal(list, before);
		list[i] = (int)i * 3;
	}
	for (int i = 0; i < 10000; i++)
		assert_int_equal(list[i], i * 3);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(memory_is_zeroed_and_aligned),
		cmocka_unit_test(winding_back_gives_the_same_memory_zeroed),
		cmocka_unit_test(marks_nest),
		cmocka_unit_test(texts_are_copied_and_ended),
		cmocka_unit_test(a_list_grows_and_keeps_its_elements),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}

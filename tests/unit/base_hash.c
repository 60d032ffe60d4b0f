/* SPDX-License-Identifier: MIT
 * The hash table and the suggestions.
 */
#include "check.h"

#include "hash.h"
#include "suggest.h"

static void what_is_put_is_found(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Hash *hash = hash_make(arena, 0);
	int value[5000];
	for (size_t i = 0; i < 5000; i++) {
		const char *key = arena_printf(arena, "clip-%zu", i);
		assert_null(hash_get(hash, key, strlen(key)));
		assert_null(hash_put(hash, key, strlen(key), &value[i]));
	}
	for (size_t i = 0; i < 5000; i++) {
		const char *key = arena_printf(arena, "clip-%zu", i);
		assert_ptr_equal(hash_get(hash, key, strlen(key)), &value[i]);
	}
	assert_null(hash_get(hash, "clip-5000", 9));
	assert_null(hash_get(hash, "clip-499", 5));
	arena_free(arena);
}

static void what_stood_there_before_is_told(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Hash *hash = hash_make(arena, 100);
	int a, b;
	assert_null(hash_put(hash, "panel", 5, &a));
	assert_ptr_equal(hash_put(hash, "panel", 5, &b), &a);
	assert_ptr_equal(hash_get(hash, "panel", 5), &b);
	/* a NUL is part of a key, and the empty text is a key */
	assert_null(hash_put(hash, "clip\0a", 6, &a));
	assert_null(hash_put(hash, "clip\0b", 6, &b));
	assert_ptr_equal(hash_get(hash, "clip\0a", 6), &a);
	assert_null(hash_get(hash, "", 0));
	hash_put(hash, "", 0, &a);
	assert_ptr_equal(hash_get(hash, "", 0), &a);
	arena_free(arena);
}

static void the_nearest_word_is_suggested(void **state)
{
	(void)state;
	static const char *const key[] = { "clip_spacing", "panel", "thickness", "slope", "spacing", "seam" };
	assert_int_equal(suggest("clip_spaceing", key, 6), 0);
	assert_int_equal(suggest("Clip spacing", key, 6), 0);
	assert_int_equal(suggest("clip-spacing", key, 6), 0);
	assert_int_equal(suggest("pannel", key, 6), 1);
	assert_int_equal(suggest("thicknes", key, 6), 2);
	assert_int_equal(suggest("solpe", key, 6), 3); /* neighbors swapped */
	assert_int_equal(suggest("spacing", key, 6), 4);
	assert_int_equal(suggest("seem", key, 6), 5);
}

static void what_is_far_is_not(void **state)
{
	(void)state;
	static const char *const key[] = { "clip_spacing", "panel", "or", "insulation_thickness" };
	assert_int_equal(suggest("fastener", key, 4), -1);
	assert_int_equal(suggest("pxxel", key, 4), -1); /* two edits in five letters */
	assert_int_equal(suggest("ox", key, 4), -1);
	assert_int_equal(suggest("insulxxxxn_thickness", key, 4), -1); /* four edits */
	assert_int_equal(suggest("insulaxxxn_thickness", key, 4), 3);
	assert_int_equal(suggest("", key, 4), -1);
	assert_int_equal(suggest("panel", key, 0), -1);
	char text[60];
	memset(text, 'a', 59);
	text[59] = '\0';
	const char *const same[] = { text };
	assert_int_equal(suggest(text, same, 1), -1);
	text[40] = '\0';
	assert_int_equal(suggest(text, same, 1), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(what_is_put_is_found),
		cmocka_unit_test(what_stood_there_before_is_told),
		cmocka_unit_test(the_nearest_word_is_suggested),
		cmocka_unit_test(what_is_far_is_not),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}

/* SPDX-License-Identifier: MIT
 * Numbers in and out.
 */
#include "check.h"

#include "number.h"

#include <stdio.h>
#include <stdlib.h>

static double number(const char *text)
{
	double value = 0;
	if (!number_read(text, strlen(text), &value))
		fail_msg("%s is no number", text);
	return value;
}

static void plain_numbers_are_read(void **state)
{
	(void)state;
	assert_true(number("12") == 12);
	assert_true(number("-0.5") == -0.5);
	assert_true(number("+3") == 3);
	assert_true(number(".032") == 0.032);
	assert_true(number("1,200") == 1200);
	assert_true(number("1,234,567.25") == 1234567.25);
	assert_true(number("1.5e3") == 1500);
	assert_true(number("2E-2") == 0.02);
	assert_true(number("0.0239") == 0.0239);
	assert_true(number("123456789012345678") == 123456789012345678.0);
	assert_true(number("0.1234567890123456789") == 0.1234567890123456789);
}

static void all_else_is_refused(void **state)
{
	(void)state;
	static const char *const no[] = { "", "-", "+", ".", "5.", "abc", "12 ", " 12", "1,20", "1,2000", "12,34,567", ",123", "1,,200",
		"1234,567", "0x10", "inf", "nan", "infinity", "1e", "1e+", "e3", "--1", "1.2.3", "1e999", "12in", "1'000", "1_000",
		"1,200,", "0000000000000000000000000000000000000000000000000000000000000000000000001" };
	for (size_t i = 0; i < sizeof no / sizeof *no; i++) {
		double value;
		if (number_read(no[i], strlen(no[i]), &value))
			fail_msg("%s was read as %g", no[i], value);
	}
	double value;
	assert_true(number_read("12 in", 2, &value));
	assert_true(value == 12);
}

/* The quick way for short numbers must round as the library does. */
static void short_numbers_round_as_the_library_does(void **state)
{
	(void)state;
	srandom(7);
	for (int i = 0; i < 100000; i++) {
		char text[32];
		snprintf(text, sizeof text, "%ld.%0*ld", random() % 100000, 1 + i % 8, random() % 10);
		double value;
		assert_true(number_read(text, strlen(text), &value));
		assert_true(value == strtod(text, NULL));
	}
}

static void the_shortest_form_reads_back(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	assert_string_equal(number_shortest(arena, 58.4), "58.4");
	assert_string_equal(number_shortest(arena, 0.1), "0.1");
	assert_string_equal(number_shortest(arena, 24), "24");
	assert_string_equal(number_shortest(arena, -5), "-5");
	assert_string_equal(number_shortest(arena, 1.0 / 3), "0.3333333333333333");
	srandom(11);
	for (int i = 0; i < 100000; i++) {
		double value = (double)random() / (double)(1 + random());
		const char *text = number_shortest(arena, value);
		assert_true(strtod(text, NULL) == value);
	}
	arena_free(arena);
}

static const char *both(Arena *arena, double a, double b)
{
	double value[] = { a, b };
	int digits = number_digits(value, 2);
	return arena_printf(arena, "%s %s", number_print(arena, a, digits), number_print(arena, b, digits));
}

static void values_that_differ_look_different(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	assert_string_equal(both(arena, 24, 12), "24 12");
	assert_string_equal(both(arena, 90, 89.96), "90 89.96");
	assert_string_equal(both(arena, 60.0004, 60), "60.0004 60");
	assert_string_equal(both(arena, 0.0239, 0.0236), "0.0239 0.0236");
	assert_string_equal(both(arena, 31.33333333, 58.4), "31.3 58.4");
	assert_string_equal(both(arena, 20, 20), "20 20");
	assert_string_equal(both(arena, 0, 0), "0 0");
	assert_string_equal(both(arena, 1e9 + 0.4, 1e9), "1000000000 1000000000"); /* within 1e-9: equal */
	assert_string_equal(number_print(arena, -0.04, 1), "0");
	assert_string_equal(number_print(arena, 100, 0), "100");
	assert_string_equal(number_print(arena, 1.50, 2), "1.5");
	assert_string_equal(number_print(arena, 1e300, 2), "1e+300");
	arena_free(arena);
}

static void nearly_equal_is_equal(void **state)
{
	(void)state;
	assert_true(number_same(24, 24));
	assert_true(number_same(0.1 + 0.2, 0.3));
	assert_true(number_same(0, 0));
	assert_false(number_same(0, 1e-12));
	assert_false(number_same(24, 24.0000001));
	assert_false(number_same(1, -1));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(plain_numbers_are_read),
		cmocka_unit_test(all_else_is_refused),
		cmocka_unit_test(short_numbers_round_as_the_library_does),
		cmocka_unit_test(the_shortest_form_reads_back),
		cmocka_unit_test(values_that_differ_look_different),
		cmocka_unit_test(nearly_equal_is_equal),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}

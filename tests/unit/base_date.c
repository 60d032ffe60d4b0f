/* SPDX-License-Identifier: MIT
 * Days: reading, printing, working days.
 */
#include "check.h"

#include "date.h"

static int32_t day(const char *text)
{
	int32_t value = 0;
	if (!date_read(text, strlen(text), &value))
		fail_msg("%s is no day", text);
	return value;
}

static void known_days(void **state)
{
	(void)state;
	assert_int_equal(day("1970-01-01"), 0);
	assert_int_equal(day("1970-03-01"), 59);
	assert_int_equal(day("2000-02-29"), 11016);
	assert_int_equal(day("2026-04-14"), 20557);
	assert_int_equal(day("1969-12-31"), -1);
	assert_int_equal(day("0000-03-01"), -719468);
}

static void days_that_do_not_exist(void **state)
{
	(void)state;
	static const char *const no[] = { "2026-02-29", "1900-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "2026-04-00",
		"2026-4-14", "14-04-2026", "2026/04/14", "2026-04-1x", "2026-04-144", "", "+026-04-14" };
	for (size_t i = 0; i < sizeof no / sizeof *no; i++) {
		int32_t value;
		if (date_read(no[i], strlen(no[i]), &value))
			fail_msg("%s was read as day %d", no[i], value);
	}
	int32_t value;
	assert_true(date_read("2024-02-29", 10, &value));
	assert_true(date_read("2000-02-29", 10, &value));
}

static void every_day_of_eight_centuries_prints_as_it_reads(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	int32_t last = day("2400-12-31");
	for (int32_t d = day("1600-01-01"); d <= last; d++) {
		ArenaMark mark = arena_mark(arena);
		assert_int_equal(day(date_print(arena, d)), d);
		arena_back(arena, mark);
	}
	assert_string_equal(date_print(arena, 0), "1970-01-01");
	assert_string_equal(date_print(arena, 20557), "2026-04-14");
	assert_string_equal(date_print(arena, -719528), "0000-01-01");
	arena_free(arena);
}

/* 2026-04-13 is a Monday. */
static void weekends_and_holidays_do_not_work(void **state)
{
	(void)state;
	int32_t monday = day("2026-04-13");
	assert_int_equal(date_working_days(monday, monday, NULL, 0), 0);
	assert_int_equal(date_working_days(monday, monday + 1, NULL, 0), 1);
	assert_int_equal(date_working_days(monday, monday + 4, NULL, 0), 4);
	assert_int_equal(date_working_days(monday, monday + 6, NULL, 0), 4); /* Sunday */
	assert_int_equal(date_working_days(monday, monday + 7, NULL, 0), 5);
	assert_int_equal(date_working_days(monday, monday + 14, NULL, 0), 10);
	assert_int_equal(date_working_days(monday + 5, monday + 7, NULL, 0), 1); /* Saturday to Monday */
	assert_int_equal(date_working_days(monday, monday - 5, NULL, 0), 0);
	int32_t holidays[] = { monday - 7, monday, monday + 1, monday + 1, monday + 5, monday + 8, monday + 30 };
	assert_int_equal(date_working_days(monday, monday + 9, holidays, 7), 5);
}

static void counting_one_by_one_gives_the_same(void **state)
{
	(void)state;
	int32_t from = day("2026-01-01"), count = 0; /* a Thursday */
	for (int32_t i = 1; i < 2000; i++) {
		int32_t weekday = (3 + i) % 7;
		count += weekday < 5;
		assert_int_equal(date_working_days(from, from + i, NULL, 0), count);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(known_days),
		cmocka_unit_test(days_that_do_not_exist),
		cmocka_unit_test(every_day_of_eight_centuries_prints_as_it_reads),
		cmocka_unit_test(weekends_and_holidays_do_not_work),
		cmocka_unit_test(counting_one_by_one_gives_the_same),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}

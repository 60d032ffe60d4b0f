/* SPDX-License-Identifier: MIT
 * Days: reading, printing, working days. With --workdays it prints what another calendar is to say, too (tests/outside.sh): for
 * each line of two days and holidays on its input, the working days between, and the day after as many of them.
 */
#include "check.h"

#include "date.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

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

/* April 2026: the 3rd is a Friday, here a holiday; the 6th the Monday after.
 *   Mo Tu We Th Fr Sa Su
 *         1  2 [3] 4  5
 *    6  7  8  9 10 11 12
 */
static void a_notice_runs_over_a_long_weekend(void **state)
{
	(void)state;
	int32_t holiday[] = { day("2026-04-03") }, wednesday = day("2026-04-01");
	assert_int_equal(date_after_working_days(wednesday, 0, holiday, 1), wednesday);
	assert_int_equal(date_after_working_days(wednesday, 1, holiday, 1), day("2026-04-02"));
	assert_int_equal(date_after_working_days(wednesday, 2, holiday, 1), day("2026-04-06"));
	assert_int_equal(date_after_working_days(wednesday, 3, holiday, 1), day("2026-04-07"));
	assert_int_equal(date_after_working_days(wednesday, 7, holiday, 1), day("2026-04-13"));
	assert_int_equal(date_after_working_days(day("2026-04-04"), 1, holiday, 1), day("2026-04-06")); /* from a Saturday */
	assert_int_equal(date_after_working_days(wednesday, 2, NULL, 0), day("2026-04-03"));
	assert_int_equal(date_working_days(wednesday, day("2026-04-13"), holiday, 1), 7);
	assert_int_equal(date_working_days(wednesday, day("2026-04-05"), holiday, 1), 1);
}

/* The first day on which as many have passed as the other function counts. */
static void both_ways_of_counting_agree(void **state)
{
	(void)state;
	int32_t holiday[] = { day("2026-05-25"), day("2026-07-03"), day("2026-07-04"), day("2026-09-07") };
	for (int32_t from = day("2026-05-01"); from < day("2026-06-01"); from++)
		for (int32_t days = 1; days < 100; days++) {
			int32_t to = date_after_working_days(from, days, holiday, 4);
			assert_int_equal(date_working_days(from, to, holiday, 4), days);
			assert_int_equal(date_working_days(from, to - 1, holiday, 4), days - 1);
		}
}

static void years_go_by_anniversaries(void **state)
{
	(void)state;
	assert_int_equal(date_years_later(day("2026-04-14"), -3), day("2023-04-14"));
	assert_int_equal(date_years_later(day("2026-04-14"), 2), day("2028-04-14"));
	assert_int_equal(date_years_later(day("2024-02-29"), 1), day("2025-02-28"));
	assert_int_equal(date_years_later(day("2024-02-29"), 4), day("2028-02-29"));
	assert_int_equal(date_years_later(day("2024-02-29"), -124), day("1900-02-28"));
	assert_true(date_years_between(day("2019-04-14"), day("2026-04-14")) == 7);
	assert_true(date_years_between(day("2019-04-15"), day("2026-04-14")) < 7);
	assert_true(date_years_between(day("2025-04-14"), day("2026-04-14")) == 1); /* 365 days */
	assert_true(date_years_between(day("2023-04-14"), day("2024-04-14")) == 1); /* 366 days */
	assert_true(fabs(date_years_between(day("2026-01-01"), day("2026-03-15")) - 73 / 365.0) < 1e-12);
	assert_true(date_years_between(day("2026-04-14"), day("2026-04-14")) == 0);
}

/* A line of the input: two days, then holidays in order. */
static void print_workdays(char *line)
{
	int32_t at[64];
	size_t count = 0;
	Arena *arena = arena_make();
	for (char *from = line; count < 64 && *from != '\0' && *from != '\n'; from += 10 + (from[10] == ' '))
		if (!date_read(from, 10, &at[count++]))
			exit(2);
	int32_t days = date_working_days(at[0], at[1], at + 2, count - 2);
	printf("%d %s\n", (int)days, date_print(arena, date_after_working_days(at[0], days, at + 2, count - 2)));
	arena_free(arena);
}

int main(int count, char **argument)
{
	char line[1024];
	if (count > 1 && strcmp(argument[1], "--workdays") == 0) {
		while (fgets(line, sizeof line, stdin) != NULL)
			print_workdays(line);
		return 0;
	}
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(known_days),
		cmocka_unit_test(days_that_do_not_exist),
		cmocka_unit_test(every_day_of_eight_centuries_prints_as_it_reads),
		cmocka_unit_test(weekends_and_holidays_do_not_work),
		cmocka_unit_test(counting_one_by_one_gives_the_same),
		cmocka_unit_test(a_notice_runs_over_a_long_weekend),
		cmocka_unit_test(both_ways_of_counting_agree),
		cmocka_unit_test(years_go_by_anniversaries),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}

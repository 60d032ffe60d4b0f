/* SPDX-License-Identifier: MIT
 * Days as numbers. The count from a date and back follows from the 400-year cycle of 146,097 days that begins on 1 March, so that
 * the leap day is the last of its year.
 */
#include "date.h"

static bool is_leap(int year)
{
	return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

static int days_in(int year, int month)
{
	static const uint8_t days[] = { 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31 };
	return days[month - 1] + (month == 2 && is_leap(year));
}

/* 719,468 days lie between 0000-03-01 and 1970-01-01. */
static int32_t day_of(int year, int month, int day)
{
	int y = month <= 2 ? year - 1 : year;
	int cycle = (y >= 0 ? y : y - 399) / 400, in_cycle = y - cycle * 400;
	int in_year = (153 * (month > 2 ? month - 3 : month + 9) + 2) / 5 + day - 1;
	return cycle * 146097 + in_cycle * 365 + in_cycle / 4 - in_cycle / 100 + in_year - 719468;
}

static bool read_digits(const char *text, int count, int *value)
{
	*value = 0;
	for (int i = 0; i < count; i++) {
		if (text[i] < '0' || text[i] > '9')
			return false;
		*value = *value * 10 + (text[i] - '0');
	}
	return true;
}

bool date_read(const char *text, size_t length, int32_t *day)
{
	int year, month, of_month;
	if (length != 10 || text[4] != '-' || text[7] != '-')
		return false;
	if (!read_digits(text, 4, &year) || !read_digits(text + 5, 2, &month) || !read_digits(text + 8, 2, &of_month))
		return false;
	if (month < 1 || month > 12 || of_month < 1 || of_month > days_in(year, month))
		return false;
	*day = day_of(year, month, of_month);
	return true;
}

typedef struct {
	int64_t year;
	int month, day;
} Civil;

static Civil civil_of(int32_t day)
{
	int64_t since = (int64_t)day + 719468;
	int64_t cycle = (since >= 0 ? since : since - 146096) / 146097;
	int in_cycle = (int)(since - cycle * 146097);
	int year = (in_cycle - in_cycle / 1460 + in_cycle / 36524 - in_cycle / 146096) / 365;
	int in_year = in_cycle - (365 * year + year / 4 - year / 100);
	int m = (5 * in_year + 2) / 153;
	int of_month = in_year - (153 * m + 2) / 5 + 1, month = m < 10 ? m + 3 : m - 9;
	return (Civil){ cycle * 400 + year + (month <= 2), month, of_month };
}

const char *date_print(Arena *arena, int32_t day)
{
	Civil date = civil_of(day);
	return arena_printf(arena, "%04lld-%02d-%02d", (long long)date.year, date.month, date.day);
}

int32_t date_years_later(int32_t day, int years)
{
	Civil date = civil_of(day);
	int year = (int)date.year + years, last = days_in(year, date.month);
	return day_of(year, date.month, date.day < last ? date.day : last);
}

double date_years_between(int32_t from, int32_t to)
{
	int years = (int)(civil_of(to).year - civil_of(from).year);
	if (date_years_later(from, years) > to)
		years--;
	int32_t begun = date_years_later(from, years), next = date_years_later(from, years + 1);
	return years + (double)(to - begun) / (next - begun);
}

/* Monday is 0. 1970-01-01 was a Thursday. */
static int weekday(int32_t day)
{
	int64_t d = ((int64_t)day + 3) % 7;
	return (int)(d < 0 ? d + 7 : d);
}

int32_t date_working_days(int32_t from, int32_t to, const int32_t *holiday, size_t count)
{
	if (to <= from)
		return 0;
	int64_t days = (int64_t)to - from, working = days / 7 * 5;
	for (int64_t d = 1; d <= days % 7; d++)
		working += weekday((int32_t)(from + d)) < 5;
	for (size_t i = 0; i < count; i++)
		if (holiday[i] > from && holiday[i] <= to && weekday(holiday[i]) < 5 && (i == 0 || holiday[i] != holiday[i - 1]))
			working--;
	return (int32_t)working;
}

/* Day by day: notices and reviews take days or weeks. The holidays stand in order. */
int32_t date_after_working_days(int32_t from, int32_t days, const int32_t *holiday, size_t count)
{
	size_t next = 0;
	int32_t day = from;
	while (days > 0) {
		day++;
		while (next < count && holiday[next] < day)
			next++;
		bool is_holiday = next < count && holiday[next] == day;
		days -= weekday(day) < 5 && !is_holiday;
	}
	return day;
}

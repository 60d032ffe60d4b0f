/* SPDX-License-Identifier: MIT
 * Numbers with units in every notation that drawings use, screw sizes and screw marks; and what is refused.
 */
#include "check.h"
#include "quantity.h"
#include "small_reference.h"

#include "../src/read/screw_mark.h"

typedef struct {
	const char *text;
	Unit unit;
	double value;
} Reads;

static void check_all(const Reads *row, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		double value = -999;
		Quantity q = read_quantity(row[i].text, strlen(row[i].text), row[i].unit, &value);
		if (q != QUANTITY_READ)
			print_error("%s is not read\n", row[i].text);
		assert_int_equal(q, QUANTITY_READ);
		if (fabs(value - row[i].value) > 1e-9 * fmax(1, fabs(row[i].value)))
			print_error("%s reads as %.12g\n", row[i].text, value);
		assert_close(value, row[i].value, 1e-9);
	}
}
#define CHECK_ALL(rows) check_all(rows, sizeof rows / sizeof *rows)

static void lengths(void **state)
{
	(void)state;
	static const Reads rows[] = {
		{ "16 in", UNIT_in, 16 }, { "16\"", UNIT_in, 16 }, { "16in", UNIT_in, 16 }, { "16 in.", UNIT_in, 16 }, { "16 inches", UNIT_in, 16 },
		{ "1-1/2 in", UNIT_in, 1.5 }, { "1 1/2 in", UNIT_in, 1.5 }, { "1-1/2\"", UNIT_in, 1.5 }, { "3/8\"", UNIT_in, 0.375 },
		{ "3/8 in", UNIT_in, 0.375 }, { "15/32 in", UNIT_in, 0.46875 }, { ".5 in", UNIT_in, 0.5 }, { "0.0239 in", UNIT_in, 0.0239 },
		{ "20'-6\"", UNIT_ft, 20.5 }, { "20'-6\"", UNIT_in, 246 }, { "20' 6\"", UNIT_ft, 20.5 }, { "20'6\"", UNIT_ft, 20.5 },
		{ "20'-6 1/2\"", UNIT_in, 246.5 }, { "20'-6-1/2\"", UNIT_in, 246.5 }, { "20'-0\"", UNIT_ft, 20 }, { "20 ft 6 in", UNIT_in, 246 },
		{ "20'-6", UNIT_in, 246 }, { "20'", UNIT_ft, 20 }, { "20 ft", UNIT_in, 240 }, { "20 feet", UNIT_ft, 20 },
		{ "-20'-6\"", UNIT_ft, -20.5 }, { "1,200 ft", UNIT_ft, 1200 }, { "0.60 mm", UNIT_in, 0.023622047244094 },
		{ "305 mm", UNIT_in, 12.007874015748 }, { "2.5 cm", UNIT_in, 0.98425196850394 }, { "61 m", UNIT_ft, 200.131233595801 },
		{ "1 mile", UNIT_ft, 5280 }, { "  16 in  ", UNIT_in, 16 }, { "1\xc2\xbd in", UNIT_in, 1.5 }, { "\xc2\xbd in", UNIT_in, 0.5 },
		{ "16\xe2\x80\xb3", UNIT_in, 16 }, { "20\xe2\x80\xb2", UNIT_ft, 20 }, { "16\xc2\xa0in", UNIT_in, 16 }, { "1.5e1 in", UNIT_in, 15 },
	};
	CHECK_ALL(rows);
}

static void slopes_and_angles(void **state)
{
	(void)state;
	static const Reads rows[] = {
		{ "1:12", UNIT_in_12, 1 }, { "1/4:12", UNIT_in_12, 0.25 }, { "1-1/2:12", UNIT_in_12, 1.5 }, { "0.5:12", UNIT_in_12, 0.5 },
		{ "1 : 12", UNIT_in_12, 1 }, { "3/12", UNIT_in_12, 3 }, { "1/2 in 12", UNIT_in_12, 0.5 }, { "4 in 12", UNIT_in_12, 4 },
		{ "1/4 in per ft", UNIT_in_12, 0.25 }, { "1/4 in/ft", UNIT_in_12, 0.25 }, { "1:6", UNIT_in_12, 2 },
		{ "14 deg", UNIT_in_12, 2.9919360343 }, { "45 degrees", UNIT_in_12, 12 }, { "45\xc2\xb0", UNIT_in_12, 12 },
		{ "25 %", UNIT_in_12, 3 }, { "14 deg", UNIT_deg, 14 }, { "12:12", UNIT_deg, 45 }, { "12/12", UNIT_deg, 45 },
	};
	CHECK_ALL(rows);
}

/* A temperature has a zero of its own; a difference of temperatures has not. */
static void temperatures(void **state)
{
	(void)state;
	static const Reads rows[] = {
		{ "250 F", UNIT_F, 250 }, { "-20 F", UNIT_F, -20 }, { "\xe2\x88\x92" "20 F", UNIT_F, -20 }, { "120 C", UNIT_F, 248 },
		{ "250\xc2\xb0" "F", UNIT_F, 250 }, { "-40 C", UNIT_F, -40 }, { "0 deg C", UNIT_F, 32 }, { "100 F", UNIT_C, 37.7777777777778 },
		{ "100 C", UNIT_F_step, 180 }, { "90 F difference", UNIT_F_step, 90 }, { "10 K", UNIT_F_step, 18 }, { "18 F", UNIT_C_step, 10 },
	};
	CHECK_ALL(rows);
	double value;
	assert_int_equal(read_quantity("90 F difference", 15, UNIT_F, &value), QUANTITY_OTHER_DIMENSION);
	assert_int_equal(read_quantity("10 K", 4, UNIT_F, &value), QUANTITY_OTHER_DIMENSION);
}

static void other_quantities(void **state)
{
	(void)state;
	static const Reads rows[] = {
		{ "1,200 sq ft", UNIT_sq_ft, 1200 }, { "12 squares", UNIT_sq_ft, 1200 }, { "1 sq m", UNIT_sq_ft, 10.7639104167097 },
		{ "30 psf", UNIT_psf, 30 }, { "1 kPa", UNIT_psf, 20.8854342331501 }, { "50 ksi", UNIT_ksi, 50 }, { "345 MPa", UNIT_ksi, 50.0380194829524 },
		{ "115 mph", UNIT_mph, 115 }, { "51 m/s", UNIT_mph, 114.083750894774 }, { "900 lb", UNIT_lb, 900 }, { "1 kip", UNIT_lb, 1000 },
		{ "20 yr", UNIT_yr, 20 }, { "20 years", UNIT_yr, 20 }, { "90 days", UNIT_day, 90 }, { "2 %", UNIT_percent, 2 }, { "2%", UNIT_percent, 2 },
		{ "2", UNIT_one, 2 }, { "1.67", UNIT_one, 1.67 }, { "1,000", UNIT_one, 1000 }, { "0", UNIT_one, 0 }, { "-3", UNIT_one, -3 },
		{ "3/4", UNIT_one, 0.75 },
	};
	CHECK_ALL(rows);
}

typedef struct {
	const char *text;
	Unit unit;
	Quantity fault;
} Refuses;

static void refusals(void **state)
{
	(void)state;
	static const Refuses rows[] = {
		{ "16", UNIT_in, QUANTITY_BARE }, { "3/8", UNIT_in, QUANTITY_BARE }, { "1", UNIT_in_12, QUANTITY_BARE }, { "1/4", UNIT_in_12, QUANTITY_BARE },
		{ "250", UNIT_F, QUANTITY_BARE }, { "24 ga", UNIT_in, QUANTITY_GAUGE }, { "24 gauge", UNIT_in, QUANTITY_GAUGE },
		{ "24 gage", UNIT_in, QUANTITY_GAUGE }, { "24ga", UNIT_in, QUANTITY_GAUGE }, { "24 ga", UNIT_psf, QUANTITY_OTHER_DIMENSION },
		{ "24 psf", UNIT_in, QUANTITY_OTHER_DIMENSION }, { "24 in", UNIT_psf, QUANTITY_OTHER_DIMENSION }, { "2 in", UNIT_one, QUANTITY_OTHER_DIMENSION },
		{ "90 deg", UNIT_in_12, QUANTITY_OTHER_DIMENSION }, { "66 rods", UNIT_in, QUANTITY_UNKNOWN_UNIT }, { "16 in or so", UNIT_in, QUANTITY_UNKNOWN_UNIT },
		{ "2 per clip", UNIT_one, QUANTITY_UNKNOWN_UNIT }, { "", UNIT_in, QUANTITY_NO_NUMBER }, { "in", UNIT_in, QUANTITY_NO_NUMBER },
		{ "long", UNIT_in, QUANTITY_NO_NUMBER }, { "12-14 in", UNIT_in, QUANTITY_NO_NUMBER }, { "1/0 in", UNIT_in, QUANTITY_NO_NUMBER },
		{ "1,20 ft", UNIT_ft, QUANTITY_NO_NUMBER }, { "1.2.3 in", UNIT_in, QUANTITY_NO_NUMBER }, { "0x10 in", UNIT_in, QUANTITY_UNKNOWN_UNIT },
		{ "inf in", UNIT_in, QUANTITY_NO_NUMBER }, { "nan", UNIT_one, QUANTITY_NO_NUMBER }, { "--5 in", UNIT_in, QUANTITY_NO_NUMBER },
		{ "20'-14\"", UNIT_ft, QUANTITY_UNKNOWN_UNIT }, { "1:0", UNIT_in_12, QUANTITY_UNKNOWN_UNIT },
	};
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double value;
		Quantity q = read_quantity(rows[i].text, strlen(rows[i].text), rows[i].unit, &value);
		if (q != rows[i].fault)
			print_error("%s gives %d\n", rows[i].text, q);
		assert_int_equal(q, rows[i].fault);
	}
}

static void too_long_and_strange(void **state)
{
	(void)state;
	static char text[70000];
	memset(text, '9', sizeof text);
	double value;
	assert_int_equal(read_quantity(text, sizeof text, UNIT_in, &value), QUANTITY_NO_NUMBER);
	assert_int_equal(read_quantity("1\0in", 4, UNIT_in, &value), QUANTITY_NO_NUMBER);
	assert_int_equal(read_quantity("16 in and more", 5, UNIT_in, &value), QUANTITY_READ);
	assert_close(value, 16, 0);
}

static void screw_sizes(void **state)
{
	(void)state;
	static const struct {
		const char *text;
		double diameter;
	} reads[] = { { "#12", 0.216 }, { "# 12", 0.216 }, { "No. 12", 0.216 }, { "no 12", 0.216 }, { "#14", 0.242 }, { "1/4", 0.25 },
		{ "1/4 in", 0.25 }, { "1/4\"", 0.25 }, { "5/16", 0.3125 }, { "0.216 in", 0.216 }, { "6.35 mm", 0.25 } };
	for (size_t i = 0; i < sizeof reads / sizeof *reads; i++) {
		double diameter = 0;
		assert_true(read_screw_size(reads[i].text, strlen(reads[i].text), &small_reference, &diameter));
		assert_close(diameter, reads[i].diameter, 1e-12);
	}
	static const char *const refused[] = { "12", "#99", "#", "#123", "#12x", "long", "", "-1/4", "0.216", "2 psf", "#-1" };
	for (size_t i = 0; i < sizeof refused / sizeof *refused; i++) {
		double diameter;
		assert_false(read_screw_size(refused[i], strlen(refused[i]), &small_reference, &diameter));
	}
}

static void screw_marks(void **state)
{
	(void)state;
	static const struct {
		const char *text;
		double size, threads, length, point;
	} reads[] = {
		{ "#12", 0.216, 0, 0, 0 }, { "No. 12", 0.216, 0, 0, 0 }, { "12-14 x 1-1/2", 0.216, 14, 1.5, 0 }, { "12-14x1-1/2", 0.216, 14, 1.5, 0 },
		{ "1/4-14 x 7/8", 0.25, 14, 0.875, 0 }, { "#14 x 2 in", 0.242, 0, 2, 0 }, { "12-24x1-1/4\"", 0.216, 24, 1.25, 0 },
		{ "#12-14 X 1 1/2 in", 0.216, 14, 1.5, 0 }, { "12-14 \xc3\x97 1", 0.216, 14, 1, 0 }, { "12-14 x 38 mm", 0.216, 14, 1.49606299212598, 0 },
		{ "12-14 x 1-1/2 DP3", 0.216, 14, 1.5, 3 }, { "12-14 x 1-1/2\" #3", 0.216, 14, 1.5, 3 }, { "12-24 x 1-1/4, point 5", 0.216, 24, 1.25, 5 },
		{ "12-14 x 1 in #3 point", 0.216, 14, 1, 3 }, { "1/4-14", 0.25, 14, 0, 0 }, { "10 x 1", 0.19, 0, 1, 0 },
	};
	Arena *arena = arena_make();
	Reading reading = { .arena = arena, .reference = &small_reference };
	for (size_t i = 0; i < sizeof reads / sizeof *reads; i++) {
		ScrewMark mark;
		bool ok = read_screw_mark(reads[i].text, strlen(reads[i].text), &reading, &mark);
		if (!ok)
			print_error("%s is not read\n", reads[i].text);
		assert_true(ok);
		assert_close(mark.size_in, reads[i].size, 1e-9);
		assert_close(mark.threads_per_in, reads[i].threads, 1e-9);
		assert_close(mark.length_in, reads[i].length, 1e-9);
		assert_close(mark.point_number, reads[i].point, 1e-9);
		assert_int_equal(mark.threads != NULL, reads[i].threads > 0);
		assert_int_equal(mark.length != NULL, reads[i].length > 0);
		assert_int_equal(mark.point != NULL, reads[i].point > 0);
	}
	static const char *const refused[] = { "", "12", "long", "12-14 x", "12-", "12-14 x 1-1/2 and more", "99-14 x 1", "x 1", "#12 x 0",
		"12-145 x 1", "12-14 x 1 DP", "12-14 x 1 #33", "1/0-14 x 1", "-12-14 x 1" };
	for (size_t i = 0; i < sizeof refused / sizeof *refused; i++) {
		ScrewMark mark;
		if (read_screw_mark(refused[i], strlen(refused[i]), &reading, &mark))
			print_error("%s is read\n", refused[i]);
		assert_false(read_screw_mark(refused[i], strlen(refused[i]), &reading, &mark));
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(lengths),
		cmocka_unit_test(slopes_and_angles),
		cmocka_unit_test(temperatures),
		cmocka_unit_test(other_quantities),
		cmocka_unit_test(refusals),
		cmocka_unit_test(too_long_and_strange),
		cmocka_unit_test(screw_sizes),
		cmocka_unit_test(screw_marks),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

/* SPDX-License-Identifier: MIT
 * Units: spellings, and every row of units.def against GNU units 2.22, which has its definitions from NIST SP 811 (2008) and its
 * successors. Each value is converted by both to the first unit of its dimension and back.
 */
#include "check.h"

#include "unit.h"

#include <stdio.h>
#include <stdlib.h>

/* What GNU units calls each unit; the first of each dimension is what the others are converted to. */
static const struct {
	Unit unit, first;
	const char *gnu, *gnu_first;
} pair[] = {
	{ UNIT_one, UNIT_one, "1", "1" },
	{ UNIT_day, UNIT_day, "day", "day" },
	{ UNIT_yr, UNIT_day, "julianyear", "day" },
	{ UNIT_in, UNIT_in, "inch", "inch" },
	{ UNIT_ft, UNIT_in, "foot", "inch" },
	{ UNIT_mm, UNIT_in, "mm", "inch" },
	{ UNIT_cm, UNIT_in, "cm", "inch" },
	{ UNIT_m, UNIT_in, "m", "inch" },
	{ UNIT_km, UNIT_in, "km", "inch" },
	{ UNIT_mile, UNIT_in, "mile", "inch" },
	{ UNIT_sq_in, UNIT_sq_ft, "inch^2", "foot^2" },
	{ UNIT_sq_ft, UNIT_sq_ft, "foot^2", "foot^2" },
	{ UNIT_square, UNIT_sq_ft, "100 foot^2", "foot^2" }, /* the roofer's square */
	{ UNIT_sq_m, UNIT_sq_ft, "m^2", "foot^2" },
	{ UNIT_psf, UNIT_psf, "lbf/foot^2", "lbf/foot^2" },
	{ UNIT_Pa, UNIT_psf, "Pa", "lbf/foot^2" },
	{ UNIT_kPa, UNIT_psf, "kPa", "lbf/foot^2" },
	{ UNIT_psi, UNIT_psf, "psi", "lbf/foot^2" },
	{ UNIT_ksi, UNIT_psf, "1000 psi", "lbf/foot^2" },
	{ UNIT_MPa, UNIT_psf, "MPa", "lbf/foot^2" },
	{ UNIT_lb, UNIT_lb, "lbf", "lbf" },
	{ UNIT_kip, UNIT_lb, "1000 lbf", "lbf" },
	{ UNIT_N, UNIT_lb, "N", "lbf" },
	{ UNIT_kN, UNIT_lb, "kN", "lbf" },
	{ UNIT_lb_per_in, UNIT_lb_per_in, "lbf/inch", "lbf/inch" },
	{ UNIT_N_per_mm, UNIT_lb_per_in, "N/mm", "lbf/inch" },
	{ UNIT_mph, UNIT_mph, "mph", "mph" },
	{ UNIT_m_per_s, UNIT_mph, "m/s", "mph" },
	{ UNIT_km_per_h, UNIT_mph, "km/hour", "mph" },
	{ UNIT_in_12, UNIT_in_12, "inch/foot", "inch/foot" },
	{ UNIT_deg, UNIT_deg, "degree", "degree" },
	{ UNIT_F, UNIT_F, "tempF", "tempF" },
	{ UNIT_C, UNIT_F, "tempC", "tempF" },
	{ UNIT_F_step, UNIT_F_step, "degF", "degF" },
	{ UNIT_C_step, UNIT_F_step, "degC", "degF" },
	{ UNIT_percent, UNIT_percent, "percent", "percent" },
	{ UNIT_V, UNIT_V, "volt", "volt" },
};

/* tempC takes its value in parentheses, all others before them. */
static double by_gnu_units(double value, const char *from, const char *to)
{
	char command[256], answer[128] = "";
	bool is_temperature = strncmp(from, "temp", 4) == 0;
	if (is_temperature)
		snprintf(command, sizeof command, "units -t -o %%.17g '%s(%.17g)' '%s'", from, value, to);
	else
		snprintf(command, sizeof command, "units -t -o %%.17g '%.17g (%s)' '%s'", value, from, to);
	FILE *program = popen(command, "r");
	assert_non_null(program);
	assert_non_null(fgets(answer, sizeof answer, program));
	assert_int_equal(pclose(program), 0);
	char *end;
	double converted = strtod(answer, &end);
	assert_true(end != answer && *end == '\n');
	return converted;
}

static void every_unit_converts_as_gnu_units_does(void **state)
{
	(void)state;
	bool seen[UNIT_COUNT] = { [UNIT_yes] = true }; /* yes and no are no measure */
	for (size_t i = 0; i < sizeof pair / sizeof *pair; i++) {
		seen[pair[i].unit] = true;
		assert_close(unit_convert(37.25, pair[i].unit, pair[i].first), by_gnu_units(37.25, pair[i].gnu, pair[i].gnu_first), 1e-12);
		assert_close(unit_convert(37.25, pair[i].first, pair[i].unit), by_gnu_units(37.25, pair[i].gnu_first, pair[i].gnu), 1e-12);
	}
	for (Unit unit = 0; unit < UNIT_COUNT; unit++)
		if (!seen[unit])
			fail_msg("%s is not compared with GNU units", unit_row(unit)->name);
}

static void there_and_back_is_the_same(void **state)
{
	(void)state;
	for (Unit a = 0; a < UNIT_COUNT; a++)
		for (Unit b = 0; b < UNIT_COUNT; b++)
			if (unit_row(a)->dimension == unit_row(b)->dimension)
				assert_close(unit_convert(unit_convert(12.75, a, b), b, a), 12.75, 1e-12);
}

static void known_conversions(void **state)
{
	(void)state;
	assert_close(unit_convert(305, UNIT_mm, UNIT_in), 12.007874015748031, 1e-15);
	assert_close(unit_convert(100, UNIT_C, UNIT_F), 212, 1e-15);
	assert_close(unit_convert(-40, UNIT_F, UNIT_C), -40, 1e-15);
	assert_close(unit_convert(100, UNIT_C_step, UNIT_F_step), 180, 1e-15);
	assert_close(unit_convert(2, UNIT_ft, UNIT_in), 24, 0);
	assert_close(unit_convert(1, UNIT_kPa, UNIT_psf), 20.88543423315013, 1e-14);
}

static void assert_unit(const char *text, Dimension dimension, Unit wanted)
{
	Unit unit;
	if (!unit_find(text, strlen(text), dimension, &unit) || unit != wanted)
		fail_msg("%s is not read as %s", text, unit_row(wanted)->name);
}

static void every_spelling_of_every_row_is_read(void **state)
{
	(void)state;
	for (Unit u = 0; u < UNIT_COUNT; u++) {
		const UnitRow *row = unit_row(u);
		if (row->printed[0] != '\0')
			assert_unit(row->printed, row->dimension, u);
		for (const char *s = row->spellings; *s != '\0';) {
			size_t length = strcspn(s, "|");
			Unit unit;
			assert_true(unit_find(s, length, row->dimension, &unit));
			assert_int_equal(unit, u);
			s += length + (s[length] == '|');
		}
	}
}

static void spellings_of_the_trade(void **state)
{
	(void)state;
	assert_unit("IN", DIMENSION_LENGTH, UNIT_in);
	assert_unit("in.", DIMENSION_LENGTH, UNIT_in);
	assert_unit("ft.", DIMENSION_LENGTH, UNIT_ft);
	assert_unit("'", DIMENSION_LENGTH, UNIT_ft);
	assert_unit("\xe2\x80\xb3", DIMENSION_LENGTH, UNIT_in);
	assert_unit("Sq. Ft.", DIMENSION_AREA, UNIT_sq_ft);
	assert_unit("PSF", DIMENSION_PRESSURE, UNIT_psf);
	assert_unit("MPH", DIMENSION_SPEED, UNIT_mph);
	assert_unit("F", DIMENSION_TEMPERATURE, UNIT_F);
	assert_unit("F", DIMENSION_TEMPERATURE_STEP, UNIT_F_step);
	Unit unit;
	assert_false(unit_find("ft", 2, DIMENSION_PRESSURE, &unit));
	assert_false(unit_find("", 0, DIMENSION_PURE, &unit));
	assert_false(unit_find("", 0, DIMENSION_LENGTH, &unit));
	assert_false(unit_find("inn", 3, DIMENSION_LENGTH, &unit));
	assert_false(unit_find("i", 1, DIMENSION_LENGTH, &unit));
	assert_false(unit_find(".", 1, DIMENSION_LENGTH, &unit));
	assert_false(unit_find("in|ft", 5, DIMENSION_LENGTH, &unit));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(every_unit_converts_as_gnu_units_does),
		cmocka_unit_test(there_and_back_is_the_same),
		cmocka_unit_test(known_conversions),
		cmocka_unit_test(every_spelling_of_every_row_is_read),
		cmocka_unit_test(spellings_of_the_trade),
	};
	return cmocka_run_group_tests(tests, NULL, NULL) != 0;
}

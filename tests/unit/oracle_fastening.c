/* SPDX-License-Identifier: MIT
 * Screws, wood, tested pressures and movement against a second opinion: 20,000 random questions that tests/oracle/fastening.py
 * answers, put to the plain functions. On an edge are a screw at the ends of the equations' range, a head at its cap, and a
 * spacing at a test, closer than all tests, or wider.
 */
#include "../harness.h"
#include "../oracle_rows.h"

#include "formula.h"

/* The factors that the pages name; the program takes the first from facts.def, the second pair from the specification. */
static const double omega = 3, guide_one = 3, guide_more = 2.25, head_cap_in = 0.5, wind_duration = 1.6, refused = -1;

static World world;

static double number_of(const OracleRows *rows, const char *column)
{
	return oracle_number(rows, column);
}

/* ---- steel ---- */

static double pullout(const OracleRows *rows, double tensile_ksi)
{
	double screw = number_of(rows, "screw_d_in");
	return is_in_steel_range(screw) ? screw_pullout_lb(number_of(rows, "tc_in"), screw, tensile_ksi) : refused;
}

static double of_pullout(const OracleRows *rows)
{
	return pullout(rows, number_of(rows, "fu2_ksi"));
}

static double of_grade(const OracleRows *rows)
{
	for (uint32_t i = 0; i < world.reference->steel_grades.count; i++) {
		const SteelGrade *row = &world.reference->steel_grades.row[i];
		if (row->grade_ksi.value == number_of(rows, "steel_grade"))
			return row->low_ductility.yes ? low_ductility_tensile_ksi(row->tensile_ksi.value) : row->tensile_ksi.value;
	}
	fail_msg("no such grade");
	return 0;
}

static double of_grade_pullout(const OracleRows *rows)
{
	return pullout(rows, of_grade(rows));
}

static double pullover(const OracleRows *rows)
{
	return screw_pullover_lb(number_of(rows, "t1_in"), number_of(rows, "head_d_in"), head_cap_in, number_of(rows, "fu1_ksi"));
}

static double of_pullover(const OracleRows *rows)
{
	ScrewTension only = { HUGE_VAL, pullover(rows), HUGE_VAL, oracle_is(rows, "one_sided", "yes") };
	return screw_nominal_lb(&only);
}

static double of_tension(const OracleRows *rows)
{
	ScrewTension of = { of_pullout(rows), pullover(rows), HUGE_VAL, oracle_is(rows, "one_sided", "yes") };
	if (!oracle_is(rows, "pts_lb", ""))
		of.tension_lb = number_of(rows, "pts_lb");
	return of.pullout_lb == refused ? refused : screw_nominal_lb(&of);
}

static double over(double nominal, double factor)
{
	return nominal == refused ? refused : nominal / factor;
}

static double of_screw_allowable(const OracleRows *rows)
{
	return over(of_tension(rows), omega);
}

static double of_clip_allowable(const OracleRows *rows)
{
	return over(of_tension(rows), omega / number_of(rows, "screws_per_clip"));
}

static double of_clip_guide_allowable(const OracleRows *rows)
{
	double screws = number_of(rows, "screws_per_clip");
	return over(of_tension(rows), (screws > 1 ? guide_more : guide_one) / screws);
}

/* ---- wood ---- */

static double of_wood_screw_per_inch(const OracleRows *rows)
{
	return wood_screw_withdrawal_lb_per_in(number_of(rows, "wood_g"), number_of(rows, "screw_d_in"));
}

static double of_wood_screw(const OracleRows *rows)
{
	return withdrawal_lb(of_wood_screw_per_inch(rows), number_of(rows, "penetration_in"), wind_duration);
}

static double of_lag_per_inch(const OracleRows *rows)
{
	return lag_screw_withdrawal_lb_per_in(number_of(rows, "wood_g"), number_of(rows, "screw_d_in"));
}

static double of_lag(const OracleRows *rows)
{
	return withdrawal_lb(of_lag_per_inch(rows), number_of(rows, "penetration_in"), wind_duration);
}

/* ---- clips and tests ---- */

static double of_clip_load(const OracleRows *rows)
{
	return clip_load_lb(number_of(rows, "pressure_psf"), number_of(rows, "panel_width_in"), number_of(rows, "clip_spacing_in"));
}

static size_t list_of(const char *cell, double *at)
{
	size_t count = 0;
	for (char *end; count < 8; cell = end + 1) {
		at[count++] = strtod(cell, &end);
		if (*end != ';')
			break;
	}
	return count;
}

static Interpolation method_of(const OracleRows *rows)
{
	static const char *const names[] = { "L", "R", "P", "least" };
	int i = 0;
	while (!oracle_is(rows, "method", names[i]))
		i++;
	return (Interpolation)i; /* in the order of the type */
}

static size_t tests_of(const OracleRows *rows, TestPoint *test)
{
	double spacing[8], pressure[8];
	size_t count = list_of(oracle_text(rows, "test_spacings_in"), spacing);
	assert_int_equal(list_of(oracle_text(rows, "test_pressures_psf"), pressure), count);
	for (size_t i = 0; i < count; i++)
		test[i] = (TestPoint){ spacing[i], pressure[i], false };
	return count;
}

/* The interpolation lies between its neighbors and never above the straight line, whatever the way. */
static double of_tested_pressure(const OracleRows *rows)
{
	TestPoint test[8];
	size_t count = tests_of(rows, test);
	double spacing = number_of(rows, "clip_spacing_in");
	double straight = tested_pressure_psf(test, count, spacing, BY_STRAIGHT_LINE);
	for (int how = BY_STRAIGHT_LINE; how <= BY_NEXT_WIDER; how++) {
		double here = tested_pressure_psf(test, count, spacing, (Interpolation)how);
		assert_true(here <= straight * (1 + 1e-12) || straight < 0);
		assert_true(here <= test[0].pressure_psf * (1 + 1e-12));
		assert_true(here < 0 || here >= test[count - 1].pressure_psf * (1 - 1e-12));
	}
	return tested_pressure_psf(test, count, spacing, method_of(rows));
}

static double of_allowable(const OracleRows *rows)
{
	return allowable_pressure_psf(number_of(rows, "ultimate_psf"), number_of(rows, "safety_factor"), 1);
}

/* ---- movement ---- */

static double moved(const OracleRows *rows, const char *high, const char *low)
{
	double run = number_of(rows, "length_ft") * (oracle_is(rows, "fixed_at", "middle") ? 0.5 : 1);
	return movement_in(number_of(rows, "alpha_per_f_1e6") * 1e-6, run, number_of(rows, high) - number_of(rows, low));
}

static double of_expansion(const OracleRows *rows)
{
	return moved(rows, "t_max_f", "t_install_f");
}

static double of_contraction(const OracleRows *rows)
{
	return moved(rows, "t_install_f", "t_min_f");
}

static double of_movement(const OracleRows *rows)
{
	return moved(rows, "t_max_f", "t_min_f");
}

/* ---- all questions ---- */

static const struct {
	const char *kind;
	double (*answer)(const OracleRows *rows);
} questions[] = {
	{ "pullout", of_pullout }, { "low_ductility_fu", of_grade }, { "low_ductility_pullout", of_grade_pullout },
	{ "pullover", of_pullover }, { "tension", of_tension }, { "screw_allowable", of_screw_allowable },
	{ "clip_allowable", of_clip_allowable }, { "clip_guide_allowable", of_clip_guide_allowable },
	{ "wood_screw_per_inch", of_wood_screw_per_inch }, { "wood_screw", of_wood_screw }, { "lag_per_inch", of_lag_per_inch },
	{ "lag", of_lag }, { "clip_load", of_clip_load }, { "tested_pressure", of_tested_pressure },
	{ "allowable_from_ultimate", of_allowable }, { "expansion", of_expansion }, { "contraction", of_contraction },
	{ "movement", of_movement },
};
enum { QUESTIONS = sizeof questions / sizeof *questions };

typedef struct {
	unsigned rows, of[QUESTIONS], refused, screw_at[4], head_at[2], spacing_at[3], on_any;
} Count;

static bool is_near(double value, double edge, double within)
{
	return fabs(value - edge) <= within;
}

static bool count_screw(Count *count, double screw)
{
	bool at[] = { is_near(screw, 0.08, 0), is_near(screw, 0.25, 0), is_near(screw, 0.08, 2e-7) && screw < 0.08,
		is_near(screw, 0.25, 2e-7) && screw > 0.25 };
	bool any = false;
	for (int i = 0; i < 4; i++) {
		count->screw_at[i] += at[i];
		any |= at[i];
	}
	return any;
}

static bool count_head(Count *count, double head)
{
	bool at = is_near(head, 0.5, 0), above = head > 0.5 && is_near(head, 0.5, 1e-6);
	count->head_at[0] += at;
	count->head_at[1] += above;
	return at || above;
}

static bool count_spacing(Count *count, const OracleRows *rows)
{
	TestPoint test[8];
	size_t tests = tests_of(rows, test);
	double spacing = number_of(rows, "clip_spacing_in");
	bool at = false, beyond = spacing > test[tests - 1].spacing_in, closer = spacing < test[0].spacing_in;
	for (size_t i = 0; i < tests; i++)
		at |= is_near(spacing, test[i].spacing_in, 0.0011);
	count->spacing_at[0] += at;
	count->spacing_at[1] += beyond;
	count->spacing_at[2] += closer;
	return at || beyond || closer;
}

static void count_edges(Count *count, const OracleRows *rows)
{
	bool on = false;
	bool is_steel = !oracle_is(rows, "tc_in", "");
	if (is_steel)
		on |= count_screw(count, number_of(rows, "screw_d_in"));
	if (!oracle_is(rows, "head_d_in", ""))
		on |= count_head(count, number_of(rows, "head_d_in"));
	if (oracle_is(rows, "kind", "tested_pressure"))
		on |= count_spacing(count, rows);
	count->on_any += on;
	count->rows++;
}

static void check_counts(const Count *count)
{
	print_message("%u of %u rows on an edge, %u refused\n", count->on_any, count->rows, count->refused);
	assert_true(count->rows >= 20000);
	assert_true(count->on_any * 5 >= count->rows);
	for (int i = 0; i < QUESTIONS; i++)
		assert_true(count->of[i] * 25 >= count->rows);
	for (int i = 0; i < 4; i++)
		assert_true(count->screw_at[i] > 20);
	assert_true(count->head_at[0] > 100 && count->head_at[1] > 100);
	for (int i = 0; i < 3; i++)
		assert_true(count->spacing_at[i] > 100);
}

static void answers_are_those_of_the_second_opinion(void **state)
{
	(void)state;
	Count count = { .rows = 0 };
	OracleRows rows;
	for (oracle_open(&rows, "fastening"); oracle_next(&rows);) {
		int i = 0;
		while (i < QUESTIONS && !oracle_is(&rows, "kind", questions[i].kind))
			i++;
		if (i == QUESTIONS)
			fail_msg("row %u: no answer to %s", rows.row, oracle_text(&rows, "kind"));
		double ours = questions[i].answer(&rows);
		bool is_refused = oracle_is(&rows, "expected", "refused");
		if (is_refused != (ours == refused))
			fail_msg("row %u: %s is %g here, %s there", rows.row, questions[i].kind, ours, oracle_text(&rows, "expected"));
		if (!is_refused)
			oracle_same(&rows, "expected", ours, 0);
		count.of[i]++;
		count.refused += is_refused;
		count_edges(&count, &rows);
	}
	if (rows.step == 1)
		check_counts(&count);
}

static int start(void **state)
{
	(void)state;
	world = world_make();
	return 0;
}

static int stop(void **state)
{
	(void)state;
	arena_free(world.run);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(answers_are_those_of_the_second_opinion) };
	return cmocka_run_group_tests_name("oracle_fastening", tests, start, stop) != 0;
}

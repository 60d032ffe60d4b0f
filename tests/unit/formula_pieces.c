/* SPDX-License-Identifier: MIT
 * The pieces a roof plan is drawn from: they cover each zone as far as its plan area goes, each lies in its zone, and zones meet
 * only at the lines that are drawn.
 */
#include "../check.h"

#include "formula.h"

#include <stdlib.h>

enum { MOST = 4096 };

static double area_of(const PlanPiece *piece)
{
	double twice = 0;
	for (int i = 0; i < 4; i++) {
		const PlanPoint *a = &piece->corner[i], *b = &piece->corner[(i + 1) % 4];
		twice += a->along_ft * b->up_ft - b->along_ft * a->up_ft;
	}
	return fabs(twice) / 2;
}

static double drawn_area(const RoofPlan *plan, const char *zone)
{
	static PlanPiece piece[MOST];
	size_t count = plan_pieces(plan, piece, MOST);
	double area = 0;
	assert_true(count <= MOST);
	for (size_t i = 0; i < count; i++)
		if (strcmp(piece[i].zone, zone) == 0)
			area += area_of(&piece[i]);
	return area;
}

/* 200 by 120 ft, 24 ft high: corners of 14.4 by 4.8 ft in an L, strips of 14.4, 28.8. By hand: 9 h^2 is what corners and strips
 * add up to. */
static void low_slope_by_hand(void **state)
{
	(void)state;
	RoofPlan plan = { 200, 120, 24, LAYOUT_LOW_SLOPE };
	assert_close(drawn_area(&plan, "3"), 4 * (2 * 14.4 * 4.8 - 4.8 * 4.8), 1e-12);
	assert_close(drawn_area(&plan, "1'"), (200 - 57.6) * (120 - 57.6), 1e-12);
	assert_close(drawn_area(&plan, "1"), (200 - 28.8) * (120 - 28.8) - (200 - 57.6) * (120 - 57.6), 1e-12);
}

static void monoslope_by_hand(void **state)
{
	(void)state;
	RoofPlan plan = { 100, 50, 5, LAYOUT_MONOSLOPE };
	assert_close(drawn_area(&plan, "3'"), 2 * 20 * 10, 1e-12);
	assert_close(drawn_area(&plan, "2'"), 60 * 10, 1e-12);
	assert_close(drawn_area(&plan, "3"), 2 * 100, 1e-12);
	assert_string_equal(zone_on_plan(&plan, (PlanPoint){ 1, 49 }), "3'");
	assert_string_equal(zone_on_plan(&plan, (PlanPoint){ 99, 1 }), "3");
	assert_string_equal(zone_on_plan(&plan, (PlanPoint){ 50, 25 }), "1");
}

static const char *const zones[] = { "1'", "1", "2", "2'", "2e", "2n", "2r", "3", "3'", "3e", "3r" };
enum { ZONES = sizeof zones / sizeof *zones };

static const RoofPlan plans[] = {
	{ 200, 120, 12, LAYOUT_EDGES }, { 60, 120, 24, LAYOUT_LOW_SLOPE }, { 40, 30, 24, LAYOUT_LOW_SLOPE }, { 500, 20, 3, LAYOUT_HIGH },
	{ 80, 60, 6, LAYOUT_GABLE_2010 }, { 80, 60, 6, LAYOUT_LOW_HIP_2010 }, { 60, 80, 6, LAYOUT_HIP_2010 }, { 9, 8, 3, LAYOUT_GABLE_2016 },
	{ 100, 60, 6, LAYOUT_HIP_2016 }, { 60, 60, 6, LAYOUT_HIP_2016 }, { 31, 100, 3.1, LAYOUT_HIP_2016 }, { 12, 10, 3, LAYOUT_HIP_2022 },
	{ 100, 60, 6, LAYOUT_GABLE_2022 }, { 100, 60, 6, LAYOUT_STEEP_GABLE_2022 }, { 30, 8, 3, LAYOUT_MONOSLOPE },
};
enum { PLANS = sizeof plans / sizeof *plans };

static void pieces_cover_each_zone(void **state)
{
	(void)state;
	for (int p = 0; p < PLANS; p++) {
		double sum = 0;
		for (int z = 0; z < ZONES; z++) {
			double area = fmax(0, plan_area_sq_ft(&plans[p], zones[z]));
			assert_close(drawn_area(&plans[p], zones[z]), area, 1e-9);
			sum += area;
		}
		assert_close(sum, plans[p].length_ft * plans[p].width_ft, 1e-9);
	}
}

static PlanPoint middle_of(const PlanPiece *piece)
{
	PlanPoint sum = { 0, 0 };
	for (int i = 0; i < 4; i++) {
		sum.along_ft += piece->corner[i].along_ft / 4;
		sum.up_ft += piece->corner[i].up_ft / 4;
	}
	return sum;
}

static void a_piece_lies_in_its_zone(void **state)
{
	(void)state;
	static PlanPiece piece[MOST];
	for (int p = 0; p < PLANS; p++) {
		size_t count = plan_pieces(&plans[p], piece, MOST);
		assert_true(count > 0);
		for (size_t i = 0; i < count; i++)
			assert_string_equal(zone_on_plan(&plans[p], middle_of(&piece[i])), piece[i].zone);
	}
}

/* The line from `a` to `b` crosses a border. */
static bool is_crossing(const PlanLine *line, PlanPoint a, PlanPoint b)
{
	double dx = line->to.along_ft - line->from.along_ft, dy = line->to.up_ft - line->from.up_ft;
	double one = dx * (a.up_ft - line->from.up_ft) - dy * (a.along_ft - line->from.along_ft);
	double two = dx * (b.up_ft - line->from.up_ft) - dy * (b.along_ft - line->from.along_ft);
	double ex = b.along_ft - a.along_ft, ey = b.up_ft - a.up_ft;
	double three = ex * (line->from.up_ft - a.up_ft) - ey * (line->from.along_ft - a.along_ft);
	double four = ex * (line->to.up_ft - a.up_ft) - ey * (line->to.along_ft - a.along_ft);
	return one * two <= 0 && three * four <= 0;
}

static double random_to(double end)
{
	return end * ((double)rand() / RAND_MAX);
}

/* From one point to a near one the zone changes only across a border. */
static void zones_meet_at_borders(void **state)
{
	(void)state;
	static PlanLine line[MOST];
	srand(7);
	for (int p = 0; p < PLANS; p++) {
		const RoofPlan *plan = &plans[p];
		size_t count = plan_borders(plan, line, MOST);
		assert_in_range(count, 1, MOST);
		int changes = 0;
		for (int i = 0; i < 2000; i++) {
			PlanPoint a = { random_to(plan->length_ft), random_to(plan->width_ft) };
			PlanPoint b = { random_to(plan->length_ft), random_to(plan->width_ft) };
			if (strcmp(zone_on_plan(plan, a), zone_on_plan(plan, b)) == 0)
				continue;
			changes++;
			size_t at = 0;
			while (at < count && !is_crossing(&line[at], a, b))
				at++;
			if (at == count)
				print_error("plan %d: from %g, %g to %g, %g\n", p, a.along_ft, a.up_ft, b.along_ft, b.up_ft);
			assert_true(at < count);
		}
		assert_true(changes > 100);
	}
}

/* On either side of the middle of a border there is another zone. */
static void borders_part_two_zones(void **state)
{
	(void)state;
	static PlanLine line[MOST];
	for (int p = 0; p < PLANS; p++) {
		size_t count = plan_borders(&plans[p], line, MOST);
		for (size_t i = 0; i < count; i++) {
			double dx = line[i].to.along_ft - line[i].from.along_ft, dy = line[i].to.up_ft - line[i].from.up_ft;
			double length = hypot(dx, dy), x = line[i].from.along_ft + dx / 2, y = line[i].from.up_ft + dy / 2;
			PlanPoint one = { x - 1e-3 * dy / length, y + 1e-3 * dx / length };
			PlanPoint other = { x + 1e-3 * dy / length, y - 1e-3 * dx / length };
			assert_string_not_equal(zone_on_plan(&plans[p], one), zone_on_plan(&plans[p], other));
		}
	}
}

static void no_layout_no_pieces(void **state)
{
	(void)state;
	RoofPlan plan = { 100, 50, 5, LAYOUTS };
	assert_int_equal(plan_pieces(&plan, NULL, 0), 0);
	assert_int_equal(plan_borders(&plan, NULL, 0), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(low_slope_by_hand),
		cmocka_unit_test(monoslope_by_hand),
		cmocka_unit_test(pieces_cover_each_zone),
		cmocka_unit_test(a_piece_lies_in_its_zone),
		cmocka_unit_test(zones_meet_at_borders),
		cmocka_unit_test(borders_part_two_zones),
		cmocka_unit_test(no_layout_no_pieces),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

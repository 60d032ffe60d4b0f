/* SPDX-License-Identifier: MIT
 * Snow on the slope: drag on a panel and on a clamp, worked by hand; what a fact waits for.
 */
#include "compute_world.h"

#include "formula.h"

#include <math.h>

/* 30 psf on a strip of 16 in and 60 ft at 4:12: sine times cosine of the slope is 0.3. */
static void drag_goes_with_the_plan_area_and_the_slope(void **state)
{
	(void)state;
	SnowStrip strip = { .snow_psf = 30, .width_in = 16, .run_ft = 60, .slope_in_12 = 4 };
	assert_true(fabs(snow_drag_lb(&strip) - 720) < 1e-9);
	strip.slope_in_12 = 12; /* 45 degrees: 0.5 */
	assert_true(fabs(snow_drag_lb(&strip) - 1200) < 1e-9);
	assert_true(fabs(drag_per_clamp_lb(720, 32, 16, 3) - 480) < 1e-9);
}

static const NamedWord snow_devices[] = { { .list = { GOOD, "snow devices" }, .entry = { GOOD, "snow rail" } } };

static Accessory *a_rail(World *w)
{
	w->criteria.lists.row = (NamedWord *)(uintptr_t)snow_devices;
	w->criteria.lists.count = 1;
	Accessory *row = TAKE(w->arena, Accessory, 1);
	row->clamp_spacing_in = NUMBER_IS(32);
	row->rows_one = NUMBER_IS(3);
	row->capacity_lb = NUMBER_IS(800);
	w->area.building.roof_snow_psf = NUMBER_IS(30);
	w->area.building.slope_in_12 = NUMBER_IS(4);
	w->area.panel.width_in = NUMBER_IS(16);
	w->area.panel.length_ft = NUMBER_IS(30);
	w->area.panel.end_laps_one = NUMBER_IS(1);
	w->criteria.edition.snow_factor_one = NUMBER_IS(2);
	w->area.accessories.of.given.said = SAID_VALUE;
	row->kind = WORD_IS("snow rail");
	row->attachment = WORD_IS("seam clamp");
	return row;
}

static void rows_share_the_drag(void **state)
{
	World *w = *state;
	Case *rail = add_case(w, KIND_accessory, w->roof, a_rail(w));
	assert_known(rail, "drag_per_clamp", 480);
	assert_known(rail, "clamp_allowable", 400);
	assert_known(rail, "rows_needed", 4);
}

/* Drag 720 lb on a panel. The first rail may take 400 x 3 rows x 16 / 32 = 600 lb of it, the second, of 1 row at 16 in with half
 * the capacity, 200 lb: 800 lb in all, so each clamp bears nine tenths of what it may. With the second as it is, the
 * first needs (720 - 200) / 200 = 2.6 rows: 3. */
static void devices_share_by_what_they_may_take(void **state)
{
	World *w = *state;
	Case *rail = add_case(w, KIND_accessory, w->roof, a_rail(w));
	Accessory *other = a_rail(w);
	other->clamp_spacing_in = NUMBER_IS(16);
	other->rows_one = NUMBER_IS(1);
	other->capacity_lb = NUMBER_IS(400);
	Case *guard = add_case(w, KIND_accessory, w->roof, other);
	assert_known(w->roof, "snow_holders", 2);
	assert_known(w->roof, "snow_held", 800);
	assert_known(rail, "drag_per_clamp", 360);
	assert_known(guard, "drag_per_clamp", 180);
	assert_known(rail, "rows_needed", 3);
}

/* Glue holds nothing beside clamps. */
static void a_glued_device_holds_nothing(void **state)
{
	World *w = *state;
	Case *rail = add_case(w, KIND_accessory, w->roof, a_rail(w));
	Accessory *glued = a_rail(w);
	glued->attachment = WORD_IS("adhesive");
	add_case(w, KIND_accessory, w->roof, glued);
	assert_known(w->roof, "snow_held", 600);
	assert_known(rail, "drag_per_clamp", 480);
}

static void a_load_not_stated_is_waited_for(void **state)
{
	World *w = *state;
	Accessory *row = a_rail(w);
	row->capacity_lb = (Number){ 0 };
	Case *rail = add_case(w, KIND_accessory, w->roof, row);
	assert_state(rail, "drag_per_clamp", FACT_KNOWN);
	assert_waits(w, rail, "rows_needed", "capacity");
}

/* Below the snow from which eaves are guarded nobody is asked what lies under them. */
static void little_snow_asks_nothing(void **state)
{
	World *w = *state;
	w->criteria.edition.snow_area_psf = NUMBER_IS(20);
	w->submittal.project.ground_snow_psf = NUMBER_IS(19);
	assert_known(w->roof, "sheds_on_people", 0);
}

static void much_snow_asks_what_lies_below(void **state)
{
	World *w = *state;
	w->criteria.edition.snow_area_psf = NUMBER_IS(20);
	w->submittal.project.ground_snow_psf = NUMBER_IS(20);
	assert_waits(w, w->roof, "sheds_on_people", "eave_over");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(drag_goes_with_the_plan_area_and_the_slope),
		TEST(rows_share_the_drag),
		TEST(devices_share_by_what_they_may_take),
		TEST(a_glued_device_holds_nothing),
		TEST(a_load_not_stated_is_waited_for),
		TEST(little_snow_asks_nothing),
		TEST(much_snow_asks_what_lies_below),
	};
	return cmocka_run_group_tests_name("compute: snow", tests, NULL, NULL) != 0;
}

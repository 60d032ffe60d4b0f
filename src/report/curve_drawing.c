/* SPDX-License-Identifier: MIT
 * The tested curve: pressure by clip spacing. Points are tests, ultimate; the full line is what they allow at their factor of
 * safety, and the zones stand in it at their spacing with what is to be held there. All demands are at allowable level.
 */
#include "drawn.h"
#include "svg.h"

#include "number.h"

#include <math.h>
#include <string.h>

enum { LEFT = 52, RIGHT = 160, TOP = 14, HIGH = 250, BELOW = 44, MOST_CURVES = 4, MOST_POINTS = 200, STEPS = 12 };

typedef struct {
	Svg svg;
	const Sight *sight;
	const DrawnArea *area;
	double spacing, pressure; /* at the right end, at the top */
	Room room;
} Chart;

static At on_chart(const Chart *chart, double spacing_in, double pressure_psf)
{
	double wide = SVG_WIDTH - LEFT - RIGHT;
	return (At){ LEFT + wide * spacing_in / chart->spacing, TOP + HIGH * (1 - pressure_psf / chart->pressure) };
}

/* ---- axes ---- */

/* 1, 2 or 5 with zeros: at most eight steps to the end. */
static double round_step(double end)
{
	double step = pow(10, floor(log10(end / 8)));
	static const double times[] = { 1, 2, 5, 10 };
	for (int i = 0; i < 4; i++)
		if (end / (step * times[i]) <= 8)
			return step * times[i];
	return step * 10;
}

static double rounded_up(double value)
{
	double step = round_step(value);
	return step * ceil(value * 1.04 / step);
}

static void put_axes(Chart *chart)
{
	Arena *arena = chart->sight->arena;
	Svg *svg = &chart->svg;
	TextStyle style = { "plain", TEXT_AROUND, 11, 0 };
	double step = round_step(chart->spacing);
	for (double at = 0; at <= chart->spacing * 1.0001; at += step) {
		At foot = on_chart(chart, at, 0);
		svg_line(svg, "grid", foot, (At){ foot.x, TOP });
		svg_text(svg, &style, (At){ foot.x, foot.y + 14 }, number_print(arena, at, 2));
	}
	style.anchor = TEXT_UP_TO;
	step = round_step(chart->pressure);
	for (double at = 0; at <= chart->pressure * 1.0001; at += step) {
		At foot = on_chart(chart, 0, at);
		svg_line(svg, "grid", foot, on_chart(chart, chart->spacing, at));
		svg_text(svg, &style, (At){ foot.x - 6, foot.y + 4 }, number_print(arena, at, 2));
	}
	svg_line(svg, "axis", on_chart(chart, 0, 0), on_chart(chart, chart->spacing, 0));
	svg_line(svg, "axis", on_chart(chart, 0, 0), on_chart(chart, 0, chart->pressure));
	style.anchor = TEXT_AROUND;
	svg_text(svg, &style, (At){ (LEFT + SVG_WIDTH - RIGHT) / 2.0, TOP + HIGH + 32 }, "clip spacing, in");
	style.anchor = TEXT_FROM;
	svg_text(svg, &style, (At){ 2, TOP - 3 }, "psf");
}

/* ---- curves ---- */

static double allowed_at(const DrawnCurve *curve, double tested_psf)
{
	double allowed = tested_psf / curve->factor->value;
	const Number *cap = &curve->listing->cap_psf;
	return is_value(&cap->given) ? fmin(allowed, cap->value) : allowed;
}

/* The curve between its tests, ultimate or allowed; closer than the closest test the closest counts. */
static size_t sample(const Chart *chart, const DrawnCurve *curve, bool allowed, At at[MOST_POINTS])
{
	size_t count = 0;
	double from = 0;
	for (uint32_t i = 0; i < curve->tests && count + STEPS < MOST_POINTS; i++) {
		double to = curve->test[i].spacing_in;
		for (int step = i == 0 ? STEPS - 1 : 0; step <= STEPS; step++) {
			double spacing = i == 0 && step < STEPS ? 0 : from + (to - from) * fmax(step, 1e-6) / STEPS;
			double tested = tested_pressure_psf(curve->test, curve->tests, spacing, chart->area->how);
			at[count++] = on_chart(chart, spacing, allowed ? allowed_at(curve, tested) : tested);
		}
		from = to;
	}
	return count;
}

/* Labels keep off a line: off points on it, no more than ten units apart. */
static void fill_along(Chart *chart, const At *at, size_t count)
{
	for (size_t i = 1; i < count; i++) {
		double length = hypot(at[i].x - at[i - 1].x, at[i].y - at[i - 1].y);
		for (double gone = 0; gone <= length; gone += 10) {
			double share = length > 0 ? gone / length : 0;
			At point = { at[i - 1].x + share * (at[i].x - at[i - 1].x), at[i - 1].y + share * (at[i].y - at[i - 1].y) };
			room_fill(&chart->room, (Box){ point.x - 1, point.y - 1, point.x + 1, point.y + 1 });
		}
	}
}

static void put_end(Chart *chart, const char *text, At end)
{
	TextStyle style = { "plain", TEXT_FROM, 11, SVG_WIDTH - end.x - 8 };
	double width = fmin(svg_text_width(text, 11), style.room);
	for (int step = 0; step < 12; step++) {
		At at = { end.x + 8, end.y + 4 + (step % 2 == 0 ? 1 : -1) * 14.0 * ((step + 1) / 2) };
		if (room_take(&chart->room, (Box){ at.x, at.y - 10, at.x + width, at.y + 4 })) {
			svg_text(&chart->svg, &style, at, text);
			return;
		}
	}
}

static void put_curve_lines(Chart *chart, const DrawnCurve *curve)
{
	At at[MOST_POINTS];
	Arena *arena = chart->sight->arena;
	const char *name = curve->listing->listing.text;
	size_t count = sample(chart, curve, false, at);
	if (count == 0)
		return;
	svg_path(&chart->svg, &(Path){ "dashed", at, count, false });
	fill_along(chart, at, count);
	put_end(chart, arena_printf(arena, "%s, ultimate", name), at[count - 1]);
	if (curve->factor->state == FACT_KNOWN) {
		count = sample(chart, curve, true, at);
		svg_path(&chart->svg, &(Path){ "bold", at, count, false });
		fill_along(chart, at, count);
		put_end(chart, arena_printf(arena, "%s, allowed", name), at[count - 1]);
	}
	for (uint32_t i = 0; i < curve->tests; i++) {
		At point = on_chart(chart, curve->test[i].spacing_in, curve->test[i].pressure_psf);
		svg_circle(&chart->svg, "test", point, 4);
		room_fill(&chart->room, (Box){ point.x - 5, point.y - 5, point.x + 5, point.y + 5 });
	}
}

/* ---- zones ---- */

static bool is_shown(const DrawnZone *zone)
{
	return zone->demand->state == FACT_KNOWN && is_value(&((const Zone *)zone->at->row)->spacing_in.given);
}

static At demand_at(const Chart *chart, const DrawnZone *zone)
{
	return on_chart(chart, ((const Zone *)zone->at->row)->spacing_in.value, zone->demand->value);
}

static void put_demand(Chart *chart, const DrawnZone *zone)
{
	At at = demand_at(chart, zone);
	At square[] = { { at.x, at.y - 5 }, { at.x + 5, at.y }, { at.x, at.y + 5 }, { at.x - 5, at.y } };
	svg_path(&chart->svg, &(Path){ "demand", square, 4, true });
	room_fill(&chart->room, (Box){ at.x - 5, at.y - 5, at.x + 5, at.y + 5 });
}

static void put_demand_name(Chart *chart, const DrawnZone *zone)
{
	At at = demand_at(chart, zone);
	const char *text = arena_printf(chart->sight->arena, "zone %s: %s", zone_name(zone), measure(chart->sight,
		zone->demand->value, "psf"));
	double width = svg_text_width(text, 11);
	TextStyle style = { "strong halo", TEXT_FROM, 11, 0 };
	for (int step = 0; step < 24; step++) {
		bool left = step % 2 == 1;
		At place = { left ? at.x - 8 - width : at.x + 8, at.y + 4 + (step / 2 % 2 == 0 ? 1 : -1) * 13.0 * ((step / 2 + 1) / 2) };
		if (!room_take(&chart->room, (Box){ place.x - 2, place.y - 10, place.x + width + 2, place.y + 3 }))
			continue;
		if (step > 1)
			svg_line(&chart->svg, "leader", at, (At){ left ? place.x + width : place.x - 1, place.y - 4 });
		svg_text(&chart->svg, &style, place, text);
		return;
	}
}

/* ---- the whole ---- */

static uint32_t shown_curves(const DrawnArea *area)
{
	return area->curves < MOST_CURVES ? area->curves : MOST_CURVES;
}

static void take_extent(Chart *chart)
{
	const DrawnArea *area = chart->area;
	for (uint32_t c = 0; c < shown_curves(area); c++)
		for (uint32_t i = 0; i < area->curve[c].tests; i++) {
			chart->spacing = fmax(chart->spacing, area->curve[c].test[i].spacing_in);
			chart->pressure = fmax(chart->pressure, area->curve[c].test[i].pressure_psf);
		}
	for (uint32_t i = 0; i < area->zones; i++)
		if (is_shown(&area->zone[i])) {
			chart->spacing = fmax(chart->spacing, ((const Zone *)area->zone[i].at->row)->spacing_in.value);
			chart->pressure = fmax(chart->pressure, area->zone[i].demand->value);
		}
}

/* All its digits: a figure of the paper itself. */
static const char *as_listed(const Sight *sight, double value, const char *unit)
{
	const char *text = arena_printf(sight->arena, "%s %s", number_print(sight->arena, value, 4), unit);
	const char *si = sight->verdict->si ? si_text(value, unit, sight->arena) : NULL;
	return si != NULL ? arena_printf(sight->arena, "%s (%s)", text, si) : text;
}

static void put_tests(const Sight *sight, const DrawnArea *area)
{
	static const char *const heads[] = { "Paper", "Clip spacing", "Pressure", "What it is", "Tests", "Failed at",
		"Factor of safety" };
	begin_table(sight->page, "The tests", heads, sizeof heads / sizeof *heads);
	for (uint32_t c = 0; c < area->curves && c < MOST_CURVES; c++)
		for (uint32_t i = 0; i < area->curve[c].tests; i++) {
			const ListingTest *row = area->curve[c].row[i];
			const Fact *factor = area->curve[c].factor;
			OPEN(sight->page, "tr");
			ELEMENT(sight->page, "td", row->listing.text);
			ELEMENT(sight->page, "td", as_listed(sight, row->clip_spacing_in.value, "in"));
			ELEMENT(sight->page, "td", as_listed(sight, row->pressure_psf.value, "psf"));
			ELEMENT(sight->page, "td", said_text(&row->pressure_is.given, sight->arena));
			ELEMENT(sight->page, "td", said_text(&row->tests_one.given, sight->arena));
			ELEMENT(sight->page, "td", said_text(&row->failure_mode.given, sight->arena));
			ELEMENT(sight->page, "td", factor->state == FACT_KNOWN ? number_print(sight->arena, factor->value, 3) : "not known");
			CLOSE(sight->page, "tr");
		}
	end_table(sight->page);
}

static void put_notes(const Sight *sight, const DrawnArea *area)
{
	static const char *const between[] = {
		[BY_STRAIGHT_LINE] = "by a straight line", [BY_REACTION] = "by the reaction of a clip", [BY_POWER_LAW] = "by a power law",
		[BY_LESSER_CURVE] = "by the lesser of two curves", [BY_NEXT_WIDER] = "as the next wider test",
	};
	OPEN(sight->page, "figcaption");
	ELEMENT(sight->page, "p", arena_printf(sight->arena, "Rings: tests, ultimate (an allowable pressure times the factor in "
		"it). Full line: "
		"what they allow at their factor of safety and cap; between two tests %s, beyond the widest nothing. Diamonds: what each "
		"zone has to "
		"hold at its spacing, at allowable level; a zone holds where its diamond lies on or below every full line.",
			between[area->how]));
	for (uint32_t i = 0; i < area->zones && i < 60; i++)
		if (!is_shown(&area->zone[i]))
			ELEMENT(sight->page, "p", arena_printf(sight->arena, "Not drawn: zone %s, whose uplift or spacing is not known.",
				zone_name(&area->zone[i])));
	CLOSE(sight->page, "figcaption");
}

static void draw(Chart *chart)
{
	const DrawnArea *area = chart->area;
	svg_begin(&chart->svg, "curve", arena_printf(chart->sight->arena, "Tested pressure by clip spacing, %s", area->at->name));
	put_axes(chart);
	for (uint32_t c = 0; c < shown_curves(area); c++)
		put_curve_lines(chart, &area->curve[c]);
	for (uint32_t i = 0; i < area->zones; i++)
		if (is_shown(&area->zone[i]))
			put_demand(chart, &area->zone[i]);
	for (uint32_t i = 0; i < area->zones; i++)
		if (is_shown(&area->zone[i]))
			put_demand_name(chart, &area->zone[i]);
	svg_end(&chart->svg);
}

void put_curve(const Sight *sight, const DrawnArea *area)
{
	uint32_t tests = 0;
	for (uint32_t c = 0; c < area->curves; c++)
		tests += area->curve[c].tests;
	if (tests == 0) {
		ELEMENT(sight->page, "p", "No tested curve: no listing of this area that states tested pressures is named for capacity.");
		return;
	}
	Chart chart = { .svg = { sight->page, sight->arena, SVG_WIDTH, TOP + HIGH + BELOW }, .sight = sight, .area = area };
	take_extent(&chart);
	chart.spacing = rounded_up(chart.spacing);
	chart.pressure = rounded_up(chart.pressure);
	chart.room.within = (Box){ LEFT, 0, SVG_WIDTH, TOP + HIGH };
	OPEN(sight->page, "figure");
	draw(&chart);
	put_notes(sight, area);
	CLOSE(sight->page, "figure");
	put_tests(sight, area);
	if (area->curves > MOST_CURVES)
		ELEMENT(sight->page, "p", arena_printf(sight->arena, "and %u more papers on capacity, which are not drawn",
			area->curves - MOST_CURVES));
}

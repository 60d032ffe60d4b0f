/* SPDX-License-Identifier: MIT
 * The greatest clip spacing, tried out: put into the submittal, nothing about uplift, class, letter or screws is left against the
 * zone; at the next step wider something is. Of every zone of every example, and of random changes of the clean one.
 */
#include "../examples.h"
#include "../hand.h"
#include "../small_roof.h"

#include "formula.h"

static World world;

/* What a spacing can break. */
static const char *const codes[] = { "ENG-09", "ENG-09b", "ENG-15", "ENG-23", "LST-09", "FST-17" };

typedef struct {
	const char *path; /* of an example; NULL: the clean one, changed */
	const char *const *change; /* pairs of path and value */
	int changes;
} Package;

static Node *nodes_of(const Package *package, Arena *arena, const Source **source)
{
	if (package->path != NULL)
		return example_nodes(arena, package->path, source);
	Node *root = builtin_nodes(arena, "examples/clean.yaml", source);
	for (int i = 0; i < package->changes; i++)
		if (!edit_nodes(arena, root, package->change[2 * i], package->change[2 * i + 1]))
			fail_msg("%s cannot be set", package->change[2 * i]);
	return root;
}

static Verdict *judged(Arena *arena, Node *root, const Source *source)
{
	Complaints complaints = { .arena = arena };
	Inputs inputs = { .criteria = world.criteria, .reference = world.reference, .registers = world.registers };
	inputs.as_of = INT32_MIN;
	inputs.submittal = read_submittal(arena, root, source, world.reference, &complaints);
	print_complaints(&complaints);
	assert_int_equal(complaints.count, 0);
	return judge(arena, resolve(arena, &inputs), &complaints, source);
}

static const char *item_against(const Verdict *verdict, const char *zone)
{
	for (uint32_t i = 0; i < verdict->items; i++) {
		bool is_ours = false;
		for (size_t c = 0; c < sizeof codes / sizeof *codes; c++)
			is_ours |= strcmp(verdict->item[i].code, codes[c]) == 0;
		for (uint32_t s = 0; is_ours && s < verdict->item[i].spots; s++)
			if (verdict->item[i].spot[s].where != NULL && strcmp(verdict->item[i].spot[s].where->name, zone) == 0)
				return verdict->item[i].code;
	}
	return NULL;
}

/* What a spacing has broken in a zone, or NULL. The item on uplift is held back where the panel is not the tested one: then the
 * ratio itself tells. */
static const char *against(const Verdict *verdict, const char *name)
{
	for (uint32_t i = 0; i < verdict->cases->of[KIND_zone].count; i++) {
		Case *zone = verdict->cases->of[KIND_zone].at[i];
		if (strcmp(zone->name, name) == 0 && wind_fact(zone, "uplift_ratio")->state == FACT_KNOWN &&
		    wind_value(zone, "uplift_ratio") > 1 + 1e-9)
			return "an uplift ratio above 1";
	}
	return item_against(verdict, name);
}

/* ---- laying a zone at another spacing ---- */

/* The spacings of an area by the zones' own names, as YAML, with one of them changed; NULL if one is not known. */
static const char *spacings_with(Arena *arena, const Cases *all, const Case *zone, double spacing_in)
{
	const char *text = "{";
	for (uint32_t i = 0; i < all->of[KIND_zone].count; i++) {
		const Case *other = all->of[KIND_zone].at[i];
		const Zone *row = other->row;
		if (other->up != zone->up)
			continue;
		if (!is_value(&row->spacing_in.given))
			return NULL;
		text = arena_printf(arena, "%s%s\"%s\": %.17g in", text, text[1] != '\0' ? ", " : "", row->name.text,
				    other == zone ? spacing_in : row->spacing_in.value);
	}
	return arena_printf(arena, "%s}", text);
}

static void lay(Arena *arena, Node *root, const Case *zone, const char *spacings)
{
	const Case *area = zone->up;
	const RoofArea *row = area->row;
	uint32_t number = 0;
	while (area->all->of[KIND_roof_area].at[number] != area)
		number++;
	for (uint32_t i = 0; i < row->clips.of.count; i++)
		if (is_word(&row->clips.of.row[i].use, "running"))
			assert_true(edit_nodes(arena, root, arena_printf(arena, "roof_areas.%u.clips.%u.spacing", number, i), spacings));
}

static const char *against_at(const Package *package, Arena *arena, const Verdict *before, const Case *zone, double spacing_in)
{
	const Source *source;
	Node *root = nodes_of(package, arena, &source);
	lay(arena, root, zone, spacings_with(arena, before->cases, zone, spacing_in));
	return against(judged(arena, root, source), zone->name);
}

/* ---- trying it out ---- */

typedef struct {
	int zones, without; /* without: no spacing holds, or it is not known */
	int bound[5];
} Tried;

static double unit_of(const Case *zone)
{
	const Support *support = &((const RoofArea *)zone->up->row)->support;
	bool purlins = is_word(&support->kind, "purlin") || is_word(&support->kind, "sub-purlin");
	const Number *module = purlins ? &support->spacing_in : &support->flute_pitch_in;
	return spacing_unit_in(is_value(&module->given) ? module->value : 0, zone->all->criteria->edition.spacing_step_in.value);
}

static void count_bound(Tried *tried, const char *note)
{
	static const char *const words[] = { "uplift", "screws", "class", "widest test", "letter" };
	for (int i = 0; i < 5; i++)
		tried->bound[i] += strstr(note, words[i]) != NULL;
}

static void try_zone(const Package *package, Tried *tried, const Verdict *verdict, Case *zone)
{
	const Fact *greatest = wind_fact(zone, "greatest_spacing");
	if (greatest->state != FACT_KNOWN || spacings_with(zone->all->arena, verdict->cases, zone, 1) == NULL) {
		tried->without++;
		return;
	}
	Arena *arena = arena_make();
	double spacing = greatest->value, wider = spacing + unit_of(zone);
	const char *what = against_at(package, arena, verdict, zone, spacing);
	if (what != NULL)
		fail_msg("%s at %g in: %s", zone->name, spacing, what);
	bool is_judged = is_word(&zone->all->submittal->warranty.kind, "weathertight");
	if (is_judged && against_at(package, arena, verdict, zone, wider) == NULL)
		fail_msg("%s at %g in: nothing against it, though %g in is the greatest (%s)", zone->name, wider, spacing, greatest->note);
	tried->zones++;
	count_bound(tried, greatest->note);
	arena_free(arena);
}

static void try_package(const Package *package, Tried *tried)
{
	Arena *arena = arena_make();
	const Source *source;
	Node *root = nodes_of(package, arena, &source);
	const Verdict *verdict = judged(arena, root, source);
	for (uint32_t i = 0; i < verdict->cases->of[KIND_zone].count; i++)
		try_zone(package, tried, verdict, verdict->cases->of[KIND_zone].at[i]);
	arena_free(arena);
}

static void the_greatest_spacing_of_every_example_holds(void **state)
{
	(void)state;
	Tried tried = { 0 };
	Examples all;
	examples_open(&all);
	for (const char *path = examples_next(&all); path != NULL; path = examples_next(&all))
		try_package(&(Package){ .path = path }, &tried);
	print_message("%d zones tried, %d without a greatest spacing\n", tried.zones, tried.without);
	assert_true(tried.zones >= 30);
}

/* ---- random changes ---- */

static const char *any_of(Dice *dice, const char *const *choice, uint32_t count)
{
	return choice[dice_roll(dice, count)];
}
#define ANY(dice, ...) any_of(dice, (const char *const[]){ __VA_ARGS__ }, \
	(uint32_t)(sizeof(const char *const[]){ __VA_ARGS__ } / sizeof(const char *)))

enum { MOST_CHANGES = 11, VARIATIONS = 100 };

static void change(const char **at, int *count, const char *path, const char *value)
{
	assert_true(*count < MOST_CHANGES);
	at[2 * *count] = path;
	at[2 * *count + 1] = value;
	++*count;
}

static Package any_package(Dice *dice, Arena *arena, const char **at)
{
	int n = 0;
	change(at, &n, "wind.basic_speed", arena_printf(arena, "%u mph", 90 + dice_roll(dice, 70)));
	change(at, &n, "wind.exposure", ANY(dice, "B", "C", "D"));
	change(at, &n, "wind.standard", ANY(dice, "ASCE 7-10", "ASCE 7-16", "ASCE 7-22"));
	change(at, &n, "building.eave_height", arena_printf(arena, "%u ft", 12 + dice_roll(dice, 45)));
	change(at, &n, "roof_areas.0.support.flute_pitch", ANY(dice, "1 in", "1 in", "6 in", "4 in", "2.5 in"));
	change(at, &n, "building.slope", ANY(dice, "1:12", "1:12", "3:12", "5:12"));
	change(at, &n, "roof_areas.0.panel.width", ANY(dice, "16 in", "16 in", "48 in")); /* wide: the area of a clip leaves the plateau */
	if (dice_roll(dice, 2))
		change(at, &n, "engineering", "none");
	else
		change(at, &n, "engineering.0.clip_spacing", ANY(dice, "24 in", "48 in", "{field: 20 in, perimeter: 14 in, corner: 13 in}"));
	if (dice_roll(dice, 3) == 0)
		change(at, &n, "roof_areas.0.support.thickness", "0.0179 in"); /* not the one that was tested: the screws count */
	if (dice_roll(dice, 2))
		change(at, &n, "roof_areas.0.fasteners.0.per", "1");
	if (dice_roll(dice, 4) == 0)
		change(at, &n, "roof_areas.0.tests", ANY(dice, "[{listing: tested-118, for: class}, {listing: report-33, for: capacity}]",
			"[{listing: tested-210, for: class}, {listing: report-33, for: capacity}, {listing: report-38, for: capacity}]"));
	return (Package){ .change = at, .changes = n };
}

static void the_greatest_spacing_of_random_packages_holds(void **state)
{
	(void)state;
	Tried tried = { 0 };
	Dice dice = { 41 };
	for (int i = 0; i < dice_draws(VARIATIONS); i++) {
		Arena *arena = arena_make();
		const char *at[2 * MOST_CHANGES];
		Package package = any_package(&dice, arena, at);
		try_package(&package, &tried);
		arena_free(arena);
	}
	print_message("%d zones tried, %d without; bound by uplift %d, screws %d, class %d, widest test %d, letter %d\n", tried.zones,
		      tried.without, tried.bound[0], tried.bound[1], tried.bound[2], tried.bound[3], tried.bound[4]);
	assert_true(tried.zones >= dice_draws(VARIATIONS));
}

/* Zone 3r from 20 to 27 deg falls off from 4 sq ft on: a wider spacing has less to hold, and the greatest must know it. */
static void the_greatest_spacing_knows_that_uplift_falls_with_the_area(void **state)
{
	(void)state;
	Tried tried = { 0 };
	for (int mph = 90; mph < 150; mph += 4) {
		Arena *arena = arena_make();
		const char *at[2 * MOST_CHANGES];
		int n = 0;
		change(at, &n, "wind.basic_speed", arena_printf(arena, "%d mph", mph));
		change(at, &n, "building.slope", "5:12");
		change(at, &n, "roof_areas.0.panel.width", "48 in");
		change(at, &n, "roof_areas.0.fasteners.0.per", "8");
		change(at, &n, "roof_areas.0.support.flute_pitch", "1 in");
		change(at, &n, "engineering", "none");
		try_package(&(Package){ .change = at, .changes = n }, &tried);
		arena_free(arena);
	}
	print_message("%d zones tried, %d bound by uplift\n", tried.zones, tried.bound[0]);
	assert_true(tried.zones >= 40 && tried.bound[0] >= 5);
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
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_greatest_spacing_of_every_example_holds),
		cmocka_unit_test(the_greatest_spacing_of_random_packages_holds),
		cmocka_unit_test(the_greatest_spacing_knows_that_uplift_falls_with_the_area),
	};
	return cmocka_run_group_tests_name("spacing_found", tests, start, stop) != 0;
}

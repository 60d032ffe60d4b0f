/* SPDX-License-Identifier: MIT
 * A roof in the wind, run through the pipeline: the clean example with another building, standard and place. Lengths in ft.
 */
#ifndef WIND_ROOF_H
#define WIND_ROOF_H

#include "harness.h"

#include "facts.h"

typedef struct {
	const char *standard, *shape, *enclosure, *exposure;
	double slope_in_12, height, length, width, speed_mph, parapet, ground;
} WindRoof;

static inline void set_words(Arena *arena, Node *root, const char *path, const char *words)
{
	if (!node_set(arena, root, path, words))
		fail_msg("%s cannot be set", path);
}

static inline void set_quantity(Arena *arena, Node *root, const char *path, const char *unit, double value)
{
	set_words(arena, root, path, arena_printf(arena, "%.17g%s", value, unit));
}

/* The eave is as high as the roof is meant to be, so that either height is the same. */
static inline Node *wind_nodes(Arena *arena, const WindRoof *roof, const Source **source)
{
	Node *root = builtin_nodes(arena, "examples/clean.yaml", source);
	set_words(arena, root, "wind.standard", roof->standard);
	set_words(arena, root, "wind.exposure", roof->exposure);
	set_quantity(arena, root, "wind.basic_speed", " mph", roof->speed_mph);
	set_quantity(arena, root, "wind.ground_elevation", " ft", roof->ground);
	set_words(arena, root, "building.shape", roof->shape);
	set_words(arena, root, "building.enclosure", roof->enclosure);
	set_quantity(arena, root, "building.slope", ":12", roof->slope_in_12);
	set_quantity(arena, root, "building.eave_height", " ft", roof->height);
	set_quantity(arena, root, "building.mean_roof_height", " ft", roof->height);
	set_quantity(arena, root, "building.length", " ft", roof->length);
	set_quantity(arena, root, "building.width", " ft", roof->width);
	set_quantity(arena, root, "building.parapet_height", " ft", roof->parapet);
	return root;
}

static inline Cases *wind_resolve(const World *world, Arena *arena, Node *root, const Source *source)
{
	Complaints complaints = { .arena = arena };
	Inputs inputs = { .criteria = world->criteria, .reference = world->reference, .registers = world->registers };
	inputs.as_of = INT32_MIN;
	inputs.submittal = read_submittal(arena, root, source, world->reference, &complaints);
	print_complaints(&complaints);
	assert_int_equal(complaints.count, 0);
	return resolve(arena, &inputs);
}

static inline Cases *wind_cases(const World *world, Arena *arena, const WindRoof *roof)
{
	const Source *source;
	Node *root = wind_nodes(arena, roof, &source);
	return wind_resolve(world, arena, root, source);
}

/* The zone of a name, or NULL. */
static inline Case *zone_or_null(const Cases *all, const char *name)
{
	for (uint32_t i = 0; i < all->of[KIND_zone].count; i++)
		if (strcmp(((const Zone *)all->of[KIND_zone].at[i]->row)->name.text, name) == 0)
			return all->of[KIND_zone].at[i];
	return NULL;
}

static inline Case *zone_named(const Cases *all, const char *name)
{
	Case *zone = zone_or_null(all, name);
	if (zone == NULL)
		fail_msg("there is no zone %s", name);
	return zone;
}

/* Spaces the clips of a zone so far apart that each holds this area, also beyond what the form takes. */
static inline void set_area(Case *zone, double area_sq_ft)
{
	double width = ((const RoofArea *)zone->up->row)->panel.width_in.value;
	((ZoneHere *)(uintptr_t)zone->row)->record.spacing_in.value = area_sq_ft * 144 / width;
}

static inline const Fact *wind_fact(Case *at, const char *name)
{
	int id = fact_find(at->kind, name, strlen(name));
	assert_true(id >= 0);
	return fact_of(at, (FactId)id);
}

static inline double wind_value(Case *at, const char *name)
{
	const Fact *fact = wind_fact(at, name);
	if (fact->state != FACT_KNOWN)
		fail_msg("%s of %s is in state %d: %s", name, at->name, fact->state, fact->reason != NULL ? fact->reason : "");
	return fact->value;
}

#endif

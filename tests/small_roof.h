/* SPDX-License-Identifier: MIT
 * A submittal of one small roof without parts, whose records a test overwrites, to ask for the facts of thousands of roofs.
 */
#ifndef SMALL_ROOF_H
#define SMALL_ROOF_H

#include "hand.h"
#include "wind_roof.h"

static inline Submittal *small_roof(const World *world, Arena *arena)
{
	static const char roof[] =
		"form: 1\nsubmittal: A\nstage: application\ndate: 2026-04-14\n"
		"building: {shape: flat, length: 100 ft, width: 100 ft, eave_height: 20 ft, mean_roof_height: 20 ft, slope: 1:12,"
		" enclosure: enclosed, parapet_height: 0 ft, overhang: 1 ft}\n"
		"wind: {standard: ASCE 7-16, basic_speed: 100 mph, exposure: C, ground_elevation: 0 ft,"
		" topography: {terrain: none, height: 0 ft, half_length: 0 ft, distance: 0 ft}}\n"
		"engineering: none\n"
		"roof_areas:\n  - {name: Roof, panel: {width: 12 in}, clips: [{item: clip, use: running, spacing: 24 in}]}\n";
	const Source *source = source_make(arena, "roof.yaml", roof, sizeof roof - 1, SOURCE_SUBMITTAL);
	Complaints complaints = { .arena = arena };
	Node *root = read_yaml(arena, source, &complaints);
	Submittal *submittal = read_submittal(arena, root, source, world->reference, &complaints);
	print_complaints(&complaints);
	assert_int_equal(complaints.count, 0);
	return submittal;
}

static inline Cases *small_cases(const World *world, Arena *arena, const Submittal *submittal)
{
	Inputs inputs = { .submittal = submittal, .criteria = world->criteria, .reference = world->reference,
		.registers = world->registers, .as_of = INT32_MIN, .nameless = true };
	return resolve(arena, &inputs);
}

/* A random number, the same in every C library: cut to 31 bits. */
typedef struct {
	uint64_t state;
} Dice;

static inline uint32_t dice_roll(Dice *dice, uint32_t sides)
{
	dice->state = dice->state * 6364136223846793005u + 1442695040888963407u;
	return (uint32_t)(dice->state >> 33) % sides;
}

/* Under another program (valgrind) a twentieth of the draws is enough. */
static inline int dice_draws(int count)
{
	const char *under = getenv("UNDER");
	return under != NULL && under[0] != '\0' ? count / 20 : count;
}

static inline double dice_between(Dice *dice, double low, double high)
{
	return low + (high - low) * dice_roll(dice, 1000001) / 1000000;
}

#endif

/* SPDX-License-Identifier: MIT
 * Unit: the rows of units.def. Values are kept in the unit of their field; conversion happens when reading and when printing.
 */
#ifndef UNIT_H
#define UNIT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef uint8_t Unit;
enum {
#define UNIT(name, ...) UNIT_##name,
#include "units.def"
	UNIT_COUNT
};

typedef enum {
	DIMENSION_PURE, DIMENSION_YES_NO, DIMENSION_TIME, DIMENSION_LENGTH, DIMENSION_AREA, DIMENSION_PRESSURE, DIMENSION_FORCE,
	DIMENSION_FORCE_PER_LENGTH, DIMENSION_SPEED, DIMENSION_SLOPE, DIMENSION_ANGLE, DIMENSION_TEMPERATURE,
	DIMENSION_TEMPERATURE_STEP, DIMENSION_SHARE, DIMENSION_POTENTIAL
} Dimension;

typedef struct {
	const char *name, *printed, *spellings;
	Dimension dimension;
	double factor, offset;
} UnitRow;

const UnitRow *unit_row(Unit unit);

/* The unit spelt by `length` bytes among those of one dimension; false if there is none. */
bool unit_find(const char *text, size_t length, Dimension dimension, Unit *unit);

/* A value in `from` as a value in `to`; both have one dimension. */
double unit_convert(double value, Unit from, Unit to);

#endif

/* SPDX-License-Identifier: MIT
 * Reference: figures that no maker sets, from data/reference/, built in. Each row names its source.
 */
#ifndef REFERENCE_H
#define REFERENCE_H

#include "form.h"

#define REFERENCE_TABLES(TABLE) \
	TABLE(sources, SourceRow, "sources.csv") \
	TABLE(screws, Screw, "screws.csv") \
	TABLE(drill_points, DrillPoint, "drill_points.csv") \
	TABLE(gauges, Gauge, "gauges.csv") \
	TABLE(trade_sizes, TradeSize, "trade_sizes.csv") \
	TABLE(wind_exposures, WindExposure, "wind_exposures.csv") \
	TABLE(wind_constants, WindConstant, "wind_constants.csv") \
	TABLE(wind_enclosures, WindEnclosure, "wind_enclosures.csv") \
	TABLE(wind_hills, WindHill, "wind_hills.csv") \
	TABLE(wind_figures, WindFigure, "wind_figures.csv") \
	TABLE(wind_zones, WindZone, "wind_zones.csv") \
	TABLE(wind_curves, WindCurve, "wind_curves.csv") \
	TABLE(steel_grades, SteelGrade, "steel_grades.csv") \
	TABLE(screw_heads, ScrewHead, "screw_heads.csv") \
	TABLE(woods, WoodKind, "woods.csv") \
	TABLE(metals, MetalRow, "metals.csv") \
	TABLE(metal_pairs, MetalPair, "metal_pairs.csv") \
	TABLE(uplift_classes, UpliftClass, "uplift_classes.csv") \
	TABLE(cautions, Caution, "cautions.csv")

typedef struct Reference {
#define REFERENCE_MEMBER(member, R, file) struct { uint32_t count; const R *row; const Source *source; } member;
	REFERENCE_TABLES(REFERENCE_MEMBER)
#undef REFERENCE_MEMBER
	const Source *const *source;
	uint32_t count;
} Reference;

/* The nominal diameter in inches of a screw size such as "#12" or "1/4"; 0 if the table has none. */
double screw_diameter(const Reference *reference, const char *size);

/* The size written for a diameter of the table, or NULL. */
const char *screw_size(const Reference *reference, double diameter_in);

/* The thickness in inches of a gauge in a table ("sheet", "deck", "stainless", "aluminum"); 0 if it has none. */
double gauge_thickness(const Reference *reference, const char *use, double gauge);

/* Whether two thicknesses in inches are sold as one size of a family ("sheet", "deck", "wood panel"). */
bool is_one_trade_size(const Reference *reference, const char *family, double a_in, double b_in);

/* The row of wind_constants.csv, or NULL if the load standard is not among them; letters of either case. */
const WindConstant *wind_constant(const Reference *reference, const char *standard, const char *name);

/* The row of sources.csv for an id, or NULL; "common practice, no published source" has none. */
const SourceRow *source_row(const Reference *reference, const char *id);

#endif

/* SPDX-License-Identifier: MIT
 * The plain functions: numbers in the units of their parameters' names, no records. A fact fetches the inputs and calls one.
 */
#ifndef FORMULA_H
#define FORMULA_H

#include <stdbool.h>
#include <stddef.h>

/* A corner of a curve over effective area: between corners the value goes by log10 of the area, outside it stays (0.3 of the
 * pages on wind; ASCE 7 figures of chapter 30). */
typedef struct {
	double area_sq_ft, value;
} Corner;

/* ---- formula/velocity: ASCE 7 chapter 26 ---- */

/* The power law of an exposure: alpha, gradient height, factor in front (2.01, or 2.41 from ASCE 7-22 on). */
typedef struct {
	double alpha, gradient_ft, factor;
} ExposureLaw;

/* Velocity pressure exposure coefficient at a height, not taken below `least_ft` (15 ft; 30 ft under the Exposure B floor). */
double exposure_coefficient_one(double height_ft, double least_ft, const ExposureLaw *law);

/* Ground elevation factor; 1 at or below sea level, and where an edition has none `per_ft` is 0. */
double elevation_factor_one(double ground_ft, double per_ft);

/* A ridge, escarpment or hill: multiplier of K1 for the exposure, attenuations, its size, how far the crest is (downwind +). */
typedef struct {
	double multiplier, height_attenuation, upwind_attenuation, downwind_attenuation;
	double height_ft, half_length_ft, distance_ft;
} Hill;

/* Topographic factor at a height above local ground; H/Lh above 0.5 is taken as 0.5 with Lh = 2 H. */
double topographic_factor_one(const Hill *hill, double height_ft);

/* Whether a hill is steep and high enough to count: H/Lh at least 0.2 and H at least `least_ft`. */
bool is_hill_to_count(const Hill *hill, double least_ft);

/* Velocity pressure as an edition defines it; `directionality` is 1 where it stands in the pressure equation instead. */
typedef struct {
	double constant, exposure, topographic, directionality, elevation, speed_mph;
} VelocityPressure;
double velocity_pressure_psf(const VelocityPressure *of);

/* Uplift (positive) at strength level: q Kd' (GCp + GCpi), not below the least pressure. */
double strength_uplift_psf(double velocity_psf, double coefficient, double internal, double least_psf);

/* Uplift at allowable level: the factor of the load combination (0.6) times the strength-level one. */
double asd_uplift_psf(double strength_psf, double factor);

/* ---- formula/coefficient: the curves of chapter 30 ---- */

double curve_at(const Corner *corner, size_t count, double area_sq_ft);

/* Straight line between two values at `low` and `high`; outside, the nearer value (h/B of hips, slope of hips). */
double between(double at, double low, double at_low, double high, double at_high);

/* Roof slope as an angle, unrounded. */
double slope_angle_deg(double slope_in_12);

/* ---- formula/surface: surface over a plan, and clips on it ---- */

double roof_surface_sq_ft(double plan_sq_ft, double slope_in_12);
double clips_on_surface(double surface_sq_ft, double width_in, double spacing_in);

/* ---- formula/snow: what slides down the slope ---- */

/* Drag along the slope: snow on the plan area of a strip as wide as a panel and as long as its run, times the sine. */
typedef struct {
	double snow_psf, width_in, run_ft, slope_in_12;
} SnowStrip;
double snow_drag_lb(const SnowStrip *strip);

/* What one clamp holds of the drag on one panel: the clamps of all rows share it alike. */
double drag_per_clamp_lb(double drag_lb, double clamp_spacing_in, double panel_width_in, double rows);

/* ---- formula/slope: what a slope keeps, and what slides on it ---- */

/* From mid-span to the lower support the fall is half the span's less the sag. Camber that is left over counts the same way. */
double slope_under_load_in_12(double slope_in_12, double deflection_in, double camber_in, double span_in);

/* Weight of a strip as wide as a panel, times the sine of the slope. */
double weight_drag_lb(double weight_psf, double width_in, double run_ft, double slope_in_12);

/* Every clip of a run resists by its slide force. */
double friction_drag_lb(double slide_force_lb, double run_ft, double spacing_in);

/* ---- formula/plan: zones of a rectangle ---- */

/* Width a of the edge strips: the lesser of 0.1 of the least width and 0.4 h, not below 0.04 of the least width or 3 ft. */
double zone_width_ft(double least_width_ft, double height_ft);

/* Width a above 60 ft: 0.1 of the least width, not below 3 ft. */
double high_zone_width_ft(double least_width_ft);

/* How the zones lie: one name for each layout of the figures. */
typedef enum {
	LAYOUT_EDGES, /* flat and low gable to ASCE 7-10: strips of a, corner squares */
	LAYOUT_HIGH, /* above 60 ft: strips of a, corner squares of 2 a */
	LAYOUT_LOW_SLOPE, /* flat from ASCE 7-16 on: L corners of 0.6 h by 0.2 h, strips of 0.6 h, inner strip to 1.2 h */
	LAYOUT_GABLE_2010, /* 7 to 45 deg to ASCE 7-10: eave, rake and ridge strips; corners at eave and ridge */
	LAYOUT_LOW_HIP_2010, /* up to 25 deg: zone 3 is taken as 2 */
	LAYOUT_HIP_2010,
	LAYOUT_GABLE_2016, /* 1, 2e, 2n, 2r, 3e, 3r */
	LAYOUT_HIP_2016, /* 1, 2e, 2r, 3 */
	LAYOUT_GABLE_2022, /* 7 to 27 deg: ridge and rake strips, corners at the ridge ends */
	LAYOUT_STEEP_GABLE_2022, /* 27 to 45 deg: rake strips, corners at the eave */
	LAYOUT_HIP_2022,
	LAYOUT_MONOSLOPE, /* 3 to 10 deg: primed zones along the high eave */
	LAYOUTS
} Layout;

/* The layout of a name in wind_figures.csv ("gable 2016"); LAYOUTS if it has none: the figure's plan is not drawn. */
Layout layout_named(const char *name);

typedef struct {
	double length_ft, width_ft; /* along the ridge; across it */
	double strip_ft; /* a; of LAYOUT_LOW_SLOPE: h */
	Layout layout;
} RoofPlan;

/* The measure a layout is drawn by: of LAYOUT_LOW_SLOPE the height, else `a`, above `high_ft` (60 ft) without its term in h. */
double layout_strip_ft(const RoofPlan *plan, double height_ft, double high_ft);

/* Plan area of one zone of a layout: zone names as in the figures ("1'", "2e", "3r"); -1 if the layout has no such zone. */
double plan_area_sq_ft(const RoofPlan *plan, const char *zone);

/* Whether a zone of a layout reaches the eave, of a monoslope the low one. */
bool is_zone_at_eave(const RoofPlan *plan, const char *zone);

/* The zone of a point of a gable or monoslope roof: `along_ft` from one rake, `up_ft` from the eave below, in plan. */
const char *zone_of_point(const RoofPlan *plan, double along_ft, double up_ft);

/* Distances from the eave, rising, between which no zone of a gable or monoslope roof ends: 0 first, the ridge (of a monoslope
 * the high eave) last. At most MOST_LEVELS. */
enum { MOST_LEVELS = 64 };
size_t plan_levels_ft(const RoofPlan *plan, double at_ft[MOST_LEVELS]);

/* ---- formula/pieces: the same zones to draw ---- */

/* A point in plan: along the eave from the left rake, up from that eave. */
typedef struct {
	double along_ft, up_ft;
} PlanPoint;

/* A piece of a zone, four corners; the pieces of a layout cover the roof. */
typedef struct {
	const char *zone;
	PlanPoint corner[4];
} PlanPiece;

/* Where two zones meet. */
typedef struct {
	PlanPoint from, to;
} PlanLine;

/* How many there are, of which at most `most` are written. */
size_t plan_pieces(const RoofPlan *plan, PlanPiece *piece, size_t most);
size_t plan_borders(const RoofPlan *plan, PlanLine *line, size_t most);

/* The zone of a point of the whole roof. */
const char *zone_on_plan(const RoofPlan *plan, PlanPoint at);

/* ---- formula/quantities: counting pieces (mechanics, section 8) ---- */

/* Length along the slope over a run in plan. */
double slope_length_ft(double run_ft, double slope_in_12);

/* Pieces of a length that cover another, an exact multiple counting as such. */
double pieces_to_cover(double length, double piece);

/* With an allowance for waste, in whole pieces. */
double with_waste(double pieces, double waste_percent);

/* A zone and the clip spacing that holds in it. */
typedef struct {
	const char *zone;
	double spacing_in;
} ZoneSpacing;

/* One plane of a roof whose seams run from eave to ridge. */
typedef struct {
	RoofPlan plan;
	double slope_in_12, overhang_ft; /* in plan, below the eave: it lies in the zone of the eave */
	double panel_width_in;
	bool whole_panels; /* as laid: a panel that a zone touches is laid as that zone, at the closest spacing */
	bool alone; /* the only plane: it goes over the whole width, whatever the layout */
} Plane;

/* Clips of all seams of one plane, added to `clips` of each zone: along a seam one at the eave, then one for each spacing begun
 * in each zone. Seams lie between panels laid from one rake; the rakes have none. False if a zone of the plan has no spacing. */
bool count_clips(const Plane *plane, const ZoneSpacing *zone, size_t zones, double *clips);

/* Rolls of sheet laid in courses along the eave, each course and each piece lapping the one before. */
typedef struct {
	double roll_width_in, roll_length_in, side_lap_in, end_lap_in;
} Roll;
typedef struct {
	double courses, pieces, length_in, rolls; /* pieces: of one course; length: of all, laps included */
} Sheets;
Sheets sheets_of(const Roll *roll, double eave_in, double slope_in);

/* ---- formula/capacity: from tests to allowable ---- */

typedef struct {
	double spacing_in, pressure_psf;
	bool unlike; /* failed in another way than the test before it, or one of the two does not say how: no curve joins them */
} TestPoint;

/* How the pressure between two tested spacings is taken (mechanics: L straight, R by the reaction p s, P by the power law). */
typedef enum { BY_STRAIGHT_LINE, BY_REACTION, BY_POWER_LAW, BY_LESSER_CURVE, BY_NEXT_WIDER } Interpolation;

/* Pressure at a spacing from tests sorted by spacing: closer than the closest its own value, -1 beyond the widest. */
double tested_pressure_psf(const TestPoint *test, size_t count, double spacing_in, Interpolation how);

/* A tested pressure over a factor of safety, by what the test's pressure is: a factor already in it is not taken twice. */
double allowable_pressure_psf(double pressure_psf, double factor, double factor_included);

/* The spacing at which a laid one is read off: a tested one of which it is the same in another unit (24 in laid at 610 mm). */
double spacing_as_tested_in(const TestPoint *test, size_t count, double laid_in, double tolerance_percent);

/* What one paper allows: its tests sorted by spacing (there may be none), all at one factor of safety, and its cap; 0: no cap. */
typedef struct {
	const TestPoint *test;
	size_t count;
	double factor, cap_psf;
} CapacityPaper;

/* The least that several papers allow at a spacing; -1 beyond the widest test of one of them. */
double least_allowable_psf(const CapacityPaper *paper, size_t papers, double spacing_in, Interpolation how);

/* Load of one clip: pressure on panel width times spacing. */
double clip_load_lb(double pressure_psf, double panel_width_in, double spacing_in);

/* Effective area of a clip, or of the panel between clips. */
double effective_area_sq_ft(double panel_width_in, double spacing_in);

/* ---- formula/screws_steel: AISI S100 J4.4 (E4.4) ---- */

/* Nominal pull-out of one screw from the sheet not in contact with its head; sheet, screw 0.08 to 0.25 in. */
double screw_pullout_lb(double support_in, double screw_in, double tensile_ksi);

/* Nominal pull-over of the sheet under the head; the head or washer is taken as at most `cap_in`. */
double screw_pullover_lb(double sheet_in, double head_in, double cap_in, double tensile_ksi);

/* Whether the equations cover a screw of this diameter: 0.08 to 0.25 in. */
bool is_in_steel_range(double screw_in);

/* The strength that governs: pull-out, pull-over (half of it under a one-sided clip), and the screw's own tension. */
typedef struct {
	double pullout_lb, pullover_lb, tension_lb;
	bool one_sided;
} ScrewTension;
double screw_nominal_lb(const ScrewTension *of);

/* Tensile strength that may be used of sheet of low ductility (grade 80). */
double low_ductility_tensile_ksi(double tensile_ksi);

/* ---- formula/screws_wood: NDS 12.2 ---- */

double wood_screw_withdrawal_lb_per_in(double gravity, double screw_in);
double lag_screw_withdrawal_lb_per_in(double gravity, double screw_in);

/* Allowable withdrawal: per inch, times penetration and duration factor. */
double withdrawal_lb(double per_in, double penetration_in, double duration);

/* ---- formula/movement ---- */

/* Movement of a run for a difference of temperature: alpha L dT. */
double movement_in(double expansion_per_F, double run_ft, double difference_F);

/* Movement over what a clip lets go: centred, half its travel each way; set by the mark, the whole of it. */
double travel_ratio_one(double expansion_in, double contraction_in, double travel_in, bool set_by_mark);

/* Temperature difference whose movement uses up the whole travel. */
double carried_difference_F(double expansion_per_F, double run_ft, double travel_in);

/* Longest run whose greater movement stays within half the travel. */
double longest_run_ft(double expansion_per_F, double greater_difference_F, double travel_in);

/* ---- formula/metals ---- */

/* Potential difference of two metals by their anodic index, always positive. */
double potential_difference_V(double index_a_V, double index_b_V);

/* ---- formula/screws ---- */

/* Steel that a drill point goes through before the threads take hold. */
double drilled_in(double clip_in, double support_in);

/* Least length of a screw into steel: what it goes through, and three full threads beyond the far side. */
double length_into_steel_in(double through_in, double threads_per_in);

/* Least length of a screw into a wood panel or board: right through. */
double length_into_wood_in(double above_in, double wood_in);

/* ---- formula/lives ---- */

/* The greatest of the offered terms that is not above the life; 0 if none is. */
double longest_term_yr(const double *offered_yr, size_t count, double life_yr);

/* ---- formula/spacing ---- */

/* A listed spacing as the one laid, where both are one spacing in two units (24 in laid at 610 mm): within the tolerance. */
double same_spacing_in(double listed_in, double laid_in, double tolerance_percent);

/* Spacing here over the spacing at which the class was earned; at most 1 is within the class. */
double spacing_ratio(double spacing_in, double class_spacing_in);

/* ---- formula/greatest: the greatest spacing of clips ---- */

/* What stands in the way of a spacing; several may. */
typedef enum {
	NOTHING_BINDS = 0, UPLIFT_BINDS = 1, FASTENING_BINDS = 2, CLASS_BINDS = 4, WIDEST_TEST_BINDS = 8, LETTER_BINDS = 16
} Binds;

/* The demand at a spacing, as the area of a clip moves it. */
typedef struct {
	double (*at_psf)(const void *wind, double spacing_in);
	const void *wind;
} Demand;

typedef struct {
	const CapacityPaper *paper; /* the first is the capacity report: nothing is offered outside its tests */
	size_t papers;
	Interpolation how;
	Demand demand;
	double panel_width_in;
	double clip_allowable_lb, class_spacing_in, letter_spacing_in; /* 0: does not bind */
	double tolerance_percent; /* of the class spacing and the tested ones */
	double unit_in; /* clips can stand at whole multiples of it */
} SpacingSearch;

typedef struct {
	double spacing_in; /* 0: none holds */
	unsigned binds; /* Binds of the next wider one, or of the closest tried where none holds */
} GreatestSpacing;

/* What of Binds stands in the way at a spacing. */
unsigned spacing_binds(const SpacingSearch *of, double spacing_in);

/* The widest multiple of the unit, from the widest test to the closest, in whose way nothing stands. */
GreatestSpacing greatest_spacing(const SpacingSearch *of);

/* The unit clips can be set by: the support's module (0: none), so often that it is not below the step. */
double spacing_unit_in(double module_in, double step_in);

#endif

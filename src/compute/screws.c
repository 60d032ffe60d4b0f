/* SPDX-License-Identifier: MIT
 * One screw through a running clip: its head, its own strength, and what the equations give for steel and for wood, nominal.
 */
#include "screws.h"

#include "formula.h"
#include "number.h"
#include "text.h"

#include <math.h>

/* The clips' base is taken at the lowest tensile strength of the steel grades: the form does not ask for its grade. */
static const double clip_tensile_ksi = 45, head_cap_in = 0.5;

bool is_wood_support(const char *support)
{
	return is_among(support, "plywood;OSB;wood");
}

bool is_wood_panel(const char *support)
{
	return is_among(support, "plywood;OSB");
}

bool is_steel_support(const char *support)
{
	return is_among(support, "steel deck;purlin;sub-purlin");
}

bool fetch_clip_screw(Case *screw)
{
	const char *use = GIVEN(screw, fastener, Fastener, use);
	if (ready(screw) && !same_text(use, "clip"))
		SKIP(screw, "it holds no running clip");
	return ready(screw);
}

/* ---- head and shank, by size ---- */

static const ScrewHead *head_row(const Reference *reference, double size)
{
	const char *words = screw_size(reference, size);
	for (uint32_t i = 0; words != NULL && i < reference->screw_heads.count; i++)
		if (same_text(reference->screw_heads.row[i].size.text, words))
			return &reference->screw_heads.row[i];
	return NULL;
}

/* Pan and pancake heads are no smaller than a hex head across its corners; a countersunk one does not bear on the clip. */
double fastener_head_bearing_in(Case *screw)
{
	double stated = GIVEN_OR(screw, fastener, Fastener, head_diameter_in, 0);
	if (!ready(screw) || stated > 0)
		return stated;
	double size = GIVEN(screw, fastener, Fastener, size_in);
	const char *head = GIVEN(screw, fastener, Fastener, head);
	if (!ready(screw))
		return 0;
	if (same_text(head, "flat"))
		return REFUSE(screw, "no equation is taken for a countersunk head");
	const ScrewHead *row = head_row(screw->all->reference, size);
	if (row == NULL)
		return REFUSE(screw, "the table of heads has no row for this size");
	if (same_text(head, "hex washer"))
		return CONSTANT(screw, "screw_heads.csv", row->size.text, row->across_corners_in.value, row->source.text);
	note(screw, "taken as a hex head across its corners");
	return CONSTANT(screw, "screw_heads.csv", row->size.text, row->across_corners_in.value, NO_SOURCE);
}

/* The table leaves out some sizes: the next smaller one counts for them. */
static const ScrewHead *tension_row(const Reference *reference, double size)
{
	const ScrewHead *found = NULL;
	double greatest = 0;
	for (uint32_t i = 0; i < reference->screw_heads.count; i++) {
		const ScrewHead *row = &reference->screw_heads.row[i];
		double diameter = screw_diameter(reference, row->size.text);
		bool is_smaller = diameter < size || number_same(diameter, size);
		if (is_value(&row->tension_lb.given) && is_smaller && diameter > greatest) {
			found = row;
			greatest = diameter;
		}
	}
	return found;
}

double fastener_screw_tension_lb(Case *screw)
{
	double stated = GIVEN_OR(screw, fastener, Fastener, tension_lb, 0);
	if (!ready(screw) || stated > 0)
		return stated;
	double size = GIVEN(screw, fastener, Fastener, size_in);
	if (!ready(screw))
		return 0;
	const ScrewHead *row = tension_row(screw->all->reference, size);
	if (row == NULL)
		return REFUSE(screw, "the table has no tension strength for this size");
	note(screw, row->size.text);
	return CONSTANT(screw, "screw_heads.csv tension", row->size.text, row->tension_lb.value, "ssma-screw-table");
}

/* ---- steel ---- */

/* Ends the fact where the equations for steel do not reach. */
static double fetch_steel_size(Case *screw)
{
	const char *kind = GIVEN(screw, fastener, Fastener, kind);
	double size = GIVEN(screw, fastener, Fastener, size_in);
	if (!ready(screw))
		return 0;
	if (!is_among(kind, "self-drilling screw;self-tapping screw"))
		return REFUSE(screw, "the equation is for self-drilling and self-tapping screws in steel: needs test data");
	if (!is_in_steel_range(size))
		return REFUSE(screw, "outside the equation, which is for screws of 0.08 to 0.25 in: needs test data");
	return size;
}

double fastener_screw_pullout_lb(Case *screw)
{
	if (!fetch_clip_screw(screw))
		return 0;
	const char *support = GIVEN(screw, roof_area, RoofArea, support.kind);
	if (ready(screw) && is_wood_support(support))
		return SKIP(screw, "the support is wood");
	if (ready(screw) && !is_steel_support(support))
		return REFUSE(screw, "no equation is taken for this support: needs test data");
	double thickness = OF(screw, roof_area_design_thickness_in);
	double size = fetch_steel_size(screw);
	double tensile = OF(screw, roof_area_design_tensile_ksi);
	return ready(screw) ? screw_pullout_lb(thickness, size, tensile) : 0;
}

/* The equation is for steel; other metals of clips need a test. */
static void fetch_clip_metal(Case *screw)
{
	if (OF(screw, roof_area_clips_steel_yes) == 0 && ready(screw))
		REFUSE(screw, "the equation is for clips of carbon steel: needs test data");
}

double fastener_screw_pullover_lb(Case *screw)
{
	if (!fetch_clip_screw(screw))
		return 0;
	fetch_clip_metal(screw);
	double base = OF(screw, roof_area_running_clip_thinnest_in);
	double head = OF(screw, fastener_head_bearing_in);
	if (!ready(screw))
		return 0;
	note(screw, "the clip's base is taken at 45 ksi, the lowest of the grades");
	return screw_pullover_lb(base, head, head_cap_in, clip_tensile_ksi);
}

/* ---- wood ---- */

double fastener_screw_withdrawal_lb_per_in(Case *screw)
{
	if (!fetch_clip_screw(screw))
		return 0;
	const char *support = GIVEN(screw, roof_area, RoofArea, support.kind);
	if (ready(screw) && !is_wood_support(support))
		return SKIP(screw, "the support is not wood");
	const char *kind = GIVEN(screw, fastener, Fastener, kind);
	double size = GIVEN(screw, fastener, Fastener, size_in);
	double gravity = OF(screw, roof_area_design_gravity_one);
	if (!ready(screw))
		return 0;
	if (same_text(kind, "lag screw")) {
		screw->now->formula = "1800 * {design_gravity} ^ 1.5 * {size} ^ 0.75";
		return lag_screw_withdrawal_lb_per_in(gravity, size);
	}
	if (!is_among(kind, "wood screw;self-drilling screw;self-tapping screw"))
		return REFUSE(screw, "no equation is taken for this kind of fastener in wood: needs test data");
	return wood_screw_withdrawal_lb_per_in(gravity, size);
}

/* A panel that the screw goes right through counts whole; in thicker wood the thread below clip and layers. */
double fastener_thread_penetration_in(Case *screw)
{
	if (!fetch_clip_screw(screw))
		return 0;
	const char *support = GIVEN(screw, roof_area, RoofArea, support.kind);
	if (ready(screw) && !is_wood_support(support))
		return SKIP(screw, "the support is not wood");
	double wood = OF(screw, roof_area_design_thickness_in);
	double length = GIVEN(screw, fastener, Fastener, length_in);
	double clip = OF(screw, roof_area_running_clip_thickness_in);
	double layers = OF(screw, roof_area_layers_thickness_in);
	screw->now->formula = "min({design_thickness}, {length} - {running_clip_thickness} - {layers_thickness})";
	if (!ready(screw))
		return 0;
	double thread = length - clip - layers;
	return thread > 0 ? fmin(wood, thread) : REFUSE(screw, "the screw does not reach the support");
}

/* SPDX-License-Identifier: MIT
 * Eligibility beyond words of a list: the day of the application, the surface asked for, vapor, old roofs under new ones, and
 * panels formed on site.
 */
#include "below.h"
#include "date.h"
#include "fetch.h"
#include "formula.h"
#include "parts.h"
#include "text.h"

#include <string.h>

/* The earliest day of an event, planned where it has not happened; INT32_MAX if it is not among the dates. */
static int32_t fetch_event(Case *fact, const char *wanted)
{
	int32_t first = INT32_MAX;
	for (Case *event = first_below(outward(fact, KIND_submittal), KIND_event); event != NULL; event = event->next) {
		const char *word = GIVEN_AT(fact, event, Event, event);
		if (!ready(fact) || !same_text(word, wanted))
			continue;
		int32_t day = is_value(&((const Event *)event->row)->date.given) ? GIVEN_AT(fact, event, Event, date)
										 : GIVEN_AT(fact, event, Event, planned);
		first = ready(fact) && day < first ? day : first;
	}
	return first;
}

double submittal_application_before_start_yes(Case *submittal)
{
	if (fetch_list(submittal, submittal, offsetof(Submittal, dates)) == NULL)
		return 0;
	int32_t application = fetch_event(submittal, "application"), start = fetch_event(submittal, "start");
	if (!ready(submittal))
		return 0;
	if (application == INT32_MAX || start == INT32_MAX)
		return SKIP(submittal, "the dates name no application or no start");
	Arena *arena = submittal->all->arena;
	note(submittal, arena_printf(arena, "application %s, start %s", date_print(arena, application), date_print(arena, start)));
	return application < start;
}

/* An approval of the package as a whole: its item is the submittal's number, plain or behind the word. */
static bool is_of_package(const Approval *row, const char *submittal)
{
	static const char word[] = "submittal ";
	const char *item = row->item.text;
	if (strncasecmp(item, word, sizeof word - 1) == 0)
		item += sizeof word - 1;
	return same_text(item, submittal);
}

/* Before an approval there is nothing to keep to; one for any use lets all in. */
double submittal_use_as_approved_yes(Case *submittal)
{
	const char *use = GIVEN(submittal, submittal, Submittal, project.use);
	const char *number = GIVEN(submittal, submittal, Submittal, submittal);
	const Registers *registers = submittal->all->registers;
	const Approval *other = NULL;
	bool found = false;
	for (uint32_t i = 0; ready(submittal) && registers != NULL && i < registers->approvals.count; i++) {
		const Approval *row = &registers->approvals.row[i];
		if (!is_of_package(row, number))
			continue;
		found = true;
		if (is_value(&row->use.given) && !same_text(row->use.text, "any") && !same_text(row->use.text, use))
			other = row;
	}
	if (ready(submittal) && !found)
		return SKIP(submittal, "no approval of this submittal is in the register");
	if (other != NULL)
		note(submittal, arena_printf(submittal->all->arena, "%s is for use as %s", other->letter.text, other->use.text));
	return ready(submittal) && other == NULL;
}

double submittal_warranted_surface_sq_ft(Case *submittal)
{
	const Cases *all = submittal->all;
	fetch_list(submittal, submittal, offsetof(Submittal, roof_areas));
	double surface = 0;
	for (uint32_t i = 0; i < all->of[KIND_roof_area].count; i++) {
		Case *area = all->of[KIND_roof_area].at[i];
		if (!GIVEN_AT(submittal, area, RoofArea, warranted) && ready(submittal))
			continue;
		double length = GIVEN_AT(submittal, area, RoofArea, building.length_ft);
		double width = GIVEN_AT(submittal, area, RoofArea, building.width_ft);
		double slope = GIVEN_AT(submittal, area, RoofArea, building.slope_in_12);
		surface += ready(submittal) ? roof_surface_sq_ft(length * width, slope) : 0;
	}
	return surface;
}

/* ---- layers ---- */

static double layers_of_kind(Case *area, const char *kind)
{
	if (fetch_list(area, area, offsetof(RoofArea, build_up)) == NULL)
		return 0;
	double count = 0;
	for (Case *layer = first_below(area, KIND_layer); layer != NULL; layer = layer->next)
		count += same_text(GIVEN_AT(area, layer, Layer, layer), kind);
	return ready(area) ? count : 0;
}

double roof_area_vapor_retarders_one(Case *area)
{
	return layers_of_kind(area, "vapor retarder");
}

double roof_area_old_roofs_one(Case *area)
{
	return layers_of_kind(area, "existing roof");
}

/* The layers are listed from the support up, so that what comes first is on the warm side. */
double roof_area_vapor_retarder_warm_yes(Case *area)
{
	if (fetch_list(area, area, offsetof(RoofArea, build_up)) == NULL)
		return 0;
	bool is_insulated = false, is_warm = false;
	for (Case *layer = first_below(area, KIND_layer); layer != NULL; layer = layer->next) {
		const char *kind = GIVEN_AT(area, layer, Layer, layer);
		is_insulated |= same_text(kind, "insulation");
		is_warm |= same_text(kind, "vapor retarder") && !is_insulated;
	}
	return ready(area) && is_warm;
}

/* ---- panels formed on site ---- */

static const Machine *machine_row(const Registers *registers, const char *number, const char *profile)
{
	const Machine *other = NULL;
	for (uint32_t i = 0; registers != NULL && i < registers->machines.count; i++) {
		const Machine *row = &registers->machines.row[i];
		if (!same_text(row->machine.text, number))
			continue;
		if (same_text(row->profile.text, profile))
			return row;
		other = row;
	}
	return other;
}

typedef struct {
	const char *number, *profile, *firm;
	const Machine *row;
} Formed;

static Formed fetch_machine(Case *area)
{
	Formed formed = {
		.number = GIVEN(area, roof_area, RoofArea, forming.machine),
		.profile = GIVEN(area, roof_area, RoofArea, panel.profile),
		.firm = GIVEN(area, submittal, Submittal, parties.applicant.installed_by),
	};
	if (ready(area))
		formed.row = machine_row(area->all->registers, formed.number, formed.profile);
	return formed;
}

double roof_area_machine_certified_yes(Case *area)
{
	Formed formed = fetch_machine(area);
	int32_t day = fetch_as_of(area);
	if (!ready(area))
		return 0;
	Arena *arena = area->all->arena;
	const Machine *row = formed.row;
	const char *why = NULL;
	if (row == NULL)
		why = "no such machine is in the register";
	else if (!same_text(row->profile.text, formed.profile))
		why = arena_printf(arena, "it is certified for profile %s", row->profile.text);
	else if (!same_text(row->firm.text, formed.firm))
		why = "its certificate belongs to another firm";
	else if (day > row->expires.day)
		why = arena_printf(arena, "its certificate expired on %s", date_print(arena, row->expires.day));
	note(area, why);
	return why == NULL;
}

/* Of a machine the register does not know another item speaks. */
double roof_area_operator_certified_yes(Case *area)
{
	Formed formed = fetch_machine(area);
	const char *card = GIVEN(area, roof_area, RoofArea, forming.operator_card);
	if (ready(area) && formed.row == NULL)
		return SKIP(area, "no such machine is in the register");
	return ready(area) && is_value(&formed.row->operators.given) && is_among(card, formed.row->operators.text);
}

/* SPDX-License-Identifier: MIT
 * What the inspector must see, put together by roof area and step of building: the edition's standing checks, items that prove
 * themselves only on site, notes to be followed, clip spacings to be measured, and lists said to be empty.
 */
#include "site_sheet.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_LINES = 500, MOST_PARTS = 60 };

typedef struct {
	const Verdict *verdict;
	SiteSheet *sheet;
	Arena *arena;
} Filling;

const char *site_step_heading(SiteStep step)
{
	static const char *const headings[SITE_STEPS] = {
		[COVERED_BY_UNDERLAYMENT] = "Before underlayment covers it",
		[COVERED_BY_PANELS] = "Before panels cover it",
		[COVERED_BY_CLOSURES] = "Before closures cover it",
		[COVERED_BY_RIDGE_CAPS] = "Before ridge caps cover it",
		[FINAL_INSPECTION] = "At the final inspection",
	};
	return headings[step];
}

/* ---- areas ---- */

static int by_order(const void *order, const void *area)
{
	uint32_t wanted = *(const uint32_t *)order, here = ((const SiteArea *)area)->area->order;
	return (wanted > here) - (wanted < here);
}

/* The area a case stands in, else the whole package; NULL where that is not inspected. They stand in the order of the file. */
static SiteArea *area_of(const Filling *f, const Case *at)
{
	const Case *area = at != NULL ? case_outward(at, KIND_roof_area) : NULL;
	if (area == NULL)
		return &f->sheet->area[0];
	return bsearch(&area->order, f->sheet->area + 1, f->sheet->areas - 1, sizeof *f->sheet->area, by_order);
}

static bool is_inspected(const Case *area)
{
	const RoofArea *row = area->row;
	return !is_value(&row->warranted.given) || row->warranted.yes;
}

static void add_areas(const Filling *f)
{
	const Cases *cases = f->verdict->cases;
	f->sheet->area = TAKE(f->arena, SiteArea, (size_t)cases->of[KIND_roof_area].count + 1);
	f->sheet->area[f->sheet->areas++] = (SiteArea){ .name = "Whole package" };
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++) {
		const Case *area = cases->of[KIND_roof_area].at[i];
		if (is_inspected(area))
			f->sheet->area[f->sheet->areas++] = (SiteArea){ .area = area, .name = area->name };
	}
}

/* ---- lines ---- */

/* Where no underlayment is laid, the panels cover the deck. */
static SiteStep step_in(const SiteArea *area, SiteStep step)
{
	const RoofArea *row = area != NULL && area->area != NULL ? area->area->row : NULL;
	bool is_bare = row != NULL && row->underlayments.of.given.said == SAID_NONE;
	return is_bare && step == COVERED_BY_UNDERLAYMENT ? COVERED_BY_PANELS : step;
}

static void add_line(const Filling *f, SiteArea *area, SiteStep step, SiteLine line)
{
	SiteGroup *group = area != NULL ? &area->group[step_in(area, step)] : NULL;
	if (group == NULL || group->lines > MOST_LINES)
		return;
	if (group->lines == MOST_LINES)
		line = (SiteLine){ "", "and more; --format json has them all" };
	group->line = arena_more(f->arena, group->line, group->lines, &group->room, sizeof *group->line);
	group->line[group->lines++] = line;
	area->lines++;
}

static void add_checks(const Filling *f)
{
	for (uint32_t i = 0; i < f->verdict->site_checks; i++) {
		const SiteCheckDue *due = &f->verdict->site_check[i];
		const char *text = due->row->check.text;
		if (due->untold)
			text = arena_printf(f->arena, "%s (where it applies: the papers do not tell)", text);
		add_line(f, area_of(f, due->area), (SiteStep)due->row->before.word, (SiteLine){ due->row->code.text, text });
	}
}

/* Clips are measured zone by zone. */
static void add_spacings(const Filling *f)
{
	const Cases *cases = f->verdict->cases;
	for (uint32_t i = 0; i < cases->of[KIND_zone].count; i++) {
		const Case *at = cases->of[KIND_zone].at[i];
		const Zone *zone = at->row;
		if (!is_value(&zone->spacing_in.given) || zone->spacing_in.given.typed == NULL)
			continue;
		const char *places = is_value(&zone->places.given) ? arena_printf(f->arena, " (%s)", zone->places.text) : "";
		add_line(f, area_of(f, at), COVERED_BY_PANELS, (SiteLine){ "clips", arena_printf(f->arena,
			"zone %s%s: %s between clips; measured ____________", zone->name.text, places, zone->spacing_in.given.typed) });
	}
}

/* What hides a part of each kind. */
static SiteStep step_of(RecordKind kind)
{
	switch (kind) {
	case KIND_support:
	case KIND_layer:
		return COVERED_BY_UNDERLAYMENT;
	case KIND_underlayment:
	case KIND_clip:
	case KIND_fastener:
	case KIND_fixed_line:
	case KIND_panel:
	case KIND_zone:
		return COVERED_BY_PANELS;
	case KIND_sealant:
		return COVERED_BY_CLOSURES;
	case KIND_closure:
	case KIND_rivet:
		return COVERED_BY_RIDGE_CAPS;
	default:
		return FINAL_INSPECTION;
	}
}

static bool is_seen_on_site(const Finding *item)
{
	int action = counted_action(item);
	return action == ACTION_CORRECTIONS || action == ACTION_FIELD_VERIFY;
}

static void add_item(const Filling *f, const Finding *item)
{
	const char *number = item_number(item, f->arena);
	for (uint32_t i = 0; i < item->spots; i++) {
		const Spot *spot = &item->spot[i];
		SiteStep step = spot->where != NULL ? step_of(spot->where->kind) : FINAL_INSPECTION;
		const char *text = arena_printf(f->arena, "%s: %s. %s", item_where(item, spot, f->arena), item->finding,
			item->remedy != NULL ? item->remedy : "");
		add_line(f, area_of(f, spot->where), step, (SiteLine){ number != NULL ? number : item->code, text });
	}
}

static void add_items(const Filling *f)
{
	for (uint32_t i = 0; i < f->verdict->items; i++)
		if (is_seen_on_site(&f->verdict->item[i]))
			add_item(f, &f->verdict->item[i]);
}

/* `none` is the applicant's word; on the roof anybody can see whether it is true. */
static void add_none(const Filling *f, SiteArea *area)
{
	const char *all = NULL;
	for (uint32_t i = 0; i < RoofArea_record.count; i++) {
		const Field *field = &RoofArea_record.field[i];
		if (field->kind != IS_LIST || given_in(field, area->area->row)->said != SAID_NONE)
			continue;
		const char *words = arena_printf(f->arena, "%c%s", tolower((unsigned char)field->title[0]), field->title + 1);
		all = all == NULL ? words : arena_printf(f->arena, "%s, %s", all, words);
	}
	if (all != NULL)
		add_line(f, area, FINAL_INSPECTION, (SiteLine){ "none", arena_printf(f->arena, "stated to be none: %s; note any that are there",
			all) });
}

/* ---- parts ---- */

/* What is not in the catalogue goes by its description. */
static const char *part_name(const Panel *part)
{
	bool described = strcmp(part->item.text, "other") == 0 && is_value(&part->description.given);
	return described ? part->description.text : part->item.text;
}

/* Part lines stand area by area; a name that stands twice is named once, as its neighbor. */
static void add_parts(const Filling *f)
{
	const Case *last = NULL;
	uint32_t shown = 0;
	for (uint32_t i = 0; i < f->verdict->parts; i++) {
		const Case *part = f->verdict->part[i].part;
		SiteArea *area = area_of(f, part);
		const Panel *row = part->row; /* every part begins alike */
		if (area == NULL || area->area == NULL || !is_value(&row->item.given))
			continue;
		const Panel *before = last != NULL ? last->row : NULL;
		if (last != NULL && last->up == part->up && last->kind == part->kind && strcmp(before->item.text, row->item.text) == 0)
			continue;
		shown = last != NULL && last->up == part->up ? shown + 1 : 0;
		last = part;
		if (shown > MOST_PARTS)
			continue;
		const char *one = shown < MOST_PARTS ? part_name(row) : "and more";
		area->parts = area->parts == NULL ? one : arena_printf(f->arena, "%s; %s", area->parts, one);
	}
}

/* ---- head ---- */

static void fill_head(const Filling *f)
{
	const Verdict *verdict = f->verdict;
	const Submittal *submittal = verdict->cases->submittal;
	const Project *project = &submittal->project;
	Arena *arena = f->arena;
	const SiteHead head[SITE_HEADS] = {
		{ "Project", said_text(&project->name.given, arena) },
		{ "Address", arena_printf(arena, "%s, %s, %s", said_text(&project->street.given, arena),
			said_text(&project->city.given, arena), said_text(&project->state.given, arena)) },
		{ "Installer", said_text(&submittal->parties.applicant.firm.given, arena) },
		{ "Submittal", arena_printf(arena, "%s, stage %s, dated %s", said_text(&submittal->submittal.given, arena),
			stage_words(verdict->stage), said_text(&submittal->date.given, arena)) },
		{ "Warranty", arena_printf(arena, "%s, %s", said_text(&submittal->warranty.kind.given, arena),
			said_text(&submittal->warranty.term_yr.given, arena)) },
		{ "Condition", verdict->order_condition != NULL ? verdict->order_condition : "none in the register" },
	};
	memcpy(f->sheet->head, head, sizeof head);
	uint32_t open = items_in_the_way(verdict);
	if (open > 0)
		f->sheet->open = arena_printf(arena, "%u %s open; what answers them may change what must be seen here.", open,
			open == 1 ? "item stands" : "items stand");
}

SiteSheet site_sheet(const Verdict *verdict, Arena *arena)
{
	SiteSheet sheet = { .broken = verdict->broken_file };
	Filling f = { verdict, &sheet, arena };
	if (sheet.broken)
		return sheet;
	fill_head(&f);
	add_areas(&f);
	add_checks(&f);
	add_spacings(&f);
	add_items(&f);
	for (uint32_t i = 1; i < sheet.areas; i++)
		add_none(&f, &sheet.area[i]);
	add_parts(&f);
	return sheet;
}

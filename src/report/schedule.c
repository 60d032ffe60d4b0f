/* SPDX-License-Identifier: MIT
 * The schedule of what would be approved: exact parts, clip spacings by zone, conditions, what is left out, and the hashes of
 * what it was made from. It approves nothing: whoever approves puts his name to it in a letter of his own.
 */
#include "attributes.h"
#include "formats.h"
#include "parts.h"

#include <string.h>

static const LabelColumn head_column = { 2, 14 }, part_column = { 4, 14 };

static bool is_warranted(const Case *area)
{
	const RoofArea *row = area->row;
	return !is_value(&row->warranted.given) || row->warranted.yes;
}

static void put_schedule_head(Out *out, const Verdict *verdict, Arena *arena)
{
	const Submittal *submittal = verdict->cases->submittal;
	const char *round = verdict->stage == STAGE_bid ? "" : arena_printf(arena, ", round %u", verdict->round);
	uint32_t in_the_way = items_in_the_way(verdict);
	SAY(out, "SCHEDULE OF WHAT WOULD BE APPROVED, NOT AN APPROVAL\n");
	const char *are = in_the_way == 1 ? "item is" : "items are";
	put_label(out, head_column, "Stands", in_the_way == 0
		? "nothing found here stands in the way; the panel maker's reviewer decides"
		: arena_printf(arena, "as it is nothing would be approved: %u %s in the way", in_the_way, are));
	put_label(out, head_column, "Project", arena_printf(arena, "%s, %s, %s", said_text(&submittal->project.name.given, arena),
		said_text(&submittal->project.city.given, arena), said_text(&submittal->project.state.given, arena)));
	put_label(out, head_column, "Warranty", arena_printf(arena, "%s, %s, limit of cover %s",
		said_text(&submittal->warranty.kind.given, arena), said_text(&submittal->warranty.term_yr.given, arena),
		said_text(&submittal->warranty.cover_limit.given, arena)));
	put_label(out, head_column, "Submittal", arena_printf(arena, "%s%s, stage %s, dated %s",
		said_text(&submittal->submittal.given, arena), round, stage_words(verdict->stage), said_text(&submittal->date.given, arena)));
	put_label(out, head_column, "Criteria", said_text(&verdict->cases->criteria->edition.edition.given, arena));
}

/* Spacings hang on the clips: where these are not cleared, neither are they. */
static const PartLine *clip_in_question(const Verdict *verdict, const Case *area)
{
	for (uint32_t i = 0; i < verdict->parts; i++) {
		const PartLine *line = &verdict->part[i];
		if (line->part->kind == KIND_clip && line->clearance != PART_CLEAR && case_outward(line->part, KIND_roof_area) == area)
			return line;
	}
	return NULL;
}

static void put_zones(Out *out, const Verdict *verdict, const Case *area, Arena *arena)
{
	const Cases *cases = verdict->cases;
	const PartLine *open = clip_in_question(verdict, area);
	if (open != NULL)
		put_label(out, part_column, "clip spacing", arena_printf(arena, "NOT IN IT, with the clips: %s", clearance_text(open, arena)));
	for (uint32_t i = 0; open == NULL && i < cases->of[KIND_zone].count; i++) {
		const Case *at = cases->of[KIND_zone].at[i];
		const Zone *zone = at->row;
		if (case_outward(at, KIND_roof_area) != area)
			continue;
		const char *places = is_value(&zone->places.given) ? arena_printf(arena, " (%s)", zone->places.text) : "";
		put_label(out, part_column, "clip spacing", arena_printf(arena, "zone %s%s: %s", zone->name.text, places,
			said_text(&zone->spacing_in.given, arena)));
	}
}

static void put_parts(Out *out, const Verdict *verdict, const Case *area, Arena *arena)
{
	for (uint32_t i = 0; i < verdict->parts; i++) {
		const PartLine *line = &verdict->part[i];
		if (case_outward(line->part, KIND_roof_area) != area)
			continue;
		const char *name = name_within(line->part, area), *details = attributes_text(line->part, arena);
		put_label(out, part_column, plain_words(record_of(line->part->kind)->name, arena), line->clearance == PART_CLEAR
			? arena_printf(arena, "%s%s%s", name, *details != '\0' ? ": " : "", details)
			: arena_printf(arena, "%s: NOT IN IT, %s", name, clearance_text(line, arena)));
	}
}

static void put_areas(Out *out, const Verdict *verdict, Arena *arena)
{
	const Cases *cases = verdict->cases;
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++) {
		const Case *area = cases->of[KIND_roof_area].at[i];
		if (!is_warranted(area))
			continue;
		SAY(out, "\n  ROOF AREA: ");
		put_cut(out, area->name, PAGE_WIDTH - 13);
		SAY(out, "\n");
		put_parts(out, verdict, area, arena);
		put_zones(out, verdict, area, arena);
	}
}

static void put_conditions(Out *out, const Verdict *verdict, Arena *arena)
{
	uint32_t count = 0;
	SAY(out, "\n  CONDITIONS\n");
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[i];
		int action = counted_action(item);
		if (action != ACTION_CORRECTIONS && action != ACTION_FIELD_VERIFY)
			continue;
		const char *remedy = item->remedy != NULL ? item->remedy : "to be followed";
		put_label(out, part_column, item_called(item, arena),
			arena_printf(arena, "%s: %s; %s", item_where(item, &item->spot[0], arena), item->finding, remedy));
		count++;
	}
	if (verdict->order_condition != NULL)
		put_label(out, part_column, "approval", verdict->order_condition);
	if (count == 0 && verdict->order_condition == NULL)
		put_label(out, part_column, "none", "no note to follow was found");
}

static void put_excluded(Out *out, const Verdict *verdict)
{
	const Cases *cases = verdict->cases;
	uint32_t count = 0;
	SAY(out, "\n  NOT WARRANTED\n");
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++)
		if (!is_warranted(cases->of[KIND_roof_area].at[i])) {
			put_label(out, part_column, "roof area", cases->of[KIND_roof_area].at[i]->name);
			count++;
		}
	if (count == 0)
		put_label(out, part_column, "none", "every roof area named is asked for");
}

static void put_made_from(Out *out, const Verdict *verdict, Arena *arena)
{
	const Criteria *criteria = verdict->cases->criteria;
	const char *hash = verdict->criteria_sha256 != NULL ? verdict->criteria_sha256 : criteria_hash(criteria, arena);
	SAY(out, "\n  MADE FROM (SHA-256)\n");
	put_label(out, part_column, "submittal",
		arena_printf(arena, "%s  %s", source_hash(verdict->source, arena), verdict->source->name));
	put_label(out, part_column, "criteria", arena_printf(arena, "%s  %s", hash, criteria->folder));
}

void write_schedule(Out *out, const Verdict *verdict, Arena *arena)
{
	if (verdict->broken_file) {
		SAY(out, "NOT JUDGED: the file could not be read to its end. Mend it and run again.\n");
	} else {
		put_schedule_head(out, verdict, arena);
		put_areas(out, verdict, arena);
		put_conditions(out, verdict, arena);
		put_excluded(out, verdict);
		put_made_from(out, verdict, arena);
	}
	write_cautions(out, verdict->cases->reference, (CautionsFor){ "review", "" }, arena);
}

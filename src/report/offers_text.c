/* SPDX-License-Identifier: MIT
 * The options as text: constructions of each roof area, items of its other places, terms. The print is cut, the search never.
 */
#include "offers_page.h"

#include "number.h"
#include "parts.h"

#include <string.h>

enum { MOST_PRINTED = 20, MOST_ITEMS_PRINTED = 12 };

static const LabelColumn head_column = { 2, 14 };
static const LabelColumn built_column = { 6, 14 };

static void put_options_head(Out *out, const Offers *offers, Arena *arena)
{
	const Verdict *verdict = offers->verdict;
	const Text *number = &verdict->cases->submittal->submittal;
	SAY(out, "OPTIONS\n");
	put_label(out, head_column, "Submittal", is_value(&number->given) ? number->text : "not stated");
	put_label(out, head_column, "File", verdict->source->name);
	put_label(out, head_column, "Criteria", verdict->cases->criteria->folder);
	put_label(out, head_column, "Tried", arena_printf(arena, "%u copies judged%s", offers->tries,
		offers->stopped ? "; the search was cut off, so what is not shown may still be accepted" : ""));
	uint32_t open = items_in_the_way(verdict);
	put_label(out, head_column, "Open", open == 0 ? "no item of the review" : arena_printf(arena,
		"%u items of the review of what was submitted; those on other matters than these parts stand whatever is chosen", open));
	if (offers->without_letter)
		put_label(out, head_column, "Taken", "no engineer's letter is stated: the computed uplift alone");
	if (offers->flat_ground)
		put_label(out, head_column, "Taken", "the shape of the ground is not stated: flat, topographic factor 1");
	SAY(out, "  ");
	put_wrapped(out, "Each construction holds here at the clip spacings shown, which are the widest; anything closer holds as well. "
		"Support, geometry, wind and term are as submitted. On a steel deck and on purlins clips stand where something bears: "
		"spacings are whole multiples of the flutes or of the purlins. What is still to be said holds nothing back yet; the "
		"rules that wait for it are told by `seamstamp why`. What is shown was judged, not approved.", 2, 2, PAGE_WIDTH);
	SAY(out, "\n");
}

/* ---- constructions ---- */

static bool is_laid_alike(const Construction *made, uint32_t a, uint32_t b)
{
	return number_same(made->zone[a].spacing_in, made->zone[b].spacing_in) && strcmp(made->zone[a].binds, made->zone[b].binds) == 0;
}

/* Zones laid alike in one breath. */
static const char *spacings_text(const Construction *made, Arena *arena)
{
	const char *text = "";
	for (uint32_t i = 0; i < made->zones; i++) {
		text = arena_printf(arena, "%s%s%s", text, i == 0 ? "zone " : is_laid_alike(made, i - 1, i) ? ", " : "; zone ",
			made->zone[i].zone);
		if (i + 1 == made->zones || !is_laid_alike(made, i, i + 1))
			text = arena_printf(arena, "%s at %s in (limited by %s)", text, number_shortest(arena, made->zone[i].spacing_in),
				made->zone[i].binds);
	}
	return text;
}

static void put_construction(Out *out, const Construction *made, const OfferGroup *group, uint32_t number, Arena *arena)
{
	const char *clips = made->is_counted ? arena_printf(arena, "%.0f clips", made->clips)
		: arena_printf(arena, "about %.1f clips on 100 sq ft", made->clips);
	SAY(out, "\n    ");
	put_wrapped(out, arena_printf(arena, "%u. %s, %s screws in each clip; %s", number, made->panel,
		number_shortest(arena, made->per_clip), clips), 4, 7, PAGE_WIDTH);
	SAY(out, "\n");
	put_label(out, built_column, "Clip", group->clips);
	put_label(out, built_column, "Screw", group->screws);
	put_label(out, built_column, "Class", group->classes);
	put_label(out, built_column, "Capacity", made->capacity_listing->listing.text);
	put_label(out, built_column, "Spacing", spacings_text(made, arena));
	if (group->to_say != NULL)
		put_label(out, built_column, "Still to say", group->to_say);
}

static void put_constructions(Out *out, const Offers *offers, const Case *area, const char *none, Arena *arena)
{
	uint32_t number = 0, left = 0;
	for (uint32_t i = 0; i < offers->constructions; i++) {
		const Construction *made = &offers->construction[i];
		if (made->area != area)
			continue;
		OfferGroup group = offer_group(offers, made, arena);
		if (!group.is_first)
			continue;
		if (number < MOST_PRINTED)
			put_construction(out, made, &group, ++number, arena);
		else
			left++;
	}
	if (left > 0) {
		SAY(out, "\n    and ");
		put_count(out, left);
		SAY(out, " more; --format csv and json have them all\n");
	}
	if (none != NULL) {
		SAY(out, "    No construction is offered: ");
		put_wrapped(out, none, 32, 4, PAGE_WIDTH);
		SAY(out, "\n");
	}
}

/* ---- places ---- */

static const char *items_text(const PlaceOffer *choice, Arena *arena)
{
	const char *text = choice->items == 0 ? "no item of the catalogue" : "";
	for (uint32_t i = 0; i < choice->items && i < MOST_ITEMS_PRINTED; i++)
		text = arena_printf(arena, "%s%s%s", text, i > 0 ? ", " : "", choice->item[i]);
	uint32_t left = choice->items > MOST_ITEMS_PRINTED ? choice->items - MOST_ITEMS_PRINTED : 0;
	return left > 0 ? arena_printf(arena, "%s and %u more", text, left) : text;
}

static void put_choices(Out *out, const Offers *offers, const Case *area, Arena *arena)
{
	bool any = false;
	for (uint32_t i = 0; i < offers->choices; i++) {
		const PlaceOffer *choice = &offers->choice[i];
		if (choice->area != area)
			continue;
		if (!any)
			SAY(out, "\n    Other places\n");
		any = true;
		const char *now = choice->submitted == NULL ? "nothing there now"
			: arena_printf(arena, "%s now%s", choice->submitted, choice->stands ? "" : ", which does not hold");
		SAY(out, "      ");
		put_wrapped(out, arena_printf(arena, "%s, %s (%s): %s", choice->kind, choice->where, now, items_text(choice, arena)), 6, 8,
			PAGE_WIDTH);
		SAY(out, "\n");
	}
}

static void put_terms(Out *out, const Offers *offers, Arena *arena)
{
	SAY(out, "\n  Longest term\n");
	for (uint32_t i = 0; i < offers->terms; i++) {
		const LongestTerm *term = &offers->term[i];
		const char *text = term->area != NULL
			? arena_printf(arena, "%s, by the lives of its parts: %g yr; the shortest life is that of %s", term->area->name, term->term_yr,
				term->held_by)
			: term->next_yr == 0 ? arena_printf(arena, "as submitted: %g yr, the longest offered, brings no new item", term->term_yr)
			: arena_printf(arena, "as submitted: %g yr brings no item that a shorter term has not; %g yr is held back first by %s",
				term->term_yr, term->next_yr, term->held_by);
		SAY(out, "    ");
		put_wrapped(out, text, 4, 6, PAGE_WIDTH);
		SAY(out, "\n");
	}
}

void write_offers_text(Out *out, const Page *page, Arena *arena)
{
	const Offers *offers = page->offers;
	const Cases *cases = offers->verdict->cases;
	put_options_head(out, offers, arena);
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++) {
		const Case *area = cases->of[KIND_roof_area].at[i];
		SAY(out, "\n  ");
		put(out, area->name);
		SAY(out, "\n");
		put_constructions(out, offers, area, offers->none[i], arena);
		put_choices(out, offers, area, arena);
	}
	put_terms(out, offers, arena);
	write_cautions(out, cases->reference, (CautionsFor){ "options", "" }, arena);
}

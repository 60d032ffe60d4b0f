/* SPDX-License-Identifier: MIT
 * The warranty asked for: its kind against the one specified, what the article leaves open, exclusions, the owner's duties, its
 * transfer, and the areas it leaves out.
 */
#include "below.h"
#include "fetch.h"
#include "hash.h"
#include "text.h"

/* A weathertight warranty covers leaks, one for material the sheet, one for the finish the paint. */
double submittal_kind_fits_yes(Case *submittal)
{
	const char *asked = GIVEN(submittal, submittal, Submittal, warranty.kind);
	const char *specified = GIVEN(submittal, submittal, Submittal, specification.warranty.kind);
	return ready(submittal) && (same_text(asked, specified) || same_text(asked, "weathertight"));
}

/* ---- texts ---- */

static Hash *names_in(Case *fact, const Texts *texts)
{
	Arena *arena = fact->all->arena;
	Hash *names = hash_make(arena, texts->count);
	for (uint32_t i = 0; i < texts->count; i++) {
		size_t length;
		const char *key = folded(arena, texts->at[i].text, &length);
		hash_put(names, key, length, fact);
	}
	return names;
}

static bool has_name(const Hash *names, Arena *arena, const char *name)
{
	size_t length;
	const char *key = folded(arena, name, &length);
	return hash_get(names, key, length) != NULL;
}

static bool is_left_out(Asked asked)
{
	return asked.given->said == SAID_NOTHING;
}

/* What is left out of a record, joined by commas. What is `unknown` waits. */
typedef struct {
	Case *fact;
	const char *words;
	double count;
} Gaps;

static void look_for(Gaps *gaps, uint32_t offset, const char *words)
{
	Asked asked = ask(outward(gaps->fact, KIND_submittal), offset);
	bool is_gap = is_left_out(asked);
	if (is_gap || asked.given->said == SAID_NONE || fetch_said(gaps->fact, asked))
		fetch_shown(gaps->fact, asked);
	if (is_gap)
		gaps->words = gaps->count++ == 0 ? words : arena_printf(gaps->fact->all->arena, "%s, %s", gaps->words, words);
}

/* ---- the article ---- */

double submittal_warranty_article_gaps_one(Case *submittal)
{
	Gaps gaps = { .fact = submittal };
	GIVEN_OR(submittal, submittal, Submittal, specification.section, ""); /* where the article stands */
	if (!fetch_said(submittal, ask(submittal, offsetof(Submittal, specification.warranty))))
		return 0;
	look_for(&gaps, offsetof(Submittal, specification.warranty.term_yr), "the term");
	look_for(&gaps, offsetof(Submittal, specification.warranty.cover_limit), "the limit of cover");
	look_for(&gaps, offsetof(Submittal, specification.warranty.prorated), "whether it may be prorated");
	look_for(&gaps, offsetof(Submittal, specification.warranty.covers), "what it covers");
	look_for(&gaps, offsetof(Submittal, specification.warranty.exclusions), "what it may exclude");
	note(submittal, gaps.words);
	return ready(submittal) ? gaps.count : 0;
}

double submittal_exclusions_specified_yes(Case *submittal)
{
	const Texts *asked = GIVEN(submittal, submittal, Submittal, warranty.exclusions);
	const Texts *specified = GIVEN(submittal, submittal, Submittal, specification.warranty.exclusions);
	if (!ready(submittal))
		return 0;
	const Hash *names = names_in(submittal, specified);
	for (uint32_t i = 0; i < asked->count; i++) {
		if (has_name(names, submittal->all->arena, asked->at[i].text))
			continue;
		note(submittal, asked->at[i].text);
		return 0;
	}
	return 1;
}

/* ---- the owner ---- */

double submittal_duties_told_yes(Case *submittal)
{
	const Texts *told = GIVEN(submittal, submittal, Submittal, warranty.owner_duties.names);
	const Criteria *criteria = submittal->all->criteria;
	if (!ready(submittal))
		return 0;
	const Hash *names = names_in(submittal, told);
	for (uint32_t i = 0; i < criteria->lists.count; i++) {
		const NamedWord *row = &criteria->lists.row[i];
		if (!same_text(row->list.text, "owner duties") || has_name(names, submittal->all->arena, row->entry.text))
			continue;
		note(submittal, row->entry.text);
		return 0;
	}
	return 1;
}

double submittal_duties_acknowledged_yes(Case *submittal)
{
	int32_t sent = GIVEN(submittal, submittal, Submittal, warranty.owner_duties.sent);
	int32_t acknowledged = GIVEN(submittal, submittal, Submittal, warranty.owner_duties.acknowledged);
	int32_t day = fetch_as_of(submittal);
	return ready(submittal) && sent <= acknowledged && acknowledged <= day;
}

double submittal_transfer_recorded_yes(Case *submittal)
{
	Gaps gaps = { .fact = submittal };
	Asked allowed = ask(submittal, offsetof(Submittal, warranty.transfer.allowed));
	if (!fetch_said(submittal, ask(submittal, offsetof(Submittal, warranty))))
		return 0;
	look_for(&gaps, offsetof(Submittal, warranty.transfer.allowed), "whether it may pass to a new owner");
	if (gaps.count == 0 && fetch_yes(submittal, allowed)) {
		look_for(&gaps, offsetof(Submittal, warranty.transfer.times_one), "how often");
		look_for(&gaps, offsetof(Submittal, warranty.transfer.within_day), "in how many days after the sale");
		look_for(&gaps, offsetof(Submittal, warranty.transfer.fee), "the fee");
		look_for(&gaps, offsetof(Submittal, warranty.transfer.inspection), "whether the roof is inspected");
	}
	note(submittal, gaps.words);
	return ready(submittal) && gaps.count == 0;
}

/* ---- areas left out ---- */

/* Nobody need hatch a plan where all areas are warranted. */
double submittal_excluded_areas_drawn_yes(Case *submittal)
{
	const Cases *all = submittal->all;
	Asked drawn = ask(submittal, offsetof(Submittal, warranty.excluded_areas));
	bool is_none = is_left_out(drawn) || drawn.given->said == SAID_NONE;
	if (is_none)
		fetch_shown(submittal, drawn);
	const Texts *hatched = is_none ? NULL : fetch_texts(submittal, drawn);
	fetch_list(submittal, submittal, offsetof(Submittal, roof_areas));
	const Hash *names = hatched != NULL ? names_in(submittal, hatched) : NULL;
	for (uint32_t i = 0; ready(submittal) && i < all->of[KIND_roof_area].count; i++) {
		Case *area = all->of[KIND_roof_area].at[i];
		bool is_warranted = GIVEN_AT(submittal, area, RoofArea, warranted);
		const char *name = GIVEN_AT(submittal, area, RoofArea, name);
		bool is_hatched = ready(submittal) && names != NULL && has_name(names, all->arena, name);
		if (!ready(submittal) || is_warranted != is_hatched)
			continue;
		note(submittal, is_hatched ? arena_printf(all->arena, "%s is hatched and to be warranted", name)
					   : arena_printf(all->arena, "%s is not hatched", name));
		return 0;
	}
	return ready(submittal);
}

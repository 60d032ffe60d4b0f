/* SPDX-License-Identifier: MIT
 * Constructions that differ in clip, screw or class listing alone and are laid alike are printed as one, where each of the clips
 * goes with each of the screws and listings; else fewer are taken together.
 */
#include "offers_page.h"

#include "number.h"

#include <string.h>

/* How much may differ within a group; the narrowest always holds together. */
typedef enum { ANY_CLIP, ONE_CLIP, ONE_CLIP_AND_CLASS } Grouping;

enum { MOST_NAMED = 24 };

typedef struct {
	const char *name[MOST_NAMED];
	uint32_t count;
} Names;

static bool is_laid_as(const Construction *a, const Construction *b)
{
	bool alike = a->area == b->area && a->capacity_listing == b->capacity_listing && strcmp(a->panel, b->panel) == 0 &&
		     number_same(a->per_clip, b->per_clip) && a->zones == b->zones;
	for (uint32_t i = 0; alike && i < a->zones; i++)
		alike = number_same(a->zone[i].spacing_in, b->zone[i].spacing_in) && strcmp(a->zone[i].binds, b->zone[i].binds) == 0;
	return alike;
}

static bool is_together(const Construction *a, const Construction *b, Grouping grouping)
{
	return is_laid_as(a, b) && (grouping == ANY_CLIP || strcmp(a->clip, b->clip) == 0) &&
	       (grouping != ONE_CLIP_AND_CLASS || a->class_listing == b->class_listing);
}

static void add_name(Names *names, const char *name)
{
	for (uint32_t i = 0; i < names->count && i < MOST_NAMED; i++)
		if (strcmp(names->name[i], name) == 0)
			return;
	if (names->count < MOST_NAMED)
		names->name[names->count] = name;
	names->count++;
}

static const char *class_of(const Construction *made)
{
	return made->class_listing != NULL ? made->class_listing->listing.text : "none due";
}

typedef struct {
	Names clips, screws, classes;
	const Construction *first;
	uint32_t count;
} Members;

static Members members_of(const Offers *offers, const Construction *made, Grouping grouping)
{
	Members members = { .first = NULL };
	for (uint32_t i = 0; i < offers->constructions; i++) {
		const Construction *other = &offers->construction[i];
		if (!is_together(made, other, grouping))
			continue;
		members.first = members.first == NULL ? other : members.first;
		members.count++;
		add_name(&members.clips, other->clip);
		add_name(&members.screws, other->fastener);
		add_name(&members.classes, class_of(other));
	}
	return members;
}

static const char *joined(const Names *names, Arena *arena)
{
	const char *text = "";
	for (uint32_t i = 0; i < names->count && i < MOST_NAMED; i++)
		text = arena_printf(arena, "%s%s%s", text, i > 0 ? ", or " : "", names->name[i]);
	return names->count > MOST_NAMED ? arena_printf(arena, "%s, or others", text) : text;
}

/* What any of them leaves open, each once. */
static const char *to_say(const Offers *offers, const Construction *made, Grouping grouping, Arena *arena)
{
	Names names = { .count = 0 };
	for (uint32_t i = 0; i < offers->constructions; i++) {
		const char *from = is_together(made, &offers->construction[i], grouping) ? offers->construction[i].to_state : NULL;
		while (from != NULL && *from != '\0') {
			const char *comma = strstr(from, ", ");
			add_name(&names, arena_text(arena, from, comma != NULL ? (size_t)(comma - from) : strlen(from)));
			from = comma != NULL ? comma + 2 : NULL;
		}
	}
	const char *text = NULL;
	for (uint32_t i = 0; i < names.count && i < MOST_NAMED; i++)
		text = text == NULL ? names.name[i] : arena_printf(arena, "%s, %s", text, names.name[i]);
	return text;
}

OfferGroup offer_group(const Offers *offers, const Construction *made, Arena *arena)
{
	Grouping grouping = ANY_CLIP;
	Members members = members_of(offers, made, grouping);
	while (grouping < ONE_CLIP_AND_CLASS && members.count != members.clips.count * members.screws.count * members.classes.count)
		members = members_of(offers, made, ++grouping);
	OfferGroup group = { .is_first = members.first == made };
	if (!group.is_first)
		return group;
	group.clips = joined(&members.clips, arena);
	group.screws = joined(&members.screws, arena);
	group.classes = joined(&members.classes, arena);
	group.to_say = to_say(offers, made, grouping, arena);
	return group;
}

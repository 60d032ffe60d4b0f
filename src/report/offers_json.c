/* SPDX-License-Identifier: MIT
 * The options as one JSON object, unrounded. Keys are only ever added.
 */
#include "offers_page.h"

#include "json_number.h"
#include "json_tree.h"
#include "version.h"

static json_t *construction_tree(const Construction *made, Arena *arena)
{
	json_t *object = json_made(json_object()), *zones = json_made(json_array());
	json_put(object, "area", json_words(made->area->name, arena));
	json_put(object, "class", json_words(made->class_listing != NULL ? made->class_listing->listing.text : NULL, arena));
	json_put(object, "capacity", json_words(made->capacity_listing->listing.text, arena));
	json_put(object, "panel", json_words(made->panel, arena));
	json_put(object, "clip", json_words(made->clip, arena));
	json_put(object, "fastener", json_words(made->fastener, arena));
	json_put(object, "per_clip", json_figure(made->per_clip));
	json_put(object, "clips", made->is_counted ? json_figure(made->clips) : json_made(json_null()));
	json_put(object, "still_to_say", json_words(made->to_state, arena));
	for (uint32_t i = 0; i < made->zones; i++) {
		json_t *zone = json_made(json_object());
		json_put(zone, "zone", json_words(made->zone[i].zone, arena));
		json_put(zone, "greatest_spacing", json_figure(made->zone[i].spacing_in));
		json_put(zone, "binds", json_words(made->zone[i].binds, arena));
		json_add(zones, zone);
	}
	json_put(object, "zones", zones);
	return object;
}

static json_t *choice_tree(const PlaceOffer *choice, Arena *arena)
{
	json_t *object = json_made(json_object()), *items = json_made(json_array());
	json_put(object, "area", json_words(choice->area->name, arena));
	json_put(object, "kind", json_words(choice->kind, arena));
	json_put(object, "where", json_words(choice->where, arena));
	json_put(object, "submitted", json_words(choice->submitted, arena));
	json_put(object, "stands", json_made(json_boolean(choice->stands)));
	for (uint32_t i = 0; i < choice->items; i++)
		json_add(items, json_words(choice->item[i], arena));
	json_put(object, "items", items);
	return object;
}

static json_t *term_tree(const LongestTerm *term, Arena *arena)
{
	json_t *object = json_made(json_object());
	json_put(object, "area", json_words(term->area != NULL ? term->area->name : NULL, arena));
	json_put(object, "by", json_words(term->area != NULL ? "lives" : "judging", arena));
	json_put(object, "term", json_figure(term->term_yr));
	json_put(object, "held_back_by", json_words(term->held_by, arena));
	return object;
}

void write_offers_json(Out *out, const Page *page, Arena *arena)
{
	const Offers *offers = page->offers;
	const Text *number = &offers->verdict->cases->submittal->submittal;
	json_t *object = json_made(json_object()), *built = json_made(json_array()), *places = json_made(json_array());
	json_t *terms = json_made(json_array());
	json_put(object, "seamstamp", json_words(SEAMSTAMP_VERSION, arena));
	json_put(object, "submittal", json_words(is_value(&number->given) ? number->text : NULL, arena));
	json_put(object, "complete", json_made(json_boolean(!offers->stopped)));
	json_put(object, "without_letter", json_made(json_boolean(offers->without_letter)));
	json_put(object, "flat_ground_taken", json_made(json_boolean(offers->flat_ground)));
	for (uint32_t i = 0; i < offers->constructions; i++)
		json_add(built, construction_tree(&offers->construction[i], arena));
	json_put(object, "constructions", built);
	for (uint32_t i = 0; i < offers->choices; i++)
		json_add(places, choice_tree(&offers->choice[i], arena));
	json_put(object, "places", places);
	for (uint32_t i = 0; i < offers->terms; i++)
		json_add(terms, term_tree(&offers->term[i], arena));
	json_put(object, "terms", terms);
	put_json(out, object, JSON_INDENT(1), arena);
	SAY(out, "\n");
}

/* SPDX-License-Identifier: MIT
 * Two metals that meet: what practice says of a small part on a panel, and their potential difference, which only advises.
 *
 * The potential rule alone would forbid stainless screws in aluminum; where practice has a word on a pair, that word decides.
 */
#include "fetch.h"
#include "formula.h"
#include "text.h"

/* ---- practice ---- */

/* Parts that are small beside the panel; for others, such as a wall of another metal, the table of practice is not made. */
static bool is_small(const Case *part)
{
	return part->kind == KIND_clip || part->kind == KIND_fastener || part->kind == KIND_rivet;
}

static const MetalPair *fetch_pair(Case *contact)
{
	const Met *met = contact->row;
	const char *metal = GIVEN(contact, contact, Contact, metal);
	const char *other = GIVEN(contact, contact, Contact, other_metal);
	const char *how = GIVEN(contact, contact, Contact, contact);
	const Reference *reference = contact->all->reference;
	if (!ready(contact) || !is_small(met->part) || !same_text(how, "touch"))
		return NULL;
	for (uint32_t i = 0; i < reference->metal_pairs.count; i++) {
		const MetalPair *row = &reference->metal_pairs.row[i];
		if (same_text(row->panel.text, other) && same_text(row->fastener.text, metal))
			return row;
	}
	return NULL;
}

/* Galvanized steel, aluminum and zinc lie side by side on many roofs, though 0.30 V and more apart. */
static bool is_side_by_side(const Case *contact)
{
	const Met *met = contact->row;
	static const char light[] = "steel;aluminum;zinc";
	return !is_small(met->part) && is_among(met->record.metal.text, light) && is_among(met->record.other_metal.text, light);
}

double contact_in_practice_yes(Case *contact)
{
	return fetch_pair(contact) != NULL || is_side_by_side(contact);
}

/* A clip and its screws lie under the panel; all other screws and rivets are in the weather. */
static bool is_concealed(const Case *part)
{
	if (part->kind != KIND_fastener)
		return part->kind == KIND_clip;
	const Fastener *screw = part->row;
	return is_word(&screw->use, "clip") || is_word(&screw->use, "fixity");
}

double contact_allowed_yes(Case *contact)
{
	const MetalPair *row = fetch_pair(contact);
	if (!ready(contact))
		return 0;
	if (is_side_by_side(contact))
		return 1;
	if (row == NULL)
		return SKIP(contact, "practice has no word on these two metals here");
	bool is_if_concealed = same_text(row->verdict.text, "concealed");
	bool is_allowed = same_text(row->verdict.text, "ok") || (is_if_concealed && is_concealed(((const Met *)contact->row)->part));
	if (is_if_concealed)
		note(contact, "only concealed, dry and coated");
	return CONSTANT(contact, "metal_pairs.csv", row->fastener.text, is_allowed, row->source.text);
}

/* ---- anodic index ---- */

/* Of coated steel the coating is what meets the other metal; a panel's is on its sheet, a screw's on its shank. */
static const char *fetch_surface(Case *contact, const Case *part)
{
	const char *coating = "none";
	if (part->kind == KIND_panel)
		coating = GIVEN_AT(contact, part, Panel, coating);
	else if (part->kind == KIND_fastener)
		coating = GIVEN_AT(contact, part, Fastener, coating);
	if (is_among(coating, "AZ50;AZ55"))
		return "aluminum-zinc coated";
	if (is_among(coating, "G60;G90;electro zinc;mechanical zinc;zinc-aluminum flake"))
		return "zinc coated";
	return "bare";
}

static double fetch_index_V(Case *contact, const Case *part, const char *metal)
{
	const char *surface = same_text(metal, "steel") ? fetch_surface(contact, part) : "bare";
	const Reference *reference = contact->all->reference;
	if (!ready(contact))
		return 0;
	for (uint32_t i = 0; i < reference->metals.count; i++) {
		const MetalRow *row = &reference->metals.row[i];
		if (!same_text(row->metal.text, metal) || !same_text(row->surface.text, surface))
			continue;
		note(contact, row->surface.text);
		return CONSTANT(contact, "metals.csv index of", row->metal.text, row->anodic_index_V.value, row->index_source.text);
	}
	return REFUSE(contact, "the table of metals has no index for this metal");
}

double contact_index_V(Case *contact)
{
	return fetch_index_V(contact, ((const Met *)contact->row)->part, GIVEN(contact, contact, Contact, metal));
}

double contact_other_index_V(Case *contact)
{
	return fetch_index_V(contact, ((const Met *)contact->row)->other, GIVEN(contact, contact, Contact, other_metal));
}

double contact_potential_difference_V(Case *contact)
{
	double one = OF(contact, contact_index_V);
	double other = OF(contact, contact_other_index_V);
	return ready(contact) ? potential_difference_V(one, other) : 0;
}

/* ---- isolation ---- */

double adjoining_metal_separated_yes(Case *metal)
{
	Asked by = ask(metal, offsetof(Adjoining, separated_by));
	if (fetch_silent(metal, by))
		return 0;
	return !same_text(fetch_word(metal, by), "nothing") && ready(metal);
}

double contact_isolated_yes(Case *contact)
{
	const Case *part = ((const Met *)contact->row)->part;
	GIVEN(contact, contact, Contact, part);
	return part->kind == KIND_adjoining_metal && OF_AT(contact, (Case *)part, adjoining_metal_separated_yes) != 0;
}

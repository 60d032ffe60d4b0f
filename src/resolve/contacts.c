/* SPDX-License-Identifier: MIT
 * Contacts: the panel of each roof area with the clips, screws and rivets in it and with the metals it adjoins, one for each.
 *
 * So there are no more of them than parts. A part whose metal is not stated makes its contact wait; where no metal applies, there
 * is none. What adjoins the roof without touching it counts where its water runs on to the panel.
 */
#include "resolving.h"

#include <string.h>

static const Field *metal_field(RecordKind kind)
{
	return field_find(record_of(kind), "metal", strlen("metal"));
}

static bool is_known(Resolving *r, const Case *part, const Case *beside)
{
	const Field *field = metal_field(part->kind);
	const Given *given = given_in(field, part->row);
	if (is_value(given))
		return true;
	if (given->said != SAID_NOT_APPLICABLE)
		wait_for_list(r, &(WaitingList){ KIND_contact, beside, field, given });
	return false;
}

static Text part_text(const Case *part)
{
	const char *slash = strrchr(part->name, '/');
	const char *own = slash != NULL ? slash + 2 : part->name;
	return (Text){ { ((const Given *)part->row)->place, own, SAID_VALUE }, own };
}

static Word metal_of(const Case *part)
{
	return *(const Word *)(const void *)given_in(metal_field(part->kind), part->row);
}

static void make_contact(Resolving *r, Case *part, const Case *panel, const Word *how)
{
	if (!is_known(r, part, part) || !is_known(r, panel, part))
		return;
	Met *met = TAKE(r->arena, Met, 1);
	met->part = part;
	met->other = panel;
	met->record = (Contact){
		.given = { ((const Given *)part->row)->place, NULL, SAID_VALUE },
		.part = part_text(part),
		.metal = metal_of(part),
		.other = part_text(panel),
		.other_metal = metal_of(panel),
		.contact = *how,
	};
	Case *at = case_add(r, KIND_contact, part, met);
	at->name = arena_printf(r->arena, "%s on %s", part->name, met->record.other.text);
}

static const Case *panel_of(const Cases *all, const Case *area, uint32_t *next)
{
	while (*next < all->of[KIND_panel].count && all->of[KIND_panel].at[*next]->up != area)
		++*next;
	return *next < all->of[KIND_panel].count ? all->of[KIND_panel].at[*next] : NULL;
}

/* Parts and panels stand in the order of their areas, so the panel is found by going on. */
static void make_of_kind(Resolving *r, RecordKind kind, const Word *touch)
{
	Cases *all = r->all;
	uint32_t next = 0;
	for (uint32_t i = 0; i < all->of[kind].count; i++) {
		Case *part = all->of[kind].at[i];
		const Case *panel = panel_of(all, part->up, &next);
		if (panel == NULL)
			return;
		const Adjoining *adjoining = kind == KIND_adjoining_metal ? part->row : NULL;
		if (adjoining == NULL)
			make_contact(r, part, panel, touch);
		else if (is_word(&adjoining->contact, "touch") || is_word(&adjoining->drains, "on to us"))
			make_contact(r, part, panel, &adjoining->contact);
	}
}

void make_contacts(Resolving *r)
{
	static const RecordKind kinds[] = { KIND_clip, KIND_fastener, KIND_rivet, KIND_adjoining_metal };
	const Word touch = { { .said = SAID_VALUE, .typed = "touch" }, "touch", 0 };
	for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++)
		make_of_kind(r, kinds[i], &touch);
}

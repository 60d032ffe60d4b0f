/* SPDX-License-Identifier: MIT
 * The catalogue's items of a kind of part, and one of them put in the place of a part.
 */
#include "advising.h"

#include <string.h>

Items items_of(const Criteria *criteria, RecordKind kind, bool is_boot)
{
#define ITEMS(member) ((Items){ (const char *)criteria->member.row, criteria->member.count })
	switch (kind) {
	case KIND_panel:
		return ITEMS(panels);
	case KIND_support:
		return ITEMS(supports);
	case KIND_layer:
		return ITEMS(layers);
	case KIND_clip:
		return ITEMS(clips);
	case KIND_fastener:
		return ITEMS(fasteners);
	case KIND_underlayment:
		return ITEMS(underlayments);
	case KIND_sealant:
		return ITEMS(sealants);
	case KIND_rivet:
		return ITEMS(rivets);
	case KIND_closure:
		return ITEMS(closures);
	case KIND_penetration:
		return is_boot ? ITEMS(boots) : ITEMS(curbs);
	case KIND_accessory:
		return ITEMS(clamps);
	default:
		return (Items){ 0 };
	}
#undef ITEMS
}

void place_item(const Record *record, void *row, const void *item)
{
	static const char *const of_the_old[] = { "mark", "description", "sold_in", "stated_life", "life_paper", "was" };
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		Given *given = given_at(field, row);
		const Given *stated = given_in(field, item);
		bool clear = stated->said != SAID_NOTHING && field->stricter != OWN;
		clear &= strcmp(field->key, "use") != 0; /* the place stays what it is */
		for (size_t j = 0; j < sizeof of_the_old / sizeof *of_the_old; j++)
			clear |= strcmp(field->key, of_the_old[j]) == 0;
		if (clear)
			*given = (Given){ .place = given->place };
	}
	/* PART_FIELDS lie at one place in every part. */
	Panel *part = row;
	const Panel *catalogue = item;
	part->item.text = catalogue->item.text;
	part->item.given = (Given){ part->item.given.place, catalogue->item.text, SAID_VALUE };
	if (is_value(&catalogue->supplied_by.given)) {
		part->supplied_by.text = catalogue->supplied_by.text;
		part->supplied_by.given = (Given){ part->supplied_by.given.place, catalogue->supplied_by.text, SAID_VALUE };
	}
}

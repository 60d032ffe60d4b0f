/* SPDX-License-Identifier: MIT
 * Facts that every kind of part has: the switches of kinds.csv, the catalogue, the source.
 */
#include "parts.h"

#include "text.h"

#include <string.h>

/* The offset of the word that says where a part is used; 0 for kinds without places. */
static uint32_t place_offset(RecordKind kind)
{
	switch (kind) {
	case KIND_clip:
		return offsetof(Clip, use);
	case KIND_fastener:
		return offsetof(Fastener, use);
	case KIND_underlayment:
		return offsetof(Underlayment, where);
	case KIND_sealant:
		return offsetof(Sealant, where);
	case KIND_rivet:
		return offsetof(Rivet, where);
	case KIND_closure:
		return offsetof(Closure, where);
	case KIND_penetration:
		return offsetof(Penetration, kind);
	case KIND_accessory:
		return offsetof(Accessory, kind);
	default:
		return 0;
	}
}

const char *fetch_place(Case *fact)
{
	uint32_t offset = place_offset(fact->kind);
	return offset != 0 ? fetch_word(fact, ask(fact, offset)) : NULL;
}

RecordKind part_kind(const char *word, size_t length)
{
	for (RecordKind kind = 0; kind < RECORD_KINDS; kind++) {
		const Record *record = record_of(kind);
		if (record->sort == RECORD_PART && strncasecmp(record->name, word, length) == 0 && record->name[length] == '\0')
			return kind;
	}
	return RECORD_KINDS;
}

bool is_panel_maker(const Criteria *criteria, const char *text)
{
	const Text *maker = &criteria->edition.maker;
	return same_text(text, "panel maker") || (is_value(&maker->given) && same_text(text, maker->text));
}

/* ---- kinds.csv ---- */

static double of_kind(Case *part, uint32_t offset)
{
	const KindRow *row = kind_find(part->all->criteria, part->kind);
	if (row == NULL)
		return REFUSE(part, "kinds.csv does not speak of this kind of part");
	const Yes *yes = (const Yes *)(const void *)((const char *)row + offset);
	return CONSTANT(part, "kinds.csv", record_of(part->kind)->name, yes->yes, row->basis.text);
}

double part_life_judged_yes(Case *part)
{
	return of_kind(part, offsetof(KindRow, life_judged));
}

double part_source_judged_yes(Case *part)
{
	return of_kind(part, offsetof(KindRow, source_judged));
}

double part_approval_judged_yes(Case *part)
{
	return of_kind(part, offsetof(KindRow, approval_judged));
}

/* What lies concealed cannot be renewed, whatever its kind. */
double part_renewable_yes(Case *part)
{
	double by_kind = of_kind(part, offsetof(KindRow, renewable));
	if (!ready(part) || by_kind == 0)
		return 0;
	const char *place = fetch_place(part);
	return ready(part) && (place == NULL || !list_has(part->all->criteria, "concealed places", place));
}

/* The place goes before the kind: screws of trim lie open, sealant in a seam does not. */
double part_concealed_yes(Case *part)
{
	double by_kind = of_kind(part, offsetof(KindRow, concealed));
	const char *place = ready(part) ? fetch_place(part) : NULL;
	if (!ready(part) || place == NULL)
		return by_kind;
	const Criteria *criteria = part->all->criteria;
	if (part->kind == KIND_fastener)
		return by_kind != 0 && !list_has(criteria, "exposed fastener uses", place);
	return by_kind != 0 || list_has(criteria, "concealed places", place);
}

/* ---- catalogue and source ---- */

double part_in_catalogue_yes(Case *part)
{
	GIVEN_AT(part, part, Panel, item);
	return ready(part) && part->catalogue != NULL;
}

double part_must_be_supplied_yes(Case *part)
{
	double in_catalogue = OF(part, part_in_catalogue_yes);
	if (!ready(part) || in_catalogue == 0)
		return 0;
	Asked from = ask(part, offsetof(Panel, supplied_by));
	from.given = given_in(from.field, part->catalogue); /* the same field of the catalogue's row */
	return is_panel_maker(part->all->criteria, fetch_text_or(part, from, ""));
}

double part_supplied_by_maker_yes(Case *part)
{
	const char *from = GIVEN_AT(part, part, Panel, supplied_by);
	return ready(part) && is_panel_maker(part->all->criteria, from);
}

/* SPDX-License-Identifier: MIT
 * One source: panel, clips, closures and accessories of a roof area bought from one maker.
 */
#include "below.h"
#include "fetch.h"
#include "parts.h"
#include "text.h"

static const char *fetch_supplier(Case *area, Case *part)
{
	const char *from = fetch_text(area, ask(part, offsetof(Panel, supplied_by)));
	return is_panel_maker(area->all->criteria, from) ? "panel maker" : from;
}

double roof_area_one_source_yes(Case *area)
{
	static const RecordKind kinds[] = { KIND_clip, KIND_closure, KIND_accessory };
	Case *panel = first_below(area, KIND_panel);
	const char *maker = panel != NULL ? fetch_supplier(area, panel) : "";
	fetch_list(area, area, offsetof(RoofArea, clips));
	fetch_list(area, area, offsetof(RoofArea, closures));
	fetch_list(area, area, offsetof(RoofArea, accessories));
	const Case *other = NULL;
	const char *from = "";
	for (size_t k = 0; k < sizeof kinds / sizeof *kinds; k++)
		for (Case *part = first_below(area, kinds[k]); part != NULL; part = part->next) {
			const char *supplier = fetch_supplier(area, part);
			if (!ready(area) || other != NULL || same_text(supplier, maker))
				continue;
			other = part;
			from = supplier;
		}
	if (ready(area) && other != NULL)
		note(area, arena_printf(area->all->arena, "%s from %s", ((const Panel *)other->row)->item.text, from));
	return ready(area) && other == NULL;
}

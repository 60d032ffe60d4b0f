/* SPDX-License-Identifier: MIT
 * The inspector's sheet as text, to be printed and ticked off.
 */
#include "formats.h"
#include "site_sheet.h"

#include <string.h>

static const LabelColumn head_column = { 0, 12 }, part_column = { 2, 10 };

/* "  [ ] CLP-08  clip lines are snapped ..." */
static void put_check(Out *out, const SiteLine *line)
{
	static const LabelColumn column = { 6, 8 };
	SAY(out, "  [ ] ");
	put_cut(out, line->number, column.width - 1);
	int used = out_width(line->number, strlen(line->number));
	put_spaces(out, used < column.width - 1 ? column.width - used : 1);
	put_wrapped(out, line->text, column.indent + column.width, column.indent + column.width, PAGE_WIDTH);
	SAY(out, "\n");
}

static void put_group(Out *out, const SiteGroup *group, SiteStep step)
{
	if (group->lines == 0)
		return;
	SAY(out, "\n  ");
	put(out, site_step_heading(step));
	SAY(out, "\n");
	for (uint32_t i = 0; i < group->lines; i++)
		put_check(out, &group->line[i]);
	SAY(out, "      seen by ______________________________   on ______________\n");
}

static void put_area(Out *out, const SiteArea *area)
{
	if (area->lines == 0)
		return;
	SAY(out, "\n");
	if (area->area != NULL)
		SAY(out, "Roof area: ");
	put_cut(out, area->name, PAGE_WIDTH - 11);
	SAY(out, "\n");
	if (area->parts != NULL)
		put_label(out, part_column, "Parts", area->parts);
	for (int step = 0; step < SITE_STEPS; step++)
		put_group(out, &area->group[step], (SiteStep)step);
}

void write_site_text(Out *out, const Verdict *verdict, Arena *arena)
{
	SiteSheet sheet = site_sheet(verdict, arena);
	SAY(out, "INSPECTOR'S SHEET\n\n");
	if (sheet.broken)
		SAY(out, "NOT JUDGED: the file could not be read to its end. Mend it and run again.\n");
	for (int i = 0; !sheet.broken && i < SITE_HEADS; i++)
		put_label(out, head_column, sheet.head[i].label, sheet.head[i].text);
	put_label(out, head_column, "File", verdict->source->name);
	if (sheet.open != NULL)
		put_label(out, head_column, "Open", sheet.open);
	for (uint32_t i = 0; i < sheet.areas; i++)
		put_area(out, &sheet.area[i]);
	if (!sheet.broken)
		SAY(out, "\nInspector ______________________________   visit on ______________\n"
			"Supervisor on the roof ______________________________   on ______________\n");
	write_cautions(out, verdict->cases->reference, (CautionsFor){ "review", "" }, arena);
}

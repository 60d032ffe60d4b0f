/* SPDX-License-Identifier: MIT
 * The inspector's sheet as one page that stands alone: no script, nothing fetched, made to be printed on Letter or A4 and
 * ticked off.
 */
#include "calcs.h"
#include "formats.h"
#include "markup.h"
#include "site_sheet.h"

#define STYLE \
	"body{font:15px/1.4 Georgia,'Times New Roman',serif;color:#111;max-width:48rem;margin:2rem auto;padding:0 1rem}" \
	"h1{font-size:1.5rem;margin-bottom:.3rem}h2{font-size:1.15rem;border-bottom:2px solid #111;margin:1.8rem 0 .3rem}" \
	"h3{font-size:1rem;margin:1rem 0 .2rem}p{margin:.2rem 0}dl{margin:0}dt{float:left;clear:left;width:6.5rem;font-weight:bold}" \
	"dd{margin:0 0 .1rem 6.5rem;overflow-wrap:anywhere}ul{list-style:none;margin:0;padding:0}" \
	"li{display:flex;gap:.6rem;margin:.3rem 0;break-inside:avoid}" \
	".box{flex:none;width:.85rem;height:.85rem;border:1.5px solid #111;margin-top:.2rem}" \
	".number{flex:none;width:4.2rem;font-size:.87rem;padding-top:.1rem}.what{overflow-wrap:anywhere}" \
	".parts{font-size:.87rem;overflow-wrap:anywhere}.line{margin:.8rem 0 0;break-before:avoid}" \
	".cautions li{display:list-item;font-size:.85rem}" \
	".blank{display:inline-block;border-bottom:1px solid #111;width:14rem;margin:0 .6rem}.short{width:7rem}" \
	"@media print{body{max-width:none;margin:0;padding:0;font-size:10pt}h2,h3{break-after:avoid}section{break-inside:avoid}" \
	"@page{margin:16mm 15mm}}"

/* "Seen by ____ on ____" */
static void put_signature(Markup *page, const char *who)
{
	OPEN(page, "p");
	ATTRIBUTE(page, "class", "line");
	markup_text(page, who);
	OPEN(page, "span");
	ATTRIBUTE(page, "class", "blank");
	CLOSE(page, "span");
	markup_text(page, "on");
	OPEN(page, "span");
	ATTRIBUTE(page, "class", "blank short");
	CLOSE(page, "span");
	CLOSE(page, "p");
}

static void put_span(Markup *page, const char *kind, const char *text)
{
	OPEN(page, "span");
	ATTRIBUTE(page, "class", kind);
	markup_text(page, text);
	CLOSE(page, "span");
}

static void put_check(Markup *page, const SiteLine *line)
{
	OPEN(page, "li");
	put_span(page, "box", "");
	put_span(page, "number", line->number);
	put_span(page, "what", line->text);
	CLOSE(page, "li");
}

static void put_group(Markup *page, const SiteGroup *group, SiteStep step)
{
	if (group->lines == 0)
		return;
	OPEN(page, "section");
	ELEMENT(page, "h3", site_step_heading(step));
	OPEN(page, "ul");
	for (uint32_t i = 0; i < group->lines; i++)
		put_check(page, &group->line[i]);
	CLOSE(page, "ul");
	put_signature(page, "Seen by");
	CLOSE(page, "section");
}

static void put_area(Markup *page, const SiteArea *area, Arena *arena)
{
	if (area->lines == 0)
		return;
	ELEMENT(page, "h2", area->area != NULL ? arena_printf(arena, "Roof area: %s", area->name) : area->name);
	if (area->parts != NULL) {
		OPEN(page, "p");
		ATTRIBUTE(page, "class", "parts");
		markup_text(page, arena_printf(arena, "Parts as submitted: %s", area->parts));
		CLOSE(page, "p");
	}
	for (int step = 0; step < SITE_STEPS; step++)
		put_group(page, &area->group[step], (SiteStep)step);
}

static void put_head(Markup *page, const Verdict *verdict, const SiteSheet *sheet)
{
	ELEMENT(page, "h1", "Inspector's sheet");
	if (sheet->broken)
		ELEMENT(page, "p", "NOT JUDGED: the file could not be read to its end. Mend it and run again.");
	OPEN(page, "dl");
	for (int i = 0; !sheet->broken && i < SITE_HEADS; i++) {
		ELEMENT(page, "dt", sheet->head[i].label);
		ELEMENT(page, "dd", sheet->head[i].text);
	}
	ELEMENT(page, "dt", "File");
	ELEMENT(page, "dd", verdict->source->name);
	if (sheet->open != NULL) {
		ELEMENT(page, "dt", "Open");
		ELEMENT(page, "dd", sheet->open);
	}
	CLOSE(page, "dl");
}

void write_site_html(Out *out, const Verdict *verdict, Arena *arena)
{
	SiteSheet sheet = site_sheet(verdict, arena);
	Markup markup = { .out = out }, *page = &markup;
	PAGE(page, "Inspector's sheet", STYLE);
	put_head(page, verdict, &sheet);
	for (uint32_t i = 0; i < sheet.areas; i++)
		put_area(page, &sheet.area[i], arena);
	if (!sheet.broken) {
		put_signature(page, "Inspector");
		put_signature(page, "Supervisor on the roof");
	}
	write_cautions_page(page, verdict->cases->reference, "review", arena);
	markup_page_end(page);
}

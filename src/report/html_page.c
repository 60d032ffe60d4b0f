/* SPDX-License-Identifier: MIT
 * The letter as a page that stands alone: no script, nothing fetched, made to be printed on Letter or A4. What the letter says is
 * said by the letter's own functions; a page adds what each roof area looks like.
 */
#include "drawn.h"
#include "formats.h"
#include "svg.h"
#include "text.h"

#include "version.h"

enum { MOST_AREAS = 50 };

#define STYLE \
	"body{font:15px/1.45 Georgia,'Times New Roman',serif;color:#111;background:#fff;max-width:60rem;margin:2rem auto;" \
	"padding:0 1rem}" \
	"h1{font-size:1.55rem;line-height:1.2;border:2px solid #111;padding:.5rem .8rem;margin:0 0 .6rem}" \
	"h2{font-size:1.25rem;border-bottom:2px solid #111;margin:2.2rem 0 .6rem}h3{font-size:1.05rem;margin:1.2rem 0 .3rem}" \
	"p{margin:.3rem 0;overflow-wrap:anywhere}a{color:inherit}section:not(.drawings)>p{padding-left:1rem;text-indent:-1rem}" \
	"section>table{table-layout:fixed}nav{font-size:.9rem;margin:.8rem 0}nav a{margin-right:1rem}" \
	"dl{display:grid;grid-template-columns:7.5rem 1fr;margin:.4rem 0}dt{font-weight:bold}dd{margin:0;overflow-wrap:anywhere}" \
	".item{border-top:1px solid #999;padding:.5rem 0 .3rem}.item h3{margin:0 0 .2rem;display:flex;flex-wrap:wrap;gap:.3rem .7rem;" \
	"align-items:baseline}.item:target{outline:2px solid #111;outline-offset:4px}.action{border:1.5px solid #111;padding:0 .4rem;" \
	"font-size:.85rem;background:#111;color:#fff}.note{background:#fff;color:#111}.closed{border-style:dashed;" \
	"background:#fff;color:#555}" \
	".where{font-weight:normal;overflow-wrap:anywhere;min-width:0}.code{font:.8rem Menlo,Consolas,monospace;" \
	"font-weight:normal;color:#444}" \
	".finding{font-weight:bold}.places{font-size:.87rem;margin:.1rem 0}ul{padding-left:1.2rem}.letter{font-weight:bold;" \
	"margin-right:.5rem}" \
	"pre{font:.8rem/1.35 Menlo,Consolas,monospace;background:#f3f3f3;padding:.3rem .6rem;margin:.3rem 0;overflow-x:auto}" \
	".wide{overflow-x:auto}.wide table{min-width:42rem}table{border-collapse:collapse;font-size:.87rem;margin:.4rem 0;width:100%}" \
	"caption{text-align:left;font-size:.85rem;color:#333;padding-bottom:.2rem}" \
	"th,td{text-align:left;vertical-align:top;padding:.2rem .6rem .2rem 0;border-bottom:1px solid #ccc}" \
	"thead th{font-size:.8rem;color:#333;border-bottom:1.5px solid #111;vertical-align:bottom}tbody th{font-weight:normal}" \
	".strong,.zone-name,.differs td,.differs th{font-weight:bold}.zone-name{font-size:1rem;margin:0 .5rem}" \
	"span.places{color:#333;display:block}.ratio{white-space:nowrap}.figure{display:inline-block;min-width:3rem}" \
	"figure{margin:.6rem 0;overflow-x:auto}figcaption{font-size:.85rem;color:#333}" \
	".blank{display:inline-block;border-bottom:1px solid #111;width:16rem;margin:0 .6rem}.short{width:8rem}"

#define DRAWN \
	"svg{max-width:100%;height:auto;display:block;font-family:Arial,Helvetica,sans-serif}figure svg{width:7in;min-width:36rem}" \
	"svg.patterns{position:absolute}svg.bar{width:102px;max-width:none;vertical-align:middle}td.number{white-space:nowrap}" \
	"svg.swatch{display:inline-block;width:34px;vertical-align:middle}" \
	"text{fill:#111}text.strong{font-weight:bold}text.faint{fill:#555}text.halo{paint-order:stroke;stroke:#fff;stroke-width:3px}" \
	".roof{fill:none}.roof,.zone{stroke:#111}.roof{stroke-width:1.6}.zone{stroke-width:1}" \
	".paper,.pad{fill:#fff}.hatch{stroke:#777;stroke-width:.8;stroke-linecap:square}.border{stroke:#333;stroke-width:.9}" \
	".ridge{stroke:#111;stroke-width:1.3;stroke-dasharray:12 3 3 3}.fixed{stroke:#111;stroke-width:3.4}" \
	".measure,.arrow,.leader{stroke:#111;stroke-width:.9;fill:none}.leader{stroke:#666;stroke-width:.7}" \
	".arrow{stroke-width:1.3}.head,.dot{fill:#111}" \
	".opening{fill:#fff;stroke:#111;stroke-width:1.3}.cross{stroke:#111;stroke-width:.7}.ring{fill:none;stroke:#111;" \
	"stroke-width:.9}" \
	".scale{fill:#fff;stroke:#111;stroke-width:.9}.scale.dark,.full{fill:#444}.scale-bar{stroke:#111;stroke-width:.9}" \
	".empty{fill:#fff;stroke:#777;stroke-width:.8}.over{fill:#111}.allowed{stroke:#111;stroke-width:1.6}" \
	".part{fill:#fff;stroke:#111;stroke-width:1.4}.sheet{fill:none;stroke:#111;stroke-width:2.4;stroke-linejoin:round}" \
	".thin{fill:none;stroke:#444;stroke-width:.8}.grey{fill:#ddd;stroke:#111;stroke-width:1}.dashed{fill:none;stroke:#111;" \
	"stroke-width:1.2;stroke-dasharray:6 4}.bold{fill:none;stroke:#111;stroke-width:2}.grid{stroke:#ccc;stroke-width:.7}" \
	".test{fill:#fff;stroke:#111;stroke-width:1.4}.demand{fill:#111}.axis{stroke:#111;stroke-width:1.2}" \
	"@media(max-width:40rem){body{padding:0 .6rem;margin:.6rem auto}dl{grid-template-columns:1fr}dd{margin-bottom:.3rem}" \
	"h1{font-size:1.25rem}}" \
	"@media print{body{max-width:none;margin:0;padding:0;font-size:10pt}nav{display:none}h2,h3,caption{break-after:avoid}" \
	".item,figure,tr{break-inside:avoid}thead{display:table-header-group}figure svg,.wide table{min-width:0}" \
	".wide,figure,pre{overflow:visible}" \
	".drawings{break-before:page}pre{font-size:7pt}.wide table{font-size:8.5pt}*{print-color-adjust:exact}@page{margin:16mm 15mm}}"

static void put_contents(Markup *page, const Verdict *verdict, Arena *arena)
{
	const Drawings *drawings = verdict->drawings;
	if (drawings == NULL)
		return;
	OPEN(page, "nav");
	for (uint32_t i = 0; i < drawings->areas && i < MOST_AREAS; i++) {
		OPEN(page, "a");
		ATTRIBUTE(page, "href", arena_printf(arena, "#area-%u", i + 1));
		markup_text(page, arena_printf(arena, "Drawings: %s", drawings->area[i].at->name));
		CLOSE(page, "a");
	}
	static const char *const sections[][2] = { { "#parts-one-by-one", "Parts" }, { "#how-much-was-checked", "How much was checked" },
		{ "#cautions", "Cautions" } };
	for (size_t i = 0; i < sizeof sections / sizeof *sections; i++) {
		if (i == 0 && verdict->parts == 0)
			continue;
		OPEN(page, "a");
		ATTRIBUTE(page, "href", sections[i][0]);
		markup_text(page, sections[i][1]);
		CLOSE(page, "a");
	}
	CLOSE(page, "nav");
}

static void put_drawings(const Sight *sight, const DrawnArea *area)
{
	Markup *page = sight->page;
	ELEMENT(page, "h3", "Zones");
	put_zone_table(sight, area);
	ELEMENT(page, "h3", "Roof plan");
	put_plan(sight, area);
	put_openings(sight, area);
	ELEMENT(page, "h3", "Section through the assembly");
	put_section(sight, area);
	ELEMENT(page, "h3", "Tested pressure by clip spacing");
	put_curve(sight, area);
	ELEMENT(page, "h3", "Submitted beside listed");
	put_listed(sight, area);
}

static void put_area(const Sight *sight, uint32_t number)
{
	Markup *page = sight->page;
	const DrawnArea *area = &sight->verdict->drawings->area[number];
	OPEN(page, "section");
	ATTRIBUTE(page, "id", arena_printf(sight->arena, "area-%u", number + 1));
	ATTRIBUTE(page, "class", "drawings");
	ELEMENT(page, "h2", arena_printf(sight->arena, "Drawings: %s", area->at->name));
	if (area->is_excluded)
		ELEMENT(page, "p", "Not to be warranted: nothing of this roof area was judged, and nothing of it is drawn.");
	else
		put_drawings(sight, area);
	CLOSE(page, "section");
}

static void put_areas(Markup *page, const Verdict *verdict, Arena *arena)
{
	ItemIndex items = item_index(verdict, arena);
	Sight sight = { page, verdict, &items, arena };
	const Drawings *drawings = verdict->drawings;
	if (drawings == NULL)
		return;
	svg_hatches(page, arena);
	for (uint32_t i = 0; i < drawings->areas && i < MOST_AREAS; i++)
		put_area(&sight, i);
	if (drawings->areas > MOST_AREAS)
		ELEMENT(page, "p", arena_printf(arena, "and %u more roof areas, which are not drawn", drawings->areas - MOST_AREAS));
}

void write_html(Out *out, const Verdict *verdict, Arena *arena)
{
	Markup markup = { .out = out };
	Pen pen = { .page = &markup, .verdict = verdict, .arena = arena };
	PAGE_OF_TWO(&markup, "Review of a roof submittal", STYLE, DRAWN);
	OPEN(&markup, "main");
	put_head(&pen, verdict, arena);
	pen_end(&pen);
	put_contents(&markup, verdict, arena);
	put_items(&pen, verdict, arena);
	pen_end(&pen);
	put_areas(&markup, verdict, arena);
	put_foot(&pen, verdict, arena);
	pen_end(&pen);
	ELEMENT(&markup, "p", "Made by seamstamp " SEAMSTAMP_VERSION ".");
	CLOSE(&markup, "main");
	markup_page_end(&markup);
}

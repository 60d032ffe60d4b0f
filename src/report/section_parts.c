/* SPDX-License-Identifier: MIT
 * What a section is built of: support, layers, sheets, clips with their screws, panel and seam. Thicknesses are those of a
 * drawing, not of the parts.
 */
#include "section_drawing.h"

#include <math.h>
#include <string.h>

#define WIDE (SECTION_RIGHT - SECTION_LEFT)

/* ---- support ---- */

/* Ribs of a deck; every other upper flat lies under the screws of a clip. */
static void put_deck(SectionSheet *section)
{
	enum { PITCH = 49, FLAT = 26, SLANT = 5, RIBS = 5 };
	At at[4 * RIBS + 4];
	size_t count = 0;
	double x = seam_at(0) + 5 - PITCH, top = section->support, low = top + 26;
	at[count++] = (At){ SECTION_LEFT, top };
	for (int rib = 0; rib < RIBS; rib++, x += PITCH) {
		at[count++] = (At){ x + FLAT, top };
		at[count++] = (At){ x + FLAT + SLANT, low };
		at[count++] = (At){ x + PITCH - SLANT, low };
		at[count++] = (At){ x + PITCH, top };
	}
	at[count++] = (At){ fmin(x + FLAT, SECTION_RIGHT), top };
	at[count++] = (At){ fmin(x + FLAT + SLANT, SECTION_RIGHT), low };
	at[count++] = (At){ SECTION_RIGHT, low };
	svg_path(&section->svg, &(Path){ "sheet", at, count, false });
}

static void put_slab(SectionSheet *section, const char *kind, double height)
{
	svg_box(&section->svg, kind, (At){ SECTION_LEFT, section->support }, (At){ WIDE, height });
}

static void put_boards(SectionSheet *section, int lines)
{
	put_slab(section, "part", 22);
	for (int i = 1; i <= lines; i++) {
		double y = section->support + 22.0 * i / (lines + 1);
		svg_line(&section->svg, "thin", (At){ SECTION_LEFT, y }, (At){ SECTION_RIGHT, y });
	}
}

/* Seen along: flange, web, flange. */
static void put_purlin(SectionSheet *section, double height)
{
	put_slab(section, "part", height);
	svg_line(&section->svg, "thin", (At){ SECTION_LEFT, section->support + 5 }, (At){ SECTION_RIGHT, section->support + 5 });
	svg_line(&section->svg, "thin", (At){ SECTION_LEFT, section->support + height - 5 }, (At){ SECTION_RIGHT,
		section->support + height - 5 });
}

static void put_concrete(SectionSheet *section)
{
	put_slab(section, "part", 36);
	for (int i = 0; i < 26; i++) {
		At at = { SECTION_LEFT + 8 + i * 11.5, section->support + 7 + i * 17 % 25 };
		At stone[] = { { at.x, at.y }, { at.x + 5, at.y + 1 }, { at.x + 2, at.y + 5 } };
		svg_path(&section->svg, &(Path){ "thin", stone, 3, true });
	}
}

void draw_support(SectionSheet *section)
{
	const Case *part = first_in(section->area, KIND_support);
	const Word *kind = &section->row->support.kind;
	if (is_word(kind, "steel deck"))
		put_deck(section);
	else if (is_word(kind, "plywood") || is_word(kind, "OSB"))
		put_boards(section, 4);
	else if (is_word(kind, "wood"))
		put_boards(section, 1);
	else if (is_word(kind, "purlin") || is_word(kind, "sub-purlin"))
		put_purlin(section, is_word(kind, "purlin") ? 40 : 28);
	else if (is_word(kind, "concrete"))
		put_concrete(section);
	else
		put_slab(section, "dashed", 30);
	if (part == NULL)
		return;
	const char *more = arena_printf(section->sight->arena, "%s, %s", said_text(&kind->given, section->sight->arena),
		inches_text(section, &section->row->support.thickness_in));
	At deck = { SECTION_RIGHT - 2, section->support + 26 }, solid = { SECTION_RIGHT - 12, section->support + 12 };
	add_leader(section, is_word(kind, "steel deck") ? deck : solid, part, more);
}

/* ---- layers and sheets ---- */

static double layer_height(const Layer *layer)
{
	static const struct {
		const char *kind;
		double height;
	} heights[] = { { "insulation", 34 }, { "existing roof", 24 }, { "cover board", 14 } };
	for (size_t i = 0; i < sizeof heights / sizeof *heights; i++)
		if (is_word(&layer->layer, heights[i].kind))
			return heights[i].height;
	return 9;
}

enum { SHEET_HEIGHT = 7 };

double build_up_height(const DrawnArea *area)
{
	double height = 4;
	int count = 0;
	for (const Case *layer = first_in(area, KIND_layer); layer != NULL && count < MOST_LAYERS; layer = layer->next, count++)
		height += layer_height(layer->row);
	count = 0;
	for (const Case *sheet = first_in(area, KIND_underlayment); sheet != NULL && count < MOST_SHEETS; sheet = sheet->next, count++)
		height += SHEET_HEIGHT;
	return height;
}

static void put_insulation(SectionSheet *section, double top, double height)
{
	At at[80];
	size_t count = 0;
	svg_box(&section->svg, "part", (At){ SECTION_LEFT, top }, (At){ WIDE, height });
	for (double x = SECTION_LEFT; x <= SECTION_RIGHT && count < 80; x += 12, count++)
		at[count] = (At){ x, count % 2 == 0 ? top + 3 : top + height - 3 };
	svg_path(&section->svg, &(Path){ "thin", at, count, false });
}

static void put_old_roof(SectionSheet *section, double top, double height)
{
	svg_line(&section->svg, "bold", (At){ SECTION_LEFT, top + height - 1 }, (At){ SECTION_RIGHT, top + height - 1 });
	for (double x = SECTION_LEFT + 30; x < SECTION_RIGHT; x += 64) {
		At rib[] = { { x, top + height - 1 }, { x + 4, top + 3 }, { x + 14, top + 3 }, { x + 18, top + height - 1 } };
		svg_path(&section->svg, &(Path){ "bold", rib, 4, false });
	}
}

static void put_layer(SectionSheet *section, const Layer *layer, double top, double height)
{
	bool is_thin = is_word(&layer->layer, "vapor retarder") || is_word(&layer->layer, "slip sheet");
	if (is_word(&layer->layer, "insulation"))
		put_insulation(section, top, height);
	else if (is_word(&layer->layer, "existing roof"))
		put_old_roof(section, top, height);
	else if (is_thin)
		svg_line(&section->svg, "dashed", (At){ SECTION_LEFT, top + height / 2 }, (At){ SECTION_RIGHT, top + height / 2 });
	else if (is_word(&layer->layer, "bearing plate"))
		svg_box(&section->svg, "grey", (At){ seam_at(1) - 10, top + 3 }, (At){ 60, height - 4 });
	else
		svg_box(&section->svg, "grey", (At){ SECTION_LEFT, top }, (At){ WIDE, height });
}

/* From the support up, underlayments last. */
void draw_build_up(SectionSheet *section)
{
	double at = section->support;
	int count = 0;
	for (const Case *part = first_in(section->area, KIND_layer); part != NULL && count < MOST_LAYERS; part = part->next, count++) {
		const Layer *layer = part->row;
		double height = layer_height(layer);
		at -= height;
		put_layer(section, layer, at, height);
		add_leader(section, (At){ SECTION_RIGHT - 30 - 10 * (count % 3), at + height / 2 }, part, arena_printf(section->sight->arena,
			"%s, %s", said_text(&layer->layer.given, section->sight->arena), inches_text(section, &layer->thickness_in)));
	}
	count = 0;
	for (const Case *part = first_in(section->area, KIND_underlayment); part != NULL && count < MOST_SHEETS; part = part->next,
		count++) {
		const Underlayment *sheet = part->row;
		at -= SHEET_HEIGHT;
		svg_line(&section->svg, "bold", (At){ SECTION_LEFT, at + 4 }, (At){ SECTION_RIGHT, at + 4 });
		add_leader(section, (At){ SECTION_RIGHT - 20 - 14 * count, at + 4 }, part, arena_printf(section->sight->arena, "%s, %s",
			said_text(&sheet->kind.given, section->sight->arena), said_text(&sheet->where.given, section->sight->arena)));
	}
}

/* ---- clips and their screws ---- */

/* Through the base of the clip, down to the support. */
static void put_screw(SectionSheet *section, double x)
{
	double head = section->top - 6, tip = section->support + 20;
	svg_box(&section->svg, "head", (At){ x - 5, head - 3 }, (At){ 10, 3 });
	svg_line(&section->svg, "bold", (At){ x, head }, (At){ x, tip });
	for (double y = tip - 14; y < tip - 1; y += 4)
		svg_line(&section->svg, "thin", (At){ x - 3, y + 1.5 }, (At){ x + 3, y - 1.5 });
}

static void put_clip(SectionSheet *section, double x)
{
	At bent[] = { { x + 34, section->top - 4 }, { x, section->top - 4 }, { x, section->top - PAN_HEIGHT - RIB_HEIGHT + 4 } };
	svg_path(&section->svg, &(Path){ "bold", bent, 3, false });
}

static const char *spacing_range(const SectionSheet *section, const ByZone *spacing)
{
	double least = HUGE_VAL, most = 0;
	Arena *arena = section->sight->arena;
	if (!is_value(&spacing->given) || spacing->count == 0)
		return arena_printf(arena, "spacing %s", said_text(&spacing->given, arena));
	for (uint32_t i = 0; i < spacing->count; i++) {
		if (!is_value(&spacing->at[i].given))
			return "spacing not all stated";
		least = fmin(least, spacing->at[i].value);
		most = fmax(most, spacing->at[i].value);
	}
	if (least == most)
		return arena_printf(arena, "%s apart", measure(section->sight, most, "in"));
	return arena_printf(arena, "%g to %s apart", least, measure(section->sight, most, "in"));
}

static void put_screws_of(SectionSheet *section, const char *use, double x)
{
	int count = 0;
	for (const Case *part = first_in(section->area, KIND_fastener); part != NULL; part = part->next) {
		const Fastener *screw = part->row;
		if (!is_word(&screw->use, use))
			continue;
		put_screw(section, x + 9 * count);
		add_leader(section, (At){ x + 9 * count, section->top - 8 }, part, arena_printf(section->sight->arena,
			"for %s, %s each, %s long",
			use, said_text(&screw->per_one.given, section->sight->arena), inches_text(section, &screw->length_in)));
		if (++count == 2)
			return;
	}
}

void draw_clips(SectionSheet *section)
{
	static const char *const uses[] = { "running", "fixity" }, *const screws[] = { "clip", "fixity" };
	int shown[2] = { 0, 0 };
	for (const Case *part = first_in(section->area, KIND_clip); part != NULL; part = part->next) {
		const Clip *clip = part->row;
		int fixed = is_word(&clip->use, "fixity");
		if (shown[fixed]++ == 2)
			break;
		double x = seam_at(fixed ? 0 : 1), y = section->top - PAN_HEIGHT - RIB_HEIGHT * (shown[fixed] == 1 ? 0.45 : 0.7);
		put_clip(section, x);
		add_leader(section, (At){ x, y }, part, arena_printf(section->sight->arena, "%s, %s", uses[fixed],
			spacing_range(section, &clip->spacing_in)));
	}
	put_screws_of(section, screws[1], seam_at(0) + 18);
	put_screws_of(section, screws[0], seam_at(1) + 18);
}

/* ---- panel ---- */

/* How the top of a seam is folded. */
static void put_fold(SectionSheet *section, double x, double top)
{
	const Word *seam = &section->row->panel.seam;
	At snap[] = { { x - 6, top + 10 }, { x - 3, top + 6 }, { x - 3, top - 3 }, { x + 3, top - 3 }, { x + 3, top + 6 }, { x + 6,
		top + 10 } };
	At lock[] = { { x - 2, top }, { x - 2, top - 5 }, { x + 10, top - 5 }, { x + 10, top + 9 }, { x + 4, top + 9 }, { x + 4,
		top + 2 } };
	if (is_word(seam, "snap"))
		svg_path(&section->svg, &(Path){ "sheet", snap, 6, false });
	else
		svg_path(&section->svg, &(Path){ "sheet", lock, is_word(seam, "double lock 180") ? 6 : 4, false });
}

static const Case *seam_sealant(const SectionSheet *section)
{
	for (const Case *part = first_in(section->area, KIND_sealant); part != NULL; part = part->next)
		if (is_word(&((const Sealant *)part->row)->where, "seam"))
			return part;
	return NULL;
}

static void put_seam_sealant(SectionSheet *section, double top)
{
	const Case *part = seam_sealant(section);
	const Word *laid = &section->row->panel.seam_sealant;
	At at = { seam_at(SEAMS - 1) + 4, top - 1 };
	if (part == NULL && (!is_value(&laid->given) || is_word(laid, "none")))
		return;
	svg_circle(&section->svg, "dot", at, 3);
	if (part != NULL)
		add_leader(section, at, part, "in the seam");
}

void draw_panel(SectionSheet *section)
{
	double pan = section->top - PAN_HEIGHT, top = pan - RIB_HEIGHT;
	for (int i = 0; i <= SEAMS; i++) {
		double left = i > 0 ? seam_at(i - 1) + 2.5 : SECTION_LEFT, right = i < SEAMS ? seam_at(i) - 2.5 : SECTION_RIGHT;
		At at[] = { { left, top }, { left, pan }, { right, pan }, { right, top } };
		svg_path(&section->svg, &(Path){ "sheet", at + (i == 0), (size_t)(4 - (i == 0) - (i == SEAMS)), false });
	}
	for (int i = 0; i < SEAMS; i++)
		put_fold(section, seam_at(i), top);
	put_seam_sealant(section, top);
	const Panel *panel = &section->row->panel;
	Arena *arena = section->sight->arena;
	const Case *part = first_in(section->area, KIND_panel);
	if (part != NULL)
		add_leader(section, (At){ seam_at(SEAMS - 1) - 2.5, top + 10 }, part, arena_printf(arena, "%s %s, %s",
			said_text(&panel->metal.given, arena), inches_text(section, &panel->thickness_in), said_text(&panel->seam.given, arena)));
}

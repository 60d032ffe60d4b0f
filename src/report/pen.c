/* SPDX-License-Identifier: MIT
 * The letter's lines as text, or as paragraphs, lists and tables of a page.
 */
#include "pen.h"

#include "calcs.h"

#include <ctype.h>
#include <stdlib.h>
#include <string.h>

/* ---- what a page has open ---- */

static void leave(Pen *pen)
{
	if (pen->place == PEN_IN_LABELS)
		CLOSE(pen->page, "dl");
	if (pen->place == PEN_IN_PARTS) {
		markup_table_end(pen->page);
	}
	pen->place = PEN_NOWHERE;
}

void pen_end(Pen *pen)
{
	if (pen->page == NULL)
		return;
	leave(pen);
	if (pen->in_section)
		CLOSE(pen->page, "section");
	pen->in_section = false;
}

/* ---- links to items ---- */

const char *item_anchor(const Verdict *verdict, const Finding *item, Arena *arena)
{
	if (item->round == 0 || item->item == 0)
		return arena_printf(arena, "item-%u", (unsigned)(item - verdict->item) + 1);
	return arena_printf(arena, "item-%u-%02u", item->round, item->item);
}

static const Finding *item_numbered(const Verdict *verdict, const char *text, size_t length)
{
	char *end;
	unsigned long round = strtoul(text, &end, 10);
	if (*end != '.')
		return NULL;
	unsigned long number = strtoul(end + 1, &end, 10);
	if (end != text + length || number == 0 || round == 0)
		return NULL;
	for (uint32_t i = 0; i < verdict->items; i++)
		if (verdict->item[i].round == round && verdict->item[i].item == number)
			return &verdict->item[i];
	return NULL;
}

/* "1.03" at the start of a text: its length; 0 if no number of an item can stand there. */
static size_t number_length(const char *text)
{
	size_t round = strspn(text, "0123456789");
	if (round == 0 || round > 5 || text[round] != '.')
		return 0;
	size_t number = strspn(text + round + 1, "0123456789");
	bool ends = !isalnum((unsigned char)text[round + 1 + number]) && text[round + 1 + number] != '.';
	return number >= 2 && number <= 5 && ends ? round + 1 + number : 0;
}

void put_linked(Markup *page, const char *text, const Verdict *verdict, Arena *arena)
{
	const char *from = text;
	for (const char *at = text; *at != '\0';) {
		bool begins = at == text || (!isalnum((unsigned char)at[-1]) && at[-1] != '.');
		size_t length = begins ? number_length(at) : 0;
		const Finding *item = length > 0 ? item_numbered(verdict, at, length) : NULL;
		if (item == NULL) {
			at++;
			continue;
		}
		markup_text(page, arena_text(arena, from, (size_t)(at - from)));
		OPEN(page, "a");
		ATTRIBUTE(page, "href", arena_printf(arena, "#%s", item_anchor(verdict, item, arena)));
		markup_text(page, arena_text(arena, at, length));
		CLOSE(page, "a");
		at += length;
		from = at;
	}
	markup_text(page, from);
}

/* ---- lines ---- */

void pen_answer(Pen *pen, const char *text)
{
	if (pen->page != NULL) {
		ELEMENT(pen->page, "h1", text);
		return;
	}
	put(pen->out, text);
	SAY(pen->out, "\n");
}

static void put_paragraph(Pen *pen, const char *text, bool linked)
{
	leave(pen);
	OPEN(pen->page, "p");
	if (linked)
		put_linked(pen->page, text, pen->verdict, pen->arena);
	else
		markup_text(pen->page, text);
	CLOSE(pen->page, "p");
}

void pen_say(Pen *pen, const char *text)
{
	if (pen->page != NULL) {
		put_paragraph(pen, text, true);
		return;
	}
	put_wrapped(pen->out, text, 0, 0, PAGE_WIDTH);
	SAY(pen->out, "\n");
}

void pen_gap(Pen *pen)
{
	if (pen->page != NULL)
		leave(pen);
	else
		SAY(pen->out, "\n");
}

/* "PARTS, ONE BY ONE" is the section "parts-one-by-one". */
static const char *slug(const char *title, Arena *arena)
{
	char *made = arena_text(arena, title, strlen(title)), *to = made;
	for (const char *c = title; *c != '\0'; c++)
		if (isalnum((unsigned char)*c))
			*to++ = (char)tolower((unsigned char)*c);
		else if (to > made && to[-1] != '-')
			*to++ = '-';
	*to = '\0';
	return made;
}

void pen_heading(Pen *pen, const char *title)
{
	if (pen->page == NULL) {
		SAY(pen->out, "\n");
		out_literal(pen->out, title, strlen(title));
		SAY(pen->out, "\n");
		return;
	}
	pen_end(pen);
	pen->in_section = true;
	OPEN(pen->page, "section");
	ATTRIBUTE(pen->page, "id", slug(title, pen->arena));
	char *words = arena_text(pen->arena, title, strlen(title));
	for (char *c = words + 1; c > words && *c != '\0'; c++)
		*c = (char)tolower((unsigned char)*c);
	ELEMENT(pen->page, "h2", words);
}

void pen_area(Pen *pen, const char *name)
{
	if (pen->page == NULL) {
		SAY(pen->out, "\nROOF AREA: ");
		put_cut(pen->out, name, PAGE_WIDTH - 11);
		SAY(pen->out, "\n");
		return;
	}
	pen_end(pen);
	pen->in_section = true;
	OPEN(pen->page, "section");
	ELEMENT(pen->page, "h2", arena_printf(pen->arena, "Roof area: %s", name));
}

void pen_subheading(Pen *pen, const char *name)
{
	if (pen->page != NULL) {
		leave(pen);
		ELEMENT(pen->page, "h3", name);
		return;
	}
	SAY(pen->out, "  ");
	put_cut(pen->out, name, PAGE_WIDTH - 2);
	SAY(pen->out, "\n");
}

static void put_prose(Pen *pen, const char *text, bool linked)
{
	if (pen->page != NULL) {
		put_paragraph(pen, text, linked);
		return;
	}
	SAY(pen->out, "  ");
	put_wrapped(pen->out, text, 2, 4, PAGE_WIDTH);
	SAY(pen->out, "\n");
}

void pen_line(Pen *pen, const char *text)
{
	put_prose(pen, text, false);
}

void pen_line_of_items(Pen *pen, const char *text)
{
	put_prose(pen, text, true);
}

void pen_item_line(Pen *pen, const Finding *item, const char *text)
{
	if (pen->page != NULL) {
		leave(pen);
		OPEN(pen->page, "article");
		ATTRIBUTE(pen->page, "id", item_anchor(pen->verdict, item, pen->arena));
		ELEMENT(pen->page, "p", text);
		CLOSE(pen->page, "article");
		return;
	}
	SAY(pen->out, "  ");
	put_wrapped(pen->out, text, 2, 8, PAGE_WIDTH);
	SAY(pen->out, "\n");
}

void pen_label(Pen *pen, LabelColumn column, const char *label, const char *text)
{
	if (pen->page == NULL) {
		put_label(pen->out, column, label, text);
		return;
	}
	if (pen->place != PEN_IN_LABELS) {
		leave(pen);
		OPEN(pen->page, "dl");
	}
	pen->place = PEN_IN_LABELS;
	ELEMENT(pen->page, "dt", label);
	ELEMENT(pen->page, "dd", text);
}

/* ---- parts ---- */

static void put_part_text(Out *out, const PenPart *part, Arena *arena)
{
	static const LabelColumn column = { 4, 14 };
	int gap = 28 - (strlen(part->name) < 200 ? out_width(part->name, strlen(part->name)) : 28);
	put_label(out, column, part->kind, arena_printf(arena, "%s%*s%s", part->name, gap > 2 ? gap : 2, "", part->clearance));
}

static void begin_parts(Markup *page)
{
	static const char *const heads[] = { "Kind", "Part", "What is said of it" };
	markup_table(page, NULL, heads, sizeof heads / sizeof *heads);
}

void pen_part(Pen *pen, const PenPart *part)
{
	Markup *page = pen->page;
	if (page == NULL) {
		put_part_text(pen->out, part, pen->arena);
		return;
	}
	if (pen->place != PEN_IN_PARTS) {
		leave(pen);
		begin_parts(page);
	}
	pen->place = PEN_IN_PARTS;
	OPEN(page, "tr");
	ELEMENT(page, "td", part->kind);
	OPEN(page, "th");
	ATTRIBUTE(page, "scope", "row");
	markup_text(page, part->name);
	CLOSE(page, "th");
	OPEN(page, "td");
	put_linked(page, part->clearance, pen->verdict, pen->arena);
	CLOSE(page, "td");
	CLOSE(page, "tr");
}

/* ---- what stands last ---- */

void pen_cautions(Pen *pen, const Reference *reference)
{
	if (pen->page == NULL) {
		write_cautions(pen->out, reference, (CautionsFor){ "review", "" }, pen->arena);
		return;
	}
	uint32_t row = 0;
	PEN_HEADING(pen, "CAUTIONS");
	for (const Caution *caution; (caution = caution_from(reference, "review", &row)) != NULL;)
		pen_line(pen, arena_printf(pen->arena, "%s (basis: %s)", caution->text.text,
			basis_text(reference, caution->basis.text, pen->arena)));
}

static void put_blank(Markup *page, const char *kind)
{
	OPEN(page, "span");
	ATTRIBUTE(page, "class", kind);
	CLOSE(page, "span");
}

/* Nobody is named as signer. */
void pen_signature(Pen *pen)
{
	PEN_HEADING(pen, "REVIEWED FOR THE PANEL MAKER");
	if (pen->page == NULL) {
		SAY(pen->out, "  by ______________________________   on ______________\n");
		return;
	}
	OPEN(pen->page, "p");
	markup_text(pen->page, "by");
	put_blank(pen->page, "blank");
	markup_text(pen->page, "on");
	put_blank(pen->page, "blank short");
	CLOSE(pen->page, "p");
}

/* SPDX-License-Identifier: MIT
 * Markup: HTML that is escaped by construction. Names of elements and attributes and the style are literals of the program; text
 * is always escaped, and there is no way to write it raw.
 */
#ifndef REPORT_MARKUP_H
#define REPORT_MARKUP_H

#include "out.h"
#include "reference.h"

enum { MARKUP_DEEPEST = 32 };

typedef struct {
	Out *out; /* made with OUT_MARKUP */
	const char *open[MARKUP_DEEPEST];
	int depth;
	bool in_tag; /* attributes may still follow */
} Markup;

/* Begins an element; one that HTML leaves empty (meta, br) is closed by whatever comes next. */
#define OPEN(markup, name) markup_open(markup, "" name "")
void markup_open(Markup *markup, const char *name);

/* An attribute of the element just begun. */
#define ATTRIBUTE(markup, name, value) markup_attribute(markup, "" name "", value)
void markup_attribute(Markup *markup, const char *name, const char *value);

void markup_text(Markup *markup, const char *text);

/* Ends the innermost element, which must be this one. */
#define CLOSE(markup, name) markup_close(markup, "" name "")
void markup_close(Markup *markup, const char *name);

/* An element that holds one text. */
#define ELEMENT(markup, name, text) markup_element(markup, "" name "", text)
void markup_element(Markup *markup, const char *name, const char *text);

/* A table up to its first row, each column with its head, and its end; caption NULL: none. */
void markup_table(Markup *markup, const char *caption, const char *const head[], size_t columns);
void markup_table_end(Markup *markup);

/* The head of a page on its own: no script, nothing fetched, the style a literal. */
#define PAGE(markup, title, style) markup_page(markup, title, "" style "", "")
#define PAGE_OF_TWO(markup, title, style, more) markup_page(markup, title, "" style "", "" more "") /* a literal holds 4095 bytes */
void markup_page(Markup *markup, const char *title, const char *style, const char *more);
void markup_page_end(Markup *markup);

/* The cautions that concern a command, as a chapter; of cautions.c. */
void write_cautions_page(Markup *page, const Reference *reference, const char *command, Arena *arena);

#endif

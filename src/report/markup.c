/* SPDX-License-Identifier: MIT
 * The one writer of markup: it keeps the elements that are open and refuses a close that does not match.
 */
#include "markup.h"

#include <assert.h>
#include <string.h>

static void put_literal(Markup *markup, const char *literal)
{
	out_literal(markup->out, literal, strlen(literal));
}

static void end_tag(Markup *markup)
{
	if (markup->in_tag)
		SAY(markup->out, ">");
	markup->in_tag = false;
}

static bool is_void(const char *name)
{
	static const char *const names[] = { "meta", "br", "hr", "img", "col", "link", "input" };
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (strcmp(names[i], name) == 0)
			return true;
	return false;
}

/* Elements that begin a line, so that the page can be read as text. */
static bool is_block(const char *name)
{
	static const char *const names[] = { "span", "b", "td", "th", "code", "dt", "dd", "summary", "a", "tspan" };
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		if (strcmp(names[i], name) == 0)
			return false;
	return true;
}

void markup_open(Markup *markup, const char *name)
{
	end_tag(markup);
	if (is_block(name))
		SAY(markup->out, "\n");
	SAY(markup->out, "<");
	put_literal(markup, name);
	markup->in_tag = true;
	if (is_void(name))
		return;
	assert(markup->depth < MARKUP_DEEPEST);
	markup->open[markup->depth++] = name;
}

void markup_attribute(Markup *markup, const char *name, const char *value)
{
	assert(markup->in_tag);
	SAY(markup->out, " ");
	put_literal(markup, name);
	SAY(markup->out, "=\"");
	put(markup->out, value);
	SAY(markup->out, "\"");
}

void markup_text(Markup *markup, const char *text)
{
	end_tag(markup);
	put(markup->out, text);
}

void markup_close(Markup *markup, const char *name)
{
	end_tag(markup);
	assert(markup->depth > 0 && strcmp(markup->open[markup->depth - 1], name) == 0);
	markup->depth--;
	SAY(markup->out, "</");
	put_literal(markup, name);
	SAY(markup->out, ">");
}

void markup_element(Markup *markup, const char *name, const char *text)
{
	markup_open(markup, name);
	markup_text(markup, text);
	markup_close(markup, name);
}

void markup_table(Markup *markup, const char *caption, const char *const head[], size_t columns)
{
	OPEN(markup, "table");
	if (caption != NULL)
		ELEMENT(markup, "caption", caption);
	OPEN(markup, "thead");
	OPEN(markup, "tr");
	for (size_t i = 0; i < columns; i++) {
		OPEN(markup, "th");
		ATTRIBUTE(markup, "scope", "col");
		markup_text(markup, head[i]);
		CLOSE(markup, "th");
	}
	CLOSE(markup, "tr");
	CLOSE(markup, "thead");
	OPEN(markup, "tbody");
}

void markup_table_end(Markup *markup)
{
	CLOSE(markup, "tbody");
	CLOSE(markup, "table");
}

void markup_page(Markup *markup, const char *title, const char *style, const char *more)
{
	SAY(markup->out, "<!DOCTYPE html>");
	OPEN(markup, "html");
	ATTRIBUTE(markup, "lang", "en-US");
	OPEN(markup, "head");
	OPEN(markup, "meta");
	ATTRIBUTE(markup, "charset", "utf-8");
	OPEN(markup, "meta");
	ATTRIBUTE(markup, "http-equiv", "Content-Security-Policy");
	ATTRIBUTE(markup, "content", "default-src 'none'; style-src 'unsafe-inline'; img-src data:");
	OPEN(markup, "meta");
	ATTRIBUTE(markup, "name", "viewport");
	ATTRIBUTE(markup, "content", "width=device-width, initial-scale=1");
	ELEMENT(markup, "title", title);
	OPEN(markup, "style");
	end_tag(markup);
	put_literal(markup, style);
	put_literal(markup, more); /* a literal of the program: nothing from a file can be in it */
	CLOSE(markup, "style");
	CLOSE(markup, "head");
	OPEN(markup, "body");
}

void markup_page_end(Markup *markup)
{
	CLOSE(markup, "body");
	CLOSE(markup, "html");
	assert(markup->depth == 0);
	SAY(markup->out, "\n");
}

/* SPDX-License-Identifier: MIT
 * What listings allow themselves: rows of listing_terms.csv, and columns of listings.csv that end in `.least` or `.most`.
 *
 * The attribute is found in its part's record and the value read in its notation, so that whoever compares needs no reader.
 */
#include "edition.h"
#include "rules.h"
#include "tests.h"

#include <string.h>

typedef struct {
	const Binding *b;
	const ListingTerm *row;
	BoundTerm *bound;
	uint32_t room;
	double *number;
	const char **word;
} TermRead;

static void complain_of(const TermRead *t, MessageId id, const Text *cell, About about)
{
	complain(t->b->loading->complaints, id, cell->given.place, about);
}

/* "panel.width": a kind of part, and a key of it. */
static bool bind_attribute(TermRead *t)
{
	const Text *attribute = &t->row->attribute;
	if (attribute->given.said != SAID_VALUE)
		return false;
	t->bound->field = attribute_find(attribute->text, &t->bound->kind);
	if (t->bound->field != NULL && t->bound->field->kind != IS_BY_ZONE)
		return true;
	complain_of(t, MESSAGE_TAB_42, attribute, (About){ .value = attribute->text });
	return false;
}

static bool add_number(TermRead *t, const char *text, size_t length)
{
	const Field *field = t->bound->field;
	double value = 0;
	bool read = field->kind == IS_SIZE && read_screw_size(text, length, t->b->loading->reference, &value);
	if (!read && read_quantity(text, length, field->unit, &value) != QUANTITY_READ)
		return false;
	t->number = arena_more(t->b->loading->arena, t->number, t->bound->count, &t->room, sizeof *t->number);
	t->number[t->bound->count++] = value;
	return true;
}

static bool add_word(TermRead *t, const char *text, size_t length)
{
	const Field *field = t->bound->field;
	if (field->kind == IS_WORD || field->kind == IS_YES) {
		const char *words = field->kind == IS_YES ? "yes|no" : field->words;
		int number = word_find(words, text, length);
		if (number < 0)
			return false;
		text = word_text(words, number, &length);
	}
	t->word = arena_more(t->b->loading->arena, t->word, t->bound->count, &t->room, sizeof *t->word);
	t->word[t->bound->count++] = arena_text(t->b->loading->arena, text, length);
	return true;
}

static bool is_measured(const Field *field)
{
	return field->kind == IS_NUMBER || field->kind == IS_SIZE;
}

static void add_value(TermRead *t, const char *text, size_t length)
{
	const Field *field = t->bound->field;
	bool added = is_measured(field) ? add_number(t, text, length) : add_word(t, text, length);
	if (!added)
		complain_of(t, MESSAGE_TAB_46, &t->row->value,
			    (About){
				    .key = field->key,
				    .value = arena_text(t->b->loading->arena, text, length),
				    .want = field->kind == IS_WORD ? words_listed(t->b->loading->arena, field->words)
								   : field->example,
			    });
}

/* The value as its relation takes it: two joined by "and" for between, several joined by ; for one of, else one. */
static void bind_value(TermRead *t)
{
	const char *text = t->row->value.text;
	const char *and = is_word(&t->row->relation, "between") ? strstr(text, " and ") : NULL;
	SplitPart part;
	if (and != NULL) {
		add_value(t, text, (size_t)(and-text));
		add_value(t, and+5, strlen(and+5));
		bool is_falling = t->bound->count == 2 && t->number != NULL && t->number[0] > t->number[1];
		if (is_falling)
			complain_of(t, MESSAGE_TAB_45, &t->row->value, (About){ .value = text });
	} else if (is_word(&t->row->relation, "between"))
		complain_of(t, MESSAGE_TAB_45, &t->row->value, (About){ .value = text });
	else if (is_word(&t->row->relation, "one of"))
		for (size_t at = 0; split_next(text, &at, &part);)
			add_value(t, part.text, part.length);
	else
		add_value(t, text, strlen(text));
}

/* Whether the attribute has an order for the relation: numbers have, words only on a scale, and those have no between. */
static bool is_ordered_as_asked(const TermRead *t)
{
	const Word *relation = &t->row->relation;
	const char *scale;
	if (is_measured(t->bound->field) ||
	    !(is_word(relation, "at least") || is_word(relation, "at most") || is_word(relation, "between")))
		return true;
	if (is_word(relation, "between") || t->row->value.given.said != SAID_VALUE)
		return false;
	return scale_rank(t->b->criteria, t->row->attribute.text, t->row->value.text, &scale) > 0;
}

static void bind_term(const Binding *b, const ListingTerm *row, BoundTerm *bound)
{
	TermRead t = { .b = b, .row = row, .bound = bound };
	*bound = (BoundTerm){ .row = row };
	if (!bind_attribute(&t) || row->relation.given.said != SAID_VALUE)
		return;
	bool takes_none = is_word(&row->relation, "optional") || is_word(&row->relation, "any");
	bool has_value = row->value.given.said == SAID_VALUE;
	About about = { .key = row->attribute.text, .value = row->relation.text, .want = bound->field->example };
	if (!is_ordered_as_asked(&t))
		complain_of(&t, MESSAGE_TAB_39, &row->attribute, about);
	else if (takes_none && has_value)
		complain_of(&t, MESSAGE_TAB_44, &row->value, about);
	else if (!takes_none && !has_value)
		complain_of(&t, MESSAGE_TAB_43, &row->value, about);
	else if (has_value)
		bind_value(&t);
	bound->number = t.number;
	bound->word = t.word;
}

/* A row of listing_terms.csv as a column `panel.width.least` would have it. */
static const ListingTerm *row_of_cell(const EditionRead *e, const TermCell *cell)
{
	const Listing *listing = row_at(&e->rows[TABLE_listings], cell->row);
	ListingTerm *row = TAKE(e->loading->arena, ListingTerm, 1);
	Given given = { .place = cell->place, .said = SAID_VALUE };
	row->given = given;
	row->listing = listing->listing;
	row->attribute = (Text){ { cell->place, cell->column->key, SAID_VALUE }, cell->column->key };
	row->relation.given = given;
	row->relation.text = cell->column->sort == COLUMN_LEAST ? "at least" : "at most";
	row->value = (Text){ { cell->place, cell->value, SAID_VALUE }, cell->value };
	return row;
}

void terms_bind(EditionRead *e, const Binding *base)
{
	Criteria *c = e->criteria;
	const Rows *listings = &e->rows[TABLE_listings];
	Binding b = *base;
	uint32_t count = c->listing_terms.count + listings->terms, at = 0;
	BoundTerm *term = TAKE(e->loading->arena, BoundTerm, count);
	b.source = c->listing_terms.source;
	for (uint32_t i = 0; i < c->listing_terms.count; i++)
		bind_term(&b, &c->listing_terms.row[i], &term[at++]);
	b.source = c->listings.source;
	for (uint32_t i = 0; i < listings->terms; i++)
		bind_term(&b, row_of_cell(e, &listings->term[i]), &term[at++]);
	c->term = term;
	c->terms_bound = count;
}

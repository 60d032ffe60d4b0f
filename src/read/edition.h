/* SPDX-License-Identifier: MIT
 * An edition while it is read: its tables as rows, and which of them are whole.
 */
#ifndef EDITION_H
#define EDITION_H

#include "folder.h"
#include "names.h"

/* The tables by number, those of the edition first. */
enum {
#define TABLE(member, R, file) TABLE_##member,
	EDITION_TABLES(TABLE) EDITION_TABLE_COUNT,
	CATALOGUE_BEFORE_FIRST = EDITION_TABLE_COUNT - 1,
	CATALOGUE_TABLES(TABLE) TABLE_COUNT
#undef TABLE
};

typedef struct {
	const Loading *loading;
	Criteria *criteria;
	Rows rows[TABLE_COUNT];
	bool items_whole; /* every catalogue file was read: an item that is in none is nowhere */
} EditionRead;

/* The file of a table. */
const char *table_file(int table);

/* Writes blanks of the attributes that tables name as the underscores of the keys they are. */
void attributes_spell(EditionRead *edition);

/* The field of an attribute, "panel.width": a kind of part and a key of it; NULL if there is none. */
const Field *attribute_find(const char *attribute, RecordKind *kind);

/* Items and listings by their names; complains of names that stand twice. */
void items_index(EditionRead *edition);

/* What refers to items and listings by name. */
void items_check(const EditionRead *edition);

/* Binds substitutions, required roles, papers due and the terms of listings. */
void lists_bind(EditionRead *edition, const Binding *base);
void terms_bind(EditionRead *edition, const Binding *base);

/* The lists of lists.csv by name. */
Lists lists_index(const EditionRead *edition);

/* Values that cannot stand beside each other within one table or across tables. */
void edition_check(const EditionRead *edition);

/* Rows of one table that say the same thing twice; `keys` are the fields that tell rows apart, with blanks between. */
void rows_check_twice(const Loading *loading, const Rows *rows, const char *keys);

/* Every basis and source is an id of sources.csv, or the phrase for common practice. */
void rows_check_basis(const Loading *loading, const Rows *rows);
void basis_check(const Loading *loading, const Source *source, const Text *basis);

#endif

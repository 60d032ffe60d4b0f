/* SPDX-License-Identifier: MIT
 * Sources by their short names on the sheet, and which of them its last list must explain.
 */
#include "calcs.h"

#include "hash.h"
#include "reference.h"

#include <string.h>

/* The next id of several joined by semicolons; NULL at the end. */
static const char *next_id(const char **basis, Arena *arena)
{
	*basis += strspn(*basis, "; ");
	size_t length = strcspn(*basis, ";");
	const char *id = length > 0 ? arena_text(arena, *basis, length) : NULL;
	*basis += length;
	return id;
}

const char *basis_short(const Sheet *sheet, const char *basis, Arena *arena)
{
	const char *text = NULL, *id;
	const Reference *reference = sheet->verdict->cases->reference;
	while (basis != NULL && (id = next_id(&basis, arena)) != NULL) {
		const SourceRow *row = reference != NULL ? source_row(reference, id) : NULL;
		const char *one = row != NULL ? arena_printf(arena, "%s (%s)", id, known_by_words((KnownBy)row->known_by.word)) : id;
		text = text == NULL ? one : arena_printf(arena, "%s; %s", text, one);
	}
	return text != NULL ? text : "not stated";
}

/* A basis that was met before names nothing new. */
static void name_all(bool *named, Hash *met, const Reference *reference, const char *basis)
{
	if (basis == NULL || hash_put(met, basis, strlen(basis), named) != NULL)
		return;
	Arena *arena = arena_make();
	for (const char *id; (id = next_id(&basis, arena)) != NULL;) {
		const SourceRow *row = source_row(reference, id);
		if (row != NULL)
			named[row - reference->sources.row] = true;
	}
	arena_free(arena);
}

const bool *sources_named(const Sheet *sheet, Arena *arena)
{
	const Reference *reference = sheet->verdict->cases->reference;
	if (reference == NULL)
		return NULL;
	bool *named = TAKE(arena, bool, reference->sources.count + 1);
	Hash *met = hash_make(arena, 64);
	for (uint32_t i = 0; i < sheet->lines; i++)
		name_all(named, met, reference, fact_spec(sheet->line[i].id)->source);
	for (uint32_t i = 0; i < sheet->constants; i++)
		name_all(named, met, reference, sheet->constant[i].use->source);
	return named;
}

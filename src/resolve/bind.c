/* SPDX-License-Identifier: MIT
 * Parts to the rows of the catalogue, by kind and item.
 *
 * An item that the catalogue does not have, such as `other`, describes itself: it is bound to nothing.
 */
#include "resolving.h"

#include <string.h>

/* In the order of part_words; a unit test compares the two. */
static const RecordKind part_kinds[] = { KIND_panel, KIND_support, KIND_layer, KIND_clip, KIND_fastener, KIND_underlayment,
	KIND_sealant, KIND_rivet, KIND_closure, KIND_penetration, KIND_accessory };
enum { PART_KINDS = sizeof part_kinds / sizeof *part_kinds };

RecordKind kind_of_word(const Word *word)
{
	return is_value(&word->given) && word->word < PART_KINDS ? part_kinds[word->word] : RECORD_KINDS;
}

Word part_word(RecordKind kind)
{
	Word word = { .given.said = SAID_VALUE, .text = record_of(kind)->name };
	word.given.typed = word.text;
	while (word.word < PART_KINDS - 1 && part_kinds[word.word] != kind)
		word.word++;
	return word;
}

/* Curbs and boots are one kind of record, so one look-up finds either. */
const void *bind_part(const Criteria *criteria, RecordKind kind, const void *row)
{
	const Text *item = &((const Panel *)row)->item; /* parts begin alike */
	if (!is_value(&item->given) || strcmp(item->text, "other") == 0)
		return NULL;
	return item_find(criteria, kind, item->text);
}

/* SPDX-License-Identifier: MIT
 * How well the basis of an item is known: the weakest of the sources it names.
 */
#include "judge.h"

#include <string.h>

static const char practice[] = "common practice";

/* One source id; what no table of sources has is no better than common practice. */
static KnownBy source_known_by(const Reference *reference, const char *id)
{
	const SourceRow *row = strncmp(id, practice, sizeof practice - 1) != 0 ? source_row(reference, id) : NULL;
	return row != NULL && is_value(&row->known_by.given) && row->known_by.word <= KNOWN_PRACTICE ? (KnownBy)row->known_by.word
												     : KNOWN_PRACTICE;
}

KnownBy basis_known_by(const Reference *reference, const char *basis)
{
	KnownBy weakest = KNOWN_READ;
	char id[96];
	for (const char *at = basis; at != NULL && *at != '\0';) {
		at += strspn(at, "; ");
		size_t length = strcspn(at, ";");
		size_t own = length;
		while (own > 0 && at[own - 1] == ' ')
			own--;
		if (own == 0)
			break;
		own = own < sizeof id ? own : sizeof id - 1;
		memcpy(id, at, own);
		id[own] = '\0';
		KnownBy known = source_known_by(reference, id);
		weakest = known > weakest ? known : weakest;
		at += length;
	}
	return weakest;
}

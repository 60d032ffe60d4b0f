/* SPDX-License-Identifier: MIT
 * The seal of a report: a sum over its own bytes, so that a report that was edited does not pass for the one that was printed. It
 * stops slips and idle hands; who wants to forge a report can seal it anew.
 */
#include "earlier.h"

#include <sha2.h>
#include <string.h>

const char report_seal_key[] = ",\n  \"seal\": \"";

/* The last place where the key stands. */
static size_t find_key(const char *text, size_t length)
{
	size_t key = sizeof report_seal_key - 1;
	for (size_t at = length; at >= key; at--)
		if (memcmp(text + at - key, report_seal_key, key) == 0)
			return at - key;
	return length;
}

const char *report_seal(const char *text, size_t *length, Arena *arena)
{
	char *hex = arena_take(arena, SHA256_DIGEST_STRING_LENGTH, 1);
	*length = find_key(text, *length);
	SHA256Data((const uint8_t *)text, *length, hex);
	return hex;
}

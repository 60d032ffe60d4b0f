/* SPDX-License-Identifier: MIT
 * "Unknown", "by others" and "does not apply" are daily answers, read as words of their own: plain, quoted, or as a map.
 */
#include "said.h"

#include <string.h>
#include <strings.h>

static bool is_word_of(const char *text, size_t length, const char *word)
{
	return strlen(word) == length && strncasecmp(text, word, length) == 0;
}

static bool is_unknown(const char *text, size_t length)
{
	static const char *const words[] = { "unknown", "not known", "tbd", "to be determined", "?" };
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (is_word_of(text, length, words[i]))
			return true;
	return false;
}

static const struct {
	const char *words;
	Said said;
} openings[] = {
	{ "by others", SAID_BY_OTHERS },
	{ "by_others", SAID_BY_OTHERS },
	{ "not applicable", SAID_NOT_APPLICABLE },
	{ "not_applicable", SAID_NOT_APPLICABLE },
	{ "n/a", SAID_NOT_APPLICABLE },
};

Said said_by_text(const char *text, size_t length, const char **rest, size_t *rest_length)
{
	if (length == 0 || strchr("uUnNtTbB?", *text) == NULL)
		return SAID_VALUE; /* none of them begins so: nearly every value */
	if (is_unknown(text, length))
		return SAID_UNKNOWN;
	for (size_t i = 0; i < sizeof openings / sizeof *openings; i++) {
		size_t n = strlen(openings[i].words);
		if (length < n || strncasecmp(text, openings[i].words, n) != 0 || (length > n && text[n] != ':'))
			continue;
		for (n += length > n; n < length && text[n] == ' ';)
			n++;
		*rest = text + n;
		*rest_length = length - n;
		return openings[i].said;
	}
	return SAID_VALUE;
}

Said said_by_map(const Node *map, const Node **rest)
{
	if (map->kind != NODE_MAP || map->count != 1)
		return SAID_VALUE;
	const Node *key = map->first;
	for (size_t i = 0; i < sizeof openings / sizeof *openings; i++)
		if (is_word_of(key->text, key->length, openings[i].words)) {
			*rest = key->first;
			return openings[i].said;
		}
	return SAID_VALUE;
}

/* SPDX-License-Identifier: MIT
 * Templates apart: names and what stands between them, and whether what stands between is calculator notation.
 */
#include "template.h"

#include <ctype.h>
#include <string.h>

bool template_next(const char **text, Snippet *piece)
{
	const char *at = *text;
	if (*at == '\0')
		return false;
	const char *end = *at == '{' ? strchr(at, '}') : NULL;
	if (end != NULL) {
		*piece = (Snippet){ at + 1, (size_t)(end - at) - 1, true };
		*text = end + 1;
		return true;
	}
	size_t length = 1 + strcspn(at + 1, "{");
	*piece = (Snippet){ at, length, false };
	*text = at + length;
	return true;
}

static bool is_function(const char *word, size_t length)
{
	static const char *const functions[] = { "min", "max", "exp", "log", "log10", "atan", "sqrt" };
	for (size_t i = 0; i < sizeof functions / sizeof *functions; i++)
		if (strlen(functions[i]) == length && memcmp(functions[i], word, length) == 0)
			return true;
	return false;
}

/* Words are functions; a number may have a point and an exponent. */
static bool is_notation(const char *at, size_t length)
{
	for (size_t i = 0; i < length;) {
		size_t word = 0;
		if (isalpha((unsigned char)at[i])) {
			while (i + word < length && (isalnum((unsigned char)at[i + word]) || at[i + word] == '_'))
				word++;
			if (!is_function(at + i, word))
				return false;
			i += word;
			continue;
		}
		if (isdigit((unsigned char)at[i])) {
			while (i + word < length && (isdigit((unsigned char)at[i + word]) || at[i + word] == '.'))
				word++;
			bool has_exponent = i + word + 1 < length && at[i + word] == 'e';
			i += has_exponent ? word + 2 : word;
			continue;
		}
		if (strchr("+-*/^(), ", at[i]) == NULL)
			return false;
		i++;
	}
	return true;
}

bool is_calculator(const char *text)
{
	Snippet snippet;
	while (template_next(&text, &snippet))
		if (!snippet.is_name && !is_notation(snippet.at, snippet.length))
			return false;
	return true;
}

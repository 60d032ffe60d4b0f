/* SPDX-License-Identifier: MIT
 * The small pieces of SARIF: levels, messages, addresses of files, places with their ends and their text.
 */
#include "sarif.h"

#include "builtin.h"
#include "parts.h"

#include <string.h>

const char *sarif_level(Action action)
{
	return action <= ACTION_NOT_REVIEWED ? "error" : action == ACTION_ADVISORY ? "note" : "warning";
}

json_t *sarif_message(const char *text, Arena *arena)
{
	const char *whole = "";
	for (const char *link; (link = strstr(text, "](")) != NULL; text = link + 1)
		whole = arena_printf(arena, "%s%.*s] ", whole, (int)(link - text), text);
	size_t length = strlen(text);
	bool ended = length > 0 && strchr(".!?", text[length - 1]) != NULL;
	json_t *message = json_made(json_object());
	json_put(message, "text", json_words(arena_printf(arena, "%s%s%s", whole, text, ended ? "" : "."), arena));
	return message;
}

/* ---- files ---- */

static bool is_unreserved(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || strchr("-._~/", c) != NULL;
}

static const char *escaped_path(const char *path, Arena *arena)
{
	static const char digit[] = "0123456789ABCDEF";
	char *escaped = arena_take(arena, strlen(path) * 3 + 1, 1), *end = escaped;
	for (; *path != '\0'; path++) {
		unsigned char byte = (unsigned char)*path;
		if (is_unreserved(*path)) {
			*end++ = *path;
			continue;
		}
		*end++ = '%';
		*end++ = digit[byte >> 4];
		*end++ = digit[byte & 15];
	}
	return escaped;
}

json_t *sarif_artifact(const char *path, Arena *arena)
{
	json_t *artifact = json_made(json_object());
	while (strncmp(path, "./", 2) == 0)
		path += 2;
	const char *escaped = escaped_path(path, arena);
	if (*path == '/') {
		json_put(artifact, "uri", json_words(arena_printf(arena, "file://%s", escaped), arena));
		return artifact;
	}
	json_put(artifact, "uri", json_words(escaped, arena));
	json_put(artifact, "uriBaseId", json_words(builtin_find(path) != NULL ? "BUILTIN" : "%SRCROOT%", arena));
	return artifact;
}

/* ---- places ---- */

/* The text that a place covers; NULL if it covers none. */
static const char *covered_text(const SarifPlace *at, Arena *arena)
{
	if (at->source == NULL || at->place.line == 0 || at->place.length == 0)
		return NULL;
	size_t begin = source_offset(at->source, at->place.line, at->place.column);
	size_t end = source_offset(at->source, at->place.line, at->place.column + at->place.length);
	return end > begin ? arena_text(arena, at->source->bytes + begin, end - begin) : NULL;
}

/* The end lies one behind the last character. A place in no line is the file's first character. */
static json_t *region(const SarifPlace *at, Arena *arena)
{
	json_t *made = json_made(json_object());
	const char *text = covered_text(at, arena);
	json_put(made, "startLine", json_integer(place_line(&at->place)));
	json_put(made, "startColumn", json_integer(place_column(&at->place)));
	json_put(made, "endLine", json_integer(place_line(&at->place)));
	json_put(made, "endColumn", json_integer((json_int_t)place_column(&at->place) + at->place.length));
	if (text == NULL)
		return made;
	json_t *snippet = json_made(json_object());
	json_put(snippet, "text", json_words(text, arena));
	json_put(made, "snippet", snippet);
	return made;
}

json_t *sarif_location(const SarifPlace *at, Arena *arena)
{
	json_t *physical = json_made(json_object()), *location = json_made(json_object());
	json_put(physical, "artifactLocation", sarif_artifact(at->file, arena));
	json_put(physical, "region", region(at, arena));
	json_put(location, "physicalLocation", physical);
	return location;
}

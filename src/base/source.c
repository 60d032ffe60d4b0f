/* SPDX-License-Identifier: MIT
 * Source: where the lines of a file start, and the way between places and bytes. Columns are code points: every byte that does
 * not continue a character counts one.
 */
#include "source.h"

#include <sha2.h>
#include <string.h>

static const char mark[] = "\xef\xbb\xbf";
enum { MARK_LENGTH = sizeof mark - 1 };

static void add_line(Arena *arena, Source *source, uint32_t *room, uint32_t **starts, size_t start)
{
	*starts = arena_more(arena, *starts, source->lines, room, sizeof **starts);
	(*starts)[source->lines++] = (uint32_t)start;
}

/* Lone CR is rare: without any CR the search for LF runs at the speed of memchr. */
static const char *line_end(const char *from, size_t length, bool has_cr)
{
	if (!has_cr)
		return memchr(from, '\n', length);
	for (size_t i = 0; i < length; i++)
		if (from[i] == '\n' || from[i] == '\r')
			return from + i;
	return NULL;
}

Source *source_make(Arena *arena, const char *name, const char *bytes, size_t length, uint16_t id)
{
	Source *source = TAKE(arena, Source, 1);
	source->has_mark = length >= MARK_LENGTH && memcmp(bytes, mark, MARK_LENGTH) == 0;
	if (source->has_mark) {
		bytes += MARK_LENGTH;
		length -= MARK_LENGTH;
	}
	source->name = name;
	source->bytes = bytes;
	source->length = length;
	source->id = id;
	uint32_t room = (uint32_t)(length / 16) + 8;
	uint32_t *starts = TAKE(arena, uint32_t, room);
	bool has_cr = length > 0 && memchr(bytes, '\r', length) != NULL;
	for (size_t at = 0; at < length;) {
		add_line(arena, source, &room, &starts, at);
		const char *end = line_end(bytes + at, length - at, has_cr);
		if (end == NULL)
			break;
		at = (size_t)(end - bytes) + 1;
		at += *end == '\r' && at < length && bytes[at] == '\n';
	}
	source->line_start = starts;
	return source;
}

static size_t line_stop(const Source *source, uint32_t line)
{
	return line < source->lines ? source->line_start[line] : source->length;
}

const char *source_line(const Source *source, uint32_t line, size_t *length)
{
	if (line < 1 || line > source->lines) {
		*length = 0;
		return "";
	}
	size_t start = source->line_start[line - 1], stop = line_stop(source, line);
	if (stop > start && source->bytes[stop - 1] == '\n')
		stop--;
	if (stop > start && source->bytes[stop - 1] == '\r')
		stop--;
	*length = stop - start;
	return source->bytes + start;
}

static bool continues(char byte)
{
	return ((unsigned char)byte & 0xc0) == 0x80;
}

size_t source_offset(const Source *source, uint32_t line, uint32_t column)
{
	if (line < 1)
		return 0;
	if (line > source->lines)
		return source->length;
	size_t at = source->line_start[line - 1], stop = line_stop(source, line);
	for (uint32_t i = 1; i < column && at < stop; i++)
		for (at++; at < stop && continues(source->bytes[at]);)
			at++;
	return at;
}

/* The number of lines that start at or before `offset`. */
static uint32_t lines_before(const Source *source, size_t offset)
{
	uint32_t low = 0, high = source->lines;
	while (low < high) {
		uint32_t middle = low + (high - low) / 2;
		if (source->line_start[middle] <= offset)
			low = middle + 1;
		else
			high = middle;
	}
	return low;
}

Place source_place(const Source *source, size_t offset, uint32_t length)
{
	Place place = { .column = 1, .length = length, .source = source->id };
	if (offset > source->length)
		offset = source->length;
	place.line = lines_before(source, offset);
	bool ended = offset == source->length && offset > 0 && strchr("\r\n", source->bytes[offset - 1]) != NULL;
	if (place.line == 0 || ended) {
		place.line++;
		return place;
	}
	for (size_t i = source->line_start[place.line - 1]; i < offset; i++)
		place.column += i + 1 == source->length || !continues(source->bytes[i + 1]);
	return place;
}

const char *source_hash(const Source *source, Arena *arena)
{
	char *hex = arena_take(arena, SHA256_DIGEST_STRING_LENGTH, 1);
	size_t before = source->has_mark ? MARK_LENGTH : 0;
	SHA256Data((const uint8_t *)source->bytes - before, source->length + before, hex);
	return hex;
}

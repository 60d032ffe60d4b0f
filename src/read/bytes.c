/* SPDX-License-Identifier: MIT
 * The bytes of a file before YAML sees them: UTF-8, control characters, line breaks that editors do not count.
 *
 * libyaml tells of such bytes by their offset only, and reads ahead; so they are looked for first and the file is read up to the
 * line they stand in.
 */
#include "yaml_parts.h"

#include <stdio.h>
#include <string.h>
#include <utf8proc.h>

/* Eight bytes at once: false if one is below a blank, or beyond ASCII, or DEL. */
static bool is_plain(const char *bytes)
{
	uint64_t w;
	memcpy(&w, bytes, sizeof w);
	uint64_t ones = UINT64_C(0x0101010101010101), high = ones * 0x80;
	uint64_t below = (w - ones * 0x20) & ~w, del = w ^ (ones * 0x7f);
	return ((w | below | ((del - ones) & ~del)) & high) == 0;
}

static bool is_break_of_another_kind(int32_t c)
{
	return c == 0x85 || c == 0x2028 || c == 0x2029;
}

/* What libyaml lets through. */
static bool is_allowed(int32_t c)
{
	if (c < 0xa0)
		return c == '\t' || c == '\n' || c == '\r' || (c >= 0x20 && c < 0x7f);
	return c != 0xfeff && c != 0xfffe && c != 0xffff;
}

static const char *code_point(Arena *arena, int32_t c)
{
	return arena_printf(arena, "U+%04X", (unsigned)c);
}

static bool is_utf16(const Source *source)
{
	const unsigned char *b = (const unsigned char *)source->bytes;
	return source->length >= 2 && ((b[0] == 0xff && b[1] == 0xfe) || (b[0] == 0xfe && b[1] == 0xff) || (b[0] != 0 && b[1] == 0) ||
		(b[0] == 0 && b[1] != 0));
}

static void complain_of(const Source *source, size_t offset, int32_t c, Complaints *complaints)
{
	Arena *arena = complaints->arena;
	Place place = source_place(source, offset, 1);
	if (is_utf16(source))
		complain(complaints, MESSAGE_YML_04, place, (About){ 0 });
	else if (c < 0)
		complain(complaints, MESSAGE_YML_01, place,
			(About){ .value = arena_printf(arena, "0x%02X", (unsigned)(unsigned char)source->bytes[offset]) });
	else if (is_break_of_another_kind(c))
		complain(complaints, MESSAGE_YML_03, place, (About){ .value = code_point(arena, c) });
	else
		complain(complaints, MESSAGE_YML_02, place, (About){ .value = code_point(arena, c) });
	complaints->broken = true;
}

size_t find_bad_bytes(const Source *source, Complaints *complaints)
{
	const char *bytes = source->bytes;
	for (size_t i = 0; i < source->length;) {
		if (i + 8 <= source->length && is_plain(bytes + i)) {
			i += 8;
			continue;
		}
		if (is_allowed((unsigned char)bytes[i]) && (unsigned char)bytes[i] < 0x7f) {
			i++;
			continue;
		}
		int32_t c = -1;
		utf8proc_ssize_t n = utf8proc_iterate((const utf8proc_uint8_t *)bytes + i, (utf8proc_ssize_t)(source->length - i), &c);
		if (n < 1 || is_break_of_another_kind(c) || !is_allowed(c)) {
			complain_of(source, i, n < 1 ? -1 : c, complaints);
			return i;
		}
		i += (size_t)n;
	}
	return source->length;
}

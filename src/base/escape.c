/* SPDX-License-Identifier: MIT
 * Escapes for what could steer a terminal, reverse a line or hide: controls, bidirectional marks, format characters, line and
 * paragraph separators, private use, surrogates, noncharacters, and bytes that are no UTF-8.
 */
#include "escape.h"

#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <utf8proc.h>

/* Noncharacters are refused by XML and mean nothing to a reader. */
static bool is_noncharacter(utf8proc_int32_t code)
{
	return (code & 0xfffe) == 0xfffe || (code >= 0xfdd0 && code <= 0xfdef);
}

static bool is_hidden(utf8proc_int32_t code)
{
	switch (utf8proc_category(code)) {
	case UTF8PROC_CATEGORY_CC:
	case UTF8PROC_CATEGORY_CF:
	case UTF8PROC_CATEGORY_CS:
	case UTF8PROC_CATEGORY_CO:
	case UTF8PROC_CATEGORY_ZL:
	case UTF8PROC_CATEGORY_ZP:
		return true;
	default:
		return is_noncharacter(code);
	}
}

/* The letter of the escape of a byte that has one, or 0. */
static char letter_of(unsigned char byte)
{
	return byte == '\n' ? 'n' : byte == '\r' ? 'r' : byte == '\t' ? 't' : '\0';
}

static Shown escaped(size_t bytes, unsigned code, bool is_byte)
{
	Shown shown = { .bytes = bytes };
	if (code < 0x20 && letter_of((unsigned char)code) != '\0')
		shown.width = snprintf(shown.escape, sizeof shown.escape, "\\%c", letter_of((unsigned char)code));
	else
		shown.width = snprintf(shown.escape, sizeof shown.escape, is_byte ? "\\x%02x" : "\\u{%x}", code);
	return shown;
}

Shown shown_at(const char *text, size_t length)
{
	unsigned char byte = (unsigned char)*text;
	if (is_plain(byte))
		return (Shown){ .bytes = 1, .width = 1 };
	if (byte < 0x80)
		return escaped(1, byte, true);
	utf8proc_int32_t code;
	utf8proc_ssize_t bytes = utf8proc_iterate((const utf8proc_uint8_t *)text, length < 4 ? (utf8proc_ssize_t)length : 4, &code);
	if (bytes <= 0)
		return escaped(1, byte, true);
	if (is_hidden(code))
		return escaped((size_t)bytes, (unsigned)code, code < 0x100);
	return (Shown){ .bytes = (size_t)bytes, .width = utf8proc_charwidth(code) };
}

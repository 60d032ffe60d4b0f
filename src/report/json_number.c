/* SPDX-License-Identifier: MIT
 * The library prints 58.4 as 58.399999999999999. Its dump callback gets every token as a chunk of its own (a lone quote begins or
 * ends a string), so a chunk outside strings that is a real is printed anew, in the shortest form that reads back.
 */
#include "json_number.h"

#include "fail.h"
#include "number.h"

#include <string.h>

typedef struct {
	Out *out;
	Arena *arena;
	bool in_string;
} Dump;

static bool is_real(const char *chunk, size_t size)
{
	if (size == 0 || size >= 64 || (chunk[0] != '-' && (chunk[0] < '0' || chunk[0] > '9')))
		return false;
	return memchr(chunk, '.', size) != NULL || memchr(chunk, 'e', size) != NULL || memchr(chunk, 'E', size) != NULL;
}

static void put_real(const Dump *dump, const char *chunk, size_t size)
{
	double value;
	if (!number_read(chunk, size, &value)) {
		out_literal(dump->out, chunk, size);
		return;
	}
	const char *shortest = number_shortest(dump->arena, value);
	out_literal(dump->out, shortest, strlen(shortest));
	if (strpbrk(shortest, ".e") == NULL)
		SAY(dump->out, ".0");
}

/* The library leaves the delete character as it is; a terminal does not. */
static void put_string(const Dump *dump, const char *chunk, size_t size)
{
	while (size > 0) {
		const char *found = memchr(chunk, 0x7f, size);
		size_t plain = found != NULL ? (size_t)(found - chunk) : size;
		out_literal(dump->out, chunk, plain);
		if (found == NULL)
			return;
		SAY(dump->out, "\\u007F");
		chunk += plain + 1;
		size -= plain + 1;
	}
}

static int take_chunk(const char *chunk, size_t size, void *user)
{
	Dump *dump = user;
	if (size == 1 && *chunk == '"')
		dump->in_string = !dump->in_string;
	if (!dump->in_string && is_real(chunk, size))
		put_real(dump, chunk, size);
	else
		put_string(dump, chunk, size);
	return 0;
}

void put_json(Out *out, json_t *tree, size_t flags, Arena *arena)
{
	Dump dump = { out, arena, false };
	if (tree == NULL || json_dump_callback(tree, take_chunk, &dump, flags | JSON_ENSURE_ASCII) != 0)
		fail("out of memory", NULL);
	json_decref(tree);
}

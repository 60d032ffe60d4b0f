/* SPDX-License-Identifier: MIT
 * Built-in files: the assembler copies their bytes in, each with a NUL behind it. Paths start at the top folder, where make runs.
 */
#include "builtin.h"

#include <string.h>

#define BUILTIN(symbol, name, path) \
	__asm__(".section .rodata\n.balign 16\nbuiltin_" #symbol ":\n.incbin \"" path "\"\n" \
		"builtin_" #symbol "_end:\n.byte 0\n.previous\n"); \
	extern const char builtin_##symbol[], builtin_##symbol##_end[];
#include "builtin.def"

static const Builtin builtins[] = {
#define BUILTIN(symbol, name, path) { name, builtin_##symbol, builtin_##symbol##_end },
#include "builtin.def"
};

enum { BUILTINS = sizeof builtins / sizeof *builtins };

const Builtin *builtin_at(size_t i)
{
	return i < BUILTINS ? &builtins[i] : NULL;
}

const Builtin *builtin_find(const char *name)
{
	for (size_t i = 0; i < BUILTINS; i++)
		if (strcmp(builtins[i].name, name) == 0)
			return &builtins[i];
	return NULL;
}

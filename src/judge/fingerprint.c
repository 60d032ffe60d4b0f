/* SPDX-License-Identifier: MIT
 * Fingerprint of a place: 64 bits of SHA-256 over the code, the path by names and the field. No value, no line and no place in a
 * list goes in, so that it stays when those change. Taken only when a format or a round asks for it.
 */
#include "judge.h"
#include "pipeline.h"

#include <sha2.h>
#include <string.h>

static void add_text(SHA2_CTX *context, const char *text)
{
	SHA256Update(context, (const uint8_t *)text, strlen(text) + 1);
}

uint64_t fingerprint_of(const char *code, const char *path, const char *field)
{
	uint8_t digest[SHA256_DIGEST_LENGTH];
	SHA2_CTX context;
	uint64_t print = 0;
	SHA256Init(&context);
	add_text(&context, code);
	add_text(&context, path);
	add_text(&context, field != NULL ? field : "");
	SHA256Final(digest, &context);
	for (int i = 0; i < 8; i++)
		print = print << 8 | digest[i];
	return print;
}

/* A place that only an earlier round knows keeps the print it had. */
void take_fingerprints(Verdict *verdict, Arena *arena)
{
	for (uint32_t i = 0; i < verdict->items; i++)
		for (uint32_t j = 0; j < verdict->item[i].spots; j++) {
			Spot *spot = &verdict->item[i].spot[j];
			if (spot->path == NULL)
				spot->path = spot->where != NULL ? case_path(spot->where, arena) : "";
			if (spot->fingerprint == 0)
				spot->fingerprint = fingerprint_of(verdict->item[i].code, spot->path, spot->field);
		}
}

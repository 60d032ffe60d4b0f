/* SPDX-License-Identifier: MIT
 * Hash table with open addressing, at most half full. Keys come from strangers' files, so the hash is keyed (SipHash-1-3) with
 * the random bytes that the system gives every process: nobody can prepare names that fall together.
 */
#include "hash.h"

#include <string.h>
#include <sys/auxv.h>

typedef struct {
	const char *key; /* NULL: empty */
	size_t length;
	uint64_t code;
	void *value;
} Slot;

struct Hash {
	Arena *arena;
	Slot *slot;
	size_t slots, count; /* slots: a power of two */
	uint64_t key[2];
};

static inline uint64_t turn(uint64_t x, int by)
{
	return x << by | x >> (64 - by);
}

static inline void mix(uint64_t v[4])
{
	v[0] += v[1];
	v[1] = turn(v[1], 13) ^ v[0];
	v[0] = turn(v[0], 32);
	v[2] += v[3];
	v[3] = turn(v[3], 16) ^ v[2];
	v[0] += v[3];
	v[3] = turn(v[3], 21) ^ v[0];
	v[2] += v[1];
	v[1] = turn(v[1], 17) ^ v[2];
	v[2] = turn(v[2], 32);
}

static void absorb(uint64_t v[4], uint64_t word)
{
	v[3] ^= word;
	mix(v);
	v[0] ^= word;
}

/* SipHash with one round a word and three at the end. */
static uint64_t code_of(const Hash *hash, const char *text, size_t length)
{
	uint64_t v[4] = { hash->key[0] ^ 0x736f6d6570736575, hash->key[1] ^ 0x646f72616e646f6d, hash->key[0] ^ 0x6c7967656e657261,
		hash->key[1] ^ 0x7465646279746573 };
	uint64_t word, last = (uint64_t)length << 56;
	size_t left = length;
	for (; left >= sizeof word; left -= sizeof word, text += sizeof word) {
		memcpy(&word, text, sizeof word);
		absorb(v, word);
	}
	for (size_t i = 0; i < left; i++)
		last |= (uint64_t)(unsigned char)text[i] << 8 * i;
	absorb(v, last);
	v[2] ^= 0xff;
	mix(v);
	mix(v);
	mix(v);
	return v[0] ^ v[1] ^ v[2] ^ v[3];
}

Hash *hash_make(Arena *arena, size_t expected)
{
	Hash *hash = TAKE(arena, Hash, 1);
	hash->arena = arena;
	hash->slots = 16;
	while (hash->slots / 2 < expected)
		hash->slots *= 2;
	hash->slot = TAKE(arena, Slot, hash->slots);
	const void *random = (const void *)getauxval(AT_RANDOM);
	if (random != NULL)
		memcpy(hash->key, random, sizeof hash->key);
	return hash;
}

/* The slot that holds a key, or the empty one where it belongs. */
static Slot *find_slot(const Hash *hash, const char *key, size_t length, uint64_t code)
{
	for (size_t i = code & (hash->slots - 1);; i = (i + 1) & (hash->slots - 1)) {
		Slot *slot = &hash->slot[i];
		if (slot->key == NULL)
			return slot;
		if (slot->code == code && slot->length == length && memcmp(slot->key, key, length) == 0)
			return slot;
	}
}

void *hash_get(const Hash *hash, const char *key, size_t length)
{
	return find_slot(hash, key, length, code_of(hash, key, length))->value;
}

static void grow(Hash *hash)
{
	Slot *old = hash->slot;
	size_t slots = hash->slots;
	hash->slots *= 2;
	hash->slot = TAKE(hash->arena, Slot, hash->slots);
	for (size_t i = 0; i < slots; i++)
		if (old[i].key != NULL)
			*find_slot(hash, old[i].key, old[i].length, old[i].code) = old[i];
}

void *hash_put(Hash *hash, const char *key, size_t length, void *value)
{
	if ((hash->count + 1) * 2 > hash->slots)
		grow(hash);
	uint64_t code = code_of(hash, key, length);
	Slot *slot = find_slot(hash, key, length, code);
	void *before = slot->value;
	if (slot->key == NULL)
		hash->count++;
	*slot = (Slot){ key, length, code, value };
	return before;
}

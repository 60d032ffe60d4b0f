/* SPDX-License-Identifier: MIT
 * Comparisons by attribute. Most rules over comparisons speak of one attribute, and there are many of both: without this each
 * rule would be tried on each comparison.
 */
#include "judge.h"

#include <ctype.h>
#include <string.h>

enum { LONGEST_WORD = 64 };

/* Small letters, without blanks around; 0 for what is too long to be an attribute. */
static size_t key_of(const char *text, char *key)
{
	text += strspn(text, " ");
	size_t length = strlen(text);
	while (length > 0 && text[length - 1] == ' ')
		length--;
	if (length > LONGEST_WORD)
		return 0;
	for (size_t i = 0; i < length; i++)
		key[i] = (char)tolower((unsigned char)text[i]);
	return length;
}

void fill_buckets(Judging *judging)
{
	const Cases *cases = judging->cases;
	judging->attributes = hash_make(judging->arena, 64);
	for (uint32_t i = 0; i < cases->of[KIND_comparison].count; i++) {
		Case *at = cases->of[KIND_comparison].at[i];
		const Text *attribute = &((const Comparison *)at->row)->attribute;
		char key[LONGEST_WORD];
		size_t length = is_value(&attribute->given) ? key_of(attribute->text, key) : 0;
		if (length == 0) {
			judging->attributes = NULL; /* a comparison of no attribute: every rule looks at all */
			return;
		}
		Bucket *bucket = hash_get(judging->attributes, key, length);
		if (bucket == NULL) {
			bucket = TAKE(judging->arena, Bucket, 1);
			hash_put(judging->attributes, arena_text(judging->arena, key, length), length, bucket);
		}
		bucket->at = arena_more(judging->arena, bucket->at, bucket->count, &bucket->room, sizeof at);
		bucket->at[bucket->count++] = at;
	}
}

/* The attribute a rule asks for by a condition of its own; NULL if it asks for none. */
static const char *attribute_of(const Rule *rule)
{
	for (uint32_t i = 0; i < rule->conditions; i++) {
		const Test *test = &rule->when[i];
		bool is_own = test->left.from == FROM_FIELD && test->left.at == KIND_comparison;
		if (is_own && test->relation == RELATION_IS && test->right.from == FROM_CONSTANT && test->right.word != NULL &&
		    test->left.offset == offsetof(Comparison, attribute))
			return test->right.word;
	}
	return NULL;
}

Bucket bucket_of(const Judging *judging, const Rule *rule)
{
	const Cases *cases = judging->cases;
	Bucket all = { cases->of[KIND_comparison].at, cases->of[KIND_comparison].count, 0 };
	const char *attribute = judging->attributes != NULL ? attribute_of(rule) : NULL;
	char key[LONGEST_WORD];
	size_t length = attribute != NULL ? key_of(attribute, key) : 0;
	if (length == 0)
		return all;
	const Bucket *bucket = hash_get(judging->attributes, key, length);
	return bucket != NULL ? *bucket : (Bucket){ NULL, 0, 0 };
}

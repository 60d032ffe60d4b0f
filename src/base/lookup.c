/* SPDX-License-Identifier: MIT
 * Looking things up in the reference tables and in an edition.
 */
#include "criteria.h"
#include "hash.h"
#include "number.h"
#include "reference.h"

#include <sha2.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

/* Half of the last digit of a thickness in inches as sheets are marked (four digits behind the point). */
static const double half_digit_in = 0.00005 + 1e-9;

static bool is_text(const Text *text, const char *wanted)
{
	return text->text != NULL && text->text[0] == wanted[0] && strcmp(text->text, wanted) == 0;
}

double screw_diameter(const Reference *reference, const char *size)
{
	for (uint32_t i = 0; i < reference->screws.count; i++)
		if (is_text(&reference->screws.row[i].size, size))
			return reference->screws.row[i].diameter_in.value;
	return 0;
}

const char *screw_size(const Reference *reference, double diameter_in)
{
	for (uint32_t i = 0; i < reference->screws.count; i++)
		if (number_same(reference->screws.row[i].diameter_in.value, diameter_in))
			return reference->screws.row[i].size.text;
	return NULL;
}

double gauge_thickness(const Reference *reference, const char *use, double gauge)
{
	for (uint32_t i = 0; i < reference->gauges.count; i++) {
		const Gauge *row = &reference->gauges.row[i];
		if (is_text(&row->use, use) && number_same(row->gauge_one.value, gauge))
			return row->thickness_in.value;
	}
	return 0;
}

static bool is_sold_as(const TradeSize *row, double thickness_in)
{
	double apart = row->sold_as_in.value - thickness_in;
	return apart <= half_digit_in && apart >= -half_digit_in;
}

/* Rows of one size stand side by side; a thickness may be sold as two sizes. */
bool is_one_trade_size(const Reference *reference, const char *family, double a_in, double b_in)
{
	const TradeSize *row = reference->trade_sizes.row;
	uint32_t count = reference->trade_sizes.count;
	for (uint32_t i = 0; i < count; i++) {
		if (!is_text(&row[i].family, family) || !is_sold_as(&row[i], a_in))
			continue;
		for (uint32_t j = 0; j < count; j++)
			if (is_text(&row[j].family, family) && is_text(&row[j].size, row[i].size.text) && is_sold_as(&row[j], b_in))
				return true;
	}
	return false;
}

const WindConstant *wind_constant(const Reference *reference, const char *standard, const char *name)
{
	for (uint32_t i = 0; i < reference->wind_constants.count; i++) {
		const WindConstant *row = &reference->wind_constants.row[i];
		if (strcasecmp(row->standard.text, standard) == 0 && is_text(&row->name, name))
			return row;
	}
	return NULL;
}

const SourceRow *source_row(const Reference *reference, const char *id)
{
	for (uint32_t i = 0; i < reference->sources.count; i++)
		if (is_text(&reference->sources.row[i].id, id))
			return &reference->sources.row[i];
	return NULL;
}

/* ---- editions ---- */

const void *item_find(const Criteria *criteria, RecordKind kind, const char *item)
{
	char key[512];
	const char *name = record_of(kind)->name;
	size_t first = strlen(name) + 1, second = strlen(item);
	if (second > sizeof key - first) /* no catalogue has names of this length */
		return NULL;
	memcpy(key, name, first);
	memcpy(key + first, item, second);
	return hash_get(criteria->items, key, first + second);
}

LifeSpan life_span(const Criteria *criteria, const char *item)
{
	if (criteria->lives_by_item == NULL)
		return (LifeSpan){ 0, criteria->lives.count };
	const LifeSpan *span = hash_get(criteria->lives_by_item, item, strlen(item));
	return span != NULL ? *span : (LifeSpan){ 0, 0 };
}

const Listing *listing_find(const Criteria *criteria, const char *name)
{
	return hash_get(criteria->listing_by_name, name, strlen(name));
}

const KindRow *kind_find(const Criteria *criteria, RecordKind kind)
{
	const char *name = record_of(kind)->name;
	for (uint32_t i = 0; i < criteria->kinds.count; i++) {
		const Word *word = &criteria->kinds.row[i].kind;
		if (is_value(&word->given) && word->text[0] == name[0] && strcmp(word->text, name) == 0)
			return &criteria->kinds.row[i];
	}
	return NULL;
}

bool list_has(const Criteria *criteria, const char *list, const char *entry)
{
	for (uint32_t i = 0; i < criteria->lists.count; i++) {
		const NamedWord *row = &criteria->lists.row[i];
		if (is_text(&row->list, list) && row->entry.text != NULL && strcasecmp(row->entry.text, entry) == 0)
			return true;
	}
	return false;
}

int scale_rank(const Criteria *criteria, const char *attribute, const char *word, const char **scale)
{
	for (uint32_t i = 0; i < criteria->scales.count; i++) {
		const ScaleWord *row = &criteria->scales.row[i];
		if (is_text(&row->attribute, attribute) && row->word.text != NULL && strcasecmp(row->word.text, word) == 0) {
			*scale = row->scale.text;
			return (int)row->rank_one.value;
		}
	}
	*scale = NULL;
	return 0;
}

/* The name without its folder: the same files give the same hash wherever they lie. */
static const char *own_name(const Source *source)
{
	const char *slash = strrchr(source->name, '/');
	return slash != NULL ? slash + 1 : source->name;
}

const char *criteria_hash(const Criteria *criteria, Arena *arena)
{
	SHA2_CTX sum;
	SHA256Init(&sum);
	for (uint32_t i = 0; i < criteria->sources; i++) {
		const Source *source = criteria->source[i];
		char head[512]; /* a name and a length with a NUL behind each keep one file's bytes from being another's */
		int length = snprintf(head, sizeof head, "%.400s%c%zu", own_name(source), '\0', source->length);
		SHA256Update(&sum, (const uint8_t *)head, (size_t)length + 1);
		SHA256Update(&sum, (const uint8_t *)source->bytes, source->length);
	}
	char *hex = arena_take(arena, SHA256_DIGEST_STRING_LENGTH, 1);
	SHA256End(&sum, hex);
	return hex;
}

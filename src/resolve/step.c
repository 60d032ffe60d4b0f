/* SPDX-License-Identifier: MIT
 * Steps between two values: numbers by tolerance and trade size, words by the scales of the edition, all else by being equal.
 *
 * A step is the same, or up one way and down the other. Two words on different scales are neither: no order joins two families
 * of coatings. What one side does not say is unknown, except that `any` of a listing is met by everything.
 */
#include "step.h"
#include "number.h"

#include <math.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

static const char *const steps[] = { "same", "up", "down", "other", "unknown" };

Word step_word(Step step)
{
	return (Word){ { .said = SAID_VALUE, .typed = steps[step] }, steps[step], (uint32_t)step };
}

static Step step_of_order(double here, double there)
{
	return here > there ? STEP_UP : here < there ? STEP_DOWN : STEP_SAME;
}

/* ---- trade sizes ---- */

static const Word *word_at(const Attribute *attribute, const char *key, const void *row)
{
	const Field *field = field_find(record_of(attribute->kind), key, strlen(key));
	if (field == NULL || field->kind != IS_WORD || !is_value(given_in(field, row)))
		return NULL;
	return (const Word *)(const void *)given_in(field, row);
}

static const char *family_of_support(const Word *kind)
{
	if (strcmp(kind->text, "steel deck") == 0)
		return "deck";
	if (strcmp(kind->text, "plywood") == 0 || strcmp(kind->text, "OSB") == 0 || strcmp(kind->text, "wood") == 0)
		return "wood panel";
	bool is_steel = strcmp(kind->text, "purlin") == 0 || strcmp(kind->text, "sub-purlin") == 0;
	return is_steel ? "sheet" : NULL;
}

/* The family of trade sizes a row's thickness belongs to: of a support by its kind, else by its metal. `*known` is false where
 * the row does not say. */
static const char *family_of(const Attribute *attribute, const void *row, bool *known)
{
	bool is_support = attribute->kind == KIND_support;
	const Word *word = word_at(attribute, is_support ? "kind" : "metal", row);
	*known = word != NULL;
	if (word == NULL)
		return NULL;
	if (is_support)
		return family_of_support(word);
	return strcmp(word->text, "steel") == 0 ? "sheet" : NULL;
}

/* A row that does not say its kind or metal, such as a paragraph of the specification, is taken as the other one. */
static const char *family_of_both(const Attribute *attribute, const void *here, const void *there)
{
	if (strcmp(attribute->field->key, "thickness") != 0)
		return NULL;
	bool here_known, there_known;
	const char *one = family_of(attribute, here, &here_known), *other = family_of(attribute, there, &there_known);
	if (!here_known)
		return other;
	if (!there_known)
		return one;
	return one != NULL && other != NULL && strcmp(one, other) == 0 ? one : NULL;
}

/* ---- numbers ---- */

/* The tolerance is taken of the greater value, so that it is the same both ways. */
static bool is_within(double a, double b, double percent)
{
	return number_same(a, b) || fabs(a - b) <= percent / 100 * fmax(fabs(a), fabs(b)) * (1 + 1e-9);
}

static Step step_of_numbers(const Attribute *attribute, double here, double there)
{
	return is_within(here, there, attribute->tolerance_percent) ? STEP_SAME : step_of_order(here, there);
}

static double number_at(const Attribute *attribute, const void *row)
{
	return ((const Number *)(const void *)given_in(attribute->field, row))->value;
}

static Step step_of_quantities(const Attribute *attribute, const void *here, const void *there)
{
	double a = number_at(attribute, here), b = number_at(attribute, there);
	Step step = step_of_numbers(attribute, a, b);
	const char *family = step != STEP_SAME ? family_of_both(attribute, here, there) : NULL;
	return family != NULL && is_one_trade_size(attribute->reference, family, a, b) ? STEP_SAME : step;
}

/* #14 is 0.242 in and 1/4 is 0.250 in, and boxes of either are sold as both. */
static bool is_quarter_question(const Reference *reference, double a, double b)
{
	double number = screw_diameter(reference, "#14"), quarter = screw_diameter(reference, "1/4");
	return (number_same(a, number) && number_same(b, quarter)) || (number_same(a, quarter) && number_same(b, number));
}

bool asks_for_mark(const Attribute *attribute, const void *here, const void *there)
{
	if (attribute->field->kind != IS_SIZE)
		return false;
	const Field *mark = field_find(record_of(attribute->kind), "mark", strlen("mark"));
	if (mark == NULL || is_value(given_in(mark, here)))
		return false;
	if (!is_value(given_in(attribute->field, here)) || !is_value(given_in(attribute->field, there)))
		return false;
	return is_quarter_question(attribute->reference, number_at(attribute, here), number_at(attribute, there));
}

static Step step_of_sizes(const Attribute *attribute, const void *here, const void *there)
{
	if (asks_for_mark(attribute, here, there))
		return STEP_UNKNOWN;
	return step_of_numbers(attribute, number_at(attribute, here), number_at(attribute, there));
}

/* ---- one number a zone ---- */

static Step join(Step one, Step other)
{
	if (one == STEP_SAME || one == other)
		return other;
	return other == STEP_SAME ? one : one == STEP_UNKNOWN || other == STEP_UNKNOWN ? STEP_UNKNOWN : STEP_OTHER;
}

/* The value of a zone, or that of all zones. */
static const ZoneValue *value_in_zone(const ByZone *by_zone, const char *zone)
{
	const ZoneValue *all = NULL;
	for (uint32_t i = 0; i < by_zone->count; i++) {
		if (strcasecmp(by_zone->at[i].zone, zone) == 0)
			return &by_zone->at[i];
		if (by_zone->at[i].zone[0] == '\0')
			all = &by_zone->at[i];
	}
	return all;
}

static Step step_in_zone(const Attribute *attribute, const ZoneValue *here, const ZoneValue *there)
{
	if (here == NULL || there == NULL || !is_value(&here->given) || !is_value(&there->given))
		return STEP_UNKNOWN;
	return step_of_numbers(attribute, here->value, there->value);
}

/* Every zone that either side names; where neither names one, the values for all zones. */
static Step step_of_zones(const Attribute *attribute, const ByZone *here, const ByZone *there)
{
	enum { MOST_PAIRS = 4096 }; /* more zones than any roof has, and no quadratic time */
	Step step = STEP_SAME;
	bool is_named = false;
	if (here->count == 0 || there->count == 0 || (uint64_t)here->count * there->count > MOST_PAIRS)
		return STEP_UNKNOWN;
	for (uint32_t i = 0; i < here->count + there->count; i++) {
		const char *zone = i < here->count ? here->at[i].zone : there->at[i - here->count].zone;
		if (zone[0] != '\0')
			step = join(step, step_in_zone(attribute, value_in_zone(here, zone), value_in_zone(there, zone)));
		is_named = is_named || zone[0] != '\0';
	}
	return is_named ? step : step_in_zone(attribute, &here->at[0], &there->at[0]);
}

/* ---- words and texts ---- */

/* Blanks at the ends and letters of either case make no difference. */
static bool is_same_text(const char *a, const char *b)
{
	if (strcmp(a, b) == 0)
		return true;
	a += strspn(a, " ");
	b += strspn(b, " ");
	size_t length = strlen(a), other = strlen(b);
	while (length > 0 && a[length - 1] == ' ')
		length--;
	while (other > 0 && b[other - 1] == ' ')
		other--;
	return length == other && strncasecmp(a, b, length) == 0;
}

static Step step_of_texts(const Attribute *attribute, const char *here, const char *there)
{
	if (is_same_text(here, there))
		return STEP_SAME;
	char path[128];
	int length = snprintf(path, sizeof path, "%s.%s", record_of(attribute->kind)->name, attribute->field->key);
	if (length < 0 || (size_t)length >= sizeof path)
		return STEP_OTHER;
	const char *scale, *other_scale;
	int rank = scale_rank(attribute->criteria, path, here, &scale);
	int other = scale_rank(attribute->criteria, path, there, &other_scale);
	if (rank == 0 || other == 0 || scale == NULL || other_scale == NULL || strcmp(scale, other_scale) != 0)
		return STEP_OTHER;
	return step_of_order(rank, other);
}

static Step step_of_lists(const Texts *here, const Texts *there)
{
	if (here->count != there->count)
		return STEP_OTHER;
	for (uint32_t i = 0; i < here->count; i++)
		if (!is_same_text(here->at[i].text, there->at[i].text))
			return STEP_OTHER;
	return STEP_SAME;
}

/* ---- any value ---- */

static Step step_of_values(const Attribute *attribute, const void *here, const void *there)
{
	const void *a = given_in(attribute->field, here), *b = given_in(attribute->field, there);
	switch (attribute->field->kind) {
	case IS_NAME:
	case IS_TEXT:
	case IS_MARK:
		return step_of_texts(attribute, ((const Text *)a)->text, ((const Text *)b)->text);
	case IS_WORD:
		return step_of_texts(attribute, ((const Word *)a)->text, ((const Word *)b)->text);
	case IS_NUMBER:
		return step_of_quantities(attribute, here, there);
	case IS_SIZE:
		return step_of_sizes(attribute, here, there);
	case IS_DATE:
		return step_of_order(((const Date *)a)->day, ((const Date *)b)->day);
	case IS_YES:
		return step_of_order(((const Yes *)a)->yes, ((const Yes *)b)->yes);
	case IS_BY_ZONE:
		return step_of_zones(attribute, a, b);
	case IS_TEXTS:
		return step_of_lists(a, b);
	case IS_ONE:
	case IS_LIST:
		break;
	}
	return STEP_UNKNOWN;
}

Step step_between(const Attribute *attribute, const void *here, const void *there)
{
	const Given *a = given_in(attribute->field, here), *b = given_in(attribute->field, there);
	if (b->said == SAID_NOT_APPLICABLE)
		return STEP_SAME;
	if (a->said == SAID_NOT_APPLICABLE && is_value(b))
		return STEP_OTHER;
	return is_value(a) && is_value(b) ? step_of_values(attribute, here, there) : STEP_UNKNOWN;
}

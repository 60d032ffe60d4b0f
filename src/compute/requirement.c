/* SPDX-License-Identifier: MIT
 * Requirements of the specification that name an item.
 */
#include "number.h"
#include "parts.h"
#include "text.h"

#include <string.h>

/* Only a topic that is a kind of part alone asks for an item. */
double requirement_names_catalogue_item_yes(Case *requirement)
{
	const char *topic = GIVEN(requirement, requirement, Requirement, topic);
	if (!ready(requirement))
		return 0;
	RecordKind kind = part_kind(topic, strlen(topic));
	if (kind == RECORD_KINDS)
		return SKIP(requirement, "the topic is no kind of part");
	const char *item = GIVEN_OR(requirement, requirement, Requirement, exactly, NULL);
	if (!ready(requirement))
		return 0;
	if (item == NULL)
		return SKIP(requirement, "no item is asked for");
	return item_find(requirement->all->criteria, kind, item) != NULL;
}

/* What is compared: a kind of part, a key of it in words, or what rules of their own speak of. */
static bool is_topic(const char *topic)
{
	if (is_among(topic, "uplift class; fire class; test standard"))
		return true;
	size_t first = strcspn(topic, " ");
	RecordKind kind = part_kind(topic, first);
	if (kind == RECORD_KINDS || topic[first] == '\0')
		return kind != RECORD_KINDS;
	const Record *record = record_of(kind);
	for (uint32_t i = 0; i < record->count; i++)
		if (same_words(record->field[i].key, topic + first + 1))
			return true;
	return false;
}

double requirement_topic_known_yes(Case *requirement)
{
	const char *topic = GIVEN(requirement, requirement, Requirement, topic);
	return ready(requirement) && is_topic(topic);
}

double requirement_asks_something_yes(Case *requirement)
{
	const char *least = GIVEN_OR(requirement, requirement, Requirement, at_least, NULL);
	const char *most = GIVEN_OR(requirement, requirement, Requirement, at_most, NULL);
	const char *exactly = GIVEN_OR(requirement, requirement, Requirement, exactly, NULL);
	const char *text = GIVEN_OR(requirement, requirement, Requirement, text, NULL);
	return ready(requirement) && (least != NULL || most != NULL || exactly != NULL || text != NULL);
}

double roof_area_specified_class_one(Case *area)
{
	const Cases *all = area->all;
	double greatest = 0;
	for (uint32_t i = 0; i < all->of[KIND_requirement].count; i++) {
		const Case *requirement = all->of[KIND_requirement].at[i];
		const Requirement *row = requirement->row;
		if (!is_value(&row->topic.given) || !same_text(row->topic.text, "uplift class"))
			continue;
		const char *least = GIVEN_OR_AT(area, requirement, Requirement, at_least, NULL);
		double number;
		if (least != NULL && number_read(least, strlen(least), &number) && number > greatest)
			greatest = number;
	}
	return greatest > 0 || !ready(area) ? greatest : SKIP(area, "the specification asks for no uplift class");
}

/* SPDX-License-Identifier: MIT
 * Requirements of the specification that name an item.
 */
#include "parts.h"

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

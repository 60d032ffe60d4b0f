/* SPDX-License-Identifier: MIT
 * What the readers noticed, as raws of the one list.
 *
 * A message stands for the value it speaks of: the value is not missing a second time, and the rules that need it wait for the
 * message. Messages are found by the place of that value.
 */
#include "judge.h"

#include <string.h>

typedef struct {
	uint32_t line, column, source;
} At;

static At *place_key(Judging *judging, const Place *place, bool whole_line)
{
	At *at = TAKE(judging->arena, At, 1);
	*at = (At){ place->line, whole_line ? 0 : place->column, place->source };
	return at;
}

static Raw *raw_at(const Judging *judging, const Place *place, bool whole_line)
{
	At at = { place->line, whole_line ? 0 : place->column, place->source };
	return hash_get(judging->messages, (const char *)&at, sizeof at);
}

/* The value's own place; else a message in the same line, as where the message stands at the key. */
Raw *complaint_at(Judging *judging, const Place *place)
{
	if (place->line == 0)
		return NULL;
	Raw *raw = raw_at(judging, place, false);
	return raw != NULL ? raw : raw_at(judging, place, true);
}

/* Only messages with a suggestion account for a key, and readers make at most 50 of them. */
Raw *complaint_for(Judging *judging, const Field *field, const void *row, const void *submitted)
{
	for (uint32_t i = 0; i < judging->accounting; i++) {
		Raw *raw = judging->accounts[i];
		const About *about = &raw->complaint->about;
		if (about->accounts_for == field && (about->row == row || about->row == submitted))
			return raw;
	}
	return NULL;
}

/* The roof area that a message's record is named after, for its place in the list. */
static const Case *area_named(const Hash *areas, const char *where)
{
	if (where == NULL)
		return NULL;
	const char *end = strstr(where, " / ");
	return hash_get(areas, where, end != NULL ? (size_t)(end - where) : strlen(where));
}

static Hash *areas_by_name(const Judging *judging)
{
	const Cases *cases = judging->cases;
	Hash *areas = hash_make(judging->arena, cases->of[KIND_roof_area].count);
	for (uint32_t i = 0; i < cases->of[KIND_roof_area].count; i++) {
		Case *area = cases->of[KIND_roof_area].at[i];
		if (area->name != NULL)
			hash_put(areas, area->name, strlen(area->name), area);
	}
	return areas;
}

static void add_complaint(Judging *judging, const Complaint *complaint, const Hash *areas)
{
	const Message *message = message_of(complaint->id);
	Raw raw = { .found_by = FOUND_BY_READER, .action = message->action, .complaint = complaint, .place = complaint->place };
	raw.area = area_named(areas, complaint->about.where);
	raw.position.area = raw.area != NULL ? raw.area->order + 1 : 0;
	Raw *kept = raw_add(judging, &raw);
	if (kept == NULL)
		return;
	for (int whole_line = 0; whole_line < 2; whole_line++)
		if (complaint->place.line > 0 && raw_at(judging, &complaint->place, whole_line) == NULL)
			hash_put(judging->messages, (const char *)place_key(judging, &complaint->place, whole_line), sizeof(At),
				 kept);
	if (complaint->about.accounts_for != NULL && judging->accounting < MOST_ACCOUNTS)
		judging->accounts[judging->accounting++] = kept;
}

void add_complaints(Judging *judging)
{
	const Complaints *complaints = judging->complaints;
	if (complaints == NULL || complaints->count == 0)
		return;
	const Hash *areas = areas_by_name(judging);
	for (uint32_t i = 0; i < complaints->count; i++)
		add_complaint(judging, &complaints->at[i], areas);
}

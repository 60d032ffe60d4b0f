/* SPDX-License-Identifier: MIT
 * What a resubmittal owes the round before: its changes declared, each open item answered by its number, at close-out each
 * condition shown done.
 */
#include "judge.h"

#include <stdlib.h>
#include <string.h>

enum { MOST_NUMBERS = 12 };

Raw *raise_of_round(Judging *judging, const Raw *wanted, MessageId message, About about)
{
	Raw raw = *wanted;
	About *kept = TAKE(judging->arena, About, 1);
	*kept = about;
	raw.found_by = FOUND_BY_ROUNDS;
	raw.message = message;
	raw.action = message_of(message)->action;
	raw.about = kept;
	if (raw.where != NULL && raw.place.line == 0)
		raw.place = place_of(raw.where, NULL);
	if (raw.where != NULL)
		raw.position = position_of(raw.where, NULL);
	return raw_add(judging, &raw);
}

/* ---- changes ---- */

static const char *change_words(const Changed *changed, Arena *arena)
{
	return arena_printf(arena, "%s (%s)", lower_first(changed->field->title, arena), changed->keys);
}

static void raise_change(Judging *judging, const Changed *changed)
{
	Arena *arena = judging->arena;
	Raw raw = { .where = changed->now, .place = changed->place, .field = changed->field };
	if (changed->kind == CHANGED_VALUE) {
		About about = { .key = change_words(changed, arena), .value = changed->here, .want = cut_text(changed->there, arena) };
		raw.what = changed->here;
		raw.reason = arena_printf(arena, "%s\n%s", changed->keys, changed->there);
		raise_of_round(judging, &raw, MESSAGE_RND_01, about);
		return;
	}
	const char *kind = kind_words((RecordKind)changed->record->kind, arena);
	bool is_more = changed->kind == RECORD_ADDED;
	const char *name = is_more ? changed->here : changed->there;
	raw.what = is_more ? "the record" : changed->path;
	raw.reason = name;
	About about = { .value = arena_printf(arena, "%s %s", kind, name) };
	raise_of_round(judging, &raw, is_more ? MESSAGE_RND_02 : MESSAGE_RND_03, about);
}

void raise_changes(Judging *judging)
{
	const History *history = judging->history;
	for (uint32_t i = 0; history != NULL && i < history->changes; i++)
		if (!history->changed[i].asked && !history->changed[i].declared && !history->changed[i].renamed)
			raise_change(judging, &history->changed[i]);
}

/* ---- papers that show a condition done ---- */

static const char *text_of(const Text *text)
{
	return is_value(&text->given) && text->text != NULL ? text->text : "";
}

/* Papers that the reviewer has seen, by number. */
static bool is_seen(const Review *review, const char *paper)
{
	size_t length = strlen(paper);
	const char *revision = strstr(paper, " rev");
	for (uint32_t i = 0; i < review->papers.of.count; i++) {
		const PaperSeen *row = &review->papers.of.row[i];
		const char *number = text_of(&row->number);
		bool is_it = strcmp(number, paper) == 0 || (revision != NULL && strlen(number) == (size_t)(revision - paper) &&
			strncmp(number, paper, (size_t)(revision - paper)) == 0);
		if (length > 0 && is_it && is_value(&row->seen.given) && row->seen.yes)
			return true;
	}
	return false;
}

/* What was there before the item was printed cannot show that it was done: the paper, or its revision, must be later than the
 * round before. */
static bool is_later(const Judging *judging, const char *paper)
{
	const Submittal *now = judging->cases->submittal, *before = judging->history->before->submittal;
	const char *revision = strstr(paper, " rev");
	size_t length = revision != NULL ? (size_t)(revision - paper) : strlen(paper);
	for (uint32_t i = 0; i < now->documents.of.count; i++) {
		const Document *row = &now->documents.of.row[i];
		const char *number = text_of(&row->number);
		bool is_it = strlen(number) == length && strncmp(number, paper, length) == 0;
		if (is_it && is_value(&row->date.given) && is_value(&before->date.given) && row->date.day >= before->date.day)
			return true;
	}
	return false;
}

static Hash *papers_shown(const Judging *judging)
{
	const Cases *cases = judging->cases;
	Hash *shown = hash_make(judging->arena, 16);
	for (uint32_t i = 0; cases->review != NULL && i < cases->submittal->replies.of.count; i++) {
		const Reply *reply = &cases->submittal->replies.of.row[i];
		const char *item = text_of(&reply->item), *paper = text_of(&reply->paper);
		if (*item != '\0' && i < MOST_ITEMS && is_seen(cases->review, paper) && is_later(judging, paper))
			hash_put(shown, item, strlen(item), (void *)(uintptr_t)paper);
	}
	return shown;
}

const char *shown_by(Judging *judging, const EarlierItem *item)
{
	if (judging->shown == NULL)
		judging->shown = papers_shown(judging);
	return item->number != NULL ? hash_get(judging->shown, item->number, strlen(item->number)) : NULL;
}

const char *shown_words(Judging *judging, const char *paper)
{
	return arena_printf(judging->arena, "shown done by %s, which the reviewer has seen", cut_text(paper, judging->arena));
}

/* ---- papers the reviewer has not seen ---- */

bool is_paper_seen(const Judging *judging, const char *number)
{
	return judging->cases->review != NULL && number != NULL && is_seen(judging->cases->review, number);
}

static Hash *papers_listed(const Judging *judging)
{
	const Cases *cases = judging->cases;
	Hash *listed = hash_make(judging->arena, 16);
	for (uint32_t i = 0; i < cases->of[KIND_letter].count; i++) {
		const char *number = text_of(&((const Letter *)cases->of[KIND_letter].at[i]->row)->letter);
		hash_put(listed, number, strlen(number), cases->of[KIND_letter].at[i]);
	}
	for (uint32_t i = 0; i < cases->of[KIND_document].count; i++) {
		const char *number = text_of(&((const Document *)cases->of[KIND_document].at[i]->row)->number);
		hash_put(listed, number, strlen(number), cases->of[KIND_document].at[i]);
	}
	return listed;
}

void raise_unseen(Judging *judging)
{
	const Review *review = judging->cases->review;
	if (review == NULL || review->papers.of.count == 0 || !is_review_for(review, judging->cases->submittal))
		return;
	const Hash *listed = papers_listed(judging);
	for (uint32_t i = 0; i < review->papers.of.count; i++) {
		const PaperSeen *row = &review->papers.of.row[i];
		const char *number = text_of(&row->number);
		const Case *paper = *number != '\0' ? hash_get(listed, number, strlen(number)) : NULL;
		if (paper != NULL && is_value(&row->seen.given) && !row->seen.yes)
			raise_of_round(judging, &(Raw){ .where = paper, .what = number }, MESSAGE_SEE_01, (About){ .value = number });
	}
}

/* ---- replies ---- */

/* The earlier items by number, with whether they stand open after this round; the worst place counts. */
typedef struct {
	const EarlierItem *item;
	ItemState state;
	bool answered;
} Standing;

static bool is_disposed(const Review *review, const char *number)
{
	for (uint32_t i = 0; review != NULL && i < review->items.of.count && i < MOST_ITEMS; i++) {
		const Disposition *row = &review->items.of.row[i];
		if (strcmp(text_of(&row->number), number) == 0 && is_value(&row->disposition.given))
			return state_for(row->disposition.text) != ITEM_OPEN;
	}
	return false;
}

static Standing *standings(const Judging *judging)
{
	const Earlier *earlier = judging->history->earlier;
	Standing *standing = TAKE(judging->arena, Standing, earlier->items + 1);
	for (uint32_t i = 0; i < earlier->items; i++)
		standing[i] = (Standing){ &earlier->item[i], ITEM_CLOSED, false };
	for (uint32_t i = 0; i < judging->raws; i++) {
		const Raw *raw = judging->raw[i];
		Standing *at = raw->earlier != NULL ? &standing[raw->earlier - earlier->item] : NULL;
		if (at != NULL && (raw->state == ITEM_OPEN || (raw->state == ITEM_CONDITION && at->state == ITEM_CLOSED)))
			at->state = raw->state;
	}
	return standing;
}

static Standing *standing_of(const Judging *judging, Standing *standing, const char *number)
{
	const Earlier *earlier = judging->history->earlier;
	uint32_t low = 0, high = earlier->items;
	char *end;
	unsigned long round = strtoul(number, &end, 10), item = *end == '.' ? strtoul(end + 1, &end, 10) : 0;
	while (low < high) {
		uint32_t middle = low + (high - low) / 2;
		const EarlierItem *here = &earlier->item[middle];
		if (here->round == round && here->item == item)
			return &standing[middle];
		if (here->round < round || (here->round == round && here->item < item))
			low = middle + 1;
		else
			high = middle;
	}
	return NULL;
}

/* A number of this round or of none is told by the rule on replies. */
static void check_reply(Judging *judging, const Case *at, Standing *standing)
{
	const Reply *reply = at->row;
	const char *number = text_of(&reply->item);
	bool is_earlier = strtoul(number, NULL, 10) >= 1 && strtoul(number, NULL, 10) < judging->verdict->round;
	if (!is_earlier || strchr(number, '.') == NULL)
		return;
	Standing *found = standing_of(judging, standing, number);
	const char *why = NULL;
	if (found == NULL)
		why = "no earlier report has this number";
	else if (found->item->state == ITEM_CLOSED && found->state == ITEM_CLOSED)
		why = arena_printf(judging->arena, "it was closed in round %u",
			found->item->settled > 0 ? found->item->settled : found->item->round);
	if (found != NULL)
		found->answered = true;
	Raw raw = { .where = at, .place = reply->item.given.place, .what = "reply.item", .reason = number };
	if (why != NULL)
		raise_of_round(judging, &raw, MESSAGE_RND_05, (About){ .value = number, .want = why });
}

/* "1.02, 1.05 and 3 more" */
static const char *add_number(const char *numbers, uint32_t count, const char *number, Arena *arena)
{
	if (count >= MOST_NUMBERS)
		return numbers;
	return numbers == NULL ? number : arena_printf(arena, "%s, %s", numbers, number);
}

static const char *numbers_open(const Judging *judging, const Standing *standing, bool conditions)
{
	Arena *arena = judging->arena;
	const Earlier *earlier = judging->history->earlier;
	const char *numbers = NULL;
	uint32_t count = 0;
	for (uint32_t i = 0; i < earlier->items; i++) {
		const EarlierItem *item = standing[i].item;
		bool is_asked = conditions ? standing[i].state == ITEM_CONDITION
			: standing[i].state == ITEM_OPEN && !standing[i].answered && item->action <= ACTION_NOT_REVIEWED;
		bool is_own_doing = strcmp(item->code, "RND-04") == 0 || strcmp(item->code, "RND-06") == 0;
		if (is_asked && !is_own_doing && !is_disposed(judging->cases->review, item->number))
			numbers = add_number(numbers, count++, item->number, arena);
	}
	return count > MOST_NUMBERS ? arena_printf(arena, "%s and %u more", numbers, count - MOST_NUMBERS) : numbers;
}

static void raise_lack(Judging *judging)
{
	const Cases *cases = judging->cases;
	Raw raw = { .where = cases->of[KIND_submittal].at[0], .place = cases->submittal->round_one.given.place, .what = "round" };
	if (cases->lacks_earlier != NULL)
		raise_of_round(judging, &raw, MESSAGE_RND_07, (About){ .want = cases->lacks_earlier,
			.value = arena_printf(judging->arena, "%u", judging->verdict->round) });
}

static void raise_for(Judging *judging, MessageId message, const Given *given, const char *numbers)
{
	const Case *submittal = judging->cases->of[KIND_submittal].at[0];
	Raw raw = { .where = submittal, .place = place_of(submittal, given), .what = "replies" };
	if (numbers != NULL)
		raise_of_round(judging, &raw, message, (About){ .value = numbers });
}

void raise_replies(Judging *judging)
{
	raise_lack(judging);
	if (judging->history == NULL)
		return;
	const Cases *cases = judging->cases;
	Standing *standing = standings(judging);
	for (uint32_t i = 0; i < cases->of[KIND_reply].count; i++)
		check_reply(judging, cases->of[KIND_reply].at[i], standing);
	raise_for(judging, MESSAGE_RND_04, &cases->submittal->replies.list.given, numbers_open(judging, standing, false));
	if (judging->stage == STAGE_close_out)
		raise_for(judging, MESSAGE_RND_06, &cases->submittal->replies.list.given, numbers_open(judging, standing, true));
}

/* SPDX-License-Identifier: MIT
 * Item: the texts of one finding from the raws grouped in it, whoever found it.
 */
#include "judge.h"

#include <string.h>

static const char practice[] = "common practice, no published source";

const char *missing_party(const Raw *raw)
{
	const Given *given = raw->wait != NULL ? raw->wait->given : NULL;
	return given != NULL && given->said == SAID_BY_OTHERS && given->typed != NULL ? given->typed : "";
}

/* ---- broken rules ---- */

/* "fastener.size"; of a fact its name. */
static const char *field_of(const Raw *raw, Arena *arena)
{
	if (raw->field != NULL)
		return field_path(raw->field, arena);
	if (raw->rule == NULL || raw->rule->is.left.from != FROM_FACT)
		return NULL;
	const FactSpec *spec = fact_spec(raw->rule->is.left.fact);
	return arena_printf(arena, "%s.%s", spec->record, spec->name);
}

static KnownBy weaker(KnownBy known_by, const Fact *fact)
{
	return fact != NULL && fact->known_by > known_by ? (KnownBy)fact->known_by : known_by;
}

/* ---- what an item cites ---- */

static const char *text_said(const Text *text)
{
	return is_value(&text->given) && text->text != NULL && *text->text != '\0' ? text->text : NULL;
}

/* "section 07 41 13, paragraph 2.3.B" */
static const char *paragraph_cited(const Case *at, Arena *arena)
{
	const char *section = text_said(&at->all->submittal->specification.section);
	const Case *requirement = at->kind == KIND_comparison ? ((const Compared *)at->row)->requirement : at;
	const char *paragraph = requirement != NULL && requirement->kind == KIND_requirement
					? text_said(&((const Requirement *)requirement->row)->paragraph)
					: NULL;
	const char *first = section != NULL ? arena_printf(arena, "section %s", cut_text(section, arena)) : "section not stated";
	return paragraph != NULL ? arena_printf(arena, "%s, paragraph %s", first, cut_text(paragraph, arena)) : first;
}

/* "tested-210, UL 580"; NULL where no listing is behind the item. */
static const char *listing_cited(const Case *at, Arena *arena)
{
	const Case *test = at->kind == KIND_comparison ? ((const Compared *)at->row)->test : at;
	bool has_listing = test != NULL && (test->kind == KIND_test || test->kind == KIND_zone || test->kind == KIND_roof_area);
	const Listing *listing = has_listing ? test->listed : NULL;
	const char *number = listing != NULL ? text_said(&listing->listing) : NULL;
	const char *standard = number != NULL ? text_said(&listing->standard) : NULL;
	return standard != NULL ? arena_printf(arena, "%s, %s", number, standard) : number;
}

/* Of all places, each once. */
static const char *cited(const Group *group, Arena *arena)
{
	enum { MOST_CITED = 4 };
	const char *cite[MOST_CITED], *all = NULL;
	uint32_t count = 0;
	Authority authority = group->raw[0]->rule->authority;
	if (authority != AUTHORITY_LISTING && authority != AUTHORITY_SPECIFICATION)
		return NULL;
	for (uint32_t i = 0; i < group->raws && i < MOST_TOLD && count < MOST_CITED; i++) {
		const Case *at = group->raw[i]->judged;
		const char *one = authority == AUTHORITY_LISTING ? listing_cited(at, arena) : paragraph_cited(at, arena);
		bool known = one == NULL;
		for (uint32_t j = 0; j < count && !known; j++)
			known = strcmp(cite[j], one) == 0;
		if (known)
			continue;
		cite[count++] = one;
		all = all == NULL ? one : arena_printf(arena, "%s; %s", all, one);
	}
	return all;
}

/* A missing paper rests on its own row of documents.csv. */
static const char *basis_of(const Rule *rule, const Case *at)
{
	const BoundPaper *paper = at->kind == KIND_paper ? ((const PaperDueHere *)at->row)->bound : NULL;
	const char *basis = paper != NULL ? text_said(&paper->row->basis) : NULL;
	return basis != NULL ? basis : rule->basis;
}

static void fill_broken(Judging *judging, const Group *group, Finding *item)
{
	Arena *arena = judging->arena;
	const Rule *rule = group->raw[0]->rule;
	const Case *at[MOST_TOLD];
	uint32_t count = group->raws < MOST_TOLD ? group->raws : MOST_TOLD;
	for (uint32_t i = 0; i < count; i++)
		at[i] = group->raw[i]->judged;
	Told told = { .rule = rule, .at = at, .count = count };
	tell(&told, arena);
	item->rule = rule;
	item->judged = at[0];
	item->finding = told_text(&told, &rule->finding, NULL, arena);
	item->remedy = told_text(&told, &rule->remedy, NULL, arena);
	if (item->remedy == NULL)
		item->remedy = told_text(&told, &rule->remedy_else, NULL, arena);
	if (item->finding == NULL)
		item->finding = rule->finding.whole;
	if (item->remedy == NULL)
		item->remedy = "ask the panel maker what would be accepted";
	item->submitted = told.submitted;
	item->limit = told.limit;
	item->authority = rule->authority;
	item->basis = basis_of(rule, at[0]);
	item->cites = cited(group, arena);
	item->answer_by = rule->answer_by;
	item->known_by =
		weaker(weaker(basis_known_by(at[0]->all->reference, item->basis), told.tested.left.fact), told.tested.right.fact);
}

/* ---- readers, missing, own ---- */

static void fill_message(Finding *item, const Complaint *complaint, Arena *arena)
{
	const Message *message = message_of(complaint->id);
	item->finding = complaint_text(complaint, message->finding, arena);
	item->remedy = complaint_text(complaint, message->remedy, arena);
	item->authority = AUTHORITY_PROGRAM;
	item->basis = practice;
	item->known_by = KNOWN_PRACTICE;
	item->answer_by = "contractor";
}

static void fill_by_reader(const Raw *raw, Finding *item, Arena *arena)
{
	item->complaint = raw->complaint;
	fill_message(item, raw->complaint, arena);
	if (raw->complaint->about.value != NULL)
		item->submitted.text = cut_text(raw->complaint->about.value, arena);
	if (raw->where == NULL && raw->complaint->about.where != NULL)
		item->name = raw->complaint->about.where;
}

/* An example of the field, for the remedy. */
static const char *example_of(const Field *field, Arena *arena)
{
	if (field->example != NULL && *field->example != '\0')
		return field->example;
	if (field->kind == IS_WORD && field->words != NULL)
		return arena_text(arena, field->words, strcspn(field->words, "|="));
	return "VALUE";
}

static const char *submitted_for(const Raw *raw, Arena *arena)
{
	switch (raw->message) {
	case MESSAGE_MIS_01:
	case MESSAGE_MIS_02:
	case MESSAGE_MIS_03:
		return "not stated";
	case MESSAGE_MIS_04:
		return "unknown";
	case MESSAGE_MIS_05:
		return arena_printf(arena, "by others: %s", cut_text(missing_party(raw), arena));
	case MESSAGE_MIS_10:
		return arena_printf(arena, "not applicable: %s", cut_text(raw->reason, arena));
	default:
		return NULL;
	}
}

/* "PEN-08 asks", "PEN-08, PEN-09 ask": the rules of a group. */
static const char *askers(const Judging *judging, const Group *group)
{
	const Criteria *criteria = judging->cases->criteria;
	const char *codes = NULL;
	uint32_t count = 0;
	for (uint32_t i = 0; group->rules != NULL && i < criteria->rules; i++) {
		if (!(group->rules[i / 64] >> i % 64 & 1))
			continue;
		const char *code = criteria->rule[i].code;
		codes = count++ == 0 ? code : arena_printf(judging->arena, "%s, %s", codes, code);
	}
	return arena_printf(judging->arena, "%s %s", count > 0 ? codes : "a rule", count > 1 ? "ask" : "asks");
}

static void fill_set_aside(const Judging *judging, const Group *group, Complaint *complaint)
{
	complaint->about.key = complaint->about.value;
	complaint->about.value = askers(judging, group);
}

/* Where the form takes it, the other answer is shown beside the example. */
static const char *wanted_for(const Raw *raw, Arena *arena)
{
	if (raw->reason != NULL || raw->field == NULL)
		return raw->reason != NULL ? cut_text(raw->reason, arena) : "";
	const char *example = example_of(raw->field, arena);
	bool both = raw->message == MESSAGE_MIS_01 && raw->field->may_not_apply;
	return both ? arena_printf(arena, "%s, or {not applicable: REASON}", example) : example;
}

static void fill_missing(const Judging *judging, const Group *group, Finding *item)
{
	Arena *arena = judging->arena;
	const Raw *raw = group->raw[0];
	Complaint complaint = { .id = raw->message };
	const Field *field = raw->field;
	complaint.about.value = field != NULL ? field_words(field, arena) : raw->what;
	complaint.about.key = field != NULL ? field->key : raw->what;
	complaint.about.want = wanted_for(raw, arena);
	if (raw->message == MESSAGE_MIS_10)
		fill_set_aside(judging, group, &complaint);
	if (raw->message == MESSAGE_MIS_05)
		complaint.about.value =
			arena_printf(arena, "%s, by %s", complaint.about.value, cut_text(missing_party(raw), arena));
	fill_message(item, &complaint, arena);
	item->submitted.text = submitted_for(raw, arena);
	if (raw->message == MESSAGE_MIS_05 && *missing_party(raw) != '\0')
		item->answer_by = cut_text(missing_party(raw), arena);
	else if (raw->message == MESSAGE_MIS_08)
		item->answer_by = "panel maker";
}

static const char *text_or(const Text *text, const char *otherwise)
{
	return is_value(&text->given) && text->text != NULL ? text->text : otherwise;
}

static void fill_own(const Judging *judging, const Raw *raw, Finding *item)
{
	const OwnItem *own = raw->own;
	item->finding = text_or(&own->finding, "see the reviewer's file");
	item->remedy = text_or(&own->remedy, "ask the reviewer");
	item->basis = text_or(&own->basis, practice);
	item->answer_by = text_or(&own->answer_by, "contractor");
	item->name = text_or(&own->where, NULL);
	item->authority = AUTHORITY_PROGRAM;
	item->known_by = basis_known_by(judging->cases->reference, item->basis);
}

/* ---- places ---- */

/* `see` of the record, as written. */
static const char *see_of(const Case *where)
{
	const Field *field = where != NULL ? field_find(record_of(where->kind), "see", 3) : NULL;
	const void *row = where != NULL && where->submitted != NULL ? where->submitted : where != NULL ? where->row : NULL;
	if (field == NULL || row == NULL || field->kind != IS_TEXT)
		return NULL;
	const Text *see = (const Text *)(const void *)given_in(field, row);
	return is_value(&see->given) ? see->text : NULL;
}

const char *spot_field(const Raw *raw, Arena *arena)
{
	const char *field = field_of(raw, arena);
	if (field != NULL || raw->found_by == FOUND_BROKEN)
		return field;
	if (raw->found_by == FOUND_BY_REVIEWER)
		return arena_printf(arena, "%s: %s", text_or(&raw->own->where, ""), text_or(&raw->own->finding, ""));
	if (raw->found_by != FOUND_BY_READER)
		return raw->what;
	const About *about = &raw->complaint->about;
	return arena_printf(arena, "%s: %s", about->where != NULL ? about->where : "the file", about->key != NULL ? about->key : "");
}

static Spot spot_of(const Raw *raw, Arena *arena)
{
	Spot spot = { .where = raw->where, .place = raw->place, .state = raw->state, .see = see_of(raw->where) };
	const EarlierPlace *earlier = raw->earlier != NULL ? &raw->earlier->place[raw->earlier_place] : NULL;
	if (raw->found_by != FOUND_EARLIER) {
		spot.field = spot_field(raw, arena);
		return spot;
	}
	spot.field = earlier->field;
	if (raw->where != NULL)
		return spot;
	spot.path = earlier->path != NULL ? earlier->path : "";
	spot.fingerprint = earlier->fingerprint;
	spot.record = earlier->record;
	spot.name = earlier->name;
	return spot;
}

/* Two comparisons of one part may stand at one place; it is named once. */
static void fill_spots(Judging *judging, const Group *group, Finding *item)
{
	item->spot = TAKE(judging->arena, Spot, group->raws);
	for (uint32_t i = 0; i < group->raws; i++) {
		const Raw *raw = group->raw[i];
		const Spot *last = item->spots > 0 ? &item->spot[item->spots - 1] : NULL;
		bool is_same = last != NULL && last->where != NULL && last->where == raw->where && last->state == raw->state &&
			       last->place.line == raw->place.line && last->place.column == raw->place.column;
		if (!is_same)
			item->spot[item->spots++] = spot_of(raw, judging->arena);
		if (raw->note != NULL && (item->note == NULL || raw->state != ITEM_CLOSED))
			item->note = raw->note;
	}
}

static void fill_waits(Judging *judging, const Group *group, Finding *item)
{
	const Criteria *criteria = judging->cases->criteria;
	uint32_t count = 0;
	for (uint32_t i = 0; group->rules != NULL && i < criteria->rules; i++)
		count += (group->rules[i / 64] >> i % 64 & 1) != 0;
	item->waits = TAKE(judging->arena, const char *, count + 1);
	for (uint32_t i = 0; group->rules != NULL && i < criteria->rules; i++)
		if (group->rules[i / 64] >> i % 64 & 1)
			item->waits[item->waiting++] = criteria->rule[i].code;
}

/* Those of a group that were found in this round. */
static Group found_now(const Judging *judging, const Group *group)
{
	Group live = *group;
	live.raw = TAKE(judging->arena, Raw *, group->raws);
	live.raws = 0;
	for (uint32_t i = 0; i < group->raws; i++)
		if (group->raw[i]->found_by != FOUND_EARLIER)
			live.raw[live.raws++] = group->raw[i];
	return live;
}

static void fill_by_rounds(const Raw *raw, Finding *item, Arena *arena)
{
	fill_message(item, &(Complaint){ .id = raw->message, .about = *raw->about }, arena);
	if (raw->message != MESSAGE_RND_01 && raw->message < MESSAGE_VAR_01) /* VAR stands last */
		return;
	if (raw->message == MESSAGE_RND_01)
		item->submitted.text = cut_text(raw->about->value, arena);
	if (raw->message == MESSAGE_RND_01)
		item->limit.text = cut_text(raw->about->want, arena);
	if (raw->message >= MESSAGE_VAR_01)
		item->answer_by = "panel maker";
}

void fill_item(Judging *judging, const Group *whole, Finding *item)
{
	Group found = found_now(judging, whole), *group = &found;
	if (found.raws == 0) {
		fill_carried(judging, whole->raw[0], item);
		fill_spots(judging, whole, item);
		fill_waits(judging, whole, item);
		return;
	}
	const Raw *raw = group->raw[0];
	item->found_by = raw->found_by;
	item->code = raw_code(raw);
	item->action = raw->action;
	if (raw->where != NULL) {
		item->record = kind_words(raw->where->kind, judging->arena);
		item->name = raw->where->name;
	}
	if (raw->found_by == FOUND_BROKEN)
		fill_broken(judging, group, item);
	else if (raw->found_by == FOUND_BY_READER)
		fill_by_reader(raw, item, judging->arena);
	else if (raw->found_by == FOUND_BY_REVIEWER)
		fill_own(judging, raw, item);
	else if (raw->found_by == FOUND_BY_ROUNDS)
		fill_by_rounds(raw, item, judging->arena);
	else
		fill_missing(judging, group, item);
	const char *field = field_of(raw, judging->arena);
	item->field = TAKE(judging->arena, const char *, 1);
	if (field != NULL)
		item->field[item->fields++] = field;
	fill_spots(judging, whole, item);
	fill_waits(judging, whole, item);
}

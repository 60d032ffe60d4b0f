/* SPDX-License-Identifier: MIT
 * A verdict filled in by hand, for the tests of reports: one item with two places, one part, one of everything a report prints.
 */
#ifndef SAMPLE_VERDICT_H
#define SAMPLE_VERDICT_H

#include "check.h"

#include "verdict.h"

/* Every text of the submittal says `text`, so far as it is free text. */
static inline void fill_texts(Arena *arena, const Record *record, void *row, const char *text)
{
	((Given *)row)->said = SAID_VALUE;
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		Given *given = given_at(field, row);
		if (field->kind == IS_ONE) {
			fill_texts(arena, field->record, given, text);
			continue;
		}
		*given = (Given){ .said = SAID_VALUE, .typed = text, .place = { .line = 1, .column = 1 } };
		if (field->kind == IS_TEXT || field->kind == IS_NAME)
			((Text *)(void *)given)->text = text;
		if (field->kind == IS_LIST) {
			List *list = (List *)(void *)given;
			list->count = 1;
			list->row = arena_take(arena, 1, field->record->size);
			fill_texts(arena, field->record, list->row, text);
		}
		if (field->kind == IS_TEXTS) {
			Texts *texts = (Texts *)(void *)given;
			Text *one = TAKE(arena, Text, 1);
			*one = (Text){ .given = *given, .text = text };
			texts->count = 1;
			texts->at = one;
		}
		if (field->kind == IS_BY_ZONE) {
			ByZone *zones = (ByZone *)(void *)given;
			ZoneValue *one = TAKE(arena, ZoneValue, 1);
			*one = (ZoneValue){ .given = *given, .zone = text, .value = 1 };
			zones->count = 1;
			zones->at = one;
		}
	}
}

static inline Case *sample_case(Arena *arena, Cases *cases, RecordKind kind, const char *name)
{
	Case *made = TAKE(arena, Case, 1);
	*made = (Case){ .all = cases, .kind = kind, .name = name };
	return made;
}

static inline Verdict *sample_verdict(Arena *arena, const char *text)
{
	Verdict *verdict = TAKE(arena, Verdict, 1);
	Cases *cases = TAKE(arena, Cases, 1);
	Submittal *submittal = TAKE(arena, Submittal, 1);
	Criteria *criteria = TAKE(arena, Criteria, 1);
	fill_texts(arena, &Submittal_record, submittal, text);
	criteria->folder = text;
	*cases = (Cases){ .submittal = submittal, .criteria = criteria, .arena = arena, .as_of = 20557 };
	Case *area = sample_case(arena, cases, KIND_roof_area, text), *clip = sample_case(arena, cases, KIND_clip, text);
	Clip *row = TAKE(arena, Clip, 1);
	fill_texts(arena, &Clip_record, row, text);
	clip->row = row;
	clip->up = area;

	const char *line = arena_printf(arena, "%s\n%s\n", text, text);
	const char *file = strlen(text) < 60 ? text : "long.yaml";
	*verdict = (Verdict){ .cases = cases, .source = source_make(arena, file, line, strlen(line), SOURCE_SUBMITTAL),
		.criteria_sha256 = text, .self_check = true, .stage = STAGE_application, .round = 1 };
	Spot *spot = TAKE(arena, Spot, 2);
	spot[0] = (Spot){ .where = clip, .place = { .line = 1, .column = 2, .length = 3 }, .see = text, .fingerprint = 0xabc };
	spot[1] = (Spot){ .where = area, .place = { .line = 2, .column = 1 }, .see = text };
	const char **field = TAKE(arena, const char *, 1);
	field[0] = text;
	Finding *item = TAKE(arena, Finding, 1);
	*item = (Finding){ .code = "CLP-01", .action = ACTION_REJECTED, .spot = spot, .spots = 2, .record = "clip", .name = text,
		.finding = text, .remedy = text, .basis = text, .answer_by = text,
		.submitted = { text, 58.4, true, "psf" }, .limit = { text, 0.1, true, "in" }, .field = field, .fields = 1,
		.authority = AUTHORITY_LISTING, .known_by = KNOWN_SECOND_HAND, .round = 1, .item = 3 };
	verdict->item = item;
	verdict->items = 1;
	verdict->by_action[ACTION_REJECTED] = 1;
	static const Rule rule = { .code = "CLP-02", .for_each = KIND_clip };
	NotYet *not_yet = TAKE(arena, NotYet, 1);
	*not_yet = (NotYet){ .rule = &rule, .where = clip, .waits_for = text };
	verdict->not_yet = not_yet;
	verdict->not_yets = 1;
	PartLine *part = TAKE(arena, PartLine, 1);
	*part = (PartLine){ clip, PART_NOT_CLEARED, item };
	verdict->part = part;
	verdict->parts = 1;
	Assumption *assumed = TAKE(arena, Assumption, 1);
	*assumed = (Assumption){ clip, &Clip_record.field[0], text };
	verdict->assumed = assumed;
	verdict->assumptions = 1;
	Unverified *unverified = TAKE(arena, Unverified, 1);
	*unverified = (Unverified){ text, text };
	verdict->unverified = unverified;
	verdict->unverifieds = 1;
	verdict->order_line = text;
	return verdict;
}

#endif

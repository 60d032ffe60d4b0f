/* SPDX-License-Identifier: MIT
 * Whether a candidate holds: what of a judged copy speaks of its panel, clip, screw, listings or zones, and whether one part
 * alone is held back whatever stands beside it.
 *
 * Nothing here says what is allowed: a construction is offered if the judged copy finds nothing of NOT REVIEWED or worse that
 * rests on it. What only is not stated of it yet is told.
 */
#include "offering.h"

#include <string.h>

enum { MOST_NAMED_FIELDS = 6 };

static bool is_part_of_it(const Case *at)
{
	switch (at->kind) {
	case KIND_panel:
	case KIND_zone:
	case KIND_test:
		return true;
	case KIND_clip:
		return is_word(&((const Clip *)at->row)->use, "running");
	case KIND_fastener:
		return is_word(&((const Fastener *)at->row)->use, "clip");
	case KIND_comparison: {
		const Case *part = ((const Compared *)at->row)->part;
		return part == NULL || is_part_of_it(part) || part->kind == KIND_layer || part->kind == KIND_support;
	}
	default:
		return false;
	}
}

/* ---- what a rule looked at ---- */

static bool is_varied(RecordKind kind)
{
	return kind == KIND_panel || kind == KIND_clip || kind == KIND_fastener || kind == KIND_zone;
}

/* Whether a field belongs to a record that varies, or leads to one; but for those of `kind`. */
static bool leads_elsewhere(const Field *field, RecordKind kind)
{
	static const RecordKind varied[] = { KIND_panel, KIND_clip, KIND_fastener, KIND_zone };
	for (size_t i = 0; field != NULL && i < sizeof varied / sizeof *varied; i++) {
		const Record *record = record_of(varied[i]);
		bool is_its = (uintptr_t)field - (uintptr_t)record->field < record->count * sizeof *record->field;
		if (varied[i] != kind && (is_its || field->record == record))
			return true;
	}
	return false;
}

static bool stands_elsewhere(const Case *at, RecordKind kind)
{
	if (at == NULL)
		return false;
	const Case *part = at->kind == KIND_comparison ? ((const Compared *)at->row)->part : NULL;
	return (at->kind != kind && is_varied(at->kind)) || (part != NULL && part->kind != kind && is_varied(part->kind));
}

/* Facts use facts as deep as facts.def goes. */
static bool rests_elsewhere(const Cases *all, const Fact *fact, RecordKind kind)
{
	for (uint32_t i = fact->first_use; i != 0; i = all->use[i - 1].next) {
		const Use *use = &all->use[i - 1];
		if (use->kind == USED_CONSTANT)
			continue;
		if (stands_elsewhere(use->at, kind) || (use->kind != USED_FACT && leads_elsewhere(use->what.field, kind)))
			return true;
		if (use->kind == USED_FACT && rests_elsewhere(all, fact_of((Case *)use->at, use->what.fact), kind))
			return true;
	}
	return false;
}

static bool looks_elsewhere(const Case *where, const Test *test, RecordKind kind)
{
	Tested tested = test_case(where, test);
	const OperandValue *sides[] = { &tested.left, &tested.right };
	for (size_t i = 0; i < sizeof sides / sizeof *sides; i++)
		if (stands_elsewhere(sides[i]->at, kind) || leads_elsewhere(sides[i]->field, kind) ||
			(sides[i]->fact != NULL && rests_elsewhere(where->all, sides[i]->fact, kind)))
			return true;
	return false;
}

/* A rule on the area as a whole, or on what stays as submitted beside it (the support, the fixed clips), speaks of the
 * construction if it looked at it. */
static bool concerns_it(const Trouble *trouble)
{
	const Case *where = trouble->where;
	if (where == NULL)
		return false;
	if (is_part_of_it(where))
		return true;
	bool may_rest_on_it = where->kind == KIND_roof_area || where->kind == KIND_support || where->kind == KIND_clip;
	RecordKind own = where->kind == KIND_clip ? KIND_clip : RECORD_KINDS;
	return may_rest_on_it && trouble->rule != NULL && looks_elsewhere(where, &trouble->rule->is, own);
}

/* ---- what is told ---- */

/* "panel color", "SLP-01": what is still to be said, or waits for it. */
static void name_open(Holding *holding, const char *const *piece, size_t pieces)
{
	char words[LONGEST_WORDS / 2];
	size_t length = 0, used = strlen(holding->to_state);
	for (size_t i = 0; i < pieces; i++)
		for (const char *c = piece[i]; *c != '\0' && length + 1 < sizeof words; c++)
			words[length++] = *c == '_' ? ' ' : *c;
	words[length] = '\0';
	bool is_told = strstr(holding->to_state, words) != NULL;
	if (is_told || holding->fields++ >= MOST_NAMED_FIELDS || used + length + 3 >= LONGEST_WORDS)
		return;
	if (used > 0)
		memcpy(holding->to_state + used, ", ", 3);
	memcpy(holding->to_state + used + (used > 0 ? 2 : 0), words, length + 1);
}

static void name_field(Holding *holding, const Trouble *trouble)
{
	name_open(holding, (const char *const[]){ record_of(trouble->where->kind)->name, " ", trouble->field->key }, 3);
}

/* What only is not shown, and a rule that waits for what is not due yet, hold nothing back; that it was not judged is told. */
bool only_waits(const Trouble *trouble)
{
	Tested blocking = { .outcome = TEST_MET };
	if (trouble->rule == NULL || trouble->where == NULL)
		return false;
	if (trouble->rule->action == ACTION_NOT_REVIEWED)
		return true;
	TestOutcome when = test_all(trouble->where, trouble->rule->when, trouble->rule->conditions, &blocking);
	return when == TEST_WAITS || (when == TEST_MET && test_case(trouble->where, &trouble->rule->is).outcome == TEST_WAITS);
}

/* A key of the support that is not stated: with it unknown nothing matches a listing. */
static void name_missing(Holding *holding, const Field *field)
{
	size_t used = strlen(holding->missing), length = strlen(field->key);
	if (strstr(holding->missing, field->key) != NULL || used + length + 3 >= sizeof holding->missing)
		return;
	memcpy(holding->missing + used, ", ", used > 0 ? 2 : 0);
	used += used > 0 ? 2 : 0;
	for (size_t i = 0; i <= length; i++)
		holding->missing[used + i] = field->key[i] == '_' ? ' ' : field->key[i];
}

static void hold_back(Holding *holding, const char *code)
{
	for (uint32_t i = 0; i < holding->blocks && i < MOST_CODES; i++)
		if (strcmp(holding->blocked_by[i], code) == 0)
			return;
	if (holding->blocks < MOST_CODES)
		holding->blocked_by[holding->blocks] = code;
	holding->blocks++;
}

static bool take_trouble(void *user, const Trouble *trouble)
{
	Holding *holding = user;
	if (trouble->rule == NULL && trouble->field != NULL && trouble->where != NULL && trouble->where->kind == KIND_support)
		name_missing(holding, trouble->field);
	if (!concerns_it(trouble))
		return true;
	RecordKind kind = trouble->where->kind;
	bool is_of_a_part = kind == KIND_panel || kind == KIND_clip || kind == KIND_fastener;
	if (trouble->rule == NULL && trouble->field != NULL && is_of_a_part)
		name_field(holding, trouble);
	else if (only_waits(trouble))
		name_open(holding, (const char *const[]){ "rule ", trouble->code }, 2);
	else
		hold_back(holding, trouble->code != NULL ? trouble->code : "what is not stated");
	return true;
}

void judge_candidate(Offering *offering, Cases *cases, Holding *holding)
{
	Trial trial = { .first = &cases->criteria->rule[0], .found = take_trouble, .user = holding };
	judge_trial(offering->advising->arena, cases, &trial);
}

/* ---- whether one part alone holds it back ---- */

typedef struct {
	RecordKind kind;
	bool held;
} Screening;

static bool screen_trouble(void *user, const Trouble *trouble)
{
	Screening *screening = user;
	if (trouble->rule == NULL || !concerns_it(trouble) || only_waits(trouble) || stands_elsewhere(trouble->where, screening->kind))
		return true;
	bool elsewhere = looks_elsewhere(trouble->where, &trouble->rule->is, screening->kind);
	for (uint32_t i = 0; i < trouble->rule->conditions; i++)
		elsewhere |= looks_elsewhere(trouble->where, &trouble->rule->when[i], screening->kind);
	screening->held = !elsewhere;
	return !screening->held;
}

bool is_held_by_part(Offering *offering, Cases *cases, RecordKind kind)
{
	Screening screening = { .kind = kind };
	Trial trial = { .first = &cases->criteria->rule[0], .found = screen_trouble, .user = &screening };
	judge_trial(offering->advising->arena, cases, &trial);
	return screening.held;
}

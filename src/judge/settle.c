/* SPDX-License-Identifier: MIT
 * What becomes of an item of an earlier round of which nothing was found in this one. It closes only where its rule was judged
 * again on the same record and met, or what was missing is stated; a record, field or paper that is gone leaves it open.
 */
#include "judge.h"

#include <string.h>

/* ---- what was taken out ---- */

static const Case *area_of(const Case *at)
{
	const Case *area = at != NULL ? case_outward(at, KIND_roof_area) : NULL;
	return area != NULL ? area : at != NULL ? case_outward(at, KIND_submittal) : NULL;
}

static bool takes_out(const Changed *changed)
{
	bool is_gone = changed->kind == RECORD_REMOVED || strcmp(changed->here, "nothing") == 0 || strcmp(changed->here, "unknown") == 0;
	return is_gone || (changed->keys != NULL && strcmp(changed->keys, "warranted") == 0);
}

typedef struct {
	const Case *at;
} AreaKey;

static Hash *areas_taken_out(const Judging *judging)
{
	const History *history = judging->history;
	Hash *areas = hash_make(judging->arena, 8);
	for (uint32_t i = 0; i < history->changes; i++) {
		AreaKey *key = TAKE(judging->arena, AreaKey, 1);
		key->at = area_of(history->changed[i].now);
		if (takes_out(&history->changed[i]))
			hash_put(areas, (const char *)key, sizeof *key, areas);
	}
	return areas;
}

bool is_taken_out(Judging *judging, const Case *where)
{
	if (judging->taken_out == NULL)
		judging->taken_out = areas_taken_out(judging);
	AreaKey key = { area_of(where) };
	return hash_get(judging->taken_out, (const char *)&key, sizeof key) != NULL;
}

/* ---- by rules ---- */

static const Rule *rule_of(const Judging *judging, const char *code)
{
	const Criteria *criteria = judging->cases->criteria;
	for (uint32_t i = 0; criteria != NULL && i < criteria->rules; i++)
		if (strcmp(criteria->rule[i].code, code) == 0)
			return &criteria->rule[i];
	return NULL;
}

static void set(Raw *raw, ItemState state, const char *note)
{
	raw->state = state;
	raw->note = note;
}

static bool is_by_note(const Raw *raw)
{
	return raw->action == ACTION_CORRECTIONS || raw->action == ACTION_FIELD_VERIFY ||
	       raw->earlier->place[raw->earlier_place].state == ITEM_CONDITION;
}

static void stay_open(Judging *judging, Raw *raw, const char *note)
{
	if (!is_by_note(raw)) {
		set(raw, ITEM_OPEN, note);
		return;
	}
	const char *paper = shown_by(judging, raw->earlier);
	if (paper != NULL)
		set(raw, ITEM_CLOSED, shown_words(judging, paper));
	else
		set(raw, ITEM_CONDITION, "to be shown done");
}

/* Against the catalogue only what differs is compared: where the two agree there is nothing left to judge. */
static bool is_against_catalogue(const Rule *rule)
{
	for (uint32_t i = 0; i < rule->conditions; i++) {
		const Test *test = &rule->when[i];
		bool is_with = test->left.word != NULL && strcmp(test->left.word, "with") == 0;
		if (is_with && test->right.word != NULL && strcmp(test->right.word, "catalogue") == 0)
			return true;
	}
	return false;
}

/* Over every record that was this one before: a split closes when both halves are met. */
static void settle_by_rule(Judging *judging, Raw *raw, const Rule *rule, bool is_double)
{
	bool all_met = true, any_waits = false, any_judged = false, any_broken = false;
	const EarlierPlace *place = &raw->earlier->place[raw->earlier_place];
	for (const HeldAs *held = held_as(judging->history, place->path); held != NULL; held = held->next) {
		unsigned came = outcome_of(judging, rule, held->at);
		any_waits |= (came & CAME_WAITING) != 0;
		any_broken |= (came & CAME_BROKEN) != 0 && !is_double;
		any_judged |= came != 0;
		all_met &= (came & CAME_MET) != 0;
	}
	if (any_broken)
		stay_open(judging, raw, "open: told by another item");
	else if (!any_judged && held_as(judging->history, place->path) != NULL && is_against_catalogue(rule))
		set(raw, ITEM_CLOSED, "judged again: the two agree");
	else if (any_waits || !any_judged)
		stay_open(judging, raw, "not judged again: what it needs is missing");
	else if (all_met)
		set(raw, ITEM_CLOSED, "judged again and met");
	else if (is_by_note(raw) || is_taken_out(judging, raw->where))
		stay_open(judging, raw, "not judged again: what called for it was taken out; confirm on the roof plan");
	else
		set(raw, ITEM_CLOSED, "judged again: it no longer applies");
}

/* ---- by what was missing ---- */

/* The value under "clip.item" in a record or in one inside it; as deep as the form. */
static const Given *given_named(const Record *record, const void *row, const char *name)
{
	size_t length = strlen(record->name);
	bool is_of_record = strncmp(name, record->name, length) == 0 && name[length] == '.';
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		if (is_of_record && strcmp(field->key, name + length + 1) == 0)
			return given_in(field, row);
		const Given *inside = field->kind == IS_ONE ? given_named(field->record, given_in(field, row), name) : NULL;
		if (inside != NULL)
			return inside;
	}
	return NULL;
}

static void settle_missing(Judging *judging, Raw *raw)
{
	const char *field = raw->earlier->place[raw->earlier_place].field;
	const Case *at = raw->where;
	const Given *given = field != NULL && at->row != NULL ? given_named(record_of(at->kind), at->row, field) : NULL;
	if (given != NULL && (is_value(given) || given->said == SAID_NONE))
		set(raw, ITEM_CLOSED, "stated now");
	else if (given != NULL)
		stay_open(judging, raw, "still not stated");
	else if (is_taken_out(judging, raw->where))
		stay_open(judging, raw, "not judged again: what called for it was taken out; confirm on the roof plan");
	else
		set(raw, ITEM_CLOSED, "judged again: nothing is missing");
}

/* ---- by readers ---- */

static Hash *keys_missing(const Judging *judging)
{
	Hash *keys = hash_make(judging->arena, 16);
	for (uint32_t i = 0; i < judging->raws; i++) {
		const Raw *raw = judging->raw[i];
		if (raw->found_by == FOUND_MISSING && raw->field != NULL)
			hash_put(keys, raw->field->key, strlen(raw->field->key), keys);
	}
	return keys;
}

/* "Main roof / clips / 2: spacing": whether that key is missing now, instead of wrong. */
static bool is_missing_instead(Judging *judging, const char *field)
{
	const char *key = field != NULL ? strrchr(field, ' ') : NULL;
	if (judging->missing_keys == NULL)
		judging->missing_keys = keys_missing(judging);
	return key != NULL && hash_get(judging->missing_keys, key + 1, strlen(key + 1)) != NULL;
}

/* ---- any ---- */

static bool begins(const char *code, const char *family)
{
	return strncmp(code, family, strlen(family)) == 0;
}

static void settle_change(Judging *judging, Raw *raw)
{
	const History *history = judging->history;
	if (history->made_good[raw->earlier - history->earlier->item])
		set(raw, ITEM_CLOSED, "declared now, or taken back");
	else
		set(raw, ITEM_OPEN, "still not declared");
}

static const char *removed_note(const Judging *judging, const char *path)
{
	const char *other = path != NULL ? hash_get(judging->history->replaced, path, strlen(path)) : NULL;
	return other == NULL ? "removed: confirm on the roof plan"
		: arena_printf(judging->arena, "removed: confirm on the roof plan; if %s took its place, write there what it was (was:)",
			other);
}

static void settle_open(Judging *judging, Raw *raw, bool is_double)
{
	const EarlierItem *item = raw->earlier;
	const char *code = item->code, *field = item->place[raw->earlier_place].field;
	const Rule *rule = rule_of(judging, code);
	if (strcmp(code, "OWN") == 0)
		set(raw, is_by_note(raw) ? ITEM_CONDITION : ITEM_OPEN, "the reviewer's own: his to close");
	if (strcmp(code, "OWN") == 0 && is_by_note(raw))
		stay_open(judging, raw, NULL);
	else if (strcmp(code, "OWN") == 0)
		return;
	else if (begins(code, "RND-") && strcmp(code, "RND-04") < 0)
		settle_change(judging, raw);
	else if (begins(code, "SEE-"))
		set(raw, is_paper_seen(judging, field) ? ITEM_CLOSED : ITEM_OPEN, is_paper_seen(judging, field) ? "seen now" : "not seen yet");
	else if (begins(code, "RND-") || begins(code, "VAR-"))
		set(raw, ITEM_CLOSED, "no longer so");
	else if (begins(code, "YML-") || begins(code, "FRM-") || begins(code, "FIL-"))
		set(raw, is_missing_instead(judging, field) ? ITEM_OPEN : ITEM_CLOSED, is_missing_instead(judging, field)
			? "taken out instead of corrected" : "read again without this fault");
	else if (raw->where == NULL)
		set(raw, is_by_note(raw) ? ITEM_CONDITION : ITEM_OPEN, removed_note(judging, item->place[raw->earlier_place].path));
	else if (rule != NULL)
		settle_by_rule(judging, raw, rule, is_double);
	else if (begins(code, "MIS-"))
		settle_missing(judging, raw);
	else
		stay_open(judging, raw, "not judged again: these criteria have no such rule");
}

void settle_place(Judging *judging, Raw *raw, bool is_double)
{
	if (raw->earlier->place[raw->earlier_place].state == ITEM_CLOSED)
		set(raw, ITEM_CLOSED, raw->earlier->note);
	else
		settle_open(judging, raw, is_double);
}

/* ---- texts ---- */

void fill_carried(Judging *judging, const Raw *raw, Finding *item)
{
	const EarlierItem *earlier = raw->earlier;
	item->found_by = FOUND_EARLIER;
	item->code = earlier->code;
	item->action = earlier->action;
	item->rule = rule_of(judging, earlier->code);
	item->record = earlier->record != NULL ? earlier->record : "submittal";
	item->name = earlier->name;
	item->finding = earlier->finding;
	item->remedy = earlier->remedy;
	item->basis = earlier->basis;
	item->answer_by = earlier->answer_by;
	item->cites = earlier->cites;
	item->submitted = earlier->submitted;
	item->limit = earlier->limit;
	item->authority = earlier->authority;
	item->known_by = earlier->known_by;
	item->field = TAKE(judging->arena, const char *, earlier->fields + 1);
	for (uint32_t i = 0; i < earlier->fields; i++)
		item->field[item->fields++] = earlier->field[i];
}

void settle_items(Judging *judging)
{
	Verdict *verdict = judging->verdict;
	for (uint32_t i = 0; i < verdict->items; i++) {
		Finding *item = &verdict->item[i];
		const EarlierItem *earlier = judging->group[i].raw[0]->earlier;
		bool is_closed = item_state(item) == ITEM_CLOSED;
		if (earlier != NULL && item->disposition == NULL && earlier->reviewer != NULL && item_state(item) == earlier->state)
			item->disposition = earlier->reviewer;
		if (is_closed)
			item->settled = earlier != NULL && earlier->settled > 0 ? earlier->settled : verdict->round;
	}
}

/* SPDX-License-Identifier: MIT
 * Choices: the catalogue's items for every place of a roof area that holds a part other than the construction's, and for every
 * place that required.csv asks to be filled and nothing fills. Each item is put there in a copy, which is judged: what speaks of
 * that place, or of the role, must find nothing.
 */
#include "offering.h"

#include <string.h>

/* A place under trial: the list it stands in and its number there; of an empty place, what fills it. */
typedef struct {
	const Record *record;
	const Field *list; /* of RoofArea */
	uint32_t number; /* in the list */
	const BoundRole *role; /* NULL: a part stands there */
	const Case *part;
} OfferPlace;

static List *list_of(const OfferPlace *spot, RoofArea *area)
{
	return (List *)(void *)((char *)area + spot->list->offset);
}

/* Conditions that name a word give the new part that word; a list offers its first entry. */
static void fill_by(const OfferPlace *spot, void *row, const Criteria *criteria)
{
	for (uint32_t i = 0; i < spot->role->fills; i++) {
		const Test *test = &spot->role->filled_by[i];
		if (test->left.from != FROM_FIELD || test->left.field == NULL)
			continue;
		if (test->relation == RELATION_IS && test->right.from == FROM_CONSTANT && test->right.word != NULL)
			set_word(spot->record, row, test->left.field->key, test->right.word);
		for (uint32_t n = 0; test->relation == RELATION_IN && test->right.from == FROM_LIST && n < criteria->lists.count; n++)
			if (strcmp(criteria->lists.row[n].list.text, test->right.word) == 0) {
				set_word(spot->record, row, test->left.field->key, criteria->lists.row[n].entry.text);
				break;
			}
	}
}

typedef struct {
	const OfferPlace *spot;
	const void *row; /* the part tried */
	bool is_bid, blocked;
} Watching;

static bool speaks_of(const Watching *watching, const Case *where)
{
	if (where == NULL)
		return false;
	if (where->submitted == watching->row)
		return true;
	if (where->kind == KIND_comparison)
		return ((const Compared *)where->row)->part != NULL && ((const Compared *)where->row)->part->submitted == watching->row;
	if (where->kind == KIND_contact)
		return ((const Met *)where->row)->part != NULL && ((const Met *)where->row)->part->submitted == watching->row;
	return where->kind == KIND_role && watching->spot->role != NULL && ((const RoleDue *)where->row)->bound == watching->spot->role;
}

/* What the item opens is a place of its own; on a bid what is to be stated yet holds nothing back. */
static bool is_of_later(const Watching *watching, const Trouble *trouble)
{
	const Rule *rule = trouble->rule;
	if (rule != NULL && rule->for_each == KIND_role && watching->spot->role == NULL)
		return true;
	return watching->is_bid && (only_waits(trouble) || (rule != NULL && rule->is.relation == RELATION_GIVEN));
}

static bool watch(void *user, const Trouble *trouble)
{
	Watching *watching = user;
	if (speaks_of(watching, trouble->where) && !(trouble->rule == NULL && trouble->where->kind != KIND_role))
		watching->blocked = !is_of_later(watching, trouble);
	return !watching->blocked;
}

/* What only is not stated of a part yet does not count against an item, nor on a bid what waits for it. */
static bool is_offered(Offering *offering, const OfferPlace *spot, const void *item)
{
	Advising *advising = offering->advising;
	ArenaMark mark = arena_mark(advising->arena);
	Copy *copy = copy_submittal(advising, offering->number);
	List *list = list_of(spot, copy->submittal.roof_areas.of.row);
	char *row;
	if (spot->role != NULL) {
		row = list_with_room(advising->arena, list, spot->record);
		memcpy(row, part_made(advising->arena, spot->record), spot->record->size);
		fill_by(spot, row, advising->verdict->cases->criteria);
	} else {
		char *rows = arena_take(advising->arena, list->count + 1, spot->record->size);
		memcpy(rows, list->row, list->count * spot->record->size);
		list->row = rows;
		row = rows + spot->number * spot->record->size;
	}
	if (item != NULL)
		place_item(spot->record, row, item);
	offering->offers->tries++;
	Cases *cases = resolve_copy(advising, copy);
	Watching watching = { .spot = spot, .row = row, .is_bid = advising->verdict->stage == STAGE_bid };
	Trial trial = { .first = &cases->criteria->rule[0], .found = watch, .user = &watching };
	judge_trial(advising->arena, cases, &trial);
	arena_back(advising->arena, mark);
	return !watching.blocked;
}

static const char *where_of(const OfferPlace *spot)
{
	static const char *const keys[] = { "where", "use", "treatment", "kind" };
	if (spot->role != NULL)
		return spot->role->row->role.text;
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		const Field *field = field_find(spot->record, keys[i], strlen(keys[i]));
		const Word *word = field != NULL ? (const Word *)(const void *)given_in(field, spot->part->row) : NULL;
		if (word != NULL && is_value(&word->given))
			return word->text;
	}
	return spot->part->name;
}

/* An opening for which nothing is chosen yet may have a curb or a boot. */
static bool may_have(const OfferPlace *spot, bool boot)
{
	if (spot->record->kind != KIND_penetration)
		return !boot;
	const Word *treatment = spot->part != NULL ? &((const Penetration *)spot->part->row)->treatment : NULL;
	bool is_open = treatment == NULL || !is_value(&treatment->given);
	return is_open || is_word(treatment, "boot") == boot;
}

static void offer_items(Offering *offering, const OfferPlace *spot, const Items *items, PlaceOffer *choice)
{
	Arena *arena = offering->advising->arena;
	const char **all = TAKE(arena, const char *, choice->items + items->count + 1);
	for (uint32_t i = 0; i < choice->items; i++)
		all[i] = choice->item[i];
	choice->item = all;
	for (uint32_t i = 0; i < items->count && may_offer(offering); i++) {
		const Panel *item = (const Panel *)(const void *)(items->row + i * spot->record->size);
		if (!is_offered(offering, spot, item))
			continue;
		choice->stands |= choice->submitted != NULL && strcmp(choice->submitted, item->item.text) == 0;
		choice->item[choice->items++] = item->item.text;
	}
}

static void offer_spot(Offering *offering, const OfferPlace *spot)
{
	Offers *offers = offering->offers;
	Arena *arena = offering->advising->arena;
	const Panel *now = spot->part != NULL ? spot->part->submitted : NULL;
	PlaceOffer choice = { .area = offering->area, .kind = spot->record->name, .where = where_of(spot) };
	choice.submitted = now != NULL && is_value(&now->item.given) ? now->item.text : NULL;
	for (int boot = 0; boot < 2; boot++)
		if (may_have(spot, boot == 1)) {
			Items items = items_of(offering->area->all->criteria, (RecordKind)spot->record->kind, boot == 1);
			offer_items(offering, spot, &items, &choice);
		}
	if (now != NULL && !choice.stands && may_offer(offering))
		choice.stands = is_offered(offering, spot, NULL);
	offers->choice = arena_more(arena, offers->choice, offers->choices, &offers->choice_room, sizeof choice);
	offers->choice[offers->choices++] = choice;
}

/* ---- places ---- */

static RecordKind kind_named(const char *word)
{
	for (int kind = 0; word != NULL && kind < RECORD_KINDS; kind++)
		if (is_part((RecordKind)kind) && strcmp(record_of((RecordKind)kind)->name, word) == 0)
			return (RecordKind)kind;
	return RECORD_KINDS;
}

static const Field *list_of_kind(RecordKind kind)
{
	for (uint32_t i = 0; i < RoofArea_record.count; i++)
		if (RoofArea_record.field[i].kind == IS_LIST && RoofArea_record.field[i].record->kind == kind)
			return &RoofArea_record.field[i];
	return NULL;
}

static bool is_offered_elsewhere(const Case *part)
{
	return (part->kind == KIND_clip && is_word(&((const Clip *)part->row)->use, "running")) ||
	       (part->kind == KIND_fastener && is_word(&((const Fastener *)part->row)->use, "clip"));
}

static void offer_parts(Offering *offering, RecordKind kind)
{
	const Cases *cases = offering->area->all;
	const Field *list = list_of_kind(kind);
	uint32_t number = 0;
	for (uint32_t i = 0; list != NULL && i < cases->of[kind].count; i++) {
		const Case *part = cases->of[kind].at[i];
		if (part->up != offering->area)
			continue;
		OfferPlace spot = { .record = record_of(kind), .list = list, .number = number++, .part = part };
		if (!is_offered_elsewhere(part))
			offer_spot(offering, &spot);
	}
}

/* Only roles of the roof area: an opening's own are filled beside it. */
static void offer_roles(Offering *offering)
{
	const Cases *cases = offering->area->all;
	for (uint32_t i = 0; i < cases->of[KIND_role].count; i++) {
		Case *role = cases->of[KIND_role].at[i];
		const RoleDue *due = role->row;
		RecordKind kind = kind_named(due->record.part.text);
		if (role->up != offering->area || kind == RECORD_KINDS || kind == KIND_clip || kind == KIND_fastener)
			continue; /* clips and their screws are the construction's */
		const Fact *is_due = fact_of(role, FACT_role_due), *found = fact_of(role, FACT_role_found);
		bool is_filled = found->state == FACT_KNOWN && found->value >= due->record.least_one.value;
		const Field *list = list_of_kind(kind);
		if (is_due->state != FACT_KNOWN || is_due->value == 0 || is_filled || list == NULL)
			continue;
		offer_spot(offering, &(OfferPlace){ .record = record_of(kind), .list = list, .role = due->bound });
	}
}

void offer_choices(Offering *offering)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		if (is_part((RecordKind)kind) && kind != KIND_support && kind != KIND_panel && kind != KIND_layer)
			offer_parts(offering, (RecordKind)kind);
	offer_roles(offering);
}

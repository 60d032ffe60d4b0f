/* SPDX-License-Identifier: MIT
 * Remedies carried out: for every rule case, whatever a remedy worked out (items that would be accepted, a spacing, a listing, a
 * term) is written into the submittal as a person would by its text, and judged again: the item is gone, and nothing of NOT
 * REVIEWED or worse has come up that was not there.
 *
 * What the engineer's letter may have been worked out from is a question to him and nothing that could be carried out.
 */
#include "../rule_cases.h"

enum { LONGEST = 400 };

typedef struct {
	World world; /* of the case */
	const RuleCase *of;
	Arena *arena;
	Node *root;
	const Source *source;
	Verdict *verdict;
} Play;

typedef struct {
	World world;
	RuleCases cases;
	uint32_t carried, failed;
} Suite;

static Play play(const World *world, const RuleCase *of)
{
	Play p = { .world = *world, .of = of, .arena = arena_make() };
	p.root = builtin_nodes(p.arena, "examples/clean.yaml", &p.source);
	edit_case(&p.world, p.arena, p.root, of);
	return p;
}

/* Without advice: nobody asks for remedies of what is left. */
static void judge_play(Play *p)
{
	Complaints complaints = { .arena = p->arena };
	Submittal *submittal = read_submittal(p->arena, p->root, p->source, p->world.reference, &complaints);
	Inputs inputs = { .submittal = submittal, .criteria = p->world.criteria, .reference = p->world.reference,
		.registers = p->world.registers, .as_of = INT32_MIN };
	p->verdict = judge(p->arena, resolve(p->arena, &inputs), &complaints, p->source);
}

/* ---- what a record is called in both reviews ---- */

static const Field *field_of(RecordKind kind)
{
	for (uint32_t i = 0; i < RoofArea_record.count; i++)
		if (RoofArea_record.field[i].record != NULL && RoofArea_record.field[i].record->kind == kind)
			return &RoofArea_record.field[i];
	return NULL;
}

/* roof_areas.0.clips.1, whatever its item is called; the name of a record of another kind. */
static const char *path_of(const Case *at, Arena *arena)
{
	const Field *field = at != NULL && at->up != NULL && at->up->kind == KIND_roof_area ? field_of(at->kind) : NULL;
	if (field == NULL || at->submitted == NULL)
		return at != NULL ? at->name : "";
	const char *areas = (const char *)at->all->submittal->roof_areas.of.row;
	uint32_t area = (uint32_t)(((const char *)at->up->submitted - areas) / (ptrdiff_t)sizeof(RoofArea));
	if (field->kind == IS_ONE)
		return arena_printf(arena, "roof_areas.%u.%s", area, field->key);
	const List *list = (const List *)(const void *)((const char *)at->up->submitted + field->offset);
	uint32_t number = (uint32_t)(((const char *)at->submitted - (const char *)list->row) / (ptrdiff_t)field->record->size);
	return arena_printf(arena, "roof_areas.%u.%s.%u", area, field->key, number);
}

/* Whether an item stands at one of the places of another. */
static bool has_place(const Verdict *verdict, const char *code, const char *path, Arena *arena)
{
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[i];
		for (uint32_t s = 0; strcmp(item->code, code) == 0 && s < item->spots; s++)
			if (strcmp(path_of(item->spot[s].where, arena), path) == 0)
				return true;
	}
	return false;
}

/* Whether a rule was held back on a record until a broken one is answered: then it was told. */
static bool was_held_back(const Verdict *verdict, const char *code, const char *path, Arena *arena)
{
	for (uint32_t i = 0; i < verdict->not_yets; i++) {
		const NotYet *not_yet = &verdict->not_yet[i];
		bool is_held = not_yet->item != NULL && not_yet->item->found_by == FOUND_BROKEN;
		if (is_held && strcmp(not_yet->rule->code, code) == 0 && strcmp(path_of(not_yet->where, arena), path) == 0)
			return true;
	}
	return false;
}

/* ---- carrying out ---- */

static void set(Play *p, const char *path, const char *key, const char *value)
{
	const char *whole = arena_printf(p->arena, "%s%s%s", path, *path != '\0' ? "." : "", key);
	if (!edit_nodes(p->arena, p->root, whole, value))
		fail_msg("%s leads nowhere", whole);
}

/* Writes an item, and takes out what was written of the one before. */
static void set_item(Play *p, const char *path, RecordKind kind, const char *name)
{
	static const char *const of_the_old[] = { "mark", "description", "sold_in", "stated_life", "life_paper", "was" };
	const Record *record = record_of(kind);
	const Panel *row = item_find(p->world.criteria, kind, name);
	if (row == NULL)
		fail_msg("%s is no item of the catalogue", name);
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		bool stated = given_in(field, row)->said != SAID_NOTHING && field->stricter != OWN;
		for (size_t j = 0; j < sizeof of_the_old / sizeof *of_the_old; j++)
			stated |= strcmp(field->key, of_the_old[j]) == 0;
		if (stated)
			(void)node_delete(p->root, arena_printf(p->arena, "%s.%s", path, field->key));
	}
	set(p, path, "item", name);
	if (is_value(&row->supplied_by.given))
		set(p, path, "supplied_by", row->supplied_by.text);
}

/* In a map of places each that the zone takes in; one value for all places is written anew. */
static void set_places(Play *p, const char *path, const Case *zone, const char *spacing)
{
	const Node *now = node_at(p->root, path);
	if (now != NULL && now->kind != NODE_MAP)
		set(p, "", path, spacing);
	const char *joined = ((const Zone *)zone->row)->places.text;
	while (now != NULL && now->kind == NODE_MAP) {
		const char *place = next_place(p->arena, &joined);
		if (place == NULL)
			return;
		set(p, path, place, spacing);
	}
}

/* "12 in": in the clips, and in the letter that the engineer issues again. */
static void set_spacing(Play *p, const Case *zone, const char *spacing)
{
	set_places(p, "roof_areas.0.clips.0.spacing", zone, spacing);
	set_places(p, "engineering.0.clip_spacing", zone, spacing);
}

/* ---- the text of a remedy ---- */

typedef struct {
	const char *name;           /* "accepted_items" */
	char value[LONGEST];        /* as printed in its place */
} Worked;

/* What was put in for the piece `at` of the wording; false where remedy_else is printed, or nothing is worked out. */
static bool worked_out(const Finding *item, uint32_t at, Worked *worked)
{
	const Wording *wording = &item->rule->remedy;
	const Piece *piece = &wording->piece[at];
	const char *begin = piece->for_advise ? strstr(item->remedy, piece->text) : NULL;
	if (begin == NULL || strcmp(piece->operand.word, "letter_inputs") == 0 || *piece->text == '\0')
		return false;
	begin += strlen(piece->text);
	const char *behind = at + 1 < wording->count ? wording->piece[at + 1].text : "";
	const char *end = *behind != '\0' ? strstr(begin, behind) : begin + strlen(begin);
	if (end == NULL || (size_t)(end - begin) >= LONGEST)
		return false;
	memcpy(worked->value, begin, (size_t)(end - begin));
	worked->value[end - begin] = '\0';
	worked->name = piece->operand.word;
	return end > begin;
}

/* The next of "a, b, c and 2 more", or of "a for b, c for d"; false at the end. */
static bool next_named(const char **text, char name[LONGEST])
{
	size_t length = strcspn(*text, ",");
	memcpy(name, *text, length);
	name[length] = '\0';
	*text += length + strspn(*text + length, ", ");
	char *more = strstr(name, " and ");
	if (more != NULL)
		*more = '\0';
	return *name != '\0';
}

/* ---- one remedy ---- */

/* Whether the item is gone and nothing is new; else says what is. */
static bool is_cured(Suite *suite, Play *after, const Play *before, const Finding *item, const char *did)
{
	bool cured = true;
	judge_play(after);
	suite->carried++;
	for (uint32_t s = 0; s < item->spots; s++)
		if (has_place(after->verdict, item->code, path_of(item->spot[s].where, before->arena), after->arena)) {
			print_error("%s %s, %s: %s did not cure it\n", before->of->code, before->of->name, item->code, did);
			cured = false;
			break;
		}
	for (uint32_t i = 0; i < after->verdict->items; i++) {
		const Finding *other = &after->verdict->item[i];
		for (uint32_t s = 0; other->action <= ACTION_NOT_REVIEWED && s < other->spots; s++) {
			const char *path = path_of(other->spot[s].where, after->arena);
			if (has_place(before->verdict, other->code, path, before->arena) ||
			    was_held_back(before->verdict, other->code, path, before->arena))
				continue;
			print_error("%s %s, %s: %s made %s at %s: %s\n", before->of->code, before->of->name, item->code, did, other->code,
				path, other->finding);
			cured = false;
		}
	}
	suite->failed += !cured;
	return cured;
}

static void try_items(Suite *suite, const Play *before, const Finding *item, const char *names)
{
	char name[LONGEST];
	while (next_named(&names, name)) {
		Play after = play(&suite->world, before->of);
		for (uint32_t s = 0; s < item->spots; s++)
			set_item(&after, path_of(item->spot[s].where, after.arena), item->spot[s].where->kind, name);
		is_cured(suite, &after, before, item, name);
		arena_free(after.arena);
	}
}

/* "18 in (limited by the uplift)", or one for each place, after its name. */
static void try_spacing(Suite *suite, const Play *before, const Finding *item, const char *text)
{
	Play after = play(&suite->world, before->of);
	for (uint32_t s = 0; s < item->spots; s++) {
		const char *name = arena_printf(after.arena, "%s: ", item->spot[s].where->name), *own = strstr(text, name);
		const char *value = own != NULL ? own + strlen(name) : text;
		set_spacing(&after, item->spot[s].where, arena_text(after.arena, value, strcspn(value, "(")));
	}
	is_cured(suite, &after, before, item, text);
	arena_free(after.arena);
}

/* "15 yr", which the specification takes as well. */
static void try_term(Suite *suite, const Play *before, const Finding *item, const char *text)
{
	Play after = play(&suite->world, before->of);
	const char *term = arena_text(after.arena, text, strcspn(text, "("));
	set(&after, "warranty", "term", term);
	if (strstr(text, "(the specification asks for") != NULL)
		set(&after, "specification.warranty", "term", term);
	is_cured(suite, &after, before, item, text);
	arena_free(after.arena);
}

static void set_listing(Play *p, const Listing *listing)
{
	for (uint32_t i = 0; i < 8; i++) {
		const char *path = arena_printf(p->arena, "roof_areas.0.tests.%u", i);
		const Node *role = node_at(p->root, arena_printf(p->arena, "%s.for", path));
		if (role != NULL && strcmp(role->text, listing->role.text) == 0)
			set(p, path, "listing", listing->listing.text);
	}
}

/* Every part of the roof area whose item is `old`. */
static void exchange(Play *p, const Verdict *verdict, const char *name, const char *old)
{
	uint32_t changed = 0;
	for (RecordKind kind = 0; kind < RECORD_KINDS; kind++)
		for (uint32_t i = 0; record_of(kind)->sort == RECORD_PART && i < verdict->cases->of[kind].count; i++) {
			const Case *part = verdict->cases->of[kind].at[i];
			const Text *item = &((const Panel *)part->row)->item;
			if (!is_value(&item->given) || strcmp(item->text, old) != 0)
				continue;
			set_item(p, path_of(part, p->arena), kind, name);
			changed++;
		}
	assert_true(changed > 0);
}

/* "tested-210 fits", "tested-250 with deck-20 for deck-22, screw-12x2 for screw-12x1"; one that does not fit is only a hint. */
static void try_listing(Suite *suite, const Play *before, const Finding *item, const char *text)
{
	char name[LONGEST];
	if (strstr(text, "does not fit") != NULL)
		return;
	Play after = play(&suite->world, before->of);
	const Listing *listing = listing_find(after.world.criteria, arena_text(after.arena, text, strcspn(text, " ")));
	assert_non_null(listing);
	set_listing(&after, listing);
	const char *with = strstr(text, " with ");
	for (const char *rest = with != NULL ? with + 6 : ""; next_named(&rest, name);) {
		char *old = strstr(name, " for ");
		assert_non_null(old);
		*old = '\0';
		exchange(&after, before->verdict, name, old + 5);
	}
	is_cured(suite, &after, before, item, text);
	arena_free(after.arena);
}

static void try_remedy(Suite *suite, const Play *before, const Finding *item)
{
	for (uint32_t i = 0; item->rule != NULL && i < item->rule->remedy.count; i++) {
		Worked worked;
		if (!worked_out(item, i, &worked))
			continue;
		if (strcmp(worked.name, "accepted_items") == 0)
			try_items(suite, before, item, worked.value);
		else if (strcmp(worked.name, "greatest_spacing") == 0)
			try_spacing(suite, before, item, worked.value);
		else if (strcmp(worked.name, "longest_term") == 0)
			try_term(suite, before, item, worked.value);
		else
			try_listing(suite, before, item, worked.value);
	}
}

/* ---- the test ---- */

static int make_suite(void **state)
{
	Suite *suite = calloc(1, sizeof *suite);
	suite->world = world_make();
	suite->cases = read_cases(suite->world.run);
	*state = suite;
	return 0;
}

static int free_suite(void **state)
{
	Suite *suite = *state;
	arena_free(suite->world.run);
	free(suite);
	return 0;
}

static void every_remedy_cures_and_makes_nothing_new(void **state)
{
	Suite *suite = *state;
	for (uint32_t i = 0; i < suite->cases.count; i++) {
		Play before = play(&suite->world, &suite->cases.at[i]);
		judge_play(&before);
		advise(before.verdict, before.arena);
		for (uint32_t k = 0; k < before.verdict->items; k++)
			try_remedy(suite, &before, &before.verdict->item[k]);
		arena_free(before.arena);
	}
	print_message("%u remedies carried out\n", suite->carried);
	assert_true(suite->carried > 300);
	assert_int_equal(suite->failed, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(every_remedy_cures_and_makes_nothing_new) };
	return cmocka_run_group_tests_name("remedies", tests, make_suite, free_suite) != 0;
}

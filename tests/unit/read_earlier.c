/* SPDX-License-Identifier: MIT
 * Earlier reports: what was printed is read back as it was meant, the submittal in it is the submittal, and no cut or edited report
 * passes for one.
 */
#include "harness.h"

#include "earlier.h"
#include "report.h"

static const Earlier *read_text(Arena *arena, const char *text, Complaints *faults)
{
	*faults = (Complaints){ .arena = arena };
	return read_earlier(arena, source_make(arena, "r.json", text, strlen(text), SOURCE_PREVIOUS), faults);
}

/* ---- one written by hand ---- */

#define ITEM \
	"{\"number\": \"1.01\", \"state\": \"new\", \"action\": \"HOLD\", \"code\": \"CLP-07\", \"record\": \"clip\", \"name\": \"Main / c\",\n" \
	"\"places\": [{\"letter\": \"a\", \"record\": \"clip\", \"name\": \"Main / c\", \"file\": \"s.yaml\", \"line\": 12, \"column\": 3,\n" \
	"\"end_column\": 9, \"state\": \"new\", \"fingerprint\": \"00000000000000ff\", \"path\": \"roof_areas[Main].clips[c]\", \"field\": \"clip.item\"}],\n" \
	"\"finding\": \"no\", \"submitted\": {\"text\": \"24 in\", \"value\": 24.0, \"unit\": \"in\"}, \"limit\": {\"text\": null, \"value\": null, \"unit\": null},\n" \
	"\"authority\": \"listing\", \"basis\": \"b\", \"known_by\": \"memory\", \"remedy\": \"r\", \"answer_by\": \"contractor\", \"fields\": [\"clip.item\"],\n" \
	"\"fingerprint\": \"00000000000000ff\"}"
#define HEAD \
	"{\"seamstamp\": \"1\", \"schema\": 1, \"mode\": \"review\", \"submittal\": \"MC-1\", \"round\": 2, \"stage\": \"order\",\n" \
	"\"criteria\": {\"name\": \"n\", \"edition\": \"e\", \"sha256\": \"aa\"}, \"recommended_action\": \"Not reviewed\", \"order_line\": \"Do not order\",\n"
#define TAIL \
	"\"not_judged\": [{\"code\": \"A\", \"record\": \"clip\", \"name\": null, \"waits_for\": \"clip.hole\"}], \"files\": [{\"path\": \"s.yaml\", \"sha256\": \"bb\"}],\n" \
	"\"previous\": {\"path\": \"p.json\", \"round\": 1, \"sha256\": \"cc\"}, \"values\": {\"submittal\": \"MC-1\"}}"

static void says_what_stands_in_it(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Complaints faults;
	const Earlier *earlier = read_text(arena, HEAD "\"items\": [" ITEM "],\n" TAIL, &faults);
	print_complaints(&faults);
	assert_non_null(earlier);
	assert_string_equal(earlier->submittal, "MC-1");
	assert_true(earlier->is_review);
	assert_int_equal(earlier->round, 2);
	assert_int_equal(earlier->stage, STAGE_order);
	assert_string_equal(earlier->edition, "e");
	assert_string_equal(earlier->criteria_sha256, "aa");
	assert_string_equal(earlier->recommended_action, "Not reviewed");
	assert_int_equal(earlier->items, 1);
	const EarlierItem *item = earlier->item;
	assert_int_equal(item->round, 1);
	assert_int_equal(item->item, 1);
	assert_int_equal(item->state, ITEM_NEW);
	assert_int_equal(item->action, ACTION_HOLD);
	assert_int_equal(item->authority, AUTHORITY_LISTING);
	assert_int_equal(item->known_by, KNOWN_MEMORY);
	assert_true(item->submitted.has_value && item->submitted.value == 24);
	assert_false(item->limit.has_value);
	assert_null(item->limit.text);
	assert_int_equal(item->places, 1);
	assert_string_equal(item->place[0].path, "roof_areas[Main].clips[c]");
	assert_true(item->place[0].fingerprint == 255);
	assert_int_equal(item->place[0].line, 12);
	assert_string_equal(item->field[0], "clip.item");
	assert_string_equal(earlier->not_judged[0].waits_for, "clip.hole");
	assert_string_equal(earlier->file[0].sha256, "bb");
	assert_string_equal(earlier->before.sha256, "cc");
	assert_int_equal(earlier->before_round, 1);
	const Node *number = node_find(earlier->values, "submittal");
	assert_string_equal(number->text, "MC-1");
	assert_int_equal(number->place.line, 10);
	assert_int_equal(number->place.column, 85);
	arena_free(arena);
}

/* The first fault of a text, as code and place. */
static const char *fault_of(Arena *arena, const char *text)
{
	Complaints faults;
	const Earlier *earlier = read_text(arena, text, &faults);
	assert_null(earlier);
	assert_true(faults.count > 0);
	const Complaint *first = &faults.at[0];
	return arena_printf(arena, "%s %u:%u %s", message_of(first->id)->code, first->place.line, first->place.column,
		complaint_text(first, message_of(first->id)->finding, arena));
}

static void tells_each_fault_at_its_place(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	static const char *const cases[][2] = {
		{ "", "PRV-01 1:1 this cannot be read as JSON: '[' or '{' expected near end of file" },
		{ "{\"a\": 1,\n \"a\": 2}", "PRV-01 2:4 this cannot be read as JSON: duplicate object key near '\"a\"'" },
		{ "[]", "PRV-04 1:1 the whole of this report is a list, where a group of keys is wanted" },
		{ "{\"$schema\": \"other\"}", "PRV-03 1:1 this is no report of a review: seamstamp is missing" },
		{ HEAD "\"items\": 5,\n" TAIL, "PRV-04 3:10 items of this report is 5, where a list is wanted" },
		{ HEAD "\"items\": [" ITEM ",\n" ITEM "],\n" TAIL, "PRV-06 9:1 two items of this report have the number 1.01" },
		{ HEAD "\"items\": [], \"seal\": \"00\",\n" TAIL, "PRV-05 3:22 this report was changed since it was printed: its seal does not fit" },
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
		assert_string_equal(fault_of(arena, cases[i][0]), cases[i][1]);
	arena_free(arena);
}

static void knows_its_limits(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	char deep[80];
	memset(deep, '[', 33);
	deep[33] = '\0';
	assert_string_equal(fault_of(arena, deep), "PRV-02 1:33 the report holds values that stand inside each other more than 32 deep");
	memset(deep + 32, ']', 32);
	deep[64] = '\0';
	assert_string_equal(fault_of(arena, deep), "PRV-04 1:1 the whole of this report is a list, where a group of keys is wanted");
	arena_free(arena);
}

/* ---- those that are printed ---- */

static const char *printed(const World *world, Arena *arena, const char *path)
{
	Verdict *verdict = review_path(world, arena, path);
	take_fingerprints(verdict, arena);
	Out *out = out_make(arena, OUT_TERMINAL);
	report_format("json")->write(out, verdict, arena);
	return out_text(out, NULL);
}

static bool is_same_record(const Record *record, const void *a, const void *b);

static bool is_same_text(const char *a, const char *b)
{
	return a == b || (a != NULL && b != NULL && strcmp(a, b) == 0);
}

static bool is_same_list(const Field *field, const List *a, const List *b)
{
	bool same = a->count == b->count;
	size_t size = field->record->size;
	for (uint32_t i = 0; i < a->count && same; i++)
		same = is_same_record(field->record, (const char *)a->row + i * size, (const char *)b->row + i * size);
	return same;
}

static bool is_same_zones(const ByZone *a, const ByZone *b)
{
	bool same = a->count == b->count;
	for (uint32_t i = 0; i < a->count && same; i++)
		same = strcmp(a->at[i].zone, b->at[i].zone) == 0 && a->at[i].given.said == b->at[i].given.said && a->at[i].value == b->at[i].value;
	return same;
}

static bool is_same_texts(const Texts *a, const Texts *b)
{
	bool same = a->count == b->count;
	for (uint32_t i = 0; i < a->count && same; i++)
		same = strcmp(a->at[i].text, b->at[i].text) == 0;
	return same;
}

static bool is_same_value(const Field *field, const Given *a, const Given *b)
{
	const void *x = a, *y = b;
	if (a->said != b->said)
		return false;
	if (a->said == SAID_BY_OTHERS || a->said == SAID_NOT_APPLICABLE)
		return is_same_text(a->typed, b->typed);
	if (a->said != SAID_VALUE)
		return true;
	switch (field->kind) {
	case IS_ONE:
		return is_same_record(field->record, x, y);
	case IS_LIST:
		return is_same_list(field, x, y);
	case IS_BY_ZONE:
		return is_same_zones(x, y);
	case IS_TEXTS:
		return is_same_texts(x, y);
	case IS_NUMBER:
	case IS_SIZE:
		return ((const Number *)x)->value == ((const Number *)y)->value && is_same_text(a->typed, b->typed);
	case IS_DATE:
		return ((const Date *)x)->day == ((const Date *)y)->day;
	case IS_YES:
		return ((const Yes *)x)->yes == ((const Yes *)y)->yes;
	case IS_WORD:
		return ((const Word *)x)->word == ((const Word *)y)->word && is_same_text(((const Word *)x)->text, ((const Word *)y)->text);
	default:
		return is_same_text(((const Text *)x)->text, ((const Text *)y)->text) && is_same_text(a->typed, b->typed);
	}
}

static bool is_same_record(const Record *record, const void *a, const void *b)
{
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *field = &record->field[i];
		const Given *x = given_in(field, a), *y = given_in(field, b);
		if (is_same_value(field, x, y))
			continue;
		print_error("%s.%s: said %d as %s, read back %d as %s\n", record->name, field->key, x->said, x->typed ? x->typed : "nothing",
			y->said, y->typed ? y->typed : "nothing");
		return false;
	}
	return true;
}

static const char *const examples[] = {
	"clean", "wrong-clip", "messy-reroof", "close-out", "coast", "import-parts", "curb-trouble", "spec-conflict", "missing-papers", "bid",
	"plywood",
};

static void the_submittal_comes_back(void **state)
{
	(void)state;
	World world = world_make();
	for (size_t i = 0; i < sizeof examples / sizeof *examples; i++) {
		Arena *arena = arena_make();
		const char *path = arena_printf(arena, "examples/%s.yaml", examples[i]);
		Complaints faults, more = { .arena = arena };
		const Earlier *earlier = read_text(arena, printed(&world, arena, path), &faults);
		print_complaints(&faults);
		assert_non_null(earlier);
		const Verdict *verdict = review_path(&world, arena, path);
		const Submittal *back = read_submittal(arena, earlier->values, earlier->source, world.reference, &more);
		print_complaints(&more);
		assert_int_equal(more.count, 0);
		if (!is_same_record(&Submittal_record, verdict->cases->submittal, back))
			fail_msg("%s", path);
		assert_int_equal(earlier->items, verdict->items);
		arena_free(arena);
	}
	arena_free(world.run);
}

/* Whatever is cut off or changed, it is no report. */
static void no_other_bytes_pass(void **state)
{
	(void)state;
	World world = world_make();
	Arena *arena = arena_make();
	const char *text = printed(&world, arena, "examples/wrong-clip.yaml");
	size_t length = strlen(text), sealed = length;
	report_seal(text, &sealed, arena);
	assert_true(sealed < length);
	for (size_t i = 0; i < length - 2; i += i < 4000 ? 7 : 211) {
		ArenaMark mark = arena_mark(arena);
		Complaints faults;
		char *other = arena_text(arena, text, i);
		assert_null(read_text(arena, other, &faults));
		assert_true(faults.count > 0);
		other = arena_text(arena, text, length);
		other[i] ^= 1;
		assert_null(read_text(arena, other, &faults));
		assert_true(faults.count > 0);
		arena_back(arena, mark);
	}
	arena_free(arena);
	arena_free(world.run);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(says_what_stands_in_it),
		cmocka_unit_test(tells_each_fault_at_its_place),
		cmocka_unit_test(knows_its_limits),
		cmocka_unit_test(the_submittal_comes_back),
		cmocka_unit_test(no_other_bytes_pass),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

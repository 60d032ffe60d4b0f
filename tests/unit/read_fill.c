/* SPDX-License-Identifier: MIT
 * Nodes and cells to records: what each kind of field holds after reading, what is assumed, what waits, and who has complained.
 */
#include "check.h"
#include "date.h"
#include "pipeline.h"
#include "small_reference.h"

#include "../src/read/fill.h"

typedef struct {
	Arena *arena;
	Complaints complaints;
	Submittal *submittal;
} Read;

static Read read_form(const char *text)
{
	Read r = { .arena = arena_make() };
	r.complaints.arena = r.arena;
	const Source *source = source_make(r.arena, "test.yaml", text, strlen(text), SOURCE_SUBMITTAL);
	Node *root = read_yaml(r.arena, source, &r.complaints);
	r.submittal = read_submittal(r.arena, root, source, &small_reference, &r.complaints);
	return r;
}

static void check_complaints(const Read *r, uint32_t count)
{
	for (uint32_t i = 0; i < r->complaints.count && r->complaints.count != count; i++)
		print_error("%u: %s\n", (unsigned)r->complaints.at[i].place.line,
			complaint_text(&r->complaints.at[i], message_of(r->complaints.at[i].id)->finding, r->arena));
	assert_int_equal(r->complaints.count, count);
}

/* ---- every kind of field ---- */

static void values(void **state)
{
	(void)state;
	Read r = read_form("form: 1\nsubmittal: MC-1042\nstage: close out\ndate: 2026-04-14\n"
		"warranty: {term: 20 yr, prorated: No, covers: [panels, flashings]}\n"
		"building: {shape: gable, length: 61 m, slope: 1/2 in 12}\n"
		"engineering:\n  - letter: EL-88\n    sealed: TRUE\n    areas: Main roof\n    pressures: {field: 30 psf, edge: 40 psf, zone 2e: 55 psf}\n"
		"    clip_spacing: 24 in\n    assumes: {fastener_size: \"#12\"}\n");
	check_complaints(&r, 0);
	const Submittal *s = r.submittal;
	assert_int_equal(s->given.said, SAID_VALUE);
	assert_close(s->form_one.value, 1, 0);
	assert_string_equal(s->submittal.text, "MC-1042");
	assert_int_equal(s->submittal.given.place.line, 2);
	assert_int_equal(s->submittal.given.place.column, 12);
	assert_string_equal(s->stage.text, "close-out");
	assert_string_equal(s->stage.given.typed, "close out");
	assert_int_equal(s->stage.word, 3);
	assert_true(is_word(&s->stage, "close-out"));
	assert_int_equal(s->date.day, 20557);
	assert_close(s->warranty.term_yr.value, 20, 0);
	assert_int_equal(s->warranty.given.said, SAID_VALUE);
	assert_int_equal(s->warranty.given.place.line, 5);
	assert_int_equal(s->warranty.prorated.given.said, SAID_VALUE);
	assert_false(s->warranty.prorated.yes);
	assert_int_equal(s->warranty.covers.count, 2);
	assert_string_equal(s->warranty.covers.at[1].text, "flashings");
	assert_close(s->building.length_ft.value, 200.131233595801, 1e-12);
	assert_string_equal(s->building.length_ft.given.typed, "61 m");
	assert_close(s->building.slope_in_12.value, 0.5, 0);
	assert_int_equal(s->engineering.of.count, 1);
	const Letter *letter = &s->engineering.of.row[0];
	assert_true(letter->sealed.yes);
	assert_int_equal(letter->areas.count, 1);
	assert_string_equal(letter->areas.at[0].text, "Main roof");
	assert_int_equal(letter->pressures_psf.count, 3);
	assert_string_equal(letter->pressures_psf.at[1].zone, "perimeter");
	assert_string_equal(letter->pressures_psf.at[2].zone, "zone 2e");
	assert_close(letter->pressures_psf.at[2].value, 55, 0);
	assert_int_equal(letter->clip_spacing_in.count, 1);
	assert_string_equal(letter->clip_spacing_in.at[0].zone, "");
	assert_close(letter->clip_spacing_in.at[0].value, 24, 0);
	assert_close(letter->assumes.fastener_size_in.value, 0.216, 0);
	arena_free(r.arena);
}

static void three_states_of_a_list(void **state)
{
	(void)state;
	Read r = read_form("roof_areas:\n  - name: Main roof\n    clips: [{item: clip-a-float}, {item: clip-a-fix}]\n    rivets: none\n    details: []\n"
		"    closures:\n    tests: unknown\n    sealants: {by others: Example Roofing (invented)}\n");
	check_complaints(&r, 0);
	const RoofArea *area = &r.submittal->roof_areas.of.row[0];
	assert_int_equal(area->given.place.line, 2);
	assert_int_equal(area->given.place.column, 5);
	assert_int_equal(area->clips.of.given.said, SAID_VALUE);
	assert_int_equal(area->clips.of.count, 2);
	assert_string_equal(area->clips.of.row[1].item.text, "clip-a-fix");
	assert_int_equal(area->clips.of.row[1].given.place.column, 36);
	assert_int_equal(area->rivets.of.given.said, SAID_NONE);
	assert_int_equal(area->rivets.of.given.place.line, 4);
	assert_int_equal(area->details.of.given.said, SAID_NOTHING);
	assert_int_equal(area->details.of.given.place.line, 5);
	assert_int_equal(area->closures.of.given.said, SAID_NOTHING);
	assert_int_equal(area->closures.of.given.place.line, 6);
	assert_int_equal(area->tests.of.given.said, SAID_UNKNOWN);
	assert_int_equal(area->sealants.of.given.said, SAID_BY_OTHERS);
	assert_string_equal(area->sealants.of.given.typed, "Example Roofing (invented)");
	assert_int_equal(area->fasteners.of.given.said, SAID_NOTHING);
	assert_int_equal(area->fasteners.of.given.place.line, 0);
	/* What the form assumes to be none is an answer; it was not written. */
	assert_int_equal(r.submittal->changes.of.given.said, SAID_NONE);
	assert_string_equal(r.submittal->changes.of.given.typed, "none");
	arena_free(r.arena);
}

static void answers_that_are_no_values(void **state)
{
	(void)state;
	Read r = read_form("parties:\n  owner: Unknown\n  designer: {by others: Example Design Office (invented)}\n"
		"  general_contractor: \"not applicable: alone\"\n  applicant: unknown\n"
		"roof_areas:\n  - panel: {by others: the owner}\n    clips:\n      - travel: {not applicable: one piece}\n        thickness: TBD\n        hole: \"by others: the mill\"\n"
		"        spacing: {field: 24 in, corner: unknown}\n");
	check_complaints(&r, 0);
	const Parties *p = &r.submittal->parties;
	assert_int_equal(p->owner.given.said, SAID_UNKNOWN);
	assert_int_equal(p->designer.given.said, SAID_BY_OTHERS);
	assert_string_equal(p->designer.given.typed, "Example Design Office (invented)");
	assert_int_equal(p->general_contractor.given.said, SAID_NOT_APPLICABLE);
	assert_string_equal(p->general_contractor.given.typed, "alone");
	assert_int_equal(p->applicant.given.said, SAID_UNKNOWN);
	const RoofArea *area = &r.submittal->roof_areas.of.row[0];
	assert_int_equal(area->panel.given.said, SAID_BY_OTHERS);
	const Clip *clip = &area->clips.of.row[0];
	assert_int_equal(clip->travel_in.given.said, SAID_NOT_APPLICABLE);
	assert_string_equal(clip->travel_in.given.typed, "one piece");
	assert_int_equal(clip->thickness_in.given.said, SAID_UNKNOWN);
	assert_int_equal(clip->hole_in.given.said, SAID_BY_OTHERS);
	/* One zone that is not known makes the whole wait. */
	assert_int_equal(clip->spacing_in.given.said, SAID_UNKNOWN);
	assert_int_equal(clip->spacing_in.count, 2);
	assert_int_equal(clip->spacing_in.at[0].given.said, SAID_VALUE);
	assert_int_equal(clip->spacing_in.at[1].given.said, SAID_UNKNOWN);
	arena_free(r.arena);
}

/* ---- every unreadable value stands where its message stands ---- */

static bool has_complaint_at(const Read *r, const Place *place)
{
	for (uint32_t i = 0; i < r->complaints.count; i++)
		if (r->complaints.at[i].place.line == place->line && r->complaints.at[i].place.column == place->column)
			return true;
	return false;
}

static uint32_t count_unreadable(const Read *r, const Record *record, const void *row)
{
	uint32_t count = 0;
	for (uint32_t i = 0; i < record->count; i++) {
		const Field *f = &record->field[i];
		const Given *given = given_in(f, row);
		if (given->said == SAID_UNREADABLE) {
			if (!has_complaint_at(r, &given->place))
				print_error("%s.%s: nothing is said at %u:%u\n", record->name, f->key, given->place.line, given->place.column);
			assert_true(has_complaint_at(r, &given->place));
			count++;
		}
		const List *list = (const List *)(const void *)given;
		if (f->kind == IS_ONE)
			count += count_unreadable(r, f->record, given);
		for (uint32_t k = 0; f->kind == IS_LIST && k < list->count; k++)
			count += count_unreadable(r, f->record, (const char *)list->row + k * f->record->size);
	}
	return count;
}

static void unreadable_values_stand_at_their_messages(void **state)
{
	(void)state;
	Read r = read_form("form: one\nstage: bid\nstage: order\ndate: &d 2026-04-14\nround: !n 1\ncriteria: no. #12\n"
		"warranty: {term: 20, 30 yr, covers: [[a], b]}\nbuilding: [1]\nwind: {exposre: C}\n"
		"engineering:\n  - clip_spacing:\n      field: 24 in\n      corner: 12\n"
		"roof_areas:\n  - panel: {metal: steal, thickness: 24 ga, width: 16 psf}\n    details:\n      - ridge\n      - place: eve\n"
		"    support: {thickness: 24 ga}\n    fasteners:\n      - item: other\n        mark: #12\n      - mark: 12-14 x 1\n        size: 1/4\n"
		"      - size:\n          - 1\n    rivets: yes\n");
	/* form, stage, date, round, criteria, term, covers, building, exposure, clip_spacing; metal, thickness, width; all of one detail;
	 * place; thickness; mark, size, threads, length; size; size; rivets */
	assert_int_equal(count_unreadable(&r, &Submittal_record, r.submittal), 10 + 3 + Detail_record.count + 1 + 1 + 4 + 1 + 1 + 1);
	arena_free(r.arena);
}

/* ---- gauges and marks ---- */

static void gauges_by_metal_and_use(void **state)
{
	(void)state;
	Read r = read_form("roof_areas:\n"
		"  - name: a\n    panel: {thickness: 24 ga, metal: steel}\n    support: {kind: steel deck, thickness: 22 ga}\n"
		"  - name: b\n    panel: {thickness: 24 gage, metal: stainless}\n    support: {thickness: 16 ga, kind: subpurlin}\n"
		"  - name: c\n    panel: {metal: aluminium, thickness: 20 gauge}\n    clips: [{metal: steel, thickness: 16 ga}]\n"
		"    penetrations: [{name: P1, metal: steel, thickness: 22 ga}]\n");
	check_complaints(&r, 0);
	const RoofArea *area = r.submittal->roof_areas.of.row;
	assert_close(area[0].panel.thickness_in.value, 0.0239, 0);
	assert_string_equal(area[0].panel.thickness_in.given.typed, "24 ga");
	assert_int_equal(area[0].panel.thickness_in.given.said, SAID_VALUE);
	assert_close(area[0].support.thickness_in.value, 0.0295, 0);
	assert_close(area[1].panel.thickness_in.value, 0.0250, 0);
	assert_close(area[1].support.thickness_in.value, 0.0566, 0);
	assert_close(area[2].panel.thickness_in.value, 0.0320, 0);
	assert_close(area[2].clips.of.row[0].thickness_in.value, 0.0598, 0);
	assert_close(area[2].penetrations.of.row[0].thickness_in.value, 0.0299, 0);
	arena_free(r.arena);
}

/* The message of a metal that cannot be read stands for the gauge as well. */
static void a_gauge_without_its_metal(void **state)
{
	(void)state;
	Read r = read_form("roof_areas:\n  - panel: {thickness: 24 ga}\n  - panel: {thickness: 24 ga, metal: steal}\n  - panel: {thickness: 24 ga, metal: unknown}\n");
	check_complaints(&r, 3);
	assert_int_equal(r.complaints.at[0].id, MESSAGE_FRM_22);
	assert_int_equal(r.complaints.at[1].id, MESSAGE_FRM_16);
	assert_int_equal(r.complaints.at[2].id, MESSAGE_FRM_22);
	for (uint32_t i = 0; i < 3; i++) {
		const Number *thickness = &r.submittal->roof_areas.of.row[i].panel.thickness_in;
		assert_int_equal(thickness->given.said, SAID_UNREADABLE);
		assert_close(thickness->value, 0, 0);
	}
	arena_free(r.arena);
}

static void a_mark_fills_what_it_says(void **state)
{
	(void)state;
	Read r = read_form("roof_areas:\n  - fasteners:\n"
		"      - {mark: 12-14 x 1-1/2 DP3}\n"
		"      - {size: \"#12\", mark: 12-14 x 1-1/2, length: 38 mm}\n"
		"      - {mark: \"#14\", length: 2 in}\n");
	check_complaints(&r, 0);
	const Fastener *f = r.submittal->roof_areas.of.row[0].fasteners.of.row;
	assert_close(f[0].size_in.value, 0.216, 0);
	assert_close(f[0].threads_one.value, 14, 0);
	assert_close(f[0].length_in.value, 1.5, 0);
	assert_close(f[0].point_one.value, 3, 0);
	assert_int_equal(f[0].size_in.given.said, SAID_VALUE);
	assert_int_equal(f[0].size_in.given.place.line, 3);
	assert_string_equal(f[0].size_in.given.typed, "#12");
	assert_string_equal(f[0].length_in.given.typed, "1-1/2 in");
	assert_close(f[1].length_in.value, 1.496062992126, 1e-12);
	assert_int_equal(f[1].point_one.given.said, SAID_NOTHING);
	assert_close(f[2].size_in.value, 0.242, 0);
	assert_int_equal(f[2].threads_one.given.said, SAID_NOTHING);
	arena_free(r.arena);
}

/* A mark that was lost or cannot be read stands for the keys it would have filled: nothing of it is missing, nothing is assumed. */
static void a_lost_mark_accounts_for_its_parts(void **state)
{
	(void)state;
	Read r = read_form("roof_areas:\n  - fasteners:\n      - item: other\n        mark: #12\n      - item: other\n        mark: long ones\n        length: 1 in\n");
	check_complaints(&r, 2);
	const Fastener *f = r.submittal->roof_areas.of.row[0].fasteners.of.row;
	for (int i = 0; i < 2; i++) {
		assert_int_equal(f[i].mark.given.said, SAID_UNREADABLE);
		assert_int_equal(f[i].size_in.given.said, SAID_UNREADABLE);
		assert_int_equal(f[i].threads_one.given.said, SAID_UNREADABLE);
	}
	assert_int_equal(f[0].length_in.given.said, SAID_UNREADABLE);
	assert_int_equal(f[1].length_in.given.said, SAID_VALUE);
	arena_free(r.arena);
}

/* ---- what nobody wrote ---- */

static void absent_keys_are_assumed(void **state)
{
	(void)state;
	Read r = read_form("building: {shape: gable}\nwind: {standard: ASCE 7-16}\n"
		"roof_areas:\n  - panel: {item: panel-a-16}\n    building: {length: 20 ft}\n    closures: [{item: closure-a, vented: yes}]\n");
	check_complaints(&r, 0);
	const Submittal *s = r.submittal;
	assert_int_equal(s->building.parapet_height_ft.given.said, SAID_ASSUMED);
	assert_close(s->building.parapet_height_ft.value, 0, 0);
	assert_string_equal(s->building.parapet_height_ft.given.typed, "0 ft");
	assert_int_equal(s->wind.ground_elevation_ft.given.said, SAID_ASSUMED);
	const RoofArea *area = &s->roof_areas.of.row[0];
	assert_int_equal(area->panel.end_laps_one.given.said, SAID_ASSUMED);
	assert_int_equal(area->panel.shape.given.said, SAID_ASSUMED);
	assert_string_equal(area->panel.shape.text, "straight");
	assert_int_equal(area->closures.of.row[0].vented.given.said, SAID_VALUE);
	/* It only says what differs from the building; and of a part nobody named nothing is assumed. */
	assert_int_equal(area->building.parapet_height_ft.given.said, SAID_NOTHING);
	assert_int_equal(area->support.treated.given.said, SAID_NOTHING);
	arena_free(r.arena);
}

static void a_misspelt_key_is_not_missing_too(void **state)
{
	(void)state;
	Read r = read_form("roof_areas:\n  - name: Main roof\n    clips: [{item: clip-a-float, heigth: 2 in}]\n    underlayments: [{item: felt-a, slipsheet: yes}]\n");
	check_complaints(&r, 2);
	const RoofArea *area = &r.submittal->roof_areas.of.row[0];
	const Complaint *c = &r.complaints.at[0];
	assert_int_equal(c->id, MESSAGE_FRM_01);
	assert_string_equal(c->about.key, "heigth");
	assert_string_equal(c->about.want, "height");
	assert_string_equal(c->about.where, "Main roof / clips / 1");
	assert_ptr_equal(c->about.row, &area->clips.of.row[0]);
	assert_string_equal(c->about.accounts_for->key, "height");
	assert_int_equal(area->clips.of.row[0].height_in.given.said, SAID_UNREADABLE);
	/* nor is it assumed */
	assert_int_equal(area->underlayments.of.row[0].slip_sheet.given.said, SAID_UNREADABLE);
	arena_free(r.arena);
}

static void suggestions_end_at_fifty(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	const char *text = "roof_areas:\n";
	for (int i = 0; i < 60; i++)
		text = arena_printf(arena, "%s  - {nmae: a%d}\n", text, i);
	Read r = read_form(text);
	check_complaints(&r, 60);
	uint32_t suggested = 0;
	for (uint32_t i = 0; i < 60; i++)
		suggested += r.complaints.at[i].id == MESSAGE_FRM_01;
	assert_int_equal(suggested, 50);
	arena_free(arena);
	arena_free(r.arena);
}

static void an_entry_that_is_no_group_waits_whole(void **state)
{
	(void)state;
	Read r = read_form("roof_areas:\n  - name: Main roof\n    details: [{place: eave}, ridge, unknown]\n");
	check_complaints(&r, 2);
	const RoofArea *area = &r.submittal->roof_areas.of.row[0];
	assert_int_equal(area->details.of.count, 3);
	assert_int_equal(area->details.of.row[0].place.given.said, SAID_VALUE);
	assert_int_equal(area->details.of.row[1].given.said, SAID_UNREADABLE);
	assert_int_equal(area->details.of.row[1].place.given.said, SAID_UNREADABLE);
	assert_int_equal(area->details.of.row[2].number.given.said, SAID_UNREADABLE);
	arena_free(r.arena);
}

/* ---- cells of tables ---- */

static const Field *field(const Record *record, const char *key)
{
	const Field *f = field_find(record, key, strlen(key));
	assert_non_null(f);
	return f;
}

static void set(const Record *record, const char *key, const char *text, void *row, Reading *reading)
{
	read_value(field(record, key), text, strlen(text), (Place){ .line = 2, .column = 1 }, row, reading);
}

static void cells_of_a_table(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Complaints complaints = { .arena = arena };
	Reading reading = { .arena = arena, .reference = &small_reference, .complaints = &complaints, .table = true, .bare = UNIT_in };
	Panel panel = { 0 };
	set(&Panel_record, "thickness", "24 ga", &panel, &reading);
	set(&Panel_record, "width", "16", &panel, &reading);
	set(&Panel_record, "rib_height", "51 mm", &panel, &reading);
	set(&Panel_record, "metal", "Aluminium", &panel, &reading);
	set(&Panel_record, "seam", "any", &panel, &reading);
	set(&Panel_record, "description", "unknown", &panel, &reading);
	set(&Panel_record, "length", "", &panel, &reading);
	set(&Panel_record, "metal", "steel", &panel, &reading);
	finish_record(&Panel_record, &panel, &reading);
	assert_int_equal(complaints.count, 0);
	assert_close(panel.thickness_in.value, 0.0239, 0);
	assert_close(panel.width_in.value, 16, 0);
	assert_close(panel.rib_height_in.value, 2.007874015748, 1e-12);
	assert_int_equal(panel.seam.given.said, SAID_NOT_APPLICABLE);
	assert_string_equal(panel.seam.given.typed, "any");
	assert_int_equal(panel.description.given.said, SAID_VALUE);
	assert_int_equal(panel.length_ft.given.said, SAID_NOTHING);
	assert_int_equal(panel.length_ft.given.place.line, 2);
	assert_int_equal(panel.end_laps_one.given.said, SAID_NOTHING); /* nothing is assumed in a table */
	RoofArea area = { 0 };
	set(&RoofArea_record, "build_up", "none", &area, &reading);
	assert_int_equal(area.build_up.of.given.said, SAID_NONE);
	arena_free(arena);
}

static void quiet_reading_only_tells(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Reading reading = { .arena = arena, .reference = &small_reference };
	Panel panel = { 0 };
	assert_true(read_value(field(&Panel_record, "width"), "16 in, or so", 5, (Place){ 0 }, &panel, &reading));
	assert_close(panel.width_in.value, 16, 0);
	assert_false(read_value(field(&Panel_record, "width"), "16", 2, (Place){ 0 }, &panel, &reading));
	assert_int_equal(panel.width_in.given.said, SAID_UNREADABLE);
	assert_false(read_value(field(&Panel_record, "width"), "panel.width", 11, (Place){ 0 }, &panel, &reading));
	assert_false(read_value(field(&Panel_record, "seam"), "seam", 4, (Place){ 0 }, &panel, &reading));
	assert_true(read_value(field(&Panel_record, "seam"), "snap", 4, (Place){ 0 }, &panel, &reading));
	arena_free(arena);
}

/* ---- the form's own examples ---- */

static bool is_cell(const Field *f)
{
	return f->example != NULL && *f->example != '\0' && *f->example != '[' && *f->example != '{' && f->need != NEED_MADE;
}

/* Whatever the form shows as an example or assumes must read, or its messages would mislead. */
static void examples_of_the_form_are_read(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	Complaints complaints = { .arena = arena };
	Reading reading = { .arena = arena, .reference = &small_reference, .complaints = &complaints };
	uint32_t read = 0;
	for (uint32_t kind = 0; kind < RECORD_KINDS; kind++) {
		const Record *record = record_of((RecordKind)kind);
		void *row = arena_take(arena, 1, record->size);
		for (uint32_t i = 0; i < record->count; i++) {
			const Field *f = &record->field[i];
			const char *const texts[] = { is_cell(f) ? f->example : NULL, f->assumed };
			for (size_t t = 0; t < 2; t++) {
				if (texts[t] == NULL)
					continue;
				bool ok = read_value(f, texts[t], strlen(texts[t]), (Place){ 0 }, row, &reading);
				if (!ok)
					print_error("%s.%s: %s\n", record->name, f->key, texts[t]);
				assert_true(ok);
				read++;
			}
		}
	}
	assert_true(read > 300);
	assert_int_equal(complaints.count, 0);
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(values),
		cmocka_unit_test(three_states_of_a_list),
		cmocka_unit_test(answers_that_are_no_values),
		cmocka_unit_test(unreadable_values_stand_at_their_messages),
		cmocka_unit_test(gauges_by_metal_and_use),
		cmocka_unit_test(a_gauge_without_its_metal),
		cmocka_unit_test(a_mark_fills_what_it_says),
		cmocka_unit_test(a_lost_mark_accounts_for_its_parts),
		cmocka_unit_test(absent_keys_are_assumed),
		cmocka_unit_test(a_misspelt_key_is_not_missing_too),
		cmocka_unit_test(suggestions_end_at_fifty),
		cmocka_unit_test(an_entry_that_is_no_group_waits_whole),
		cmocka_unit_test(cells_of_a_table),
		cmocka_unit_test(quiet_reading_only_tells),
		cmocka_unit_test(examples_of_the_form_are_read),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

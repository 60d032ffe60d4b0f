/* SPDX-License-Identifier: MIT
 * Purchases by hand: what was bought and from whom, pieces on invoices, clips a roof needs, days against the approval, coils
 * against the panel.
 */
#include "compute_world.h"

typedef struct {
	const char *kind, *supplier, *item;
	double quantity, each;
} Bought;

static Purchase *a_purchase(World *w, const char *kind, const char *supplier)
{
	Purchase *row = TAKE(w->arena, Purchase, 1);
	row->purchase = TEXT_IS("P-1");
	row->kind = WORD_IS(kind);
	row->supplier = TEXT_IS(supplier);
	row->date = DAY_IS(20557);
	row->lines.list.given.said = SAID_VALUE;
	w->submittal.purchases.list.given.said = SAID_VALUE;
	return row;
}

static Case *buy(World *w, const Bought *bought)
{
	Case *purchase = add_case(w, KIND_purchase, w->at, a_purchase(w, bought->kind, bought->supplier));
	PurchaseLine *row = TAKE(w->arena, PurchaseLine, 1);
	row->item = TEXT_IS(bought->item);
	row->quantity_one = NUMBER_IS(bought->quantity);
	row->pieces_each_one = NUMBER_IS(bought->each);
	return add_case(w, KIND_purchase_line, purchase, row);
}

static Case *a_clip(World *w, const char *item, const char *use)
{
	Clip *row = TAKE(w->arena, Clip, 1);
	row->item = TEXT_IS(item);
	row->use = WORD_IS(use);
	w->area.clips.list.given.said = SAID_VALUE;
	return add_case(w, KIND_clip, w->roof, row);
}

static void boxes_are_counted_in_pieces(void **state)
{
	World *w = *state;
	Case *clip = a_clip(w, "clip-a", "running");
	buy(w, &(Bought){ "purchase order", "panel maker", "clip-a", 9000, 1 });
	buy(w, &(Bought){ "invoice", "Sample Panel Works (invented)", "CLIP-A ", 30, 250 });
	buy(w, &(Bought){ "invoice", "panel maker", "clip-a", 12, 1 });
	buy(w, &(Bought){ "coil certificate", "a mill", "clip-a", 7, 1 });
	assert_known(clip, "bought", 1);
	assert_known(clip, "bought_from_maker", 1);
	assert_known(clip, "invoices", 2);
	assert_known(clip, "pieces_invoiced", 7512);
}

static void one_line_from_elsewhere_is_enough(void **state)
{
	World *w = *state;
	Case *clip = a_clip(w, "clip-a", "running"), *other = a_clip(w, "clip-b", "running");
	buy(w, &(Bought){ "invoice", "panel maker", "clip-a", 1, 1 });
	buy(w, &(Bought){ "purchase order", "the yard", "clip-a", 1, 1 });
	assert_known(clip, "bought_from_maker", 0);
	assert_non_null(strstr(ask_fact(clip, "bought_from_maker")->note, "P-1 from the yard"));
	assert_known(other, "bought", 0);
	assert_known(other, "invoices", 0);
}

static void what_purchases_do_not_say_is_waited_for(void **state)
{
	World *w = *state;
	Case *clip = a_clip(w, "clip-a", "running");
	Case *line = buy(w, &(Bought){ "invoice", "panel maker", "clip-a", 1, 1 });
	((PurchaseLine *)(void *)(uintptr_t)line->row)->quantity_one = (Number){ 0 };
	((Purchase *)(void *)(uintptr_t)line->up->row)->supplier = (Text){ SAID_SO(SAID_UNKNOWN), NULL };
	assert_known(clip, "invoices", 1);
	assert_waits(w, clip, "pieces_invoiced", "quantity");
	assert_waits(w, clip, "bought_from_maker", "supplier");
}

static void a_purchase_of_unknown_kind_holds_all(void **state)
{
	World *w = *state;
	Case *clip = a_clip(w, "clip-a", "running");
	Purchase *open = a_purchase(w, "invoice", "panel maker");
	open->kind = (Word){ .given = SAID_SO(SAID_UNKNOWN) };
	add_case(w, KIND_purchase, w->at, open);
	assert_waits(w, clip, "bought", "kind");
}

/* Before purchases are due a package without a word of them has bought nothing; their count is waited for. */
static void nothing_said_is_nothing_bought(void **state)
{
	World *w = *state;
	Case *clip = a_clip(w, "clip-a", "running");
	w->submittal.purchases.list.given.said = SAID_NOTHING;
	assert_known(clip, "bought", 0);
	assert_waits(w, clip, "invoices", "purchases");
}

/* ---- pieces ---- */

static void add_zone(World *w, double spacing_in)
{
	ZoneHere *here = TAKE(w->arena, ZoneHere, 1);
	here->record.spacing_in = NUMBER_IS(spacing_in);
	here->record.name = TEXT_IS("field");
	here->why = "a shape without a figure";
	add_case(w, KIND_zone, w->roof, here);
}

/* 60 by 40 ft at 3:12: the slope makes 2,400 sq ft to 2,400 * sqrt(17) / 4 = 2,473.9; clips 16 in by 24 in stand on 2-2/3 sq ft. */
static void a_roof_without_zones_is_counted_at_the_widest_spacing(void **state)
{
	World *w = *state;
	w->area.building.length_ft = NUMBER_IS(60);
	w->area.building.width_ft = NUMBER_IS(40);
	w->area.building.slope_in_12 = NUMBER_IS(3);
	w->area.building.shape = WORD_IS("other");
	w->area.building.eave_height_ft = NUMBER_IS(20);
	w->area.building.enclosure = WORD_IS("enclosed");
	w->area.panel.width_in = NUMBER_IS(16);
	w->submittal.wind.standard = TEXT_IS("ASCE 7-16");
	w->criteria.edition.quantity_tolerance_percent = NUMBER_IS(5);
	add_zone(w, 12);
	add_zone(w, 24);
	Case *clip = a_clip(w, "clip-a", "running"), *fixed = a_clip(w, "clip-f", "fixity");
	assert_known(w->roof, "clips_needed", 927);
	assert_known(w->roof, "running_clips", 1);
	assert_known(clip, "pieces_needed", 927);
	assert_known(clip, "pieces_least", 880.65);
	assert_state(fixed, "pieces_needed", FACT_NOT_APPLICABLE);
	Fastener *row = TAKE(w->arena, Fastener, 1);
	row->item = TEXT_IS("screw");
	row->use = WORD_IS("clip");
	row->per_one = NUMBER_IS(2);
	w->area.fasteners.list.given.said = SAID_VALUE;
	w->all.index = NULL; /* the ledger is made anew with this screw */
	Case *screw = add_case(w, KIND_fastener, w->roof, row);
	assert_known(screw, "pieces_needed", 1854);
}

static void two_running_clips_are_not_told_apart(void **state)
{
	World *w = *state;
	Case *clip = a_clip(w, "clip-a", "running");
	a_clip(w, "clip-b", "running");
	assert_known(w->roof, "running_clips", 2);
	assert_state(clip, "pieces_needed", FACT_NOT_APPLICABLE);
}

/* ---- days ---- */

static Event *an_event(World *w, const char *word)
{
	Event *row = TAKE(w->arena, Event, 1);
	row->event = WORD_IS(word);
	w->submittal.dates.list.given.said = SAID_VALUE;
	add_case(w, KIND_event, w->at, row);
	return row;
}

static void an_order_comes_after_the_first_approval(void **state)
{
	World *w = *state;
	an_event(w, "approval")->date = DAY_IS(20560);
	an_event(w, "approval")->date = DAY_IS(20557);
	an_event(w, "order")->date = DAY_IS(20000);
	assert_known(add_case(w, KIND_purchase, w->at, a_purchase(w, "purchase order", "panel maker")), "after_approval", 1);
	Purchase *early = a_purchase(w, "purchase order", "panel maker");
	early->date = DAY_IS(20556);
	assert_known(add_case(w, KIND_purchase, w->at, early), "after_approval", 0);
}

static void a_planned_approval_is_none(void **state)
{
	World *w = *state;
	an_event(w, "approval")->planned = DAY_IS(20000);
	Case *order = add_case(w, KIND_purchase, w->at, a_purchase(w, "purchase order", "panel maker"));
	assert_known(order, "after_approval", 0);
	assert_string_equal(ask_fact(order, "after_approval")->note, "no day of approval is told");
}

/* ---- coils ---- */

static void a_coil_is_held_against_its_panel(void **state)
{
	World *w = *state;
	w->area.panel.item = TEXT_IS("panel-a");
	w->area.panel.thickness_in = NUMBER_IS(0.024);
	w->area.panel.yield_ksi = NUMBER_IS(50);
	w->criteria.edition.coil_tolerance_percent = NUMBER_IS(5);
	add_case(w, KIND_panel, w->roof, &w->area.panel);
	Case *line = buy(w, &(Bought){ "coil certificate", "a mill", "panel-a", 1, 1 });
	((PurchaseLine *)(void *)(uintptr_t)line->row)->coil = TEXT_IS("C-9");
	Case *invoice = buy(w, &(Bought){ "invoice", "panel maker", "panel-a", 1, 1 });
	((PurchaseLine *)(void *)(uintptr_t)invoice->row)->coil = TEXT_IS("c-9");
	Case *stray = buy(w, &(Bought){ "coil certificate", "a mill", "panel-b", 1, 1 });
	assert_known(line, "sheet_least", 0.0228);
	assert_known(line, "sheet_yield", 50);
	assert_known(line, "item_submitted", 1);
	assert_known(invoice, "coil_certified", 1);
	assert_known(stray, "item_submitted", 0);
	assert_state(stray, "sheet_least", FACT_NOT_APPLICABLE);
	assert_waits(w, stray, "coil_certified", "coil");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		TEST(boxes_are_counted_in_pieces),
		TEST(one_line_from_elsewhere_is_enough),
		TEST(what_purchases_do_not_say_is_waited_for),
		TEST(a_purchase_of_unknown_kind_holds_all),
		TEST(nothing_said_is_nothing_bought),
		TEST(a_roof_without_zones_is_counted_at_the_widest_spacing),
		TEST(two_running_clips_are_not_told_apart),
		TEST(an_order_comes_after_the_first_approval),
		TEST(a_planned_approval_is_none),
		TEST(a_coil_is_held_against_its_panel),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

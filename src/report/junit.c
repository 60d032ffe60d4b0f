/* SPDX-License-Identifier: MIT
 * The review as JUnit XML, which has no official specification: a suite is a submittal, a test case a place of an item, or a rule
 * that was met wherever it was asked. What is milder than the gate passes and stands in the suite's output, with what was not
 * judged. In this shape, without <skipped>, the schemas in use all take it. Times are constants: no clock is read.
 */
#include "formats.h"
#include "markup.h"
#include "parts.h"
#include "places.h"
#include "version.h"

#include <string.h>

typedef struct {
	Markup *page;
	const Verdict *verdict;
	Arena *arena;
	const bool *silent; /* of each rule: an item or a rule not judged speaks of it */
	uint32_t tests, failures, errors;
	bool counting; /* the suite says its numbers before its cases: the first pass counts alone */
} Suite;

/* ---- test cases ---- */

static void open_case(const Suite *suite, const char *name)
{
	OPEN(suite->page, "testcase");
	ATTRIBUTE(suite->page, "classname", suite->verdict->source->name);
	ATTRIBUTE(suite->page, "name", name);
	ATTRIBUTE(suite->page, "time", "0.000");
}

static void pass_case(Suite *suite, const char *name)
{
	suite->tests++;
	if (suite->counting)
		return;
	open_case(suite, name);
	CLOSE(suite->page, "testcase");
}

static void put_line(Markup *page, const char *label, const char *text)
{
	if (text == NULL || *text == '\0')
		return;
	SAY(page->out, "\n");
	out_literal(page->out, label, strlen(label));
	put(page->out, text);
}

/* "file:line:column: ACTION: finding [CODE]" */
static void put_one_line(const Suite *suite, const Finding *item, const Spot *spot, const char *heading)
{
	Out *out = suite->page->out;
	put_place(out, place_file(suite->verdict, &spot->place), &spot->place);
	SAY(out, " ");
	put(out, heading);
	SAY(out, ": ");
	put(out, item->finding);
	SAY(out, " [");
	put(out, item->code);
	SAY(out, "]");
}

static void put_body(const Suite *suite, const Finding *item, const Spot *spot)
{
	Markup *page = suite->page;
	markup_text(page, "");
	put_one_line(suite, item, spot, action_words((Action)spot_action(item, spot)));
	put_line(page, "Item: ", item_number(item, suite->arena));
	put_line(page, "Submitted: ", item->submitted.text);
	put_line(page, "Allowed: ", item->limit.text);
	put_line(page, "Basis: ", item->basis);
	put_line(page, "Remedy: ", item->remedy);
	put_line(page, "Answer by: ", item->answer_by);
	put_line(page, "Rules that wait for it: ", waiting_codes(item, suite->arena));
}

/* Not by the item's number, so that a build server knows it again in the next round. */
static const char *case_name(const Finding *item, const Spot *spot, Arena *arena)
{
	return arena_printf(arena, "%s: %s", item->code, item_where(item, spot, arena));
}

static void put_spot(Suite *suite, const Finding *item, const Spot *spot)
{
	const char *name = case_name(item, spot, suite->arena);
	if (!is_at_gate(suite->verdict, item, spot)) {
		pass_case(suite, name);
		return;
	}
	bool is_error = spot_action(item, spot) == ACTION_NOT_REVIEWED;
	suite->tests++;
	suite->errors += is_error;
	suite->failures += !is_error;
	if (suite->counting)
		return;
	open_case(suite, name);
	markup_open(suite->page, is_error ? "error" : "failure");
	ATTRIBUTE(suite->page, "type", action_words((Action)spot_action(item, spot)));
	ATTRIBUTE(suite->page, "message", item->finding);
	put_body(suite, item, spot);
	markup_close(suite->page, is_error ? "error" : "failure");
	CLOSE(suite->page, "testcase");
}

static void put_error(Suite *suite, const char *name, const char *what)
{
	suite->tests++;
	suite->errors++;
	if (suite->counting)
		return;
	open_case(suite, name);
	OPEN(suite->page, "error");
	ATTRIBUTE(suite->page, "type", "NOT REVIEWED");
	ATTRIBUTE(suite->page, "message", what);
	CLOSE(suite->page, "error");
	CLOSE(suite->page, "testcase");
}

/* A rule passes if it was asked, and met wherever it was. */
static void put_passed_rules(Suite *suite)
{
	const Verdict *verdict = suite->verdict;
	for (uint32_t i = 0; i < verdict->outcomes; i++)
		if (verdict->outcome[i].mets > 0 && !suite->silent[i])
			pass_case(suite, verdict->outcome[i].rule->code);
}

static void put_cases(Suite *suite)
{
	const Verdict *verdict = suite->verdict;
	suite->tests = suite->failures = suite->errors = 0;
	for (uint32_t i = 0; i < verdict->items; i++)
		for (uint32_t j = 0; j < verdict->item[i].spots; j++)
			put_spot(suite, &verdict->item[i], &verdict->item[i].spot[j]);
	if (verdict->left_out > 0)
		put_error(suite, "items not listed", arena_printf(suite->arena, "%u more items are not listed", verdict->left_out));
	if (verdict->broken_file)
		put_error(suite, "the file as a whole", "it could not be judged");
	put_passed_rules(suite);
	if (suite->tests == 0)
		pass_case(suite, "nothing found");
}

/* ---- the rest of a suite ---- */

static const bool *silent_rules(const Verdict *verdict, Arena *arena)
{
	bool *silent = TAKE(arena, bool, verdict->outcomes + 1);
	const Rule *first = verdict->outcomes > 0 ? verdict->outcome[0].rule : NULL;
	for (uint32_t i = 0; first != NULL && i < verdict->items; i++)
		if (verdict->item[i].rule != NULL)
			silent[verdict->item[i].rule - first] = true;
	for (uint32_t i = 0; first != NULL && i < verdict->not_yets; i++)
		silent[verdict->not_yet[i].rule - first] = true;
	return silent;
}

static void put_property(Markup *page, const char *name, const char *value)
{
	OPEN(page, "property");
	ATTRIBUTE(page, "name", name);
	ATTRIBUTE(page, "value", value);
	CLOSE(page, "property");
}

static void put_properties(const Suite *suite)
{
	const Verdict *verdict = suite->verdict;
	const Criteria *criteria = verdict->cases->criteria;
	Markup *page = suite->page;
	OPEN(page, "properties");
	put_property(page, "tool", "seamstamp " SEAMSTAMP_VERSION);
	put_property(page, "submittal", submittal_number(verdict));
	put_property(page, "mode", verdict->self_check ? "self-check" : "review");
	put_property(page, "stage", stage_words(verdict->stage));
	put_property(page, "gate", action_words(verdict->gate));
	if (verdict->stage != STAGE_bid)
		put_property(page, "round", arena_printf(suite->arena, "%u", verdict->round));
	if (criteria != NULL && is_value(&criteria->edition.edition.given))
		put_property(page, "criteria", criteria->edition.edition.text);
	if (!verdict->self_check && verdict->recommended_action != NULL)
		put_property(page, "recommended action", verdict->recommended_action);
	CLOSE(page, "properties");
}

/* What passes here and is no pass: milder items, what the reviewer closed, rules that wait. */
static void put_output(const Suite *suite)
{
	const Verdict *verdict = suite->verdict;
	Out *out = suite->page->out;
	OPEN(suite->page, "system-out");
	markup_text(suite->page, "");
	for (uint32_t i = 0; i < verdict->items; i++) {
		const Finding *item = &verdict->item[i];
		for (uint32_t j = 0; j < item->spots; j++) {
			const Spot *spot = &item->spot[j];
			int action = spot_action(item, spot);
			if (is_at_gate(verdict, item, spot))
				continue;
			put_one_line(suite, item, spot, action >= 0 ? action_words((Action)action) : item_state_words(spot->state));
			put_line(suite->page, "  reviewer: ", item->disposition);
			SAY(out, "\n");
		}
	}
	for (uint32_t i = 0; i < verdict->not_yets; i++) {
		const NotYet *not_yet = &verdict->not_yet[i];
		SAY(out, "not judged: ");
		put(out, not_yet->rule->code);
		SAY(out, ": ");
		put(out, not_yet->where != NULL ? not_yet->where->name : "its records");
		SAY(out, ": waits for ");
		put(out, not_yet->waits_for != NULL ? not_yet->waits_for : "what is missing");
		SAY(out, "\n");
	}
	CLOSE(suite->page, "system-out");
	ELEMENT(suite->page, "system-err", "");
}

static void put_counts(const Suite *suite)
{
	ATTRIBUTE(suite->page, "tests", arena_printf(suite->arena, "%u", suite->tests));
	ATTRIBUTE(suite->page, "failures", arena_printf(suite->arena, "%u", suite->failures));
	ATTRIBUTE(suite->page, "errors", arena_printf(suite->arena, "%u", suite->errors));
	ATTRIBUTE(suite->page, "time", "0.000");
	ATTRIBUTE(suite->page, "timestamp", "2000-01-01T00:00:00");
	ATTRIBUTE(suite->page, "hostname", "localhost");
}

/* A schema asks for an id; a suite does not know how many stand before it. */
void write_junit(Out *out, const Verdict *verdict, Arena *arena)
{
	Markup markup = { .out = out };
	Suite suite = { .page = &markup, .verdict = verdict, .arena = arena, .silent = silent_rules(verdict, arena), .counting = true };
	put_cases(&suite);
	suite.counting = false;
	OPEN(&markup, "testsuite");
	ATTRIBUTE(&markup, "id", "0");
	ATTRIBUTE(&markup, "package", verdict->source->name);
	ATTRIBUTE(&markup, "name", verdict->source->name);
	put_counts(&suite);
	put_properties(&suite);
	put_cases(&suite);
	put_output(&suite);
	CLOSE(&markup, "testsuite");
}

static void begin_junit(Out *out, Arena *arena)
{
	(void)arena;
	SAY(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites>");
}

static void end_junit(Out *out, const Gathered *gathered, Arena *arena)
{
	(void)gathered, (void)arena;
	SAY(out, "\n</testsuites>\n");
}

const ReportDocument junit_document = { .begin = begin_junit, .between = "", .end = end_junit };

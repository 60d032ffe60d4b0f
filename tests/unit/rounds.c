/* SPDX-License-Identifier: MIT
 * Rounds in process: chains of reports of the clean submittal, each round an edit of it, with the items expected of every round.
 * An item is written `number state code`, the states of its places behind it where there are several.
 */
#include "harness.h"

#include "date.h"
#include "earlier.h"
#include "report.h"

typedef struct {
	const char *path, *value; /* "-" deletes */
} Edit;

/* One chain: what every round shares, and the report of the last. */
typedef struct {
	World world;
	Arena *arena;
	const char *report; /* NULL: none yet */
	const char *reviewer; /* his file, as YAML; NULL: a self-check */
	const Verdict *verdict;
} Chain;

static Chain chain_make(void)
{
	Chain chain = { .world = world_make(), .arena = arena_make() };
	return chain;
}

static void chain_end(Chain *chain)
{
	arena_free(chain->arena);
	arena_free(chain->world.run);
}

static const Review *reviewer_of(Chain *chain, const char *text)
{
	Complaints faults = { .arena = chain->arena };
	const Source *source = source_make(chain->arena, "review.yaml", text, strlen(text), SOURCE_REVIEWER);
	Node *root = read_yaml(chain->arena, source, &faults);
	const Review *review = read_review(chain->arena, root, source, chain->world.reference, &faults);
	check_review(review, &faults);
	print_complaints(&faults);
	assert_int_equal(faults.count, 0);
	return review;
}

/* As deep as the clean submittal is. */
static Node *copy_of(Arena *arena, const Node *node)
{
	Node *copy = TAKE(arena, Node, 1), **link = &copy->first;
	*copy = *node;
	copy->first = copy->next = NULL;
	for (const Node *n = node->first; n != NULL; n = n->next) {
		*link = copy_of(arena, n);
		link = &(*link)->next;
	}
	return copy;
}

/* The first record of a list once more, behind it. */
static void copy_first(Arena *arena, Node *root, const char *list)
{
	Node *node = node_at(root, list);
	assert_true(node_graft(arena, root, arena_printf(arena, "%s.%u", list, node->count), copy_of(arena, node->first)));
}

/* The round of an edited package, judged beside the one before; then its report is the one before. */
static void go(Chain *chain, const Edit *edit)
{
	Arena *arena = chain->arena;
	const Source *source;
	Node *root = builtin_nodes(arena, "examples/clean.yaml", &source);
	for (; edit->path != NULL; edit++)
		if (strcmp(edit->path, "copy") == 0)
			copy_first(arena, root, edit->value);
		else if (!edit_nodes(arena, root, edit->path, edit->value))
			fail_msg("no path %s", edit->path);
	Complaints complaints = { .arena = arena }, faults = { .arena = arena }, quiet = { .arena = arena };
	Inputs inputs = { .criteria = chain->world.criteria, .reference = chain->world.reference, .registers = chain->world.registers,
		.as_of = INT32_MIN };
	inputs.submittal = read_submittal(arena, root, source, inputs.reference, &complaints);
	inputs.review = chain->reviewer != NULL ? reviewer_of(chain, chain->reviewer) : NULL;
	if (chain->report != NULL) {
		inputs.earlier = read_earlier(arena, source_make(arena, "before.json", chain->report, strlen(chain->report), SOURCE_PREVIOUS), &faults);
		print_complaints(&faults);
		assert_non_null(inputs.earlier);
		inputs.before = read_submittal(arena, inputs.earlier->values, inputs.earlier->source, inputs.reference, &quiet);
	}
	Verdict *verdict = judge(arena, resolve(arena, &inputs), &complaints, source);
	Complaints slips = { .arena = arena };
	assert_true(check_reviewed(verdict, &slips));
	print_complaints(&slips);
	advise(verdict, arena);
	take_fingerprints(verdict, arena);
	Out *out = out_make(arena, OUT_TERMINAL);
	report_format("json")->write(out, verdict, arena);
	chain->report = out_text(out, NULL);
	chain->verdict = verdict;
	out = out_make(arena, OUT_TERMINAL);
	report_format("text")->write(out, verdict, arena); /* it only has to come to its end */
}

static const char *state_words(ItemState state)
{
	static const char *const words[] = { "new", "open", "closed", "condition", "variance" };
	return words[state];
}

static const char *items_of(const Chain *chain)
{
	const char *all = "";
	for (uint32_t i = 0; i < chain->verdict->items; i++) {
		const Finding *item = &chain->verdict->item[i];
		all = arena_printf(chain->arena, "%s%u.%02u %s %s", all, item->round, item->item, state_words(item_state(item)), item->code);
		for (uint32_t s = 0; item->spots > 1 && s < item->spots; s++)
			all = arena_printf(chain->arena, "%s%s%s", all, s == 0 ? " " : ",", state_words(item->spot[s].state));
		all = arena_printf(chain->arena, "%s\n", all);
	}
	return all;
}

#define expect(chain, items) check_items((chain), (items), __FILE__, __LINE__)
static void check_items(const Chain *chain, const char *items, const char *file, int line)
{
	const char *are = items_of(chain);
	if (strcmp(are, items) == 0)
		return;
	print_error("expected\n%sbut there are\n%s", items, are);
	for (uint32_t i = 0; i < chain->verdict->items; i++)
		print_error("  %s: %s (%s)\n", chain->verdict->item[i].code, chain->verdict->item[i].finding,
			chain->verdict->item[i].note != NULL ? chain->verdict->item[i].note : "");
	_fail(file, line);
}

static const Finding *item_of(const Chain *chain, unsigned round, unsigned number)
{
	for (uint32_t i = 0; i < chain->verdict->items; i++)
		if (chain->verdict->item[i].round == round && chain->verdict->item[i].item == number)
			return &chain->verdict->item[i];
	fail_msg("no item %u.%02u", round, number);
	return NULL;
}

/* Whether an item of a code stands open; `finding` NULL: whatever it says. */
static bool has_item(const Chain *chain, const char *code, const char *finding)
{
	for (uint32_t i = 0; i < chain->verdict->items; i++) {
		const Finding *item = &chain->verdict->item[i];
		if (strcmp(item->code, code) == 0 && item_state(item) != ITEM_CLOSED && (finding == NULL || strcmp(item->finding, finding) == 0))
			return true;
	}
	return false;
}

#define ROUND(...) (const Edit[]){ __VA_ARGS__, { NULL, NULL } }
#define CURB "roof_areas.0.penetrations.0"
#define GUTTER "roof_areas.0.details.5.bracket_spacing"

static void numbers_never_change(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ CURB ".height", "4 in" }, { "project.january_mean", "-" }, { GUTTER, "40 in" }));
	expect(&chain, "1.01 new MIS-01\n1.02 new TRM-02a\n1.03 new PEN-08\n");
	/* cured, answered, still so; the list of rivets written the other way round does not matter */
	go(&chain, ROUND({ "round", "2" }, { CURB ".height", "5 in" }, { "project.january_mean", "unknown" },
		{ GUTTER, "40 in" }, { "replies", "[{item: \"1.03\", reply: higher curb}, {item: \"1.01\", reply: asked}]" }));
	expect(&chain, "1.01 open MIS-04\n1.02 condition TRM-02a\n1.03 open PEN-08\n");
	go(&chain, ROUND({ "round", "3" }, { CURB ".height", "8 in" }, { "project.january_mean", "34 F" }, { "replies", "none" }));
	expect(&chain, "1.01 closed MIS-04\n1.02 closed TRM-02a\n1.03 closed PEN-08\n");
	assert_string_equal(item_of(&chain, 1, 3)->note, "judged again and met");
	assert_string_equal(item_of(&chain, 1, 1)->note, "stated now");
	assert_int_equal(item_of(&chain, 1, 3)->settled, 3);
	/* broken again: the old number; something new: a number of this round, and what nobody asked for is told */
	go(&chain, ROUND({ "round", "4" }, { CURB ".height", "5 in" }, { "parties.designer", "Sample Office (invented)" },
		{ "replies", "[{item: \"1.03\", reply: lower again}]" }));
	expect(&chain, "1.01 closed MIS-04\n1.02 closed TRM-02a\n1.03 open PEN-08\n4.01 new RND-01\n4.02 new RND-01\n");
	assert_string_equal(item_of(&chain, 1, 3)->note, "open again");
	/* declared, and taken back */
	go(&chain, ROUND({ "round", "5" }, { CURB ".height", "8 in" }, { "parties.designer", "Sample Office (invented)" },
		{ "changes", "[{field: parties.designer, reason: the owner changed it}]" }, { "replies", "none" }));
	expect(&chain, "1.01 closed MIS-04\n1.02 closed TRM-02a\n1.03 closed PEN-08\n4.01 closed RND-01\n"
		"4.02 closed RND-01\n");
	chain_end(&chain);
}

/* Deleting is the cheapest cure: a record, a field, a paper that is gone closes nothing. */
static void what_is_gone_stays_open(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ CURB ".height", "4 in" }, { "roof_areas.0.sealants.3.where", "unknown" }, { "roof_areas.0.clips.0.item", "clip-b-float" },
		{ GUTTER, "40 in" }));
	expect(&chain, "1.01 new CLP-01a\n1.02 new MIS-04\n1.03 new TRM-02a\n1.04 new PEN-08\n");
	/* clip, sealant, gutter and curb are all taken out */
	go(&chain, ROUND({ "round", "2" }, { "roof_areas.0.penetrations.0", "-" }, { "roof_areas.0.sealants.3", "-" }, { "roof_areas.0.clips.0", "-" },
		{ "roof_areas.0.details.5", "-" }, { "replies", "[{item: \"1.01\", reply: left out}]" }));
	expect(&chain, "1.01 open CLP-01a\n1.02 open MIS-04\n1.03 condition TRM-02a\n1.04 open PEN-08\n"
		"2.01 new RND-04\n2.02 new CLP-12\n2.03 new PEN-15a\n2.04 new PEN-15b\n");
	assert_string_equal(item_of(&chain, 1, 4)->note, "removed: confirm on the roof plan");
	assert_string_equal(item_of(&chain, 2, 1)->finding, "no reply answers 1.02, 1.04 of the round before");
	/* once more, unchanged: nothing closes by being left out twice */
	go(&chain, ROUND({ "round", "3" }, { "roof_areas.0.penetrations.0", "-" }, { "roof_areas.0.sealants.3", "-" }, { "roof_areas.0.clips.0", "-" },
		{ "roof_areas.0.details.5", "-" }, { "replies", "[{item: \"1.02\", reply: left out}, {item: \"1.04\", reply: left out}]" }));
	expect(&chain, "1.01 open CLP-01a\n1.02 open MIS-04\n1.03 condition TRM-02a\n1.04 open PEN-08\n"
		"2.01 open RND-04\n2.02 open CLP-12\n2.03 open PEN-15a\n2.04 open PEN-15b\n");
	/* put back as it should be: met on the same record, and closed */
	go(&chain, ROUND({ "round", "4" }, { "replies", "none" }));
	expect(&chain, "1.01 open CLP-01a\n1.02 open MIS-04\n1.03 closed TRM-02a\n1.04 closed PEN-08\n"
		"2.01 open RND-04\n2.02 closed CLP-12\n2.03 closed PEN-15a\n2.04 closed PEN-15b\n4.01 new RND-02\n");
	assert_string_equal(item_of(&chain, 4, 1)->finding, "sealant Main roof / seal-butyl-tape #3 is new in this round, and no change declares it");
	chain_end(&chain);
}

/* A field, a paper, what calls for a rule. */
static void a_rule_not_judged_closes_nothing(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ CURB ".height", "4 in" }, { "documents.0.date", "unknown" }, { "engineering.0.sealed", "no" }));
	expect(&chain, "1.01 new ENG-02a\n1.02 new MIS-04\n1.03 new PEN-08\n");
	/* the height is taken out, the paper with the unknown day as well, the seal is left open */
	go(&chain, ROUND({ "round", "2" }, { CURB ".height", "-" }, { "documents.0", "-" }, { "engineering.0.sealed", "unknown" },
		{ "replies", "[{item: \"1.01\", reply: later}, {item: \"1.02\", reply: left out}, {item: \"1.03\", reply: later}]" }));
	expect(&chain, "1.01 open ENG-02a\n1.02 open MIS-04\n1.03 open PEN-08\n2.01 new MIS-04\n2.02 new DOC-01\n2.03 new MIS-01\n");
	assert_string_equal(item_of(&chain, 1, 3)->note, "not judged again: what it needs is missing");
	/* the area leaves the warranty: nothing in it is judged, and nothing closes by that */
	go(&chain, ROUND({ "round", "3" }, { CURB ".height", "4 in" }, { "roof_areas.0.warranted", "no" },
		{ "replies", "[{item: \"1.02\", reply: left out}, {item: \"1.03\", reply: later}]" }));
	expect(&chain, "1.01 closed ENG-02a\n1.02 closed MIS-04\n1.03 open PEN-08\n2.01 closed MIS-04\n2.02 closed DOC-01\n2.03 closed MIS-01\n"
		"3.01 new ELG-14\n3.02 new RND-01\n");
	chain_end(&chain);
}

static const char *places_of(const Chain *chain, unsigned round, unsigned number)
{
	const Finding *item = item_of(chain, round, number);
	const char *all = "";
	for (uint32_t i = 0; i < item->spots; i++)
		all = arena_printf(chain->arena, "%s%s%s %s", all, i > 0 ? ", " : "", item->spot[i].where != NULL ? item->spot[i].where->name
			: item->spot[i].name, state_words(item->spot[i].state));
	return all;
}

/* One area becomes two, both of which say what they were; two become one; lists are turned round. */
static void areas_split_and_merge(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ "roof_areas.0.first_clip", "-" }));
	expect(&chain, "1.01 new MIS-01\n");
	go(&chain, ROUND({ "round", "2" }, { "copy", "roof_areas" }, { "roof_areas.0.name", "East roof" }, { "roof_areas.1.name", "West roof" },
		{ "roof_areas.0.was", "Main roof" }, { "roof_areas.1.was", "Main roof" }, { "roof_areas.0.first_clip", "-" },
		{ "roof_areas.1.first_clip", "-" }));
	assert_string_equal(places_of(&chain, 1, 1), "East roof open, West roof open");
	/* one half cured, and the two written the other way round: the half that is not stays open under the number */
	go(&chain, ROUND({ "round", "3" }, { "copy", "roof_areas" }, { "roof_areas.1.name", "East roof" }, { "roof_areas.0.name", "West roof" },
		{ "roof_areas.1.first_clip", "-" }));
	assert_string_equal(places_of(&chain, 1, 1), "East roof open, West roof closed");
	assert_int_equal(item_state(item_of(&chain, 1, 1)), ITEM_OPEN);
	/* one again: it was the east one, and the west one is gone */
	go(&chain, ROUND({ "round", "4" }, { "roof_areas.0.was", "East roof" }, { "roof_areas.0.first_clip", "-" }));
	assert_string_equal(places_of(&chain, 1, 1), "Main roof open, West roof closed");
	go(&chain, ROUND({ "round", "5" }, { "roof_areas.0.first_clip", "6 in" }));
	assert_string_equal(places_of(&chain, 1, 1), "Main roof closed, West roof closed");
	assert_int_equal(item_of(&chain, 1, 1)->settled, 5);
	chain_end(&chain);
}

/* What is noted becomes a condition, under its number at every later stage, until it is shown done. */
static void conditions_stay_until_shown_done(void **state)
{
	(void)state;
	Chain chain = chain_make();
	chain.reviewer = "for: MC-1042\nround: 1\nreceived: 2026-04-15\n";
	go(&chain, ROUND({ GUTTER, "40 in" }, { "documents.0.date", "unknown" }));
	expect(&chain, "1.01 new MIS-04\n1.02 new TRM-02a\n");
	assert_string_equal(chain.verdict->recommended_action, "Not reviewed");
	chain.reviewer = "for: MC-1042\nround: 2\nreceived: 2026-04-25\n";
	go(&chain, ROUND({ "round", "2" }, { GUTTER, "40 in" }, { "replies", "[{item: \"1.01\", reply: dated now}]" }));
	expect(&chain, "1.01 closed MIS-04\n1.02 condition TRM-02a\n");
	assert_string_equal(chain.verdict->recommended_action, "Make corrections noted");
	/* the gutter is left out of the next package: a promise is not lost by that */
	chain.reviewer = "for: MC-1042\nround: 3\nreceived: 2026-05-05\n";
	go(&chain, ROUND({ "round", "3" }, { "roof_areas.0.details.5", "-" }, { "replies", "[{item: \"1.02\", reply: done, paper: EL-88}]" }));
	expect(&chain, "1.01 closed MIS-04\n1.02 condition TRM-02a\n");
	assert_string_equal(item_of(&chain, 1, 2)->note, "removed: confirm on the roof plan");
	/* the paper of the reply counts once the reviewer has seen it, and if it is later than the round before */
	chain.reviewer = "for: MC-1042\nround: 4\nreceived: 2026-05-15\npapers: [{number: TR-1, seen: yes}]\n";
	go(&chain, ROUND({ "round", "4" }, { GUTTER, "40 in" }, { "replies", "[{item: \"1.02\", reply: done, paper: TR-1}]" }));
	expect(&chain, "1.01 closed MIS-04\n1.02 condition TRM-02a\n");
	chain.reviewer = "for: MC-1042\nround: 5\nreceived: 2026-05-25\npapers: [{number: TR-1, seen: yes}]\n";
	go(&chain, ROUND({ "round", "5" }, { GUTTER, "40 in" }, { "documents.5.date", "2026-04-14" },
		{ "replies", "[{item: \"1.02\", reply: done, paper: TR-1}]" }));
	expect(&chain, "1.01 closed MIS-04\n1.02 closed TRM-02a\n");
	assert_string_equal(item_of(&chain, 1, 2)->note, "shown done by TR-1, which the reviewer has seen");
	assert_string_equal(chain.verdict->recommended_action, "No exceptions taken");
	chain_end(&chain);
}

#define OWN_ITEM "{action: HOLD, where: 'A5, detail 3', finding: valley without cleat, basis: 'common practice, no published source', " \
	"remedy: show it, answer_by: contractor}"

/* Own items survive three rounds; what is withdrawn leaves its number used; what was closed on one value is open on another. */
static void the_reviewer_has_the_last_word(void **state)
{
	(void)state;
	Chain chain = chain_make();
	chain.reviewer = "for: MC-1042\nround: 1\nreceived: 2026-04-15\nown: [" OWN_ITEM "]\n"
		"items: [{number: '1.01', disposition: closed as noted, reason: raised on site}]\n";
	go(&chain, ROUND({ CURB ".height", "5 in" }));
	expect(&chain, "1.01 condition PEN-08\n1.02 new OWN\n");
	chain.reviewer = "for: MC-1042\nround: 2\nreceived: 2026-04-25\nown: [" OWN_ITEM "]\n";
	go(&chain, ROUND({ "round", "2" }, { CURB ".height", "5 in" }, { "replies", "[{item: '1.02', reply: shown on A5}]" }));
	expect(&chain, "1.01 condition PEN-08\n1.02 open OWN\n");
	/* not written again: it stands all the same */
	chain.reviewer = "for: MC-1042\nround: 3\nreceived: 2026-05-05\n"
		"items: [{number: '1.01', disposition: withdrawn, reason: the drawing shows 8 in}]\n";
	go(&chain, ROUND({ "round", "3" }, { CURB ".height", "5 in" }, { "replies", "[{item: '1.02', reply: shown on A5}]" }));
	expect(&chain, "1.01 closed PEN-08\n1.02 open OWN\n");
	assert_string_equal(item_of(&chain, 1, 2)->finding, "valley without cleat");
	/* withdrawn stays withdrawn, and a new item gets a number of its own */
	chain.reviewer = "for: MC-1042\nround: 4\nreceived: 2026-05-15\nitems: [{number: '1.02', disposition: closed, reason: shown}]\n";
	go(&chain, ROUND({ "round", "4" }, { CURB ".height", "5 in" }, { "project.january_mean", "-" }, { "replies", "none" }));
	expect(&chain, "1.01 closed PEN-08\n1.02 closed OWN\n4.01 new RND-01\n4.02 new MIS-01\n");
	assert_string_equal(item_of(&chain, 1, 1)->disposition, "withdrawn: the drawing shows 8 in");
	/* another height than the one it was withdrawn on */
	chain.reviewer = "for: MC-1042\nround: 5\nreceived: 2026-05-25\n";
	go(&chain, ROUND({ "round", "5" }, { CURB ".height", "4 in" }, { "replies", "none" }));
	expect(&chain, "1.01 open PEN-08\n1.02 closed OWN\n4.01 closed RND-01\n4.02 closed MIS-01\n5.01 new RND-04\n5.02 new RND-01\n");
	chain_end(&chain);
}

/* A paper the reviewer has not seen is an item until he has. */
static void papers_are_seen_or_asked_for(void **state)
{
	(void)state;
	Chain chain = chain_make();
	chain.reviewer = "for: MC-1042\nround: 1\nreceived: 2026-04-15\npapers: [{number: EL-88, seen: no, remark: page 2 is missing}]\n";
	go(&chain, ROUND({ "round", "1" }));
	expect(&chain, "1.01 new SEE-01\n");
	assert_string_equal(item_of(&chain, 1, 1)->finding, "paper EL-88 is listed in the package, and the reviewer has not seen it");
	assert_null(strstr(chain.report, "page 2 is missing"));
	chain.reviewer = "for: MC-1042\nround: 2\nreceived: 2026-04-25\n";
	go(&chain, ROUND({ "round", "2" }, { "replies", "[{item: '1.01', reply: sent}]" }));
	expect(&chain, "1.01 open SEE-01\n");
	chain.reviewer = "for: MC-1042\nround: 3\nreceived: 2026-05-05\npapers: [{number: EL-88, seen: yes}]\n";
	go(&chain, ROUND({ "round", "3" }, { "replies", "[{item: '1.01', reply: sent}]" }));
	expect(&chain, "1.01 closed SEE-01\n");
	chain_end(&chain);
}

/* ---- replies ---- */

static void replies_are_held_against_the_items(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ CURB ".height", "4 in" }, { GUTTER, "40 in" }, { "project.january_mean", "-" }));
	expect(&chain, "1.01 new MIS-01\n1.02 new TRM-02a\n1.03 new PEN-08\n");
	/* a condition wants no reply, a number that never was is told, a reply alone closes nothing */
	go(&chain, ROUND({ "round", "2" }, { CURB ".height", "4 in" }, { GUTTER, "40 in" },
		{ "replies", "[{item: \"1.01\", reply: stated}, {item: \"1.09\", reply: done}]" }));
	expect(&chain, "1.01 closed MIS-01\n1.02 condition TRM-02a\n1.03 open PEN-08\n2.01 new RND-04\n2.02 new RND-05\n");
	assert_string_equal(item_of(&chain, 2, 1)->finding, "no reply answers 1.03 of the round before");
	assert_string_equal(item_of(&chain, 2, 2)->finding, "the reply to 1.09 answers nothing: no earlier report has this number");
	go(&chain, ROUND({ "round", "3" }, { CURB ".height", "4 in" }, { GUTTER, "40 in" },
		{ "replies", "[{item: \"1.01\", reply: stated}, {item: \"1.03\", reply: done}]" }));
	expect(&chain, "1.01 closed MIS-01\n1.02 condition TRM-02a\n1.03 open PEN-08\n2.01 closed RND-04\n2.02 closed RND-05\n3.01 new RND-05\n");
	assert_string_equal(item_of(&chain, 3, 1)->finding, "the reply to 1.01 answers nothing: it was closed in round 2");
	chain_end(&chain);
}

/* ---- changes ---- */

/* One asked for, one declared, one neither: the third alone is an item. The same value written otherwise is no change. */
static void only_what_nobody_asked_for_is_told(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ CURB ".height", "4 in" }));
	expect(&chain, "1.01 new PEN-08\n");
	go(&chain, ROUND({ "round", "2" }, { CURB ".height", "9 in" }, { "parties.owner", "Sample Owner (invented)" },
		{ "parties.designer", "Sample Office (invented)" }, { "roof_areas.0.panel.thickness", "0.0239 in" },
		{ "roof_areas.0.panel.width", "406.4 mm" },
		{ "changes", "[{field: parties.owner, reason: sold}]" }, { "replies", "none" }));
	expect(&chain, "1.01 closed PEN-08\n2.01 new RND-01\n");
	assert_string_equal(item_of(&chain, 2, 1)->finding, "designer of record (parties.designer) was Example Design Office (invented) in the round before "
		"and is Sample Office (invented), which no item asked for and no change declares");
	chain_end(&chain);
}

/* Another name, two areas of one, one of two: the number stays with the record. */
static void names_change_and_numbers_stay(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ CURB ".height", "4 in" }));
	expect(&chain, "1.01 new PEN-08\n");
	go(&chain, ROUND({ "round", "2" }, { CURB ".height", "4 in" }, { CURB ".name", "AHU-1" }, { CURB ".was", "RTU-1" },
		{ "changes", "[{field: roof_areas.Main roof.penetrations.RTU-1, reason: renamed}]" },
		{ "replies", "[{item: \"1.01\", reply: see the new name}]" }));
	expect(&chain, "1.01 open PEN-08\n");
	assert_string_equal(item_of(&chain, 1, 1)->name, "Main roof / AHU-1");
	/* the name after next is known by the name before it, not by the first */
	go(&chain, ROUND({ "round", "3" }, { CURB ".height", "4 in" }, { CURB ".name", "AHU-2" }, { CURB ".was", "AHU-1" },
		{ "roof_areas.0.name", "South roof" }, { "roof_areas.0.was", "Main roof" },
		{ "engineering.0.areas", "[South roof]" },
		{ "changes", "[{field: roof_areas.Main roof, reason: renamed}, {field: roof_areas.South roof.penetrations.AHU-1, reason: renamed},"
		  "{field: engineering.areas, reason: renamed}]" }, { "replies", "[{item: \"1.01\", reply: see the new name}]" }));
	expect(&chain, "1.01 open PEN-08\n");
	/* without `was` the old one is gone and the new one new */
	go(&chain, ROUND({ "round", "4" }, { CURB ".height", "4 in" }, { CURB ".name", "AHU-3" }, { "roof_areas.0.name", "South roof" },
		{ "engineering.0.areas", "[South roof]" },
		{ "replies", "[{item: \"1.01\", reply: see the new name}]" }));
	expect(&chain, "1.01 open PEN-08\n4.01 new PEN-08\n");
	assert_string_equal(item_of(&chain, 1, 1)->note, "removed: confirm on the roof plan; if South roof / AHU-3 took its place, "
		"write there what it was (was:)");
	chain_end(&chain);
}

/* ---- another edition ---- */

/* An edition without the rule closes nothing by that; one in which it is met closes it. */
static void editions_change_between_rounds(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ CURB ".height", "4 in" }, { CURB ".upslope_clearance", "6 in" }));
	expect(&chain, "1.01 new PEN-08\n1.02 new PEN-06a\n");
	const Criteria *first = chain.world.criteria;
	Criteria *other = TAKE(chain.arena, Criteria, 1);
	Rule *rule = TAKE(chain.arena, Rule, first->rules);
	*other = *first;
	other->edition.edition.text = "sample-2027";
	other->rule = rule;
	memcpy(rule, first->rule, first->rules * sizeof *rule);
	for (uint32_t i = 0; i < first->rules; i++)
		if (strcmp(rule[i].code, "PEN-08") == 0)
			rule[i].code = "PEN-98";
	chain.world.criteria = other;
	go(&chain, ROUND({ "round", "2" }, { CURB ".height", "8 in" }, { CURB ".upslope_clearance", "14 in" },
		{ "replies", "[{item: \"1.01\", reply: higher}]" }));
	expect(&chain, "1.01 open PEN-08\n1.02 closed PEN-06a\n");
	assert_string_equal(item_of(&chain, 1, 1)->note, "not judged again: these criteria have no such rule");
	chain.world.criteria = first;
	go(&chain, ROUND({ "round", "3" }, { CURB ".height", "8 in" }, { "replies", "none" }));
	expect(&chain, "1.01 closed PEN-08\n1.02 closed PEN-06a\n");
	chain_end(&chain);
}

/* ---- stages ---- */

/* A bid has no numbers; the first application begins them, whatever the bid found. */
static void a_bid_begins_no_numbers(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ "stage", "bid" }, { "warranty.term", "-" }));
	assert_true(chain.verdict->items >= 1);
	assert_int_equal(chain.verdict->item[0].item, 0);
	go(&chain, ROUND({ CURB ".height", "4 in" }));
	expect(&chain, "1.01 new PEN-08\n");
	assert_non_null(chain.verdict->earlier);
	chain_end(&chain);
}

/* At close-out what was to be noted and is not shown done is an item, and stands with the order line. */
static void close_out_wants_what_was_noted(void **state)
{
	(void)state;
	Chain chain = chain_make();
	go(&chain, ROUND({ GUTTER, "40 in" }));
	expect(&chain, "1.01 new TRM-02a\n");
	go(&chain, ROUND({ "round", "2" }, { GUTTER, "40 in" }, { "stage", "order" }, { "replies", "none" }));
	assert_int_equal(item_state(item_of(&chain, 1, 1)), ITEM_CONDITION);
	assert_string_equal(chain.verdict->order_condition, "to be shown done: 1.01");
	go(&chain, ROUND({ "round", "3" }, { GUTTER, "40 in" }, { "stage", "close-out" }, { "replies", "none" }));
	assert_int_equal(item_state(item_of(&chain, 1, 1)), ITEM_CONDITION);
	assert_true(has_item(&chain, "RND-06", "not shown done at close-out: 1.01"));
	/* shown by the rule itself */
	go(&chain, ROUND({ "round", "4" }, { "stage", "close-out" }, { "replies", "none" }));
	assert_int_equal(item_state(item_of(&chain, 1, 1)), ITEM_CLOSED);
	assert_false(has_item(&chain, "RND-06", NULL));
	assert_null(chain.verdict->order_condition);
	chain_end(&chain);
}

/* ---- variances ---- */

typedef struct {
	const char *code, *record, *accepted, *until, *condition;
} GrantedHere;

static Text text_is(const char *text)
{
	return (Text){ { .said = text != NULL ? SAID_VALUE : SAID_NOTHING, .typed = text }, text };
}

static void grant(Chain *chain, const GrantedHere *granted)
{
	Registers *registers = TAKE(chain->arena, Registers, 1);
	Variance *row = TAKE(chain->arena, Variance, 1);
	*registers = *chain->world.registers;
	*row = (Variance){ .number = text_is("V-9"), .code = text_is(granted->code), .submittal = text_is("MC-1042"),
		.record = text_is(granted->record), .value_accepted = text_is(granted->accepted), .reason = text_is("no more room"),
		.by = text_is("technical manager"), .condition = text_is(granted->condition) };
	row->until = (Date){ .given = { .said = SAID_VALUE, .typed = granted->until } };
	assert_true(date_read(granted->until, strlen(granted->until), &row->until.day));
	registers->variances.row = row;
	registers->variances.count = 1;
	chain->world.registers = registers;
}

/* The clean submittal is dated 2026-04-14, and a curb is at least 6 in. */
static void a_variance_covers_no_more_than_it_grants(void **state)
{
	(void)state;
	static const struct {
		GrantedHere granted;
		const char *height, *items, *says;
	} cases[] = {
		{ { "PEN-08", "RTU-1", "5 in", "2026-12-31", NULL }, "5 in", "1.01 variance PEN-08\n", NULL },
		{ { "PEN-08", "Main roof / RTU-1", "5 in", "2026-12-31", NULL }, "5 in", "1.01 variance PEN-08\n", NULL },
		{ { "PEN-08", "RTU-1", "4 in", "2026-12-31", NULL }, "5 in", "1.01 variance PEN-08\n", NULL },
		{ { "PEN-08", "RTU-1", "127 mm", "2026-04-14", NULL }, "5 in", "1.01 variance PEN-08\n", NULL },
		{ { "PEN-08", "RTU-1", "5 in", "2026-12-31", NULL }, "4.9 in", "1.01 new VAR-02\n1.02 new PEN-08\n",
			"variance V-9 covers nothing here: it accepts 5 in, and 4.9 in is submitted" },
		{ { "PEN-08", "VP-1", "5 in", "2026-12-31", NULL }, "5 in", "1.01 new VAR-02\n1.02 new PEN-08\n",
			"variance V-9 covers nothing here: nothing was found for PEN-08 at VP-1" },
		{ { "PEN-08", "RTU-1", "5 in", "2026-04-13", NULL }, "5 in", "1.01 new VAR-01\n1.02 new PEN-08\n",
			"variance V-9 ended on 2026-04-13; it was granted for PEN-08 at RTU-1" },
		{ { "PEN-10a", "RTU-1", "5 in", "2026-12-31", NULL }, "5 in", "1.01 new VAR-02\n1.02 new PEN-08\n",
			"variance V-9 covers nothing here: these criteria have no rule PEN-10a" },
		{ { "PEN-06a", "RTU-1", "5 in", "2026-12-31", NULL }, "5 in", "1.01 new VAR-02\n1.02 new PEN-08\n",
			"variance V-9 covers nothing here: nothing was found for PEN-06a at RTU-1" },
		{ { "PEN-08", "RTU-1", "5 in", "2026-12-31", "the drain is kept open" }, "5 in", "1.01 new VAR-03\n1.02 variance PEN-08\n",
			"variance V-9 for PEN-08 at RTU-1 holds on condition: the drain is kept open" },
	};
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		Chain chain = chain_make();
		grant(&chain, &cases[i].granted);
		go(&chain, ROUND({ CURB ".height", cases[i].height }));
		expect(&chain, cases[i].items);
		if (cases[i].says != NULL)
			assert_string_equal(item_of(&chain, 1, 1)->finding, cases[i].says);
		chain_end(&chain);
	}
}

static void what_may_not_be_waived_is_not(void **state)
{
	(void)state;
	Chain chain = chain_make();
	grant(&chain, &(GrantedHere){ "CLP-01a", "clip-b-float", "clip-b-float", "2026-12-31", NULL });
	go(&chain, ROUND({ "roof_areas.0.clips.0.item", "clip-b-float" }));
	expect(&chain, "1.01 new VAR-02\n1.02 new CLP-01a\n");
	assert_string_equal(item_of(&chain, 1, 1)->finding, "variance V-9 covers nothing here: CLP-01a may not be waived");
	chain_end(&chain);
}

/* It holds from round to round while the register has it, and the item opens when it has not. */
static void a_variance_over_rounds(void **state)
{
	(void)state;
	Chain chain = chain_make();
	const Registers *none = chain.world.registers;
	go(&chain, ROUND({ CURB ".height", "5 in" }));
	expect(&chain, "1.01 new PEN-08\n");
	grant(&chain, &(GrantedHere){ "PEN-08", "RTU-1", "5 in", "2026-12-31", NULL });
	go(&chain, ROUND({ "round", "2" }, { CURB ".height", "5 in" }, { "replies", "[{item: \"1.01\", reply: variance V-9}]" }));
	expect(&chain, "1.01 variance PEN-08\n");
	go(&chain, ROUND({ "round", "3" }, { CURB ".height", "5 in" }, { "replies", "none" }));
	expect(&chain, "1.01 variance PEN-08\n");
	chain.world.registers = none;
	go(&chain, ROUND({ "round", "4" }, { CURB ".height", "5 in" }, { "replies", "[{item: \"1.01\", reply: to be renewed}]" }));
	expect(&chain, "1.01 open PEN-08\n");
	chain_end(&chain);
}

/* ---- untrusted reports ---- */

/* A report without a seal, as ndjson has none, may have been written by anybody. Whatever it says, the round is judged or the
 * report refused. */
static void no_report_does_harm(void **state)
{
	(void)state;
	static const char letters[] = "[].,#\\\\019aZ: ";
	Chain chain = chain_make();
	go(&chain, ROUND({ CURB ".height", "4 in" }, { GUTTER, "40 in" }, { "project.january_mean", "-" }, { "roof_areas.0.clips.0.item", "clip-b-float" }));
	Out *out = out_make(chain.arena, OUT_TERMINAL);
	report_format("ndjson")->write(out, chain.verdict, chain.arena);
	const char *text = out_text(out, NULL);
	size_t length = strlen(text);
	uint32_t seed = 1, judged = 0;
	for (int i = 0; i < 400; i++) {
		ArenaMark mark = arena_mark(chain.arena);
		char *other = arena_text(chain.arena, text, length);
		for (int j = 0; j < 1 + i % 8; j++) {
			seed = seed * 1664525u + 1013904223u;
			size_t at = (seed >> 4) % length;
			if (other[at] != '"' && other[at] != '{' && other[at] != '}')
				other[at] = letters[seed % (sizeof letters - 1)];
		}
		Complaints faults = { .arena = chain.arena };
		const Source *source = source_make(chain.arena, "before.json", other, length, SOURCE_PREVIOUS);
		if (read_earlier(chain.arena, source, &faults) != NULL) {
			chain.report = other;
			go(&chain, ROUND({ "round", "2" }, { CURB ".height", "5 in" }, { GUTTER, "41 in" },
				{ "replies", "[{item: \"1.01\", reply: a}]" }, { "changes", "[{field: roof_areas.Main roof.clips, reason: b}]" }));
			judged++;
		} else {
			assert_true(faults.count > 0);
		}
		arena_back(chain.arena, mark);
	}
	assert_true(judged > 50);
	chain_end(&chain);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(numbers_never_change),
		cmocka_unit_test(what_is_gone_stays_open),
		cmocka_unit_test(a_rule_not_judged_closes_nothing),
		cmocka_unit_test(areas_split_and_merge),
		cmocka_unit_test(conditions_stay_until_shown_done),
		cmocka_unit_test(the_reviewer_has_the_last_word),
		cmocka_unit_test(papers_are_seen_or_asked_for),
		cmocka_unit_test(replies_are_held_against_the_items),
		cmocka_unit_test(only_what_nobody_asked_for_is_told),
		cmocka_unit_test(editions_change_between_rounds),
		cmocka_unit_test(a_bid_begins_no_numbers),
		cmocka_unit_test(close_out_wants_what_was_noted),
		cmocka_unit_test(a_variance_covers_no_more_than_it_grants),
		cmocka_unit_test(what_may_not_be_waived_is_not),
		cmocka_unit_test(a_variance_over_rounds),
		cmocka_unit_test(no_report_does_harm),
		cmocka_unit_test(names_change_and_numbers_stay),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}

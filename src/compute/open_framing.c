/* SPDX-License-Identifier: MIT
 * Capacity tests on open framing over a deck: sources disagree whether they hold there, so a switch of the criteria says no, with
 * the engineer's statement, or yes. UFC 3-110-03 says that such tests usually stand on heavy purlins and that clips over
 * insulation on deck may need pull tests.
 */
#include "open_framing.h"

#include "below.h"
#include "text.h"

#include <string.h>

static const char *const open_framing = "purlin;sub-purlin";
static const char *const statement = "statement on open-framing test";

static bool is_tested_open(const Case *test)
{
	const Listing *listing = test->listed;
	return listing != NULL && is_value(&listing->substrate_tested.given) && is_among(listing->substrate_tested.text, open_framing) &&
	       is_word(&((const AreaTest *)test->row)->role, "capacity");
}

static bool fetch_is_deck(Case *fact)
{
	const char *kind = GIVEN(fact, roof_area, RoofArea, support.kind);
	return ready(fact) && !is_among(kind, open_framing);
}

/* The support itself, and what of a screw goes with the support. */
static bool goes_with_support(const Compared *compared)
{
	const Word *part = &compared->record.part;
	if (!is_value(&part->given))
		return false;
	if (strcmp(part->text, "support") == 0)
		return true;
	return strcmp(part->text, "fastener") == 0 && compared->field != NULL && is_among(compared->field->key, "kind;length;point");
}

bool is_let_pass_over_deck(Case *comparison, const Compared *compared)
{
	const Word *accepted = &comparison->all->criteria->edition.open_framing_test_over_deck;
	bool may = compared->test != NULL && !is_word(accepted, "no") && is_value(&accepted->given) && is_tested_open(compared->test) &&
		   goes_with_support(compared);
	if (!may || !fetch_is_deck(comparison))
		return false;
	note(comparison, "a test on open framing is accepted over a deck");
	return true;
}

/* Only where a test on open framing is used over a deck. */
double test_open_framing_stated_yes(Case *test)
{
	if (!is_tested_open(test))
		return SKIP(test, "it is no capacity test on open framing");
	bool is_deck = fetch_is_deck(test);
	if (ready(test) && !is_deck)
		return SKIP(test, "the clips stand on open framing");
	const Case *submittal = outward(test, KIND_submittal);
	if (fetch_list(test, submittal, offsetof(Submittal, documents)) == NULL)
		return 0;
	bool found = false;
	for (Case *paper = first_below(submittal, KIND_document); paper != NULL && !found; paper = paper->next)
		found = same_text(GIVEN_AT(test, paper, Document, kind), statement);
	return found;
}

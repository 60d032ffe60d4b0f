/* SPDX-License-Identifier: MIT
 * The frame of a SARIF log: what stands before the results, and behind them the tool with every rule and its help, and whether
 * each file could be judged. The tool comes last, as which editions were used is known only then.
 */
#include "sarif.h"

#include "formats.h"
#include "json_number.h"
#include "version.h"
#include "why.h"

#include <string.h>

static const char *cell(const Text *text)
{
	return is_value(&text->given) && text->text != NULL ? text->text : "";
}

static json_t *text_of(const char *text, Arena *arena)
{
	json_t *made = json_made(json_object());
	json_put(made, "text", json_words(text, arena));
	return made;
}

/* ---- rules ---- */

/* One rule or message, as a viewer shows it. */
typedef struct {
	const char *code, *finding, *asks, *why, *remedy, *basis;
	Action action;
} Described;

static json_t *descriptor(const Described *rule, Arena *arena)
{
	json_t *made = json_made(json_object()), *configuration = json_made(json_object()), *properties = json_made(json_object());
	json_put(made, "id", json_words(rule->code, arena));
	json_put(made, "shortDescription", sarif_message(rule->finding, arena));
	json_put(made, "fullDescription", sarif_message(rule->asks, arena));
	const char *help = arena_printf(arena, "%s\n\nWhy: %s\n\nRemedy: %s\n\nBasis: %s\n\nMore: seamstamp why %s", rule->asks,
		rule->why, rule->remedy, rule->basis, rule->code);
	json_put(made, "help", text_of(help, arena));
	json_put(configuration, "level", json_words(sarif_level(rule->action), arena));
	json_put(made, "defaultConfiguration", configuration);
	json_put(properties, "action", json_words(action_words(rule->action), arena));
	json_put(made, "properties", properties);
	return made;
}

static json_t *rule_descriptor(const Gathered *gathered, const Criteria *criteria, uint32_t number, Arena *arena)
{
	const RuleRow *row = &criteria->rule_rows.row[number];
	const Rule *rule = &criteria->rule[number];
	Described described = { rule->code, wording_words(&rule->finding, arena), question_words(rule, row, arena), cell(&row->why),
		wording_words(&rule->remedy, arena), basis_text(gathered->reference, cell(&row->basis), arena), rule->action };
	return descriptor(&described, arena);
}

static json_t *message_descriptor(const Message *message, Arena *arena)
{
	Described described = { message->code, message_words(message->finding, arena), message_words(message->finding, arena),
		message->why, message_words(message->remedy, arena), "how a file is read: common practice, no published source",
		message->action };
	return descriptor(&described, arena);
}

static json_t *own_descriptor(Arena *arena)
{
	Described described = { "OWN", "what the panel maker's reviewer found himself", "added by the reviewer in his file",
		"no table holds all that can be wrong with a roof", "as the item says", "as the item says", ACTION_REVISE };
	return descriptor(&described, arena);
}

/* Editions share most of their codes; the first to have one describes it. */
static bool is_described(const Gathered *gathered, uint32_t edition, const char *code)
{
	for (uint32_t i = 0; i < edition; i++)
		for (uint32_t j = 0; j < gathered->edition[i]->rules; j++)
			if (strcmp(gathered->edition[i]->rule[j].code, code) == 0)
				return true;
	return false;
}

static json_t *rules_of(const Gathered *gathered, Arena *arena)
{
	json_t *rules = json_made(json_array());
	for (uint32_t i = 0; i < gathered->editions; i++)
		for (uint32_t j = 0; j < gathered->edition[i]->rules; j++)
			if (!is_described(gathered, i, gathered->edition[i]->rule[j].code))
				json_add(rules, rule_descriptor(gathered, gathered->edition[i], j, arena));
	for (int i = 0; i < MESSAGE_COUNT; i++)
		json_add(rules, message_descriptor(message_of((MessageId)i), arena));
	json_add(rules, own_descriptor(arena));
	return rules;
}

static json_t *tool_of(const Gathered *gathered, Arena *arena)
{
	json_t *tool = json_made(json_object()), *driver = json_made(json_object());
	json_put(driver, "name", json_words("seamstamp", arena));
	json_put(driver, "version", json_words(SEAMSTAMP_VERSION, arena));
	json_put(driver, "semanticVersion", json_words(SEAMSTAMP_VERSION, arena));
	json_put(driver, "shortDescription", text_of("Reviews weathertight-warranty submittals of standing-seam metal roofs. "
		"It advises; nothing it says is an approval.", arena));
	json_put(driver, "rules", rules_of(gathered, arena));
	json_put(tool, "driver", driver);
	return tool;
}

/* ---- what could not be judged ---- */

static json_t *notification(const Unread *unread, Arena *arena)
{
	json_t *made = json_made(json_object()), *locations = json_made(json_array());
	SarifPlace at = { unread->file, NULL, { .line = unread->line, .column = unread->column } };
	json_put(made, "level", json_words("error", arena));
	json_put(made, "message", sarif_message(arena_printf(arena, "This file could not be judged: %s%s%s%s", unread->why,
		unread->code != NULL ? " (" : "", unread->code != NULL ? unread->code : "", unread->code != NULL ? ")" : ""), arena));
	json_add(locations, sarif_location(&at, arena));
	json_put(made, "locations", locations);
	return made;
}

static json_t *invocations_of(const Gathered *gathered, Arena *arena)
{
	json_t *array = json_made(json_array()), *made = json_made(json_object()), *notifications = json_made(json_array());
	for (uint32_t i = 0; i < gathered->unreads; i++)
		json_add(notifications, notification(&gathered->unread[i], arena));
	json_put(made, "executionSuccessful", json_boolean(gathered->unreads == 0));
	json_put(made, "toolExecutionNotifications", notifications);
	json_add(array, made);
	return array;
}

static json_t *bases(Arena *arena)
{
	json_t *made = json_made(json_object()), *root = json_made(json_object()), *built_in = json_made(json_object());
	json_put(root, "description", text_of("The folder in which the review was run.", arena));
	json_put(built_in, "description", text_of("The tables built into the program.", arena));
	json_put(made, "%SRCROOT%", root);
	json_put(made, "BUILTIN", built_in);
	return made;
}

static json_t *editions_of(const Gathered *gathered, Arena *arena)
{
	json_t *properties = json_made(json_object()), *editions = json_made(json_array());
	for (uint32_t i = 0; i < gathered->editions; i++)
		json_add(editions, json_words(cell(&gathered->edition[i]->edition.edition), arena));
	json_put(properties, "criteria", editions);
	return properties;
}

static void put_member(Out *out, const char *key, json_t *tree, Arena *arena)
{
	SAY(out, ",\n\"");
	out_literal(out, key, strlen(key));
	SAY(out, "\": ");
	put_json(out, tree, JSON_COMPACT, arena);
}

static void begin_sarif(Out *out, Arena *arena)
{
	(void)arena;
	SAY(out, "{\"$schema\": \"https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json\",\n"
		"\"version\": \"2.1.0\",\n\"runs\": [{\"columnKind\": \"unicodeCodePoints\", "
		"\"newlineSequences\": [\"\\r\\n\", \"\\n\", \"\\r\"],\n"
		"\"automationDetails\": {\"id\": \"seamstamp/\"},\n\"results\": [\n");
}

static void end_sarif(Out *out, const Gathered *gathered, Arena *arena)
{
	SAY(out, "\n]");
	put_member(out, "tool", tool_of(gathered, arena), arena);
	put_member(out, "invocations", invocations_of(gathered, arena), arena);
	put_member(out, "originalUriBaseIds", bases(arena), arena);
	put_member(out, "properties", editions_of(gathered, arena), arena);
	SAY(out, "}]}\n");
}

const ReportDocument sarif_document = { .begin = begin_sarif, .between = ",\n", .end = end_sarif };

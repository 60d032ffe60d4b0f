/* SPDX-License-Identifier: MIT
 * Every word that people read, over the reviews of all examples and of every broken rule case: an item says where, what was
 * submitted and what is allowed, on whose authority, and what to do, none of it longer than four lines; no page speaks of keys
 * that nobody types, or the language of the program.
 */
#include "../rule_cases.h"

#include "file.h"
#include "report/parts.h"
#include "report.h"
#include "sheet.h"

#include <ctype.h>

enum { MOST_LINES = 4, MOST_SOURCE_LINES = 5, LETTER_WIDTH = 100, LABELS = 17, MOST_SAID = 60 };

typedef struct {
	World world;
	uint32_t wrong, items, said;
	const char *told[MOST_SAID]; /* each fault once */
} Lint;

static void fault(Lint *lint, const char *where, const char *what, const char *text)
{
	const char *words = arena_printf(lint->world.run, "%s: %.200s", what, text != NULL ? text : "nothing");
	lint->wrong++;
	for (uint32_t i = 0; i < lint->said; i++)
		if (strcmp(lint->told[i], words) == 0)
			return;
	if (lint->said == MOST_SAID)
		return;
	lint->told[lint->said++] = words;
	print_error("%s: %s\n", where, words);
}

/* ---- words ---- */

static bool is_program_word(const char *word)
{
	static const char *const words[] = { "null", "nil", "struct", "pointer", "int", "integer", "nan", "inf", "true", "false", "bool",
		"boolean", "enum", "void", "malloc", "assert", "stderr", "stdin", "stdout", "undefined", "array", "char", "unsigned", "errno",
		"segfault", "callback", "regex", "parser", "scalar", "enumeration", "operand", "arena", "node" };
	for (size_t i = 0; i < sizeof words / sizeof *words; i++)
		if (strcasecmp(word, words[i]) == 0)
			return true;
	return false;
}

/* A key that a submittal is written with, or a column of a table: whoever mends it must type it so. */
static bool is_key(const char *word)
{
	for (int kind = 0; kind < RECORD_KINDS; kind++)
		if (field_find(record_of((RecordKind)kind), word, strlen(word)) != NULL)
			return true;
	return false;
}

/* Every piece of a dotted path is a key, or has no underscore. */
static bool is_path(const char *word, Arena *arena)
{
	for (const char *at = word; *at != '\0';) {
		size_t length = strcspn(at, ".[]");
		const char *piece = arena_text(arena, at, length);
		if (strchr(piece, '_') != NULL && !is_key(piece))
			return false;
		at += length;
		at += strspn(at, ".[]");
	}
	return true;
}

static bool is_blank_to_fill(const char *word)
{
	return word[strspn(word, "_")] == '\0';
}

static void check_word(Lint *lint, const char *where, const char *word, Arena *arena)
{
	if (is_program_word(word))
		fault(lint, where, "a word of the program", word);
	bool is_file = strstr(word, ".csv") != NULL || strstr(word, ".yaml") != NULL;
	if (strchr(word, '_') != NULL && !is_blank_to_fill(word) && !is_file && !is_path(word, arena))
		fault(lint, where, "a word with an underscore", word);
}

/* Words are parted by blanks and punctuation; an underscore, a dot and a hyphen within one are its own. */
static void check_words(Lint *lint, const char *where, const char *text)
{
	Arena *arena = arena_make();
	for (const char *at = text; *at != '\0';) {
		size_t length = 0;
		while (at[length] != '\0' && (isalnum((unsigned char)at[length]) || strchr("_.-[]", at[length]) != NULL))
			length++;
		size_t kept = length;
		while (kept > 0 && strchr(".-]", at[kept - 1]) != NULL)
			kept--;
		size_t skipped = strspn(at, "[-.");
		bool is_cut = strncmp(at + length, " ...", 4) == 0; /* of a source line that is longer than the page */
		if (kept > skipped && !is_cut)
			check_word(lint, where, arena_text(arena, at + skipped, kept - skipped), arena);
		at += length > 0 ? length : 1;
	}
	arena_free(arena);
}

/* ---- items ---- */

/* "{gap}", where its value should stand. */
static bool has_slot(const char *text)
{
	for (const char *at = text; (at = strchr(at, '{')) != NULL; at++) {
		size_t length = strspn(at + 1, "abcdefghijklmnopqrstuvwxyz_.");
		if (length > 0 && at[length + 1] == '}')
			return true;
	}
	return false;
}

/* How many lines a text takes beside its label in the letter. */
static uint32_t lines_of(const char *text)
{
	Arena *arena = arena_make();
	Out *out = out_make(arena, OUT_TERMINAL);
	put_wrapped(out, text, LABELS, LABELS, LETTER_WIDTH);
	size_t length;
	const char *page = out_text(out, &length);
	uint32_t lines = 1;
	for (size_t i = 0; i < length; i++)
		lines += page[i] == '\n';
	arena_free(arena);
	return lines;
}

static void check_said(Lint *lint, const char *where, const char *what, const char *text)
{
	if (text == NULL || *text == '\0') {
		fault(lint, where, "an item does not say", what);
		return;
	}
	if (lines_of(text) > (strcmp(what, "basis") == 0 ? MOST_SOURCE_LINES : MOST_LINES)) /* the name of a standard is as long as it is */
		fault(lint, where, "longer than four lines", text);
	if (has_slot(text))
		fault(lint, where, "a name in braces is left", text);
	if (strstr(text, "  ") != NULL)
		fault(lint, where, "two blanks", text);
	check_words(lint, where, text);
}

static void check_item(Lint *lint, const char *file, const Verdict *verdict, const Finding *item, Arena *arena)
{
	const char *where = arena_printf(arena, "%s: %s", file, item->code);
	lint->items++;
	check_said(lint, where, "where", item_where(item, &item->spot[0], arena));
	check_said(lint, where, "what is wrong", item->finding);
	check_said(lint, where, "what to do", item->remedy);
	check_said(lint, where, "who must answer", item->answer_by);
	check_said(lint, where, "authority", authority_words(item->authority));
	check_said(lint, where, "basis", basis_text(verdict->cases->reference, item->basis, arena));
	if (item->found_by == FOUND_BROKEN || item->found_by == FOUND_MISSING)
		check_said(lint, where, "what was submitted", item->submitted.text);
	if (item->found_by == FOUND_BROKEN)
		check_said(lint, where, "what is allowed", item->limit.text);
}

/* ---- pages ---- */

static void check_page(Lint *lint, const char *where, const char *format, const Verdict *verdict)
{
	Arena *arena = arena_make();
	Out *out = out_make(arena, OUT_TERMINAL);
	size_t length;
	report_format(format)->write(out, verdict, arena);
	check_words(lint, arena_printf(arena, "%s as %s", where, format), out_text(out, &length));
	assert_true(length > 0 || verdict->items == 0);
	arena_free(arena);
}

static void check_verdict(Lint *lint, const char *where, Verdict *verdict, Arena *arena)
{
	find_site_checks(verdict, arena);
	for (uint32_t i = 0; i < verdict->items; i++)
		check_item(lint, where, verdict, &verdict->item[i], arena);
	static const char *const pages[] = { "text", "questions", "sheet", "lines", "requests", "schedule" };
	for (size_t i = 0; i < sizeof pages / sizeof *pages; i++)
		check_page(lint, where, pages[i], verdict);
}

static void check_other(Lint *lint, const char *where, const char *command, const Page *page)
{
	Arena *arena = lint->world.run;
	Out *out = out_make(arena, OUT_TERMINAL);
	size_t length;
	page_format(command, "text")->write(out, page, arena);
	check_words(lint, arena_printf(arena, "%s as %s", where, command), out_text(out, &length));
}

/* An order in which every kind of line has something against it. */
static const char bought[] = "code,description,quantity,unit,supplier,date,price\nPA-1624,,10,pcs,panel maker,2026-03-01,\n"
	"clip-b-float,,45,boxes,,,\nSC-121,,9,bags,panel maker,,\nscrew-10x1,,1,bag,,,\nclip-a-fixd,,1,box,,,\nclosure-foam-a,,1,bag,,,\n"
	"closure-metal-a,,900,boxes,Example Roofing Supply,,\nclip-a-fixed,,2,,,,\nSC-147,,2,bags,nobody,,\n";

static void check_order(Lint *lint, const char *where, Verdict *verdict, Arena *arena)
{
	Complaints faults = { .arena = arena };
	const Source *source = source_make(arena, "order.csv", bought, sizeof bought - 1, SOURCE_ORDER);
	const OrderList *list = read_order(arena, source, &faults);
	assert_non_null(list);
	check_other(lint, where, "order", &(Page){ .order = hold_order(&(OrderBasis){ .submitted = verdict }, list, arena) });
}

static void check_calcs(Lint *lint, const char *where, Verdict *verdict, Arena *arena)
{
	check_other(lint, where, "calcs", &(Page){ .sheet = make_sheet(verdict, arena) });
	check_other(lint, where, "takeoff", &(Page){ .takeoff = take_off(verdict, arena) });
	check_order(lint, where, verdict, arena);
	check_other(lint, where, "options", &(Page){ .offers = make_offers(verdict, arena) });
}

static void end(Lint *lint)
{
	print_message("%u items read\n", lint->items);
	assert_int_equal(lint->wrong, 0);
	arena_free(lint->world.run);
}

static void examples_read_well(void **state)
{
	(void)state;
	Lint lint = { .world = world_make() };
	const char *const *path;
	size_t files;
	assert_true(file_walk(lint.world.run, "examples", &path, &files));
	assert_true(files >= 15);
	for (size_t i = 0; i < files; i++) {
		Arena *arena = arena_make();
		Verdict *verdict = review_path(&lint.world, arena, path[i]);
		check_verdict(&lint, path[i], verdict, arena);
		if (strstr(path[i], "/faults/") == NULL) /* their many items are what they are for; options take seconds each */
			check_calcs(&lint, path[i], verdict, arena);
		arena_free(arena);
	}
	assert_true(lint.items > 60);
	end(&lint);
}

static void broken_cases_read_well(void **state)
{
	(void)state;
	Lint lint = { .world = world_make() };
	RuleCases cases = read_cases(lint.world.run);
	for (uint32_t i = 0; i < cases.count; i++) {
		const RuleCase *c = &cases.at[i];
		if (strcmp(c->name, "broken") != 0)
			continue;
		Arena *arena = arena_make();
		check_verdict(&lint, arena_printf(arena, "%s %s", c->file, c->code), review_case(&lint.world, arena, c), arena);
		arena_free(arena);
	}
	assert_true(lint.items > 200);
	end(&lint);
}

/* What `why` prints of every code. */
static void reasons_read_well(void **state)
{
	(void)state;
	Lint lint = { .world = world_make() };
	const Source *source;
	Library library = { lint.world.criteria, lint.world.reference, lint.world.registers,
		builtin_nodes(lint.world.run, "examples/clean.yaml", &source) };
	const char *code;
	for (size_t i = 0; (code = why_code_at(lint.world.criteria, i)) != NULL; i++, lint.items++) {
		Arena *arena = arena_make();
		Out *out = out_make(arena, OUT_TERMINAL);
		size_t length;
		assert_true(write_why(out, &library, code, arena));
		check_words(&lint, arena_printf(arena, "why %s", code), out_text(out, &length));
		arena_free(arena);
	}
	assert_true(lint.items > 300);
	end(&lint);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(examples_read_well),
		cmocka_unit_test(broken_cases_read_well),
		cmocka_unit_test(reasons_read_well),
	};
	return cmocka_run_group_tests_name("text_lint", tests, NULL, NULL) != 0;
}

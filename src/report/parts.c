/* SPDX-License-Identifier: MIT
 * The small pieces that several formats print alike: numbers of items, words for closed sets, places, labels.
 */
#include "parts.h"
#include "number.h"
#include "reference.h"

#include <string.h>

const char *item_number(const Finding *item, Arena *arena)
{
	return item->round == 0 || item->item == 0 ? NULL : arena_printf(arena, "%u.%02u", item->round, item->item);
}

const char *item_heading(const Finding *item)
{
	int action = counted_action(item);
	if (action < 0 && item_state(item) == ITEM_VARIANCE)
		return "VARIANCE";
	return action < 0 ? "CLOSED" : action_words((Action)action);
}

const char *item_where(const Finding *item, const Spot *spot, Arena *arena)
{
	const char *name = spot->where != NULL ? spot->where->name : spot->name != NULL ? spot->name : item->name;
	if (item->complaint != NULL && item->complaint->about.where != NULL && spot == &item->spot[0])
		name = item->complaint->about.where;
	if (name == NULL)
		name = "the file";
	return spot->see != NULL ? arena_printf(arena, "%s (%s)", name, spot->see) : name;
}

const char *item_places(const Finding *item, const Verdict *verdict, Arena *arena)
{
	enum { MOST_NAMED = 8 };
	const char *all = "";
	for (uint32_t i = 0; i < item->spots && i < MOST_NAMED; i++) {
		const Spot *spot = &item->spot[i];
		all = arena_printf(arena, "%s%s%s", all, i > 0 ? "; " : "", item_where(item, spot, arena));
		if (verdict != NULL)
			all = arena_printf(arena, "%s, %s line %u", all, place_file(verdict, &spot->place), place_line(&spot->place));
	}
	return item->spots > MOST_NAMED ? arena_printf(arena, "%s; and %u more", all, item->spots - MOST_NAMED) : all;
}

const char *name_within(const Case *at, const Case *area)
{
	size_t length = strlen(area->name);
	bool is_within = strncmp(at->name, area->name, length) == 0 && strncmp(at->name + length, " / ", 3) == 0;
	return is_within ? at->name + length + 3 : at->name;
}

const char *place_letter(uint32_t number, Arena *arena)
{
	char letter[8];
	size_t at = sizeof letter;
	for (uint32_t left = number + 1; left > 0 && at > 0; left = (left - 1) / 26)
		letter[--at] = (char)('a' + (left - 1) % 26);
	return arena_text(arena, letter + at, sizeof letter - at);
}

const char *known_by_words(KnownBy known_by)
{
	static const char *const words[] = { "read", "second-hand", "memory", "common practice" };
	return words[known_by];
}

const char *item_state_words(ItemState state)
{
	static const char *const words[] = { "new", "open", "closed", "condition", "variance" };
	return words[state];
}

const char *stage_words(Stage stage)
{
	static const char *const words[] = { "bid", "application", "order", "close-out" };
	return words[stage];
}

const char *plain_words(const char *name, Arena *arena)
{
	char *words = arena_text(arena, name, strlen(name));
	for (char *c = words; *c != '\0'; c++)
		if (*c == '_')
			*c = ' ';
	return words;
}

static const char *source_text(const SourceRow *row, Arena *arena)
{
	const char *document = row->document.text != NULL ? row->document.text : row->id.text;
	const char *place = is_value(&row->place.given) ? row->place.text : "";
	const char *year = is_value(&row->year.given) && strstr(document, row->year.text) == NULL ? row->year.text : "";
	return arena_printf(arena, "%s%s%s%s%s (%s)", document, *place != '\0' ? ", " : "", place, *year != '\0' ? ", " : "", year,
		row->known_by.text != NULL ? row->known_by.text : "memory");
}

/* Several bases are joined by semicolons. */
const char *basis_text(const Reference *reference, const char *basis, Arena *arena)
{
	if (basis == NULL)
		return "not stated";
	if (reference == NULL)
		return basis;
	const char *text = NULL;
	for (const char *at = basis; *at != '\0';) {
		at += strspn(at, "; ");
		size_t length = strcspn(at, ";");
		const char *id = arena_text(arena, at, length);
		const SourceRow *row = source_row(reference, id);
		const char *one = row != NULL ? source_text(row, arena) : id;
		text = text == NULL ? one : arena_printf(arena, "%s; %s", text, one);
		at += length;
	}
	return text != NULL ? text : "not stated";
}

const char *said_text(const Given *given, Arena *arena)
{
	switch (given->said) {
	case SAID_NONE:
		return "none";
	case SAID_UNKNOWN:
		return "unknown";
	case SAID_NOTHING:
		return "not stated";
	case SAID_BY_OTHERS:
		return arena_printf(arena, "by others: %s", given->typed != NULL ? given->typed : "");
	case SAID_NOT_APPLICABLE:
		return arena_printf(arena, "not applicable: %s", given->typed != NULL ? given->typed : "");
	default:
		return given->typed != NULL ? given->typed : "not stated";
	}
}

const char *place_file(const Verdict *verdict, const Place *place)
{
	const Source *source = verdict_source(verdict, place->source);
	return source != NULL ? source->name : verdict->source->name;
}

uint32_t place_line(const Place *place)
{
	return place->line > 0 ? place->line : 1;
}

uint32_t place_column(const Place *place)
{
	return place->column > 0 ? place->column : 1;
}

/* Files of the edition, the registers and the reference are numbered together, after those of the submittal. */
static const Source *shared_source(const Source *const *source, uint32_t count, uint16_t id)
{
	for (uint32_t i = 0; i < count; i++)
		if (source[i]->id == id)
			return source[i];
	return NULL;
}

const Source *verdict_source(const Verdict *verdict, uint16_t id)
{
	if (id == SOURCE_SUBMITTAL)
		return verdict->source;
	if (id == SOURCE_REVIEWER)
		return verdict->review_source;
	const Registers *registers = verdict->cases != NULL ? verdict->cases->registers : NULL;
	if (id >= SOURCE_FIRST_REGISTER && id < SOURCE_FIRST_REFERENCE && registers != NULL)
		return shared_source(registers->source, registers->count, id);
	if (id == SOURCE_REPLIES)
		return verdict->replies_source;
	const Criteria *criteria = verdict->cases != NULL ? verdict->cases->criteria : NULL;
	return criteria != NULL ? shared_source(criteria->source, criteria->sources, id) : NULL;
}

/* A unit of the form beside that of SI, in which the same thing is written on a drawing. */
static const struct {
	Unit us, si;
} si_units[] = {
	{ UNIT_in, UNIT_mm }, { UNIT_ft, UNIT_m }, { UNIT_sq_ft, UNIT_sq_m }, { UNIT_psf, UNIT_kPa }, { UNIT_psi, UNIT_MPa },
	{ UNIT_ksi, UNIT_MPa }, { UNIT_lb, UNIT_N }, { UNIT_kip, UNIT_kN }, { UNIT_lb_per_in, UNIT_N_per_mm },
	{ UNIT_mph, UNIT_m_per_s }, { UNIT_F, UNIT_C },
};

const char *si_text(double value, const char *unit, Arena *arena)
{
	for (size_t i = 0; i < sizeof si_units / sizeof *si_units; i++) {
		if (strcmp(unit_row(si_units[i].us)->printed, unit) != 0)
			continue;
		double converted = unit_convert(value, si_units[i].us, si_units[i].si);
		const char *number = number_print(arena, converted, number_digits(&converted, 1));
		return arena_printf(arena, "%s %s", number, unit_row(si_units[i].si)->printed);
	}
	return NULL;
}

uint32_t items_in_the_way(const Verdict *verdict)
{
	uint32_t count = 0;
	for (int action = 0; action <= ACTION_NOT_REVIEWED; action++)
		count += verdict->by_action[action];
	return count;
}

void put_label(Out *out, LabelColumn column, const char *label, const char *text)
{
	int length = (int)strlen(label);
	put_spaces(out, column.indent);
	out_literal(out, label, (size_t)length);
	int gap = column.width - length;
	put_spaces(out, gap > 0 ? gap : 1);
	int at = column.indent + length + (gap > 0 ? gap : 1);
	put_wrapped(out, text, at, column.indent + column.width, PAGE_WIDTH);
	SAY(out, "\n");
}

/* A file's name may not look like a command to what reads the log, nor like an option. */
void put_place(Out *out, const char *file, const Place *place)
{
	if (strchr(":#-", *file) != NULL && strcmp(file, "-") != 0)
		SAY(out, "./");
	put(out, file);
	SAY(out, ":");
	put_count(out, place_line(place));
	SAY(out, ":");
	put_count(out, place_column(place));
	SAY(out, ":");
}

void put_cut(Out *out, const char *text, int room)
{
	size_t length = strlen(text);
	if (length <= 1000 && out_width(text, length) <= room) {
		put(out, text);
		return;
	}
	size_t fits = 0;
	for (int width = 0; fits < length;) {
		size_t next = fits + 1;
		while (next < length && ((unsigned char)text[next] & 0xC0) == 0x80)
			next++;
		width += out_width(text + fits, next - fits);
		if (width > room - 3)
			break;
		fits = next;
	}
	put_part(out, text, fits);
	SAY(out, "...");
}

const char *item_called(const Finding *item, Arena *arena)
{
	if (item == NULL)
		return "an open item";
	const char *number = item_number(item, arena);
	return number != NULL ? number : item->code;
}

const char *clearance_text(const PartLine *part, Arena *arena)
{
	switch (part->clearance) {
	case PART_CLEAR:
		return "nothing found against it";
	case PART_NOT_CLEARED:
		return arena_printf(arena, "not cleared (%s)", item_called(part->item, arena));
	default:
		return arena_printf(arena, "depends on %s", item_called(part->item, arena));
	}
}

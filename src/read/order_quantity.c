/* SPDX-License-Identifier: MIT
 * Quantity and unit of a line of a list of purchases. A mark that may stand for thousands or for a fraction is refused: one
 * reading is a thousand times the other.
 */
#include "order_read.h"

#include "number.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

enum { LONGEST_NUMBER = 40 };

/* ---- units ---- */

static const struct {
	OrderUnit unit;
	const char *package, *words; /* words with bars around each */
} units[] = {
	{ BY_PIECE, NULL, "|piece|pieces|pc|pcs|ea|each|pce|pces|no|nos|unit|units|" },
	{ BY_FOOT, NULL, "|ft|foot|feet|lf|lin ft|linear ft|linear feet|lft|" },
	{ BY_SQUARE_FOOT, NULL, "|sq ft|sf|sqft|square ft|square feet|ft2|" },
	{ BY_POUND, NULL, "|lb|lbs|pound|pounds|" },
	{ BY_PACKAGE, "box", "|box|boxes|bx|bxs|" },
	{ BY_PACKAGE, "bag", "|bag|bags|bg|" },
	{ BY_PACKAGE, "roll", "|roll|rolls|rl|rls|" },
	{ BY_PACKAGE, "tube", "|tube|tubes|cartridge|cartridges|" },
	{ BY_PACKAGE, "carton", "|carton|cartons|ctn|ctns|" },
	{ BY_PACKAGE, "case", "|case|cases|cs|" },
	{ BY_PACKAGE, "pail", "|pail|pails|" },
	{ BY_PACKAGE, "bundle", "|bundle|bundles|bdl|" },
	{ BY_PACKAGE, "pack", "|pack|packs|pk|pkg|package|packages|" },
};

static bool stands_in(const char *words, const char *text, size_t length)
{
	for (const char *at = words; *at == '|' && at[1] != '\0'; at += 1 + strcspn(at + 1, "|"))
		if (strcspn(at + 1, "|") == length && strncasecmp(at + 1, text, length) == 0)
			return true;
	return false;
}

/* "boxes", "box of 250", "box/250", "pcs." */
static bool unit_read(OrderLine *line, const char *text)
{
	size_t length = strlen(text), word = strcspn(text, "/");
	const char *of = strcasestr(text, " of ");
	if (of != NULL)
		word = (size_t)(of - text);
	const char *behind = text + word + (of != NULL ? 4 : word < length);
	while (word > 0 && (text[word - 1] == ' ' || text[word - 1] == '.'))
		word--;
	for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
		if (!stands_in(units[i].words, text, word))
			continue;
		line->unit = units[i].unit;
		line->package = units[i].package;
		line->unit_words = text;
		size_t digits = strspn(behind, "0123456789");
		if (*behind == '\0')
			return true;
		const char *rest = behind + digits + strspn(behind + digits, " ");
		bool pieces = *rest == '\0' || stands_in(units[0].words, rest, strlen(rest));
		return units[i].unit == BY_PACKAGE && pieces && number_read(behind, digits, &line->content) && line->content > 0;
	}
	return false;
}

/* ---- quantities ---- */

typedef enum { QUANTITY_READ, QUANTITY_DOUBTFUL, QUANTITY_NONE } QuantityState;

/* Digits in groups of three behind the first group: "1,250,000". */
static bool is_grouped(const char *digits, size_t length)
{
	size_t first = strcspn(digits, ",");
	if (first == 0 || first > 3 || first >= length || *digits == '0')
		return false;
	for (size_t i = first; i < length && digits[i] != '.'; i += 4)
		if (digits[i] != ',' || strspn(digits + i + 1, "0123456789") != 3)
			return false;
	return true;
}

/* Among semicolons a comma is most likely a decimal one; a point before three digits may be one of thousands anywhere. */
static QuantityState figure_read(const char *text, size_t length, char separator, double *value)
{
	char digits[LONGEST_NUMBER];
	if (length == 0 || length >= sizeof digits || strspn(text, "0123456789.,") < length || !isdigit((unsigned char)*text))
		return QUANTITY_NONE;
	memcpy(digits, text, length);
	digits[length] = '\0';
	const char *comma = strchr(digits, ','), *point = strchr(digits, '.');
	bool three = point != NULL && comma == NULL && strlen(point + 1) == 3 && *digits != '0' && point - digits <= 3;
	bool turned = (point != NULL && comma != NULL && point < comma) || (point != NULL && strchr(point + 1, '.') != NULL);
	if (three || turned || (comma != NULL && (separator != ',' || !is_grouped(digits, length))))
		return QUANTITY_DOUBTFUL;
	return number_read(digits, length, value) ? QUANTITY_READ : QUANTITY_NONE;
}

/* A return stands as -3, or as spreadsheets show it: (3). A word of a unit may follow. */
static QuantityState quantity_read(OrderLine *line, const char *text, char separator, const char **behind)
{
	bool bracket = *text == '(', negative = bracket || *text == '-';
	text += negative;
	text += strspn(text, " ");
	size_t length = strspn(text, "0123456789.,");
	QuantityState state = figure_read(text, length, separator, &line->quantity);
	text += length;
	if (bracket && *text++ != ')')
		return QUANTITY_NONE;
	if (negative)
		line->quantity = -line->quantity;
	*behind = text + strspn(text, " ");
	return state;
}

/* Reads the column of units, which may say again what stood behind the quantity. */
static bool units_read(OrderLine *line, const Cell *cell, Complaints *complaints)
{
	const char *stated = cell != NULL ? order_cell_text(cell, complaints->arena) : NULL;
	if (stated == NULL)
		return true;
	OrderLine before = *line;
	line->content = 0;
	if (!unit_read(line, stated)) {
		complain(complaints, MESSAGE_ORD_06, cell->place, (About){ .value = stated });
		return false;
	}
	bool same = before.unit == line->unit && before.package == line->package && number_same(before.content, line->content);
	if (before.unit == BY_NOTHING || same)
		return true;
	complain(complaints, MESSAGE_ORD_11, cell->place, (About){ .value = before.unit_words, .want = stated });
	return false;
}

bool is_order_unit(const char *text)
{
	OrderLine line = { .code = NULL };
	return unit_read(&line, text);
}

/* The unit in the head of the column, which a line may not contradict. */
static bool head_unit_read(OrderLine *line, const QuantityCells *cells)
{
	OrderLine head = { .code = NULL };
	if (cells->head_unit == NULL || !unit_read(&head, cells->head_unit))
		return true;
	if (line->unit != BY_NOTHING && (line->unit != head.unit || line->package != head.package)) {
		complain(cells->complaints, MESSAGE_ORD_11, cells->quantity->place,
			(About){ .value = line->unit_words, .want = cells->head_unit });
		return false;
	}
	if (line->unit != BY_NOTHING)
		return true;
	line->unit = head.unit;
	line->package = head.package;
	line->content = head.content;
	line->unit_words = head.unit_words;
	return true;
}

/* "1" and "250" in two cells: a thousand with its comma, written without quotation marks beside a cell left out. */
static bool is_split(const OrderLine *line, const QuantityCells *cells)
{
	const Cell *quantity = cells->quantity, *behind = cells->behind;
	if (cells->separator != ',' || behind == NULL || line->unit != BY_NOTHING || quantity->length > 3)
		return false;
	return behind->length == 3 && strspn(behind->text, "0123456789") >= 3;
}

bool order_quantity_read(OrderLine *line, const QuantityCells *cells)
{
	Complaints *complaints = cells->complaints;
	const Cell *cell = cells->quantity;
	const char *text = order_cell_text(cell, complaints->arena), *behind = "";
	line->quantity_place = cell->place;
	if (text == NULL) {
		complain(complaints, MESSAGE_ORD_05, cell->place, (About){ 0 });
		return false;
	}
	QuantityState state = quantity_read(line, text, cells->separator, &behind);
	if (state == QUANTITY_READ && *behind != '\0' && !unit_read(line, behind))
		state = QUANTITY_NONE;
	if (state == QUANTITY_READ && is_split(line, cells)) {
		state = QUANTITY_DOUBTFUL;
		text = arena_printf(complaints->arena, "%s,%.3s", text, cells->behind->text);
	}
	if (state == QUANTITY_READ)
		return head_unit_read(line, cells) && units_read(line, cells->unit, complaints);
	complain(complaints, state == QUANTITY_DOUBTFUL ? MESSAGE_ORD_04 : MESSAGE_ORD_03, cell->place, (About){ .value = text });
	return false;
}

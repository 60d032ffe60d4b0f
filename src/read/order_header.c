/* SPDX-License-Identifier: MIT
 * The header of a list of purchases: columns are found by the words people and spreadsheets use, whole heads only.
 *
 * A head that says code, number or SKU goes before one that says only part or item: where both stand, the second is often the
 * running number of the line, or the description.
 */
#include "order_read.h"

#include <ctype.h>
#include <string.h>

enum { LONGEST_HEAD = 40, WEAK = ORDER_COLUMNS };

static const struct {
	int column; /* WEAK: the part, if nothing says so better */
	const char *words; /* with bars around each */
} heads[] = {
	{ ORDER_CODE, "|code|sku|part no|part number|part #|part code|item no|item number|item #|item code|product code|product no|"
		"order code|catalog no|catalog number|material no|material number|article no|supplier code|vendor code|" },
	{ WEAK, "|part|item|product|material|article|parts|items|" },
	{ ORDER_WORDS, "|description|desc|words|item description|part description|product description|text|" },
	{ ORDER_QUANTITY, "|qty|quantity|order qty|order quantity|qty ordered|quantity ordered|ordered|amount ordered|" },
	{ ORDER_UNITS, "|unit|units|uom|u/m|um|unit of measure|unit of measurement|qty unit|quantity unit|" },
	{ ORDER_FROM, "|supplier|vendor|supplier name|vendor name|bought from|supplied by|" },
	{ ORDER_DATE, "|date|order date|date ordered|ordered on|po date|purchase date|date of order|" },
};

static const char *const column_words[ORDER_COLUMNS] = { "part", "description", "quantity", "unit", "supplier", "date" };

/* A head in small letters, one blank between words, without marks at its end. */
static void fold_head(const char *text, char folded[LONGEST_HEAD])
{
	size_t used = 0;
	for (; *text != '\0' && used < LONGEST_HEAD - 1; text++) {
		unsigned char c = (unsigned char)*text;
		bool blank = c == ' ' || c == '_' || c == '.' || c == '*' || c == ':' || c == '\t' || c == '\n' || c == '\r';
		if (!blank)
			folded[used++] = (char)tolower(c);
		else if (used > 0 && folded[used - 1] != ' ')
			folded[used++] = ' ';
	}
	while (used > 0 && folded[used - 1] == ' ')
		used--;
	folded[*text == '\0' ? used : 0] = '\0';
}

static bool stands_in(const char *words, const char *folded)
{
	size_t length = strlen(folded);
	for (const char *at = words; length > 0 && (at = strstr(at, folded)) != NULL; at++)
		if (at[-1] == '|' && at[length] == '|')
			return true;
	return false;
}

/* The column of a head; -1 for one that is not read. */
static int column_of(const Cell *cell)
{
	char folded[LONGEST_HEAD];
	fold_head(cell->text, folded);
	if (strchr(folded, '|') != NULL)
		return -1;
	for (size_t i = 0; i < sizeof heads / sizeof *heads; i++)
		if (stands_in(heads[i].words, folded))
			return heads[i].column;
	return -1;
}

/* A head that speaks of a quantity, as "qty shipped" or "qty (boxes)". */
static bool may_be_quantity(const Cell *cell)
{
	char folded[LONGEST_HEAD];
	fold_head(cell->text, folded);
	return strncmp(folded, "qty", 3) == 0 || strncmp(folded, "quantity", 8) == 0 || strstr(folded, " qty") != NULL ||
		strstr(folded, " quantity") != NULL;
}

/* "boxes" of "qty (boxes)" and "quantity in boxes"; NULL if the head says anything else. */
static const char *head_unit(const Cell *cell, Arena *arena)
{
	static const char *const names[] = { "order qty", "order quantity", "qty ordered", "quantity ordered", "qty", "quantity" };
	char folded[LONGEST_HEAD];
	fold_head(cell->text, folded);
	for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
		size_t length = strlen(names[i]);
		if (strncmp(folded, names[i], length) != 0)
			continue;
		const char *unit = folded + length + strspn(folded + length, " ([,/-");
		unit += strncmp(unit, "in ", 3) == 0 ? 3 : 0;
		const char *said = arena_text(arena, unit, strcspn(unit, ")]"));
		return is_order_unit(said) ? said : NULL;
	}
	return NULL;
}

bool is_order_header(const Cell *cell, uint32_t cells)
{
	bool part = false, quantity = false;
	for (uint32_t i = 0; i < cells; i++) {
		int column = column_of(&cell[i]);
		part |= column == ORDER_CODE || column == WEAK || column == ORDER_WORDS;
		quantity |= column == ORDER_QUANTITY || (column < 0 && may_be_quantity(&cell[i]));
	}
	return part && quantity;
}

static bool bind_column(OrderHeader *header, int column, const Cell *cell, uint32_t i, Complaints *complaints)
{
	if (header->at[column] < 0) {
		header->at[column] = (int)i;
		return true;
	}
	complain(complaints, MESSAGE_ORD_02, cell[i].place, (About){ .key = column_words[column], .value = cell[i].text,
		.want = cell[header->at[column]].text });
	return false;
}

/* A head that says part or item is the code where nothing says so better, else the description if there is none. */
static bool bind_weak(OrderHeader *header, const Cell *cell, uint32_t cells, Complaints *complaints)
{
	int weak = -1;
	for (uint32_t i = 0; i < cells; i++) {
		if (column_of(&cell[i]) != WEAK)
			continue;
		if (weak >= 0 && header->at[ORDER_CODE] < 0) {
			complain(complaints, MESSAGE_ORD_02, cell[i].place, (About){ .key = column_words[ORDER_CODE],
				.value = cell[i].text, .want = cell[weak].text });
			return false;
		}
		weak = (int)i;
	}
	if (header->at[ORDER_CODE] < 0) {
		header->at[ORDER_CODE] = weak;
		header->may_be_number = header->at[ORDER_WORDS] >= 0;
	} else if (header->at[ORDER_WORDS] < 0)
		header->at[ORDER_WORDS] = weak;
	return true;
}

/* Where no head says just quantity, one that names its unit beside it may stand for it. */
static bool bind_quantity(OrderHeader *header, const Cell *cell, uint32_t i, Complaints *complaints)
{
	if (!bind_column(header, ORDER_QUANTITY, cell, i, complaints))
		return false;
	header->unit = head_unit(&cell[i], complaints->arena);
	if (header->unit == NULL)
		complain(complaints, MESSAGE_ORD_14, cell[i].place, (About){ .value = cell[i].text });
	return header->unit != NULL;
}

static const char *const *heads_of(const Cell *cell, uint32_t cells, Arena *arena)
{
	const char **head = TAKE(arena, const char *, cells);
	for (uint32_t i = 0; i < cells; i++)
		head[i] = order_cell_text(&cell[i], arena);
	return head;
}

bool order_header_bind(OrderHeader *header, const Cell *cell, uint32_t cells, Complaints *complaints)
{
	bool bound = true;
	*header = (OrderHeader){ .cells = cells, .head = heads_of(cell, cells, complaints->arena) };
	for (int i = 0; i < ORDER_COLUMNS; i++)
		header->at[i] = -1;
	for (uint32_t i = 0; i < cells; i++) {
		int column = column_of(&cell[i]);
		if (column >= 0 && column != WEAK)
			bound &= bind_column(header, column, cell, i, complaints);
	}
	for (uint32_t i = 0; i < cells; i++)
		if (column_of(&cell[i]) < 0 && may_be_quantity(&cell[i]))
			bound &= bind_quantity(header, cell, i, complaints);
	return bind_weak(header, cell, cells, complaints) && bound;
}

bool is_order_header_again(const OrderHeader *header, const Cell *cell, uint32_t cells, Arena *arena)
{
	bool same = true;
	for (uint32_t i = 0; same && i < header->cells; i++) {
		const char *text = i < cells ? order_cell_text(&cell[i], arena) : NULL, *head = header->head[i];
		same = text == NULL || head == NULL ? text == head : strcmp(text, head) == 0;
	}
	return same;
}

const char *order_left_out(const OrderHeader *header, const Cell *cell, Arena *arena)
{
	const char *listed = NULL;
	for (uint32_t i = 0; i < header->cells; i++) {
		bool is_read = false;
		for (int column = 0; column < ORDER_COLUMNS; column++)
			is_read |= header->at[column] == (int)i;
		const char *text = is_read ? NULL : order_cell_text(&cell[i], arena);
		if (text != NULL)
			listed = listed == NULL ? text : arena_printf(arena, "%s, %s", listed, text);
	}
	return listed;
}

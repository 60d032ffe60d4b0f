/* SPDX-License-Identifier: MIT
 * CSV files to cells with places, by libcsv in its strict mode.
 *
 * libcsv knows no positions, so it gets one byte a call wherever a cell or row may end and a run of plain bytes else; line,
 * column and cell start are kept beside it. Its own trimming is switched off by a space function that finds none: blanks belong
 * to the cell. After a fault the row is lost and reading goes on with the next line, so that one run shows them all.
 */
#include "csv.h"

#include "fail.h"

#include <csv.h>
#include <string.h>
#include <utf8proc.h>

enum { CELL_LIMIT = 64 * 1024, FAULT_LIMIT = 100, LONGEST_SHOWN = 200 };

typedef struct {
	const CsvFile *file;
	struct csv_parser parser;
	Cell *cell;
	uint32_t cells, room, rows, faults;
	size_t offset, cell_offset; /* of the byte being read, of the first byte of its cell */
	uint32_t line, column;      /* of the byte being read */
	Place start;                /* of its cell; length grows up to the first line end */
	bool cell_broken;           /* the cell goes on after a line end */
	bool cell_ended, stopped, lost;
	bool blank_lines;           /* may stand; else each is a fault */
	char ends[5], marks[4]; /* what may end a cell or turn its sense; what ends a plain one; the separator first */
} Csv;

static int no_space(unsigned char byte)
{
	(void)byte;
	return 0;
}

static void start_parser(Csv *csv)
{
	if (csv_init(&csv->parser, CSV_STRICT | CSV_STRICT_FINI | CSV_APPEND_NULL) != 0)
		fail("out of memory", csv->file->source->name);
	csv_set_space_func(&csv->parser, no_space);
	csv_set_delim(&csv->parser, (unsigned char)csv->ends[0]);
}

static void start_cell(Csv *csv, size_t offset)
{
	csv->cell_offset = offset;
	csv->start = (Place){ .line = csv->line, .column = csv->column, .source = csv->file->source->id };
	csv->cell_broken = false;
	csv->cell_ended = false;
}

static void end_cell(void *text, size_t length, void *data)
{
	Csv *csv = data;
	Arena *arena = csv->file->arena;
	csv->cell = arena_more(arena, csv->cell, csv->cells, &csv->room, sizeof *csv->cell);
	csv->cell[csv->cells++] = (Cell){
		.text = length > 0 ? arena_text(arena, text, length) : "",
		.length = (uint32_t)length,
		.place = csv->start,
	};
	csv->cell_ended = true;
}

static void end_row(int terminator, void *data)
{
	Csv *csv = data;
	(void)terminator;
	csv->rows++;
	if (!csv->stopped && !csv->file->row(csv->file->user, csv->cell, csv->cells))
		csv->stopped = true;
	csv->cells = 0;
}

/* The plain cell that a stray mark stands in, as it has to be written: in quotation marks, those within doubled. */
static const char *written_right(const Csv *csv, const char **as_written)
{
	const char *bytes = csv->file->source->bytes + csv->cell_offset;
	size_t length = strcspn(bytes, csv->marks);
	size_t used = 0;
	if (length > LONGEST_SHOWN)
		length = LONGEST_SHOWN;
	*as_written = arena_text(csv->file->arena, bytes, length);
	char *right = TAKE(csv->file->arena, char, 2 * length + 3);
	right[used++] = '"';
	for (size_t i = 0; i < length; i++) {
		if (bytes[i] == '"')
			right[used++] = '"';
		right[used++] = bytes[i];
	}
	right[used] = '"';
	return right;
}

/* What libcsv refused: a quotation mark in a plain cell (an inch mark behind a figure, a mark behind blanks, any other), or
 * text behind the closing mark of a quoted one. */
static void complain_of_quote(Csv *csv)
{
	const char *bytes = csv->file->source->bytes;
	const char *start = bytes + csv->cell_offset, *here = bytes + csv->offset;
	Place place = { .line = csv->line, .column = csv->column, .length = 1, .source = csv->start.source };
	const char *value, *want = written_right(csv, &value);
	About about = { .value = value, .want = want };
	if (*start == '"')
		complain(csv->file->complaints, MESSAGE_TAB_03, place, (About){ .value = value });
	else if (here > start && here[-1] >= '0' && here[-1] <= '9')
		complain(csv->file->complaints, MESSAGE_TAB_02, place, about);
	else if (strspn(start, " ") >= (size_t)(here - start))
		complain(csv->file->complaints, MESSAGE_TAB_04, place, (About){ .value = value });
	else
		complain(csv->file->complaints, MESSAGE_TAB_01, place, about);
}

static bool is_line_end(char byte)
{
	return byte == '\n' || byte == '\r';
}

/* Steps over one byte. A carriage return before a line feed is half a line end. */
static void step(Csv *csv)
{
	const char *here = csv->file->source->bytes + csv->offset++;
	if (*here == '\n' || (*here == '\r' && here[1] != '\n')) {
		csv->line++;
		csv->column = 1;
		csv->cell_broken = true;
	} else if (((unsigned char)*here & 0xc0) != 0x80 && *here != '\r') {
		csv->column++;
		csv->start.length += !csv->cell_broken;
	}
}

/* Leaves the line at fault behind. Without its header a table says nothing, and a file with a fault in every line is none. */
static void next_line(Csv *csv)
{
	const Source *source = csv->file->source;
	uint32_t line = csv->line;
	while (csv->offset < source->length && csv->line == line)
		step(csv);
	csv_free(&csv->parser);
	start_parser(csv);
	csv->cells = 0;
	csv->lost = true;
	csv->stopped = csv->rows == 0 || ++csv->faults >= FAULT_LIMIT;
	start_cell(csv, csv->offset);
}

static void check_parser(Csv *csv)
{
	int error = csv_error(&csv->parser);
	if (error == CSV_ENOMEM || error == CSV_ETOOBIG)
		fail("out of memory", csv->file->source->name);
}

/* An empty line: a line end where a row would begin. */
static bool is_blank_line(const Csv *csv)
{
	const char *here = csv->file->source->bytes + csv->offset;
	return csv->cells == 0 && csv->cell_offset == csv->offset && is_line_end(*here) &&
	       !(*here == '\n' && csv->offset > 0 && here[-1] == '\r');
}

/* How many bytes may go in one call: those that end nothing, or the one that may. */
static size_t run_length(const Csv *csv)
{
	size_t run = strcspn(csv->file->source->bytes + csv->offset, csv->ends);
	return run > 0 ? run : 1;
}

/* Whether reading may go on: no cell without end, no file without sense. */
static bool check_limits(Csv *csv, size_t run)
{
	if (is_blank_line(csv) && !csv->blank_lines) {
		complain(csv->file->complaints, MESSAGE_TAB_06, csv->start, (About){ 0 });
		csv->stopped = ++csv->faults >= FAULT_LIMIT;
	}
	bool may_end = strchr(csv->marks, csv->file->source->bytes[csv->offset]) != NULL;
	if (csv->offset - csv->cell_offset + (may_end ? 0 : run) > CELL_LIMIT) {
		complain(csv->file->complaints, MESSAGE_TAB_09, csv->start, (About){ .want = "64 KiB" });
		csv->stopped = true;
	}
	csv->lost |= csv->stopped;
	return !csv->stopped;
}

static void read_bytes(Csv *csv)
{
	const Source *source = csv->file->source;
	while (csv->offset < source->length && !csv->stopped) {
		const char *here = source->bytes + csv->offset;
		size_t run = run_length(csv);
		if (!check_limits(csv, run))
			return;
		bool between = csv->cell_offset == csv->offset && is_line_end(*here) && csv->cells == 0;
		size_t read = csv_parse(&csv->parser, here, run, end_cell, end_row, csv);
		for (size_t i = 0; i < read; i++)
			step(csv);
		if (read != run) {
			check_parser(csv);
			complain_of_quote(csv);
			next_line(csv);
		} else if (csv->cell_ended || between)
			start_cell(csv, csv->offset);
	}
}

/* A row that the file's end cuts off inside a quoted cell. */
static void finish(Csv *csv)
{
	if (!csv->stopped && csv_fini(&csv->parser, end_cell, end_row, csv) != 0) {
		check_parser(csv);
		complain(csv->file->complaints, MESSAGE_TAB_05, csv->start, (About){ 0 });
		csv->lost = true;
	}
	csv_free(&csv->parser);
}

/* Bytes that are no UTF-8 end the file; of control characters the first is shown. */
static bool check_bytes(const CsvFile *file)
{
	const Source *source = file->source;
	bool shown = false;
	for (size_t i = 0; i < source->length;) {
		utf8proc_int32_t point = (unsigned char)source->bytes[i];
		utf8proc_ssize_t size = 1;
		if (point >= 0x20 && point < 0x7f) {
			i++;
			continue;
		}
		if (point >= 0x80)
			size = utf8proc_iterate((const utf8proc_uint8_t *)source->bytes + i,
						(utf8proc_ssize_t)(source->length - i), &point);
		if (size < 1) {
			complain(file->complaints, MESSAGE_TAB_11, source_place(source, i, 1), (About){ 0 });
			return false;
		}
		if (!shown && point < 0x80 && point != '\t' && point != '\n' && point != '\r') {
			complain(file->complaints, MESSAGE_TAB_12, source_place(source, i, 1), (About){ 0 });
			shown = true;
		}
		i += (size_t)size;
	}
	return true;
}

static bool read_all(const CsvFile *file, char separator, bool blank_lines)
{
	Csv csv = { .file = file, .line = 1, .column = 1, .blank_lines = blank_lines, .ends = { separator, '"', '\r', '\n' },
		.marks = { separator, '\r', '\n' } };
	if (!check_bytes(file))
		return false;
	start_parser(&csv);
	start_cell(&csv, 0);
	read_bytes(&csv);
	finish(&csv);
	return !csv.lost;
}

bool csv_read(const CsvFile *file)
{
	return read_all(file, ',', false);
}

bool csv_read_list(const CsvFile *file, char separator)
{
	return read_all(file, separator, true);
}

Place csv_place_within(const Source *source, Place cell, size_t index, size_t length)
{
	size_t offset = source_offset(source, cell.line, cell.column), passed = 0;
	bool quoted = offset < source->length && source->bytes[offset] == '"';
	uint32_t points = 0;
	offset += quoted;
	while (offset < source->length && source->bytes[offset] == ' ')
		offset++;
	for (; passed < index && offset < source->length; passed++)
		offset += quoted && source->bytes[offset] == '"' ? 2 : 1;
	for (size_t i = offset; i < source->length && passed < index + length; passed++) {
		points += ((unsigned char)source->bytes[i] & 0xc0) != 0x80;
		i += quoted && source->bytes[i] == '"' ? 2 : 1;
	}
	return source_place(source, offset, points);
}

/* SPDX-License-Identifier: MIT
 * Text of a file reaches no output raw, in any format: terminal controls, bidirectional marks, line breaks, commands of build
 * servers at the start of a line or anywhere.
 */
#include "sample_verdict.h"

#include "report.h"

static const char *const nasty[] = {
	"\x1b[31mred\x1b[0m",
	"bell\x07 back\b delete\x7f",
	"one\ntwo\r\nthree",
	"\302\23331m",
	"right\xe2\x80\xaeto left\xe2\x80\xac",
	"\xe2\x81\xa6isolate\xe2\x81\xa9",
	"separator\xe2\x80\xa8paragraph\xe2\x80\xa9",
	"zero\xe2\x80\x8bwidth\xef\xbb\xbf",
	"::error file=a::b",
	"  ::error::b",
	"##[error]b",
	"##vso[task.setvariable]b",
	"bytes\xff\xc0\xafno text",
};

static const char *written(Arena *arena, const ReportFormat *format, const char *text, size_t *length)
{
	Out *out = out_make(arena, format->escape);
	format->write(out, sample_verdict(arena, text), arena);
	return out_text(out, length);
}

static bool starts_line_with(const char *text, const char *command)
{
	for (const char *at = strstr(text, command); at != NULL; at = strstr(at + 1, command)) {
		const char *before = at;
		while (before > text && before[-1] == ' ')
			before--;
		if (before == text || before[-1] == '\n')
			return true;
	}
	return false;
}

static void check_output(const char *format, const char *text, size_t length)
{
	static const char *const raw[] = { "\xc2\x9b", "\xe2\x80\xae", "\xe2\x80\xac", "\xe2\x81\xa6", "\xe2\x81\xa9", "\xe2\x80\xa8",
		"\xe2\x80\xa9", "\xe2\x80\x8b", "\xef\xbb\xbf", "\xff", "\xc0", "##[error]", "##vso[" };
	assert_int_equal(strlen(text), length);
	bool is_csv = strcmp(format, "csv") == 0 || strcmp(format, "replies") == 0; /* whose lines end with both */
	for (size_t i = 0; i < length; i++)
		if (is_csv && text[i] == '\r' && text[i + 1] == '\n')
			continue;
		else if (((unsigned char)text[i] < 0x20 && text[i] != '\n' && text[i] != '\t') || text[i] == 0x7f)
			fail_msg("%s lets the byte %02x through", format, (unsigned char)text[i]);
	for (size_t i = 0; i < sizeof raw / sizeof *raw; i++)
		if (strcmp(format, "text") == 0 || strcmp(format, "lines") == 0 || raw[i][0] != '#')
			if (strstr(text, raw[i]) != NULL)
				fail_msg("%s lets text number %zu through", format, i);
	if (starts_line_with(text, "::error"))
		fail_msg("%s has a command at the start of a line", format);
	/* Questions hold conflicts alone, requests what waits for a written word, the schedule parts, and the inspector's sheet what is
	 * to be seen. */
	bool has_items = strcmp(format, "questions") != 0 && strncmp(format, "sheet", 5) != 0 && strcmp(format, "requests") != 0 &&
		strcmp(format, "schedule") != 0;
	if (length == 0 || (has_items && strstr(text, "CLP-01") == NULL))
		fail_msg("%s says nothing", format);
}

static void nothing_raw_in_any_format(void **state)
{
	(void)state;
	const ReportFormat *format;
	size_t formats = 0;
	for (; (format = report_format_at(formats)) != NULL; formats++)
		for (size_t i = 0; i < sizeof nasty / sizeof *nasty; i++) {
			Arena *arena = arena_make();
			size_t length;
			const char *text = written(arena, format, nasty[i], &length);
			check_output(format->name, text, length);
			arena_free(arena);
		}
	assert_true(formats >= 4);
}

/* One file may not make lines of its own: as many lines as with a harmless text. */
static void a_line_break_makes_no_line(void **state)
{
	(void)state;
	static const char *const formats[] = { "lines", "ndjson" };
	for (size_t i = 0; i < 2; i++) {
		Arena *arena = arena_make();
		size_t length;
		const char *text = written(arena, report_format(formats[i]), "one\ntwo\r\nthree", &length);
		assert_ptr_equal(strchr(text, '\n'), text + length - 1);
		arena_free(arena);
	}
}

static void long_texts_stay_in_the_page(void **state)
{
	(void)state;
	Arena *arena = arena_make();
	char words[2001];
	for (size_t i = 0; i < 2000; i++)
		words[i] = i % 8 == 7 ? ' ' : 'w';
	words[2000] = '\0';
	size_t length;
	const char *text = written(arena, report_format("text"), words, &length);
	for (const char *at = text; *at != '\0';) {
		size_t line = strcspn(at, "\n");
		assert_true(line <= 100);
		at += line + 1;
	}
	arena_free(arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(nothing_raw_in_any_format),
		cmocka_unit_test(a_line_break_makes_no_line),
		cmocka_unit_test(long_texts_stay_in_the_page),
	};
	return cmocka_run_group_tests_name("report_escapes", tests, NULL, NULL) != 0;
}

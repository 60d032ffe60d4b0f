/* SPDX-License-Identifier: MIT
 * What the three forms of the sheet of calculations share: numbers, values, where they come from, formulas with numbers put in.
 */
#ifndef REPORT_CALCS_H
#define REPORT_CALCS_H

#include "parts.h"
#include "report.h"

void write_calcs_text(Out *out, const Page *page, Arena *arena);
void write_calcs_json(Out *out, const Page *page, Arena *arena);
void write_calcs_html(Out *out, const Page *page, Arena *arena);

/* Of the text: every record with its facts. */
void put_calcs_groups(Out *out, const Sheet *sheet, Arena *arena);

/* Six significant digits. */
const char *figure(double value, Arena *arena);

/* "58.4 psf", with the SI value behind it where it was asked for. */
const char *quantity(const Sheet *sheet, double value, Unit unit, Arena *arena);

/* "strength level", "allowable level (ASD)": of pressures; NULL of all else. */
const char *level_of(FactId id);

/* The result of a fact that is known, "yes", "58.4 psf at strength level". */
const char *result_of(const Sheet *sheet, const SheetLine *line, Arena *arena);

/* "known", "waiting", "refused", "not applicable". */
const char *state_of(const Fact *fact);

/* A template with its names in words, and with its numbers put in. */
const char *formula_in_words(const char *formula, Arena *arena);
const char *formula_with_numbers(const SheetLine *line, Arena *arena);

/* A use: its name in words, its value, where it comes from. */
const char *use_name(const SheetUse *use, Arena *arena);
const char *use_value(const Sheet *sheet, const SheetUse *use, Arena *arena);
/* A use of line `line`; the submittal's own places come without its name. */
const char *use_origin(const Sheet *sheet, const SheetUse *use, const Case *of, Arena *arena);

/* "aisi-s100 (memory); common practice, no published source": short, for the list of sources at the end to explain. */
const char *basis_short(const Sheet *sheet, const char *basis, Arena *arena);

/* Whether each row of the table of sources is named on the sheet. */
const bool *sources_named(const Sheet *sheet, Arena *arena);

/* "file:line:column" of a place in whatever file of the run; NULL if it stands in none. */
const char *place_text(const Sheet *sheet, const Place *place, Arena *arena);
const Source *source_of(const Sheet *sheet, uint16_t id);

/* "of 12 constants used, 3 read, ..." */
const char *constants_counted(const Sheet *sheet, Arena *arena);

/* "rises to 120.1 mph and the ratio holds; at 120.2 mph it is 1.001" */
const char *used_up_text(const Sheet *sheet, const UsedUp *by, Arena *arena);
const char *margin_title(const Margin *margin, Arena *arena);
const char *margins_heading(const Sheet *sheet, Arena *arena);

/* "a self-check, not an approval", or the review of a round; with the day papers are judged at. */
const char *sheet_made_for(const Sheet *sheet, Arena *arena);

/* Titles of the parts, and the kind and name of a record. */
const char *record_title(const Case *at, Arena *arena);

/* The next caution that concerns a command, from row `i` on; NULL after the last. */
const Caution *caution_from(const Reference *reference, const char *command, uint32_t *i);

#endif

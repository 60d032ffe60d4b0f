/* SPDX-License-Identifier: MIT
 * What the facts of parts share.
 */
#ifndef PARTS_H
#define PARTS_H

#include "fetch.h"

/* Where a part is used, in a word of its kind: of a sealant its place, of a clip its use; NULL if its kind knows no places. The
 * fact waits if the word is not there. */
const char *fetch_place(Case *fact);

/* The kind of part of a word of `part_words`; RECORD_KINDS if it is none. */
RecordKind part_kind(const char *word, size_t length);

/* The level of certificate that the term asked for needs; NULL if it needs none, or the fact is not ready. */
const char *fetch_term_certificate(Case *fact);

/* Whether a text names the panel maker: "panel maker", or the name of the edition's maker. */
bool is_panel_maker(const Criteria *criteria, const char *text);

/* The register's row of the installer's certificate; of one the register does not know another item speaks. */
const Installer *fetch_installer(Case *fact);

/* The letter of the approval that counts for a part outside the catalogue, and its last day; NULL if the fact is not ready, or
 * does not apply as there is none. */
const char *approval_of_part(Case *part, int32_t *expires);

#endif

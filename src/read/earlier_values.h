/* SPDX-License-Identifier: MIT
 * Reading a report: one value after another, each refused at its place if it is not what a report has there.
 */
#ifndef READ_EARLIER_VALUES_H
#define READ_EARLIER_VALUES_H

#include "earlier.h"

typedef struct {
	Arena *arena;
	Complaints *faults;
} Reader;

/* What stands there, for a message. */
const char *report_shown(const Node *node);
void report_refuse(const Reader *reader, const char *key, const Node *node, const char *want);

/* What stands under a key, NULL for null and nothing; `_for`, `_due`: the key must be there; `_needed`: and not be null. */
Node *report_look(const Node *map, const char *key);
Node *report_look_for(const Reader *reader, const Node *map, const char *key);
const char *report_text(const Reader *reader, const Node *node, const char *key);
const char *report_text_at(const Reader *reader, const Node *map, const char *key);
const char *report_text_due(const Reader *reader, const Node *map, const char *key);
const char *report_text_needed(const Reader *reader, const Node *map, const char *key);
uint32_t report_count(const Reader *reader, const Node *node, const char *key, uint32_t most);
Node *report_list(const Reader *reader, const Node *map, const char *key);
bool report_is_map(const Reader *reader, const Node *node, const char *key);
/* The number of a word of a closed set that ends with NULL. */
int report_word(const Reader *reader, const Node *map, const char *key, const char *const *words);

#endif

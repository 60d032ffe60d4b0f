/* SPDX-License-Identifier: MIT
 * Criteria: one edition of one maker's criteria, read from a folder or built in, checked whole, const after.
 *
 * TABLE(member, Record, file, due): one CSV file, one row of the Record a line. ITEMS: a catalogue file of parts.
 */
#ifndef CRITERIA_H
#define CRITERIA_H

#include "form.h"
#include "rule.h"

#define EDITION_TABLES(TABLE) \
	TABLE(kinds, KindRow, "kinds.csv") \
	TABLE(lives, Life, "lives.csv") \
	TABLE(listings, Listing, "listings.csv") \
	TABLE(listing_tests, ListingTest, "listing_tests.csv") \
	TABLE(listing_terms, ListingTerm, "listing_terms.csv") \
	TABLE(substitutions, Substitution, "substitutions.csv") \
	TABLE(scales, ScaleWord, "scales.csv") \
	TABLE(required, RequiredRole, "required.csv") \
	TABLE(terms, Term, "terms.csv") \
	TABLE(rule_rows, RuleRow, "rules.csv") \
	TABLE(documents, PaperDue, "documents.csv") \
	TABLE(details, ApprovedDetail, "details.csv") \
	TABLE(lists, NamedWord, "lists.csv") \
	TABLE(pullouts, PullOut, "pullouts.csv") \
	TABLE(also_known, AlsoKnown, "also_known_as.csv") \
	TABLE(site_checks, SiteCheck, "site_checks.csv") \
	TABLE(not_judged, NotJudged, "not_judged.csv")

#define CATALOGUE_TABLES(TABLE) \
	TABLE(panels, Panel, "panels.csv") \
	TABLE(clips, Clip, "clips.csv") \
	TABLE(fasteners, Fastener, "fasteners.csv") \
	TABLE(supports, Support, "supports.csv") \
	TABLE(layers, Layer, "layers.csv") \
	TABLE(underlayments, Underlayment, "underlayments.csv") \
	TABLE(sealants, Sealant, "sealants.csv") \
	TABLE(rivets, Rivet, "rivets.csv") \
	TABLE(closures, Closure, "closures.csv") \
	TABLE(curbs, Penetration, "curbs.csv") \
	TABLE(boots, Penetration, "boots.csv") \
	TABLE(clamps, Accessory, "clamps.csv")

/* The rows of one CSV file. */
#define TABLE_MEMBER(member, R, file) struct { uint32_t count; const R *row; const Source *source; } member;
typedef struct {
	uint32_t count;
	const void *row;
	const Source *source;
} Table;

/* `needs` of a substitution row, bound. */
typedef struct {
	const Substitution *row;
	const Field *field; /* the attribute in the record of its kind */
	const Test *need;
	uint32_t needs;
	const char *const *need_words;
} BoundSubstitution;

/* `when` and `filled_by` of a required role, bound. */
typedef struct {
	const RequiredRole *row;
	const Test *when, *filled_by;
	uint32_t whens, fills;
} BoundRole;

typedef struct {
	const PaperDue *row;
	const Test *when;
	uint32_t whens;
} BoundPaper;

/* `when` of a check on site, bound for each roof area. */
typedef struct {
	const SiteCheck *row;
	const Test *when;
	uint32_t whens;
} BoundSiteCheck;

/* A term of a listing: its attribute found in RoofArea's record, its value read in the notation of that field. */
typedef struct {
	const ListingTerm *row;
	RecordKind kind; /* kind of part */
	const Field *field;
	const double *number; /* of a number or size, in the field's unit: one, two for between, several for one of */
	const char *const *word; /* of a word or text, a word in US spelling */
	uint32_t count; /* of `number` or `word`; 0 for optional and any */
} BoundTerm;

typedef struct Hash Hash;

typedef struct Criteria {
	const char *folder; /* as given, or the name of a built-in edition */
	Edition edition;
	EDITION_TABLES(TABLE_MEMBER)
	CATALOGUE_TABLES(TABLE_MEMBER)
	const Rule *rule;
	uint32_t rules;
	const BoundSubstitution *substitution;
	const BoundRole *role;
	const BoundPaper *paper;
	const BoundSiteCheck *site_check;
	const BoundTerm *term;
	uint32_t substitutions_bound, roles, papers, site_checks_bound, terms_bound; /* counts of the five above */
	const Hash *items; /* "clip\0clip-a-float" to its row: item_find */
	const Hash *listing_by_name;
	const Hash *lives_by_item; /* the LifeSpan of lives.csv in which an item's rows stand; NULL: not indexed */
	const Source *const *source; /* every file of the edition; Place.source - SOURCE_FIRST_SHARED counts here */
	uint32_t sources;
} Criteria;

/* The catalogue row of an item of one kind of part, or NULL. */
const void *item_find(const Criteria *criteria, RecordKind kind, const char *item);

/* The rows of lives.csv among which all of an item stand: from the first to the last, others may stand between. */
typedef struct {
	uint32_t begin, end;
} LifeSpan;
LifeSpan life_span(const Criteria *criteria, const char *item);

/* The listing of a name, or NULL. */
const Listing *listing_find(const Criteria *criteria, const char *name);

/* The row of kinds.csv for a kind of part, or NULL. */
const KindRow *kind_find(const Criteria *criteria, RecordKind kind);

/* Whether `entry` stands in the list `list` of lists.csv; letters of either case. */
bool list_has(const Criteria *criteria, const char *list, const char *entry);

/* The rank of a word of an attribute ("panel.coating") on its scale and the scale's name; 0 if it stands on none. */
int scale_rank(const Criteria *criteria, const char *attribute, const char *word, const char **scale);

/* SHA-256 over the names and bytes of all files of the edition, 64 hex digits. */
const char *criteria_hash(const Criteria *criteria, Arena *arena);

#endif

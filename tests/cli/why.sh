#!/bin/sh
# SPDX-License-Identifier: MIT
# `why`: what a code asks, why, on what it rests, an example that breaks it and one that meets it.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

run 0 why CLP-01a
starts out "CLP-01a  REJECTED"
for label in Says Asks Why Authority Basis Remedy "Answer by" Waivable "Breaks it" "Meets it" CAUTIONS; do has out "$label"; done
has out "Main roof / clip-a-float, catalogue item: clip-b-float"
lacks out "roof_areas"
run 0 why LST-10
has out "LST-10a"
has out "LST-10b"
run 0 why clp-02
starts out "CLP-02"
run 0 why FRM-10 YML-14
starts out "FRM-10  NOT REVIEWED"
has out "YML-14  NOT REVIEWED"
run 2 why LST-100
has err "did you mean LST-10"
empty out
run 2 why CLP-02 NO-99
has out "CLP-02  "
has err "NO-99"
run 2 why
has err "why needs a CODE"

# Two cases of one rule stand apart; a change of the edition says that it is one.
run 0 why FST-01
[ "$(grep -c '^  or$' "$scratch/out")" -eq 1 ] || fault "two cases are not told apart"
run 0 why ENG-11
has out "  Breaks it   criteria.yaml, least uplift class: 91"

# Names stand as titles; a change between braces is told by what differs; a record that is brought in is a further one.
run 0 why UND-03
has out "where topic is underlayment and value asked for is given: item"
has out "  Breaks it   specification / a further requirement: paragraph 2.7.D, topic underlayment, value"
has out "  Meets it    the same with value asked for underlay-high-temp"
run 0 why CLP-04
has out "approvals.csv, PA-07, item: clip-special"
has out "  Breaks it   Main roof / clip-a-float, how it lets the panel move: none"
has out "  Not asked   Main roof / clip-a-float, how it lets the panel move: none"
run 0 why YML-16
has out "the comma ended [the key], and [what was found] became a key of its own"
run 0 why own
starts out "OWN  as the reviewer says"

# Every code of a report is known to it.
run 1 review "$examples/messy-reroof.yaml" "$examples/yaml-mistakes.yaml" --format lines
sed -n 's/.*\[\([A-Z]*-[0-9]*[a-z]*\)\].*/\1/p' "$scratch/out" | sort -u >"$scratch/codes"
[ "$(wc -l <"$scratch/codes")" -gt 15 ] || fault "few codes"
while read -r code; do run 0 why "$code"; done <"$scratch/codes"
finish

#!/bin/sh
# SPDX-License-Identifier: MIT
# `why`: what a code asks, why, on what it rests, an example that breaks it and one that meets it.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

run 0 why CLP-01a
starts out "CLP-01a  REJECTED"
for label in Says Asks Why Authority Basis Remedy "Answer by" Waivable "Breaks it" "Meets it" CAUTIONS; do has out "$label"; done
has out "roof_areas.0."
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
[ "$(grep -c '^    or$' "$scratch/out")" -eq 2 ] || fault "two cases are not told apart"
run 0 why ENG-11
has out "    in the maker's criteria: least_class: 91"
run 0 why own
starts out "OWN  as the reviewer says"

# Every code of a report is known to it.
run 1 review "$examples/messy-reroof.yaml" "$examples/yaml-mistakes.yaml" --format lines
sed -n 's/.*\[\([A-Z]*-[0-9]*[a-z]*\)\].*/\1/p' "$scratch/out" | sort -u >"$scratch/codes"
[ "$(wc -l <"$scratch/codes")" -gt 15 ] || fault "few codes"
while read -r code; do run 0 why "$code"; done <"$scratch/codes"
finish

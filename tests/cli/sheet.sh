#!/bin/sh
# SPDX-License-Identifier: MIT
# `review --sheet`: the inspector's sheet as text and as a page; checks stand where they apply and nowhere else.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

run 0 review "$examples/clean.yaml" --sheet
starts out "INSPECTOR'S SHEET"
for text in "Roof area: Main roof" "Before underlayment covers it" "Before panels cover it" "Before closures cover it" \
	"Before ridge caps cover it" "At the final inspection" "seen by ____" "Inspector ____" CAUTIONS; do has out "$text"; done
has out "  [ ] CLP-08  clip lines are snapped"
has out "zone 2 (perimeter): 18 in between clips; measured ____"
lacks out DCK-06
cp "$scratch/out" "$scratch/before"
run 0 review "$examples/clean.yaml" --format sheet
cmp -s "$scratch/out" "$scratch/before" || fault "--sheet and --format sheet differ"

# Moisture is tested where the deck is concrete; the seamer is noted where the seam is folded on the roof; what is laid is checked.
sed 's/      kind: steel deck/      kind: concrete/' "$examples/clean.yaml" >"$scratch/concrete.yaml"
run 1 review concrete.yaml --sheet
has out "  [ ] DCK-06  moisture of the concrete deck"
has out "stand open"
sed 's/      seam: double lock 180/      seam: snap/' "$examples/clean.yaml" >"$scratch/snap.yaml"
run 1 review snap.yaml --sheet
lacks out SEM-04
sed '/^    underlayments:/,/^    sealants:/{/^    sealants:/!d;}' "$examples/clean.yaml" |
	sed 's/^    sealants:/    underlayments: none\n    sealants:/' >"$scratch/bare.yaml"
run 1 review bare.yaml --sheet
for code in UND-07 UND-10 UND-14; do lacks out "$code"; done
has out "stated to be none: "
has out "underlayments"
lacks out "Before underlayment covers it"
has out DCK-08
sed 's/      kind: steel deck/      kind: unknown/' "$examples/clean.yaml" >"$scratch/unknown.yaml"
run 1 review unknown.yaml --sheet
has out "(where it applies: the papers"

# Notes to be followed stand among the checks, in the area they belong to; an area that is not warranted has none.
run 1 review "$examples/messy-reroof.yaml" --sheet
has out "Roof area: East shed"
has out "1.14"
sed 's/    warranted: yes/    warranted: no/' "$examples/clean.yaml" >"$scratch/out-of-it.yaml"
run 1 review out-of-it.yaml --sheet
lacks out CLP-08

# The page stands alone: no script, nothing fetched, boxes drawn, both paper sizes (no size is asked for).
run 0 review "$examples/clean.yaml" --sheet --format html
starts out "<!DOCTYPE html>"
has out '<span class="box"></span>'
has out "default-src"
for text in "<script" "<link" "<img" "http:" "https:" "size:A4" "size:letter"; do lacks out "$text"; done
cp "$scratch/out" "$scratch/before"
run 0 review "$examples/clean.yaml" --format sheet-html
cmp -s "$scratch/out" "$scratch/before" || fault "--sheet --format html and --format sheet-html differ"
run 2 review "$examples/clean.yaml" "$examples/coast.yaml" --format sheet-html
has err "holds one submittal"

# What a file says is escaped.
sed 's/name: Marrow Creek Depot/name: "<b>Depot"/' "$examples/clean.yaml" >"$scratch/sly.yaml"
run 1 review sly.yaml --sheet --format html
has out "&lt;b&gt;Depot"
lacks out "<b>Depot"
printf 'form: [\n' >"$scratch/cut.yaml"
run 2 review cut.yaml --sheet
has out "NOT JUDGED"
finish

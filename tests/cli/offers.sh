#!/bin/sh
# SPDX-License-Identifier: MIT
# `options`: statuses and forms; what it offers is put into the package and reviewed, by a script of its own.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

run 0 options "$examples/clean.yaml"
starts out "OPTIONS"
empty err
has out "tested-210"
has out "Other places"
has out "Longest term"
has out "CAUTIONS"
lacks out "clip-b-float"
run 0 options "$examples/bid.yaml"
has out "no engineer's letter is stated: the computed uplift alone"
has out "flat, topographic factor 1"
run 0 options "$examples/coast.yaml"
has out "No construction is offered"
has out "is held back by"
run 0 options "$examples/coast.yaml" --format csv
has out '"Main roof","no construction"'
sed 's/^      spacing: 60 in$//' "$examples/clean.yaml" >"$scratch/no-span.yaml"
run 0 options no-span.yaml
has out "state first of the support: spacing"
run 0 options "$examples/clean.yaml" --format csv --output a.csv --format json --output a.json
starts a.csv "area,kind,number or place,class"
jq -e '.complete and (.constructions | length > 0) and (.places | length > 0) and (.terms | length > 0)' "$scratch/a.json" >/dev/null || fault "json"
run 2 options
has err "options needs one FILE"
run 2 options "$examples/clean.yaml" --format html
has err "options has no format html (there are: text, csv, json)"
for example in clean bid; do
	python3 tests/cli/offers.py "$program" "$examples/$example.yaml" >"$scratch/said" || { cat "$scratch/said" >&2; fault "offers.py $example"; }
done
# Complete: all that the reviews let through of a small catalogue is offered, and nothing else. tests/long/options.sh tries more.
last="options of a small catalogue"
python3 tests/long/options.py "$program" --quick >"$scratch/said" || { cat "$scratch/said" >&2; fault "options.py"; }
finish

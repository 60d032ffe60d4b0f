#!/bin/sh
# SPDX-License-Identifier: MIT
# `takeoff`: statuses, forms, quantities that were counted by hand from the plan of the clean example, what cannot be counted.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# By hand: 200 ft of eave over 16 in panels is 150 on each of two planes; (60 + 1) ft of run at 1 in 12 is 61.2114 ft.
run 0 takeoff "$examples/clean.yaml"
starts out "TAKEOFF"
empty err
has out "  panel panel-a-16                                     300         300         306  pieces"
has out "18363.43"
has out "244.85 squares"
has out "no published quantities"
has out "CAUTIONS"
has out "rivet rivet-stainless, flashing: how far apart these stand is not stated"
run 0 takeoff "$examples/clean.yaml" --format csv --output a.csv --format json --output a.json
starts a.csv "submittal,area,kind,item,where,state"
starts a.json "{"
jq -e '[.takeoff[] | select(.kind == "closure" and .where == "ridge")] | .[0].by_plan == 300' "$scratch/a.json" >/dev/null || fault "300 closures"
jq -e '[.to_buy[] | select(.item == "closure-metal-a")] | .[0] | .needed == 618 and .packages == 13' "$scratch/a.json" >/dev/null || fault "618 closures in boxes of 50"
jq -e '[.takeoff[] | select(.kind == "clip" and (.where | startswith("zone")))] | length == 4' "$scratch/a.json" >/dev/null || fault "four zones"
run 0 takeoff "$examples/bid.yaml"
has out "squares"
has out "no running clip with its spacing is stated"
# The schedule governs over the plan.
sed 's/^    build_up: none/    build_up: none\n    panel_schedule: [{count: 299, length: 61.25 ft}, {count: 1, length: 30 ft}]/' "$examples/clean.yaml" >"$scratch/cut.yaml"
run 0 takeoff cut.yaml
has out "all lengths of the panel schedule"
has out "cut to 61.25 ft"
has out "18343.75"
# Both faces of the closures of 400 ft of eave, and of both sides of 200 ft of ridge; in each eave 149 seams with a fixed clip.
jq -e '[.takeoff[] | select(.kind == "sealant" and .where == "closure")] | .[0].by_plan == 1600' "$scratch/a.json" >/dev/null || fault "1600 ft"
jq -e '[.takeoff[] | select(.where == "fixed line")] | .[0].by_plan == 298' "$scratch/a.json" >/dev/null || fault "298 fixed clips"
# 40 roofs drawn and counted piece by piece; tests/long/takeoff.sh draws 500.
last="takeoff of random roofs"
python3 tests/oracle/takeoff.py "$program" --plans 40 >"$scratch/said" || { cat "$scratch/said" >&2; fault "takeoff.py"; }
# 300 panels of 61.2114 ft from coil of 21.5 in, 24 ga: 0.0239 in of steel at 40.8 lb for each square foot and inch.
sed 's/^      fold_leg: 0.75 in/      fold_leg: 0.75 in\n      coil_width: 21.5 in/' "$examples/clean.yaml" >"$scratch/coil.yaml"
run 0 takeoff coil.yaml --format json
jq -e '[.takeoff[] | select(.where == "coil 21.5 in wide, weight")] | .[0] | .unit == "lb" and .by_plan > 32000 and .by_plan < 32300' \
	"$scratch/out" >/dev/null || fault "32,082 lb of coil"
run 2 takeoff
has err "takeoff needs one FILE"
run 2 takeoff "$examples"
run 2 takeoff "$examples/clean.yaml" --format html
has err "takeoff has no format html (there are: text, csv, json)"
printf 'form: 1\nsubmittal: [\n' >"$scratch/broken.yaml"
run 2 takeoff broken.yaml
empty out
finish

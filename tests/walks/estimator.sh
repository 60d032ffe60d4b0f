#!/bin/sh
# SPDX-License-Identifier: MIT
# The estimator's walk of the README, from bid data alone to nothing left open: options, a filled submittal, review, takeoff, an
# order made of what the takeoff says to buy, the approval, and the order held against it. BUILD names the folder of the program.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh
walk=$PWD/tests/walks/estimator
python3=/usr/bin/python3
[ -x "$python3" ] || python3=python3

# 1. The bid: one thing is open, and it is what he came for: which panel.
run 1 review "$walk/bid.yaml"
has out "1 item stands between this package and approval: 1 NOT REVIEWED."
has out "unknown: catalogue item, or other"

# 2. What would be accepted there: constructions with their clips, items for every other place, and the term.
run 0 options "$walk/bid.yaml"
has out "1. panel-a-16, 2 screws in each clip"
has out "underlay-high-temp"
has out "boot-epdm"
has out "30 yr, the longest offered"
run 0 options "$walk/bid.yaml" --format json --output offers.json
jq -e '.complete and ([.constructions[] | .panel] | unique | length) > 1' "$scratch/offers.json" >/dev/null || fault "several panels"
jq -e '[.places[] | select(.items | length == 0)] == []' "$scratch/offers.json" >/dev/null || fault "a place without an item"

# 3. The submittal, filled with the first of them: nothing against it.
"$python3" "$walk/fill.py" "$examples/clean.yaml" "$scratch/offers.json" >"$scratch/mine.yaml" || fault "fill.py"
run 0 review mine.yaml --format json --output reviewed.json
jq -e '.items == []' "$scratch/reviewed.json" >/dev/null || fault "$(jq -c '[.items[] | .code, .finding]' "$scratch/reviewed.json")"
jq -e '[.parts[] | select(.cleared | not)] == []' "$scratch/reviewed.json" >/dev/null || fault "a part is not cleared"

# 4. How much of it: as many clips as the option said.
run 0 takeoff mine.yaml --format json --output takeoff.json
offered=$(jq '.constructions[0].clips' "$scratch/offers.json")
jq -e --argjson offered "$offered" '[.takeoff[] | select(.kind == "clip" and (.where | startswith("zone"))) | .as_laid] | add == $offered' \
	"$scratch/takeoff.json" >/dev/null || fault "the takeoff has other clips than the option"

# 5. The list of purchases: what the takeoff says to buy, in packages; what it cannot count, from the drawings.
jq -r '"item,quantity,unit,supplier,date", (.to_buy[] | "\(.item),\(.packages // .needed // 2),\(
	if .packages then .sold_in | split(" ")[0] elif .needed then .unit else .sold_in | split(" ")[0] end),\(
	if .kind == "underlayment" or .kind == "rivet" then "roofing supplier" else "panel maker" end),2026-05-05")' \
	"$scratch/takeoff.json" >"$scratch/order.csv"

# 6. Before the approval each line says so; the day after it nothing is open.
run 1 order mine.yaml order.csv
has out "BEFORE APPROVAL"
cp -r "$examples/../data/register" "$scratch/register"
echo 'PA-30,MC-1042,any,Marrow Creek Depot,2026-05-05,2027-05-04,20,' >>"$scratch/register/approvals.csv"
run 0 order --register register mine.yaml order.csv
has out "approval PA-30 is in force"
run 0 order --register register mine.yaml order.csv --format json --output held.json
jq -e '.findings == [] or (.findings | length == 0)' "$scratch/held.json" >/dev/null || fault "something is against the order"
jq -e '[.lines[] | select(.clearance != "nothing found against it")] == []' "$scratch/held.json" >/dev/null || fault "a line is not clear"

# 7. One panel less, and the order says so.
sed 's/^panel-a-16,306,/panel-a-16,305,/' "$scratch/order.csv" >"$scratch/short.csv"
run 1 order --register register mine.yaml short.csv
finish

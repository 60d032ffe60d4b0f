#!/bin/sh
# SPDX-License-Identifier: MIT
# An edition described: its gaps, each with a neighbor that is none; faults; which verdicts turn against another edition.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# edition NAME: a copy of the sample; row NAME FILE CELLS: one more row in a table.
edition() {
	rm -rf "${scratch:?}/$1"
	cp -r data/sample-2026 "$scratch/$1"
}

row() {
	printf '%s\n' "$3" >>"$scratch/$1/$2"
}

# rule NAME CODE FOR-EACH WHEN FACT RELATION LIMIT: one more rule.
rule() {
	row "$1" rules.csv "$2,ADVISORY,$3,$4,$5,$6,$7,it is so,mend it,,program,\"common practice, no published source\",contractor,,,yes,It matters."
}

is() {
	jq -e "$1" "$scratch/out" >/dev/null 2>&1 || fault "not so: $1"
}

gap() {
	is "[.gaps[] | select(.what == \"$1\" and .gap == \"$2\")] | length == 1"
}

silent() {
	gap "$1" "rule that can never fire"
}

fires() {
	is "[.gaps[] | select(.what == \"$1\")] | length == 0"
}

run 1 criteria sample-2026
has out "CRITERIA  sample-2026"
has out "In force      2026-01-01 to 2026-12-31"
has out "$(grep -c '' data/sample-2026/kinds.csv | awk '{ print $1 - 1 }') in kinds.csv"
has out "panels.csv:$(grep -n '^panel-r-36,' data/sample-2026/panels.csv | cut -d: -f1):1: panel-r-36: no listing was tested"
has out "name the day with --as-of"
has out "CAUTIONS"
run 1 criteria sample-2026 --format json
is '.criteria.edition == "sample-2026" and .against == null and (.criteria.sha256 | test("^[0-9a-f]{64}$"))'
is '[.gaps[].gap] | index("rule that can never fire") == null'
sum=$(jq -r .criteria.sha256 "$scratch/out")
run 1 review "$examples/wrong-clip.yaml" --format json
is ".criteria.sha256 == \"$sum\""

# Rules that can never fire, beside ones that can.
edition silent
rule silent ZZZ-01 roof_area 'panel.metal is steel and panel.metal is copper' panel.width 'is at least' '10 in'
rule silent ZZZ-02 roof_area 'panel.metal is steel and panel.metal is not copper' panel.width 'is at least' '10 in'
rule silent ZZZ-03 roof_area 'panel.width is more than 20 in' panel.width 'is at most' '30 in'
rule silent ZZZ-04 roof_area 'panel.width is less than 20 in' panel.width 'is at most' '30 in'
rule silent ZZZ-05 roof_area 'panel.width is at least 20 in' panel.width 'is at least' '20 in'
rule silent ZZZ-06 roof_area 'panel.width is more than 20 in' panel.width 'is more than' '20.1 in'
rule silent ZZZ-07 submittal 'project.use is in uses not warranted' project.use 'is not in' 'uses not warranted'
rule silent ZZZ-08 submittal 'project.use is in uses not warranted' project.use 'is in' 'uses not warranted'
rule silent ZZZ-09 role 'part is rivet and due is yes' found 'is at least' least
rule silent ZZZ-10 role 'part is sealant and due is yes' found 'is at least' least
rule silent ZZZ-11 paper 'kind is a letter nobody writes' found is yes
run 1 criteria silent --format json
for code in ZZZ-02 ZZZ-03 ZZZ-06 ZZZ-07 ZZZ-10; do fires "$code"; done
for code in ZZZ-01 ZZZ-04 ZZZ-05 ZZZ-08; do silent "$code"; done
has out "no row of required.csv makes a record"
silent ZZZ-09
silent ZZZ-11

# Parts never tested, terms nothing lasts, wide steps between tests, papers about to expire.
edition gaps
row gaps clips.csv 'clip-never-tested,panel maker,"A clip (invented)",box of 250,running,steel,steel,16 ga,two-piece,travel,2,2,1/4,yes,yes,,5,0,0.5,0.25'
row gaps terms.csv '60,none,0.5,any,any,full,3,,"common practice, no published source"'
row gaps listing_tests.csv 'report-33,49,40,ultimate,,2,clip'
run 1 criteria gaps --format json
gap clip-never-tested "part no listing uses"
fires clip-a-float
fires clip-a-fixed
gap clip-b-float "part no listing uses"
is '[.gaps[] | select(.what == "term of 60 yr" and .gap == "term nothing lasts") | .why] | any(contains("no underlayment lasts it"))'
is '[.gaps[] | select(.what == "term of 20 yr")] | length == 0'
is '[.gaps[] | select(.gap == "wide gap between tests") | .why] == ["nothing was tested between clips at 24 in and at 49 in"]'
is '[.gaps[] | select(.gap == "about to expire")] | length == 0'
sed -i 's/^report-33,49,/report-33,48,/' "$scratch/gaps/listing_tests.csv"
run 1 criteria gaps --format json
is '[.gaps[] | select(.gap == "wide gap between tests")] | length == 0'
run 1 criteria sample-2026 --as-of 2026-10-02 --format json
gap sample-2026 "about to expire"
gap approval-5 "about to expire"
fires tested-210
run 1 criteria sample-2026 --as-of 2026-10-01 --format json
is '[.gaps[] | select(.gap == "about to expire" and .what == "sample-2026")] | length == 0'

# A fault refuses the edition.
edition faulty
rule faulty ZZZ-01 roof_area '' panel.widht 'is at least' '10 in'
run 2 criteria faulty
empty out
has err "faulty/rules.csv:"
has err "refused as a whole"
run 2 criteria nowhere
run 2 criteria
run 2 criteria sample-2026 --against sample-2026
has err "go together"

# What would turn: a stricter slope holds the clean one back; the other way round lets it through; a package with a rule less.
mkdir "$scratch/reports"
run 0 review "$examples/clean.yaml" --format json --output reports/clean.json
run 1 review "$examples/wrong-clip.yaml" --format json --output reports/wrong.json
edition stricter
awk -F, -v OFS=, 'NR > 1 { $3 = 6 } 1' data/sample-2026/terms.csv >"$scratch/stricter/terms.csv"
sed 's/^CLP-01a,REJECTED/CLP-01a,ADVISORY/' data/sample-2026/rules.csv >"$scratch/stricter/rules.csv"
run 1 criteria stricter --against sample-2026 --reports reports --format json
is '.against.judged == 2 and (.against.turns | length) == 2'
is '.against.turns[0] | .submittal == "MC-1042" and .turn == "held back" and .before == 0 and .after == 1'
is '.against.turns[0].raised == [{code: "WTY-14a", name: "Main roof", action: "REVISE AND RESUBMIT"}] and .against.turns[0].gone == []'
is '.against.turns[1] | .submittal == "MC-1043" and .turn == "other items" and ([.gone[].code] | index("CLP-01a") != null)'
run 1 criteria sample-2026 --against stricter --reports reports
has out "MC-1042  let through  (1 item of NOT REVIEWED or worse before, 0 now; reports/clean.json)"
has out "gone    REVISE AND RESUBMIT  Main roof  [WTY-14a]"
has out "Would turn    0 held back, 1 let through, 1 with other items"
run 1 criteria sample-2026 --against sample-2026 --reports reports --format json
is '.against.judged == 2 and .against.turns == []'
echo '{' >"$scratch/reports/broken.json"
run 2 criteria stricter --against sample-2026 --reports reports --format json
is '.against.judged == 2'
finish

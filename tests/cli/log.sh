#!/bin/sh
# SPDX-License-Identifier: MIT
# The log: the latest round of each submittal, days by the papers, reports that cannot be used.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# A round of a submittal: round DAY TERM FILE. The dates of the examples: submittal 2026-04-14, approval planned for 2026-05-05.
cat >"$scratch/review.yaml" <<'END'
for: MC-1043
round: 1
received: 2026-04-15
returned: 2026-04-22
END
mkdir "$scratch/reports" "$scratch/none"
run 1 review "$examples/wrong-clip.yaml" --reviewer review.yaml --format json --output reports/b.json
run 0 review "$examples/clean.yaml" --format json --output reports/a.json
run 1 review "$examples/bid.yaml" --format json --output reports/c.json

run 0 log reports --as-of 2026-05-01
sed -n 's/^  \([A-Z][A-Z]*-[0-9]*\)  .*/\1/p' "$scratch/out" | tr '\n' ' ' >"$scratch/order"
[ "$(cat "$scratch/order")" = "B-2107 MC-1042 MC-1043 " ] || fault "not by number: $(cat "$scratch/order")"
has out "Day           2026-05-01"
has out "17 days, since 2026-04-14"
has out "7 days, since 2026-04-15 to 2026-04-22, when it went back; 9 days since then"
has out "application, round 1: Revise and resubmit"
has out "application, round 1: self-check"
has out "2026-05-05 for the approval, 4 days left"
has out "Waiting for       contractor"
has out "CAUTIONS"
run 0 log reports --as-of 2026-05-08
has out "3 days late"
run 0 log reports
has out "2026-04-22, the latest day in these reports"
has out "8 days, since 2026-04-14"

# The later round counts, and of one round the reviewer's report before a self-check; the same report twice is one.
sed 's/^round: 1/round: 2/; s/^date: 2026-04-14/date: 2026-04-28/' "$examples/wrong-clip.yaml" >"$scratch/second.yaml"
run 1 review second.yaml --format json --output reports/0-second.json
run 0 log reports --as-of 2026-05-01 --format csv
has out '"MC-1043","Marrow Creek Depot","20 yr","application",2,"self-check",0,1,'
[ "$(wc -l <"$scratch/out")" -eq 4 ] || fault "not one line a submittal"
has out '"2026-04-28","",3,"approval","2026-05-05",4,'
run 1 review "$examples/wrong-clip.yaml" --format json --output reports/d.json
rm "$scratch/reports/0-second.json"
run 0 log reports --as-of 2026-05-10 --format csv
has out '"Revise and resubmit"'
has out ',-5,'
lacks out "'-5"
cp "$scratch/reports/a.json" "$scratch/reports/z.json"
run 0 log reports
lacks out "differs"
sed 's/^date: 2026-04-14/date: 2026-04-13/' "$examples/clean.yaml" >"$scratch/other.yaml"
run 0 review other.yaml --format json --output reports/z.json
run 0 log reports
has out "reports/z.json is on the same round and differs"

# NDJSON of a folder, through a pipe too, in pieces too.
run 1 review "$examples" --format ndjson --output all.ndjson
run 0 log all.ndjson --format csv
mv "$scratch/out" "$scratch/one"
last="seamstamp log -"
(cd "$scratch" && "$program" log - --format csv <all.ndjson | sed 's/"standard input, line/"all.ndjson, line/' | cmp -s - one) || fault "a pipe is read otherwise"
head -5 "$scratch/all.ndjson" >"$scratch/p1.ndjson"
tail -n +6 "$scratch/all.ndjson" >"$scratch/p2.ndjson"
run 0 log p2.ndjson p1.ndjson --format csv
sed 's/"[^"]*"\r$//' "$scratch/out" >"$scratch/joined"
sed 's/"[^"]*"\r$//' "$scratch/one" | cmp -s - "$scratch/joined" || fault "pieces give another log"
run 0 log all.ndjson --format html
has out "<table>"
lacks out "<script"

# What cannot be used is told, the rest is shown.
echo '{"seamstamp": "0.1.0"' >"$scratch/reports/half.json"
run 2 log reports
has out "MC-1042"
has err "reports/half.json"
rm "$scratch/reports/half.json"
sed 's/"REJECTED"/"ADVISORY"/' "$scratch/reports/b.json" >"$scratch/reports/changed.json"
run 2 log reports
has err "reports/changed.json"
run 2 log none
has err "no .json or .ndjson file stands in this folder"
run 2 log
has err "log needs"
run 2 log reports --as-of soon
has err "--as-of takes a day"
run 2 log nowhere.json
has err "nowhere.json"
finish

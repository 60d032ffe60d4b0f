#!/bin/sh
# SPDX-License-Identifier: MIT
# The walk of whoever keeps the shared folder: fifty packages through the gate, a change that turns it, pieces on several workers
# with one killed, and the log over all. What is expected was counted by hand from what the examples are made to show.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# Fifty packages of four projects: thirty with nothing against them, ten with a wrong clip (REJECTED), nine whose class was earned
# at closer clips (REVISE AND RESUBMIT), and one whose YAML breaks.
folder=$scratch/submittals
mkdir -p "$folder/north" "$folder/south" "$folder/east"
put() {
	sed "s/^submittal: .*/submittal: $3/" "$examples/$1.yaml" >"$folder/$2/$3.yaml"
}
for n in $(seq 1 30); do put clean north "N-$((100 + n))"; done
for n in $(seq 1 10); do put wrong-clip south "S-$((200 + n))"; done
for n in $(seq 1 9); do put far-clips east "E-$((300 + n))"; done
printf 'form: 1\nsubmittal: E-310\nproject: {name: "never closed\n' >"$folder/east/E-310.yaml"

# The gate: one run, reports for people and programs, the status for the shell.
run 2 review submittals --format ndjson --output reports.ndjson --format sarif --output reports.sarif --format junit --output reports.xml \
	--format csv --output items.csv
empty out
has err "50 reviewed: 30 with nothing at NOT REVIEWED or worse, 19 with something, 1 could not be judged"
has err "packages by their worst item: 10 REJECTED, 9 REVISE AND RESUBMIT, 30 without any"
has err "submittals/east/E-310.yaml: could not be judged"
[ "$(wc -l <"$scratch/reports.ndjson")" -eq 50 ] || fault "not a line for each package"
[ "$(jq -s '[.[] | select(.items[0].action == "REJECTED")] | length' "$scratch/reports.ndjson")" -eq 10 ] || fault "not ten rejected"
jq -e '.version == "2.1.0"' "$scratch/reports.sarif" >/dev/null || fault "no SARIF"
grep -q '<testsuites' "$scratch/reports.xml" || fault "no JUnit"

# The broken file mended, the gate is 1; moved to what is worse than REVISE AND RESUBMIT it still is; without the wrong clips it opens.
put far-clips east E-310
run 1 review submittals --quiet --format ndjson --output reports.ndjson
empty err
run 1 review submittals --gate REJECTED --format lines --quiet
run 0 review submittals/north submittals/east --gate REJECTED --format lines --quiet
run 1 review submittals/north submittals/east --gate "revise-and-resubmit" --format lines --quiet
run 0 review submittals/north --quiet --format lines
empty out

# Only what changed: a list instead of the folder.
(cd "$scratch" && find submittals -name 'S-20[12].yaml') >"$scratch/changed"
run 1 review --files-from changed --format ndjson
[ "$(wc -l <"$scratch/out")" -eq 2 ] || fault "not the two of the list"

# Five pieces over two workers; the third is killed in the middle and leaves no file; run again, all joined are the one run.
(cd "$scratch" && find submittals -name '*.yaml' | LC_ALL=C sort | split -l 10 - piece.)
(cd "$scratch" && printf '%s\n' piece.aa piece.ab piece.ad piece.ae |
	xargs -P 2 -I LIST "$program" review --files-from LIST --format ndjson --output LIST.ndjson --quiet 2>xargs.err)
mkfifo "$scratch/slow"
(cd "$scratch" && exec "$program" review --files-from slow --format ndjson --output piece.ac.ndjson --quiet 2>/dev/null) &
worker=$!
exec 8>"$scratch/slow"
head -5 "$scratch/piece.ac" >&8
sleep 0.2
kill -KILL $worker
wait $worker 2>/dev/null
exec 8>&-
last="a killed worker"
[ ! -e "$scratch/piece.ac.ndjson" ] || fault "left half a file"
run 0 review --files-from piece.ac --format ndjson --output piece.ac.ndjson --quiet
cat "$scratch"/piece.a?.ndjson | cmp -s - "$scratch/reports.ndjson" || fault "the pieces joined are not the one run"

# The log over the pieces: each package once, days by the papers.
run 0 log piece.aa.ndjson piece.ab.ndjson piece.ac.ndjson piece.ad.ndjson piece.ae.ndjson --as-of 2026-05-01 --format csv
[ "$(wc -l <"$scratch/out")" -eq 51 ] || fault "not a head and fifty rows"
[ "$(grep -c '"contractor"' "$scratch/out")" -eq 20 ] || fault "not twenty waiting for the contractor"
[ "$(grep -c ',17,"approval","2026-05-05",4,' "$scratch/out")" -eq 50 ] || fault "days are not those of the papers"
run 0 log reports.ndjson --as-of 2026-05-01
has out "Waiting       20 of 50; the longest in its round: 17 days"
finish

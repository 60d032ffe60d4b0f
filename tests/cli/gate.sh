#!/bin/sh
# SPDX-License-Identifier: MIT
# A folder as a gate: how many at a time, lists of paths, the summary, being stopped, and chunks that make one run.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

for n in 1 2 3 4 5 6 7 8 9 10 11 12; do
	mkdir -p "$scratch/jobs/a$((n % 3))/deep"
	cp "$examples/clean.yaml" "$scratch/jobs/a$((n % 3))/clean-$n.yaml"
	cp "$examples/wrong-clip.yaml" "$scratch/jobs/a$((n % 3))/deep/wrong-$n.yml"
done
cp "$examples/clean.yaml" "$scratch/jobs/a1-before-the-folder.yaml"
printf 'form: 1\nsubmittal: X\nproject: {name: Y\n' >"$scratch/jobs/broken.yaml"
(cd "$scratch" && find jobs -name '*.y*ml' | sort) >"$scratch/list"

# The same bytes however many at a time, and in the order of the paths.
run 2 review jobs --format ndjson --jobs 1
mv "$scratch/out" "$scratch/one"
[ "$(wc -l <"$scratch/one")" -eq 26 ] || fault "not one line for each of 26 submittals"
jq -r '.files[0].path' "$scratch/one" | cmp -s - "$scratch/list" || fault "not in the order of the paths"
for jobs in 2 3 8; do
	run 2 review jobs --format ndjson --jobs "$jobs"
	cmp -s "$scratch/out" "$scratch/one" || fault "--jobs $jobs changes the reports"
done
has err "26 reviewed: 13 with nothing at NOT REVIEWED or worse, 12 with something, 1 could not be judged"
has err "packages by their worst item: 12 REJECTED"
lacks err "recommended action"
run 2 review jobs --format text --jobs 3 --output letters
run 2 review jobs --format text --jobs 1
cmp -s "$scratch/out" "$scratch/letters" || fault "letters in a file differ from those printed"
for wrong in 0 -1 257 two 1x ''; do
	run 2 review jobs --jobs "$wrong"
	empty out
	has err "a number from 1 to 256"
done

# Lists: a line each, with a carriage return, with a zero byte; folders in them are walked; names beside them come first.
run 2 review --files-from list --format ndjson
cmp -s "$scratch/out" "$scratch/one" || fault "a list of the same paths changes the reports"
sed 's/$/\r/' "$scratch/list" >"$scratch/list-crlf"
run 2 review --files-from list-crlf --format ndjson
cmp -s "$scratch/out" "$scratch/one" || fault "line ends of another system change the reports"
tr '\n' '\0' <"$scratch/list" >"$scratch/list-zero"
run 2 review --files-from list-zero --format ndjson
cmp -s "$scratch/out" "$scratch/one" || fault "zero bytes change the reports"
printf 'jobs/a0\n\njobs/nowhere.yaml\njobs/a1/clean-1.yaml' >"$scratch/mixed"
run 2 review --files-from mixed "$examples/clean.yaml" --format lines
has err "11 reviewed"
has err "jobs/nowhere.yaml: could not be judged"
name=$(printf 'jobs/two\nlines.yaml')
cp "$examples/clean.yaml" "$scratch/$name"
printf '%s\0' "$name" >"$scratch/odd"
run 0 review --files-from odd --format ndjson
rm "$scratch/$name"
awk 'BEGIN { for (i = 0; i < 9000; i++) printf "x"; print ""; print "jobs/a1/clean-1.yaml" }' >"$scratch/long"
run 2 review --files-from long --format ndjson
has err "too long for any file"
has err "1 reviewed"

# What names nothing is no open gate.
: >"$scratch/nothing"
run 2 review --files-from nothing
has err "the list names no file"
run 2 review --files-from none-such
has err "cannot be opened"
run 2 review - --files-from -
has err "once only"

# Stopped in the middle: what was printed is whole, and a file that was asked for is not there.
mkfifo "$scratch/slow"
(cd "$scratch" && exec "$program" review --files-from slow --format ndjson --format lines --output stopped >begun 2>/dev/null) &
pid=$!
exec 8>"$scratch/slow"
head -3 "$scratch/list" >&8
tries=0
while [ "$(wc -l <"$scratch/begun")" -lt 3 ] && [ $tries -lt 100 ]; do
	sleep 0.1
	tries=$((tries + 1))
done
kill -TERM $pid
wait $pid 2>/dev/null
status=$?
exec 8>&-
[ "$status" -eq 143 ] || fault "stopped with status $status, not 143"
head -3 "$scratch/one" | cmp -s - "$scratch/begun" || fault "what was printed before the stop is not three whole reports"
[ ! -e "$scratch/stopped" ] || fault "a half of a file was left"
[ -z "$(find "$scratch" -name '.seamstamp*')" ] || fault "something was left beside"

# In pieces, one of them killed and run again, joined in order: the same bytes as one run.
split -l 7 "$scratch/list" "$scratch/part."
for part in "$scratch"/part.*; do
	(cd "$scratch" && "$program" review --files-from "$part" --format ndjson --output "$part.ndjson" --quiet 2>/dev/null)
done
rm "$scratch/part.ab.ndjson"
(cd "$scratch" && "$program" review --files-from part.ab --format ndjson --output part.ab.ndjson --quiet)
cat "$scratch"/part.*.ndjson | cmp -s - "$scratch/one" || fault "the pieces are not the whole"
finish

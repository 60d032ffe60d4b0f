#!/bin/sh
# SPDX-License-Identifier: MIT
# Formats and where they go: pairs, arrays, lines, files that are replaced whole or not at all.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

run 1 review "$examples/wrong-clip.yaml" --format lines
starts out "/.*examples/wrong-clip.yaml:[0-9]*:[0-9]*: REJECTED: clip-b-float is not the tested clip-a-float"
run 1 review "$examples/wrong-clip.yaml" --format text --format json --output a.json --format lines --output b.txt
starts out "SELF-CHECK"
starts a.json "{"
has a.json '"code": "CLP-01a"'
has b.txt "[CLP-01a]"
run 2 review "$examples/wrong-clip.yaml" --format text --format json
has err "two formats go to standard output"
run 2 review "$examples/wrong-clip.yaml" --output a --format json --output a
has err "two formats go to a"
run 0 review "$examples/clean.yaml" --output c.txt
empty out
starts c.txt "SELF-CHECK"
run 0 review "$examples/clean.yaml" --output -
starts out "SELF-CHECK"

# JSON: one object, an array of several files, a line each of a folder.
python='import json, sys
text = open(sys.argv[1]).read()
tree = [json.loads(line) for line in text.splitlines()] if sys.argv[2] == "lines" else json.loads(text)
print(tree["mode"] if sys.argv[2] == "one" else [t["submittal"] for t in tree])'
read_json() {
	python3 -c "$python" "$scratch/$1" "$2" >"$scratch/read" 2>&1 || fault "cannot be read as JSON"
}
run 0 review "$examples/clean.yaml" --format json
read_json out one
has read "self-check"
run 1 review "$examples/clean.yaml" "$examples/wrong-clip.yaml" --format json
read_json out array
has read "['MC-1042', 'MC-10"
run 1 review "$examples/clean.yaml" "$examples/wrong-clip.yaml" --format ndjson
read_json out lines
mkdir "$scratch/folder"
cp "$examples/clean.yaml" "$scratch/folder/b.yaml"
cp "$examples/wrong-clip.yaml" "$scratch/folder/a.yml"
run 1 review folder --format json
read_json out lines
[ "$(wc -l <"$scratch/out")" -eq 2 ] || fault "a folder of two gives other than two lines"

# The same input gives the same bytes.
cp "$scratch/out" "$scratch/before"
run 1 review folder --format json
cmp -s "$scratch/out" "$scratch/before" || fault "two runs differ"

# A report that cannot be written leaves what was there.
echo old >"$scratch/kept.txt"
run 2 review "$examples/clean.yaml" --output kept.txt --format bogus
has kept.txt old
run 2 review "$examples/clean.yaml" --output kept.txt --criteria nowhere
has kept.txt old
run 2 review "$examples/clean.yaml" --output nowhere/report.txt
has err "nowhere/report.txt"
run 2 review "$examples/clean.yaml" --output folder
[ -d "$scratch/folder" ] || fault "the folder is gone"
[ "$(find "$scratch" -name 'kept*' | wc -l)" -eq 1 ] || fault "something was left behind"

# A report never takes the place of what is read.
cp "$examples/clean.yaml" "$scratch/mine.yaml"
run 2 review mine.yaml --output mine.yaml
run 2 review mine.yaml --output ./folder/../mine.yaml
run 2 review folder --output folder/a.yml
cmp -s "$examples/clean.yaml" "$scratch/mine.yaml" || fault "the submittal was overwritten"
cmp -s "$examples/wrong-clip.yaml" "$scratch/folder/a.yml" || fault "a submittal of the folder was overwritten"
run 0 review mine.yaml --output folder/report.txt
rm "$scratch/folder/report.txt"

# SI beside what is written.
run 1 review "$examples/far-clips.yaml" --units si
has out "24 in (610 mm)"
run 1 review "$examples/far-clips.yaml" --units us
lacks out " mm)"
finish

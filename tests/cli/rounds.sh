#!/bin/sh
# SPDX-License-Identifier: MIT
# Rounds from outside: --previous, --reports, what is kept, what is refused, and what the formats print of it.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# package ROUND SED-WORD...: the clean submittal as of this round, edited, in package.yaml.
package() {
	round=$1
	shift
	sed -e "s/^round: .*/round: $round/" "$@" "$examples/clean.yaml" >"$scratch/package.yaml"
}

# states FILE TEXT: number, state and code of every item of a report.
states() {
	found=$(jq -r '.items[] | "\(.number) \(.state) \(.code)"' "$scratch/$1" | tr '\n' ';')
	[ "$found" = "$2" ] || fault "$1 has the items $found not $2"
}

low='s/^\( *\)height: 8 in/\1height: 4 in/'
mkdir "$scratch/kept"

# Round 1 is kept; round 2 reads it, cures one item and leaves one; numbers stay.
package 1 -e "$low" -e 's/bracket_spacing: 30 in/bracket_spacing: 40 in/'
run 1 review package.yaml --reports kept --quiet
[ -f "$scratch/kept/MC-1042.1.json" ] || fault "no report of round 1 was kept"
states kept/MC-1042.1.json "1.01 new TRM-02a;1.02 new PEN-08;"
cp "$scratch/kept/MC-1042.1.json" "$scratch/first.json"
package 2 -e 's/bracket_spacing: 30 in/bracket_spacing: 40 in/'
run 0 review package.yaml --reports kept
has out "Since before  1 condition, 1 closed in this round; the report of round 1 is"
has out "1.01  MAKE CORRECTIONS NOTED  Main roof / gutter"
has out "State      condition since round 1: to be shown done"
has out "  1.02  Main roof / RTU-1 (sheet M2)  [PEN-08]: in round 2: judged again and met"
has out "to be shown done: 1.01"
states kept/MC-1042.2.json "1.01 condition TRM-02a;1.02 closed PEN-08;"
cmp -s "$scratch/kept/MC-1042.1.json" "$scratch/first.json" || fault "the report of round 1 was written again"

# The chain: each report names the one before by its hash.
sum=$(sha256sum "$scratch/kept/MC-1042.1.json" | cut -d ' ' -f 1)
[ "$(jq -r .previous.sha256 "$scratch/kept/MC-1042.2.json")" = "$sum" ] || fault "the hash of round 1 is not in the report of round 2"
[ "$(jq -r '.files[0].sha256' "$scratch/kept/MC-1042.2.json")" = "$(sha256sum "$scratch/package.yaml" | cut -d ' ' -f 1)" ] ||
	fault "the hash of the submittal is not in its report"

# The same by --previous, in every format; the same bytes again.
run 0 review package.yaml --previous first.json --format json --output second.json --format ndjson --output second.ndjson \
	--format lines --output second.txt
states second.json "1.01 condition TRM-02a;1.02 closed PEN-08;"
states second.ndjson "1.01 condition TRM-02a;1.02 closed PEN-08;"
has second.txt "[TRM-02a] 1.01 condition: to be shown done"
has second.txt "CLOSED: RTU-1: the curb is too low [PEN-08] 1.02 closed: judged again and met"
run 0 review package.yaml --previous first.json --format sarif
baselines=$(jq -r '.runs[0].results[] | "\(.ruleId) \(.baselineState)"' "$scratch/out" | tr '\n' ';')
[ "$baselines" = "TRM-02a unchanged;PEN-08 absent;" ] || fault "the baseline of sarif is $baselines"
cp "$scratch/second.json" "$scratch/again.json"
run 0 review package.yaml --previous first.json --format json --output second.json
cmp -s "$scratch/second.json" "$scratch/again.json" || fault "two runs gave two reports"
sed -i "s|^round: .*|round: 3|" "$scratch/package.yaml"
run 0 review package.yaml --previous second.ndjson --format lines

# refused TEXT WORD...: not reviewed, nothing printed, nothing kept.
refused() {
	text=$1
	shift
	before=$(cat "$scratch"/kept/* | cksum)
	run 2 review package.yaml "$@"
	empty out
	has err "$text"
	has err "package.yaml: not reviewed: "
	[ "$(cat "$scratch"/kept/* | cksum)" = "$before" ] || fault "what was kept has changed"
}

# Another round, another submittal, an edited report, no report at all.
package 3
refused "first.json:1:1: this report is of round 1, and this submittal is of round 3 [PRV-08]" --previous first.json
package 1
refused "second.json:1:1: this report is of round 2, and this submittal is of round 1 [PRV-08]" --previous second.json
package 2 -e 's/^submittal: .*/submittal: MC-7/'
refused "first.json:1:1: this report is of submittal MC-1042, not of MC-7 [PRV-07]" --previous first.json
package 2
sed 's/"number": "1.02"/"number": "1.03"/' "$scratch/first.json" >"$scratch/edited.json"
refused "this report was changed since it was printed: its seal does not fit [PRV-05]" --previous edited.json
printf '{"items": [1, 2' >"$scratch/cut.json"
refused "cut.json:1:15: this cannot be read as JSON: ']' expected near end of file [PRV-01]" --previous cut.json
refused "package.yaml:1:1: this cannot be read as JSON" --previous package.yaml
refused "none.json:1:1: the file cannot be read: No such file or directory [FIL-01]" --previous none.json

# A link of the chain that was edited, one that is missing, a round that is closed already.
package 3
run 0 review package.yaml --reports kept --quiet
states kept/MC-1042.3.json "1.01 closed TRM-02a;1.02 closed PEN-08;"
package 4
cp "$scratch/kept/MC-1042.2.json" "$scratch/link.json"
sed 's/"seamstamp": "[^"]*"/"seamstamp": "9"/; /"seal"/d; s/^  },$/  }/' "$scratch/link.json" >"$scratch/kept/MC-1042.2.json"
run 2 review package.yaml --reports kept
cp "$scratch/first.json" "$scratch/kept/MC-1042.2.json"
refused "the report before this one, kept/MC-1042.2.json, is not the one it was made from [PRV-09]" --reports kept
cp "$scratch/link.json" "$scratch/kept/MC-1042.2.json"
package 2
refused "round 2 is closed: kept/MC-1042.3.json is there already" --reports kept
package 5
refused "kept/MC-1042.4.json is missing, and kept/MC-1042.1.json is there" --reports kept
package 3 -e "$low"
run 1 review package.yaml --reports kept --quiet
states kept/MC-1042.3.json "1.01 closed TRM-02a;1.02 open PEN-08;3.01 new RND-04;3.02 new RND-01;"

# A folder that begins in the middle says so.
mkdir "$scratch/late"
package 2
run 1 review package.yaml --reports late --format lines
has out "no report of the round before is at hand for round 2 [RND-07]"

# A bid is not kept, a number becomes the name of a file without leaving the folder, a self-check never takes a review's place.
sed 's/^stage: .*/stage: bid/' "$examples/clean.yaml" >"$scratch/bid.yaml"
mkdir "$scratch/bids"
(cd "$scratch" && "$program" review bid.yaml --reports bids >out 2>err)
[ -z "$(ls "$scratch/bids")" ] || fault "a bid was kept"
package 1 -e 's|^submittal: .*|submittal: "../x y"|'
run 0 review package.yaml --reports bids --quiet
[ -f "$scratch/bids/%2E./x y.1.json" ] && fault "a name left the folder"
[ -f "$scratch/bids/%2E.%2Fx%20y.1.json" ] || fault "not kept under its number: $(ls "$scratch/bids")"
mkdir "$scratch/reviewed"
package 1
printf 'for: MC-1042\nround: 1\nreceived: 2026-04-15\n' >"$scratch/review.yaml"
run 0 review package.yaml --reviewer review.yaml --reports reviewed
run 0 review package.yaml --reviewer review.yaml --reports reviewed
run 2 review package.yaml --reports reviewed
has err "reviewed/MC-1042.1.json is the reviewer's, and a self-check does not take its place"

# Two files of one submittal and round: the second is told, whatever number of threads.
mkdir "$scratch/twice" "$scratch/folder"
cp "$examples/clean.yaml" "$scratch/folder/a.yaml"
cp "$examples/clean.yaml" "$scratch/folder/b.yaml"
run 2 review folder --reports twice --format lines --jobs 2
has err "folder/b.yaml: not kept: twice/MC-1042.1.json holds the report of folder/a.yaml in this run"
[ "$(jq -r '.files[0].path' "$scratch/twice/MC-1042.1.json")" = folder/a.yaml ] || fault "the second took the place of the first"

# What cannot be asked for.
run 2 review package.yaml bid.yaml --previous first.json
has err "--previous is the report of one submittal"
run 2 review package.yaml --reports nowhere
has err "--reports takes a folder that exists, not nowhere"
run 2 review package.yaml --previous first.json --format json --output first.json
has err "would overwrite what this run reads"
finish

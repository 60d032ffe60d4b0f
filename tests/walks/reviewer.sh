#!/bin/sh
# SPDX-License-Identifier: MIT
# The reviewer's walk: one package from its first round to the close-out, with what he sends each time. The close-out example is
# taken back to what its applicant could have sent in spring.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# spring ROUND DAY: the package before anything was bought or built.
spring() {
	awk -v round="$1" -v day="$2" '
		/^[a-z_]+:/ { block = $1; skip = 0 }
		block ~ /^(inspections|photographs|punch_items|meetings|fee):/ { next }
		block == "purchases:" { if (/^purchases:/) print "purchases: none"; next }
		block == "documents:" && /kind: approval letter/ { skip = 1 }
		block == "dates:" && /event:/ { event = $3 }
		block == "dates:" && event != "application" { sub(/ date:/, " planned:") }
		/^stage:/ { $0 = "stage: application" }
		/^round:/ { $0 = "round: " round }
		/^date:/ { $0 = "date: " day }
		!skip' "$examples/close-out.yaml"
}

# reviewed ROUND RECEIVED RETURNED WORD...: the reviewer's file of a round; words are further lines.
reviewed() {
	printf 'for: MC-1061\nround: %s\nreceived: %s\nreturned: %s\n' "$1" "$2" "$3" >"$scratch/review.yaml"
	shift 3
	for line in "$@"; do printf '%s\n' "$line" >>"$scratch/review.yaml"; done
}

# stands FILE TEXT: number, state and code of every item.
stands() {
	found=$(jq -r '.items[] | "\(.number) \(.state) \(.code)"' "$scratch/$1" | tr '\n' ';')
	[ "$found" = "$2" ] || fault "$1 has the items $found not $2"
}
mkdir "$scratch/reports"

# Round 1: a low curb and a look-alike clip. The letter, the reply sheet and the schedule go out.
spring 1 2026-04-14 | sed 's/height: 8 in/height: 4 in/' >"$scratch/package.yaml"
reviewed 1 2026-04-15 2026-04-22 'own:' \
	'  - {action: REVISE AND RESUBMIT, where: "A5, detail 3", finding: valley drawn without cleat, basis: "common practice, no published source",' \
	'     remedy: show the cleat, answer_by: contractor}'
run 1 review package.yaml --reviewer review.yaml --reports reports --format text --output letter.txt --format replies --output sheet.csv \
	--format schedule --output schedule.txt --quiet
has letter.txt "Recommended action: Revise and resubmit"
stands reports/MC-1061.1.json "1.01 new PEN-08;1.02 new OWN;"
has schedule.txt "as it is nothing would be approved: 2 items are in the way"
run 0 log reports --as-of 2026-04-30
has out "7 days, since 2026-04-15 to 2026-04-22, when it went back; 8"
has out "Waiting for       contractor"

# Round 2: the contractor filled in the sheet and mended the curb; the reviewer sees the cleat and closes his own item.
sed -e '2s/,"",""/,"curb raised to 8 in","A2"/' -e '3s/,"",""/,"cleat drawn on revision 2","A5"/' "$scratch/sheet.csv" >"$scratch/answers.csv"
spring 2 2026-04-24 >"$scratch/package.yaml"
reviewed 2 2026-04-27 2026-04-29 'items:' '  - {number: 1.02, disposition: closed, reason: cleat seen on A5}'
run 0 review package.yaml --reviewer review.yaml --reports reports --replies answers.csv --format text --output letter.txt --quiet
jq -r '.items[] | select(.state == "closed") | .number' "$scratch/reports/MC-1061.2.json" | tr '\n' ' ' >"$scratch/closed"
[ "$(cat "$scratch/closed")" = "1.01 1.02 " ] || fault "closed are $(cat "$scratch/closed")"
has letter.txt "Recommended action: No exceptions taken"
jq -e '.items[] | select(.number == "1.01") | .note | test("judged again and met")' "$scratch/reports/MC-1061.2.json" >/dev/null ||
	fault "1.01 does not say why it is closed"

# Round 3: the close-out as it came. What the stage asks for the first time needs no declaration; what is wrong with it is new.
reviewed 3 2026-09-15 2026-09-18
cp "$examples/close-out.yaml" "$scratch/package.yaml"
run 1 review package.yaml --reviewer review.yaml --reports reports --format text --output letter.txt --format json --output third.json --quiet
has letter.txt "Recommended action: Revise and resubmit"
jq -r '.items[] | select(.state == "new") | .code' "$scratch/third.json" | sort | tr '\n' ' ' >"$scratch/new"
[ "$(cat "$scratch/new")" = "DOC-13b DOC-15a DOC-16a DOC-20a " ] || fault "new are $(cat "$scratch/new")"
[ "$(jq -r .previous.sha256 "$scratch/third.json")" = "$(sha256sum "$scratch/reports/MC-1061.2.json" | cut -d ' ' -f 1)" ] ||
	fault "the chain is broken"
run 1 review package.yaml --reviewer review.yaml --previous reports/MC-1061.2.json --sheet
has out "INSPECTOR"
run 0 log reports --as-of 2026-10-01
has out "close-out, round 3: Revise and resubmit"
has out "1 REVISE AND RESUBMIT, 3 HOLD"
finish

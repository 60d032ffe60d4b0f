#!/bin/sh
# SPDX-License-Identifier: MIT
# What people send beside the letter: requests for prior approval, the reply sheet, the schedule.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# coast.yaml has two items that need the panel maker's written word: steel clips and steel screws near salt water.
run 1 review "$examples/coast.yaml" --format requests
[ "$(grep -c '^REQUEST FOR PRIOR APPROVAL' "$scratch/out")" -eq 2 ] || fault "not two requests"
has out "REQUEST FOR PRIOR APPROVAL 1 of 2"
has out "Item            1.04  HOLD  [CLP-07]"
has out "To              Sample Panel Works (invented)"
has out "From            Example Roofing (invented)"
has out "made for: steel"
has out "travel: 2 in"
has out "Else allowed    stainless steel"
has out "engineering letter EL-88"
has out "[ ] accepted on the condition below"
has out "CAUTIONS"
run 0 review "$examples/clean.yaml" --format requests
has out "None: no open item"

# The reply sheet has each open item once, and room for the answer.
run 1 review "$examples/coast.yaml" --format replies
[ "$(wc -l <"$scratch/out")" -eq 7 ] || fault "not a head and six items"
has out "submittal,item,action,code,where,finding,submitted,allowed,remedy,answer by,reply,paper"
has out '"MC-1053","1.03","REJECTED","LIF-02","Main roof / clip-a-float (A5, detail 1); Main roof / clip-a-fixed (A5, detail 2)"'
has out ',"contractor","",""'
run 1 review "$examples/bid.yaml" --format replies
[ "$(wc -l <"$scratch/out")" -eq 1 ] || fault "a bid has no numbers to reply to"

# Filled in, it is read back: as if the replies stood in the submittal; also with semicolons, and with the 0 a spreadsheet took.
sed 's/^round: 1/round: 2/' "$examples/coast.yaml" >"$scratch/second.yaml"
printf 'Item;Reply;Paper\r\n1.01;term reduced to 10 yr;WA-2\r\n1.1;"not ""ours"" to answer";\r\n1.03;;\r\n' >"$scratch/filled.csv"
run 1 review second.yaml --replies filled.csv --format json
jq -e '.values.replies == [{"item": "1.01", "reply": "term reduced to 10 yr", "paper": "WA-2"},
	{"item": "1.10", "reply": "not \"ours\" to answer"}]' "$scratch/out" >/dev/null || fault "the replies are not what was written"
jq -e '[.files[].path] | .[0] == "second.yaml" and index("filled.csv") != null' "$scratch/out" >/dev/null || fault "the sheet is not among the files"
run 1 review "$examples/coast.yaml" --format replies --output sheet.csv
sed 's/,"",""/,"seen, mended","PD-9"/' "$scratch/sheet.csv" >"$scratch/answered.csv"
run 1 review second.yaml --replies answered.csv --format json
jq -e '[.values.replies[].item] == ["1.01", "1.02", "1.03", "1.04", "1.05", "1.06"]' "$scratch/out" >/dev/null || fault "not all replies came back"
run 2 review "$examples/clean.yaml" --replies answered.csv
has err "none of these replies is meant for what was reviewed"
printf 'item,answer\n1.01,yes\n' >"$scratch/heads.csv"
run 2 review second.yaml --replies heads.csv
empty out
has err "the column reply is missing"
printf 'item,reply,paper\n1.01,,PD-3\n,what,\n' >"$scratch/half.csv"
run 2 review second.yaml --replies half.csv
has err "half.csv:2:1:"
has err "half.csv:3:1:"
run 2 review second.yaml --replies none.csv
has err "none.csv"

# The schedule names exact parts, spacings and hashes, and leaves out what is not cleared.
run 0 review "$examples/clean.yaml" --format schedule
has out "NOT AN APPROVAL"
has out "clip          clip-a-float: "
has out "zone 1' (interior): 24 in"
has out "zone 3 (corner): 12 in"
has out "$(sha256sum "$examples/clean.yaml" | cut -d' ' -f1)"
lacks out "NOT IN IT"
run 1 review "$examples/messy-reroof.yaml" --format schedule
has out "as it is nothing would be approved: 14 items are in the way"
has out "wood-screw-10x1: NOT IN IT, not cleared (1.12)"
has out "1.14          Porch / underlay-felt-30: felt lies against the metal without a slip sheet"
has out "clip spacing  NOT IN IT, with the clips"
sed 's/^\(  - name: Porch\)/\1\n    warranted: no/; /name: Porch/,$ s/^    warranted: yes$//' "$examples/messy-reroof.yaml" >"$scratch/without.yaml"
run 1 review without.yaml --format schedule
has out "roof area     Porch"
printf 'form: 1\nsubmittal: {\n' >"$scratch/broken.yaml"
for format in requests schedule replies; do
	run 2 review broken.yaml --format $format
	lacks out "ROOF AREA"
done
finish

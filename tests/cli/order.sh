#!/bin/sh
# SPDX-License-Identifier: MIT
# `order`: lists of purchases typed by hand, as spreadsheets save them, against the clean example.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# tells TEXT: the page says so, wherever its lines break.
tells() {
	tr -s ' \n' ' ' <"$scratch/out" | grep -qF -e "$1" || fault "out does not tell \"$1\""
}

# What the takeoff of the clean example needs, in whole packages; tests/cli/takeoff.sh counts it by hand.
cat >"$scratch/whole.csv" <<'END'
item,quantity,unit,supplier
panel-a-16,306,pieces,panel maker
clip-a-float,45,boxes,Sample Panel Works
clip-a-fixed,2,boxes,panel maker
screw-12x1,47,bags,panel maker
trim-screw-quarter,4,bags,panel maker
underlay-high-temp,146,rolls,roofing supplier
seal-butyl-tape,43,rolls,panel maker
seal-butyl-gun,1,case,panel maker
closure-metal-a,13,boxes,panel maker
curb-080,1,ea,panel maker
boot-epdm,1,ea,panel maker
rivet-stainless,1,box,roofing supplier
clamp-a,2,boxes,panel maker
END
run 0 order "$examples/clean.yaml" whole.csv
empty err
starts out "ORDER"
tells "Against it nothing"
tells "clip-a-float: 45 boxes = 11250 pieces; nothing found against it; against the submitted, not approved, assembly"
tells "CAUTIONS"
[ "$(tr -s ' \n' ' ' <"$scratch/out" | grep -o "against the submitted, not approved, assembly" | wc -l)" -eq 13 ] || fault "a line without the caveat"

# The same from a spreadsheet abroad: mark, CRLF, semicolons, a title, a blank line, totals, columns nobody asked for.
{
	printf '\357\273\277Purchase list;;;;\r\n;;;;\r\nPos;Part No.;Qty;U/M;Vendor;Unit price\r\n'
	tail -n +2 "$scratch/whole.csv" | sed 's/,/;/g; s/^/1;/; s/$/;12,50\r/'
	printf '\r\nTotal;;;;;99,00\r\n'
} >"$scratch/abroad.csv"
run 0 order "$examples/clean.yaml" abroad.csv
tells "13 read; rows above the header, not read: 1; rows of totals, not read: 1"
tells "columns Pos, Unit price"
sed 's/,/\t/g' "$scratch/whole.csv" >"$scratch/tabs.csv"
run 0 order "$examples/clean.yaml" tabs.csv

# Wrong parts: one that looks alike, a smaller screw, another of the kind.
sed 's/^clip-a-float,/clip-b-float,/; s/^screw-12x1,/screw-10x1,/; s/^closure-metal-a,/closure-foam-a,/' "$scratch/whole.csv" >"$scratch/wrong.csv"
run 1 order "$examples/clean.yaml" wrong.csv
tells "wrong.csv:3:1: WRONG PART, LOOKS ALIKE"
tells "clip-b-float is not in the submittal; it is easily mistaken for clip-a-float, which is"
tells "wrong.csv:5:1: WRONG PART, STEPPED DOWN"
tells "it steps down: size #10 for #12"
tells "wrong.csv:10:1: WRONG PART"
tells "closure-foam-a is not in the submittal; closure-metal-a is"
tells "clip clip-a-float is in the submittal and not in the order; needed: 11219 pieces (45 x box of 250)"
tells "Against it 6"

# 3 boxes of 250 against 698 needed and against 798: fixed clips on two lines of 200 ft, 349 and 399 on each, no waste.
cp -r "$examples/../data/sample-2026" "$scratch/ours"
sed -i 's/^clip,yes,yes,yes,no,3,/clip,yes,yes,yes,no,0,/' "$scratch/ours/kinds.csv"
sed 's/^clip-a-fixed,2,/clip-a-fixed,3,/' "$scratch/whole.csv" >"$scratch/three.csv"
sed 's/^        spacing: 16 in$/        spacing: 6.86 in/' "$examples/clean.yaml" >"$scratch/seven.yaml"
sed 's/^        spacing: 16 in$/        spacing: 6 in/' "$examples/clean.yaml" >"$scratch/eight.yaml"
held='.items[] | select(.item == "clip-a-fixed")'
run 1 order --criteria ours seven.yaml three.csv --format json
jq -e "$held | .ordered == 750 and .needed == 698 and .stands == \"as needed\"" "$scratch/out" >/dev/null || fault "3 boxes against 698"
run 1 order --criteria ours eight.yaml three.csv --format json
jq -e "$held | .ordered == 750 and .needed == 798 and .stands == \"short\"" "$scratch/out" >/dev/null || fault "3 boxes against 798"
run 1 order --criteria ours eight.yaml three.csv
tells "clip-a-fixed is short by 48 pieces: 750 ordered, needed 798 pieces (4 x box of 250), at least 798"
tells "Remedy: order 1 more x box of 250"

# Missing; over; two deliveries and a return.
grep -v '^seal-butyl-tape' "$scratch/whole.csv" >"$scratch/missing.csv"
run 1 order "$examples/clean.yaml" missing.csv
tells "sealant seal-butyl-tape is in the submittal and not in the order; needed: 2120.30 ft (43 x roll of 50 ft)"
tells "Against it 1"
{ grep -v '^panel-a-16' "$scratch/whole.csv"; printf 'panel-a-16,206,pcs,panel maker\npanel-a-16,120,pcs,panel maker\npanel-a-16,-20,pcs,panel maker\n'; } >"$scratch/parts.csv"
run 0 order "$examples/clean.yaml" parts.csv --format json
jq -e '.items[] | select(.item == "panel-a-16") | .ordered == 306' "$scratch/out" >/dev/null || fault "deliveries do not add up"
sed 's/-20,/(21),/' "$scratch/parts.csv" >"$scratch/back.csv"
run 1 order "$examples/clean.yaml" back.csv
tells "panel-a-16 is short by 1 pieces: 305 ordered"
sed 's/^closure-metal-a,13,/closure-metal-a,15,/' "$scratch/whole.csv" >"$scratch/over.csv"
run 1 order "$examples/clean.yaml" over.csv
tells "closure-metal-a is over by 132 pieces: 750 ordered, needed 618 pieces (13 x box of 50), at most 741.60"
sed 's/^closure-metal-a,13,/closure-metal-a,14,/' "$scratch/whole.csv" >"$scratch/within.csv"
run 0 order "$examples/clean.yaml" within.csv

# Codes: of a supplier, of two items, of another supplier, of nobody.
sed 's/^clip-a-float,/CL-200,/; s/^closure-metal-a,/cm-a,/' "$scratch/whole.csv" >"$scratch/codes.csv"
run 0 order "$examples/clean.yaml" codes.csv
tells "CL-200, read as clip-a-float"
sed 's/^screw-12x1,/SC-121,/' "$scratch/whole.csv" >"$scratch/two.csv"
run 1 order "$examples/clean.yaml" two.csv
tells "two.csv:5:1: AMBIGUOUS CODE"
tells "SC-121 may be screw-12x1 or screw-12x1-p3"
tells "Against it 1"
printf 'code,qty,unit\nCL-200,45,boxes\n' >"$scratch/two.csv"
run 1 order "$examples/clean.yaml" two.csv
tells "CL-200 may be clip-a-float or clip-b-float"
echo 'clip-a-fixed,panel maker,clip-a-float,' >>"$scratch/ours/also_known_as.csv"
run 1 order --criteria ours "$examples/clean.yaml" whole.csv
tells "clip-a-float may be clip-a-float or clip-a-fixed"
printf 'code,description,qty,unit,vendor\nSC-121,"pancake screw 12-14 x 1, point 3",1,bag,panel maker\nCL-210,,1,box,Discount Screws\nclip-a-fixd,,1,box,panel maker\nclip-a-fixed,,1,box,Discount Screws\n' >"$scratch/names.csv"
run 1 order "$examples/clean.yaml" names.csv
tells "SC-121, read as screw-12x1-p3"
tells "CL-210 is no code of Discount Screws that the criteria know; panel maker has it for clip-a-fixed"
tells "clip-a-fixd is no item of the catalogue, nor a code of a supplier; nearest: clip-a-fixed"
tells "clip-a-fixed must be bought from the panel maker, not from Discount Screws"

# A quantity that may be boxes or pieces is not guessed.
sed 's/^clip-a-float,45,boxes/clip-a-float,45,/' "$scratch/whole.csv" >"$scratch/unit.csv"
run 1 order "$examples/clean.yaml" unit.csv
tells "unit.csv:3:14: QUANTITY NOT COMPARED"
tells "45 of clip-a-float does not say what of; it is counted in pieces, sold as box of 250"

# Before, under and after the approval.
cp -r "$examples/../data/register" "$scratch/register"
echo 'PA-30,submittal MC-1042,any,Marrow Creek Depot,2026-05-05,2027-05-04,20,' >>"$scratch/register/approvals.csv"
for day in 2026-05-04 2026-05-05 2027-05-04 2027-05-05; do
	sed "1s/\$/,date/; 2,\$s/\$/,$day/" "$scratch/whole.csv" >"$scratch/$day.csv"
done
run 1 order --register register "$examples/clean.yaml" 2026-05-04.csv
tells "2026-05-04.csv:2:1: BEFORE APPROVAL"
tells "ordered on 2026-05-04 without an approval in force: approval PA-30 is of 2026-05-05"
tells "Against it 13"
run 0 order --register register "$examples/clean.yaml" 2026-05-05.csv
tells "against the submitted assembly; approval PA-30 is in force"
lacks out "not approved"
run 0 order --register register "$examples/clean.yaml" 2027-05-04.csv
run 1 order --register register "$examples/clean.yaml" 2027-05-05.csv
tells "approval PA-30 ended on 2027-05-04"
run 1 order "$examples/clean.yaml" 2026-05-05.csv
tells "no approval of this submittal is in the register"

# An approval for a shorter term than is asked for is none.
sed 's/^\(PA-30,.*\),20,$/\1,15,/' "$scratch/register/approvals.csv" >"$scratch/shorter" && cp -r "$scratch/register" "$scratch/short" &&
	mv "$scratch/shorter" "$scratch/short/approvals.csv"
run 1 order --register short "$examples/clean.yaml" 2026-05-05.csv
tells "approval PA-30 is for terms up to 15 yr"

# Held against the report of the approved package.
printf 'for: MC-1042\nround: 1\nreceived: 2026-04-15\npapers: none\nitems: none\nown: none\n' >"$scratch/reviewer.yaml"
run 0 review "$examples/clean.yaml" --reviewer reviewer.yaml --format json --output approved.json
run 0 order --register register "$examples/clean.yaml" 2026-05-05.csv --approved approved.json
tells "Held against report approved.json, round 1"
tells "against the assembly of report approved.json; approval PA-30 is in force"
lacks out "the submitted assembly"
run 1 order --register register "$examples/clean.yaml" 2026-05-04.csv --approved approved.json
tells "against the assembly of report approved.json, without an approval in force: approval PA-30 is of 2026-05-05"
run 1 order "$examples/clean.yaml" whole.csv --approved approved.json
tells "Against it 1"
tells "no approval is in force: no approval of this submittal is in the register"
# What was changed in the file after the review is told, and the order is held against what was reviewed.
sed 's/^      - item: clip-a-float$/      - item: clip-b-float/' "$examples/clean.yaml" >"$scratch/after.yaml"
sed 's/^clip-a-float,/clip-b-float,/' "$scratch/2026-05-05.csv" >"$scratch/after.csv"
run 1 order --register register after.yaml after.csv --approved approved.json
tells "clip-b-float is in after.yaml and not in report approved.json"
tells "clip-a-float is in report approved.json and no longer in after.yaml"
tells "after.csv:3:1: WRONG PART, LOOKS ALIKE"
tells "not cleared: it was not submitted"
# Reports that approve nothing, or something else.
run 0 review "$examples/clean.yaml" --format json --output self.json
run 1 order --register register "$examples/clean.yaml" 2026-05-05.csv --approved self.json
tells "report self.json is a self-check, which approves nothing"
tells "Against it 1"
run 1 review after.yaml --reviewer reviewer.yaml --format json --output open.json
run 1 order --register register after.yaml after.csv --approved open.json
tells "in report open.json stand open: 1.01"
run 1 review "$examples/plywood.yaml" --format json --output other.json
run 1 order --register register "$examples/clean.yaml" 2026-05-05.csv --approved other.json
tells "the order belongs to MC-1042"
tells "NOT AN APPROVED REPORT"
sed -i 's/^edition: .*/edition: "of tomorrow"/' "$scratch/ours/criteria.yaml"
run 1 order --register register --criteria ours "$examples/clean.yaml" 2026-05-05.csv --approved approved.json
tells "report approved.json was made by criteria of edition"
tells "the order is held by of tomorrow"
run 1 order --register register "$examples/clean.yaml" after.csv --approved approved.json --format json
jq -e '.approved == "approved.json" and (.approved_sha256 | length) == 64' "$scratch/out" >/dev/null || fault "the report is not named"
# A report that was changed by hand, and one that is none.
sed 's/clip-a-float/clip-b-float/' "$scratch/approved.json" >"$scratch/forged.json"
run 2 order "$examples/clean.yaml" whole.csv --approved forged.json
has err "its seal does not fit"
run 2 order "$examples/clean.yaml" whole.csv --approved none.json
run 2 order "$examples/clean.yaml" whole.csv --approved whole.csv
run 2 order "$examples/clean.yaml" whole.csv --approved approved.json --output approved.json
has err "would overwrite what this run reads"

# Panels by the foot: 300 are laid on two slopes of 200 ft, 61.21 ft long each, 2 percent more are needed. Coil, and its certificate.
sed 's/^panel-a-16,306,pieces/panel-a-16,18731,ft/' "$scratch/whole.csv" >"$scratch/feet.csv"
run 0 order "$examples/clean.yaml" feet.csv
sed 's/^panel-a-16,306,pieces/panel-a-16,18700,lin ft/' "$scratch/whole.csv" >"$scratch/feet.csv"
run 1 order "$examples/clean.yaml" feet.csv
tells "panel-a-16 is short by 0.50 pieces"
sed 's/^panel-a-16,306,pieces/panel-a-16,24000,lb/' "$scratch/whole.csv" >"$scratch/coil.csv"
run 1 order "$examples/clean.yaml" coil.csv
tells "coil.csv:2:12: QUANTITY NOT COMPARED"
tells "24000 lb of panel-a-16 cannot be held against the takeoff, which counts pieces"
tells "coil.csv:2:1: NO COIL CERTIFICATE"
tells "Against it 2"
{
	sed '/^purchases: none/d' "$examples/clean.yaml"
	printf 'purchases:\n  - purchase: MC-7\n    kind: coil certificate\n    date: 2026-04-10\n    supplier: the mill\n    lines:\n      - item: panel-a-16\n        coil: C-1\n'
} >"$scratch/certified.yaml"
run 1 order certified.yaml coil.csv
lacks out "NO COIL CERTIFICATE"

# What cannot be told for certain is refused at its place.
refused() {
	run 2 order "$examples/clean.yaml" refused.csv
	empty out
	has err "$1"
}
printf 'item,qty\nclip-a-float,"1.250"\n' >"$scratch/refused.csv"
refused "refused.csv:2:14: the mark in this quantity may stand for thousands or for a fraction: 1.250 [ORD-04]"
printf 'item;qty\nclip-a-float;1,250\n' >"$scratch/refused.csv"
refused "refused.csv:2:14: the mark in this quantity"
printf 'item,description,qty\nscrew-12x1,1-1/2" long,5\n' >"$scratch/refused.csv"
refused "refused.csv:2:17: an inch mark stands in a plain cell: 1-1/2\" long [TAB-02]"
printf 'item,qty ordered,qty shipped\nclip-a-float,5,3\n' >"$scratch/refused.csv"
refused "refused.csv:1:18: the columns qty ordered and qty shipped may both be the quantity"
printf 'item,qty,unit\nclip-a-float,5,M\n' >"$scratch/refused.csv"
refused "refused.csv:2:16: this unit is not known: M"
printf 'item,qty,date\nclip-a-float,5,05/04/2026\n' >"$scratch/refused.csv"
refused "refused.csv:2:16: this is no day: 05/04/2026"
printf '\377\376i\000t\000e\000m\000' >"$scratch/refused.csv"
refused "the file is text in UTF-16 [ORD-08]"
printf 'item,Qty on hand\nclip-a-float,45\n' >"$scratch/refused.csv"
refused "refused.csv:1:6: this head may say more than quantity: Qty on hand [ORD-14]"
printf 'item,qty,\nclip-a-float,45,boxes\n' >"$scratch/refused.csv"
refused "refused.csv:2:17: the row has 3 cells, the header 2 [TAB-08]"
printf 'item,qty,,supplier\nclip-a-float,45,boxes,panel maker\n' >"$scratch/refused.csv"
refused "refused.csv:2:17: a value stands under no head: boxes [ORD-13]"
printf 'item,qty,supplier\nclip-a-float,11,250\n' >"$scratch/refused.csv"
refused "refused.csv:2:14: the mark in this quantity may stand for thousands or for a fraction: 11,250 [ORD-04]"
printf 'Part,,Amount ordered,\nCode,Description,Ordered,Unit\nclip-a-float,,45,boxes\n' >"$scratch/refused.csv"
refused "refused.csv:2:1: a second row of heads: Code [ORD-12]"
printf 'item,qty\nclip-a-float\351,45\n' >"$scratch/refused.csv"
refused "a byte here is not UTF-8 text [TAB-11]"
printf 'red,blue\n1,2\n' >"$scratch/refused.csv"
refused "no row of this list names a column for the part and one for the quantity [ORD-01]"
printf 'item,qty\n' >"$scratch/refused.csv"
refused "there is no line below the header"
run 2 order "$examples/clean.yaml" none.csv
has err "none.csv:1:1: the file cannot be read"

# How the part of a line stands in the review: a screw too small for the listing holds back what was tested with it.
sed 's/^      - item: screw-12x1$/      - item: screw-10x1/' "$examples/clean.yaml" >"$scratch/small.yaml"
sed 's/^screw-12x1,47,/screw-10x1,24,/' "$scratch/whole.csv" >"$scratch/small.csv"
run 0 order small.yaml small.csv
tells "screw-10x1: 24 bags = 24000 pieces; not cleared (1."
tells "clip-a-float: 45 boxes = 11250 pieces; depends on 1."
tells "rivet-stainless: 1 box; nothing found against it"
run 0 order small.yaml small.csv --format json
jq -e '[.lines[] | select(.clearance | startswith("not cleared (1."))] | length == 1' "$scratch/out" >/dev/null || fault "one line not cleared"
run 1 review small.yaml --format json
jq -e '.parts[] | select(.item == "screw-10x1" and .cleared == false and (.by | startswith("1.")))' "$scratch/out" >/dev/null ||
	fault "the review does not say how the screw stands"
jq -e '.parts[] | select(.item == "rivet-stainless" and .cleared and .by == null and .clearance == "nothing found against it")' \
	"$scratch/out" >/dev/null || fault "the review does not say how the rivet stands"

# Forms and operands.
run 1 order "$examples/clean.yaml" wrong.csv --format csv --output held.csv --format json --output held.json
starts held.csv "line,code,description,item,quantity,against it,finding,remedy,held,clearance"
[ "$(wc -l <"$scratch/held.csv")" -eq 17 ] || fault "six findings and ten lines without one in the table"
has held.csv '3,"clip-b-float","","clip-b-float","45 boxes","WRONG PART, LOOKS ALIKE"'
has held.csv '2,"panel-a-16","","panel-a-16","306 pieces","nothing","","","against the submitted, not approved, assembly","nothing found against it"'
has held.csv '"not cleared: it was not submitted"'
jq -e '.findings | length == 6' "$scratch/held.json" >/dev/null || fault "six findings"
run 2 order "$examples/clean.yaml"
has err "order needs FILE and ORDER.csv"
run 2 order - -
run 2 order "$examples/clean.yaml" whole.csv --output whole.csv
has err "would overwrite what this run reads"
finish

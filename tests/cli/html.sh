#!/bin/sh
# SPDX-License-Identifier: MIT
# `review --format html`: one page that stands alone and says all that the letter says; its drawings are to scale. Another program
# reads the pages and holds them against the letter and against the JSON of review and calcs.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

clean=$examples/clean.yaml
edit() { # edit NAME SED...: the clean submittal, changed
	name=$1
	shift
	sed "$@" "$clean" >"$scratch/$name.yaml"
}
edit hip -e 's/^  shape: gable/  shape: hip/' -e 's/^  slope: .*/  slope: "4:12"/' -e 's/^  mean_roof_height: .*/  mean_roof_height: 30 ft/'
sed -e 's/^  length: 200 ft/  length: 60 ft/' -e 's/^  width: 120 ft/  width: 140 ft/' "$scratch/hip.yaml" >"$scratch/turned.yaml"
edit steep -e 's/^  slope: .*/  slope: "4:12"/' -e 's/^  mean_roof_height: .*/  mean_roof_height: 30 ft/'
edit monoslope -e 's/^  shape: gable/  shape: monoslope/' -e 's/^  slope: .*/  slope: "1.5:12"/'
edit huge -e 's/^  length: 200 ft/  length: 4800 ft/' -e 's/^  width: 120 ft/  width: 2400 ft/'
edit tiny -e 's/^  length: 200 ft/  length: 12 ft/' -e 's/^  width: 120 ft/  width: 9 ft/'
edit long -e 's/^  length: 200 ft/  length: 1200 ft/' -e 's/^  width: 120 ft/  width: 30 ft/'
edit metric -e 's/^  length: 200 ft/  length: 61.3 m/' -e 's/^  width: 120 ft/  width: 36.6 m/'
edit other -e 's/^  shape: gable/  shape: other/'
edit nolength -e '/^  length: 200 ft/d'
edit unknown -e 's/^  length: 200 ft/  length: unknown/' -e 's/^  width: 120 ft/  width: unknown/'
edit spaced -e '/use: running/,/metal:/{/spacing:/,/corner:/c\        spacing: unknown
}'
edit excluded -e 's/    warranted: yes/    warranted: no/'
edit hostile -e "s|name: Main roof|name: '</title></text><script>alert(1)</script>\"\&]]>'|" \
	-e 's|name: RTU-1|name: "<img src=http://x.example onerror=x>"|' \
	-e 's|^    section: .*|&|' -e 's|  name: Marrow Creek Depot|  name: "<a href=x>\&amp; </main>"|'
printf 'form: 1\nsubmittal: [a\n' >"$scratch/broken.yaml"
: >"$scratch/empty.yaml"
awk '
	/^    penetrations:/ { print; inside = 1; next }
	inside && /^    [a-z]/ { for (i = 1; i <= 60; i++) printf "%s", unit[i % 2]; inside = 0 }
	inside { if (/^      - /) n++; unit[n % 2] = unit[n % 2] $0 "\n"; next }
	{ print }' "$clean" | awk '/^        name: (RTU|VP)-1$/ { $0 = $0 "-" ++n } /^        from_left:/ { $0 = "        from_left: " 3 + n * 3.1 " ft" }
	/^        from_eave:/ { $0 = "        from_eave: " 2 + n * 17 % 55 " ft" } { print }' >"$scratch/many.yaml"

for file in "$examples"/*.yaml "$scratch"/*.yaml; do
	last="the page of $(basename "$file")"
	python3 tests/cli/page.py "$program" "$file" || fault "see above"
done

run 1 review nolength.yaml --format html
has out "No plan: the length is not stated."
run 1 review unknown.yaml --format html
has out "No plan: length and width are not stated."
run 1 review other.yaml --format html
has out "No zones are drawn: no figure covers this roof shape."
run 1 review spaced.yaml --format html
has out "No zones are drawn: the clip spacing is not stated."
run 1 review excluded.yaml --format html
has out "Not to be warranted"
run 2 review broken.yaml --format html
has out "NOT JUDGED"
run 0 review "$clean" --format html
starts out "<!DOCTYPE html>"
has out "<h1>SELF-CHECK, NOT AN APPROVAL</h1>"
cp "$scratch/out" "$scratch/before"
run 0 review "$clean" --format html
cmp -s "$scratch/out" "$scratch/before" || fault "two runs differ"
for text in "<script" "<link" "<img" "http:" "https:" "size:A4" "size:letter"; do lacks out "$text"; done
printf 'for: MC-1042\nround: 1\nreceived: 2026-04-15\n' >"$scratch/review.yml"
run 0 review "$clean" --reviewer review.yml --format html
has out "<h1>Recommended action: No exceptions taken</h1>"
run 0 review "$clean" --units si --format html
has out "200 ft (61 m)"
run 2 review "$clean" "$examples/coast.yaml" --format html
has err "a page of html holds one submittal"
finish

#!/bin/sh
# SPDX-License-Identifier: MIT
# `calcs`: statuses, forms, where they go; every formula of every example worked through by an outside calculator.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

run 0 calcs "$examples/clean.yaml"
starts out "SHEET OF CALCULATIONS"
empty err
for heading in "roof area: Main roof" "THINNEST MARGINS" "HOW WELL THE FIGURES ARE KNOWN" SOURCES "NEVER PART OF THIS REVIEW" CAUTIONS; do
	has out "$heading"
done
has out "= 24 / 24"
has out "constants used"
run 0 calcs "$examples/clean.yaml" --format json --output a.json --format html --output a.html --format text
starts out "SHEET"
starts a.json "{"
starts a.html "<!DOCTYPE html>"
lacks a.html "<script"
has a.html "default-src &#39;none&#39;"
run 0 calcs "$examples/clean.yaml" --units si
has out "in (610 mm)"
run 0 calcs "$examples/bid.yaml"
run 0 calcs "$examples/messy-reroof.yaml" --format json
has out '"waits_for"'
run 0 calcs "$examples/yaml-mistakes.yaml"
has err "about how it is written; seamstamp review prints them"
printf 'form: 1\nsubmittal: [\n' >"$scratch/broken.yaml"
run 2 calcs broken.yaml
has err "could not be judged"
empty out
run 2 calcs nowhere.yaml
empty out
run 2 calcs
has err "calcs needs one FILE"
run 2 calcs "$examples/clean.yaml" "$examples/bid.yaml"
run 2 calcs "$examples"
has err "not a folder"
run 2 calcs "$examples/clean.yaml" --format lines
has err "calcs has no format lines"
run 2 calcs "$examples/clean.yaml" --format text --format json
has err "two formats go to standard output"
run 2 calcs "$examples/clean.yaml" --gate HOLD
has err "no option --gate"
run 2 calcs "$examples/clean.yaml" --units metric
run 2 calcs "$examples/clean.yaml" --output nowhere/a.txt
run 2 calcs "$examples/clean.yaml" --criteria nowhere

# With the reviewer's file the sheet is headed as his review, and papers are judged on the day received.
has a.json '"mode": "self-check"'
has a.json '"as_of": "2026-04-14"'
run 0 calcs "$examples/clean.yaml"
has out "Made for      a self-check, not an approval; papers judged as of 2026-04-14"
printf 'for: MC-1042\nround: 1\nreceived: 2026-04-17\nreturned: 2026-04-21\n' >"$scratch/review.yaml"
run 0 calcs "$examples/clean.yaml" --reviewer review.yaml --format text --format json --output r.json --format html --output r.html
has out "Made for      the review of round 1, received 2026-04-17, returned 2026-04-21; papers judged as of"
has out "2026-04-17"
has r.json '"mode": "review"'
has r.json '"as_of": "2026-04-17"'
has r.html "Made for the review of round 1, received 2026-04-17, returned 2026-04-21;"
run 2 calcs "$examples/bid.yaml" --reviewer review.yaml
empty out
has err "the reviewer's file is for MC-1042 round 1"
run 2 calcs "$examples/clean.yaml" --reviewer nowhere.yaml
empty out

# The same input gives the same bytes.
run 0 calcs "$examples/clean.yaml" --format json
cmp -s "$scratch/out" "$scratch/a.json" || fault "two runs differ"

# The page is well formed: each element that is opened is closed, in order, whatever the file holds.
python='import sys
from html.parser import HTMLParser
class Page(HTMLParser):
    stack, bad, text = [], [], ""
    def handle_starttag(self, tag, attrs):
        if tag in ("script", "img", "iframe", "a", "b", "object"): self.bad.append(tag)
        self.bad += [n for n, v in attrs if n.startswith("on") or n in ("src", "href")]
        if tag != "meta": self.stack.append(tag)
    def handle_endtag(self, tag):
        if not self.stack or self.stack.pop() != tag: self.bad.append("/" + tag)
    def handle_data(self, data): self.text += data
page = Page()
page.feed(open(sys.argv[1], encoding="utf-8").read())
page.close()
print("good" if not page.stack and not page.bad else "bad", page.bad[:5], page.stack[:5])
print("seen" if all(w in page.text for w in sys.argv[2:]) else "missing")'
page() {
	python3 -c "$python" "$@" >"$scratch/page" 2>&1 || fault "the page cannot be read"
	has page "good [] []"
	has page seen
}
page "$scratch/a.html" "Clip spacing over that of the listed class" "= 24 / 24"
# shellcheck disable=SC2016 # the text is meant as it stands
sed 's|name: Main roof|name: "<script>alert(1)</script> \\"q\\" '"'"'x'"'"' \& <b onload=y>"|; s|clip-a-float|"<img src=x>"|; s|exactly: panel-a-16|exactly: "\\x1b[31m \\u202e"|' \
	"$examples/clean.yaml" >"$scratch/hostile.yaml"
run 0 calcs hostile.yaml --format html
lacks out "<script"
lacks out "<img"
lacks out "<b "
page "$scratch/out" "<script>alert(1)</script>" "<img src=x>" "<b onload=y>"
run 0 calcs hostile.yaml
if grep -q "$(printf '\033')" "$scratch/out"; then fault "an escape sequence goes through"; fi

# An outside calculator.
last="tests/published/formula_lines.py"
if command -v python3 >/dev/null; then
	sed 's/interior: 24 in/interior: 610 mm/; s/perimeter: 18 in/perimeter: 20 in/; s/^      fold_leg: .*/&\n      coil_width: 500 mm/' \
		"$examples/clean.yaml" >"$scratch/metric.yaml"
	sed 's/basic_speed: 115 mph/basic_speed: 130 mph/' "$examples/clean.yaml" >"$scratch/windy.yaml"
	python3 tests/published/formula_lines.py "$program" examples/*.yaml "$scratch/metric.yaml" "$scratch/windy.yaml" >"$scratch/lines" ||
		{ cat "$scratch/lines" >&2; fault "formulas do not agree"; }
	has lines " 0 faults"
	# Two sheets followed by hand; the one on plywood under criteria that take the estimate for thin wood panels.
	cp -r data/sample-2026 "$scratch/criteria"
	sed -i 's/wood_panel_estimate: no/wood_panel_estimate: yes/' "$scratch/criteria/criteria.yaml"
	python3 tests/published/worked.py "$program" docs/worked-steel-deck.md examples/clean.yaml >"$scratch/lines" ||
		{ cat "$scratch/lines" >&2; fault "the sheet of the steel deck is not what was worked out by hand"; }
	python3 tests/published/worked.py "$program" docs/worked-plywood.md examples/plywood.yaml --criteria "$scratch/criteria" >"$scratch/lines" ||
		{ cat "$scratch/lines" >&2; fault "the sheet of the plywood is not what was worked out by hand"; }
else
	echo "  python3 is not installed: no formula was worked through again" >&2
fi
finish

#!/bin/sh
# SPDX-License-Identifier: MIT
# The items as CSV: one line a place, one head for several submittals, read back strictly; nothing a spreadsheet takes for a formula.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# Prints the cells asked for, a row a line; a row that is not as wide as the head is a fault.
python='import csv, sys
rows = list(csv.reader(open(sys.argv[1], newline=""), strict=True))
assert all(len(row) == len(rows[0]) for row in rows), "ragged"
for row in rows:
    print("|".join(dict(zip(rows[0], row))[name] for name in sys.argv[2:]))'
cells() {
	python3 -c "$python" "$scratch/out" "$@" >"$scratch/cells" 2>&1 || fault "cannot be read as CSV: $(tail -n 1 "$scratch/cells")"
}

run 1 review "$examples/wrong-clip.yaml" --format csv
cells submittal round item place action code where line column submitted 'answer by'
has cells "MC-1043|1|1||REJECTED|CLP-01a|Main roof / clip-b-float (A5, detail 1)|"
has cells "|15|clip-b-float|contractor"
[ "$(wc -l <"$scratch/cells")" -eq 2 ] || fault "other than a head and one line"

# A clean package has the head alone; several submittals have it once.
run 0 review "$examples/clean.yaml" --format csv
cells submittal
[ "$(cat "$scratch/cells")" = submittal ] || fault "a clean package has lines"
run 1 review "$examples/clean.yaml" "$examples/wrong-clip.yaml" "$examples/bid.yaml" --format csv
cells submittal round item
[ "$(grep -c '^submittal' "$scratch/cells")" -eq 1 ] || fault "other than one head"
has cells "MC-1043|1|1"
grep -q '^[A-Z0-9-]*||$' "$scratch/cells" || fault "a bid has numbers"

# Each place has a line and a letter.
run 1 review "$examples/short-life.yaml" --format json
places=$(jq '[.items[].places[]] | length' "$scratch/out")
run 1 review "$examples/short-life.yaml" --format csv
cells item place
[ "$(wc -l <"$scratch/cells")" -eq "$((places + 1))" ] || fault "other than a line a place"

# What a spreadsheet would run.
sed 's/^submittal: .*/submittal: "=1+1"/; s/name: Main roof/name: "  @SUM(A1)"/; s/Main roof/"  @SUM(A1)"/' \
	"$examples/wrong-clip.yaml" >"$scratch/formula.yaml"
run 1 review formula.yaml --format csv
cells submittal where
has cells "'=1+1|'@SUM(A1)"
if grep -q '^=\||[=@+-]' "$scratch/cells"; then fault "a formula"; fi
: >"$scratch/empty.yaml"
run 2 review empty.yaml --format csv
cells code file line
has cells "FIL-04|empty.yaml|1"
finish

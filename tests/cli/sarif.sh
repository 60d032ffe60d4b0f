#!/bin/sh
# SPDX-License-Identifier: MIT
# The review as SARIF: one log whatever the number of submittals, a result a place, kind and level that go together, and no text of
# a file that becomes a link or an address. The schema is asked by `make check-formats`.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# is FILTER: the log answers true.
is() {
	jq -e "$1" "$scratch/out" >/dev/null 2>"$scratch/jq" || fault "not so: $1 $(head -n 1 "$scratch/jq")"
}

run 1 review "$examples/wrong-clip.yaml" --format sarif
is '.version == "2.1.0" and (.runs | length) == 1 and .runs[0].columnKind == "unicodeCodePoints"'
is '.runs[0].results | length == 1'
is '.runs[0].results[0] | .ruleId == "CLP-01a" and .kind == "fail" and .level == "error"'
is '.runs[0].results[0].locations[0].physicalLocation.region | [.startLine, .startColumn, .endLine, .endColumn, .snippet.text]
	== [226, 15, 226, 27, "clip-b-float"]'
is '.runs[0].results[0].locations[0].logicalLocations[0].fullyQualifiedName == "roof_areas[Main roof].clips[clip-b-float, running]"'
is '.runs[0].results[0].relatedLocations[0].physicalLocation.artifactLocation == {uri: "sample-2026/rules.csv", uriBaseId: "BUILTIN"}'
row=$(grep -n '^CLP-01a,' data/sample-2026/rules.csv | cut -d: -f1)
is ".runs[0].results[0].relatedLocations[0].physicalLocation.region.startLine == $row"
is '.runs[0].results[0].partialFingerprints["seamstamp/v1"] | test("^[0-9a-f]{16}$")'
is '.runs[0].results[0] | .suppressions == [] and (.message.text | contains("Remedy: use clip-a-float") and endswith("(1)."))'
is '[.runs[0].tool.driver.rules[] | select(.id == "CLP-01a")] | length == 1 and (.[0].help.text | contains("Why: "))'
is '.runs[0].tool.driver.rules | length == (map(.id) | unique | length)'
is '.runs[0].invocations[0].executionSuccessful'
print=$(jq -r '.runs[0].results[0].partialFingerprints["seamstamp/v1"]' "$scratch/out")

# Lines that move do not change a fingerprint; a clean package has an empty array.
{ echo "# one more line"; cat "$examples/wrong-clip.yaml"; } >"$scratch/moved.yaml"
run 1 review moved.yaml --format sarif
is ".runs[0].results[0].partialFingerprints[\"seamstamp/v1\"] == \"$print\""
is '.runs[0].results[0].locations[0].physicalLocation.region.startLine == 227'
run 0 review "$examples/clean.yaml" --format sarif
is '.runs[0].results == []'

# Several submittals, one of them clean and one broken, are one log; what could not be read is told twice.
mkdir "$scratch/jobs"
cp "$examples/clean.yaml" "$scratch/jobs/b.yaml"
cp "$examples/wrong-clip.yaml" "$scratch/jobs/c d#1.yaml"
cp "$examples/missing-papers.yaml" "$scratch/jobs/d.yaml"
printf 'form: 1\nproject: {name: Y\nstage: bid\n' >"$scratch/jobs/a.yaml"
run 2 review jobs --format sarif
is '(.runs | length) == 1 and (.runs[0].invocations[0].executionSuccessful | not)'
is '.runs[0].invocations[0].toolExecutionNotifications | length == 1 and .[0].locations[0].physicalLocation.artifactLocation.uri == "jobs/a.yaml"'
is '[.runs[0].results[].locations[0].physicalLocation.artifactLocation.uri] | unique == ["jobs/a.yaml", "jobs/c%20d%231.yaml", "jobs/d.yaml"]'
is '[.runs[0].results[] | select(.locations[0].physicalLocation.artifactLocation.uri == "jobs/c%20d%231.yaml") | .message.text]
	| any(contains("Rules that wait for it: "))'
cp "$scratch/out" "$scratch/before"
run 2 review jobs --format sarif --jobs 2
cmp -s "$scratch/out" "$scratch/before" || fault "two runs differ"

# What was met, what waits and what did not apply, on request only.
is '[.runs[0].results[].kind] | unique == ["fail"]'
run 2 review jobs --format sarif --passed
is '[.runs[0].results[].kind] | unique == ["fail", "notApplicable", "open", "pass"]'
is '[.runs[0].results[] | select((.kind == "fail") == (.level == "none"))] | length == 0'
is '[.runs[0].results[] | select(.kind == "pass" and .ruleId == "CLP-01a") | .locations[0].physicalLocation.artifactLocation.uri]
	| contains(["jobs/b.yaml"]) and (index("jobs/c%20d%231.yaml") | not)'
is '[.runs[0].results[].suppressions] | all(. == [])'
run 1 review "$examples/wrong-clip.yaml" --format sarif --format junit --output junit.xml
is '[.runs[0].results[].kind] | unique == ["fail"]'

# What the reviewer closed is suppressed with his words; a condition is milder.
printf 'for: MC-1043\nround: 1\nreceived: 2026-04-15\nown:\n  - {action: HOLD, where: Main roof, finding: "see [this](http://example.com/) first",\n' >"$scratch/review.yaml"
printf '      basis: a drawing, remedy: ask, answer_by: contractor}\n  - {action: HOLD, where: Main roof, finding: two, basis: a drawing, remedy: ask, answer_by: contractor}\n' >>"$scratch/review.yaml"
printf 'items:\n  - {number: 1.02, disposition: closed, reason: seen}\n  - {number: 1.03, disposition: closed as noted, reason: noted}\n' >>"$scratch/review.yaml"
run 1 review "$examples/wrong-clip.yaml" --format sarif --reviewer review.yaml
is '[.runs[0].results[] | select(.ruleId == "OWN") | .level] == ["error", "warning"]'
is '[.runs[0].results[] | select(.ruleId == "OWN") | .suppressions | length] == [1, 0]'
is '.runs[0].results[] | select(.ruleId == "OWN" and .level == "error").suppressions[0].justification | contains("seen")'
lacks out "[this](http"

# Rounds: what is new, what stands, what is gone; of what was closed before nothing is told any more.
edited() {
	sed "s/^round: .*/round: $1/; $2" "$examples/wrong-clip.yaml" >"$scratch/round.yaml"
}
mkdir "$scratch/kept"
edited 1 ''
run 1 review round.yaml --reports kept --format sarif
is '[.runs[0].results[] | [.ruleId, .baselineState]] == [["CLP-01a", "new"]]'
edited 2 's/^date: .*/date: 2026-05-01/'
run 1 review round.yaml --reports kept --format sarif
is '[.runs[0].results[] | select(.properties.item == "1.01" or .ruleId == "DOC-11a") | [.ruleId, .baselineState]]
	== [["CLP-01a", "unchanged"], ["DOC-11a", "new"]]'
is '[.runs[0].results[] | .baselineState] | all(. != null)'
edited 3 ''
run 1 review round.yaml --reports kept --format sarif --passed
is '[.runs[0].results[] | select(.ruleId == "DOC-11a" and .kind == "fail") | [.baselineState, .suppressions]] == [["absent", []]]'
is '[.runs[0].results[] | .baselineState] | all(. != null)'
edited 4 ''
run 1 review round.yaml --reports kept --format sarif
is '[.runs[0].results[] | select(.ruleId == "DOC-11a")] == [] and (.runs[0].results | length > 0)'
run 1 review "$examples/wrong-clip.yaml" --format sarif
is '[.runs[0].results[] | .baselineState] == [null]'
finish

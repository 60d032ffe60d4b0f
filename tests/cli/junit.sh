#!/bin/sh
# SPDX-License-Identifier: MIT
# The review as JUnit XML: one suite a submittal, its counts true, the gate decides what fails; rules met wherever asked pass.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# Prints of each suite its name and counts, then each case with what it came to.
python='import sys, xml.etree.ElementTree as E
tree = E.parse(sys.argv[1]).getroot()
assert tree.tag == "testsuites"
for suite in tree:
    cases = suite.findall("testcase")
    counts = [len(cases)] + [len(suite.findall("testcase/" + k)) for k in ("failure", "error")]
    assert counts == [int(suite.get(k)) for k in ("tests", "failures", "errors")], "the counts are not true"
    print(suite.get("name").rsplit("/")[-1], *counts)
    for case in cases:
        print("case", case.get("name"), *[" ".join((bad.tag, bad.get("type"), bad.get("message"))) for bad in case])
    print("output", suite.find("system-out").text)'
suites() {
	python3 -c "$python" "$scratch/out" >"$scratch/suites" 2>&1 || fault "cannot be read: $(tail -n 1 "$scratch/suites")"
}

run 1 review "$examples/wrong-clip.yaml" "$examples/clean.yaml" --format junit
suites
has suites "case CLP-01a: Main roof / clip-b-float (A5, detail 1) failure REJECTED"
has suites "not judged: ENG-11: "
grep -q '^wrong-clip.yaml [0-9]* 1 0$' "$scratch/suites" || fault "the wrong clip is other than one failure"
grep -q '^clean.yaml [1-9][0-9]* 0 0$' "$scratch/suites" || fault "the clean package has no passing case, or another"
[ "$(grep -c '^case CLP-01a$' "$scratch/suites")" -eq 1 ] || fault "CLP-01a passes other than in the clean package alone"

# What is missing is an error; what is milder than the gate passes and is told.
run 1 review "$examples/missing-papers.yaml" --format junit
suites
has suites " error NOT REVIEWED"
lacks suites " failure NOT REVIEWED"
run 0 review "$examples/wrong-clip.yaml" --format junit --gate not-eligible
suites
has suites "case CLP-01a: Main roof / clip-b-float (A5, detail 1)"
has suites "wrong-clip.yaml:226:15: REJECTED: clip-b-float is not the tested clip-a-float of tested-210 and report-33 [CLP-01a]"
lacks suites " failure "

# A file that cannot be judged is an error and does not stop the rest; no characters that XML forbids.
printf 'form: 1\nsubmittal: "a\\x1b\\uFFFE<&]]>"\nproject: {name: Y\n' >"$scratch/broken.yaml"
run 2 review broken.yaml "$examples/clean.yaml" --format junit
suites
has suites "case the file as a whole error NOT REVIEWED"
grep -q '^clean.yaml [1-9][0-9]* 0 0$' "$scratch/suites" || fault "the broken file stops the next"
printf 'form: 1\nsubmittal: "a\\x1b\\uFFFE<&]]>"\nnonsense<&\047"]]>: 1\n' >"$scratch/odd.yaml"
run 1 review odd.yaml --format junit
suites
has suites "nonsense<&'\"]]>"
finish

#!/bin/sh
# SPDX-License-Identifier: MIT
# docs/ci.md as it stands: each command in it is cut out and run, in a folder of its own with its history, and ends as it says.
# shellcheck source=tests/cli/common.sh
. tests/cli/common.sh

# block-1, block-2, ...: what stands between the fences; its first line is the comment before it.
awk -v out="$scratch" '
	/^<!-- / { mark = $0; next }
	/^```$/ { inside = 0; next }
	/^```/ && mark != "" { inside = 1; file = out "/block-" ++blocks; print mark > file; mark = ""; next }
	/^```/ { print FILENAME ":" FNR ": a block without its mark" > "/dev/stderr" }
	inside { print > file }' docs/ci.md
mkdir "$scratch/bin" "$scratch/submittals"
ln -s "$program" "$scratch/bin/seamstamp"
PATH=$scratch/bin:$PATH
GIT_CONFIG_GLOBAL=/dev/null
GIT_AUTHOR_NAME=sample GIT_AUTHOR_EMAIL=sample@example.com GIT_COMMITTER_NAME=sample GIT_COMMITTER_EMAIL=sample@example.com
export PATH GIT_CONFIG_GLOBAL GIT_AUTHOR_NAME GIT_AUTHOR_EMAIL GIT_COMMITTER_NAME GIT_COMMITTER_EMAIL

cd "$scratch" || exit 2
cp "$examples/clean.yaml" submittals/1.yaml
git init -q .
git add submittals
git commit -qm first || fault "no history"
cp "$examples/wrong-clip.yaml" submittals/2.yaml
git add submittals
git commit -qm second || fault "no history"

shells=0
for block in block-*; do
	last="$(head -n 1 "$block") of docs/ci.md"
	tail -n +2 "$block" >commands
	case $(head -n 1 "$block") in
	"<!-- run: status "*) shells=$((shells + 1)) ;;
	"<!-- steps: "*)
		python3 -c 'import sys, yaml
print("\n".join(step["run"] for step in yaml.safe_load(open("commands"))["steps"] if "run" in step))' >steps && mv steps commands
		;;
	"<!-- hook -->")
		cp commands .git/hooks/pre-commit && chmod +x .git/hooks/pre-commit
		continue
		;;
	*) fault "a mark that is not known" ;;
	esac
	wanted=$(head -n 1 "$block" | tr -cd '0-9')
	rm -f reports/review.sarif reports/review.xml
	sh commands >out 2>err
	status=$?
	[ "$status" -eq "$wanted" ] || fault "status $status, not $wanted: $(cat err)"
	[ -s out ] || fault "nothing was printed"
	if grep -q 'review.sarif' commands; then
		jq -e '.runs[0].results | length == 1' reports/review.sarif >/dev/null || fault "no SARIF of the folder"
		grep -q '</testsuites>' reports/review.xml || fault "no JUnit of the folder"
	fi
	if grep -q 'review.sarif\|changed.txt' commands; then has out 'submittals/2.yaml:226:15: REJECTED'; fi
	if grep -q '@tsv' commands && grep -q order_line commands; then has out "MC-1043	Do not order"; fi
done
[ "$shells" -eq 4 ] || fault "other than four commands were run"

# The hook judges what is staged alone.
last="the hook of docs/ci.md"
sed 's/MC-1043/MC-2043/' "$examples/wrong-clip.yaml" >submittals/3.yaml
git add submittals
if git commit -qm third >out 2>err; then fault "what is staged passes"; fi
grep -q 'submittals/3.yaml:226:15: REJECTED' out err || fault "the hook does not say why"
sed 's/MC-1042/MC-2043/' "$examples/clean.yaml" >submittals/3.yaml
if git commit -qm third >out 2>err; then fault "the hook looks at the folder"; fi
git add submittals
git commit -qm third >out 2>err || fault "a clean package is held back: $(cat out err)"
echo text >note.txt
git add note.txt
git commit -qm fourth >out 2>err || fault "a commit without a submittal is held back"
cd / || exit 2
finish

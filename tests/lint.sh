#!/bin/sh
# SPDX-License-Identifier: MIT
# What the compiler does not ask: who includes and calls whom, no state, no banned calls, headers that stand alone, a tidy tree.
# Prints every fault; ends with status 1 if there was one. BUILD names the folder of the objects, CC the compiler.
set -u
LC_ALL=C
export LC_ALL
BUILD=${BUILD:-build}
CC=${CC:-gcc}
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
: >"$scratch/faults"

# Takes lines of faults on standard input, under the name of their check.
faults() {
	sed "s|^|lint: $1: |" | tee -a "$scratch/faults"
}

tracked() {
	git ls-files -- "$@"
}

# Each folder of src/ includes headers of include/ and its own; tests may include more.
check_includes() {
	tracked 'src/*.c' 'src/*.h' | while read -r file; do
		folder=${file%/*}
		sed -n 's/^[ \t]*#[ \t]*include[ \t]*"\(.*\)".*/\1/p' "$file" | while read -r name; do
			[ -f "include/$name" ] || { [ -f "$folder/$name" ] && [ "${name#*/}" = "$name" ]; } || echo "$file includes $name"
		done
	done | faults includes
}

# A prototype in include/ would let anyone call anyone: what an object needs tells who calls whom. The few questions below are
# asked of the tree of cases and of the table of facts, by every stage.
check_calls() {
	find "$BUILD" -path "$BUILD/*/*" -name '*.o' | while read -r object; do
		source=src/${object#"$BUILD"/}
		[ -f "${source%.o}.c" ] || continue
		folder=${source#src/}
		folder=${folder%%/*}
		nm -P "$object" | awk -v folder="$folder" '{ print folder, $1, $2 }'
	done >"$scratch/symbols"
	[ -s "$scratch/symbols" ] || echo "no objects in $BUILD: build first" | faults calls
	awk '
	BEGIN {
		split("base: formula: read:base,formula resolve:base,formula compute:base,formula judge:base,formula,compute " \
			"advise:base,formula,resolve,compute,judge report:base,formula " \
			"command:base,formula,read,resolve,compute,judge,advise,report", row, " ")
		for (i in row) {
			split(row[i], part, ":")
			may[part[1]] = "," part[2] "," part[1] ","
		}
		split("case_outward case_path fact_spec fact_find", free, " ")
		for (i in free)
			asked[free[i]] = 1
	}
	$3 ~ /^[TRDBVW]$/ { home[$2] = $1 }
	$3 == "U" { needs[$1 " " $2] = 1 }
	END {
		for (pair in needs) {
			split(pair, p, " ")
			to = home[p[2]]
			if (to != "" && !(p[2] in asked) && index(may[p[1]], "," to ",") == 0)
				print p[1] " calls " p[2] " of " to
		}
	}' "$scratch/symbols" | sort | faults calls
}

# Constants end up in .rodata or .data.rel.ro; whatever lies in .data, .bss or thread storage can change.
check_state() {
	find "$BUILD" -path "$BUILD/*/*" -name '*.o' | while read -r object; do
		source=src/${object#"$BUILD"/}
		[ -f "${source%.o}.c" ] || continue
		nm -f sysv "$object" | awk -F'|' -v file="${source%.o}.c" '
			$7 ~ /^(\.data|\.bss|\.tdata|\.tbss)/ && $7 !~ /^\.data\.rel\.ro/ || $7 ~ /COM/ { print file ": " $1 " can change" }'
	done | sed 's/  *can change/ can change/' | faults state
}

check_banned() {
	{
		tracked 'src/*.c' 'src/*.h' 'include/*.h' |
			xargs grep -nE '\<(strcpy|strcat|sprintf|vsprintf|strtok|strtok_r|atof|atoi|atol|gets|alloca|system|popen)[ ]*\('
		tracked 'src/*.c' | grep -v '^src/base/arena\.c$' | xargs grep -nE '\<(malloc|calloc|realloc|free|strdup|strndup|asprintf)[ ]*\('
		tracked 'src/*.c' | grep -v '^src/base/fail\.c$' | xargs grep -nE '\<(_exit|longjmp|setjmp)[ ]*\('
		tracked 'src/*.c' | grep -vE '^src/(command/|main\.c$)' | xargs grep -nE '\<(printf|fprintf|puts|fputs|putchar|exit)[ ]*\('
	} | faults banned
}

# shellcheck disable=SC2086 # CC may be a command with its options
check_headers() {
	tracked 'include/*.h' 'src/*.h' | while read -r header; do
		printf '#include "%s"\ntypedef int nothing;\n' "$header" |
			$CC -std=c11 -D_GNU_SOURCE -I. -Iinclude -Wall -Wextra -Wpedantic -Werror -fsyntax-only -x c - 2>"$scratch/errors" ||
			echo "$header does not compile alone: $(head -n 1 "$scratch/errors")"
	done | faults headers
}

check_top() {
	git ls-files | sed 's|/.*||' | sort -u | grep -v '^\.' >"$scratch/top"
	printf '%s\n' DEVELOPERS.md LICENSE Makefile README.md data docs examples include src tests >"$scratch/wanted"
	comm -23 "$scratch/top" "$scratch/wanted" | sed 's/$/ does not belong to the top folder/' | faults top
	comm -13 "$scratch/top" "$scratch/wanted" | sed 's/$/ is missing in the top folder/' | faults top
}

# Braces alone in the first column open and close functions.
check_functions() {
	tracked 'src/*.c' | xargs awk '
		/^\{$/ { start = FNR }
		/^\}$/ && start { if (FNR - start - 1 > 60) print FNR - start - 1, FILENAME ":" start; start = 0 }' >"$scratch/long"
	sort -rn "$scratch/long" | awk '$1 <= 80 { print "lint: note: " $2 " has a function of " $1 " lines" }'
	awk '$1 > 80 { print $2 " has a function of " $1 " lines" }' "$scratch/long" | faults functions
}

check_lines() {
	# shellcheck disable=SC2016 # $0 is awk's
	tracked 'src/*.c' 'src/*.h' 'include/*.h' | xargs awk '
		{ gsub(/[\200-\277]/, "") }
		length($0) > 130 && !/^#define/ { print FILENAME ":" FNR ": " length($0) " characters" }' | faults lines
	tracked '*.c' '*.h' '*.def' '*.sh' | while read -r file; do
		head -n 2 "$file" | grep -q 'SPDX-License-Identifier: MIT' || echo "$file does not say its license"
	done | faults license
}

# Inputs of tests are allowed what the program must stand.
check_characters() {
	tracked | grep -vE '^tests/(cases|fuzz)/' | tr '\n' '\0' |
		xargs -0 grep -nP '[\x00-\x08\x0b-\x1f\x7f]|\xc2[\x80-\x9f]|\xe2\x80[\x8b-\x8f\xa8-\xae]|\xe2\x81[\xa0-\xaf]|\xef\xbb\xbf' |
		cat -v | faults characters
	tracked | grep -vE '^tests/(cases|fuzz)/' | tr '\n' '\0' |
		xargs -0 grep -niE '/[w]ork/|\.\./[s]hared|[c]laude|[a]nthropic|[o]penai|[c]hatgpt|ai [a]ssistant|language [m]odel' | faults words
}

# Every file of these folders is built in, under its own name, and nothing else is.
check_builtin() {
	tracked 'data/*/*' examples/clean.yaml 'tests/rules/*.csv' | sort >"$scratch/files"
	sed -n 's/^BUILTIN([A-Za-z0-9_]*, "\([^"]*\)", "\([^"]*\)")$/\1 \2/p' src/base/builtin.def >"$scratch/rows"
	cut -d' ' -f2 "$scratch/rows" | sort >"$scratch/built"
	comm -23 "$scratch/files" "$scratch/built" | sed 's/$/ is not in builtin.def/' | faults builtin
	comm -13 "$scratch/files" "$scratch/built" | sed 's/$/ of builtin.def is not there/' | faults builtin
	while read -r name path; do
		case $path in
		"data/$name" | "tests/$name") ;;
		"$name") ;;
		*) echo "$path is built in as $name" ;;
		esac
	done <"$scratch/rows" | faults builtin
}

check_scripts() {
	if command -v shellcheck >/dev/null; then
		# shellcheck disable=SC2046 # names of scripts have no blanks
		shellcheck -f gcc $(tracked '*.sh') $([ -f .ci/run ] && echo .ci/run) | faults scripts
	else
		echo "lint: note: shellcheck is not installed; scripts were not checked"
	fi
}

for check in includes calls state banned headers top functions lines characters builtin scripts; do
	"check_$check"
done
count=$(wc -l <"$scratch/faults")
[ "$count" -eq 0 ] || { echo "lint: $count faults"; exit 1; }
echo "lint: nothing found"

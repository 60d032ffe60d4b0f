#!/bin/sh
# SPDX-License-Identifier: MIT
# What programs that nobody here wrote say: YAML values by another reader, working days by another calendar, the oracle's own
# examples, and 200 whole submittals that the oracle writes and answers.
set -u
python3=/usr/bin/python3
[ -x "$python3" ] || python3=python3
if [ -x "$BUILD/tests/read_yaml" ]; then
	"$python3" tests/published/yaml_against.py "$BUILD/tests/read_yaml" examples/*.yaml tests/cases/read/*/submittal.yaml || exit 1
fi
if [ -x "$BUILD/tests/base_date" ]; then
	"$python3" tests/published/workdays_against.py "$BUILD/tests/base_date" || exit 1
fi
said=$("$python3" tests/oracle/selfcheck.py) || { echo "$said"; exit 1; }
echo "$said" | tail -n 1
"$python3" tests/oracle/submittals.py "$BUILD/seamstamp" --packages 200 --seed 7 || exit 1

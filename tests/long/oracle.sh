#!/bin/sh
# SPDX-License-Identifier: MIT
# The second opinion once more with other seeds, the zone areas in exact fractions for a part of the roofs.
set -u
python3=/usr/bin/python3
[ -x "$python3" ] || python3=python3
ORACLE=$(mktemp -d) || exit 2
export ORACLE
trap 'rm -rf "$ORACLE"' EXIT

for seed in 8 9 10; do
	"$python3" tests/oracle/wind.py --rows 60000 --seed "$seed" >"$ORACLE/wind.csv" || exit 1
	"$python3" tests/oracle/plan.py --rows 80000 --seed "$seed" --quick >"$ORACLE/plan.csv" || exit 1
	"$python3" tests/oracle/fastening.py --rows 20000 --seed "$seed" >"$ORACLE/fastening.csv" || exit 1
	"$BUILD/tests/oracle_wind" || exit 1
	"$BUILD/tests/oracle_fastening" || exit 1
done
"$python3" tests/oracle/plan.py --rows 20000 --seed 11 >"$ORACLE/plan.csv" || exit 1
"$BUILD/tests/oracle_wind" || exit 1
"$python3" tests/oracle/submittals.py "$BUILD/seamstamp" --packages 1000 --seed 8

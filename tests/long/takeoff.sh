#!/bin/sh
# SPDX-License-Identifier: MIT
# Roofs drawn and counted piece by piece, against the takeoff.
set -u
python3=/usr/bin/python3
[ -x "$python3" ] || python3=python3
"$python3" tests/oracle/takeoff.py "$BUILD/seamstamp" --plans 500 --seed 8

#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The sheets followed by hand against the program.

worked.py PROGRAM PAGE SUBMITTAL [OPTION...] : each row `| record | fact | working | result |` of the page is worked through again
(numbers in it are rounded to six digits), and its result must be what `calcs` gives, to the digits shown.
"""
import json
import math
import re
import subprocess
import sys

FUNCTIONS = {"min": min, "max": max, "exp": math.exp, "atan": math.atan}
ROW = re.compile(r"\| (\w+) (.+?) \| `(\w+)` \| `([^`]+)` \| (-?[\d.]+)( [^|]+)? \|")
program, page, *rest = sys.argv[1:]
done = subprocess.run([program, "calcs", *rest, "--format", "json"], capture_output=True, text=True, check=True)
facts = {}
for fact in json.loads(done.stdout)["facts"]:
    facts.setdefault((fact["record"], fact["name"], fact["fact"]), fact)
faults, rows = [], 0
for line in open(page, encoding="utf-8"):
    if not line.startswith("| ") or line.startswith("| record "):
        continue
    match = ROW.fullmatch(line.strip())
    if not match:
        faults.append(f"no row: {line.strip()}")
        continue
    record, name, what, working, shown, unit = match.groups()
    rows += 1
    digits = len(shown.split(".")[1]) if "." in shown else 0
    half = 0.5 * 10 ** -digits * (1 + 1e-9)
    if not re.fullmatch(r"[\d\s.+\-*/^(),]*", re.sub(r"[a-z]+(?=\()", lambda m: "" if m[0] in FUNCTIONS else "?", working)):
        faults.append(f"{name} {what}: {working} cannot be worked through")
        continue
    value = eval(working.replace("^", "**"), {"__builtins__": {}}, FUNCTIONS)
    if abs(value - float(shown)) > max(half, 2e-5 * abs(value)):
        faults.append(f"{name} {what}: {working} is {value}, not {shown}")
    fact = facts.get((record, name, what))
    if fact is None or not isinstance(fact["value"], (int, float)):
        faults.append(f"{name} {what}: the program gives no such number")
    elif abs(fact["value"] - float(shown)) > half:
        faults.append(f"{name} {what}: {shown} by hand, the program gives {fact['value']}")
    elif (unit or "").strip() != fact["unit"].strip(":"):
        faults.append(f"{name} {what}: {unit} by hand, the program gives {fact['unit']}")
for fault in faults:
    print(fault)
print(f"{page}: {rows} lines followed by hand, {len(faults)} faults")
sys.exit(1 if faults or rows < 40 else 0)

#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""An outside calculator for the sheet of calculations: works every formula through again.

formula_lines.py PROGRAM SUBMITTAL... : of each, the JSON of `calcs` must agree to 1e-12 when the numbers of `uses` are put into
`formula`, the text must show the same numbers to the digits it prints, and every use must lead to a field, a cell, or another fact.
"""
import json
import math
import os
import re
import subprocess
import sys

FUNCTIONS = {"min": min, "max": max, "exp": math.exp, "log": math.log, "log10": math.log10, "atan": math.atan, "sqrt": math.sqrt}
NAME = re.compile(r"\{([^{}]*)\}")
MADE = {"zone", "contact", "comparison", "role", "paper"}  # made by the program from the records of the file
TABLES = {f for d in ("data/reference", "data/sample-2026", "data/sample-2026/register") if os.path.isdir(d) for f in os.listdir(d)}
faults = []
worked = shown = leaves = 0


def fault(where, what):
    faults.append(f"{where}: {what}")


def is_calculator(formula):
    rest = NAME.sub("1", formula)
    words = re.findall(r"[A-Za-z_]\w*", re.sub(r"\d+\.?\d*(e[-+]?\d+)?", "1", rest))
    return all(w in FUNCTIONS for w in words) and re.fullmatch(r"[\w\s.+\-*/^(),]*", rest) is not None


def same(a, b, tolerance):
    return a == b or abs(a - b) <= tolerance * max(abs(a), abs(b), 1e-300) or abs(a - b) <= 1e-12


def numbers_of(fact):
    found = {}
    for use in fact["uses"]:
        if isinstance(use["value"], (int, float)) and not isinstance(use["value"], bool):
            found.setdefault(use["name"], use["value"])
    return found


def work(where, fact):
    global worked
    numbers = numbers_of(fact)
    missing = [n for n in NAME.findall(fact["formula"]) if n not in numbers]
    if missing:
        return fault(where, f"{fact['formula']}: nothing among its uses is called {missing}")
    line = NAME.sub(lambda m: f"({numbers[m[1]]!r})", fact["formula"]).replace("^", "**")
    value = eval(line, {"__builtins__": {}}, FUNCTIONS)
    if not same(value, fact["value"], 1e-12):
        fault(where, f"{fact['formula']} is {value!r}, not {fact['value']!r}")
    worked += 1
    return None


def check_use(where, fact, use, known):
    global leaves
    if "fact" in use:
        others = known.get((use["record"], use["record_name"], use["fact"]), [])
        if not any(use["value"] == other["value"] and use["state"] == other["state"] for other in others):
            fault(where, f"uses {use['fact']} of {use['record_name']} = {use['value']}, which is not on the sheet")
        return
    leaves += 1
    if "constant" in use:
        if use["table"] not in TABLES:
            fault(where, f"uses a constant of {use['table']}, which is no table")
        if use["known_by"] not in ("read", "second-hand", "memory", "common practice"):
            fault(where, f"does not say how well {use['constant']} is known")
    elif "field" in use:
        if use["line"] is None and use["record"] not in MADE and use["said"] not in ("assumed", "not stated", "none") and use["value"] is not None:
            fault(where, f"uses the field {use['field']} of {use['record_name']} without a place")
    else:
        fault(where, "uses what is neither fact, field nor constant")


def check_levels(where, fact):
    levels = {use["level"] for use in fact["uses"] if use.get("level")}
    if "strength level" in levels and any(level.startswith("allowable") for level in levels):
        fault(where, "puts strength level beside allowable level")


def check_fact(where, fact, known):
    for use in fact["uses"]:
        check_use(where, fact, use, known)
        if "fact" in use:
            use["level"] = known[use["record"], use["record_name"], use["fact"]][0]["level"]
    check_levels(where, fact)
    if (fact["value"] is None) == (fact["state"] == "known"):
        fault(where, "value and state do not go together")
    if fact["state"] == "waiting" and not fact["waits_for"]:
        fault(where, "waits for nothing")
    if fact["state"] in ("refused", "not applicable") and not fact["reason"]:
        fault(where, "gives no reason")
    expression = fact["unit"] != "yes" and is_calculator(fact["formula"])
    if fact["state"] == "known" and expression != fact["expression"]:
        fault(where, f"is {'' if expression else 'not '}calculator notation: {fact['formula']}")
    if fact["state"] == "known" and fact["expression"]:
        work(where, fact)


# ---- the text ----

def blocks_of(text):
    """Each fact of the text: its title and the paragraphs that begin with =."""
    blocks, paragraph, titled = [], None, False
    for line in text.split("\nTHINNEST MARGINS\n")[0].splitlines():
        if re.match(r"  Not applicable here$", line) or re.match(r"\S", line):
            paragraph, titled = None, False
        elif re.match(r"  \S", line):
            blocks.append([line.strip(), []])
            paragraph, titled = None, True
        elif re.match(r" {16}= ", line) and blocks:
            blocks[-1][1].append(line.strip()[2:])
            paragraph = blocks[-1][1]
        elif re.match(r" {16}\S", line) and paragraph:
            paragraph[-1] += " " + line.strip()
        elif re.match(r"    \S", line):
            paragraph = None
            titled = titled and not re.match(r"    (Formula|Looked up|Waits for|Refused|Note|Borrowed|Basis|Figures) ", line)
            if titled:
                blocks[-1][0] += " " + line.strip()
        elif re.match(r" {6}\S", line):
            paragraph = None
    return [b for b in blocks if not b[0].startswith(("Submittal ", "File ", "Criteria ", "Facts ", "Uplift is positive"))]


def is_rounded(printed, value):
    digits = len(printed.split(".")[1]) if "." in printed else 0
    return abs(float(printed) - value) <= 0.5 * 10 ** -digits * (1 + 1e-6)


def check_text(where, fact, block):
    global shown
    if block[0] != fact["title"]:
        return fault(where, f"the text has \"{block[0]}\" in its place")
    if fact["state"] != "known":
        return None if not block[1] else fault(where, "the text prints a value that is not known")
    if isinstance(fact["value"], bool):
        return None if block[1] == ["yes" if fact["value"] else "no"] else fault(where, f"the text says {block[1]}")
    printed = re.match(r"-?[\d.]+(?:e[-+]?\d+)?", block[1][-1]) if block[1] else None
    if not printed or not is_rounded(printed[0], fact["value"]):
        return fault(where, f"the text prints {block[1]} for {fact['value']}")
    if not fact["expression"]:
        return None
    numbers = numbers_of(fact)
    names = NAME.findall(fact["formula"])
    pattern = r"\(?(-?[\d.]+)\)?".join(re.escape(t) for t in NAME.split(fact["formula"])[::2])
    match = re.fullmatch(pattern, block[1][0])
    if not match:
        return fault(where, f"the text prints {block[1][0]} for {fact['formula']}")
    for name, text in zip(names, match.groups()):
        if not is_rounded(text, numbers[name]):
            fault(where, f"the text prints {text} for {name} = {numbers[name]}")
    shown += 1
    return None


def run(program, path, form):
    done = subprocess.run([program, "calcs", path, "--format", form], capture_output=True, text=True, check=False)
    return done.stdout if done.returncode == 0 else None


def check_submittal(program, path):
    tree = run(program, path, "json")
    if tree is None:
        return False
    facts = json.loads(tree)["facts"]
    known = {}
    for fact in facts:
        known.setdefault((fact["record"], fact["name"], fact["fact"]), []).append(fact)
    for fact in facts:
        check_fact(f"{os.path.basename(path)}: {fact['name']}: {fact['fact']}", fact, known)
    printed = [f for f in facts if f["state"] != "not applicable"]
    blocks = blocks_of(run(program, path, "text"))
    if len(blocks) != len(printed):
        fault(path, f"the text has {len(blocks)} facts, JSON {len(printed)}")
    for fact, block in zip(printed, blocks):
        check_text(f"{os.path.basename(path)}: text: {fact['name']}: {fact['fact']}", fact, block)
    return True


done = sum(check_submittal(sys.argv[1], path) for path in sys.argv[2:])
for line in faults[:40]:
    print(line)
print(f"{done} submittals: {worked} formulas worked through, {shown} of them as printed, {leaves} figures and fields traced,"
      f" {len(faults)} faults")
sys.exit(1 if faults or done == 0 or worked == 0 or shown == 0 else 0)

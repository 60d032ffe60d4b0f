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

def groups_of(text):
    """Each group of the text: how many records, and its facts: the title, and the rows as (formula, text)."""
    groups, facts, rows, part = [], None, None, ""
    for line in text.split("\nTHINNEST MARGINS\n")[0].splitlines()[1:]:
        if re.match(r"\S.*: ", line):
            many = re.match(r"([\d,]+) records, ", line)
            facts, rows, part = [], None, "heading"
            groups.append((int(many[1].replace(",", "")) if many else 1, facts, []))
        elif not groups:
            continue
        elif re.match(r"  (Not applicable here|Values used)$", line):
            part = line.strip()
        elif re.match(r"  \S", line):
            rows, part = [], "title"
            facts.append([line.strip(), rows])
        elif part == "Values used" and re.match(r" {6}\S", line):
            groups[-1][2].append(line.strip())
        elif part in ("Not applicable here", "Values used", "heading", ""):
            continue
        elif re.match(r" {6}\S", line):
            rows.append(line.strip())
            part = "row"
        elif part == "row" and re.match(r" {10}\S", line):
            rows[-1] += " " + line.strip()
        elif part == "title" and re.match(r" {4}\S", line) and not re.match(r" {4}(Formula|Looked up|Basis|From) ", line):
            facts[-1][0] += " " + line.strip()
        elif re.match(r" {4}\S", line):
            part = "label"
    return groups


def records_of(facts):
    records = []
    for fact in facts:
        last = records[-1] if records else []
        same = last and (last[0]["record"], last[0]["name"]) == (fact["record"], fact["name"])
        if same and all(other["fact"] != fact["fact"] for other in last):
            last.append(fact)
        else:
            records.append([fact])
    return records


def is_rounded(printed, value):
    digits = len(printed.split(".")[1]) if "." in printed else 0
    return abs(float(printed) - value) <= 0.5 * 10 ** -digits * (1 + 1e-6)


def names_in(fact):
    """The names by which a row may call its record: whole, or without the roof area's."""
    parts = fact["name"].split(" / ")
    return "(?:" + "|".join(re.escape(" / ".join(parts[i:])) for i in range(len(parts))) + r")(?: \([^=()]*\))?"


def rows_of(where, told, rows, alone):
    """What the text says of each fact: rows of several records are handed to each."""
    said, at = [], 0
    for row in rows:
        if alone:
            said.append(row)
            at += 1
            continue
        label, taken = "", 0
        for fact in told[at:]:
            label += (", " if label else "") + names_in(fact)
            taken += 1
            match = re.fullmatch(label + r" +((?:= |waits for |refused: ).*)", row)
            if match:
                break
        else:
            fault(where, f"the row {row} belongs to no record")
            return said
        said += [match[1]] * taken
        at += taken
    if len(said) != len(told):
        fault(where, f"the text has {len(said)} rows for {len(told)} records")
    return said


def check_said(where, fact, text):
    global shown
    if fact["state"] != "known":
        return None if not text.startswith("= ") else fault(where, "the text prints a value that is not known")
    parts = text.split("; note: ")[0].split("; borrowed from ")[0][2:].split(" = ")
    if isinstance(fact["value"], bool):
        return None if parts == ["yes" if fact["value"] else "no"] else fault(where, f"the text says {parts}")
    printed = re.match(r"-?[\d.]+(?:e[-+]?\d+)?", parts[-1])
    if not printed or not is_rounded(printed[0], fact["value"]):
        return fault(where, f"the text prints {parts} for {fact['value']}")
    if not fact["expression"]:
        return None
    if re.fullmatch(r"\{[^{}]*\}", fact["formula"]):
        shown += 1
        return None
    numbers = numbers_of(fact)
    names = NAME.findall(fact["formula"])
    pattern = r"\(?(-?[\d.]+)\)?".join(re.escape(t) for t in NAME.split(fact["formula"])[::2])
    match = re.fullmatch(pattern, parts[0])
    if not match:
        return fault(where, f"the text prints {parts[0]} for {fact['formula']}")
    for name, number in zip(names, match.groups()):
        if not is_rounded(number, numbers[name]):
            fault(where, f"the text prints {number} for {name} = {numbers[name]}")
    shown += 1
    return None


def check_values(where, records, values):
    """Whatever a formula names that is no fact of the sheet stands under Values used."""
    text = " ".join(values)
    for fact in (f for r in records for f in r if f["state"] == "known" and f["expression"]):
        for use in fact["uses"]:
            words = use["name"].replace("_", " ")
            if "fact" not in use and "{" + use["name"] + "}" in fact["formula"] and f"{words} = " not in text:
                fault(where, f"{words} of {fact['title']} does not stand under Values used")


def check_group(path, count, told, records, values):
    where = f"{os.path.basename(path)}: text"
    if len(records) != count or any(len(r) != len(records[0]) for r in records):
        return fault(where, f"a group of {count} is no group")
    check_values(where, records, values)
    blocks = iter(told)
    for facts in zip(*records):
        here = [f for f in facts if f["state"] != "not applicable"]
        if not here:
            continue
        block = next(blocks, None)
        title = f"{here[0]['title']} ({here[0]['fact'].replace('_', ' ')})"
        if block is None or block[0] != title:
            return fault(where, f"the text has {block} in the place of {title}")
        for fact, text in zip(here, rows_of(f"{where}: {title}", here, block[1], count == 1)):
            check_said(f"{where}: {fact['name']}: {fact['fact']}", fact, text)
    return fault(where, "the text has more facts than JSON") if next(blocks, None) else None


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
    records, at = records_of(facts), 0
    for count, told, values in groups_of(run(program, path, "text")):
        check_group(path, count, told, records[at:at + count], values)
        at += count
    if at != len(records):
        fault(path, f"the text has {at} records, JSON {len(records)}")
    return True


done = sum(check_submittal(sys.argv[1], path) for path in sys.argv[2:])
for line in faults[:40]:
    print(line)
print(f"{done} submittals: {worked} formulas worked through, {shown} of them as printed, {leaves} figures and fields traced,"
      f" {len(faults)} faults")
sys.exit(1 if faults or done == 0 or worked == 0 or shown == 0 else 0)

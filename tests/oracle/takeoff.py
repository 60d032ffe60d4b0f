#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Second opinion on quantities: random roofs are drawn as a grid of zones by plan.py, panels and clips are set on it one by one,
and `seamstamp takeoff` must give the same numbers. takeoff.py PROGRAM --plans 500 --seed 7"""
import argparse
import bisect
import concurrent.futures
import json
import math
import os
import random
import subprocess
import sys
import tempfile
from fractions import Fraction as F

import yaml

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
from plan import layout  # noqa: E402

SAME = 1e-9


class Plain(yaml.SafeLoader):
    """Every scalar as it is typed."""


Plain.yaml_implicit_resolvers = {}


def up(value):
    """Rounded up to whole pieces; what is whole but for the last digits stays."""
    return math.ceil(value - SAME * max(1, abs(value)))


# ---------------------------------------------------------------- a random roof

PANELS = {"panel-a-12": F(12), "panel-a-16": F(16), "panel-a-18": F(18)}
UNDERLAYMENTS = {"underlay-high-temp": (F(36), F(667, 10), F(3), F(6)), "underlay-synthetic": (F(48), F(250), F(4), F(6)),
                 "underlay-felt-15": (F(36), F(1333, 10), F(4), F(6))}
SPACINGS = [F(6), F(8), F(12), F(16), F(18), F(24), F(30), F(60)]
FOOT = F(3048, 10000)  # m


def length_typed(dice, feet):
    """A length as it is typed, and what it then is in feet."""
    if dice.random() < 0.25:
        meters = F(round(float(feet * FOOT) * 100), 100)
        return f"{float(meters):g} m", meters / FOOT
    quarter = F(round(feet * 4), 4)
    return f"{float(quarter):g} ft", quarter


def spacing_typed(in_mm, inches):
    if in_mm:
        mm = round(inches * F(254, 10))
        return f"{mm} mm", F(mm) / F(254, 10)
    return f"{float(inches):g} in", inches


def random_roof(dice):
    roof = {"edition": dice.choice(["ASCE 7-10", "ASCE 7-16", "ASCE 7-22"]),
            "shape": dice.choice(["gable", "gable", "gable", "monoslope"])}
    low = roof["shape"] == "monoslope"
    roof["slope"] = dice.choice([F(1, 4), F(1, 2), F(1), F(1)] + ([] if low else [F(2), F(3), F(5), F(5), F(7)]))
    roof["panel"], roof["width_in"] = dice.choice(sorted(PANELS.items()))
    kind = dice.random()
    if kind < 0.35:  # a whole number of panels
        long = roof["width_in"] / 12 * dice.randrange(30, 240)
    else:
        long = F(dice.randrange(4000, 32000), 100)
    roof["length_typed"], roof["length"] = (f"{float(long):.12g} ft", long) if kind < 0.35 and long * 4 == int(long * 4) \
        else length_typed(dice, long)
    whole = dice.random() < 0.5
    across = F(dice.choice([24, 36, 48, 60, 65, 72, 96, 120, 130])) if whole else F(dice.randrange(2000, 16000), 100)
    roof["across_typed"], roof["across"] = length_typed(dice, across)
    roof["height"] = F(dice.randrange(10, 59))
    roof["overhang"] = F(dice.choice([0, 0, 1, 2, 3]), 2)
    roof["per_clip"], roof["underlayment"] = dice.choice([1, 2, 2, 3]), dice.choice(sorted(UNDERLAYMENTS))
    roof["end_laps"] = dice.choice([0, 0, 0, 1, 2])
    return roof


# ---------------------------------------------------------------- the drawing

def breaks(zones, axis, end):
    """Where a border could stand across one axis."""
    found = {F(0), end}
    for _, regions in zones:
        for plane in (p for region in regions or [] for p in region):
            a, b, c = plane
            if (a, b)[axis] != 0:
                assert (a, b)[1 - axis] == 0, "only borders square to the eave"
                found.add(F(c) / (a, b)[axis])
    return sorted(f for f in found if 0 <= f <= end)


def zone_at(zones, x, y):
    for name, regions in zones:
        if regions is None or any(all(a * x + b * y <= c for a, b, c in region) for region in regions):
            return name
    raise AssertionError


class Drawing:
    """The plan cut into cells, each in one zone."""

    def __init__(self, roof):
        theta = math.degrees(math.atan(roof["slope"] / 12))
        size = (roof["height"], roof["length"], roof["across"])
        self.roof, (_, self.zones) = roof, layout(roof["edition"], roof["shape"], theta, *size)
        self.xs, self.ys = breaks(self.zones, 0, roof["length"]), breaks(self.zones, 1, roof["across"])
        if roof["shape"] == "gable" and roof["across"] / 2 not in self.ys:
            self.ys = sorted(self.ys + [roof["across"] / 2])
        self.cell = {}
        for i, (x0, x1) in enumerate(zip(self.xs, self.xs[1:])):
            for j, (y0, y1) in enumerate(zip(self.ys, self.ys[1:])):
                self.cell[i, j] = zone_at(self.zones, (x0 + x1) / 2, (y0 + y1) / 2)
        self.names = sorted(set(self.cell.values()))

    def areas(self):
        found = {}
        for (i, j), name in self.cell.items():
            found[name] = found.get(name, 0) + (self.xs[i + 1] - self.xs[i]) * (self.ys[j + 1] - self.ys[j])
        return found

    def columns(self, x0, x1):
        """The columns of cells that a strip of the plan lies in; of a line on a border both."""
        if x0 == x1:
            return [i for i in range(len(self.xs) - 1) if self.xs[i] <= x0 <= self.xs[i + 1]]
        return [i for i in range(len(self.xs) - 1) if self.xs[i] < x1 and x0 < self.xs[i + 1]]

    def rows_from_eave(self, plane):
        """(row, depth in plan) from the eave up; the overhang belongs to the row at the eave."""
        half = self.roof["across"] / 2 if self.roof["shape"] == "gable" else self.roof["across"]
        rows = [(j, self.ys[j + 1] - self.ys[j]) for j in range(len(self.ys) - 1)]
        rows = [r for r in rows if self.ys[r[0]] < half] if plane == 0 else [r for r in reversed(rows) if self.ys[r[0]] >= half]
        return [(rows[0][0], rows[0][1] + self.roof["overhang"])] + rows[1:]


# ---------------------------------------------------------------- counting piece by piece

def planes(roof):
    return 2 if roof["shape"] == "gable" else 1


def panels_in_a_plane(roof):
    """Set side by side until the eave is covered; the last is cut."""
    covered, count = F(0), 0
    while covered < roof["length"]:
        covered += roof["width_in"] / 12
        count += 1
    return count


def clips_of_seam(drawing, spacing, plane, x, columns, count):
    """Clips of one seam: one at the eave, then at each spacing that begins; where zones of one spacing meet it goes on. `count`
    is by zone: of the zone in which the spacing begins. Of zones laid alike the seam's own counts."""
    stretch = math.sqrt(1 + float(drawing.roof["slope"] / 12) ** 2)
    laid = []  # (zone, spacing, length along the slope)
    for row, deep in drawing.rows_from_eave(plane):
        own = zone_at(drawing.zones, x, (drawing.ys[row] + drawing.ys[row + 1]) / 2)
        zone = min([own] + sorted({drawing.cell[c, row] for c in columns}), key=lambda z: spacing[z])
        laid.append((zone, spacing[zone], float(deep) * stretch * 12))
    count[laid[0][0]] = count.get(laid[0][0], 0) + 1
    left = 0.0  # of a spacing that began in the stretch before
    before = None
    for zone, step, long in laid:
        at = left if before == step else 0.0
        while at < long - SAME * max(1.0, long):
            count[zone] = count.get(zone, 0) + 1
            at += float(step)
        left, before = at - long, step


def count_clips(drawing, spacing, as_laid):
    roof = drawing.roof
    width, total = roof["width_in"] / 12, {}
    for plane in range(planes(roof)):
        memory = {}
        for n in range(1, panels_in_a_plane(roof)):
            x = n * width
            columns = drawing.columns(x - width, min(x + width, roof["length"])) if as_laid else drawing.columns(x, x)
            key = (tuple(columns), bisect.bisect_left(drawing.xs, x), bisect.bisect_right(drawing.xs, x))  # also if on a border
            if key not in memory:
                memory[key] = {}
                clips_of_seam(drawing, spacing, plane, x, columns, memory[key])
            for zone, clips in memory[key].items():
                total[zone] = total.get(zone, 0) + clips
    return total


def rolls(roof, slope_ft):
    """Courses along the eave, each lapped over the one below; a roll begun is lapped at its end and goes on where it is cut."""
    wide, long, side, end = UNDERLAYMENTS[roof["underlayment"]]
    courses, covered = 0, float(side)
    while covered < slope_ft * 12 - SAME * slope_ft * 12 or courses == 0:
        courses += 1
        covered += float(wide - side)
    pieces, reach = 0, end / 12
    while reach < roof["length"]:
        pieces += 1
        reach += long - end / 12
    course = roof["length"] + (pieces - 1) * end / 12
    return planes(roof) * courses * float(course) / float(long)


def expected(roof, drawing, spacing):
    stretch = math.sqrt(1 + float(roof["slope"] / 12) ** 2)
    run = roof["across"] / planes(roof) + roof["overhang"]
    slope_ft, side = float(run) * stretch, planes(roof)
    panels = side * panels_in_a_plane(roof)
    by_plan, laid = count_clips(drawing, spacing, False), count_clips(drawing, spacing, True)
    fixed_steps = side * (panels_in_a_plane(roof) - 1)
    want = {("roof surface", None): (side * slope_ft * float(roof["length"]),) * 2,
            ("panel", None): (panels,) * 2, ("panel", "length"): (panels * slope_ft,) * 2,
            ("clip", "fixed line"): (fixed_steps,) * 2,
            ("fastener", "clip"): (roof["per_clip"] * sum(by_plan.values()), roof["per_clip"] * sum(laid.values())),
            ("fastener", "fixity"): (2 * fixed_steps,) * 2,
            ("closure", "eave"): (panels,) * 2}
    for zone in drawing.names:
        want["clip", f"zone {zone}"] = (by_plan.get(zone, 0), laid.get(zone, 0))
    exact = rolls(roof, slope_ft)
    want["underlayment", "whole roof"] = (exact, up(exact))
    eave, ridge = side * roof["length"], roof["length"] if side == 2 else F(0)
    want["sealant", "closure"] = (float(2 * eave + 4 * ridge),) * 2
    if side == 2:
        want["closure", "ridge"] = (panels,) * 2
        want["sealant", "ridge"] = (float(2 * ridge),) * 2
    if roof["end_laps"] > 0:
        want["sealant", "end lap"] = (float(panels * roof["end_laps"] * roof["width_in"] / 12),) * 2
    want["sealant", "curb flange"] = (18.0,) * 2
    want["sealant", "boot flange"] = (16 / 12,) * 2
    return want


# ---------------------------------------------------------------- asking the program

def package_of(clean, roof, typed):
    package = json.loads(json.dumps(clean))
    area = package["roof_areas"][0]
    package["building"] |= {"shape": roof["shape"], "length": roof["length_typed"], "width": roof["across_typed"],
                            "eave_height": f"{float(roof['height']):g} ft", "slope": f"{float(roof['slope']):g}:12",
                            "overhang": f"{float(roof['overhang']):g} ft"}
    package["building"]["mean_roof_height"] = f"{float(roof['height']):g} ft"
    package["wind"]["standard"] = roof["edition"]
    package["engineering"] = "none"
    area["panel"] = {"item": roof["panel"], "supplied_by": "panel maker", "color": "light", "length": "60 ft",
                     "end_laps": str(roof["end_laps"])}
    area["clips"][0]["spacing"] = {f"Zone {zone}": text for zone, text in typed.items()}
    area["clips"][1]["spacing"] = f"{float(roof['width_in']):g} in"
    for fastener in area["fasteners"]:
        if fastener["use"] == "clip":
            fastener["per"] = str(roof["per_clip"])
    area["underlayments"] = [{"item": roof["underlayment"], "where": "whole roof", "supplied_by": "roofing supplier"}]
    lengths = {"eave": roof["length"] * planes(roof), "ridge": roof["length"]}
    for detail in area["details"]:
        if detail["place"] in lengths:
            detail["length"] = f"{float(lengths[detail['place']]):.12f} ft"
    if planes(roof) == 1:
        for key in ("details", "closures", "sealants"):
            area[key] = [p for p in area[key] if p.get("place", p.get("where")) != "ridge"]
    if roof["end_laps"] > 0:
        area["sealants"].append({"item": "seal-butyl-tape", "supplied_by": "panel maker", "where": "end lap"})
    return package


def ask(program, command, path):
    said = subprocess.run([program, command, path, "--format", "json"], capture_output=True, text=True, check=False)
    return json.loads(said.stdout)


WASTE = {"roof surface": 0, "panel": 2, "clip": 3, "fastener": 5, "underlayment": 5, "sealant": 5, "closure": 3}
BOX = {"clip-a-float": 250, "clip-a-fixed": 250, "screw-12x1": 500, "closure-metal-a": 50}


def is_near(a, b):
    return abs(a - b) <= 1e-6 * max(1.0, abs(b))


def compare(want, found, to_buy):
    faults = []
    have = {(line["kind"], line["where"]): line for line in found if line["state"] == "counted"}
    bought = {}
    for key, (by_plan, as_laid) in want.items():
        line = have.get(key)
        if line is None:
            if as_laid > 0 or by_plan > 0:
                faults.append((key, "is not counted", by_plan, as_laid))
            continue
        needed = as_laid * (1 + WASTE[key[0]] / 100)
        needed = up(needed) if line["unit"] in ("pieces", "rolls") else needed
        bought[line["item"]] = bought.get(line["item"], 0) + needed
        for name, mine in (("by_plan", by_plan), ("as_laid", as_laid), ("needed", needed)):
            if not is_near(line[name], mine):
                faults.append((key, name, "program", line[name], "drawn", mine))
    boxes = {line["item"]: line["packages"] for line in to_buy}
    for item, count in BOX.items():
        if boxes.get(item) != math.ceil(bought[item] / count):
            faults.append((item, "boxes", "program", boxes.get(item), "drawn", math.ceil(bought[item] / count)))
    return faults


def compare_zones(drawing, facts):
    areas = {fact["name"].split(" / ")[1]: fact["value"] for fact in facts
             if fact["fact"] == "plan_area" and fact["state"] == "known"}
    return [("zone", zone, "plan area, program", areas.get(zone), "drawn", float(area))
            for zone, area in drawing.areas().items() if not is_near(areas.get(zone, -1), float(area))]


def check(program, clean, scratch, number, seed):
    dice = random.Random(f"{seed} {number}")
    roof = random_roof(dice)
    drawing = Drawing(roof)
    typed, spacing = {}, {}
    in_mm = dice.random() < 0.2
    steps = dice.sample(SPACINGS, dice.choice([1, 2, 3, 4]))
    for zone in drawing.names:
        typed[zone], spacing[zone] = spacing_typed(in_mm, dice.choice(steps))
    path = f"{scratch}/{number}.yaml"
    with open(path, "w", encoding="utf-8") as file:
        json.dump(package_of(clean, roof, typed), file)  # YAML too
    faults = []
    if number % 8 == 0:  # oracle_wind asks for thousands
        faults += compare_zones(drawing, ask(program, "calcs", path)["facts"])
    takeoff = ask(program, "takeoff", path)
    faults += compare(expected(roof, drawing, spacing), takeoff["takeoff"], takeoff["to_buy"])
    if not faults:
        return []
    head = (f"plan {number}:", roof["edition"], roof["shape"], f"{roof['slope']}:12", roof["length_typed"], "by",
            roof["across_typed"], "overhang", float(roof["overhang"]), "height", float(roof["height"]), roof["panel"], typed)
    return [head] + faults


def main():
    words = argparse.ArgumentParser()
    words.add_argument("program")
    words.add_argument("--plans", type=int, default=500)
    words.add_argument("--seed", type=int, default=7)
    words.add_argument("--first", type=int, default=0)
    given = words.parse_args()
    with open("examples/clean.yaml", encoding="utf-8") as file:
        clean = yaml.load(file, Plain)
    bad = 0
    with tempfile.TemporaryDirectory() as scratch, concurrent.futures.ThreadPoolExecutor(2) as pool:
        plans = range(given.first, given.first + given.plans)
        for faults in pool.map(lambda n: check(given.program, clean, scratch, n, given.seed), plans):
            bad += bool(faults)
            for fault in faults:
                print(*fault)
    print(f"{given.plans} plans drawn and counted, {bad} counted otherwise by the program")
    sys.exit(1 if bad else 0)


main()

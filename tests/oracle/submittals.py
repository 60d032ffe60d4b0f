#!/usr/bin/env python3
"""Whole submittals: writes random packages as YAML, has the program calculate each, and compares its
facts with the second opinion of wind.py, plan.py and fastening.py.

    python3 submittals.py PROGRAM --packages 200 --seed 7 [--keep FOLDER]

What belongs to the invented sample edition and not to the pages is typed in here again: the tests of
one listing, the factor of safety on them, and the temperatures of a panel.
"""
import argparse
import json
import math
import os
import random
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor

import fastening
import plan
import wind

SAME = 1e-9
# The sample edition (invented): report-33, ultimate psf at clip spacings in inches, two tests each.
TEST_SPACINGS, TEST_PRESSURES, TEST_FACTOR = [12.0, 18.0, 24.0], [150.0, 105.0, 82.5], 2.0
HOTTEST = {"light": 150.0, "dark": 180.0}
COLDEST, LAID_AT = -20.0, 60.0
STEEL_ALPHA = 6.5                                        # mechanics 5.1, 1e-6 per F
SIZES = {"#8": 0.164, "#10": 0.190, "#12": 0.216, "#14": 0.242, "1/4": 0.250, "5/16": 0.3125}
CORNERS = {"#10": 0.340, "#12": 0.340, "#14": 0.409}     # hex head across corners, mechanics 1.1
CLIP_FU = 45.0                                           # the program's assumption for the clip base

FT, IN, PSF = 0.3048, 25.4, 47.880258980335
MPH = 0.44704


# ---------------------------------------------------------------- one package

def is_on_edge(row):
    angle = wind.angle_of(row["slope_in_12"])
    return (abs(row["height_ft"] - 60.0) < 0.01
            or min(abs(angle - e) for e in (3, 7, 10, 20, 25, 27, 30, 45)) < 1e-6)


def pick_wind(rng, si):
    """A row of wind.py within what the form takes; open buildings are refused by the program. In SI
    no edges: so many metres are not the same feet to the last digit."""
    while True:
        row = wind.one_row(rng, rng.choice((0, 0, 0, 1, 3)))
        row = wind.expect({**row, "exposure_b_floor": "no"})     # as the sample edition has it
        if (row["enclosure"] != "open" and row["greatest_ft"] <= 5000 and row["slope_in_12"] >= 0.05
                and row["hill_height_ft"] <= 5000 and not (si and is_on_edge(row))):
            return row


def pick_fastening(rng, p):
    """Support and screws; adds the expected facts of the screws to p."""
    wood = rng.random() < 0.35
    p["per"], p["one_sided"] = rng.randint(1, 4), rng.choice((True, False))
    p["clip_in"] = rng.choice((0.0538, 0.0598, 0.0747))
    half = p["one_sided"] or p["per"] < 2
    if wood:
        p["support"], p["screw_kind"] = "wood", rng.choice(("wood screw", "lag screw"))
        p["size"] = rng.choice(("#10", "#12", "#14")) if p["screw_kind"] == "wood screw" else "5/16"
        p["g"], p["support_in"] = rng.choice((0.36, 0.42, 0.43, 0.5, 0.55)), rng.choice((2.5, 3.5))
        p["length_in"] = rng.choice((1.5, 2.0, 3.0, 4.5))
    else:
        p["support"], p["screw_kind"] = "purlin", "self-drilling screw"
        p["size"] = rng.choice(tuple(SIZES))
        p["support_in"] = rng.choice((0.0539, 0.0598, 0.0747, 0.0977, 0.1017))
        p["grade"], p["length_in"] = rng.choice((33, 40, 50, 80)), 1.5
    d = SIZES[p["size"]]
    p["hex"] = p["size"] in CORNERS and rng.random() < 0.5
    p["head_in"] = CORNERS[p["size"]] if p["hex"] else rng.choice((0.34, 0.409, 0.5, 0.625))
    p["stated_pts"] = d not in fastening.PTS or rng.random() < 0.5
    p["pts"] = rng.uniform(300.0, 3000.0) if p["stated_pts"] else fastening.PTS[d]
    over = fastening.pullover(p["clip_in"], p["head_in"], CLIP_FU, False)
    limits = [fastening.pullover(p["clip_in"], p["head_in"], CLIP_FU, half) / fastening.OMEGA_SCREW,
              p["pts"] / fastening.OMEGA_SCREW]
    screw = p["screw"] = {"screw_pullover": over}
    if wood:
        law = fastening.wood_screw if p["screw_kind"] == "wood screw" else fastening.lag
        screw["screw_withdrawal"] = law(p["g"], d)
        thread = min(p["support_in"], p["length_in"] - p["clip_in"])
        hold = screw["screw_withdrawal"] * thread * fastening.WIND_DURATION
    else:
        out = fastening.pullout(p["support_in"], d, fastening.design_fu(p["grade"]))
        screw["screw_pullout"] = out
        hold = out if out == fastening.REFUSED else out / fastening.OMEGA_SCREW
    refused = hold == fastening.REFUSED
    screw["screw_allowable"] = hold if refused else min([hold] + limits)
    p["clip_holds"] = hold if refused else p["per"] * screw["screw_allowable"]


def tested(spacing):
    return fastening.tested_pressure(TEST_SPACINGS, TEST_PRESSURES, spacing, "least")


def zone_facts(p, zone, area):
    """Expected facts of one zone; area None where plan.py has no layout."""
    w, s = p["wind"], p["spacing"][zone]
    a = p["panel_in"] / 12.0 * (s / 12.0)
    gcp = wind.gcp_of(w["edition"], w["shape"], wind.angle_of(w["slope_in_12"]), w["height_ft"],
                      w["least_ft"], w["parapet_ft"], zone, a)
    strength = wind.pressure(w["edition"], w["q_psf"], gcp, w["gcpi"])
    asd = wind.STRENGTH_TO_ASD * strength
    load = fastening.clip_load(asd, p["panel_in"], s)
    ultimate = tested(s)
    facts = {"effective_area": a, "pressure_coefficient": gcp, "internal_coefficient": w["gcpi"],
             "strength_uplift": strength, "asd_uplift": asd, "demand": asd, "clip_load": load,
             "fastening_allowable": p["clip_holds"], "tested_uplift": ultimate}
    refused = fastening.REFUSED
    holds = p["clip_holds"]
    facts["fastening_ratio"] = refused if holds == refused else load / holds
    allowed = refused if ultimate == refused else fastening.allowable(ultimate, TEST_FACTOR)
    facts["allowable_uplift"] = allowed
    facts["uplift_ratio"] = refused if ultimate == refused else asd / allowed
    if area is not None:
        facts["plan_area"] = area
    return facts


def pick_spacing(rng):
    """Not a little wider than a test: the program takes 610 mm for the 24 in that were tested."""
    while True:
        s = rng.choice((12.0, 16.0, 18.0, 24.0, 36.0, rng.uniform(6.0, 30.0)))
        if not any(t < s < 1.01 * t for t in TEST_SPACINGS):
            return s


def zones_of(w):
    """{zone: area or None} of those that have room on the plan."""
    theta = wind.angle_of(w["slope_in_12"])
    figure = w["figure"].split("-", 1)[1]
    if figure == "5B":
        sets = wind.sets_of(w["edition"], w["shape"], w["figure"], theta, w["height_ft"], w["least_ft"])
        return dict.fromkeys(sets[0][1])
    areas = plan.areas_of(w["edition"], w["shape"], w["slope_in_12"], w["height_ft"],
                          w["greatest_ft"], w["least_ft"])
    room = 1e-9 * w["greatest_ft"] * w["least_ft"]
    return {zone: float(a) for zone, a in areas.items() if a > room}


def package(rng, number):
    p = {"name": "OR-%d" % number, "si": rng.random() < 0.3}
    w = p["wind"] = pick_wind(rng, p["si"])
    p["panel_in"] = rng.choice((12.0, 16.0, 18.0, 24.0, rng.uniform(10.0, 30.0)))
    p["run_ft"], p["fixed_at"] = rng.uniform(10.0, 150.0), rng.choice(("eave", "ridge", "mid-slope"))
    p["color"] = rng.choice(tuple(HOTTEST))
    pick_fastening(rng, p)
    zones = zones_of(w)
    p["spacing"] = {z: pick_spacing(rng) for z in zones}
    middle = "middle" if p["fixed_at"] == "mid-slope" else p["fixed_at"]
    grows = fastening.movement(STEEL_ALPHA, p["run_ft"], middle, HOTTEST[p["color"]], LAID_AT)
    shrinks = fastening.movement(STEEL_ALPHA, p["run_ft"], middle, LAID_AT, COLDEST)
    p["area"] = {"slope_angle": wind.angle_of(w["slope_in_12"]), "design_height": w["height_ft"],
                 "exposure_coefficient": w["kz"], "topographic_factor": w["kzt"],
                 "elevation_factor": w["ke"], "directionality_factor": w["kd"],
                 "velocity_pressure": w["q_psf"],
                 "zone_width": float(plan.strip_width(w["least_ft"], w["height_ft"])),
                 "panel_expansion": grows, "panel_contraction": shrinks,
                 "panel_movement": grows + shrinks}
    p["zones"] = {z: zone_facts(p, z, area) for z, area in zones.items()}
    return p


# ---------------------------------------------------------------- YAML

TEMPLATE = """form: 1
submittal: {name}
stage: application
round: 1
date: 2026-04-14
criteria: sample-2026
project: {{name: Random roof (invented), state: Northmark, surroundings: town}}
building:
  shape: {shape}
  length: {length}
  width: {width}
  eave_height: {eave}
  mean_roof_height: {mean}
  slope: "{slope!r}:12"
  enclosure: {enclosure}
  parapet_height: {parapet}
wind:
  standard: {edition}
  basic_speed: {speed}
  exposure: {exposure}
  ground_elevation: {ground}
  topography: {hill}
engineering: none
specification: {{section: 07 41 13, requirements: none}}
roof_areas:
  - name: Roof
    tests: [{{listing: report-33, for: capacity}}]
    panel: {{item: panel-a-16, width: {panel}, length: {run}, end_laps: 0, metal: steel, color: {color}}}
    support: {support}
    build_up: none
    clips:
      - {{item: clip, use: running, metal: steel, thickness: {clip}, one_sided: {one_sided}, spacing: {spacing}}}
    fasteners:
      - {{item: screw, use: clip, per: {per}, kind: {screw_kind}, size: "{size}", length: {screw_length}, {head}{pts}}}
    fixed_at: [{{line: {fixed_at}}}]
"""


def yaml_of(p):
    w, si = p["wind"], p["si"]

    def feet(v):
        return "%r m" % (v * FT) if si else "%r ft" % v

    def inches(v):
        return "%r mm" % (v * IN) if si else "%r in" % v
    # Up to 10 degrees the eave counts, above it the mean height: the other one is a trap.
    low = wind.angle_of(w["slope_in_12"]) <= 10.0
    eave, mean = (w["height_ft"], w["height_ft"] + 7.0) if low else (w["height_ft"] - 4.0, w["height_ft"])
    if not low and w["height_ft"] > 60.0 or eave < 4.0:
        eave = w["height_ft"]                            # which height makes a steep roof high is left open
    hill = "{terrain: none}" if w["hill"] == "none" else \
        "{terrain: %s, height: %s, half_length: %s, distance: %s}" % (
            w["hill"], feet(w["hill_height_ft"]), feet(w["hill_half_length_ft"]), feet(w["hill_distance_ft"]))
    if p["support"] == "wood":
        support = "{kind: wood, thickness: %s, specific_gravity: %r}" % (inches(p["support_in"]), p["g"])
    else:
        support = "{kind: purlin, thickness: %s, grade: %d ksi, spacing: 60 in}" % (
            inches(p["support_in"]), p["grade"])
    spacing = "{%s}" % ", ".join('"%s": %s' % (z, inches(s)) for z, s in sorted(p["spacing"].items()))
    speed = "%r m/s" % (w["speed_mph"] * MPH) if si else "%r mph" % w["speed_mph"]
    return TEMPLATE.format(
        name=p["name"], shape=w["shape"], length=feet(w["greatest_ft"]), width=feet(w["least_ft"]),
        eave=feet(eave), mean=feet(mean), slope=w["slope_in_12"], enclosure=w["enclosure"],
        parapet=feet(w["parapet_ft"]), edition=w["edition"], speed=speed, exposure=w["exposure"],
        ground=feet(w["ground_ft"]), hill=hill, panel=inches(p["panel_in"]), run=feet(p["run_ft"]),
        color=p["color"], support=support, clip=inches(p["clip_in"]),
        one_sided="yes" if p["one_sided"] else "no", spacing=spacing, per=p["per"],
        screw_kind=p["screw_kind"], size=p["size"], screw_length=inches(p["length_in"]),
        head="head: hex washer" if p["hex"] else "head: pancake, head_diameter: " + inches(p["head_in"]),
        pts=", tension: %r lb" % p["pts"] if p["stated_pts"] else "", fixed_at=p["fixed_at"])


# ---------------------------------------------------------------- comparison

def expected_facts(p):
    """(record, name, fact, value) of all that is expected."""
    for fact, value in p["area"].items():
        yield "roof_area", "Roof", fact, value
    for zone, facts in p["zones"].items():
        for fact, value in facts.items():
            yield "zone", "Roof / " + zone, fact, value
    for fact, value in p["screw"].items():
        yield "fastener", "Roof / screw", fact, value


def compare(p, sheet):
    """Lines of what differs, and how many facts were compared."""
    found = {(f["record"], f["name"], f["fact"]): f for f in sheet["facts"]}
    faults, count = [], 0
    zones = {key[1] for key in found if key[0] == "zone"}
    if zones != {"Roof / " + z for z in p["zones"]}:
        faults.append("zones %s, not %s" % (sorted(zones), sorted(p["zones"])))
    for record, name, fact, value in expected_facts(p):
        ours = found.get((record, name, fact))
        count += 1
        if ours is None:
            faults.append("%s %s: no %s" % (record, name, fact))
        elif value == fastening.REFUSED:
            if ours["state"] != "refused" or ours["value"] is not None or not ours.get("reason"):
                faults.append("%s of %s: %s, not refused" % (fact, name, ours["value"]))
        elif ours["value"] is None or not math.isclose(ours["value"], value, rel_tol=SAME, abs_tol=1e-12):
            why = ours.get("reason") or ours.get("waits_for") or ""
            faults.append("%s of %s: %r, expected %r %s" % (fact, name, ours["value"], value, why))
    return faults, count


def try_one(program, folder, p):
    path = os.path.join(folder, p["name"] + ".yaml")
    with open(path, "w", encoding="utf-8") as out:
        out.write(yaml_of(p))
    run = subprocess.run([program, "calcs", "--format", "json", path], capture_output=True, check=False)
    if run.returncode != 0:
        return ["status %d: %s" % (run.returncode, run.stderr.decode())], 0
    return compare(p, json.loads(run.stdout))


def main():
    ask = argparse.ArgumentParser(description="random packages through the program")
    ask.add_argument("program")
    ask.add_argument("--packages", type=int, default=200)
    ask.add_argument("--seed", type=int, default=7)
    ask.add_argument("--keep", help="folder to keep the packages in")
    want = ask.parse_args()
    plan.go_quick()
    rng = random.Random(want.seed)
    packages = [package(rng, n) for n in range(1, want.packages + 1)]
    faults = total = 0
    with tempfile.TemporaryDirectory() as scratch, ThreadPoolExecutor(os.cpu_count()) as pool:
        folder = want.keep or scratch
        os.makedirs(folder, exist_ok=True)
        for p, (wrong, count) in zip(packages, pool.map(lambda p: try_one(want.program, folder, p), packages)):
            total += count
            for line in wrong:
                print("%s: %s" % (p["name"], line))
            faults += len(wrong)
    print("%d submittals, %d facts compared, %d differ" % (len(packages), total, faults))
    sys.exit(1 if faults or not total else 0)


if __name__ == "__main__":
    main()

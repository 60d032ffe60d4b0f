#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Everything that a small catalogue could be built of is written out, one file each, and reviewed by the program; what its review
lets through is what its `options` must offer, no more and no less. Knows no rule: the tables are read for the names of their rows
and for the lives, which are added up here once more. options.py PROGRAM [--quick]"""
import copy
import csv
import json
import shutil
import subprocess
import sys
import tempfile

import yaml

PROGRAM, QUICK = sys.argv[1], "--quick" in sys.argv
OPEN = {"NOT ELIGIBLE", "REJECTED", "HOLD", "REVISE AND RESUBMIT", "NOT REVIEWED"}
BATCH = 800
faults = []


class Plain(yaml.SafeLoader):
    """Every scalar as it is typed."""


Plain.yaml_implicit_resolvers = {}


# ---- the small catalogue ----

KEEP = {
    "panels": ["panel-a-16", "panel-a-16-leg", "panel-a-16-22", "panel-a-12"],
    "clips": ["clip-a-float", "clip-b-float", "clip-a-float-narrow", "clip-a-float-long", "clip-a-fixed"],
    "fasteners": ["screw-12x1", "screw-10x1", "screw-14x1", "wood-screw-12x1.5", "screw-12x1.5-p3", "trim-screw-quarter"],
    "supports": ["deck-22", "deck-20", "ply-19-32", "ply-15-32", "purlin-16"],
    "listings": ["tested-210", "report-33", "tested-230", "report-43", "report-64", "tested-164", "tested-280", "tested-250",
                 "report-53"],
}
KEEP_QUICK = KEEP | {
    "panels": ["panel-a-16", "panel-a-16-leg", "panel-a-12"],
    "clips": ["clip-a-float", "clip-b-float", "clip-a-float-narrow", "clip-a-fixed"],
    "fasteners": ["screw-12x1", "screw-10x1", "screw-14x1", "trim-screw-quarter"],
    "listings": ["tested-210", "report-33", "report-64"],
}
OF_ITEM = {"lives": "item", "also_known_as": "item", "pullouts": "item", "listing_tests": "listing", "listing_terms": "listing"}
FROM_THE_CATALOGUE = {"underlayments": "underlayments", "sealants": "sealants", "rivets": "rivets", "closures": "closures",
                      "accessories": "clamps"}


def rows(folder, table):
    with open(f"{folder}/{table}.csv", encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def small_catalogue(folder):
    """An edition with few parts, that asks for no engineer's letter: the computed uplift alone decides."""
    shutil.copytree("data/sample-2026", folder)
    keep = KEEP_QUICK if QUICK else KEEP
    gone = set()
    for table in sorted(keep):
        key = "listing" if table == "listings" else "item"
        gone |= {r[key] for r in rows(folder, table)} - set(keep[table])
        thin(folder, table, lambda r, k=key, t=table: r[k] in keep[t])
    for table, key in OF_ITEM.items():
        thin(folder, table, lambda r, k=key: r[k] not in gone)
    thin(folder, "documents", lambda r: r["kind"] != "engineering letter")
    for table in ("panels", "clips"):
        blank(folder, table, "looks like", gone)
    with open(f"{folder}/criteria.yaml", encoding="utf-8") as file:
        text = file.read()
    with open(f"{folder}/criteria.yaml", "w", encoding="utf-8") as file:
        file.write(text.replace("engineering_due: yes", "engineering_due: no"))
    return {table: [r["item"] for r in rows(folder, table)]
            for table in ("panels", "clips", "fasteners", "underlayments", "sealants", "rivets", "closures", "clamps")}


def rewrite(folder, table, change):
    old = rows(folder, table)
    with open(f"{folder}/{table}.csv", "w", encoding="utf-8", newline="") as file:
        to = csv.DictWriter(file, old[0].keys(), lineterminator="\n")
        to.writeheader()
        to.writerows([r for r in (change(dict(r)) for r in old) if r is not None])


def thin(folder, table, stays):
    rewrite(folder, table, lambda r: r if stays(r) else None)


def blank(folder, table, column, gone):
    rewrite(folder, table, lambda r: r | {column: "" if r[column] in gone else r[column]})


# ---- packages with nothing against them ----

def key_of(head):
    return head.split(" [")[0].replace(" ", "_")


def set_item(folder, table, part, item):
    """What the catalogue says of the item no longer stands beside it."""
    row = next(r for r in rows(folder, table) if r["item"] == item)
    for head, cell in row.items():
        if cell != "" and key_of(head) not in ("supplied_by", "use"):
            part.pop(key_of(head), None)
    part["item"] = item
    if row.get("supplied by"):
        part["supplied_by"] = row["supplied by"]
    part.pop("mark", None)
    return part


def base_package(folder, build):
    with open("examples/clean.yaml", encoding="utf-8") as file:
        package = yaml.load(file, Plain)
    package["engineering"] = "none"
    package["documents"] = [d for d in package["documents"] if d["kind"] != "engineering letter"]
    package["specification"]["requirements"] = "none"
    package["specification"].pop("quality")
    package["warranty"]["term"] = package["specification"]["warranty"]["term"] = build["term"]
    package["wind"]["basic_speed"] = build["speed"]
    area = package["roof_areas"][0]
    area["slope_on"].pop("letter")
    for key, table in (FROM_THE_CATALOGUE | {"clips": "clips", "fasteners": "fasteners"}).items():
        for part in area[key]:
            set_item(folder, table, part, part["item"])
    area["tests"] = [{"listing": build["tests"][0], "for": "class"}, {"listing": build["tests"][1], "for": "capacity"}]
    area["clips"][0]["spacing"] = build["spacing"]
    for clip in area["clips"]:
        if clip["use"] == "fixity" and "fixed" in build:
            clip["spacing"] = build["fixed"]
    area["panel"].pop("measured_thickness")
    set_item(folder, "panels", area["panel"], "panel-a-16")
    area["support"] = {"item": build["support"], "see": "sheet S3"} | copy.deepcopy(build["more"])
    for fastener in area["fasteners"]:
        if fastener["use"] in ("clip", "fixity"):
            set_item(folder, "fasteners", fastener, build["screw"])
    if "beside" in build:
        package["roof_areas"].append(base_package(folder, BUILDS[build["beside"]])["roof_areas"][0] | {"name": "Low roof"})
    return package


ANY = {"edge_spacing": "60 in", "deflection": "0.2 in", "camber": "0.2 in", "treated": "no", "existing": "no",
       "accepted_by": "general contractor", "fire_retardant": "no", "spacing": "60 in"}
SCREWED = {"attachment": {"field": "12 in", "perimeter": "6 in", "corner": "6 in"}}
DECK = ANY | SCREWED | {"supplied_by": "steel fabricator", "flute_pitch": "6 in", "kind": "steel deck"}
WOOD = ANY | SCREWED | {"supplied_by": "lumber dealer", "spacing": "24 in", "edge_spacing": "24 in", "kind": "plywood"}
PURLIN = ANY | {"supplied_by": "steel fabricator", "kind": "purlin", "spacing": "30 in", "edge_spacing": "30 in"}
ON_DECK = {"tests": ("tested-210", "report-33"), "spacing": "12 in", "more": DECK, "screw": "screw-12x1",
           "steps": range(6, 37, 6)}
ON_WOOD = {"tests": ("tested-230", "report-43"), "spacing": "12 in", "more": WOOD, "screw": "wood-screw-12x1.5",
           "steps": range(1, 32)}
# `fixed`: the fixed clips as submitted stand in each seam of the narrowest panel; else of one 16 in wide.
# `steps`: what can be built. Clips sit on the flanges of a deck and on purlins, and anywhere on wood, in whole inches.
BUILDS = {
    "deck": ON_DECK | {"term": "20 yr", "speed": "115 mph", "support": "deck-22"},
    "windy deck": ON_DECK | {"term": "10 yr", "speed": "130 mph", "support": "deck-20", "fixed": "12 in"},
    "plywood": ON_WOOD | {"term": "20 yr", "speed": "120 mph", "support": "ply-19-32", "fixed": "12 in"},
    "thin plywood": ON_WOOD | {"term": "15 yr", "speed": "115 mph", "support": "ply-15-32", "beside": "deck"},
    "purlins": {"tests": ("tested-250", "report-53"), "spacing": "30 in", "term": "20 yr", "speed": "100 mph",
                "support": "purlin-16", "more": PURLIN, "screw": "screw-12x1.5-p3", "steps": range(30, 121, 30)},
}

# ---- writing and reviewing ----


def flow(value):
    """A value of YAML in one line."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{k}: {flow(v)}" for k, v in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(flow(v) for v in value) + "]"
    return '"' + str(value).replace("\\", "\\\\").replace('"', '\\"') + '"'


class Review:
    """Packages of one base that differ in few keys of one roof area: the rest is written out once."""

    def __init__(self, folder, package, area=0):
        self.folder, self.package, self.area = folder, package, area

    def text(self, changes, term=None):
        if not hasattr(self, "frame"):
            frame = copy.deepcopy(self.package)
            rest = frame["roof_areas"][self.area]
            for key in list(rest):
                if key in ("tests", "panel", "clips", "fasteners", *FROM_THE_CATALOGUE, "penetrations"):
                    rest[key] = f"@@{key}@@"
            frame["submittal"], frame["warranty"]["term"] = "@@submittal@@", "@@term@@"
            self.frame = yaml.safe_dump(frame, sort_keys=False, width=10000)
        now = self.package["roof_areas"][self.area] | changes
        text = self.frame.replace("'@@term@@'", flow(term or self.package["warranty"]["term"]))
        for key, value in now.items():
            if f"@@{key}@@" in self.frame:
                text = text.replace(f"'@@{key}@@'", flow(value))
        return text

    def all(self, wanted):
        """Open items of each (changes, term), in their order."""
        found = []
        for first in range(0, len(wanted), BATCH):
            found += self.batch(wanted[first:first + BATCH])
        return found

    def batch(self, wanted):
        with tempfile.TemporaryDirectory() as scratch:
            for i, (changes, term) in enumerate(wanted):
                with open(f"{scratch}/{i:05}.yaml", "w", encoding="utf-8") as file:
                    file.write(self.text(changes, term).replace("'@@submittal@@'", f"P-{i:05}"))
            said = subprocess.run([PROGRAM, "review", scratch, "--criteria", self.folder, "--format", "ndjson", "--quiet"],
                                  capture_output=True, text=True, check=False)
        items = {}
        for line in said.stdout.splitlines():
            report = json.loads(line)
            items[report["submittal"]] = [i for i in report["items"] if i["action"] in OPEN]
        return [items[f"P-{i:05}"] for i in range(len(wanted))]


# ---- what the reviews let through ----

def changes(area, made, spacing):
    """The keys of the roof area that a construction stands in."""
    parts = {"supplied_by": "panel maker"}
    running = parts | {"item": made["clip"], "use": "running", "spacing": spacing, "bears_on": "top flange"}
    screw = parts | {"item": made["fastener"], "use": "clip", "per": made["per"]}
    panel = set_item(made["folder"], "panels", dict(area["panel"]), made["panel"])
    return {"tests": [{"listing": made["class"], "for": "class"}, {"listing": made["capacity"], "for": "capacity"}],
            "panel": panel, "clips": [running] + [c for c in area["clips"] if c["use"] != "running"],
            "fasteners": [screw] + [f for f in area["fasteners"] if f["use"] != "clip"]}


KEYS = ("class", "capacity", "panel", "clip", "fastener")


def name_of(made):
    return tuple(made[k] for k in KEYS)


def all_of(folder, items):
    listings = rows(folder, "listings")
    for one in (r for r in listings if r["role"] == "class"):
        for two in (r for r in listings if r["role"] == "capacity"):
            for panel in items["panels"]:
                for clip in items["clips"]:
                    for screw in items["fasteners"]:
                        yield {"class": one["listing"], "capacity": two["listing"], "panel": panel, "clip": clip,
                               "fastener": screw, "per": two["fastener.per"], "folder": folder}


def tested_spacings(folder, listing):
    found = [float(r["clip spacing [in]"]) for r in rows(folder, "listing_tests") if r["listing"] == listing]
    return sorted({min(found), max(found)})


def is_of_zones(item):
    return all(place["record"] == "zone" for place in item["places"])


def held_zones(items):
    return {place["name"].split(" / ")[1] for item in items for place in item["places"]}


def let_through(review, area, combinations, steps):
    """The greatest spacing of every zone of each combination that has one in all, by trying every one that can be built."""
    wanted = [(made, s) for made in combinations for s in tested_spacings(made["folder"], made["capacity"])]
    found = review.all([(changes(area, made, f"{s:g} in"), None) for made, s in wanted])
    left = {name_of(made): made for (made, _), items in zip(wanted, found) if all(map(is_of_zones, items))}
    sweep = [(made, s) for made in left.values() for s in steps]
    greatest = {}
    found = review.all([(changes(area, made, f"{s} in"), None) for made, s in sweep])
    for (made, s), items in zip(sweep, found):
        if not all(map(is_of_zones, items)):
            continue
        held = held_zones(items)
        for zone in review.zones - held:
            greatest.setdefault(name_of(made), {})[zone] = s
    greatest = {name: zones for name, zones in greatest.items() if len(zones) == len(review.zones)}
    return {name: greatest[name] for name in greatest}, {name: left[name] for name in greatest}, len(wanted) + len(sweep)


def as_laid(review, area, made, greatest, steps):
    """All zones at their greatest holds, and the next that can be built in any does not."""
    tries = [greatest] + [greatest | {zone: next(s for s in steps if s > greatest[zone])} for zone in sorted(greatest)]
    found = review.all([(changes(area, made, {f"Zone {z}": f"{s} in" for z, s in one.items()}), None) for one in tries])
    if found[0]:
        fault(name_of(made), "is let through zone by zone, and not as laid:", told(found[0]))
    for one, items in list(zip(tries, found))[1:]:
        if not items:
            fault(name_of(made), one, "is wider than the greatest and gives no item")


def told(items):
    return [(i["code"], i["name"]) for i in items]


def fault(*words):
    print(*words)
    faults.append(words)


# ---- the rest of a package ----

LISTS = {"clips": "clips", "fasteners": "fasteners", "penetrations": None} | FROM_THE_CATALOGUE
KINDS = {"clips": "clip", "fasteners": "fastener", "penetrations": "penetration", "underlayments": "underlayment",
         "sealants": "sealant", "rivets": "rivet", "closures": "closure", "accessories": "accessory"}


def places(review, area):
    """For every part that is no panel, running clip or its screw: the items that could stand there with nothing found."""
    wanted, trying = [], []
    for key, table in LISTS.items():
        for n, part in enumerate(area[key]):
            if (key, part.get("use")) in (("clips", "running"), ("fasteners", "clip")):
                continue
            from_table = table or ("boots" if part["treatment"] == "boot" else "curbs")
            where = next(part[k] for k in ("where", "use", "treatment", "kind") if k in part)
            wanted.append((KINDS[key], where, part["item"]))
            for item in (r["item"] for r in rows(review.folder, from_table)):
                there = area[key][:n] + [set_item(review.folder, from_table, dict(part), item)] + area[key][n + 1:]
                trying.append((len(wanted) - 1, item, {key: there}))
    found = review.all([(change, None) for _, _, change in trying])
    accepted = [set() for _ in wanted]
    for (n, item, _), items in zip(trying, found):
        if not items:
            accepted[n].add(item)
    return [(*place, items) for place, items in zip(wanted, accepted)], len(trying)


def longest_term(review, package):
    terms = sorted({int(r["term [yr]"]) for r in rows(review.folder, "terms")})
    found = review.all([({}, f"{term} yr") for term in terms])
    least = set(map(str, told(found[0])))
    held = [term for term, items in zip(terms, found) if set(map(str, told(items))) <= least]
    return max(held), len(terms)


def life_of(lives, item, where, surroundings):
    best = None
    for at, around in ((where, surroundings), (where, ""), ("", surroundings), ("", "")):
        for row in lives:
            if best is None and (row["item"], row["where"], row["environment"]) == (item, at or "", around):
                best = float(row["service life [yr]"])
    return best


def longest_by_lives(folder, package, area):
    judged = {r["kind"] for r in rows(folder, "kinds") if r["life judged"] == "yes" and r["renewable"] == "no"}
    lives = rows(folder, "lives")
    around = package["project"]["surroundings"]
    parts = [("panel", area["panel"])] + [(KINDS[key], part) for key in LISTS for part in area[key]]
    least = min(life_of(lives, p["item"], p.get("where"), around) for kind, p in parts if kind in judged)
    return max(float(r["term [yr]"]) for r in rows(folder, "terms") if float(r["term [yr]"]) <= least)


# ---- comparing ----

def compare_constructions(name, offered, greatest):
    seen = {}
    for made in offered:
        key = name_of(made)
        if key in seen:
            fault(name, key, "is offered twice")
        seen[key] = {z["zone"]: z["greatest_spacing"] for z in made["zones"]}
    for key in sorted(set(seen) - set(greatest)):
        fault(name, key, "is offered, and reviewed it is not let through")
    for key in sorted(set(greatest) - set(seen)):
        fault(name, key, "is let through at", greatest[key], "and not offered")
    for key in sorted(set(greatest) & set(seen)):
        if seen[key] != greatest[key]:
            fault(name, key, "is offered at", seen[key], "and let through at", greatest[key])


def compare_places(name, offered, accepted):
    offers = [(o["kind"], o["where"], o["submitted"], set(o["items"])) for o in offered if o["submitted"]]
    for place in accepted:
        same = [o for o in offers if o[:3] == place[:3]]
        if not same:
            fault(name, place[:3], "has no offer")
        elif same[0][3] != place[3]:
            fault(name, place[:3], "offered, not let through:", sorted(same[0][3] - place[3]), "let through, not offered:",
                  sorted(place[3] - same[0][3]))
        else:
            offers.remove(same[0])


def options(folder, package):
    with tempfile.NamedTemporaryFile("w", suffix=".yaml", encoding="utf-8") as file:
        yaml.safe_dump(package, file, sort_keys=False)
        file.flush()
        said = subprocess.run([PROGRAM, "options", file.name, "--criteria", folder, "--format", "json"], capture_output=True,
                              text=True, check=False)
    return json.loads(said.stdout)


def check_shorter_life(name, build, folder, made, scratch):
    """One year less than the term, in any part of an offered construction."""
    for n, kind in enumerate(("panel", "clip", "fastener")):
        short = f"{scratch}/short-{n}"
        shutil.copytree(folder, short)
        less = f"{int(build['term'].split()[0]) - 1}"
        life = "service life [yr]"
        rewrite(short, "lives", lambda r, item=made[kind]: r | {life: less if r["item"] == item else r[life]})
        review = Review(short, base_package(short, build))
        area = review.package["roof_areas"][0]
        if not review.all([(changes(area, made | {"folder": short}, "1 in"), None)])[0]:
            fault(name, made[kind], "lasts less than the term and gives no item")
        shutil.rmtree(short)


def check_smaller_screws(name, folder, offered, greatest):
    sizes = {r["item"]: (r["kind"], SIZES[r["size"]]) for r in rows(folder, "fasteners")}
    least = {}
    for key in greatest:
        kind, size = sizes[key[4]]
        least[key[:4], kind] = min(size, least.get((key[:4], kind), size))
    for made in offered:
        kind, size = sizes[made["fastener"]]
        if size < least.get((name_of(made)[:4], kind), 0):
            fault(name, name_of(made), "has a smaller screw than any that is let through")


SIZES = {"#10": 0.190, "#12": 0.216, "#14": 0.242, "1/4": 0.25}


def check(name, build, folder, items, scratch):
    package = base_package(folder, build)
    review = Review(folder, package)
    area = package["roof_areas"][0]
    against = review.all([({}, None)])[0]
    if against:
        fault(name, "has something against it before anything is changed:", told(against))
    offers = options(folder, package)
    for key in ("constructions", "places", "terms"):
        offers[key] = [o for o in offers[key] if o["area"] in (area["name"], None)]
    review.zones = {z["zone"] for made in offers["constructions"] for z in made["zones"]}
    greatest, made, tried = let_through(review, area, list(all_of(folder, items)), build["steps"])
    compare_constructions(name, offers["constructions"], greatest)
    check_smaller_screws(name, folder, offers["constructions"], greatest)
    for key in sorted(greatest)[:1 if QUICK else None]:
        as_laid(review, area, made[key], greatest[key], build["steps"])
    if made:
        check_shorter_life(name, build, folder, made[min(made)], scratch)
    accepted, more = places(review, area)
    compare_places(name, offers["places"], accepted)
    longest, terms = longest_term(review, package)
    for term in offers["terms"]:
        mine = longest if term["by"] == "judging" else longest_by_lives(folder, package, area)
        if term["term"] != mine:
            fault(name, "longest term by", term["by"], term["term"], "and it is", mine)
    print(f"{name}: {tried + more + terms} packages reviewed, {len(greatest)} constructions let through,",
          f"{len(accepted)} other places")
    if not greatest:
        fault(name, "nothing is let through: nothing was tried")


def main():
    with tempfile.TemporaryDirectory() as scratch:
        folder = f"{scratch}/small"
        items = small_catalogue(folder)
        wanted = [w for w in sys.argv[2:] if w in BUILDS] or (list(BUILDS)[:1] if QUICK else BUILDS)
        for name in wanted:
            check(name, BUILDS[name], folder, items, scratch)
    sys.exit(1 if faults else 0)


main()

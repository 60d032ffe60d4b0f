#!/usr/bin/env python3
"""Second opinion on zone areas in plan: random rectangular roofs, CSV on standard output.

Written from the wind page, sections 2.1 and 2.5.  The roof is cut along every zone border by
half-planes and the pieces are added up in exact rational arithmetic, so no area formula of any
zone is used.  The areas of one roof add up to length x width exactly before printing.
    python3 plan.py --rows 5000 --seed 7 > out.csv
"""
import argparse
import csv
import math
import random
import sys
from fractions import Fraction as F

E10, E16, E22 = "ASCE 7-10", "ASCE 7-16", "ASCE 7-22"
EDITIONS = (E10, E16, E22)
COLUMNS = ["edition", "shape", "slope_in_12", "height_ft", "length_ft", "width_ft", "zone",
           "zone_width_ft", "plan_area_sq_ft"]
# Square root of two to 20 digits: hip strips have borders parallel to a 45 degree line.
ROOT_2 = F(141421356237309504880, 10 ** 20)


# ---------------------------------------------------------------- half-planes and polygons
# A half-plane (a, b, c) is a x + b y <= c.  A convex region is a list of half-planes.

def clip(polygon, plane, keep_inside=True):
    """The part of a convex polygon on one side of a border."""
    a, b, c = plane if keep_inside else (-plane[0], -plane[1], -plane[2])
    side = [a * x + b * y - c for x, y in polygon]
    kept = []
    for n, point in enumerate(polygon):
        m = (n + 1) % len(polygon)
        if side[n] <= 0:
            kept.append(point)
        if side[n] * side[m] < 0:
            t = side[n] / (side[n] - side[m])
            kept.append((point[0] + t * (polygon[m][0] - point[0]),
                         point[1] + t * (polygon[m][1] - point[1])))
    return kept


def area_of(polygon):
    """Shoelace."""
    if len(polygon) < 3:
        return F(0)
    total = F(0)
    for (x0, y0), (x1, y1) in zip(polygon, polygon[1:] + polygon[:1]):
        total += x0 * y1 - x1 * y0
    return abs(total) / 2


def split(polygon, region):
    """(part inside the convex region, convex parts outside)."""
    inside = polygon
    for plane in region:
        inside = clip(inside, plane)
        if area_of(inside) == 0:
            return [], [polygon]
    outside, left = [], polygon
    for plane in region:
        out = clip(left, plane, False)
        if area_of(out) > 0:
            outside.append(out)
            left = clip(left, plane)
    return inside, outside


def share_out(roof, zones):
    """zones: list of (name, convex regions) in order of precedence; a zone whose regions are
    None takes what is left.  Returns {name: area}."""
    left, areas = [roof], {}
    for name, regions in zones:
        areas[name] = F(0)
        if regions is None:
            areas[name] = sum((area_of(p) for p in left), F(0))
            left = []
            continue
        for region in regions:
            rest = []
            for piece in left:
                inside, outside = split(piece, region)
                areas[name] += area_of(inside)
                rest += outside
            left = rest
    return areas


def box(x0, x1, y0, y1):
    return [(-1, 0, -x0), (1, 0, x1), (0, -1, -y0), (0, 1, y1)]


# ---------------------------------------------------------------- layouts, section 2.5
# x runs along the ridge, 0..length; y across it, 0..width; rakes at x = 0 and x = length.

class Roof:
    def __init__(self, length, width):
        self.length, self.width = length, width

    def outline(self):
        x, y = self.length, self.width
        return [(F(0), F(0)), (x, F(0)), (x, y), (F(0), y)]

    def edge(self, depth):
        """Within depth of any of the four edges."""
        return self.eave(depth) + self.rake(depth)

    def eave(self, depth):
        x, y = self.length, self.width
        return [box(0, x, 0, depth), box(0, x, y - depth, y)]

    def rake(self, depth):
        x, y = self.length, self.width
        return [box(0, depth, 0, y), box(x - depth, x, 0, y)]

    def ridge(self, depth):
        middle = self.width / 2
        return [box(0, self.length, middle - depth, middle + depth)]

    def corners(self, along, across):
        """Four rectangles, along x across, one in each corner."""
        x, y = self.length, self.width
        return [box(x0, x1, y0, y1) for x0, x1 in ((0, along), (x - along, x))
                for y0, y1 in ((0, across), (y - across, y))]

    def legs(self, deep, long):
        """d1 <= deep and d2 <= long: an L in each corner."""
        return self.corners(long, deep) + self.corners(deep, long)

    def both(self, one, other):
        """Regions that lie in one of the first and one of the second."""
        return [p + q for p in one for q in other]

    def ridge_and_hips(self, depth):
        """Strips of depth on each side of the ridge and the four hips of an equal-slope hip
        roof, measured square to each line; length is not less than width here."""
        x, y = self.length, self.width
        half, d = y / 2, depth * ROOT_2
        strips = [box(half, x - half, half - depth, half + depth)]
        for sign_x in (1, -1):
            for sign_y in (1, -1):
                # u, v: distances from the two eaves that meet at this corner
                ux, uc = (1, 0) if sign_x == 1 else (-1, x)
                vy, vc = (1, 0) if sign_y == 1 else (-1, y)
                strips.append([
                    (ux, -vy, d - uc + vc),          # u - v <= d
                    (-ux, vy, d + uc - vc),          # v - u <= d
                    (-ux, -vy, uc + vc),             # u + v >= 0, the foot of the hip
                    (ux, vy, y - uc - vc),           # u + v <= width, the top of the hip
                ])
        return strips


def strip_width(least, height):
    """2.1: the width a.  Above 60 ft the term in height is dropped."""
    if height > 60:
        return max(least / 10, F(3))
    return max(min(least / 10, F(2, 5) * height), least / 25, F(3))


def layout(edition, shape, theta, height, length, width):
    """Zones of one roof in order of precedence."""
    roof = Roof(length, width)
    a = strip_width(min(length, width), height)
    if height > 60 and theta <= (10.0 if edition == E10 else 7.0):
        # edge strip a; corner size 2a is from memory in the page
        return roof, [("3", roof.corners(2 * a, 2 * a)), ("2", roof.edge(a)), ("1", None)]
    if theta <= (3.0 if shape == "monoslope" else 7.0):
        if edition == E10:
            return roof, [("3", roof.corners(a, a)), ("2", roof.edge(a)), ("1", None)]
        fifth, far = F(1, 5) * height, F(3, 5) * height
        return roof, [("3", roof.legs(fifth, far)), ("2", roof.edge(far)),
                      ("1", roof.edge(2 * far)), ("1'", None)]
    if shape == "monoslope" and theta <= 10.0:
        x, y = length, width                                     # the high eave lies at y = width
        primed = [box(0, 4 * a, y - 2 * a, y), box(x - 4 * a, x, y - 2 * a, y)]
        low = [box(0, 2 * a, 0, 2 * a), box(x - 2 * a, x, 0, 2 * a)]
        return roof, [("3'", primed), ("2'", [box(0, x, y - 2 * a, y)]), ("3", low),
                      ("2", roof.edge(a)), ("1", None)]
    if shape == "gable":
        eave, rake, ridge = roof.eave(a), roof.rake(a), roof.ridge(a)
        if edition == E10:
            return roof, [("3", roof.both(eave + ridge, rake)), ("2", eave + rake + ridge),
                          ("1", None)]
        if edition == E16:
            return roof, [("3e", roof.both(eave, rake)), ("3r", roof.both(ridge, rake)),
                          ("2e", eave), ("2r", ridge), ("2n", rake), ("1", None)]
        if theta <= 27.0:
            return roof, [("3", roof.both(ridge, rake)), ("2", rake + ridge), ("1", None)]
        return roof, [("3", roof.both(eave, rake)), ("2", rake), ("1", None)]
    if shape != "hip":
        raise ValueError("no layout for this roof")
    lines = roof.ridge_and_hips(a)
    if edition == E10:
        corner = [] if theta <= 25.0 else roof.corners(a, a)     # up to 25 degrees: 3 is 2
        return roof, [("3", corner), ("2", roof.edge(a) + lines), ("1", None)]
    if edition == E16:
        return roof, [("3", roof.corners(a, a)), ("2e", roof.edge(a)), ("2r", lines),
                      ("1", None)]
    return roof, [("3", roof.edge(a)), ("2", lines), ("1", None)]


def angle_of(slope_in_12):
    return math.degrees(math.atan(slope_in_12 / 12.0))


def areas_of(edition, shape, slope, height, length, width):
    """{zone: exact area}; the inputs are floats and taken at their exact value."""
    roof, zones = layout(edition, shape, angle_of(slope), F(height), F(length), F(width))
    return share_out(roof.outline(), zones)


def go_quick():
    """The same cuts in doubles: twenty times as fast, and some 1e-15 of the roof off."""
    global F, ROOT_2

    def quick(over, under=1):
        return over / under
    F, ROOT_2 = quick, math.sqrt(2.0)


# ---------------------------------------------------------------- random roofs

def pick_slope(rng, edition, shape):
    top = {"flat": 1.25, "gable": 12.0, "monoslope": 2.1,
           "hip": 6.0 if edition == E10 else 12.0}[shape]
    if rng.random() < 0.4:
        quarters = [n / 4.0 for n in range(1, 49) if n / 4.0 <= top]
        return rng.choice(quarters)
    return rng.uniform(0.05, top)


def one_roof(rng):
    edition = rng.choice(EDITIONS)
    shape = rng.choice(("flat", "flat", "gable", "gable", "gable", "hip", "hip", "hip",
                        "monoslope", "monoslope"))
    slope = pick_slope(rng, edition, shape)
    height = rng.choice((rng.uniform(8.0, 60.0), rng.uniform(8.0, 40.0),
                         float(rng.randint(10, 60)), rng.uniform(60.0, 250.0)))
    width = math.exp(rng.uniform(math.log(12.0), math.log(500.0)))
    ratio = rng.choice((1.0, rng.uniform(1.0, 1.3), rng.uniform(1.0, 5.0)))
    if rng.random() < 0.3:
        width = float(round(width))
    tall_flat = height > 60.0 and angle_of(slope) <= (10.0 if edition == E10 else 7.0)
    if height > 60.0 and not tall_flat:
        # Up to 240 ft both readings of `a` above 60 ft (with and without 0.4 h) agree.
        width = min(width, 240.0)
    if rng.random() < 0.15 and height <= 60.0:
        # on the borders where a zone vanishes
        width = rng.choice((1.2 * height, 2.4 * height, 0.4 * height, 6.0, 12.0))
    length = width * ratio
    if rng.random() < 0.8:                       # short binary fractions keep the sums quick
        height, width, length = (round(v * 64.0) / 64.0 for v in (height, width, length))
    length = max(length, width)
    if shape == "flat" and rng.random() < 0.5:
        length, width = width, length
    if shape in ("gable", "monoslope") and rng.random() < 0.3:
        length, width = width, length            # ridge or high eave along the shorter side
    return edition, shape, slope, height, length, width


def main():
    ask = argparse.ArgumentParser(description="random roofs with zone areas in plan, as CSV")
    ask.add_argument("--rows", type=int, default=1000)
    ask.add_argument("--seed", type=int, default=1)
    ask.add_argument("--quick", action="store_true", help="in doubles instead of fractions")
    want = ask.parse_args()
    if want.quick:
        go_quick()
    rng = random.Random(want.seed)
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(COLUMNS)
    made = 0
    while made < want.rows:                      # a roof is never cut off in the middle
        edition, shape, slope, height, length, width = one_roof(rng)
        areas = areas_of(edition, shape, slope, height, length, width)
        off = abs(sum(areas.values()) - F(length) * F(width))
        if off > (1e-12 * length * width if want.quick else 0):
            raise SystemExit("zones do not add up")
        a = float(strip_width(min(F(length), F(width)), F(height)))
        for zone in sorted(areas):
            out.writerow([edition, shape, repr(slope), repr(height), repr(length), repr(width),
                          zone, repr(a), repr(float(areas[zone]))])
            made += 1


if __name__ == "__main__":
    main()

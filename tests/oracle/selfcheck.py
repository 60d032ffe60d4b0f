#!/usr/bin/env python3
"""Hold the second opinion against the examples in the wind and mechanics pages.

    python3 selfcheck.py        exit status 1 on a miss
Published answers have the tolerance that their page gives; answers composed for the project and
recomputed ones are held to their printed digits.
"""
import math
import random
import sys

import fastening as f
import plan
import wind as w

count, misses = 0, []


def near(name, got, want, tolerance):
    global count
    count += 1
    if not abs(got - want) <= tolerance:
        misses.append("%s: got %r, want %r within %r" % (name, got, want, tolerance))


def true(name, answer):
    global count
    count += 1
    if not answer:
        misses.append(name)


def numbers(text):
    return [float(t) for t in text.split()]


def slope_of(theta):
    return 12.0 * math.tan(math.radians(theta))


def roof(edition, shape, theta, height, zone, area, speed=120.0, exposure="C", least=100.0,
         parapet=0.0, enclosure="enclosed", **more):
    row = {"edition": edition, "shape": shape, "slope_in_12": slope_of(theta),
           "height_ft": height, "least_ft": least, "greatest_ft": least, "exposure": exposure,
           "speed_mph": speed, "ground_ft": 0.0, "hill": "none", "hill_height_ft": 0.0,
           "hill_half_length_ft": 0.0, "hill_distance_ft": 0.0, "enclosure": enclosure,
           "parapet_ft": parapet, "exposure_b_floor": "no", "zone": zone,
           "area_sq_ft": float(area)}
    row.update(more)
    return w.expect(row)


# ---------------------------------------------------------------- wind page

def wind_1():
    """Printed Kz cells within the differences named in 1.2; Ke; Kzt."""
    for z, cells in ((15, "0.57 0.85 1.03"), (30, "0.70 0.98 1.16"), (60, "0.85 1.13 1.31"),
                     (100, "0.99 1.26 1.43"), (200, "1.20 1.46 1.61"), (500, "1.56 1.77 1.89")):
        for e, cell in zip("BCD", numbers(cells)):
            near("1.2 7-16 %s %d" % (e, z), w.kz_at(w.E16, e, z, False), cell + 0.001, 0.0095)
    for z, cells in ((15, "0.57 0.85 1.03"), (30, "0.70 0.98 1.16"), (60, "0.83 1.13 1.31"),
                     (100, "0.95 1.26 1.43"), (200, "1.14 1.44 1.61"), (500, "1.46 1.74 1.89")):
        for e, cell in zip("BCD", numbers(cells)):
            near("1.2 7-22 %s %d" % (e, z), w.kz_at(w.E22, e, z, False), cell, 0.0155)
    for z, ke in zip(range(1000, 7000, 1000), numbers("0.9644 0.9302 0.8971 0.8652 0.8344 0.8048")):
        near("1.4 Ke", w.ke_at(w.E16, float(z)), ke, 5.1e-5)
    true("1.4 none in 7-10", w.ke_at(w.E10, 5000.0) == 1.0)
    near("1.5 ridge", w.kzt_at("C", "ridge", 80.0, 160.0, 50.0, 30.0), 1.7610, 5e-5)
    near("1.5 escarpment", w.kzt_at("C", "escarpment", 80.0, 160.0, 50.0, 30.0), 1.5505, 5e-5)


SPEEDS_41 = (110, 115, 120, 130, 140, 150, 160, 170, 180)
CASES_41 = (
    ("1", 10, "13 14 15 18 21 24 27 31 35.0",
     "13.05 14.26 15.53 18.23 21.14 24.26 27.61 31.17 34.94"),
    ("1", 20, "12 13 15 17 20 23 26 30 34.1",
     "12.72 13.90 15.13 17.76 20.60 23.65 26.90 30.37 34.05"),
    ("2", 10, "21 23 26 30 35 40 46 52 58.7",
     "21.90 23.93 26.06 30.58 35.47 40.72 46.32 52.30 58.63"),
    ("3", 10, "33 36 39 46 53 61 69 78 88.3",
     "32.95 36.02 39.22 46.03 53.38 61.28 69.72 78.71 88.24"),
    ("3", 50, "19 21 23 27 32 36 41 47 53.1",
     "19.81 21.66 23.58 27.67 32.10 36.84 41.92 47.32 53.06"),
    ("3", 100, "14 15 16 19 22 26 30 33 37.9",
     "14.15 15.47 16.85 19.77 22.93 26.32 29.95 33.81 37.90"))


def wind_4_1():
    # The page works with Kz 0.70 to two places; the power law at 30 ft gives 0.7007.
    for zone, area, published, computed in CASES_41:
        for v, pub, calc in zip(SPEEDS_41, numbers(published), numbers(computed)):
            row = roof(w.E10, "flat", 3.0, 30.0, zone, area, float(v), "B")
            p = row["asd_psf"]
            q = w.q_at(w.E10, 0.70, 1.0, 1.0, float(v))
            at_070 = 0.6 * w.pressure(w.E10, q, row["gcp_uplift"], row["gcpi"])
            name = "4.1 zone %s, %d sq ft, %d mph" % (zone, area, v)
            near(name + " calc", at_070, calc, 0.0105)
            near(name + " power law", p, calc, 0.0015 * calc)
            if v == 180:
                near(name, at_070, pub, 0.1)
            else:
                true(name, pub - 0.1 <= at_070 < pub + 1.0)
    near("4.1 zone 1, 50, 180 mph",
         0.6 * w.pressure(w.E10, w.q_at(w.E10, 0.70, 1, 1, 180.0),
                          w.gcp_of(w.E10, "flat", 3.0, 30.0, 50.0, 0.0, "1", 50.0), 0.18),
         32.87, 0.0105)


def wind_4_2():
    for height, exposure, published, computed in (
            (20, "C", "39.1 68.1 100.7 42.8 50.0", "38.95 67.79 100.25 42.55 49.76"),
            (25, "C", "40.9 71.3 105.4 44.8 52.3", "40.82 71.06 105.07 44.60 52.16"),
            (30, "C", "42.4 73.9 109.3 46.4 54.3", "42.42 73.84 109.18 46.34 54.20"),
            (40, "C", "45.1 78.7 116.3 49.4 57.8", "45.06 78.45 116.00 49.24 57.58"),
            (20, "D", "47.0 81.9 121.0 51.4 60.1", "46.77 81.42 120.39 51.10 59.76"),
            (35, "D", "51.5 89.9 132.7 56.4 65.9", "51.55 89.74 132.70 56.32 65.87"),
            (40, "D", "52.7 91.9 135.8 57.7 67.9", "52.76 91.85 135.81 57.65 67.42")):
        for (theta, zone), pub, calc in zip(
                ((14.0, "1"), (14.0, "2"), (14.0, "3"), (40.0, "1"), (40.0, "2")),
                numbers(published), numbers(computed)):
            p = roof(w.E10, "gable", theta, float(height), zone, 10, 175.0, exposure)["asd_psf"]
            name = "4.2 %d ft, %s, %g deg, zone %s" % (height, exposure, theta, zone)
            near(name, p, pub, 0.0075 * pub)
            near(name + " calc", p, calc, 0.02)


def wind_4_3():
    tables = (
        ("gable", 18.0, (("1", "2e"), ("2n", "2r", "3e"), ("3r",)),
         ((15, "74 108 128", "73.99 107.93 128.30"), (20, "78 114 136", "78.61 114.67 136.31"),
          (30, "85 125 148", "85.62 124.89 148.46"), (40, "91 132 157", "90.96 132.69 157.73"),
          (60, "98 144 171", "99.07 144.51 171.78"))),
        ("gable", 25.0, (("1", "2e"), ("2n", "2r", "3e"), ("3r",)),
         ((15, "57 91 128", "57.02 90.96 128.30"), (30, "66 105 148", "65.98 105.26 148.46"),
          (60, "76 121 171", "76.35 121.79 171.78"))),
        ("gable", 45.0, (("1", "2e", "2r"), ("2n", "3r"), ("3e",)),
         ((15, "67 74 115", "67.20 73.99 114.72"), (30, "78 85 132", "77.76 85.62 132.75"),
          (60, "89 98 153", "89.98 99.07 153.60"))),
        ("hip", 18.0, (("1",), ("2r",), ("2e", "3")),
         ((15, "67 88 94", "67.20 87.57 94.36"), (30, "78 101 109", "77.76 101.33 109.18"),
          (60, "89 117 125", "89.98 117.25 126.34"))),
        # Zone 1 at 45 degrees: the page computes with -1.5, its own formula gives -1.5175, so
        # that cell is only held to the published value.
        ("hip", 45.0, (("1",), ("2r",), ("2e",), ("3",)),
         ((15, "57 98 101 128", "nan 97.41 101.66 128.64"),
          (30, "66 113 117 149", "nan 112.72 117.63 148.85"))))
    for shape, theta, groups, lines in tables:
        for height, published, computed in lines:
            for group, pub, calc in zip(groups, numbers(published), numbers(computed)):
                for zone in group:
                    # plan chosen so that h/B is 0.8 or more
                    row = roof(w.E16, shape, theta, float(height), zone, 2, 175.0,
                               least=height / 0.9, slope_in_12=12.0 if theta == 45.0
                               else slope_of(theta))
                    name = "4.3 %s %g deg, %d ft, zone %s" % (shape, theta, height, zone)
                    near(name, row["asd_psf"], pub, max(1.0, 0.012 * pub))
                    if calc == calc:
                        near(name + " calc", row["asd_psf"], calc, 0.02)
    for height, kz, q in ((15, 0.8489, 56.57), (20, 0.9019, 60.10), (30, 0.9823, 65.46),
                          (40, 1.0436, 69.54), (60, 1.1366, 75.74)):
        row = roof(w.E16, "gable", 18.0, float(height), "1", 2, 175.0)
        near("4.3 Kz", row["kz"], kz, 5.1e-5)
        near("4.3 q", row["q_psf"], q, 0.0051)


def wind_4_4_to_4_10():
    for zone, want in (("1", 1.410), ("2", 1.971), ("3", 2.132)):
        near("4.4", w.gcp_of(w.E22, "hip", 15.0, 20.0, 50.0, 0.0, zone, 32.2), want, 5.1e-4)
    for area, cells in ((20.0, "1.2398 1.4796 2.6291"), (41.2 ** 2 / 3, "1.1 1.2 2.0")):
        for zone, want in zip("123", numbers(cells)):
            for edition in w.EDITIONS:
                near("4.5", w.gcp_of(edition, "monoslope", 14.0, 20.0, 40.0, 0.0, zone, area),
                     want, 5.1e-5)
    for zone, ten, pub_300, calc_300, gcp in (
            ("1", 76.1, 51.4, 51.49, 1.0914), ("1'", 43.7, 34.0, 34.08, 0.6614),
            ("2", 100.4, 68.9, 68.75, 1.5175), ("3", 136.9, 73.3, 73.51, 1.6350)):
        for edition in (w.E16, w.E22):
            g10 = w.gcp_of(edition, "flat", 2.0, 30.0, 100.0, 0.0, zone, 10.0)
            g300 = w.gcp_of(edition, "flat", 2.0, 30.0, 100.0, 0.0, zone, 300.0)
            near("4.6 A 10", 40.5 * (g10 + 0.18), ten, 0.05)
            near("4.6 A 300", 40.5 * (g300 + 0.18), pub_300, 0.215)
            near("4.6 A 300 calc", 40.5 * (g300 + 0.18), calc_300, 0.0055)
            near("4.6 GCp", g300, gcp, 5.1e-5)
    near("4.8 zone 1", w.gcp_of(w.E22, "hip", 26.6, 25.0, 32.0, 0.0, "1", 20.0), 1.2194, 5.1e-5)
    for zone in "23":
        near("4.8 zone " + zone,
             w.gcp_of(w.E22, "hip", 26.6, 25.0, 32.0, 0.0, zone, 20.0), 1.699, 5.1e-4)
    for parapet, cells in ((0.0, "48.79 33.10 64.66 80.89"), (3.0, "48.79 33.10 64.66 64.66")):
        for zone, want in zip(("1", "1'", "2", "3"), numbers(cells)):
            for edition in (w.E16, w.E22):
                q = w.q_at(edition, 1.065, 1.0, 1.0, 115.0)
                g = w.gcp_of(edition, "flat", 2.0, 45.0, 80.0, parapet, zone, 50.0)
                near("4.9", w.pressure(edition, q, g, 0.18), want, 0.0105)
    for zone, gcp, want in (("1", 1.2228, 36.74), ("2", 2.0519, 58.45), ("3", 2.8811, 80.16)):
        row = roof(w.E22, "flat", 2.0, 85.0, zone, 40, 115.0, "B", 120.0)
        near("4.10 GCp", row["gcp_uplift"], gcp, 5.1e-5)
        q = w.q_at(w.E22, 0.91, 1.0, 1.0, 115.0)
        near("4.10 table Kh", w.pressure(w.E22, q, row["gcp_uplift"], 0.18), want, 0.0105)
        near("4.10 power law", row["strength_psf"], want, 0.015 * want)


def wind_4_11_to_4_13():
    for h, cells in ((15, "17.3 18.8 22.1 nan 29.4 33.4 37.7 42.3 47.1"),
                     (30, "19.9 21.7 25.4 29.5 33.9 38.5 43.5 48.8 54.3"),
                     (40, "21.1 23.0 27.0 31.3 35.9 40.9 nan 51.8 57.7"),
                     (60, "23.0 25.0 29.3 34.0 39.1 44.4 50.2 56.2 62.7")):
        for v, want in zip((115, 120, 130, 140, 150, 160, 170, 180, 190), numbers(cells)):
            if want == want:
                near("4.11", 0.6 * w.q_at(w.E22, w.kz_at(w.E22, "C", h, False), 1, 1, v), want,
                     0.1505)
    # 4.12 is in metres, with 0.3048 m to the foot.
    near("4.12 Kz", w.kz_at(w.E16, "C", 5.0 / 0.3048, False), 0.8650282179175907, 1e-12)
    near("4.12 Kz", w.kz_at(w.E16, "C", 6.5 / 0.3048, False), 0.9141518634861495, 1e-12)
    for edition, shape, theta, zone, want in (
            (w.E10, "gable", 14.0, "1", 31.99), (w.E10, "gable", 14.0, "2", 55.68),
            (w.E10, "gable", 14.0, "3", 82.34), (w.E16, "gable", 14.0, "1", 64.57),
            (w.E16, "gable", 14.0, "2n", 94.19), (w.E16, "gable", 14.0, "3r", 111.96),
            (w.E22, "gable", 14.0, "1", 64.53), (w.E22, "gable", 14.0, "2", 85.25),
            (w.E22, "gable", 14.0, "3", 111.89), (w.E10, "flat", 3.0, "1", 34.95),
            (w.E10, "flat", 3.0, "2", 58.65), (w.E10, "flat", 3.0, "3", 88.27),
            (w.E16, "flat", 3.0, "1'", 31.99), (w.E16, "flat", 3.0, "1", 55.68),
            (w.E16, "flat", 3.0, "2", 73.46), (w.E16, "flat", 3.0, "3", 100.11)):
        near("4.13 %s %s %s" % (edition, shape, zone),
             roof(edition, shape, theta, 25.0, zone, 10)["strength_psf"], want, 0.0105)
    for zone, want in (("1", 42.95), ("2", 66.64), ("3", 93.30)):
        near("4.13 partially enclosed",
             roof(w.E10, "gable", 14.0, 25.0, zone, 10,
                  enclosure="partially enclosed")["strength_psf"], want, 0.0105)
    for theta, zone, want in ((14.0, "1", 19.19), (14.0, "2", 33.41), (14.0, "3", 49.40)):
        near("4.13 ASD", roof(w.E10, "gable", theta, 25.0, zone, 10)["asd_psf"], want, 0.0105)
    near("trap 6", w.gcp_of(w.E16, "gable", 25.0, 20.0, 50.0, 0.0, "3r", 6.67), 3.236, 0.001)


def wind_edges():
    """Band ends, 2.1: greater than the lower, up to and including the upper."""
    for shape, edition, theta, at, above in (
            ("gable", w.E16, 7, "30.3-2A", "30.3-2B"), ("gable", w.E16, 20, "30.3-2B", "30.3-2C"),
            ("gable", w.E22, 27, "30.3-2C", "30.3-2D"), ("hip", w.E16, 20, "30.3-2E", "30.3-2G"),
            ("hip", w.E16, 27, "30.3-2G", "30.3-2H"), ("hip", w.E22, 27, "30.3-2F", "30.3-2G"),
            ("monoslope", w.E22, 3, "30.3-2A", "30.3-5A"), ("gable", w.E16, 45, "30.3-2D", None),
            ("monoslope", w.E10, 10, "30.4-5A", "30.4-5B"), ("hip", w.E10, 27, "30.4-2B", None),
            ("gable", w.E10, 27, "30.4-2B", "30.4-2C"), ("monoslope", w.E10, 30, "30.4-5B", None)):
        s = w.EDGE_SLOPE[theta]
        true("band end %s %s %d" % (edition, shape, theta),
             w.figure_of(edition, shape, w.angle_of(s), 30.0) == at
             and w.figure_of(edition, shape, w.angle_of(s - 1e-9), 30.0) == at
             and w.figure_of(edition, shape, w.angle_of(s + 1e-9), 30.0) == above)
    true("60 ft", [w.figure_of(w.E16, "flat", 2.0, h) for h in (60.0, 60.000001)]
         == ["30.3-2A", "30.5-1"])
    true("60 ft, 9 degrees", [w.figure_of(e, "gable", 9.0, 70.0) for e in w.EDITIONS]
         == ["30.6-1", "30.3-2B", "30.3-2B"])


def wind_between():
    """What no example of the page reaches, worked by hand from 2.4-2.6."""
    # hip of 7-22 at 36 degrees: half way between 2F and 2G
    for zone, area, want in (("1", 10, 1.45), ("2", 10, 1.9), ("3", 10, 2.2), ("1", 100, 0.75),
                             ("2", 100, 0.9), ("3", 100, 1.0)):
        near("hip 7-22", w.gcp_of(w.E22, "hip", 36.0, 20.0, 50.0, 0.0, zone, area), want, 1e-12)
    # hip of 7-16, h/B 0.65: half way
    for zone, area, want in (("1", 20, 1.55), ("2r", 10, 2.4), ("2e", 10, 2.2), ("3", 200, 1.25),
                             ("1", 100, 1.0)):
        near("h/B", w.gcp_of(w.E16, "hip", 15.0, 26.0, 40.0, 0.0, zone, area), want, 1e-12)
    # 2H at 40 degrees: ends of the lines
    for zone, area, want in (("1", 10, 1.4175), ("1", 200, 0.635), ("2e", 2, 2.48),
                             ("2e", 80, 0.8), ("2r", 5, 2.28), ("2r", 100, 1.0),
                             ("3", 3.6, 3.07), ("3", 50, 1.0)):
        near("2H", w.gcp_of(w.E16, "hip", 40.0, 26.0, 40.0, 0.0, zone, area), want, 1e-12)
    # middle of a line in log area is the mean of its ends
    for edition, shape, theta, zone, area, want in (
            (w.E16, "gable", 15.0, "2n", 50.0, 2.0), (w.E16, "gable", 25.0, "3r", 200 ** 0.5, 2.7),
            (w.E16, "gable", 25.0, "2r", 1500 ** 0.5, 1.85),
            (w.E16, "gable", 40.0, "3e", 600 ** 0.5, 2.1),
            (w.E22, "gable", 15.0, "1", 3000 ** 0.5, 1.25),
            (w.E22, "gable", 25.0, "3", 1000 ** 0.5, 2.2),
            (w.E22, "gable", 40.0, "3", 2000 ** 0.5, 1.75),
            (w.E22, "hip", 15.0, "1", 2000 ** 0.5, 1.3),
            (w.E10, "monoslope", 8.0, "3'", 1000 ** 0.5, 2.1)):
        near("middle of a line",
             w.gcp_of(edition, shape, theta, 20.0, 40.0, 0.0, zone, area), want, 1e-12)
    for edition in w.EDITIONS:
        low = roof(edition, "flat", 3.0, 12.0, "1", 1000, 85.0, "B")
        near("2.4 minimum", low["strength_psf"], 16.0, 0.0)
        near("2.4 minimum, ASD", low["asd_psf"], 9.6, 1e-12)
    for theta, want in ((25.0, 1.7), (26.0, 2.6)):
        near("hip 7-10", w.gcp_of(w.E10, "hip", theta, 20.0, 40.0, 0.0, "3", 10), want, 0.0)
    for height, want in ((45.0, 1.8), (85.0, 2.3)):
        near("parapet", w.gcp_of(w.E10, "flat", 2.0, height, 40.0, 3.0, "3", 10), want, 0.0)
    near("parapet too low", w.gcp_of(w.E10, "flat", 2.0, 45.0, 40.0, 2.9, "3", 10), 2.8, 0.0)
    true("floor in Exposure B", w.kz_at(w.E10, "B", 15.0, False) == w.kz_at(w.E10, "B", 30.0, False)
         and w.kz_at(w.E22, "B", 15.0, True) == w.kz_at(w.E22, "B", 30.0, False)
         and w.kz_at(w.E22, "B", 15.0, False) < 0.58)
    true("topography left out", w.kzt_at("C", "ridge", 14.9, 50.0, 0.0, 20.0) == 1.0
         and w.kzt_at("B", "ridge", 59.9, 100.0, 0.0, 20.0) == 1.0
         and w.kzt_at("C", "ridge", 19.9, 100.0, 0.0, 20.0) == 1.0
         and w.kzt_at("C", "ridge", 80.0, 160.0, 240.0, 20.0) == 1.0
         and w.kzt_at("C", "escarpment", 80.0, 160.0, 240.0, 20.0) > 1.0
         and w.kzt_at("C", "escarpment", 80.0, 160.0, -240.0, 20.0) == 1.0)
    # H/Lh 1: K1 takes 0.5, K2 and K3 take 2H = 200
    near("steep ridge", w.kzt_at("C", "ridge", 100.0, 100.0, 60.0, 20.0),
         (1 + 0.725 * 0.8 * math.exp(-0.3)) ** 2, 1e-12)


# ---------------------------------------------------------------- zone plans

def zone_by_rule(edition, shape, theta, h, length, width, x, y):
    """The words of 2.5 applied to one point, by distances; shares nothing with the polygons."""
    least = min(length, width)
    a = (max(0.1 * least, 3.0) if h > 60.0
         else max(min(0.1 * least, 0.4 * h), 0.04 * least, 3.0))
    dx, dy = min(x, length - x), min(y, width - y)
    d1, d2 = min(dx, dy), max(dx, dy)
    if h > 60.0 and theta <= (10.0 if edition == w.E10 else 7.0):
        return "3" if d2 <= 2 * a else "2" if d1 <= a else "1"
    if shape == "monoslope" and theta > 3.0:
        if width - y <= 2 * a:                   # along the high eave
            return "3'" if dx <= 4 * a else "2'"
        return "3" if dx <= 2 * a and y <= 2 * a else "2" if d1 <= a else "1"
    if theta <= 7.0:
        if edition == w.E10:
            return "3" if d2 <= a else "2" if d1 <= a else "1"
        if d1 <= 0.2 * h and d2 <= 0.6 * h:
            return "3"
        return "2" if d1 <= 0.6 * h else "1" if d1 <= 1.2 * h else "1'"
    if shape == "gable":
        e, n, r = dy, dx, abs(y - width / 2)
        if edition == w.E10:
            if (e <= a or r <= a) and n <= a:
                return "3"
            return "2" if e <= a or n <= a or r <= a else "1"
        if edition == w.E16:
            if n <= a:
                return "3e" if e <= a else "3r" if r <= a else "2n"
            return "2e" if e <= a else "2r" if r <= a else "1"
        near_ridge = r <= a if theta <= 27.0 else e <= a
        if n <= a and near_ridge:
            return "3"
        return "2" if n <= a or (theta <= 27.0 and near_ridge) else "1"
    # hip: true distance to the ridge and to the four hips as line segments
    half = width / 2
    lines = [((half, half), (length - half, half))]
    for cx, ex in ((0.0, half), (length, length - half)):
        lines += [((cx, 0.0), (ex, half)), ((cx, width), (ex, half))]
    r = min(to_segment(x, y, p, q) for p, q in lines)
    if edition == w.E22:
        return "3" if d1 <= a else "2" if r <= a else "1"
    if edition == w.E16:
        return "3" if d2 <= a else "2e" if d1 <= a else "2r" if r <= a else "1"
    if theta > 25.0 and d2 <= a:
        return "3"
    return "2" if d1 <= a or r <= a else "1"


def to_segment(x, y, p, q):
    ux, uy = q[0] - p[0], q[1] - p[1]
    size = ux * ux + uy * uy
    t = 0.0 if size == 0.0 else max(0.0, min(1.0, ((x - p[0]) * ux + (y - p[1]) * uy) / size))
    return math.hypot(x - p[0] - t * ux, y - p[1] - t * uy)


def plans():
    rng = random.Random(5)
    steps = 120
    for _ in range(60):
        edition, shape, slope, h, length, width = plan.one_roof(rng)
        areas = plan.areas_of(edition, shape, slope, h, length, width)
        true("zones add up", sum(areas.values()) == plan.F(length) * plan.F(width))
        seen, theta = dict.fromkeys(areas, 0), plan.angle_of(slope)
        for i in range(steps):
            for j in range(steps):
                x, y = (i + 0.5) / steps * length, (j + 0.5) / steps * width
                seen[zone_by_rule(edition, shape, theta, h, length, width, x, y)] += 1
        for zone, area in areas.items():
            # a border is off by at most half a cell; few borders cross a roof
            near("plan %s %s %.3f h %.2f %.2f x %.2f zone %s"
                 % (edition, shape, slope, h, length, width, zone),
                 seen[zone] / steps ** 2, float(area) / (length * width), 4.5 / steps)
    a = plan.strip_width
    near("a, 4.8", float(a(plan.F(32), plan.F(25))), 3.2, 1e-12)
    near("a, 4.9", float(a(plan.F(80), plan.F(45))), 8.0, 1e-12)
    near("a, 4.10", float(a(plan.F(120), plan.F(85))), 12.0, 1e-12)
    near("flat corner L", float(plan.areas_of(w.E16, "flat", 0.5, 20.0, 200.0, 100.0)["3"]),
         4 * (2 * 12 * 4 - 4 * 4), 1e-9)
    near("gable 7-22 ends", float(plan.areas_of(w.E22, "gable", 4.0, 20.0, 100.0, 50.0)["3"]),
         2 * 5 * 10, 1e-9)
    # by hand, 100 x 50 ft, a = 5: what the strips leave of two end triangles and two long sides
    d = 5.0 * math.sqrt(2.0)
    ends = (40.0 - 2.0 * d) ** 2 / 4.0
    sides = 15.0 * ((90.0 - 2.0 * d) + (60.0 - 2.0 * d)) / 2.0
    for edition, strip in ((w.E22, "3"), (w.E16, "2e")):
        got = plan.areas_of(edition, "hip", 4.0, 20.0, 100.0, 50.0)
        near("hip field", float(got["1"]), 2.0 * (ends + sides), 1e-9)
        near("hip eaves", float(got[strip]), 1400.0 - (100.0 if edition == w.E16 else 0.0), 1e-9)


# ---------------------------------------------------------------- mechanics page

def screws():
    for d, cells in ((0.190, "44 58 73 87 116 145 182 254 303"),
                     (0.216, "50 66 83 99 132 165 207 289 344 515 689")):
        for t, want in zip(numbers(".018 .024 .030 .036 .048 .060 .075 .105 .125 .187 .250"),
                           numbers(cells)):
            near("10.3 T1", f.pullout(t, d, 45.0) / 3.0, want, 0.5001)
    lines = ((0.0188, 33.0, "24 84 29 84 33 105 38 105 44 127", 0.5001),
             (0.0346, 45.0, "60.9 211.8 72.3 211.8 83.8 264.7 95.3 264.7 110.3 318.4", 0.051),
             (0.0451, 45.0, "79.4 276.0 94.3 276.0 109.3 345.0 124.2 345.0 143.8 415.0", 0.051),
             (0.0566, 65.0, "143.8 500.3 171.0 500.3 198.1 625.4 225.2 625.4 260.6 752.4", 0.051),
             (0.0713, 65.0, "181.2 630.3 215.3 630.3 249.5 787.9 283.6 787.9 328.3 947.8", 0.051),
             (0.1017, 65.0, "258.5 899.0 307.2 899.0 355.9 1123.8 404.6 1123.8 468.2 1351.8",
              0.051))
    sizes = ((0.138, 0.272), (0.164, 0.272), (0.190, 0.340), (0.216, 0.340), (0.250, 0.409))
    for t, fu, cells, tolerance in lines:
        cells = numbers(cells)
        for n, (d, head) in enumerate(sizes):
            near("10.4 T3 pull-out", f.pullout(t, d, fu) / 3.0, cells[2 * n], tolerance)
            near("10.4 T3 pull-over", f.pullover(t, head, fu, False) / 3.0, cells[2 * n + 1],
                 tolerance)
    near("T3 #6 in 54 mil", f.tension(0.0566, 0.138, 65.0, 0.0566, 0.272, 65.0, False, 419.0)
         / 3.0, 139.7, 0.051)
    true("5/16 in. is refused", f.pullout(0.03, 0.3125, 45.0) == f.REFUSED)
    for g, cells in ((.58, "281 332 381 428 473 559 641"), (.55, "260 307 352 395 437 516 592"),
                     (.50, "225 266 305 342 378 447 513"), (.42, "173 205 235 264 291 344 395"),
                     (.40, "161 190 218 245 271 320 367"), (.36, "137 163 186 209 231 273 313")):
        for d, want in zip(f.LAGS, numbers(cells)):
            near("10.5 T4", f.lag(g, d), want, 0.5001)
    for g, cells in ((.55, "119 130 141 153 164 186 209 231"),
                     (.50, "98 108 117 126 135 154 172 191"),
                     (.42, "69 76 82 89 96 109 122 135"), (.36, "51 56 61 65 70 80 89 99")):
        for d, want in zip((.138, .151, .164, .177, .190, .216, .242, .268), numbers(cells)):
            near("T5", f.wood_screw(g, d), want, 0.5001)
    near("10.1", f.wood_screw(0.45, 0.190), 109.654, 0.0006)
    near("10.6", f.clip_load(90.0, 72.0, 12.0), 540.0, 1e-9)
    near("10.6", f.clip_load(90.0, 72.0, 18.0), 810.0, 1e-9)
    near("10.7", f.allowable(120.0, 2.0), 60.0, 0.0)
    near("10.8 steel", f.movement(6.5, 100.0, "eave", 100.0, 0.0), 0.78, 1e-9)
    near("10.8 aluminium", f.movement(12.8, 100.0, "eave", 100.0, 0.0), 1.536, 1e-9)
    near("10.15", f.allowable(75.0, 2.0), 37.5, 0.0)
    near("low ductility", f.design_fu(80), 61.5, 1e-12)
    for p, width, s, want in ((30, 16, 24, 80.0), (45, 18, 24, 135.0), (60, 16, 12, 80.0),
                              (52.5, 12, 36, 157.5), (90, 18, 60, 675.0)):
        near("2.2", f.clip_load(p, width, s), want, 1e-9)


def composed():
    """10.17."""
    near("E-A pull-out", f.pullout(.0295, .216, 45.0), 243.729, 5.1e-4)
    near("E-A pull-over", f.pullover(.0598, .340, 45.0, False), 1372.41, 0.0051)
    near("E-A one-sided", f.pullover(.0598, .340, 45.0, True) / 3.0, 228.7, 0.051)
    clip = 2 * f.tension(.0295, .216, 45.0, .0598, .340, 45.0, True, 2325.0) / 3.0
    near("E-A clip", clip, 162.486, 5.1e-4)
    load = f.clip_load(45.0, 18.0, 24.0)
    near("E-A D/C", load / clip, .8308, 5.1e-5)
    for d, want, ratio in ((.190, 142.93, .9445), (.242, 182.04, .7416), (.250, 188.06, .7178)):
        near("E-A other screw", 2 * f.pullout(.0295, d, 45.0) / 3.0, want, 0.0051)
        near("E-A other ratio", load / (2 * f.pullout(.0295, d, 45.0) / 3.0), ratio, 5.1e-5)
    for t, fu, want in ((.0295, 55.0, 198.59), (.0358, 45.0, 197.19), (.0474, 45.0, 261.08),
                        (.0295, 65.0, 234.70)):
        near("E-A deck", 2 * f.pullout(t, .216, fu) / 3.0, want, 0.0051)
    near("E-B per inch", f.wood_screw(.42, .190), 95.521, 5.1e-4)
    near("E-B screw", f.wood_screw(.42, .190) * .46875 * f.WIND_DURATION, 71.64, 0.0051)
    for g, d, t, want in ((.42, .190, .46875, 53.73), (.42, .216, .46875, 61.08),
                          (.42, .242, .46875, 68.44), (.50, .190, .46875, 76.15),
                          (.42, .190, .59375, 68.06), (.42, .190, .71875, 82.39)):
        clip = 2 * f.wood_screw(g, d) * t * f.WIND_DURATION
        near("E-B psf", clip / (16.0 / 12.0 * 2.0), want, 0.0051)


def tests_and_heat():
    for s1, p1, s2, p2, s, cells in (
            (12., 105., 48., 45., 24., "85.000 65.000 68.739"),
            (12., 105., 48., 45., 30., "75.000 57.000 59.975"),
            (24., 90., 60., 40., 48., "56.667 48.333 48.733"),
            (30., 100., 60., 50., 45., "75.000 66.667 66.667"),
            (30., 100., 60., 25., 45., "62.500 50.000 44.444")):
        answers = numbers(cells)
        for method, want in zip(("L", "R", "P", "least"), answers + [min(answers[1:])]):
            near("4.6 " + method, f.tested_pressure([s1, s2], [p1, p2], s, method), want, 5.1e-4)
    for method in ("L", "R", "P", "least"):
        true("4.6 ends", f.tested_pressure([12., 48.], [105., 45.], 6., method) == 105.
             and f.tested_pressure([12., 48.], [105., 45.], 48., method) == 45.
             and f.tested_pressure([12., 48.], [105., 45.], 48.001, method) == f.REFUSED)
    for alpha, length, high, install, low, grow, shrink in (
            (12.8, 60., 180., 70., -20., 1.0138, .8294),
            (6.5, 100., 170., 60., -10., .858, .546), (6.5, 150., 160., 70., 0., 1.053, .819)):
        near("5.3 expansion", f.movement(alpha, length, "eave", high, install), grow, 5.1e-5)
        near("5.3 contraction", f.movement(alpha, length, "eave", install, low), shrink, 5.1e-5)
        near("5.3 middle", f.movement(alpha, length, "middle", high, low), (grow + shrink) / 2,
             6e-5)
    for length, dt in ((59.19, 110.), (72.34, 90.)):
        near("5.3 one inch", f.movement(12.8, length, "eave", dt, 0.), 1.0, 1e-4)
    for alpha, cells in ((6.5, "0.780 1.170 1.560"), (12.8, "1.536 2.304 3.072"),
                         (13.0, "1.560 2.340 3.120"), (9.4, "1.128 1.692 2.256"),
                         (12.2, "1.464 2.196 2.928"), (9.6, "1.152 1.728 2.304")):
        for dt, want in zip((100., 150., 200.), numbers(cells)):
            near("5.1", f.movement(alpha, 100., "eave", dt, 0.), want, 5.1e-4)


def main():
    for part in (wind_1, wind_4_1, wind_4_2, wind_4_3, wind_4_4_to_4_10, wind_4_11_to_4_13,
                 wind_edges, wind_between, plans, screws, composed, tests_and_heat):
        part()
    for miss in misses:
        print(miss)
    print("%d checks, %d misses" % (count, len(misses)))
    return 1 if misses else 0


if __name__ == "__main__":
    sys.exit(main())

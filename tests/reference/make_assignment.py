"""Makes assignment_scipy.csv: random assignment problems, worked by scipy.

Run with Python 3.11, numpy and scipy 1.17.1:
    python make_assignment.py > assignment_scipy.csv
The sums are scipy's own; the worst, the total among the least worst and the
spread come from full enumeration in plain Python.
"""

import csv
import itertools
import json
import sys

import numpy
import scipy
from scipy.optimize import linear_sum_assignment

SOURCE = f"scipy {scipy.__version__} optimize.linear_sum_assignment"
ENUMERATED = "full enumeration (itertools.permutations)"


def rows_of(name, cost, maximize):
    rows, columns = linear_sum_assignment(cost, maximize=maximize)
    total = float(cost[rows, columns].sum())
    yield "sum", "optimal_total", total, "cost", SOURCE
    if cost.shape[1] > 8:
        return
    picked = [
        [cost[row, column] for row, column in enumerate(columns)]
        for columns in itertools.permutations(range(cost.shape[1]), cost.shape[0])
    ]
    totals = [sum(one) for one in picked]
    best = max(totals) if maximize else min(totals)
    assert abs(best - total) < 1e-9
    optima = sum(abs(one - best) < 1e-9 for one in totals)
    yield "sum", "number_of_optima", optima, "count", ENUMERATED
    if optima == 1:
        yield "sum", "assignment", json.dumps([int(c) for c in columns]), "column of each row", SOURCE
    if maximize:
        return
    worst = min(max(one) for one in picked)
    yield "bottleneck", "minimax", float(worst), "cost", ENUMERATED
    among = min(sum(one) for one in picked if max(one) <= worst)
    yield "bottleneck", "min_total_among_minimax", float(among), "cost", ENUMERATED
    spread = min(max(one) - min(one) for one in picked)
    yield "bottleneck", "min_spread", float(spread), "cost", ENUMERATED


def problems():
    random = numpy.random.default_rng(20_240_229)
    for size, columns, most in [
        (2, 2, 5), (3, 3, 4), (4, 4, 6), (5, 5, 9), (6, 6, 12), (8, 8, 60),
        (3, 6, 9), (4, 7, 30), (5, 8, 50), (12, 12, 400), (16, 24, 4000),
    ]:
        yield f"whole {size}x{columns}", random.integers(0, most, (size, columns)).astype(float), False
    yield "most 5x5", random.integers(0, 40, (5, 5)).astype(float), True
    yield "below nothing 4x4", random.integers(-20, 20, (4, 4)).astype(float), False
    yield "all alike 4x4", numpy.full((4, 4), 7.0), False
    bores = 92.0 + random.integers(0, 30, 8) / 1000
    pistons = 91.95 + random.integers(0, 30, 8) / 1000
    misses = numpy.abs(bores[:, None] - pistons[None, :] - 0.05)
    yield "misses of a clearance 8x8, mm", numpy.round(misses, 3), False


def main():
    writer = csv.writer(sys.stdout, lineterminator="\n")
    columns = "id,topic,quantity,inputs,expected,unit,tol_abs,tol_rel,source,provenance,note"
    writer.writerow(columns.split(","))
    number = 0
    for name, cost, maximize in problems():
        inputs = json.dumps({"case": name, "cost": cost.tolist(), "maximize": maximize})
        for topic, quantity, expected, unit, source in rows_of(name, cost, maximize):
            number += 1
            tolerance = "" if quantity == "assignment" else "0.0" if unit == "count" else "1e-9"
            writer.writerow([
                f"assignment_scipy-{number:04}", topic, quantity, inputs, expected, unit,
                tolerance, "", source, "computed", "",
            ])


main()

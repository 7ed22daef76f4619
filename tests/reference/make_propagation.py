#!/usr/bin/env python3
"""Writes propagation.csv: correlated error propagation by an outside library.

The library is the PyPI package `uncertainties` 3.2.3 (linear error propagation
with automatic differentiation). To write the table again:

    python3 -m venv venv && venv/bin/pip install uncertainties==3.2.3
    venv/bin/python make_propagation.py

Every value is a nominal number plus contributions of independent causes of one
standard deviation each, so values that share a cause are correlated. A formula
is written in postfix: `x0 x1 - sqrt` is the root of x0 - x1. `mean:3`, `min:3`
and `max:3` take three values; min and max keep the errors of the one they pick.
"""
import csv
import json
import pathlib
import random

import uncertainties
from uncertainties import ufloat, umath

VERSION = "3.2.3"
assert uncertainties.__version__ == VERSION, uncertainties.__version__
SOURCE = f"PyPI package uncertainties {VERSION}, linear propagation"

UNARY = {
    "neg": lambda x: -x,
    "abs": lambda x: x if nominal(x) >= 0 else -x,
    "square": lambda x: x**2,
    "sqrt": umath.sqrt,
    "sin": umath.sin,
    "cos": umath.cos,
    "tan": umath.tan,
    "asin": umath.asin,
    "acos": umath.acos,
    "atan": umath.atan,
    "exp": umath.exp,
    "log": umath.log,
}
BINARY = {
    "+": lambda a, b: a + b,
    "-": lambda a, b: a - b,
    "*": lambda a, b: a * b,
    "/": lambda a, b: a / b,
    "hypot": umath.hypot,
}
SEVERAL = {
    "mean": lambda xs: sum(xs) / len(xs),
    "min": lambda xs: min(xs, key=nominal),
    "max": lambda xs: max(xs, key=nominal),
}


def nominal(x):
    return getattr(x, "nominal_value", x)


def deviation(x):
    return getattr(x, "std_dev", 0.0)


def evaluate(formula, values):
    stack = []
    for token in formula.split():
        name, _, count = token.partition(":")
        if name in UNARY:
            stack.append(UNARY[name](stack.pop()))
        elif name in BINARY:
            b, a = stack.pop(), stack.pop()
            stack.append(BINARY[name](a, b))
        elif name in SEVERAL:
            n = int(count)
            stack, taken = stack[:-n], stack[-n:]
            stack.append(SEVERAL[name](taken))
        elif name.startswith("x"):
            stack.append(values[int(name[1:])])
        else:
            stack.append(float(name))
    (result,) = stack
    return result


def correlated(nominals, causes):
    """Values from nominals and, for each cause, how far it moves each of them."""
    errors = [ufloat(0.0, 1.0) for _ in causes]
    return [
        value + sum(cause[i] * error for cause, error in zip(causes, errors))
        for i, value in enumerate(nominals)
    ]


ROWS = []


def row(topic, quantity, inputs, expected, tol_abs, note=""):
    ROWS.append(
        {
            "id": f"propagation-{len(ROWS) + 1:04d}",
            "topic": topic,
            "quantity": quantity,
            "inputs": json.dumps(inputs),
            "expected": repr(float(expected)),
            "unit": "1",
            "tol_abs": repr(tol_abs),
            "tol_rel": "1e-09",
            "source": SOURCE,
            "provenance": "computed",
            "note": note,
        }
    )


def formula_rows(formula, nominals, causes, other=None, note=""):
    values = correlated(nominals, causes)
    inputs = {"formula": formula, "values": nominals}
    inputs |= {f"cause_{i}": cause for i, cause in enumerate(causes)}
    result = evaluate(formula, values)
    scale = max(abs(nominal(result)), 1e-300)
    row("formula", "value", inputs, nominal(result), 1e-13 * max(scale, *map(abs, nominals)), note)
    largest = max(abs(part) for cause in causes for part in cause)
    row("formula", "deviation", inputs, deviation(result), 1e-13 * largest, note)
    if other is not None:
        second = evaluate(other, values)
        pair = uncertainties.covariance_matrix([result, second])
        inputs = inputs | {"other": other}
        row("formula", "covariance", inputs, pair[0][1], 1e-13 * largest**2, note)
        if deviation(result) > 0 and deviation(second) > 0:
            both = deviation(result) * deviation(second)
            row("formula", "correlation", inputs, pair[0][1] / both, 1e-12, note)


def formulas():
    inch = [2.4522, 2.4500]
    shared_zero = [[0.0003, 0.0003], [0.00015, 0.0], [0.0, 0.0001]]
    formula_rows("x0 x1 -", inch, shared_zero, "x0 x1 +", "a zero that both readings share cancels")
    formula_rows("x0 x1 +", inch, shared_zero, "x0", "and adds in a sum")
    formula_rows("x0 x1 -", inch, [[0.0003, -0.0003], [0.0001, 0.0]], "x1", "opposite signs add in a difference")
    formula_rows("x0 x0 -", inch, shared_zero, None, "a value less itself is exact")
    formula_rows("x0 x1 /", inch, [[0.0003, 0.0003]], "x0 x1 *")
    formula_rows("x0 x1 *", [3.0, -2.0], [[0.1, 0.2], [0.05, -0.03], [0.0, 0.04]], "x0 x1 /")
    formula_rows("x0 x1 x2 mean:3", [2.4501, 2.4503, 2.4499],
                 [[0.0002, 0.0002, 0.0002], [0.0001, 0, 0], [0, 0.0001, 0], [0, 0, 0.0001]],
                 "x0 x2 -", "the shared part of a mean does not shrink")
    formula_rows("x0 x1 x2 min:3", [2.4501, 2.4503, 2.4499],
                 [[0.0002, 0.0002, 0.0002], [0.0001, 0, 0], [0, 0.0002, 0], [0, 0, 0.0003]],
                 "x0 x1 x2 max:3", "the least keeps the errors of the least")
    formula_rows("x0 x1 min:2 x2 x3 max:2 -", [2.4524, 2.4522, 2.4500, 2.4503],
                 [[0.0003] * 4, [0.00015, 0, 0, 0], [0, 0.00015, 0, 0], [0, 0, 0.0001, 0], [0, 0, 0, 0.0001]],
                 "x0 x1 max:2 x2 x3 min:2 -", "least and greatest clearance")
    formula_rows("x0 x1 mean:2 x2 x3 mean:2 - abs", [2.4500, 2.4502, 2.4497, 2.4495],
                 [[0.0003] * 4, [0.0001, 0, 0, 0], [0, 0.0001, 0, 0], [0, 0, 0.0001, 0], [0, 0, 0, 0.0001]],
                 None, "taper of a journal")
    formula_rows("x0 x1 - abs", [1.0, 3.0], [[0.2, 0.1], [0.0, 0.3]], "x1", "a size without its sign")
    formula_rows("x0 x1 - x2 - x3 -", [2.6412, 0.0945, 0.0945, 2.4500],
                 [[0.0001, 0, 0, 0.0001], [0, 0.0001, 0.0001, 0], [0.0002, 0, 0, 0]], "x0 x3 -",
                 "housing less two walls of one lot less the journal")
    formula_rows("x0 square x1 square - sqrt", [0.145, 0.044], [[1e-5, 2e-5], [2e-5, 0.0]], "x0 x1 /",
                 "height of a piston at a right angle")
    formula_rows("x0 sin x1 * x2 / asin", [1.2, 0.044, 0.145], [[0.004, 1e-5, 1e-5], [0, 2e-5, -1e-5]],
                 "x0 cos x1 *", "angle of a connecting rod")
    formula_rows("x0 cos x1 * x2 square x0 sin x1 * square - sqrt +", [0.7, 0.044, 0.145],
                 [[0.004, 1e-5, 1e-5], [0, 2e-5, -1e-5], [0.002, 0, 3e-5]], "x0", "piston height")
    formula_rows("x0 x1 hypot", [3.0, 4.0], [[0.1, 0.1], [0.0, 0.2]], "x0 x1 / atan")
    formula_rows("x0 x1 hypot", [3.0, -4.0], [[0.1, 0.1]], "x0 x1 *", "a length that two errors cancel in")
    formula_rows("x0 x1 / atan", [0.3, 1.4], [[0.01, 0.02], [0.0, -0.01]], "x1 tan")
    formula_rows("x0 x1 * acos", [0.5, 0.6], [[0.01, -0.02], [0.03, 0.01]], "x0 asin")
    formula_rows("x0 exp x1 log +", [0.3, 2.0], [[0.01, 0.02]], "x0 x1 -")
    formula_rows("x0 1.0 x1 x2 20.0 - * + /", [62.2512, 1.15e-05, 8.0], [[0.002, 0, 0], [0, 1e-06, 0], [0.001, 0, 2.0]],
                 "x2", "a size brought to 20 degrees")
    formula_rows("x0 x1 x2 20.0 - * x0 * -", [101.63, 2.1e-05, 4.0], [[0.005, 0, 0.5], [0, 2e-06, 0], [0, 0, 1.0]],
                 "x0")
    formula_rows("x0 square x1 * 0.785398163397448 *", [0.1016, 0.0889], [[1e-5, 1e-5], [2e-5, 0]], "x0 x1 /", "swept volume")
    formula_rows("x0 x1 x2 + / 1.0 +", [6.5e-4, 6.0e-5, 1.2e-5], [[1e-6, 2e-7, 0], [0, 3e-7, -1e-7]], "x1 x2 +",
                 "compression ratio")
    formula_rows("x0 x1 x2 * -", [0.0178, 0.009, 1.98], [[2e-5, 0, 0.01], [0, 1e-5, 0.0]], "x1 x2 *")


def random_formulas(count):
    pick = random.Random(20)
    for _ in range(count):
        size = pick.randint(2, 4)
        nominals = [round(pick.uniform(0.3, 0.9), 6) for _ in range(size)]
        causes = [
            [round(pick.uniform(-0.02, 0.02), 6) if pick.random() < 0.7 else 0.0 for _ in range(size)]
            for _ in range(pick.randint(1, 4))
        ]
        if not any(any(cause) for cause in causes):
            causes[0][0] = 0.01
        formula = "x0"
        for i in range(1, size):
            formula += f" x{i} " + pick.choice(["+", "-", "*", "/", "hypot", "mean:2", "min:2", "max:2"])
            if pick.random() < 0.5:
                formula += " " + pick.choice(["sin", "cos", "atan", "exp", "square", "neg", "abs"])
        formula_rows(formula, nominals, causes, f"x0 x{size - 1} *", "drawn at random")


def chain_rows(bores, journals, bore_feel, journal_feel, bore_zero, journal_zero, chain, note):
    """The clearance of one bearing: a list of stations, each a list of readings."""
    zero_of_journals = ufloat(0.0, journal_zero)
    zero_of_bores = zero_of_journals if chain == "same micrometer" else ufloat(0.0, bore_zero)
    bore = [[v + ufloat(0.0, bore_feel) + zero_of_bores for v in station] for station in bores]
    journal = [[v + ufloat(0.0, journal_feel) + zero_of_journals for v in station] for station in journals]
    all_bores = [x for station in bore for x in station]
    all_journals = [x for station in journal for x in station]
    least, greatest, mean = SEVERAL["min"], SEVERAL["max"], SEVERAL["mean"]
    results = {
        "least": least(all_bores) - greatest(all_journals),
        "greatest": greatest(all_bores) - least(all_journals),
        "mean": mean(all_bores) - mean(all_journals),
    }
    if len(journal) > 1:
        means = [mean(station) for station in journal]
        results["journal_taper"] = greatest(means) - least(means)
    spreads = [greatest(station) - least(station) for station in journal if len(station) > 1]
    if spreads:
        results["journal_out_of_round"] = greatest(spreads)
    inputs = {
        "chain": chain,
        "bore_feel_in": bore_feel,
        "journal_feel_in": journal_feel,
        "bore_zero_in": bore_zero,
        "journal_zero_in": journal_zero,
    }
    inputs |= {f"bores_{i}_in": station for i, station in enumerate(bores)}
    inputs |= {f"journals_{i}_in": station for i, station in enumerate(journals)}
    for name, result in results.items():
        for kind, expected in [("value", nominal(result)), ("deviation", deviation(result))]:
            row("clearance_chain", f"{name}_{kind}", inputs, expected, 1e-14, note)
            ROWS[-1]["unit"] = "in"
            ROWS[-1]["tol_abs"] = "1e-14"


def chains():
    chain_rows([[2.4522]], [[2.4500]], 0.00015, 0.0001, 0.0, 0.0, "two tools", "feel alone")
    chain_rows([[2.4522]], [[2.4500]], 0.0003, 0.0002, 0.0002, 0.0003, "two tools", "both zeros count")
    chain_rows([[2.4522]], [[2.4500]], 0.00015, 0.0002, 0.0, 0.0003, "same micrometer", "the zero cancels")
    chain_rows([[2.4522, 2.4524], [2.4526, 2.4525]], [[2.4500, 2.4503], [2.4498, 2.4499]],
               0.00015, 0.0002, 0.0002, 0.0003, "two tools", "two stations, two directions")
    chain_rows([[2.4522], [2.4526]], [[2.4500, 2.4503, 2.4501], [2.4498, 2.4499, 2.4495]],
               0.00015, 0.0002, 0.0, 0.0003, "same micrometer", "two stations, three directions")


def main():
    formulas()
    random_formulas(12)
    chains()
    path = pathlib.Path(__file__).with_name("propagation.csv")
    with path.open("w", newline="") as file:
        writer = csv.DictWriter(file, fieldnames=list(ROWS[0]), lineterminator="\n")
        writer.writeheader()
        writer.writerows(ROWS)
    print(f"{len(ROWS)} rows in {path}")


if __name__ == "__main__":
    main()

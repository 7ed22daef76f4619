#!/usr/bin/env python3
"""Writes conversions.csv: texts, and the number of SI units they stand for.

Exact fractions throughout (Python's `fractions`), rounded once to the nearest
float. Nothing here is taken from the Rust table: each unit is built from the
definitions in NIST Special Publication 811 (2008), appendix B, and ISO 80000.
Angles use pi to 60 digits. Run with any Python 3; no packages.
"""
import csv
import pathlib
from fractions import Fraction as F

INCH = F("0.0254")  # international inch, exact
FOOT = 12 * INCH
POUND = F("0.45359237")  # avoirdupois pound, exact
GRAVITY = F("9.80665")  # standard gravity, exact
LBF = POUND * GRAVITY
KGF = GRAVITY
LITRE = F(1, 1000)
US_GALLON = 231 * INCH**3
MINUTE = 60
PI = F("3.14159265358979323846264338327950288419716939937510582097494")
MERCURY = F("13595.1")  # kg/m3, conventional

SP811 = "NIST SP 811 (2008) B.8"
UNITS = [
    ("Length", "in", INCH, "international inch"),
    ("Length", "mm", F(1, 1000), "SI"),
    ("Length", "thou", INCH / 1000, "international inch"),
    ("Length", "tenths", INCH / 10000, "international inch"),
    ("Length", "µm", F(1, 10**6), "SI"),
    ("Length", "hundredths", F(1, 100000), "SI"),
    ("Length", "cm", F(1, 100), "SI"),
    ("Length", "m", F(1), "SI"),
    ("Length", "ft", FOOT, "international foot"),
    ("Length", "µin", INCH / 10**6, "international inch"),
    ("Area", "in²", INCH**2, "international inch"),
    ("Area", "mm²", F(1, 10**6), "SI"),
    ("Area", "cm²", F(1, 10**4), "SI"),
    ("Area", "m²", F(1), "SI"),
    ("Volume", "cc", F(1, 10**6), "SI"),
    ("Volume", "mL", LITRE / 1000, "SI"),
    ("Volume", "L", LITRE, "SI"),
    ("Volume", "in³", INCH**3, "international inch"),
    ("Volume", "mm³", F(1, 10**9), "SI"),
    ("Volume", "US qt", US_GALLON / 4, "US gallon of 231 in³"),
    ("Volume", "US fl oz", US_GALLON / 128, "US gallon of 231 in³"),
    ("Volume", "m³", F(1), "SI"),
    ("Mass", "g", F(1, 1000), "SI"),
    ("Mass", "kg", F(1), "SI"),
    ("Mass", "lb", POUND, "avoirdupois pound"),
    ("Mass", "oz", POUND / 16, "avoirdupois pound"),
    ("TemperatureDifference", "K", F(1), "SI"),
    ("TemperatureDifference", "°C", F(1), "SI"),
    ("TemperatureDifference", "°F", F(5, 9), SP811),
    ("Torque", "ft-lb", LBF * FOOT, "pound, foot, standard gravity"),
    ("Torque", "N·m", F(1), "SI"),
    ("Torque", "in-lb", LBF * INCH, "pound, inch, standard gravity"),
    ("Torque", "kgf·m", KGF, "standard gravity"),
    ("Torque", "kgf·cm", KGF / 100, "standard gravity"),
    ("Torque", "daN·m", F(10), "SI"),
    ("Pressure", "psi", LBF / INCH**2, "pound, inch, standard gravity"),
    ("Pressure", "bar", F(10**5), SP811),
    ("Pressure", "kPa", F(1000), "SI"),
    ("Pressure", "MPa", F(10**6), "SI"),
    ("Pressure", "kgf/cm²", KGF * 10**4, "standard gravity"),
    ("Pressure", "inHg", INCH * MERCURY * GRAVITY, "conventional mercury"),
    ("Pressure", "mmHg", F(1, 1000) * MERCURY * GRAVITY, "conventional mercury"),
    ("Pressure", "ksi", 1000 * LBF / INCH**2, "pound, inch, standard gravity"),
    ("Pressure", "GPa", F(10**9), "SI"),
    ("Pressure", "Pa", F(1), "SI"),
    ("Force", "lbf", LBF, "pound, standard gravity"),
    ("Force", "N", F(1), "SI"),
    ("Force", "kN", F(1000), "SI"),
    ("Force", "kgf", KGF, "standard gravity"),
    ("Force", "daN", F(10), "SI"),
    ("Angle", "°", PI / 180, "ISO 80000-3"),
    ("Angle", "rad", F(1), "SI"),
    ("Angle", "turns", 2 * PI, "ISO 80000-3"),
    ("Angle", "′", PI / 10800, "ISO 80000-3"),
    ("RotationalSpeed", "rpm", 2 * PI / MINUTE, SP811),
    ("RotationalSpeed", "rad/s", F(1), "SI"),
    ("Stiffness", "lbf/in", LBF / INCH, "pound, inch, standard gravity"),
    ("Stiffness", "N/mm", F(1000), "SI"),
    ("Stiffness", "kgf/mm", KGF * 1000, "standard gravity"),
    ("Stiffness", "kN/mm", F(10**6), "SI"),
    ("Stiffness", "N/m", F(1), "SI"),
    ("DynamicViscosity", "mPa·s", F(1, 1000), "SI"),
    ("DynamicViscosity", "cP", F(1, 1000), SP811),
    ("DynamicViscosity", "Pa·s", F(1), "SI"),
    ("KinematicViscosity", "cSt", F(1, 10**6), SP811),
    ("KinematicViscosity", "mm²/s", F(1, 10**6), "SI"),
    ("KinematicViscosity", "m²/s", F(1), "SI"),
    ("Density", "kg/m³", F(1), "SI"),
    ("Density", "g/cm³", F(1000), "SI"),
    ("Density", "kg/L", 1 / LITRE, "SI"),
    ("Density", "lb/in³", POUND / INCH**3, "pound, inch"),
    ("Flow", "L/min", LITRE / MINUTE, "SI"),
    ("Flow", "US gal/min", US_GALLON / MINUTE, "US gallon of 231 in³"),
    ("Flow", "mL/min", LITRE / 1000 / MINUTE, "SI"),
    ("Flow", "ft³/min", FOOT**3 / MINUTE, "international foot"),
    ("Flow", "m³/s", F(1), "SI"),
    ("Expansion", "ppm/K", F(1, 10**6), "SI"),
    ("Expansion", "ppm/°F", F(9, 5) / 10**6, SP811),
    ("Expansion", "1/K", F(1), "SI"),
    ("Expansion", "1/°F", F(9, 5), SP811),
    ("Ratio", "", F(1), "ISO 80000-1"),
    ("Ratio", "%", F(1, 100), "ISO 80000-1"),
    ("Ratio", "in/in", F(1), "same unit above and below"),
    ("Ratio", "mm/mm", F(1), "same unit above and below"),
    ("Ratio", "thou/in", F(1, 1000), "international inch"),
]
NUMBERS = [
    "1", "0.1", "2.4483", "-0.0021", "65", "2500", "29.92", "3.14159265358979",
    "7/8", "2 7/16", "-11/32", "1/3", "1.2e-9", "6.02e11", "123456789012345678901234567890",
]
TEMPERATURES = [
    ("°C", F(1), F("273.15")),
    ("°F", F(5, 9), F("459.67")),
    ("K", F(1), F(0)),
]


def number(text: str) -> F:
    sign = -1 if text.startswith("-") else 1
    return sign * sum(F(part) for part in text.lstrip("-").split())


def main() -> None:
    rows = []
    for kind, symbol, factor, source in UNITS:
        for text in NUMBERS:
            si = float(number(text) * factor)
            rows.append((f"{text} {symbol}".strip(), kind, repr(si), source))
    for symbol, factor, zero in TEMPERATURES:
        for text in ["0", "20", "68", "212", "293.15", "98.6", "1/2", "0.0001", "1e5", "1e-40"]:
            si = float((number(text) + zero) * factor)
            rows.append((f"{text} {symbol}", "Temperature", repr(si), SP811))
    for text in ["0", "1", "4", "500"]:
        rows.append((text, "Count", repr(float(number(text))), "ISO 80000-1"))
    path = pathlib.Path(__file__).with_name("conversions.csv")
    with path.open("w", newline="", encoding="utf-8") as file:
        table = csv.writer(file, lineterminator="\n")
        table.writerow(["text", "kind", "si", "source"])
        table.writerows(rows)


if __name__ == "__main__":
    main()

#!/usr/bin/env python3
"""The same two problems in plain numpy and scipy, timed, and the ratio to ours.

    pip install numpy scipy
    cargo bench -p assembly-core --bench oil_film --bench oil_circuit
    python3 crates/assembly-core/benches/oil_against_numpy.py

1. A bearing film at a given load, balanced with the heat of its friction:
   Reynolds' equation by finite differences with pressure not below nothing
   (active set, scipy's sparse solver), on the coarsest even net that is within
   half a per cent of a net twice as fine, and scipy's brentq for the eccentricity.
2. The pressure map of 60 speeds, 5 temperatures and 3 pumps, of the engine of
   `circuit/example.rs` and with all that ours has: mean loads of the cylinder at each
   speed, eccentricities and attitudes by numpy interpolation in tables made before,
   what the turning journals drag out, brentq for each pressure, and the band of each
   by the errors of all clearances and of the oil. All bearings at once, as arrays.

Our times are read from target/criterion, our pressures from the file that the bench
leaves in target; how far the two maps are apart is printed.
"""

import json
import pathlib
import time

import numpy as np
import scipy
import scipy.optimize as optimize
import scipy.sparse as sparse
import scipy.sparse.linalg as linalg

ROOT = pathlib.Path(__file__).resolve().parents[3]


def film(proportion, eccentricity, around, along):
    """S, rf/c, Q, side share, attitude of a film; half the length by symmetry."""
    theta = np.linspace(0.0, 2.0 * np.pi, around + 1)
    step, width = theta[1], 1.0 / along
    cube_between = (1.0 + eccentricity * np.cos(theta[:-1] + 0.5 * step)) ** 3
    film_between = 1.0 + eccentricity * np.cos(theta[:-1] + 0.5 * step)
    cube = (1.0 + eccentricity * np.cos(theta[1:-1])) ** 3
    n, m = around - 1, along
    share = np.full(m, width)
    share[0] = 0.5 * width
    before, after = cube_between[:-1] / step, cube_between[1:] / step
    side = cube * step / proportion**2 / width
    round_part = sparse.diags(
        [before + after, -after[:-1], -after[:-1]], [0, 1, -1], shape=(n, n)
    )
    down = np.full(m, 2.0)
    down[0] = 1.0
    along_part = sparse.diags([down, -np.ones(m - 1), -np.ones(m - 1)], [0, 1, -1])
    matrix = (
        sparse.kron(round_part, sparse.diags(share))
        + sparse.kron(sparse.diags(side), along_part)
    ).tocsr()
    right = np.kron(film_between[:-1] - film_between[1:], share)
    broken = np.zeros(n * m, bool)
    for _ in range(60):
        free = np.flatnonzero(~broken)
        pressure = np.zeros(n * m)
        pressure[free] = linalg.spsolve(matrix[free][:, free].tocsc(), right[free])
        residual = right - matrix @ pressure
        now = np.where(broken, residual <= 0.0, pressure < 0.0)
        if np.array_equal(now, broken):
            break
        broken = now
    field = pressure.reshape(n, m)
    mean = field @ share
    towards = -(mean * np.cos(theta[1:-1])).sum() * step
    across = (mean * np.sin(theta[1:-1])).sum() * step
    load = 0.5 * np.hypot(towards, across)
    number = 1.0 / (12.0 * np.pi * load)
    attitude = np.arctan2(across, towards)
    friction = (
        2.0 * np.pi**2 * number / np.sqrt(1.0 - eccentricity**2)
        + 0.5 * eccentricity * np.sin(attitude)
    )
    # Slopes at edge and feed to the second order.
    slope = (4.0 * field[:, -1] - field[:, -2]) / (2.0 * width)
    leaving = np.pi * (cube * step / proportion**2 * slope).sum()
    slope = (4.0 * field[0] - field[1]) @ share / (2.0 * step)
    widest = 1.0 + eccentricity
    inflow = np.pi * (widest - widest**3 * slope)
    return number, friction, inflow, leaving / inflow, attitude


def walther(at_40, at_100):
    lift = lambda nu: np.log10(np.log10(nu + 0.7))
    x = np.log10([313.15, 373.15])
    b = (lift(at_40) - lift(at_100)) / (x[1] - x[0])
    a = lift(at_40) + b * x[0]
    return lambda kelvin: (10.0 ** (10.0 ** (a - b * np.log10(kelvin))) - 0.7) * 1e-6


def density(kelvin):
    warmer = 0.6278 / 870.0 * (kelvin - 288.15)
    return 870.0 * np.exp(-warmer * (1.0 + 0.8 * warmer))


def heat_balanced(around, along):
    """The bearing of `oil_film.rs`."""
    diameter, land, clearance, load = 0.0533, 0.0203, 5.6e-5, 8000.0
    speed, oil_in = 314.0, 363.15
    nu = walther(70.0, 10.5)
    turns, radius, radial = speed / (2 * np.pi), diameter / 2, clearance / 2
    mean_pressure = load / (land * diameter)
    by_volume = density(oil_in) * 2100.0

    def lacking(e):
        number, friction, inflow, side, _ = film(land / diameter, e, around, along)
        flow = inflow * radius * radial * turns * land * (1.0 - 0.5 * side)
        rise = friction * radial * load * speed / (by_volume * flow)
        mean = oil_in + 0.5 * rise
        have = nu(mean) * density(mean) * turns / mean_pressure * (radius / radial) ** 2
        return np.log(number / have)

    return optimize.brentq(lacking, 0.05, 0.98, xtol=1e-5)


def coarsest_net():
    """Even nets twice as fine each time, until both agree to half a per cent."""
    for around, along in [(90, 6), (180, 12), (360, 24), (720, 48)]:
        e = 0.8
        coarse, fine = film(0.38, e, around, along), film(0.38, e, 2 * around, 2 * along)
        worst = max(abs(a / b - 1.0) for a, b in zip(coarse, fine))
        print(f"  net {around} x {along}: worst change when twice as fine {100 * worst:.2f} %")
        if worst < 0.005:
            return around, along
    return 720, 48


INCH, PSI = 0.0254, 6895.0
TEMPERATURES = [293.15, 333.15, 363.15, 383.15, 403.15]
SPEEDS = np.arange(1, 61) * 110.0 * np.pi / 30.0
# Opens at, of the three pumps of `standard_pump().three()`, and what each sweeps.
PUMPS = [(18e-6, 55 * PSI), (1.175 * 18e-6, 55 * PSI), (18e-6, 1.25 * 55 * PSI)]
AIR = 101_325.0


def mean_rod_loads():
    """Gas and mass over the cycle, every ten degrees, of the example's cylinder."""
    bore, stroke, rod = 4.0 * INCH, 3.5 * INCH, 5.7 * INCH
    up_and_down, going_round, ratio, intake = 0.75, 0.45, 9.5, 1e5
    degrees = np.arange(72) * 10.0
    angle, throw = np.radians(degrees), 0.5 * stroke

    def volume(angle):
        upright = np.sqrt(rod**2 - (throw * np.sin(angle)) ** 2)
        drop = throw * (1 - np.cos(angle)) + rod - upright
        return 1 + (ratio - 1) * drop / stroke

    squeezed = intake * ratio**1.32
    peak = 3.3 * squeezed
    gas = np.select(
        [degrees < 14, degrees < 140, degrees < 360, degrees < 540],
        [
            squeezed + (peak - squeezed) * degrees / 14,
            peak * (volume(np.radians(14.0)) / volume(angle)) ** 1.28,
            AIR,
            intake,
        ],
        intake * (ratio / volume(angle)) ** 1.32,
    )
    sine, cosine = np.sin(angle), np.cos(angle)
    upright = np.sqrt(rod**2 - throw**2 * sine**2)
    swing = (
        throw**2 * (cosine**2 - sine**2) / upright
        + throw**4 * sine**2 * cosine**2 / upright**3
    )
    square = SPEEDS[:, None] ** 2
    along = (gas - AIR) * 0.25 * np.pi * bore**2 - up_and_down * square * (throw * cosine + swing)
    lean = throw / rod * sine
    lean = lean / np.sqrt(1 - lean**2)
    outward = going_round * square * throw
    return np.hypot(along - outward * cosine, along * lean - outward * sine).mean(axis=1)


def tables():
    """Eccentricity, attitude and what is dragged out over log S, mains and rods."""
    made = []
    for proportion in (0.82 / 2.45, 0.80 / 2.10):
        scale = np.linspace(0.02, 0.98, 40)
        films = [film(proportion, e, 180, 12) for e in scale]
        columns = [
            np.log([one[0] for one in films]),
            scale,
            [one[4] for one in films],
            [one[2] * one[3] for one in films],
        ]
        made.append([np.array(column)[::-1] for column in columns])
    return made


def pressure_map(of_films):
    """Pressures and their bands, pump by pump, temperature by temperature."""
    nu = walther(70.0, 10.5)
    is_rod = np.array([False] * 5 + [True] * 8)
    pick = lambda main, rod: np.where(is_rod, rod, main)
    diameter, length = pick(2.45, 2.10) * INCH, pick(0.82, 0.80) * INCH
    clearance = pick(2.2e-3, 2.0e-3) * INCH
    radial = 0.5 * clearance
    doubt = 0.2e-3 * INCH / clearance
    ring = np.pi * diameter * radial**3 / 12
    # A half groove of 0.13 in: two lands, over half the round; a hole of 0.22 in.
    centred = np.where(
        is_rod,
        0.675 * radial**3 * (0.22 * INCH / length + 0.4) ** 1.75,
        0.5 * 2 * ring / (0.5 * (length - 0.13 * INCH)),
    )
    # What is estimated: five cam bearings, sixteen lifters, sixteen rockers.
    gap = lambda d, c, l: np.pi * d * (0.5 * c) ** 3 / (12 * l)
    cam = 0.675 * 37.5e-6**3 * (0.006 / 0.018 + 0.4) ** 1.75 * (1 + 1.5 * 0.7**2)
    other = np.array(
        [5 * cam, 16 * gap(0.0214, 38e-6, 0.018), 32 * gap(0.020, 30e-6, 0.0125)]
    )
    loads = mean_rod_loads()
    pressures = np.zeros((3, len(TEMPERATURES), len(SPEEDS)))
    bands = np.zeros_like(pressures)
    for at_t, kelvin in enumerate(TEMPERATURES):
        rho = density(kelvin)
        mu = nu(kelvin) * rho
        for at_s, speed in enumerate(SPEEDS):
            turns = speed / (2 * np.pi)
            load = pick(0.5 * np.sqrt(2) * loads[at_s], loads[at_s])
            number = np.log(mu * turns * diameter * length / load * (diameter / clearance) ** 2)
            e, attitude, dragged = (
                np.where(
                    is_rod,
                    np.interp(number, of_films[1][0], of_films[1][column]),
                    np.interp(number, of_films[0][0], of_films[0][column]),
                )
                for column in (1, 2, 3)
            )
            one, three = np.cos(attitude), np.cos(3 * attitude)
            half = 6 * e / np.pi * one + e**3 * (1.5 / np.pi * one - three / (6 * np.pi))
            gain = 1 + 1.5 * e * e + np.where(is_rod, 0.0, half)
            slopes = np.append(centred * gain, other) / mu
            heads = 0.5 * rho * speed**2 * (((1.75 + 1.05) * INCH) ** 2 - (1.225 * INCH) ** 2)
            heads = np.append(np.where(is_rod, heads, 0.0), np.zeros(len(other)))
            drag = np.append(dragged * 0.5 * diameter * radial * turns * length, np.zeros(len(other)))
            sigma = np.append(doubt, np.full(len(other), 0.33))
            for pump, (displacement, opens) in enumerate(PUMPS):
                slip = 0.2 * 18e-6 * 0.5 * (2000.0 / 60) * 0.01 / 3e5

                def surplus(p, besides=0.0, thicker=1.0):
                    leak = (slopes * (p + heads) / thicker + drag).sum() + besides
                    loss = 2e4 / (5e-4 * 0.01) * mu * leak
                    loss = loss if loss < 8e4 else 8e4 + 0.1 * (loss - 8e4)
                    reynolds = 4 * rho * leak / (np.pi * 0.012 * mu)
                    factor = 64 / reynolds if reynolds < 2040 else 0.3164 / reynolds**0.25
                    v = leak / (0.25 * np.pi * 0.012**2)
                    at_pump = p + loss + factor * 0.6 / 0.012 * 0.5 * rho * v * v
                    pushed = displacement * 0.5 * turns - slip * at_pump / (mu * thicker)
                    return pushed - max(at_pump - opens, 0.0) * 5e-4 / (0.1 * 55 * PSI) - leak

                if surplus(1e-3) <= 0:
                    continue
                p = optimize.brentq(surplus, 1e-3, 3 * opens, xtol=1.0)
                step, more = 1e-4 * p, 1e-9
                by_pressure = (surplus(p + step) - surplus(p - step)) / (2 * step)
                by_leak = (surplus(p, more) - surplus(p, -more)) / (2 * more) / by_pressure
                by_oil = (surplus(p, 0.0, 1.0001) - surplus(p, 0.0, 0.9999)) / 2e-4 / by_pressure
                flows = (3 * slopes * (p + heads) + drag) * sigma
                pressures[pump, at_t, at_s] = p
                bands[pump, at_t, at_s] = np.hypot(by_leak * np.sqrt((flows**2).sum()), by_oil * 0.05)
    return pressures, bands


def ours(name):
    """The middle of a criterion bench, seconds; None when it was not run."""
    for path in (ROOT / "target" / "criterion").glob("*/new/estimates.json"):
        if path.parent.parent.name == name:
            return json.loads(path.read_text())["median"]["point_estimate"] * 1e-9
    return None


def report(what, theirs, name):
    mine = ours(name)
    if mine is None:
        print(f"{what}: numpy {theirs * 1e3:.1f} ms; no bench {name!r} in target/criterion")
    else:
        print(f"{what}: numpy {theirs * 1e3:.1f} ms, ours {mine * 1e3:.3f} ms, ratio {theirs / mine:.0f}")


def compare(theirs):
    """How far our map is from theirs, when the bench has left it."""
    path = ROOT / "target" / "oil_circuit_map.json"
    if not path.exists():
        print("  no map of ours to compare with: run the bench")
        return
    ours_made = json.loads(path.read_text())
    for what, mine, other in zip(("pressure", "band"), (ours_made["pressures"], ours_made["bands"]), theirs):
        apart = np.abs(np.array(mine) / other - 1.0)
        print(f"  {what}: {100 * apart.mean():.2f} % apart on the mean, {100 * apart.max():.2f} % at most")


def main():
    print(f"numpy {np.__version__}, scipy {scipy.__version__}")
    around, along = coarsest_net()
    times = []
    for _ in range(3):
        start = time.perf_counter()
        e = heat_balanced(around, along)
        times.append(time.perf_counter() - start)
    print(f"  eccentricity {e:.4f}")
    report("film balanced with load and heat", min(times), "a film at a given load, balanced with its heat")
    of_films = tables()
    times = []
    for _ in range(3):
        start = time.perf_counter()
        made = pressure_map(of_films)
        times.append(time.perf_counter() - start)
    compare(made)
    report("pressure map", min(times), "the map of 60 speeds, 5 temperatures, 3 pumps")


if __name__ == "__main__":
    main()

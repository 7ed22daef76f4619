#!/usr/bin/env python3
"""The same two problems in plain numpy and scipy, timed, and the ratio to ours.

    pip install numpy scipy
    cargo bench -p assembly-core --bench oil_film --bench oil_circuit
    python3 crates/assembly-core/benches/oil_against_numpy.py

1. A bearing film at a given load, balanced with the heat of its friction:
   Reynolds' equation by finite differences with pressure not below nothing
   (active set, scipy's sparse solver), on the coarsest even net that is within
   half a per cent of a net twice as fine, and scipy's brentq for the eccentricity.
2. The pressure map of 60 speeds, 5 temperatures and 3 pumps: eccentricities of
   all bearings by numpy interpolation, brentq for each pressure. What the turning
   journals drag out of their films is left out here, and not in ours: one sum more
   for each bearing, in ours alone.

Our times are read from target/criterion.
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
    """S, rf/c, Q, side share of a film; half the length by symmetry."""
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
    return number, friction, inflow, leaving / inflow


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
        number, friction, inflow, side = film(land / diameter, e, around, along)
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


def pressure_map():
    """The map of `oil_circuit.rs`, its leaks and losses, without its error band."""
    inch, psi = 0.0254, 6895.0
    nu = walther(70.0, 10.5)
    speeds = np.arange(1, 61) * 110.0 * np.pi / 30.0
    temperatures = [293.15, 333.15, 363.15, 383.15, 403.15]
    rows = [
        (5, 2.45 * inch, 0.82 * inch, 2.2e-3 * inch, 0.0),
        (8, 2.10 * inch, 0.80 * inch, 2.0e-3 * inch, 1.0),
    ]
    tables = []
    for _, diameter, length, _, _ in rows:
        scale = np.linspace(0.02, 0.97, 12)
        tables.append((np.log([film(length / diameter, e, 60, 6)[0] for e in scale])[::-1], scale[::-1]))
    start = time.perf_counter()
    pressures = []
    for kelvin in temperatures:
        rho = density(kelvin)
        mu = nu(kelvin) * rho
        for speed in speeds:
            leaks = []
            for (count, diameter, length, clearance, is_rod), (numbers, scale) in zip(rows, tables):
                radial = clearance / 2
                number = mu * speed / (2 * np.pi) * diameter * length / 5000.0 * (diameter / clearance) ** 2
                e = np.interp(np.log(number), numbers, scale)
                for _ in range(count):
                    if is_rod:
                        slope = 0.675 * radial**3 * 0.675**1.75 * (1 + 1.5 * e * e) / mu
                        head = 0.5 * rho * speed**2 * ((1.75 * inch + diameter / 2) ** 2 - (1.225 * inch) ** 2)
                    else:
                        land = 0.5 * (length - 0.13 * inch)
                        slope = np.pi * diameter * radial**3 / (12 * land) * (1 + 1.5 * e * e) / mu
                        head = 0.0
                    leaks.append((slope, head))
            leaks.append((2e-13 / mu, 0.0))
            slopes, heads = np.array(leaks).T
            for displacement, opens in [(18e-6, 55 * psi), (21.15e-6, 55 * psi), (18e-6, 68.75 * psi)]:

                def surplus(p):
                    leak = (slopes * (p + heads)).sum()
                    loss = 4e9 * mu * leak
                    loss = loss if loss < 8e4 else 8e4 + 0.1 * (loss - 8e4)
                    reynolds = 4 * rho * leak / (np.pi * 0.012 * mu)
                    factor = 64 / reynolds if reynolds < 2040 else 0.3164 / reynolds**0.25
                    v = leak / (0.25 * np.pi * 0.012**2)
                    at_pump = p + loss + factor * 0.6 / 0.012 * 0.5 * rho * v * v
                    pushed = displacement * 0.5 * speed / (2 * np.pi) - 4e-12 * at_pump / mu
                    return pushed - max(at_pump - opens, 0.0) * 5e-4 / (0.1 * opens) - leak

                low = surplus(1e-3)
                pressures.append(
                    0.0 if low <= 0 else optimize.brentq(surplus, 1e-3, 3 * opens, xtol=1.0)
                )
    return time.perf_counter() - start, pressures


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
    times = [pressure_map()[0] for _ in range(3)]
    report("pressure map", min(times), "the map of 60 speeds, 5 temperatures, 3 pumps")


if __name__ == "__main__":
    main()

"""Makes data/coolants/*.json and tests/reference/coolant-points.json from CoolProp.

    pip install coolprop==8.0.0
    python scripts/reference/make_coolant_tables.py

Two tables a fluid, over ln p and u: `liquid` below the critical pressure, from the coldest liquid to its boiling
point; `dense` above it, from the coldest to the hottest state. At each pressure h = lowest + (highest - lowest) u^power.
The points for the test are drawn between the nodes (seeded), and are not in the tables.
"""

import json
import math
import pathlib
import random

import CoolProp
import CoolProp.CoolProp as cp

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
VERSION = CoolProp.__version__
EXPECTED = "8.0.0"
PER_FLUID = 60

# id, name in words, fluid of the library, highest pressure [Pa], highest temperature [K], power of u
FLUIDS = [
    ("hydrogen", "hydrogen (para)", "ParaHydrogen", 6e7, 1000.0, 2.0),
    ("normal-hydrogen", "hydrogen (normal)", "Hydrogen", 6e7, 1000.0, 2.0),
    ("methane", "methane", "Methane", 6e7, 625.0, 1.0),
    ("dodecane", "n-dodecane, for kerosene", "n-Dodecane", 6e7, 700.0, 1.0),
    ("ethanol", "ethanol", "Ethanol", 6e7, 650.0, 1.0),
    ("oxygen", "oxygen", "Oxygen", 6e7, 600.0, 1.0),
    ("water", "water", "Water", 6e7, 900.0, 1.0),
    ("ammonia", "ammonia", "Ammonia", 6e7, 725.0, 1.0),
    ("propane", "propane", "n-Propane", 6e7, 650.0, 1.0),
]
DENSE = (16, 56)
LIQUID = (9, 32)
KEYS = ("T", "D", "C", "V", "L")
NAMES = ("temperature", "density", "heatCapacity", "viscosity", "conductivity")


def coldest(fluid, pressure):
    """A kelvin above freezing, or above the lowest temperature of the equation."""
    lowest = cp.PropsSI("Tmin", fluid) + 1.0
    state = cp.AbstractState("HEOS", fluid)
    if state.has_melting_line():
        try:
            lowest = max(lowest, state.melting_line(CoolProp.iT, CoolProp.iP, pressure) + 1.0)
        except ValueError:
            pass
    return lowest


def span(fluid, kind, pressure, hottest, shared):
    low = cp.PropsSI("H", "T", shared, "P", pressure, fluid)
    if kind == "liquid":
        return low, cp.PropsSI("H", "P", pressure, "Q", 0, fluid)
    return low, cp.PropsSI("H", "T", hottest, "P", pressure, fluid)


def state_at(fluid, kind, pressure, enthalpy, is_last):
    if kind == "liquid" and is_last:
        return [cp.PropsSI(k, "P", pressure, "Q", 0, fluid) for k in KEYS]
    return [cp.PropsSI(k, "P", pressure, "H", enthalpy, fluid) for k in KEYS]


def table(fluid, kind, pressures, columns, hottest, power):
    rows = {"pressure": [], "lowest": [], "highest": [], "power": power, "columns": columns}
    values = {name: [] for name in NAMES}
    for pressure in pressures:
        low, high = span(fluid, kind, pressure, hottest, coldest(fluid, pressure))
        rows["pressure"].append(digits(pressure, 8))
        rows["lowest"].append(digits(low, 8))
        rows["highest"].append(digits(high, 8))
        for j in range(columns):
            u = j / (columns - 1)
            state = state_at(fluid, kind, pressure, low + (high - low) * u**power, j == columns - 1)
            for name, value in zip(NAMES, state):
                values[name].append(digits(value, 6))
    return {**rows, **values}


def digits(value, count):
    if not math.isfinite(value):
        raise SystemExit(f"not finite: {value}")
    return float(f"{value:.{count}g}")


def ladder(low, high, count):
    return [low * (high / low) ** (i / (count - 1)) for i in range(count)]


def spaced_above(critical, high, count):
    """Rows closer together near the critical pressure."""
    low = 1.08 * critical
    return [low * (high / low) ** ((i / (count - 1)) ** 1.4) for i in range(count)]


def held_out(fluid, made, kind, hottest, power, rng):
    points = []
    pressures = made["pressure"]
    while len(points) < PER_FLUID // 2:
        i = rng.randrange(len(pressures) - 1)
        pressure = math.exp(rng.uniform(math.log(pressures[i]), math.log(pressures[i + 1])))
        low, high = span(fluid, kind, pressure, hottest, coldest(fluid, pressure))
        enthalpy = low + (high - low) * rng.uniform(0.02, 0.98) ** power
        state = state_at(fluid, kind, pressure, enthalpy, False)
        points.append([digits(x, 8) for x in (pressure, enthalpy, *state)])
    return points


def main():
    if VERSION != EXPECTED:
        raise SystemExit(f"CoolProp {EXPECTED} is asked for, this is {VERSION}")
    rng = random.Random(20261125)
    folder = ROOT / "data" / "coolants"
    folder.mkdir(parents=True, exist_ok=True)
    reference = {"about": f"CoolProp {VERSION}, between the nodes of data/coolants, by scripts/reference/make_coolant_tables.py", "columns": ["pressure", "enthalpy", *NAMES], "fluids": {}}
    for id_, name, fluid, top, hottest, power in FLUIDS:
        critical = cp.PropsSI("pcrit", fluid)
        triple = cp.PropsSI("ptriple", fluid) if id_ != "dodecane" else 1e5
        lowest = max(1e5, 1.5 * triple)
        liquid = table(fluid, "liquid", ladder(lowest, 0.92 * critical, LIQUID[0]), LIQUID[1], hottest, 1.0)
        dense = table(fluid, "dense", spaced_above(critical, top, DENSE[0]), DENSE[1], hottest, power)
        row = {
            "id": id_,
            "name": name,
            "source": f"CoolProp {VERSION}, fluid {fluid} (I. H. Bell, J. Wronski, S. Quoilin, V. Lemort, Ind. Eng. Chem. Res. 53, 2014, 2498), by scripts/reference/make_coolant_tables.py",
            "criticalPressure": digits(critical, 8),
            "criticalTemperature": digits(cp.PropsSI("Tcrit", fluid), 8),
            "hottest": hottest,
            "liquid": liquid,
            "dense": dense,
        }
        text = json.dumps(row, separators=(",", ":"))
        (folder / f"{id_}.json").write_text(text + "\n")
        reference["fluids"][id_] = {
            "liquid": held_out(fluid, liquid, "liquid", hottest, 1.0, rng),
            "dense": held_out(fluid, dense, "dense", hottest, power, rng),
        }
        print(id_, len(text))
    path = ROOT / "tests" / "reference" / "coolant-points.json"
    path.write_text(json.dumps(reference, separators=(",", ":")) + "\n")


if __name__ == "__main__":
    main()

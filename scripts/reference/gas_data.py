"""The program's own species and propellant data, handed to Cantera.

Both solvers then work on the same numbers (coefficients, atomic masses, gas constant, reference pressure),
so that what differs between them is the solver alone.
"""

import json
from pathlib import Path

import cantera as ct
import numpy as np

REPOSITORY = Path(__file__).resolve().parents[2]
DATA = REPOSITORY / "data"
GAS_CONSTANT = 8.31446261815324  # J/(mol K), exact
REFERENCE_PRESSURE = 1.0e5  # Pa
GRAVITY = 9.80665  # m/s2, exact

# Cantera works per kmol with the same exact constant; a release that changed it would not be a fair reference.
assert abs(ct.gas_constant / 1000 / GAS_CONSTANT - 1) < 1e-15

INDEX = json.loads((DATA / "species/index.json").read_text("utf8"))
REVISION = INDEX["revision"]
PROPELLANTS = {row["id"]: row for row in json.loads((DATA / "propellants.json").read_text("utf8"))["propellants"]}


def species_rows(elements, phases=("gas",), core_only=False, without=()):
    """Rows of all species made of these elements only, in the order of the program's own reader."""
    elements = set(elements)
    wanted = {INDEX["fileOfElement"][e] for e in elements}
    order = list(dict.fromkeys(INDEX["fileOfElement"].values()))
    rows = []
    for name in order:
        if name not in wanted:
            continue
        for row in json.loads((DATA / f"species/{name}.json").read_text("utf8"))["species"]:
            if set(row["elements"]) <= elements and row["phase"] in phases and row["name"] not in without:
                if row["core"] or not core_only:
                    rows.append(row)
    return rows


def _species_yaml(row):
    ranges = row["ranges"]
    return {
        # Cantera splits names at commas and spaces in composition strings; arrays are used here instead.
        "name": row["name"],
        "composition": {e: float(n) for e, n in row["elements"].items()},
        "thermo": {
            "model": "NASA9",
            "reference-pressure": REFERENCE_PRESSURE,
            "temperature-ranges": [ranges[0]["Tmin"], *[r["Tmax"] for r in ranges]],
            "data": [[float(c) for c in [*r["a"], *r["b"]]] for r in ranges],
        },
    }


def ideal_gas(rows, name="gas"):
    """An ideal-gas phase of exactly these rows with the data's own atomic masses."""
    elements = sorted({e for row in rows for e in row["elements"]})
    document = {
        "masses": [{"symbol": e, "atomic-weight": INDEX["atomicMasses"][e]} for e in elements],
        "phases": [
            {
                "name": name,
                "thermo": "ideal-gas",
                "elements": [{"masses": elements}],
                "species": "all",
                "state": {"T": 1000.0, "P": REFERENCE_PRESSURE},
            }
        ],
        "species": [_species_yaml(row) for row in rows],
    }
    gas = ct.Solution(yaml=json.dumps(document))
    for k, row in enumerate(rows):
        assert abs(gas.molecular_weights[k] / 1000 - row["molarMass"]) < 3e-8, row["name"]
    return gas


def condensed_phase(row):
    """One pure condensed substance of negligible volume."""
    elements = sorted(row["elements"])
    species = _species_yaml(row)
    # The volume must be there for Cantera; at 1e9 kg/m3 its p V work is below 1e-5 of the gas's.
    species["equation-of-state"] = {"model": "constant-volume", "density": 1.0e9}
    document = {
        "masses": [{"symbol": e, "atomic-weight": INDEX["atomicMasses"][e]} for e in elements],
        "phases": [
            {
                "name": row["name"],
                "thermo": "fixed-stoichiometry",
                "elements": [{"masses": elements}],
                "species": "all",
                "state": {"T": 300.0, "P": REFERENCE_PRESSURE},
            }
        ],
        "species": [species],
    }
    return ct.Solution(yaml=json.dumps(document))


def dimensionless_properties(row, T):
    """g/(R T), h/(R T), cp/R at 1 bar of one row [-], straight from its coefficients (nearest range outside them)."""
    r = next((r for r in row["ranges"] if T <= r["Tmax"]), row["ranges"][-1])
    a, b = r["a"], r["b"]
    cp = sum(c * T**k for c, k in zip(a, range(-2, 5)))
    h = (
        -a[0] / T**2 + a[1] * np.log(T) / T + a[2] + a[3] * T / 2 + a[4] * T**2 / 3
        + a[5] * T**3 / 4 + a[6] * T**4 / 5 + b[0] / T
    )
    s = (
        -a[0] / (2 * T**2) - a[1] / T + a[2] * np.log(T) + a[3] * T + a[4] * T**2 / 2
        + a[5] * T**3 / 3 + a[6] * T**4 / 4 + b[1]
    )
    return h - s, h, cp


def dimensionless_gibbs(row, T):
    """g/(R T) at 1 bar of one row [-]; None outside its temperature range."""
    if not row["ranges"][0]["Tmin"] <= T <= row["ranges"][-1]["Tmax"]:
        return None
    return dimensionless_properties(row, T)[0]


def mixture(parts):
    """Elements [mol/kg] and enthalpy [J/kg] of propellants given by mass, [(id, mass), ...]."""
    total = sum(mass for _, mass in parts)
    elements, enthalpy = {}, 0.0
    for name, mass in parts:
        row = PROPELLANTS[name]
        share = mass / total
        for e, n in row["elements"].items():
            elements[e] = elements.get(e, 0.0) + share * n / row["molarMass"]
        enthalpy += share * row["enthalpy"]
    return elements, enthalpy

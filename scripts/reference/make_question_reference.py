"""Makes tests/reference/question-reference.json: the burnt gases behind some answers of docs/questions.md, by Cantera.

    python3 -m venv venv && venv/bin/pip install -r scripts/reference/requirements.txt
    venv/bin/python scripts/reference/make_question_reference.py

Chambers and expansions as in make_gas_reference.py, at the pressures, mixtures and area ratios of the starters, and
at some outside pressures. One-dimensional, composition following; no losses.
"""

import datetime
import json

import cantera as ct
import numpy as np

from expansion import at_area_ratio, shifting_path, throat
from gas_data import PROPELLANTS, REPOSITORY, REVISION, ideal_gas, mixture, species_rows
from make_gas_reference import BAR, Check, burn, digits
from refine import Refiner

# U.S. Standard Atmosphere, 1976: geometric altitude [km] and pressure [Pa], table I (from memory).
AIR = {0: 101325.0, 10: 26499.9, 30: 1197.0}
FAN = [float(p) for p in np.geomspace(AIR[10], AIR[30], 25)]
# Oxidiser, fuel, mixture ratio by mass, chamber pressure [bar], area ratios, pressures [Pa].
CASES = [
    ("LOX", "LCH4", 3.4, 80, [20], []),
    ("LOX", "LCH4", 3.4, 160, [20], []),
    ("LOX", "LCH4", 3.4, 50, [8], []),
    ("LOX", "LCH4", 3.4, 200, [8, 22], []),
    ("LOX", "LCH4", 3.4, 100, [30], []),
    ("LOX", "RP-1", 2.6, 100, [20], []),
    ("LOX", "LH2", 6.0, 100, [20], []),
    ("LOX", "RP-1", 2.4, 80, [15], [AIR[0], *FAN]),
    ("LOX", "RP-1", 2.4, 53.6, [15], [AIR[10]]),
    *(("LOX", "LH2", 3.5 + k * 0.25, 70, [60], []) for k in range(19)),
]


def exit_row(station, ratio):
    return {
        "areaRatio": ratio,
        "pressure": digits(station.p),
        "velocity": digits(station.velocity),
        "specificImpulseVacuum": digits(station.isp_vacuum),
    }


def place_row(station, neck):
    return {
        "pressure": digits(station.p),
        "velocity": digits(station.velocity),
        "mach": digits(station.velocity / np.sqrt(station.exponent * station.p / station.density)),
        "areaRatio": digits(neck.flux / station.flux),
    }


def case(oxidiser, fuel, ratio, bar, area_ratios, pressures, check):
    rows = species_rows({**PROPELLANTS[oxidiser]["elements"], **PROPELLANTS[fuel]["elements"]})
    gas = ideal_gas(rows)
    elements, h = mixture([(oxidiser, ratio), (fuel, 1.0)])
    refiner = Refiner(gas, elements)
    chamber = burn(gas, refiner, rows, elements, h, bar * BAR, check)
    at = shifting_path(refiner, chamber)
    neck = throat(at, chamber.p)
    exits = [exit_row(at_area_ratio(at, neck, e, neck.p * 0.3 / e), e) for e in area_ratios]
    at(neck.p)
    return {
        "oxidiser": oxidiser,
        "fuel": fuel,
        "ratio": ratio,
        "chamberPressure": bar * BAR,
        "temperature": digits(chamber.T),
        "molarMass": digits(chamber.molar_mass),
        "characteristicVelocity": digits(chamber.p / neck.flux),
        "throat": {"pressure": digits(neck.p), "velocity": digits(neck.velocity)},
        "exits": exits,
        "places": [place_row(at(p), neck) for p in pressures],
    }


def main():
    check = Check()
    cases = [case(*row, check) for row in CASES]
    assert check.unconfirmed == 0
    about = {
        "what": "Adiabatic burning at constant pressure and isentropic expansion from rest, composition following",
        "script": "scripts/reference/make_question_reference.py",
        "made": datetime.date.today().isoformat(),
        "by": f"Cantera {ct.__version__}, refined as in make_gas_reference.py",
        "data": f"data/species and data/propellants.json, revision {REVISION}",
        "units": "SI; specific impulse in seconds with g0 = 9.80665 m/s2; mixture ratio by mass",
        "largestDifferenceInTemperature": float(f"{check.temperature:.2g}"),
    }
    lines = ",\n".join("  " + json.dumps(c, separators=(",", ":")) for c in cases)
    head = json.dumps({"about": about}, indent=1)[:-2]
    text = f'{head},\n "cases": [\n{lines}\n ]\n}}\n'
    json.loads(text)
    (REPOSITORY / "tests/reference/question-reference.json").write_text(text, encoding="utf8")


if __name__ == "__main__":
    main()

"""Makes tests/reference/gas-reference.json: burnt gases and their expansion by Cantera.

    python3 -m venv venv && venv/bin/pip install -r scripts/reference/requirements.txt
    venv/bin/python scripts/reference/make_gas_reference.py

Every state is found by Cantera from its own start (chambers from the unburnt mixture, stations from the
chamber's composition) and once more by Newton's method (refine.py) with Cantera's species properties. The
table holds the refined numbers; the largest difference between the two is in the `about` block.
Only gases: a station where a condensed substance of the data would form, or colder than 200 K, ends its row.
"""

import argparse
import datetime
import itertools
import json
import platform
import time

import cantera as ct
import numpy as np

from expansion import at_area_ratio, frozen_path, shifting_path, throat
from gas_data import (
    INDEX,
    PROPELLANTS,
    REPOSITORY,
    REVISION,
    dimensionless_gibbs,
    ideal_gas,
    mixture,
    species_rows,
)
from refine import NotConverged, Refiner

BAR = 1e5
PRESSURES = [10, 30, 60, 100, 200, 300]
AREA_RATIOS = [5, 10, 20, 40, 80, 150, 300]
LOWEST_TEMPERATURE = 200.0
MAIN_SPECIES = 12
# Mixture ratios by mass from rich to lean around the usual one of each pair (common practice, no source).
PAIRS = [
    ("LOX", "LH2", [4, 5, 6, 7, 8.5]),
    ("GOX", "GH2", [2.5, 4, 6, 8, 12]),
    ("LOX", "LCH4", [2.4, 3.0, 3.4, 3.8, 4.4]),
    ("LOX", "RP-1", [1.9, 2.3, 2.6, 3.0, 3.6]),
    ("LOX", "propane", [2.2, 2.6, 3.0, 3.4, 4.2]),
    ("LOX", "ethanol", [1.2, 1.5, 1.8, 2.1, 2.6]),
    ("LOX", "ethanol-75", [1.0, 1.2, 1.4, 1.6, 2.0]),
    ("LOX", "methanol", [0.9, 1.1, 1.3, 1.5, 1.9]),
    ("LOX", "NH3", [1.0, 1.2, 1.4, 1.7, 2.2]),
    ("N2O4", "MMH", [1.4, 1.7, 2.05, 2.4, 3.0]),
    ("N2O4", "UDMH", [1.8, 2.2, 2.6, 3.0, 3.8]),
    ("N2O4", "N2H4", [0.8, 1.0, 1.3, 1.6, 2.2]),
    ("H2O2-98", "RP-1", [5, 6, 7, 8, 10]),
    ("N2O", "ethanol", [3, 4, 5, 6, 8]),
    ("HNO3", "UDMH", [2.0, 2.5, 3.0, 3.5, 4.5]),
    ("IRFNA", "UDMH", [2.0, 2.5, 3.0, 3.5, 4.5]),
    ("LF2", "LH2", [5, 8, 11, 14, 18]),
]


class Check:
    """Largest differences between Cantera's own answer and the refined one."""

    def __init__(self):
        self.states = self.unconfirmed = 0
        self.temperature = self.fraction = self.residual = 0.0

    def compare(self, gas, state, solve, starts=(None,)):
        self.states += 1
        self.residual = max(self.residual, state.residual)
        for solver, start in itertools.product(("element_potential", "vcs", "gibbs"), starts):
            try:
                solve(solver, start)
            except ct.CanteraError:
                continue
            dT = abs(gas.T / state.T - 1)
            dx = np.abs(gas.X - state.x).max()
            # A solver that stopped early is not the better witness: ask the next one.
            if dT < 1e-7 and dx < 1e-7:
                self.temperature = max(self.temperature, dT)
                self.fraction = max(self.fraction, dx)
                return
        self.unconfirmed += 1
        print("  not confirmed by Cantera:", state.T, state.p, flush=True)


def unburnt(gas, rows, elements):
    """Some composition with these elements, from which the solver starts."""
    names = [row["name"] for row in rows]
    simple = {"O": ("O2", 2), "H": ("H2", 2), "N": ("N2", 2), "C": ("C", 1), "F": ("F2", 2), "Cl": ("Cl2", 2)}
    X = np.zeros(gas.n_species)
    for e, n in elements.items():
        name, atoms = simple[e]
        X[names.index(name)] += n / atoms
    return X


def true_mass(elements):
    """Mass [kg] of the atoms of "one kilogram": the data's molar masses are rounded in the eighth digit or so.

    Cantera counts by true mass, this program and the refinement by the data's; enthalpies and entropies are
    handed to Cantera per true kilogram.
    """
    return sum(n * INDEX["atomicMasses"][e] for e, n in elements.items()) / 1000


def burn(gas, refiner, rows, elements, h, p, check):
    X = unburnt(gas, rows, elements)
    mass = true_mass(elements)

    def cantera(solver, start):
        gas.TPX = start, p, X
        gas.equilibrate("TP", solver="vcs", rtol=1e-9)
        gas.HP = h / mass, p
        gas.equilibrate("HP", solver=solver, rtol=1e-12, max_steps=5000)

    gas.TPX = 3000.0, p, X
    gas.equilibrate("TP", solver="vcs", rtol=1e-9)
    chamber = refiner.solve(refiner.start(3000.0, p, gas.X), p, "h", h)
    check.compare(gas, chamber, cantera, (3000.0, 3500.0, 2500.0, 4000.0))
    return chamber


def condenses(state, condensed):
    for row in condensed:
        g = dimensionless_gibbs(row, state.T)
        if g is not None and sum(n * state.potentials[e] for e, n in row["elements"].items()) > g:
            return row["name"]
    return None


def digits(value):
    return float(f"{value:.12g}")


def fractions(x, chosen):
    return [digits(v) if v >= 1e-14 else 0 for v in x[chosen]]


def table(stations, chosen, with_fractions):
    chamber, throat_station, exits = stations[0], stations[1], stations[2:]
    row = {
        "characteristicVelocity": digits(chamber.p / throat_station.flux),
        "pressure": [digits(s.p) for s in stations],
        "temperature": [digits(s.T) for s in stations],
        "isentropicExponent": [digits(s.exponent) for s in stations],
        "specificImpulseMatched": [digits(s.isp_matched) for s in exits],
        "specificImpulseVacuum": [digits(s.isp_vacuum) for s in exits],
    }
    if with_fractions:
        row["molarMass"] = [digits(s.molar_mass) for s in stations]
        row["moleFractions"] = [fractions(s.x, chosen) for s in stations]
    return row


def expand(gas, at, chamber, check, condensed, confirm):
    """Chamber, throat and every area ratio that stays a gas above 200 K; why the row ended."""
    stations = [at(chamber.p)]
    neck = throat(at, chamber.p)
    stations.append(neck)
    ended, p = None, neck.p * 0.1
    for ratio in AREA_RATIOS:
        try:
            station = at_area_ratio(at, neck, ratio, p)
        except NotConverged as reason:
            ended = f"no equilibrium ({reason})"
            break
        found = condenses(station.state, condensed) if condensed else None
        if station.T < LOWEST_TEMPERATURE or found:
            ended = f"{found} would form" if found else "colder than 200 K"
            break
        stations.append(station)
        p = station.p * 0.45
    if confirm:
        for station in stations[1:]:
            check.compare(gas, station.state, lambda solver, _, s=station: confirm(solver, s.p))
    return stations, ended


def main():
    options = argparse.ArgumentParser()
    options.add_argument("--pairs", type=int, default=len(PAIRS), help="only the first few pairs, for a trial")
    options.add_argument("--out", default=str(REPOSITORY / "tests/reference/gas-reference.json"))
    options = options.parse_args()
    began = time.time()
    check, ends, mixtures = Check(), {}, []
    for oxidiser, fuel, ratios in PAIRS[: options.pairs]:
        symbols = {**PROPELLANTS[oxidiser]["elements"], **PROPELLANTS[fuel]["elements"]}
        rows = species_rows(symbols)
        condensed = species_rows(symbols, phases=("solid", "liquid"))
        gas = ideal_gas(rows)
        cases = []
        for ratio in ratios:
            elements, h = mixture([(oxidiser, ratio), (fuel, 1.0)])
            refiner = Refiner(gas, elements)
            mass = true_mass(elements)
            for bar in PRESSURES:
                p0 = bar * BAR
                chamber = burn(gas, refiner, rows, elements, h, p0, check)
                assert condenses(chamber, condensed) is None

                def confirm(solver, p):
                    gas.SPX = chamber.entropy / mass, p, np.maximum(chamber.x, 0)
                    gas.equilibrate("SP", solver=solver, rtol=1e-12, max_steps=5000)

                shifting, end = expand(gas, shifting_path(refiner, chamber), chamber, check, condensed, confirm)
                ends[end] = ends.get(end, 0) + 1
                frozen, _ = expand(gas, frozen_path(gas, chamber), chamber, check, (), None)
                for station in frozen[1:]:
                    gas.SPX = chamber.entropy / mass, station.p, chamber.x
                    assert abs(gas.T / station.T - 1) < 1e-9
                cases.append((ratio, p0, shifting, frozen))
        peak = np.max([s.x for case in cases for s in case[2]], axis=0)
        chosen = np.argsort(-peak, kind="stable")[:MAIN_SPECIES]
        mixtures.append(
            {
                "oxidiser": oxidiser,
                "fuel": fuel,
                "species": [rows[k]["name"] for k in chosen],
                "speciesInMixture": len(rows),
                "cases": [
                    {
                        "ratio": ratio,
                        "chamberPressure": p0,
                        "shifting": table(shifting, chosen, True),
                        "frozen": table(frozen, chosen, False),
                    }
                    for ratio, p0, shifting, frozen in cases
                ],
            }
        )
        print(
            f"{oxidiser}/{fuel}: {len(rows)} species, {len(cases)} cases, {time.time() - began:.0f} s,"
            f" Cantera differs by dT/T {check.temperature:.1e}, dx {check.fraction:.1e},"
            f" residual {check.residual:.1e}, unconfirmed {check.unconfirmed}",
            flush=True,
        )
    about = {
        "what": "Adiabatic burning at constant pressure and isentropic expansion from rest, ideal gases only",
        "script": "scripts/reference/make_gas_reference.py",
        "made": datetime.date.today().isoformat(),
        "versions": {"cantera": ct.__version__, "numpy": np.__version__, "python": platform.python_version()},
        "data": f"data/species and data/propellants.json, revision {REVISION}",
        "gasConstant": ct.gas_constant / 1000,
        "units": "SI; specific impulse in seconds with g0 = 9.80665 m/s2; mixture ratio by mass",
        "stations": ["chamber", "greatest mass flux", *AREA_RATIOS],
        "rows": "a row holds as many stations as stay a gas above 200 K, in the order above; specific impulses"
        " start at the first area ratio",
        "equilibriumStates": check.states,
        "unconfirmedByCantera": check.unconfirmed,
        "largestDifferenceFromCantera": {
            "temperatureRelative": float(f"{check.temperature:.2g}"),
            "moleFraction": float(f"{check.fraction:.2g}"),
        },
        "largestResidual": float(f"{check.residual:.2g}"),
        "rowsEndedBy": {str(k) if k else "complete": v for k, v in ends.items()},
    }
    text = json.dumps({"about": about}, indent=1)[:-2] + ',\n "mixtures": [\n'
    blocks = []
    for m in mixtures:
        head = json.dumps({k: v for k, v in m.items() if k != "cases"})[:-1]
        lines = ",\n".join("   " + json.dumps(c, separators=(",", ":")) for c in m["cases"])
        blocks.append(f"  {head},\n   \"cases\": [\n{lines}\n  ]}}")
    text += ",\n".join(blocks) + "\n ]\n}\n"
    json.loads(text)
    with open(options.out, "w", encoding="utf8") as file:
        file.write(text)
    print(json.dumps(about, indent=1), len(text))


if __name__ == "__main__":
    main()

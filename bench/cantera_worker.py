"""The reference library's side of the benchmark: one JSON question a line on stdin, one JSON answer a line on stdout.

Only the solving is timed, in this process, with the same clock discipline as the other side (bench/timing.mjs):
warm-up, then samples of many repetitions, least and median time per state.
"""

import json
import platform
import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "scripts/reference"))

import cantera as ct  # noqa: E402
import numpy as np  # noqa: E402
from gas_data import ideal_gas, species_rows  # noqa: E402

SIMPLE = {"O": ("O2", 2), "H": ("H2", 2), "N": ("N2", 2), "C": ("C", 1)}
TOLERANCE = 1e-9  # Cantera's own default for equilibrate


def unburnt(names, elements):
    X = np.zeros(len(names))
    for e, n in elements.items():
        name, atoms = SIMPLE[e]
        X[names.index(name)] += n / atoms
    return X


def burn_from_feed(gas, state):
    """From the elements' molecules brought to the enthalpy sought."""
    gas.TPX = 298.15, state["pressure"], state["X"]
    gas.HP = state["enthalpy"], state["pressure"]
    gas.equilibrate("HP", solver="element_potential", rtol=TOLERANCE)


def burn_from_hot(gas, state):
    """From an equilibrium at 3000 K; here the quicker way for most mixtures."""
    gas.TPX = 3000.0, state["pressure"], state["X"]
    gas.equilibrate("TP", solver="element_potential", rtol=TOLERANCE)
    gas.HP = state["enthalpy"], state["pressure"]
    gas.equilibrate("HP", solver="element_potential", rtol=TOLERANCE)


def expand(gas, state, burn):
    """Chamber, then stations down the isentrope, each from the one before; sum of velocities."""
    burn(gas, state)
    h0, s0 = gas.enthalpy_mass, gas.entropy_mass
    total = 0.0
    for pressure in state["stations"]:
        gas.SP = s0, pressure
        gas.equilibrate("SP", solver="element_potential", rtol=TOLERANCE)
        total += (2 * max(0.0, h0 - gas.enthalpy_mass)) ** 0.5
    return total


def measure(work, per_round, warm_up, seconds):
    """Least and median time of one of the `per_round` states [s]."""
    end = time.perf_counter() + warm_up
    while time.perf_counter() < end:
        work()
    samples = []
    end = time.perf_counter() + seconds
    while time.perf_counter() < end or len(samples) < 5:
        start = time.perf_counter()
        work()
        samples.append((time.perf_counter() - start) / per_round)
    return min(samples), statistics.median(samples), len(samples)


def answer(question):
    wanted = set(question["species"])
    rows = [row for row in species_rows(question["elements"]) if row["name"] in wanted]
    names = [row["name"] for row in rows]
    assert sorted(names) == sorted(question["species"])
    gas = ideal_gas(rows)
    states = [{**state, "X": unburnt(names, state["elements"])} for state in question["states"]]
    best = None
    for burn in (burn_from_feed, burn_from_hot):

        def work(burn=burn):
            if question["kind"] == "burn":
                total = 0.0
                for state in states:
                    burn(gas, state)
                    total += gas.T
            else:
                total = sum(expand(gas, state, burn) for state in states)
            return total

        try:
            checksum = work()
        except ct.CanteraError:
            continue
        least, median, samples = measure(work, len(states), question["warmUp"], question["seconds"])
        if best is None or least < best["least"]:
            best = {
                "least": least,
                "median": median,
                "samples": samples,
                "checksum": checksum,
                "way": burn.__doc__.strip(),
            }
    return best


def main():
    print(
        json.dumps({"cantera": ct.__version__, "python": platform.python_version(), "tolerance": TOLERANCE}),
        flush=True,
    )
    for line in sys.stdin:
        print(json.dumps(answer(json.loads(line))), flush=True)


main()

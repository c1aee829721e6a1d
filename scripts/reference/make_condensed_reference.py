"""Makes tests/reference/condensed-reference.json: burnt gases that carry solids or liquids.

Run like make_gas_reference.py. Which substances condense is found by Cantera's multiphase solver at given
temperature and pressure; the state of given enthalpy or entropy is then bracketed in temperature, solved to
the last digits (refine.py) with those substances, and checked: every amount positive, no other substance
ready to form. Last, Cantera's multiphase solver confirms the amounts at the temperature found.
Where a solid melts, both of its phases are there and the temperature is the melting point.
"""

import argparse
import datetime
import json
import platform

import cantera as ct
import numpy as np

from gas_data import GAS_CONSTANT as R
from gas_data import (
    REPOSITORY,
    REVISION,
    condensed_phase,
    dimensionless_gibbs,
    dimensionless_properties,
    ideal_gas,
    mixture,
    species_rows,
)
from make_gas_reference import BAR, digits
from refine import NotConverged, Refiner

LEAST_FRACTION = 1e-10
# (parts by mass, chamber pressures [bar], shares of the chamber pressure to expand to)
SOLID = [20, 40, 70, 100, 200]
FAR = [0.5, 0.2, 0.1, 0.03, 0.01, 0.003, 0.001]
CHAMBERS = [
    ([("AP", 68), ("Al", 18), ("HTPB", 14)], SOLID, FAR),
    ([("AP", 70), ("Al", 16), ("HTPB", 14)], SOLID, FAR),
    ([("AP", 72), ("Al", 12), ("HTPB", 16)], SOLID, FAR),
    ([("AP", 82), ("HTPB", 18)], SOLID, FAR),
    ([("AP", 60), ("Al", 30), ("HTPB", 10)], SOLID, FAR),
    ([("LOX", 0.3), ("RP-1", 1)], [10, 60, 100], FAR),
    ([("LOX", 0.6), ("RP-1", 1)], [10, 60, 100], FAR),
    ([("LOX", 1.0), ("RP-1", 1)], [10, 60, 100], FAR),
    ([("LOX", 0.6), ("LCH4", 1)], [10, 60, 100], FAR),
    ([("N2O", 1.0), ("HTPB", 1)], [10, 60], FAR),
    ([("LOX", 8), ("LH2", 1)], [10, 60], [0.01, 1e-3, 1e-4, 1e-5]),
    ([("LOX", 3), ("LH2", 1)], [10, 60], [0.01, 3e-4, 1e-4]),
    ([("H2O2-98", 1)], [10, 40], [0.1, 0.01, 3e-3, 1e-3]),
    ([("H2O2-85", 1)], [10, 40], [0.1, 0.03, 0.01, 3e-3]),
    ([("LOX", 1.2), ("Al", 1)], [30, 100], [0.5, 0.1, 0.01]),
    ([("LF2", 1.4), ("N2H4", 1)], [30, 100], [0.5, 0.1, 0.01, 1e-3]),
    ([("H2O2-90", 1.5), ("Al", 1)], [40, 100], [0.5, 0.1, 0.01, 1e-3]),
]
# (parts by mass, pressures [bar], temperatures [K])
HELD = [
    ([("LOX", 4), ("LH2", 1)], [1, 10], [250, 280, 300, 350, 400, 500]),
    ([("LOX", 0.8), ("RP-1", 1)], [1, 50], [300, 500, 800, 1200, 1800]),
    ([("AP", 68), ("Al", 18), ("HTPB", 14)], [1, 70], [300, 450, 800, 1500, 2300, 2350, 3200]),
]


class Mixture:
    """One mixture of elements with every gas and condensed species that the data has of them."""

    def __init__(self, parts):
        self.elements, self.enthalpy = mixture(parts)
        self.rows = species_rows(self.elements)
        self.condensed = species_rows(self.elements, phases=("solid", "liquid"))
        self.gas = ideal_gas(self.rows)
        self.phases = {row["name"]: condensed_phase(row) for row in self.condensed}
        X = np.zeros(self.gas.n_species)
        names = [row["name"] for row in self.rows]
        for e, n in self.elements.items():
            name, atoms = {"Al": ("Al", 1), "C": ("C", 1)}.get(e, (f"{e}2", 2))
            X[names.index(name)] += n / atoms
        self.start = X

    def cantera(self, T, p):
        """Moles per kg of gas species and of condensed species at given T and p, by Cantera alone."""
        use = [r for r in self.condensed if r["ranges"][0]["Tmin"] <= T <= r["ranges"][-1]["Tmax"]]
        phases = [self.phases[r["name"]] for r in use]
        self.gas.TPX = T, p, self.start
        for phase in phases:
            phase.TP = T, p
        mix = ct.Mixture([(self.gas, self.start.sum()), *[(phase, 0.0) for phase in phases]])
        mix.T, mix.P = T, p
        for rtol in (1e-11, 1e-10, 1e-9):
            try:
                mix.equilibrate("TP", solver="vcs", rtol=rtol, max_steps=1000)
                break
            except ct.CanteraError:
                continue
        else:
            raise NotConverged(f"Cantera at {T} K, {p} Pa")
        n = np.array(mix.species_moles)
        K = self.gas.n_species
        return n[:K], {r["name"]: m for r, m in zip(use, n[K:]) if m > 1e-9}

    def content(self, T, p, kind, gas_moles, amounts):
        """h [J/kg] or s [J/(kg K)] of given amounts."""
        self.gas.TP = T, 1e5
        x = gas_moles / gas_moles.sum()
        total = 0.0
        some = x > 0
        if kind == "h":
            total = gas_moles @ self.gas.standard_enthalpies_RT * R * T
        else:
            mixing = np.zeros_like(x)
            mixing[some] = np.log(x[some]) + np.log(p / 1e5)
            total = R * gas_moles @ (self.gas.standard_entropies_R - mixing)
        for row in self.condensed:
            if row["name"] in amounts:
                g, h, _ = dimensionless_properties(row, T)
                total += amounts[row["name"]] * (R * T * h if kind == "h" else R * (h - g))
        return total

    def find(self, p, kind, value, hint=None):
        """State of given h or s, as a refined State; None when colder than 200 K."""
        grid = np.linspace(200.0, 6000.0, 30)
        if hint is not None:
            grid = np.array([200.0, hint * 0.7, hint * 0.9, hint, hint * 1.05, 6000.0])
        below = above = None
        for T in grid:
            found = self.nearby(T, p)
            if found is None:
                continue
            if self.content(found[0], p, kind, *found[1:]) < value:
                below = found
            else:
                above = found
                break
        if below is None:
            return None
        for _ in range(40):
            if above[0] - below[0] < 0.02 * above[0]:
                state = self.refine(p, kind, value, below, above)
                if state is not None:
                    return state
            middle = self.nearby(0.5 * (below[0] + above[0]), p, 0.2 * (above[0] - below[0]))
            if middle is None:
                break
            if self.content(middle[0], p, kind, *middle[1:]) < value:
                below = middle
            else:
                above = middle
        raise NotConverged(f"no phases fit between {below[0]:.2f} and {above[0]:.2f} K")

    def nearby(self, T, p, reach=2.0):
        """Cantera's answer at T, or close to it where its solver runs in circles."""
        for shift in (0.0, -0.3, 0.4, -0.7, 1.0, -1.0):
            try:
                return (T + shift * reach, *self.cantera(T + shift * reach, p))
            except NotConverged:
                continue
        return None

    def refine(self, p, kind, value, below, above):
        """The state with the substances of both ends (on a melting plateau solid and liquid), or of one."""
        for names in ({*below[2], *above[2]}, set(below[2]), set(above[2])):
            present = [row for row in self.condensed if row["name"] in names]
            refiner = Refiner(self.gas, self.elements, present)
            for T, n, amounts in (below, above):
                first = [0.5 * (below[2].get(r["name"], 0.0) + above[2].get(r["name"], 0.0)) for r in present]
                try:
                    state = refiner.solve(refiner.start(T, p, n / n.sum(), n.sum(), first), p, kind, value)
                except NotConverged:
                    continue
                if self.accept(state):
                    return state
        return None

    def hold(self, T, p):
        """State of given temperature and pressure."""
        n, amounts = self.cantera(T, p)
        present = [row for row in self.condensed if row["name"] in amounts]
        refiner = Refiner(self.gas, self.elements, present)
        y = refiner.start(T, p, n / n.sum(), n.sum(), [amounts[r["name"]] for r in present])
        return refiner.solve(y, p, "T", T)

    def accept(self, state):
        """No negative amount, no other substance ready to form."""
        if any(moles < 0 for moles in state.amounts.values()):
            return False
        for row in self.condensed:
            if row["name"] in state.amounts:
                # Temperature inside the substance's own range, apart from rounding at a melting point.
                if not row["ranges"][0]["Tmin"] - 1e-3 <= state.T <= row["ranges"][-1]["Tmax"] + 1e-3:
                    return False
                continue
            g = dimensionless_gibbs(row, state.T)
            drive = None if g is None else sum(n * state.potentials[e] for e, n in row["elements"].items()) - g
            if drive is not None and drive > 1e-6:
                return False
        return True

    def difference(self, state):
        """Largest difference in mole fraction from Cantera's own equilibrium at the state's T and p."""
        pinned = melting(self.condensed, state.amounts)
        n, amounts = self.cantera(state.T, state.p)
        total = state.N + sum(state.amounts.values())
        worst = np.abs(n / (n.sum() + sum(amounts.values())) - state.N * state.x / total).max()
        for row in self.condensed:
            name = row["name"]
            mine, theirs = state.amounts.get(name, 0.0), amounts.get(name, 0.0)
            if pinned and row["elements"] == pinned:
                same = [r["name"] for r in self.condensed if r["elements"] == pinned]
                mine = sum(state.amounts.get(k, 0.0) for k in same)
                theirs = sum(amounts.get(k, 0.0) for k in same)
            worst = max(worst, abs(mine - theirs) / total)
        return worst


def melting(condensed, amounts):
    """Formula of the substance of which two phases are present, else None."""
    present = [row for row in condensed if row["name"] in amounts]
    for k, row in enumerate(present):
        if any(other["elements"] == row["elements"] for other in present[:k]):
            return row["elements"]
    return None


def record(mix, state):
    total = state.N + sum(state.amounts.values())
    fractions = {row["name"]: state.N * v / total for row, v in zip(mix.rows, state.x)}
    fractions.update({name: n / total for name, n in state.amounts.items()})
    chosen = sorted((k for k in fractions if fractions[k] > LEAST_FRACTION), key=lambda k: -fractions[k])
    return {
        "pressure": state.p,
        "temperature": digits(state.T),
        "density": digits(state.density),
        "enthalpy": digits(state.enthalpy),
        "entropy": digits(state.entropy),
        "molarMassGas": digits(state.molar_mass),
        "condensed": sorted(state.amounts),
        "twoPhases": melting(mix.condensed, state.amounts) is not None,
        "moleFractions": {k: digits(fractions[k]) for k in chosen},
    }


def main():
    options = argparse.ArgumentParser()
    options.add_argument("--out", default=str(REPOSITORY / "tests/reference/condensed-reference.json"))
    options = options.parse_args()
    states = unresolved = 0
    worst = residual = 0.0
    burnt, held = [], []
    for parts, pressures, shares in CHAMBERS:
        mix = Mixture(parts)
        for bar in pressures:
            chamber = mix.find(bar * BAR, "h", mix.enthalpy)
            if chamber is None:
                continue
            expanded, T = [], chamber.T
            for share in shares:
                try:
                    state = mix.find(chamber.p * share, "s", chamber.entropy, T)
                except NotConverged as reason:
                    unresolved += 1
                    print("  left out:", parts, bar, share, reason)
                    continue
                if state is None:
                    break
                expanded.append(state)
                T = state.T
            confirmed = []
            for state in [chamber, *expanded]:
                try:
                    worst = max(worst, mix.difference(state))
                except NotConverged as reason:
                    unresolved += 1
                    print("  left out, not confirmed by Cantera:", parts, bar, reason)
                    continue
                states += 1
                residual = max(residual, state.residual)
                confirmed.append(state)
            assert confirmed[0] is chamber
            burnt.append(
                {
                    "parts": parts,
                    "chamber": record(mix, chamber),
                    "expanded": [record(mix, s) for s in confirmed[1:]],
                }
            )
        print(parts, [(round(c["chamber"]["temperature"]), c["chamber"]["condensed"]) for c in burnt[-len(pressures):]],
              f"worst {worst:.1e}, residual {residual:.1e}", flush=True)
    for parts, pressures, temperatures in HELD:
        mix = Mixture(parts)
        for bar in pressures:
            for T in temperatures:
                try:
                    state = mix.hold(T, bar * BAR)
                    worst = max(worst, mix.difference(state))
                except NotConverged as reason:
                    unresolved += 1
                    print("  left out:", parts, bar, T, reason)
                    continue
                assert mix.accept(state), (parts, bar, T, state.amounts)
                states += 1
                residual = max(residual, state.residual)
                held.append({"parts": parts, **record(mix, state)})
    condensing = sum(bool(s["condensed"]) for c in burnt for s in [c["chamber"], *c["expanded"]]) + sum(
        bool(s["condensed"]) for s in held
    )
    about = {
        "what": "Burning at constant pressure, isentropic expansion to given pressures, and states of given"
        " temperature, with solids and liquids",
        "script": "scripts/reference/make_condensed_reference.py",
        "made": datetime.date.today().isoformat(),
        "versions": {"cantera": ct.__version__, "numpy": np.__version__, "python": platform.python_version()},
        "data": f"data/species and data/propellants.json, revision {REVISION}",
        "units": "SI; mole fractions count gas and condensed species together; parts by mass",
        "states": states,
        "statesWithCondensedSpecies": condensing,
        "leftOut": unresolved,
        "largestMoleFractionDifferenceFromCantera": float(f"{worst:.2g}"),
        "largestResidual": float(f"{residual:.2g}"),
    }
    lines = [json.dumps(c, separators=(",", ":")) for c in burnt]
    more = [json.dumps(c, separators=(",", ":")) for c in held]
    text = json.dumps({"about": about}, indent=1)[:-2] + ',\n "burnt": [\n  ' + ",\n  ".join(lines)
    text += '\n ],\n "held": [\n  ' + ",\n  ".join(more) + "\n ]\n}\n"
    json.loads(text)
    with open(options.out, "w", encoding="utf8") as file:
        file.write(text)
    print(json.dumps(about, indent=1), len(text))


if __name__ == "__main__":
    main()

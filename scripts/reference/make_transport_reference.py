"""Viscosity and conductivity of exhaust mixtures with Cantera: tests/reference/transport-reference.json.

Two columns: `same`, Cantera's mixture-averaged model on the program's own constants (data/transport.json), so that only the
formulas differ; `other`, on Cantera's own constants of GRI-Mech 3.0, so that the data differ too. Cantera's conductivity of a
species comes from another formula (Warnatz) than the program's (modified Eucken).
"""

import json

import cantera as ct

from gas_data import DATA, INDEX, REFERENCE_PRESSURE, REPOSITORY, _species_yaml, species_rows

MIXTURES = {
    "hydrogen with oxygen 6.0": {"H2": 0.245, "H2O": 0.69, "OH": 0.035, "H": 0.024, "O2": 0.003, "O": 0.003},
    "methane with oxygen 3.5": {"CO": 0.20, "CO2": 0.14, "H2": 0.08, "H2O": 0.48, "OH": 0.055, "H": 0.02, "O2": 0.02, "O": 0.005},
    "kerosene with oxygen 2.4": {"CO": 0.36, "CO2": 0.13, "H2": 0.10, "H2O": 0.34, "OH": 0.04, "H": 0.02, "O2": 0.006, "O": 0.004},
    "hydrazine with nitrogen tetroxide": {"N2": 0.40, "H2O": 0.45, "H2": 0.08, "NO": 0.02, "OH": 0.03, "H": 0.01, "O2": 0.01},
    "steam": {"H2O": 1.0},
    "hydrogen": {"H2": 1.0},
    "nitrogen": {"N2": 1.0},
}
TEMPERATURES = [400.0, 800.0, 1500.0, 2500.0, 3500.0]
GEOMETRY = {1: "atom", 2: "linear"}


def with_transport(rows, constants):
    elements = sorted({e for row in rows for e in row["elements"]})
    species = []
    for row in rows:
        entry = _species_yaml(row)
        atoms = int(sum(row["elements"].values()))
        c = constants[row["name"]]
        entry["transport"] = {
            "model": "gas",
            "geometry": GEOMETRY.get(atoms, "linear" if row["name"] == "CO2" else "nonlinear"),
            "diameter": c["diameter"] * 1e10,
            "well-depth": c["wellDepth"],
            "rotational-relaxation": 0.0 if atoms == 1 else 1.0,
        }
        species.append(entry)
    document = {
        "masses": [{"symbol": e, "atomic-weight": INDEX["atomicMasses"][e]} for e in elements],
        "phases": [
            {
                "name": "gas",
                "thermo": "ideal-gas",
                "transport": "mixture-averaged",
                "elements": [{"masses": elements}],
                "species": "all",
                "state": {"T": 1000.0, "P": REFERENCE_PRESSURE},
            }
        ],
        "species": species,
    }
    return ct.Solution(yaml=json.dumps(document))


def main():
    constants = {r["species"]: r for r in json.loads((DATA / "transport.json").read_text("utf8"))["species"]}
    wanted = {name for mixture in MIXTURES.values() for name in mixture}
    rows = [row for row in species_rows(["H", "C", "N", "O"]) if row["name"] in wanted]
    same = with_transport(rows, constants)
    other = ct.Solution("gri30.yaml", transport_model="mixture-averaged")
    cases = []
    for name, mixture in MIXTURES.items():
        for temperature in TEMPERATURES:
            entry = {"mixture": name, "temperature": temperature}
            for key, gas in (("same", same), ("other", other)):
                gas.TPX = temperature, 1e5, mixture
                entry[key] = {
                    "viscosity": float(f"{gas.viscosity:.8e}"),
                    "conductivity": float(f"{gas.thermal_conductivity:.8e}"),
                }
            cases.append(entry)
    table = {
        "about": {
            "madeBy": "scripts/reference/make_transport_reference.py",
            "library": f"Cantera {ct.__version__}",
            "same": "the program's constants, no dipoles, rotational relaxation 1",
            "other": "GRI-Mech 3.0 as it comes with the library",
            "units": "K, Pa s, W/(m K)",
        },
        "mixtures": MIXTURES,
        "cases": cases,
    }
    target = REPOSITORY / "tests/reference/transport-reference.json"
    target.write_text(json.dumps(table, indent=1) + "\n", "utf8")


if __name__ == "__main__":
    main()

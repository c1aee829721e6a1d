"""Direction numbers of the Sobol sequence, and points of it to check against.

    pip install -r scripts/reference/requirements.txt
    python scripts/reference/make_sampling_reference.py

Writes src/numerics/sobolDirections.ts (polynomials and first direction numbers of 64 dimensions: S. Joe, F. Y. Kuo,
"Constructing Sobol sequences with better two-dimensional projections", SIAM J. Sci. Comput. 30 (2008) 2635-2654, as
distributed with SciPy) and tests/reference/sampling-reference.json (unscrambled points, normal quantiles).
"""

import json
import os

import numpy as np
import scipy
import scipy.stats
from scipy.stats import norm, qmc

DIMENSIONS = 64
here = os.path.dirname(os.path.abspath(__file__))
root = os.path.join(here, "..", "..")

table = np.load(os.path.join(os.path.dirname(scipy.stats.__file__), "_sobol_direction_numbers.npz"))
rows = []
for poly, start in zip(table["poly"][:DIMENSIONS], table["vinit"][:DIMENSIONS]):
    degree = int(poly).bit_length() - 1
    rows.append((int(poly), [int(m) for m in start[: max(degree, 1)]]))

with open(os.path.join(root, "src", "numerics", "sobolDirections.ts"), "w") as out:
    out.write(
        "/**\n"
        " * Primitive polynomials (bits, highest power first) and first direction numbers of the Sobol sequence.\n"
        " * Source: S. Joe, F. Y. Kuo, SIAM J. Sci. Comput. 30 (2008) 2635–2654, file new-joe-kuo-6, as distributed with SciPy.\n"
        " * Written by scripts/reference/make_sampling_reference.py.\n"
        " */\n"
        "export const SOBOL_DIRECTIONS: readonly (readonly [polynomial: number, start: readonly number[]])[] = [\n"
    )
    for poly, start in rows:
        out.write(f"  [{poly}, [{', '.join(map(str, start))}]],\n")
    out.write("];\n")

sequence = qmc.Sobol(DIMENSIONS, scramble=False, bits=30)
points = sequence.random(1024)
chances = [1e-300, 1e-100, 1e-20, 1e-10, 1e-6, 1e-3, 0.01, 0.025, 0.075, 0.1, 0.3, 0.5, 0.6, 0.925, 0.975, 0.999, 1 - 1e-9]
reference = {
    "by": f"SciPy {scipy.__version__}, NumPy {np.__version__}: scipy.stats.qmc.Sobol(scramble=False), scipy.stats.norm.ppf",
    "dimensions": DIMENSIONS,
    "points": [{"index": i, "point": points[i].tolist()} for i in (0, 1, 2, 3, 4, 7, 8, 63, 500, 1023)],
    "normalQuantiles": [{"chance": c, "quantile": float(norm.ppf(c))} for c in chances],
}
with open(os.path.join(root, "tests", "reference", "sampling-reference.json"), "w") as out:
    json.dump(reference, out, indent=1)
    out.write("\n")

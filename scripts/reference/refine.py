"""Equilibrium to the last digits, for a state that Cantera has found or will confirm.

Cantera's solvers stop at residuals of about 1e-9. A reference for agreement at 1e-7 wants more, so the
stationarity conditions are solved here once more by Newton's method in the element potentials, with the
species properties of the gas evaluated by Cantera:

    x_j = exp( sum_i a_ij l_i - g_j(T)/(R T) - ln(p/p0) )        mole fraction of gas species j
    N sum_j a_ij x_j + sum_c a_ic n_c = b_i                        element balance, b_i in mol/kg
    sum_j x_j = 1
    sum_i a_ic l_i = g_c(T)/(R T)                                  each condensed species c that is present
    R T (N sum_j x_j h_j/(R T) + sum_c n_c h_c/(R T)) = h   or the same with the entropies = s, or T given

Unknowns: l_i, ln N (N: moles of gas per kg), ln T, n_c (moles per kg). All derivatives are exact, also
d ln(rho)/d ln(p) at constant entropy, which follows from the same linear system.
"""

import numpy as np

from gas_data import GAS_CONSTANT as R
from gas_data import REFERENCE_PRESSURE, dimensionless_properties


class NotConverged(Exception):
    pass


class Refiner:
    """Equilibria of one mixture of elements; `condensed` are the rows of the condensed species present."""

    def __init__(self, gas, elements, condensed=()):
        self.gas = gas
        self.symbols = list(elements)
        self.b = np.array([elements[e] for e in self.symbols])
        self.a = np.array([[gas.n_atoms(k, e) for k in range(gas.n_species)] for e in self.symbols])
        self.condensed = list(condensed)
        self.a_condensed = np.array(
            [[row["elements"].get(e, 0) for row in self.condensed] for e in self.symbols], dtype=float
        ).reshape(len(self.symbols), len(self.condensed))

    def _properties(self, T):
        self.gas.TP = T, REFERENCE_PRESSURE
        return self.gas.standard_gibbs_RT, self.gas.standard_enthalpies_RT, self.gas.standard_cp_R

    def start(self, T, p, x, N=None, amounts=()):
        """First guess from a composition: element potentials fitted to what is there."""
        g, _, _ = self._properties(T)
        weight = np.sqrt(np.maximum(x, 1e-30))
        mu = g + np.log(np.maximum(x, 1e-30)) + np.log(p / REFERENCE_PRESSURE)
        g_c = [dimensionless_properties(row, T)[0] for row in self.condensed]
        rows = np.vstack([(self.a * weight).T, self.a_condensed.T])
        potentials = np.linalg.lstsq(rows, np.array([*(mu * weight), *g_c]), rcond=None)[0]
        if N is None:
            N = self.b.sum() / (self.a.sum(axis=0) @ x)
        return np.array([*potentials, np.log(N), np.log(T), *amounts])

    def _system(self, y, p, kind, value):
        E, C = len(self.b), len(self.condensed)
        potentials, N, T, n = y[:E], np.exp(y[E]), np.exp(y[E + 1]), y[E + 2 :]
        g, h, cp = self._properties(T)
        al = potentials @ self.a
        x = np.exp(np.minimum(al - g - np.log(p / REFERENCE_PRESSURE), 50.0))
        ax = self.a * x
        F = np.zeros(E + 2 + C)
        J = np.zeros((E + 2 + C, E + 2 + C))
        F[:E] = (N * ax.sum(axis=1) + self.a_condensed @ n) / self.b - 1
        J[:E, :E] = N * (ax @ self.a.T) / self.b[:, None]
        J[:E, E] = N * ax.sum(axis=1) / self.b
        J[:E, E + 1] = N * (ax @ h) / self.b
        J[:E, E + 2 :] = self.a_condensed / self.b[:, None]
        F[E] = x.sum() - 1
        J[E, :E] = ax.sum(axis=1)
        J[E, E + 1] = x @ h
        properties = np.array([dimensionless_properties(row, T) for row in self.condensed]).reshape(C, 3).T
        g_c, h_c, cp_c = properties
        F[E + 2 :] = potentials @ self.a_condensed - g_c
        J[E + 2 :, :E] = self.a_condensed.T
        J[E + 2 :, E + 1] = h_c  # d(-g/RT)/d ln T = h/RT
        m = n / N
        w = h - al  # partial molar entropy over R of the gas species
        if kind == "h":
            F[E + 1] = x @ h + m @ h_c - value / (N * R * T)
            J[E + 1, :E] = ax @ h
            J[E + 1, E] = value / (N * R * T) - m @ h_c
            J[E + 1, E + 1] = x @ (h * h) + x @ (cp - h) + m @ (cp_c - h_c) + value / (N * R * T)
            J[E + 1, E + 2 :] = h_c / N
        elif kind == "T":
            F[E + 1] = np.log(T / value)
            J[E + 1, E + 1] = 1.0
        else:
            F[E + 1] = x @ w + m @ (h_c - g_c) - value / (N * R)
            J[E + 1, :E] = ax @ w - ax.sum(axis=1)
            J[E + 1, E] = value / (N * R) - m @ (h_c - g_c)
            J[E + 1, E + 1] = x @ (h * w) + x @ (cp - h) + m @ cp_c
            J[E + 1, E + 2 :] = (h_c - g_c) / N
        return F, J, x, h, w, h_c, g_c

    def solve(self, y, p, kind, value):
        """Newton to the rounding floor; returns a State."""
        E = len(self.b)
        y = y.copy()
        best = np.inf
        for step in range(80):
            F, J, *_ = self._system(y, p, kind, value)
            error = np.abs(F).max()
            try:
                dy = np.linalg.solve(J, -F)
            except np.linalg.LinAlgError as reason:
                raise NotConverged(str(reason)) from reason
            size = np.abs(dy).max()
            if error < 1e-12 and (size < 1e-12 or error >= best):
                break
            if error < best:
                best, y_best = error, y.copy()
            limit = max(1.0, np.abs(dy[:E]).max() / 4.0, abs(dy[E + 1]) / 0.15, abs(dy[E]) / 0.3)
            y += dy / limit
            if not np.isfinite(y).all() or not 100 < np.exp(y[E + 1]) < 6500:
                raise NotConverged(f"left the range at step {step}")
        else:
            # Where a trace of gas stands over much liquid, rounding keeps the residual above 1e-12.
            if best > 1e-10:
                raise NotConverged(f"residual {best:.1e}")
            y = y_best
        return State(self, y, p, kind, value)


class State:
    def __init__(self, refiner, y, p, kind, value):
        E = len(refiner.b)
        F, _, x, h, w, h_c, g_c = refiner._system(y, p, kind, value)
        n = y[E + 2 :]
        self.y, self.p, self.x = y, p, x
        self.residual = np.abs(F).max()
        self.potentials = dict(zip(refiner.symbols, y[:E]))
        self.N, self.T = np.exp(y[E]), np.exp(y[E + 1])
        self.amounts = {row["name"]: moles for row, moles in zip(refiner.condensed, n)}
        self.molar_mass = 1 / self.N  # mass of everything per mole of gas
        self.density = p / (self.N * R * self.T)
        self.enthalpy = R * self.T * (self.N * (x @ h) + n @ h_c)
        self.entropy = R * (self.N * (x @ w) + n @ (h_c - g_c))
        # The same equations at constant entropy, differentiated by ln p.
        _, Js, *_ = refiner._system(y, p, "s", self.entropy)
        Fp = np.zeros(len(y))
        Fp[:E] = -self.N * (refiner.a @ x) / refiner.b
        Fp[E] = -x.sum()
        Fp[E + 1] = -(x @ w)
        self.dy_dlnp = np.linalg.solve(Js, -Fp)
        self.dlnrho_dlnp = 1 - self.dy_dlnp[E + 1] - self.dy_dlnp[E]

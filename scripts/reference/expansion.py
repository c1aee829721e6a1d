"""Isentropic expansion from a chamber at rest: greatest mass flux and given area ratios.

Per unit area the mass flux is G = rho u with u^2 = 2 (h0 - h). At constant entropy dh = dp/rho, hence

    d ln G / d ln p = d ln rho / d ln p - p / (rho u^2)

The throat is the root of this derivative, found by bisection and Newton's method to the rounding floor;
an area ratio is the root of ln G - ln(G*/ratio).
"""

import numpy as np

from gas_data import GAS_CONSTANT as R
from gas_data import GRAVITY, REFERENCE_PRESSURE


class Station:
    """One state of the flow, equilibrium or frozen."""

    def __init__(self, state, h0):
        self.state = state
        self.p, self.T, self.x = state.p, state.T, state.x
        self.density, self.molar_mass = state.density, state.molar_mass
        self.exponent = 1 / state.dlnrho_dlnp
        self.velocity = np.sqrt(max(0.0, 2 * (h0 - state.enthalpy)))
        self.flux = self.density * self.velocity
        self.slope = -np.inf
        if self.velocity > 0:
            self.slope = state.dlnrho_dlnp - self.p / (self.density * self.velocity**2)

    @property
    def isp_matched(self):
        return self.velocity / GRAVITY

    @property
    def isp_vacuum(self):
        return (self.velocity + self.p / (self.density * self.velocity)) / GRAVITY


def shifting_path(refiner, chamber):
    """Function p -> Station at the chamber's entropy, composition in equilibrium."""
    last = {"state": chamber}

    def at(p):
        state = last["state"]
        while True:
            step = np.log(p / state.p)
            part = np.sign(step) * min(abs(step), 0.7)
            target = p if abs(step) <= 0.7 else state.p * np.exp(part)
            state = refiner.solve(state.y + part * state.dy_dlnp, target, "s", chamber.entropy)
            if target == p:
                break
        last["state"] = state
        return Station(state, chamber.enthalpy)

    return at


class FrozenState:
    def __init__(self, gas, x, N, mixing, entropy, p, T):
        ln_p = np.log(p / REFERENCE_PRESSURE)
        for _ in range(60):
            gas.TP = T, REFERENCE_PRESSURE
            s = x @ gas.standard_entropies_R + mixing - ln_p
            cp = x @ gas.standard_cp_R
            step = (entropy / (N * R) - s) / cp
            T *= np.exp(np.clip(step, -0.3, 0.3))
            if abs(step) < 1e-14:
                break
        gas.TP = T, REFERENCE_PRESSURE
        cp = x @ gas.standard_cp_R
        self.p, self.T, self.x, self.N = p, T, x, N
        self.molar_mass = 1 / N
        self.density = p / (N * R * T)
        self.enthalpy = N * R * T * (x @ gas.standard_enthalpies_RT)
        self.entropy = entropy
        self.dlnrho_dlnp = 1 - 1 / cp
        self.residual = abs(step)


def frozen_path(gas, chamber):
    """Function p -> Station at the chamber's entropy and composition."""
    x = chamber.x / chamber.x.sum()
    some = x > 0
    mixing = -(x[some] @ np.log(x[some]))
    last = {"T": chamber.T}

    def at(p):
        state = FrozenState(gas, x, chamber.N, mixing, chamber.entropy, p, last["T"])
        last["T"] = state.T
        return Station(state, chamber.enthalpy)

    return at


def throat(at, p0):
    """State of greatest mass flux."""
    low, high = 0.3 * p0, 0.8 * p0
    assert at(low).slope > 0 > at(high).slope
    p = 0.56 * p0
    for _ in range(200):
        station = at(p)
        if station.slope > 0:
            low = p
        else:
            high = p
        # Secant on the bracket's ends is safe; Newton from a finite difference is faster near the root.
        trial = p * 1.0001
        slope = (at(trial).slope - station.slope) / np.log(1.0001)
        new = p * np.exp(-station.slope / slope)
        if not low < new < high:
            new = np.sqrt(low * high)
        if abs(new / p - 1) < 1e-14 or abs(station.slope) < 1e-14:
            break
        p = new
    station = at(p)
    assert abs(station.slope) < 1e-10, station.slope
    for factor in (0.9, 0.99, 0.999, 1.001, 1.01, 1.1):
        assert at(p * factor).flux < station.flux
    return station


def at_area_ratio(at, throat_station, ratio, p_start):
    """State on the supersonic side where the stream tube is `ratio` times as wide as at the throat."""
    target = np.log(throat_station.flux / ratio)
    high = throat_station.p
    low = 0.0
    p = p_start
    for _ in range(200):
        station = at(p)
        miss = np.log(station.flux) - target
        if miss > 0:
            high = p
        else:
            low = p
        step = -miss / station.slope
        new = p * np.exp(np.clip(step, -1.2, 1.2))
        if not low < new < high:
            new = np.sqrt(max(low, high * 0.3) * high)
        if abs(miss) < 1e-13 or abs(new / p - 1) < 1e-15:
            return station
        p = new
    raise AssertionError(f"area ratio {ratio}: {miss}")

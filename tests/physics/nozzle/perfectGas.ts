import type { Expansion, FlowState } from '../../../src/physics/gas/flow.ts';

/**
 * A calorically perfect gas written out from NACA Report 1135 (1953) for these tests alone, so that the nozzle models
 * are checked against closed forms and not against the program's own gas.
 */
export function perfectGas(gas: {
  gamma: number;
  pressure: number;
  temperature?: number;
  /** [J/(kg K)] */ constant?: number;
}): Expansion {
  const { gamma: g, pressure: p0, temperature: t0 = 3500, constant: r = 378 } = gas;
  const cp = (g * r) / (g - 1);

  const criticalFlux = fluxAt(1);
  function fluxAt(mach: number): number {
    const t = t0 / (1 + ((g - 1) / 2) * mach * mach);
    return ((p0 * (t / t0) ** (g / (g - 1))) / (r * t)) * mach * Math.sqrt(g * r * t);
  }
  function atMach(mach: number): FlowState {
    const temperature = t0 / (1 + ((g - 1) / 2) * mach * mach);
    const pressure = p0 * (temperature / t0) ** (g / (g - 1));
    const density = pressure / (r * temperature);
    const soundSpeed = Math.sqrt(g * r * temperature);
    const molarMass = 8.31446261815324 / r;
    return {
      temperature,
      pressure,
      density,
      molarMass,
      molarMassGas: molarMass,
      enthalpy: cp * temperature,
      entropy: 0,
      cpFrozen: cp,
      cpEquilibrium: null,
      isentropicExponent: g,
      gammaFrozen: g,
      soundSpeed,
      dlnVdlnT: 1,
      dlnVdlnp: -1,
      absent: null,
      notice: null,
      composition: () => ({}),
      velocity: mach * soundSpeed,
      mach,
      massFlux: density * mach * soundSpeed,
      areaRatio: mach > 0 ? criticalFlux / (density * mach * soundSpeed) : Number.POSITIVE_INFINITY,
    };
  }
  function machAtAreaRatio(areaRatio: number, side: 'subsonic' | 'supersonic'): number {
    let [low, high] = side === 'subsonic' ? [1, 0] : [1, 1000];
    for (let i = 0; i < 200; i++) {
      const middle = (low + high) / 2;
      if (criticalFlux / fluxAt(middle) < areaRatio) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }
  return {
    chemistry: 'perfect',
    chamber: atMach(0),
    throat: atMach(1),
    characteristicVelocity: p0 / criticalFlux,
    lowestPressure: 0,
    atMach,
    atAreaRatio: (areaRatio, side) => atMach(machAtAreaRatio(areaRatio, side)),
    atPressure: (pressure) => atMach(Math.sqrt((2 / (g - 1)) * ((p0 / pressure) ** ((g - 1) / g) - 1))),
  };
}

/** The same gas with the Mach number withheld, as where two phases of one substance pin the temperature. */
export function withoutMach(expansion: Expansion): Expansion {
  const strip = (state: FlowState): FlowState => ({ ...state, mach: null, soundSpeed: null });
  return {
    ...expansion,
    atPressure: (p) => strip(expansion.atPressure(p)),
    atAreaRatio: (a, side) => strip(expansion.atAreaRatio(a, side)),
    atMach: (m) => strip(expansion.atMach(m)),
  };
}

/** [rad] */
export const degrees = (value: number): number => (value * Math.PI) / 180;

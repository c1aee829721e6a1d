/**
 * Shocks in any gas, at constant total enthalpy.
 *
 *   mass       ρ₁ w₁ = ρ₂ w₂                w₁ = V₁ sin β, the velocity across the shock
 *   momentum   p₂ = p₁ + ρ₁ w₁² (1 − x)     x = ρ₁/ρ₂, and the velocity along the shock is kept
 *   energy     V₂² = V₁² cos²β + (x w₁)²    h + V²/2 = h₀
 *   gas        p₂/ρ₂ = q(V₂², p₂)
 *
 * One equation in x, f(x) = [ρ₁ q(V₂², p₂)/p₂ − x]/(1 − x) = 0, the trivial root x = 1 divided out.
 * Source: Rankine–Hugoniot relations, any text (e.g. W. G. Vincenti & C. H. Kruger, Introduction to Physical Gas Dynamics,
 * 1965; from memory). Check: a gas of constant γ → NACA Report 1135.
 */

import { findBracketedRoot } from '../../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../../numerics/problem.ts';
import { quotientAt, type ShockGas, soundSpeedAt } from './shockGas.ts';

/** The flow ahead of a shock, on the gas's own total enthalpy. */
export interface FlowAhead {
  /** [Pa] */ readonly pressure: number;
  /** [kg/m³] */ readonly density: number;
  /** V₁ [m/s] */ readonly speed: number;
}

export interface GasShock {
  /** β [rad] */ readonly waveAngle: number;
  /** θ [rad] */ readonly turn: number;
  readonly pressureRatio: number;
  readonly densityRatio: number;
  readonly machBehind: number;
  readonly behind: FlowAhead;
}

/** 1 less the density ratio of the weakest shock that is told from none. */
const WEAKEST = 1e-6;

/** The miss of the gas's equation behind a shock of density ratio 1/x, the trivial root divided out; above 0 for x too small. */
function missOf(gas: ShockGas, ahead: FlowAhead, waveAngle: number, x: number): number {
  const across = ahead.speed * Math.sin(waveAngle);
  const along2 = (ahead.speed * Math.cos(waveAngle)) ** 2;
  const pressure = ahead.pressure + ahead.density * across * across * (1 - x);
  const quotient = quotientAt(gas, along2 + (x * across) ** 2, pressure);
  return ((ahead.density * quotient) / pressure - x) / (1 - x);
}

function standsAt(gas: ShockGas, ahead: FlowAhead, waveAngle: number): boolean {
  return missOf(gas, ahead, waveAngle, 1 - WEAKEST) < 0;
}

/** The shock at wave angle β [rad]. @throws ProblemError where the flow across it is not supersonic */
export function gasShockAt(gas: ShockGas, ahead: FlowAhead, waveAngle: number): GasShock {
  if (!standsAt(gas, ahead, waveAngle)) return noShock(ahead, waveAngle);
  const across = ahead.speed * Math.sin(waveAngle);
  const along2 = (ahead.speed * Math.cos(waveAngle)) ** 2;
  const pressureBehind = (x: number): number => ahead.pressure + ahead.density * across * across * (1 - x);
  const speedSquared = (x: number): number => along2 + (x * across) ** 2;
  const miss = (x: number): number => missOf(gas, ahead, waveAngle, x);
  const x = findBracketedRoot(miss, 1e-3, 1 - WEAKEST, {
    valueTolerance: 1e-13,
    widthTolerance: 1e-14,
  }).root;
  const turn = waveAngle - Math.atan(x * Math.tan(waveAngle));
  const speed = Math.sqrt(speedSquared(x));
  return {
    waveAngle,
    turn: waveAngle >= Math.PI / 2 ? 0 : turn,
    pressureRatio: pressureBehind(x) / ahead.pressure,
    densityRatio: 1 / x,
    machBehind: speed / soundSpeedAt(gas, speed * speed, pressureBehind(x)),
    behind: { pressure: pressureBehind(x), density: ahead.density / x, speed },
  };
}

export function normalGasShock(gas: ShockGas, ahead: FlowAhead): GasShock {
  return gasShockAt(gas, ahead, Math.PI / 2);
}

/** The weak or strong shock that raises the pressure to `pressure` [Pa]; both are one: the rise fixes the angle. */
export function gasShockOfRise(gas: ShockGas, ahead: FlowAhead, pressure: number): GasShock {
  const normal = normalGasShock(gas, ahead);
  if (!(pressure > ahead.pressure && pressure <= normal.behind.pressure * (1 + 1e-12))) {
    throw new ProblemError({
      code: 'shock-rise-out-of-range',
      what: `No shock in this flow raises the pressure from ${kPa(ahead.pressure)} to ${kPa(pressure)}.`,
      why: `a normal shock, the strongest, reaches ${kPa(normal.behind.pressure)}`,
      mend: 'Ask for a pressure between the two: a lower ambient pressure.',
      facts: { ahead: ahead.pressure, pressure, normal: normal.behind.pressure },
    });
  }
  const rise = (angle: number): number => gasShockAt(gas, ahead, angle).behind.pressure / pressure - 1;
  const low = angleOfWeakest(gas, ahead);
  if (rise(low) >= 0) return gasShockAt(gas, ahead, low);
  const { root } = findBracketedRoot(rise, low, Math.PI / 2, {
    valueTolerance: 1e-12,
    widthTolerance: 1e-14,
  });
  return gasShockAt(gas, ahead, root);
}

/**
 * A little above the Mach angle: by a part in a hundred thousand of it, or by as much more as the table's own sound speed is
 * in need of, so that a shock is found there.
 */
function angleOfWeakest(gas: ShockGas, ahead: FlowAhead): number {
  const mach = ahead.speed / soundSpeedAt(gas, ahead.speed ** 2, ahead.pressure);
  const machAngle = Math.asin(Math.min(1 / mach, 1));
  for (let above = 1e-5; above < 0.1; above *= 2) {
    const angle = Math.min(machAngle * (1 + above), Math.PI / 2);
    if (standsAt(gas, ahead, angle)) return angle;
  }
  return Math.min(machAngle * 1.1, Math.PI / 2);
}

/** The weak shock that turns the flow by θ [rad]; null where none that is attached does. */
export function gasShockOfTurn(gas: ShockGas, ahead: FlowAhead, turn: number): GasShock | null {
  const low = angleOfWeakest(gas, ahead);
  const most = greatestGasTurn(gas, ahead);
  if (turn > most.turn) return null;
  const miss = (angle: number): number => gasShockAt(gas, ahead, angle).turn - turn;
  if (miss(low) >= 0) return gasShockAt(gas, ahead, low);
  const { root } = findBracketedRoot(miss, low, most.waveAngle, {
    valueTolerance: 1e-13,
    widthTolerance: 1e-14,
  });
  return gasShockAt(gas, ahead, root);
}

/** The attached shock of the greatest turn, by golden section. */
export function greatestGasTurn(gas: ShockGas, ahead: FlowAhead): GasShock {
  const share = (Math.sqrt(5) - 1) / 2;
  let low = angleOfWeakest(gas, ahead);
  let high = Math.PI / 2;
  let a = high - share * (high - low);
  let b = low + share * (high - low);
  let atA = gasShockAt(gas, ahead, a).turn;
  let atB = gasShockAt(gas, ahead, b).turn;
  for (let i = 0; i < 40; i++) {
    if (atA > atB) {
      high = b;
      b = a;
      atB = atA;
      a = high - share * (high - low);
      atA = gasShockAt(gas, ahead, a).turn;
    } else {
      low = a;
      a = b;
      atA = atB;
      b = low + share * (high - low);
      atB = gasShockAt(gas, ahead, b).turn;
    }
  }
  return gasShockAt(gas, ahead, 0.5 * (low + high));
}

function noShock(ahead: FlowAhead, waveAngle: number): never {
  throw new ProblemError({
    code: 'no-shock-at-angle',
    what: `No shock stands at ${((waveAngle * 180) / Math.PI).toFixed(2)}° to a flow of ${ahead.speed.toFixed(0)} m/s.`,
    why: 'the flow across it would be slower than sound',
    mend: 'Give an angle above the Mach angle, or a faster flow.',
    facts: { ...ahead, waveAngle },
  });
}

function kPa(pressure: number): string {
  return `${Number((pressure / 1000).toPrecision(4))} kPa`;
}

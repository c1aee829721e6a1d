/** The step of a flow field on 64-bit and on 32-bit floats, from the same equations. */

import { settle } from './gas';
import { shocks, steps } from './marks';
import { stage } from './stage';

export function stage64(block: usize, which: i32, flat: i32): i32 {
  return stage<f64>(block, which, flat != 0);
}
export function stage32(block: usize, which: i32, flat: i32): i32 {
  return stage<f32>(block, which, flat != 0);
}
export function shocks64(block: usize): void {
  shocks<f64>(block);
}
export function shocks32(block: usize): void {
  shocks<f32>(block);
}
export function steps64(block: usize, courant: f64): f64 {
  return steps<f64>(block, courant);
}
export function steps32(block: usize, courant: f64): f64 {
  return steps<f32>(block, courant);
}
export function settle64(block: usize, inner: usize, outer: usize, all: i32): i32 {
  return settle<f64>(block, inner, outer, all != 0);
}
export function settle32(block: usize, inner: usize, outer: usize, all: i32): i32 {
  return settle<f32>(block, inner, outer, all != 0);
}

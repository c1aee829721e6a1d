/** The step of a flow field on 64-bit and on 32-bit floats, from the same equations; each call for a part of a block’s rows. */

import { settle } from './gas';
import { shocks, steps } from './marks';
import { edges, stage } from './stage';

export function edges64(block: usize, hand: i32, from: i32, to: i32, flat: i32): void {
  edges<f64>(block, hand, from, to, flat != 0);
}
export function edges32(block: usize, hand: i32, from: i32, to: i32, flat: i32): void {
  edges<f32>(block, hand, from, to, flat != 0);
}
export function stage64(block: usize, hand: i32, from: i32, to: i32, which: i32, flat: i32): i32 {
  return stage<f64>(block, hand, from, to, which, flat != 0);
}
export function stage32(block: usize, hand: i32, from: i32, to: i32, which: i32, flat: i32): i32 {
  return stage<f32>(block, hand, from, to, which, flat != 0);
}
export function shocks64(block: usize, from: i32, to: i32): void {
  shocks<f64>(block, from, to);
}
export function shocks32(block: usize, from: i32, to: i32): void {
  shocks<f32>(block, from, to);
}
export function steps64(block: usize, from: i32, to: i32, courant: f64): f64 {
  return steps<f64>(block, from, to, courant);
}
export function steps32(block: usize, from: i32, to: i32, courant: f64): f64 {
  return steps<f32>(block, from, to, courant);
}
export function settle64(block: usize, from: i32, to: i32, inner: usize, outer: usize, all: i32): i32 {
  return settle<f64>(block, from, to, inner, outer, all != 0);
}
export function settle32(block: usize, from: i32, to: i32, inner: usize, outer: usize, all: i32): i32 {
  return settle<f32>(block, from, to, inner, outer, all != 0);
}

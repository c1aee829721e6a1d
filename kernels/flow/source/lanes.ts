/** Lanes of a vector: four 32-bit or two 64-bit floats, by T. */

/** How many. */
// @ts-ignore: decorator
@inline
export function lanes<T extends number>(): i32 {
  return 16 / sizeof<T>();
}

/** All bits set in the lanes whose byte is not 0. */
// @ts-ignore: decorator
@inline
export function marked<T extends number>(bytes: usize): v128 {
  const words = i32x4.extend_low_i16x8_u(i16x8.extend_low_i8x16_u(v128.load32_zero(bytes)));
  if (sizeof<T>() == 4) return i32x4.ne(words, i32x4.splat(0));
  return i64x2.ne(i64x2.extend_low_i32x4_u(words), i64x2.splat(0));
}

/** All bits set in the lanes whose byte is a value. */
// @ts-ignore: decorator
@inline
export function markedAs<T extends number>(bytes: usize, value: i32): v128 {
  const words = i32x4.extend_low_i16x8_u(i16x8.extend_low_i8x16_u(v128.load32_zero(bytes)));
  if (sizeof<T>() == 4) return i32x4.eq(words, i32x4.splat(value));
  return i64x2.eq(i64x2.extend_low_i32x4_u(words), i64x2.splat(value));
}

/** All bits set in the first `count` lanes. */
// @ts-ignore: decorator
@inline
export function firstLanes<T extends number>(count: i32): v128 {
  if (sizeof<T>() == 4) return i32x4.lt_s(i32x4(0, 1, 2, 3), i32x4.splat(count));
  return i64x2.lt_s(i64x2(0, 1), i64x2.splat(count));
}

/** One bit a lane. */
// @ts-ignore: decorator
@inline
export function bits<T extends number>(mask: v128): i32 {
  return sizeof<T>() == 4 ? i32x4.bitmask(mask) : i64x2.bitmask(mask);
}

// @ts-ignore: decorator
@inline
export function half<T extends number>(): v128 {
  return v128.splat<T>(<T>0.5);
}

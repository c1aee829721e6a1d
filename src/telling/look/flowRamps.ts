/**
 * Ramps of what else a flow is drawn by: Mach number, temperature, speed. Each starts at the paper and goes away from it in steps
 * of even lightness, in a hue of its own; the pressure ramp is the fourth. Only one of them is in a picture at a time.
 */

import {
  PRESSURE_STEPS,
  pressureStep,
  pressureStepStart,
  stepColour,
  stepStartsAtPowerOfTen,
} from './pressureRamp.ts';
import type { Theme } from './tokens.ts';

export type Tint = 'pressure' | 'mach' | 'temperature' | 'speed';
export const TINTS: readonly Tint[] = ['pressure', 'mach', 'temperature', 'speed'];

/** Of a computed field the density is drawn too: with shocks, pressure alone does not say it. */
export type FieldTint = Tint | 'density';
export const FIELD_TINTS: readonly FieldTint[] = [...TINTS, 'density'];

export interface Ramp {
  readonly tint: FieldTint;
  readonly steps: number;
  /** Step of a value: 0 below the ramp (paper), the last one above it. */
  readonly stepOf: (value: number) => number;
  /** Value at which a step begins; one past the last gives the upper end. */
  readonly startOf: (step: number) => number;
  /** Its lower edge is a round number: drawn stronger. */
  readonly isStrong: (step: number) => boolean;
}

/** Steps of the ramps that are even in the value. */
export const FLOW_STEPS = 16;

function evenRamp(tint: Tint, first: number, width: number, strong: number): Ramp {
  return {
    tint,
    steps: FLOW_STEPS,
    stepOf: (value) => Math.min(FLOW_STEPS, Math.max(0, 1 + Math.floor((value - first) / width + 1e-9))),
    startOf: (step) => first + (step - 1) * width,
    isStrong: (step) => Math.abs((first + (step - 1) * width) % strong) < 1e-9,
  };
}

function ratioRamp(tint: FieldTint, first: number, toTen: number): Ramp {
  return {
    tint,
    steps: FLOW_STEPS,
    stepOf: (value) =>
      Math.min(FLOW_STEPS, Math.max(0, 1 + Math.floor(toTen * Math.log10(value / first) + 1e-9))),
    startOf: (step) => first * 10 ** ((step - 1) / toTen),
    isStrong: (step) => (step - 1) % toTen === 0,
  };
}

export const RAMPS: Readonly<Record<FieldTint, Ramp>> = {
  /** [Pa] */
  pressure: {
    tint: 'pressure',
    steps: PRESSURE_STEPS,
    stepOf: pressureStep,
    startOf: pressureStepStart,
    isStrong: stepStartsAtPowerOfTen,
  },
  /** [–] 0.25 to 6.25 */
  mach: evenRamp('mach', 0.25, 0.375, 1),
  /** [K] 300 to 4300 */
  temperature: evenRamp('temperature', 300, 250, 1000),
  /** [m/s] 200 to 5000 */
  speed: evenRamp('speed', 200, 300, 1000),
  /** [kg/m³] 0.001 to 10, four steps to a power of ten */
  density: ratioRamp('density', 1e-3, 4),
};

/** Hue angle and greatest chroma in OKLCH (B. Ottosson, 2020); apart from each other, from the blue of pressure and from the engines. */
const HUES: Readonly<Record<Exclude<FieldTint, 'pressure'>, readonly [number, number]>> = {
  mach: [155, 0.1],
  temperature: [75, 0.11],
  speed: [295, 0.13],
  density: [345, 0.11],
};
/** Lightness at the paper's end and at the far end. */
const LIGHTNESS: Readonly<Record<Theme, readonly [number, number]>> = {
  light: [0.955, 0.2],
  dark: [0.245, 0.96],
  print: [0.97, 0.2],
};

/** Colour of a step of any ramp, 0 being the paper. */
export function rampColour(tint: FieldTint, step: number, theme: Theme): string {
  if (tint === 'pressure' || step === 0) return stepColour(step, theme);
  const share = (Math.min(step, FLOW_STEPS) - 1) / (FLOW_STEPS - 1);
  const [near, far] = LIGHTNESS[theme];
  const [hue, chroma] = HUES[tint];
  return hexOfOklch(near + share * (far - near), chroma * Math.sin(Math.PI * (0.12 + 0.76 * share)), hue);
}

/** OKLab to linear sRGB to hexadecimal; matrices of B. Ottosson, 2020, “A perceptual color space for image processing”. */
function hexOfOklch(lightness: number, chroma: number, hue: number): string {
  const a = chroma * Math.cos((hue * Math.PI) / 180);
  const b = chroma * Math.sin((hue * Math.PI) / 180);
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return `#${[
    4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
    -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
    -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s,
  ]
    .map(byteOf)
    .join('')}`;
}

/** Light to the value of sRGB (IEC 61966-2-1), two hexadecimal digits. */
function byteOf(light: number): string {
  const bounded = Math.min(1, Math.max(0, light));
  const value = bounded <= 0.0031308 ? 12.92 * bounded : 1.055 * bounded ** (1 / 2.4) - 0.055;
  return Math.round(255 * value)
    .toString(16)
    .padStart(2, '0');
}

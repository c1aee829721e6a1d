/**
 * Straight RGBA to planes of Y, Cb and Cr, every second pixel's colour, as film and television keep it
 * (ITU-R BT.709-6, items 3.2 to 3.5, 8 bits: black 16, white 235, colours 16 to 240).
 *
 *   Y = 16 + 219 (0.2126 R + 0.7152 G + 0.0722 B)   Cb = 128 + 224 (B − Y')/1.8556   Cr = 128 + 224 (R − Y')/1.5748
 *
 * with R, G, B and Y' from 0 to 1. Colours are means of four pixels; where some are transparent, weighted by how
 * much they show, so that no edge takes on a colour that is not there.
 */

/** Bytes of one frame. */
export const planesSize = (width: number, height: number, alpha: boolean): number =>
  (alpha ? 2.5 : 1.5) * width * height;

const SHIFT = 16;
const ONE = 1 << SHIFT;
const HALF = ONE >> 1;
const whole = (value: number): number => Math.round(value * ONE);
const Y = [whole((0.2126 * 219) / 255), whole((0.7152 * 219) / 255), whole((0.0722 * 219) / 255)] as const;
const B_SCALE = 224 / 255 / 1.8556;
const R_SCALE = 224 / 255 / 1.5748;
const CB = [whole(-0.2126 * B_SCALE), whole(-0.7152 * B_SCALE), whole((1 - 0.0722) * B_SCALE)] as const;
const CR = [whole((1 - 0.2126) * R_SCALE), whole(-0.7152 * R_SCALE), whole(-0.0722 * R_SCALE)] as const;
const Y_ZERO = (16 << SHIFT) + HALF;
const C_ZERO = (128 << SHIFT) + HALF;

/** Width and height must be even; `out` takes Y, Cb, Cr and, where asked for, the alpha as it is. */
export function writePlanes(
  out: Uint8Array,
  rgba: Uint8ClampedArray,
  width: number,
  height: number,
  alpha: boolean,
): void {
  const pixels = new Uint32Array(rgba.buffer, rgba.byteOffset, width * height);
  const [blue, red] = [width * height, 1.25 * width * height];
  const shown = 1.5 * width * height;
  const wide = width >> 1;
  // Most of a picture is flat: what was found for one square of four equal pixels is kept for the next.
  let lastPixel = 0;
  let [lastY, lastCb, lastCr] = [16, 128, 128];
  for (let y = 0; y < height; y += 2) {
    let top = y * width;
    let bottom = top + width;
    let colour = (y >> 1) * wide;
    for (let x = 0; x < wide; x++, top += 2, bottom += 2, colour++) {
      const a = pixels[top]!;
      if (a === pixels[top + 1] && a === pixels[bottom] && a === pixels[bottom + 1]) {
        if (a !== lastPixel) {
          lastPixel = a;
          const r = a & 255;
          const g = (a >> 8) & 255;
          const b = (a >> 16) & 255;
          lastY = (Y_ZERO + Y[0] * r + Y[1] * g + Y[2] * b) >> SHIFT;
          lastCb = (C_ZERO + CB[0] * r + CB[1] * g + CB[2] * b) >> SHIFT;
          lastCr = (C_ZERO + CR[0] * r + CR[1] * g + CR[2] * b) >> SHIFT;
        }
        out[top] = lastY;
        out[top + 1] = lastY;
        out[bottom] = lastY;
        out[bottom + 1] = lastY;
        out[blue + colour] = lastCb;
        out[red + colour] = lastCr;
        if (alpha) {
          const opacity = a >>> 24;
          out[shown + top] = opacity;
          out[shown + top + 1] = opacity;
          out[shown + bottom] = opacity;
          out[shown + bottom + 1] = opacity;
        }
        continue;
      }
      writeSquare(out, rgba, top, bottom, blue + colour, red + colour, alpha ? shown : -1);
    }
  }
}

function writeSquare(
  out: Uint8Array,
  rgba: Uint8ClampedArray,
  top: number,
  bottom: number,
  blue: number,
  red: number,
  shown: number,
): void {
  let [sumR, sumG, sumB, sum] = [0, 0, 0, 0];
  for (let i = 0; i < 4; i++) {
    const at = (i < 2 ? top : bottom) + (i & 1);
    const r = rgba[4 * at]!;
    const g = rgba[4 * at + 1]!;
    const b = rgba[4 * at + 2]!;
    const weight = shown < 0 ? 1 : rgba[4 * at + 3]!;
    out[at] = (Y_ZERO + Y[0] * r + Y[1] * g + Y[2] * b) >> SHIFT;
    if (shown >= 0) out[shown + at] = weight;
    sumR += weight * r;
    sumG += weight * g;
    sumB += weight * b;
    sum += weight;
  }
  const [r, g, b] = sum === 0 ? [0, 0, 0] : [sumR / sum, sumG / sum, sumB / sum];
  out[blue] = (C_ZERO + CB[0] * r + CB[1] * g + CB[2] * b) >> SHIFT;
  out[red] = (C_ZERO + CR[0] * r + CR[1] * g + CR[2] * b) >> SHIFT;
}

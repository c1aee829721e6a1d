/**
 * The sums over the gases that fill the linear system of gibbsMinimum.ts, kept in local numbers for two, three and four
 * elements, where nearly all the time goes; any other count takes the plain loop. All do the same:
 *
 *   M_km = Σ a_k a_m n,  m_k = Σ a_k n,  r_k = Σ a_k n (μ − 1),  h_k = Σ a_k n h,  e_k = Σ a_k n e
 */

/** Places in the output, E elements: M upper triangle row by row, then m, r, h, e, each E long. */
export function balanceSumsInto(
  out: Float64Array,
  elements: number,
  gases: number,
  formula: Float64Array,
  moles: Float64Array,
  /** n (μ − 1), n h, n e per gas */ excess: Float64Array,
  heat: Float64Array,
  held: Float64Array,
): void {
  if (elements === 3) threeElements(out, gases, formula, moles, excess, heat, held);
  else if (elements === 4) fourElements(out, gases, formula, moles, excess, heat, held);
  else if (elements === 2) twoElements(out, gases, formula, moles, excess, heat, held);
  else anyElements(out, elements, gases, formula, moles, excess, heat, held);
}

function anyElements(
  out: Float64Array,
  E: number,
  gases: number,
  formula: Float64Array,
  moles: Float64Array,
  excess: Float64Array,
  heat: Float64Array,
  held: Float64Array,
): void {
  const triangle = (E * (E + 1)) / 2;
  out.fill(0, 0, triangle + 4 * E);
  for (let i = 0; i < gases; i++) {
    const n = moles[i]!;
    const r = excess[i]!;
    const h = heat[i]!;
    const e = held[i]!;
    let at = 0;
    for (let k = 0; k < E; k++) {
      const a = formula[i * E + k]!;
      const an = a * n;
      for (let m = k; m < E; m++) out[at++]! += an * formula[i * E + m]!;
      out[triangle + k]! += an;
      out[triangle + E + k]! += a * r;
      out[triangle + 2 * E + k]! += a * h;
      out[triangle + 3 * E + k]! += a * e;
    }
  }
}

function twoElements(
  out: Float64Array,
  gases: number,
  formula: Float64Array,
  moles: Float64Array,
  excess: Float64Array,
  heat: Float64Array,
  held: Float64Array,
): void {
  let m00 = 0,
    m01 = 0,
    m11 = 0;
  let n0 = 0,
    n1 = 0,
    r0 = 0,
    r1 = 0,
    h0 = 0,
    h1 = 0,
    e0 = 0,
    e1 = 0;
  for (let i = 0, at = 0; i < gases; i++, at += 2) {
    const n = moles[i]!,
      r = excess[i]!,
      h = heat[i]!,
      e = held[i]!;
    const a = formula[at]!,
      b = formula[at + 1]!;
    const an = a * n,
      bn = b * n;
    m00 += an * a;
    m01 += an * b;
    m11 += bn * b;
    n0 += an;
    n1 += bn;
    r0 += a * r;
    r1 += b * r;
    h0 += a * h;
    h1 += b * h;
    e0 += a * e;
    e1 += b * e;
  }
  out[0] = m00;
  out[1] = m01;
  out[2] = m11;
  out[3] = n0;
  out[4] = n1;
  out[5] = r0;
  out[6] = r1;
  out[7] = h0;
  out[8] = h1;
  out[9] = e0;
  out[10] = e1;
}

function threeElements(
  out: Float64Array,
  gases: number,
  formula: Float64Array,
  moles: Float64Array,
  excess: Float64Array,
  heat: Float64Array,
  held: Float64Array,
): void {
  let m00 = 0,
    m01 = 0,
    m02 = 0,
    m11 = 0,
    m12 = 0,
    m22 = 0;
  let n0 = 0,
    n1 = 0,
    n2 = 0,
    r0 = 0,
    r1 = 0,
    r2 = 0;
  let h0 = 0,
    h1 = 0,
    h2 = 0,
    e0 = 0,
    e1 = 0,
    e2 = 0;
  for (let i = 0, at = 0; i < gases; i++, at += 3) {
    const n = moles[i]!,
      r = excess[i]!,
      h = heat[i]!,
      e = held[i]!;
    const a = formula[at]!,
      b = formula[at + 1]!,
      c = formula[at + 2]!;
    const an = a * n,
      bn = b * n,
      cn = c * n;
    m00 += an * a;
    m01 += an * b;
    m02 += an * c;
    m11 += bn * b;
    m12 += bn * c;
    m22 += cn * c;
    n0 += an;
    n1 += bn;
    n2 += cn;
    r0 += a * r;
    r1 += b * r;
    r2 += c * r;
    h0 += a * h;
    h1 += b * h;
    h2 += c * h;
    e0 += a * e;
    e1 += b * e;
    e2 += c * e;
  }
  out[0] = m00;
  out[1] = m01;
  out[2] = m02;
  out[3] = m11;
  out[4] = m12;
  out[5] = m22;
  out[6] = n0;
  out[7] = n1;
  out[8] = n2;
  out[9] = r0;
  out[10] = r1;
  out[11] = r2;
  out[12] = h0;
  out[13] = h1;
  out[14] = h2;
  out[15] = e0;
  out[16] = e1;
  out[17] = e2;
}

function fourElements(
  out: Float64Array,
  gases: number,
  formula: Float64Array,
  moles: Float64Array,
  excess: Float64Array,
  heat: Float64Array,
  held: Float64Array,
): void {
  let m00 = 0,
    m01 = 0,
    m02 = 0,
    m03 = 0,
    m11 = 0,
    m12 = 0,
    m13 = 0,
    m22 = 0,
    m23 = 0,
    m33 = 0;
  let n0 = 0,
    n1 = 0,
    n2 = 0,
    n3 = 0,
    r0 = 0,
    r1 = 0,
    r2 = 0,
    r3 = 0;
  let h0 = 0,
    h1 = 0,
    h2 = 0,
    h3 = 0,
    e0 = 0,
    e1 = 0,
    e2 = 0,
    e3 = 0;
  for (let i = 0, at = 0; i < gases; i++, at += 4) {
    const n = moles[i]!,
      r = excess[i]!,
      h = heat[i]!,
      e = held[i]!;
    const a = formula[at]!,
      b = formula[at + 1]!,
      c = formula[at + 2]!,
      d = formula[at + 3]!;
    const an = a * n,
      bn = b * n,
      cn = c * n,
      dn = d * n;
    m00 += an * a;
    m01 += an * b;
    m02 += an * c;
    m03 += an * d;
    m11 += bn * b;
    m12 += bn * c;
    m13 += bn * d;
    m22 += cn * c;
    m23 += cn * d;
    m33 += dn * d;
    n0 += an;
    n1 += bn;
    n2 += cn;
    n3 += dn;
    r0 += a * r;
    r1 += b * r;
    r2 += c * r;
    r3 += d * r;
    h0 += a * h;
    h1 += b * h;
    h2 += c * h;
    h3 += d * h;
    e0 += a * e;
    e1 += b * e;
    e2 += c * e;
    e3 += d * e;
  }
  out[0] = m00;
  out[1] = m01;
  out[2] = m02;
  out[3] = m03;
  out[4] = m11;
  out[5] = m12;
  out[6] = m13;
  out[7] = m22;
  out[8] = m23;
  out[9] = m33;
  out[10] = n0;
  out[11] = n1;
  out[12] = n2;
  out[13] = n3;
  out[14] = r0;
  out[15] = r1;
  out[16] = r2;
  out[17] = r3;
  out[18] = h0;
  out[19] = h1;
  out[20] = h2;
  out[21] = h3;
  out[22] = e0;
  out[23] = e1;
  out[24] = e2;
  out[25] = e3;
}

/**
 * The flux through the faces between cells: Harten–Lax–van Leer with the contact kept (Toro, Spruce & Speares 1994), wave
 * speeds by Einfeldt (1988) for any gas; without the contact (HLLE) where a face stands across a strong shock, which would
 * otherwise bulge (Quirk 1994). Written out over flat arrays, nothing allocated: all the time of a field is spent here.
 */

import type { Field } from './field.ts';
import type { Inflow } from './inflow.ts';
import { cellAt, strideOf } from './mesh.ts';
import type { Slopes } from './slopes.ts';

/** Of the lines of faces, and of the faces in each. */
export interface FaceRange {
  readonly line: number;
  readonly lineEnd: number;
  readonly face: number;
  readonly faceEnd: number;
}
const ALL: FaceRange = {
  line: 0,
  lineEnd: Number.POSITIVE_INFINITY,
  face: 0,
  faceEnd: Number.POSITIVE_INFINITY,
};

/** Above this share of another gas two cells count as different gases. */
const OTHER_GAS = 1e-9;

/**
 * Adds to the inflow what passes through all faces across one index. Where the cells beside a face hold different gases each
 * reckons the energy of both sides by its own tangent, so that a contact keeps pressure and speed uniform (Abgrall & Karni
 * 2001): mass and momentum stay conserved, energy only in sum over one gas.
 */
export function flowThroughFaces(
  field: Field,
  slopes: Slopes,
  inflow: Inflow,
  along: 'i' | 'j',
  only: FaceRange = ALL,
): void {
  const { mesh, density, u, v, pressure, share, kappa, eta, zeta } = field;
  const { ni, nj } = mesh;
  const across = along === 'i';
  const [lines, count, step] = across ? [nj, ni + 1, 1] : [nj + 1, ni, strideOf(mesh)];
  const areaX = across ? mesh.iFaceX : mesh.jFaceX;
  const areaY = across ? mesh.iFaceY : mesh.jFaceY;
  const walls = across ? field.iWalls : field.jWalls;
  // A face of one index stands across shocks that lie across the other.
  const shock = across ? field.shockJ : field.shockI;
  const { density: dRho, u: dU, v: dV, pressure: dP, share: dShare } = slopes;
  const { mass, x, y, energy, share: inner } = inflow;
  for (let line = only.line; line < Math.min(lines, only.lineEnd); line++) {
    const from = across ? cellAt(mesh, -1, line) : cellAt(mesh, 0, line - 1);
    for (let k = only.face; k < Math.min(count, only.faceEnd); k++) {
      const face = line * count + k;
      const ax = areaX[face]!;
      const ay = areaY[face]!;
      const area = Math.sqrt(ax * ax + ay * ay);
      if (area === 0) continue;
      const nx = ax / area;
      const ny = ay / area;
      const a = from + k;
      const b = a + step;
      let rl = density[a]! + dRho[a]! / 2;
      let pl = pressure[a]! + dP[a]! / 2;
      let ux = u[a]!;
      let uy = v[a]!;
      let yl = share[a]!;
      if (rl > 0 && pl > 0) {
        ux += dU[a]! / 2;
        uy += dV[a]! / 2;
        yl += dShare[a]! / 2;
      } else {
        rl = density[a]!;
        pl = pressure[a]!;
      }
      let ul = ux * nx + uy * ny;
      let vl = uy * nx - ux * ny;
      let rr = density[b]! - dRho[b]! / 2;
      let pr = pressure[b]! - dP[b]! / 2;
      ux = u[b]!;
      uy = v[b]!;
      let yr = share[b]!;
      if (rr > 0 && pr > 0) {
        ux -= dU[b]! / 2;
        uy -= dV[b]! / 2;
        yr -= dShare[b]! / 2;
      } else {
        rr = density[b]!;
        pr = pressure[b]!;
      }
      let ur = ux * nx + uy * ny;
      let vr = uy * nx - ux * ny;
      let kl = kappa[a]!;
      let el = eta[a]!;
      let zl = zeta[a]!;
      let kr = kappa[b]!;
      let er = eta[b]!;
      let zr = zeta[b]!;
      if (walls[face] === 1) {
        // The wall’s other side: what comes is sent back. The block lies ahead of its first face, behind its last.
        if (across ? k === 0 : line === 0) {
          rl = rr;
          ul = -ur;
          vl = vr;
          pl = pr;
          yl = yr;
          kl = kr;
          el = er;
          zl = zr;
        } else {
          rr = rl;
          ur = -ul;
          vr = vl;
          pr = pl;
          yr = yl;
          kr = kl;
          er = el;
          zr = zl;
        }
      }
      const between = share[a]! - share[b]!;
      const apart = between > OTHER_GAS || between < -OTHER_GAS;
      // Energy of both states as the gas of cell a, then as that of cell b reckons it.
      const movingLeft = (rl * (ul * ul + vl * vl)) / 2;
      const movingRight = (rr * (ur * ur + vr * vr)) / 2;
      const leftByA = kl * pl + el * rl + zl + movingLeft;
      const rightByB = kr * pr + er * rr + zr + movingRight;
      const rightByA = apart ? kl * pr + el * rr + zl + movingRight : rightByB;
      const leftByB = apart ? kr * pl + er * rl + zr + movingLeft : leftByA;

      const squareLeft = ((kl + 1) * pl + zl) / (kl * rl);
      const squareRight = ((kr + 1) * pr + zr) / (kr * rr);
      const wl = Math.sqrt(rl);
      const wr = Math.sqrt(rr);
      const part = wl / (wl + wr);
      const jump = ur - ul;
      const mean = part * ul + (1 - part) * ur;
      const middle = Math.sqrt(
        part * squareLeft + (1 - part) * squareRight + (part * (1 - part) * jump * jump) / 2,
      );
      const sl = Math.min(ul - Math.sqrt(squareLeft), mean - middle);
      const sr = Math.max(ur + Math.sqrt(squareRight), mean + middle);
      let m: number;
      let pn: number;
      let pt: number;
      let my: number;
      let ea: number;
      let eb: number;
      if (sl >= 0) {
        m = rl * ul;
        pn = m * ul + pl;
        pt = m * vl;
        my = m * yl;
        ea = (leftByA + pl) * ul;
        eb = (leftByB + pl) * ul;
      } else if (sr <= 0) {
        m = rr * ur;
        pn = m * ur + pr;
        pt = m * vr;
        my = m * yr;
        ea = (rightByA + pr) * ur;
        eb = (rightByB + pr) * ur;
      } else if (shock[a] === 1 || shock[b] === 1) {
        const width = sr - sl;
        const gl = sr / width;
        const gr = -sl / width;
        const g = sl * gl;
        const ml = rl * ul;
        const mr = rr * ur;
        m = gl * ml + gr * mr + g * (rr - rl);
        pn = gl * (ml * ul + pl) + gr * (mr * ur + pr) + g * (mr - ml);
        pt = gl * ml * vl + gr * mr * vr + g * (rr * vr - rl * vl);
        my = gl * ml * yl + gr * mr * yr + g * (rr * yr - rl * yl);
        ea = gl * (leftByA + pl) * ul + gr * (rightByA + pr) * ur + g * (rightByA - leftByA);
        eb = gl * (leftByB + pl) * ul + gr * (rightByB + pr) * ur + g * (rightByB - leftByB);
      } else {
        const ml = rl * (sl - ul);
        const mr = rr * (sr - ur);
        const sm = (pr - pl + ul * ml - ur * mr) / (ml - mr);
        if (sm >= 0) {
          const star = pl + ml * (sm - ul);
          m = (ml * sm) / (sl - sm);
          pn = m * sm + star;
          pt = m * vl;
          my = m * yl;
          ea = (((sl - ul) * leftByA - pl * ul + star * sm) / (sl - sm) + star) * sm;
          eb = (((sl - ul) * leftByB - pl * ul + star * sm) / (sl - sm) + star) * sm;
        } else {
          const star = pr + mr * (sm - ur);
          m = (mr * sm) / (sr - sm);
          pn = m * sm + star;
          pt = m * vr;
          my = m * yr;
          ea = (((sr - ur) * rightByA - pr * ur + star * sm) / (sr - sm) + star) * sm;
          eb = (((sr - ur) * rightByB - pr * ur + star * sm) / (sr - sm) + star) * sm;
        }
      }
      const px = (pn * nx - pt * ny) * area;
      const py = (pn * ny + pt * nx) * area;
      m *= area;
      my *= area;
      mass[a] = mass[a]! - m;
      mass[b] = mass[b]! + m;
      x[a] = x[a]! - px;
      x[b] = x[b]! + px;
      y[a] = y[a]! - py;
      y[b] = y[b]! + py;
      energy[a] = energy[a]! - ea * area;
      energy[b] = energy[b]! + eb * area;
      inner[a] = inner[a]! - my;
      inner[b] = inner[b]! + my;
    }
  }
}

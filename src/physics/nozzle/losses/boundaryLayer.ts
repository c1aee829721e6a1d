/**
 * Turbulent boundary layer along a wall by the momentum integral.
 *
 *   d(ρ u² θ b)/ds + δ* ρ u b du/ds = τ_w b,   δ* = H θ,   τ_w = c_f ρ u²/2
 *
 * s runs along the wall, b is the width of the wall across the flow (2πr for a body of revolution, constant for a plane
 * one), ρ and u belong to the flow outside. The layer is thin against the radius, smooth, turbulent from the first station
 * on; H and c_f are those of a flat plate at the same state (no memory of the pressure gradient, no return to laminar
 * flow). Heat by Reynolds' analogy in Colburn's form:
 *
 *   q = St ρ u (h_r − h_w),   St = (c_f/2) Pr^{−2/3}
 *
 * Sources: Th. von Kármán, Z. angew. Math. Mech. 1, 1921, 233; H. Schlichting, Boundary-Layer Theory, 7th ed., 1979, ch. XXII and
 * XXIII; D. G. Elliott, D. R. Bartz, S. Silver, JPL Technical Report 32-387, 1963 (in nozzles); all from memory.
 */

import type { LayerEdge, LayerGas } from './layerGas.ts';
import { layerProfile } from './layerProfile.ts';
import { frictionCompressible, LOWEST_REYNOLDS } from './skinFriction.ts';

/** A place on the wall. */
export interface LayerStation {
  /** [m] */ readonly axial: number;
  /** [m] */ readonly radius: number;
  /** [Pa] on the wall */ readonly pressure: number;
  /** [m] width of the wall across the flow; absent: 2πr */ readonly girth?: number;
  /** [K] outside the layer; absent: on the isentrope from the chamber */ readonly temperature?: number;
  /** [m/s] likewise */ readonly velocity?: number;
}

export interface LayerPoint {
  readonly axial: number;
  readonly radius: number;
  /** θ [m] */ readonly momentumThickness: number;
  /** δ* [m] */ readonly displacementThickness: number;
  /** c_f [–] */ readonly friction: number;
  /** τ_w [Pa] */ readonly shear: number;
  /** q [W/m²], into the wall */ readonly heatFlux: number;
}

export interface BoundaryLayer {
  readonly points: readonly LayerPoint[];
  /** ρ u² θ b at the end [N]: momentum that the flow lacks there */ readonly momentumLost: number;
  /** ∫ τ_w b ds [N] */ readonly drag: number;
  /** ∫ q b ds [W] */ readonly heatFlow: number;
}

interface Local {
  readonly edge: LayerEdge;
  readonly girth: number;
  readonly shape: number;
  readonly recoveryEnthalpy: number;
  readonly densityWeight: number;
}

/** @param stations in the direction of the flow, at least two */
export function boundaryLayer(stations: readonly LayerStation[], gas: LayerGas): BoundaryLayer {
  const points: LayerPoint[] = [];
  let drag = 0;
  let heatFlow = 0;
  let before = localAt(stations[0]!, gas);
  let flux = startingFlux(before);
  points.push(pointAt(stations[0]!, before, flux));
  for (let i = 1; i < stations.length; i++) {
    const here = localAt(stations[i]!, gas);
    const from = stations[i - 1]!;
    const to = stations[i]!;
    const length = Math.hypot(to.axial - from.axial, to.radius - from.radius);
    const shearBefore = points[i - 1]!.shear * before.girth;
    // In front of equal states ln(u₂/u₁) is 0; along the step ρu²θb shrinks by (u₁/u₂)^H and gains τ_w b.
    const kept = (before.edge.velocity / here.edge.velocity) ** ((before.shape + here.shape) / 2);
    let next = flux * kept + length * shearBefore * Math.sqrt(kept);
    for (let round = 0; round < 2; round++) {
      const shearHere = pointAt(to, here, next).shear * here.girth;
      next = flux * kept + (length / 2) * (shearBefore * kept + shearHere);
    }
    flux = next;
    const point = pointAt(to, here, flux);
    drag += (length / 2) * (shearBefore + point.shear * here.girth);
    heatFlow += (length / 2) * (points[i - 1]!.heatFlux * before.girth + point.heatFlux * here.girth);
    points.push(point);
    before = here;
  }
  return { points, momentumLost: flux, drag, heatFlow };
}

function localAt(station: LayerStation, gas: LayerGas): Local {
  const onIsentrope = gas.edgeAt(station.pressure);
  const temperature = station.temperature ?? onIsentrope.temperature;
  const edge: LayerEdge =
    station.temperature === undefined && station.velocity === undefined
      ? onIsentrope
      : {
          ...onIsentrope,
          temperature,
          density: (onIsentrope.density * onIsentrope.temperature) / temperature,
          velocity: station.velocity ?? onIsentrope.velocity,
        };
  const { shape, densityWeight, recoveryEnthalpy } = layerProfile(edge, gas);
  return {
    edge,
    girth: station.girth ?? 2 * Math.PI * station.radius,
    shape,
    densityWeight,
    recoveryEnthalpy,
  };
}

/** ρ u² θ b [N] of the thinnest turbulent layer. */
function startingFlux({ edge, girth }: Local): number {
  return LOWEST_REYNOLDS * edge.viscosity * edge.velocity * girth;
}

function pointAt({ axial, radius }: LayerStation, local: Local, flux: number): LayerPoint {
  const { edge, girth, shape, densityWeight, recoveryEnthalpy } = local;
  const dynamic = edge.density * edge.velocity * edge.velocity;
  const momentumThickness = flux / (dynamic * girth);
  const reynolds = (edge.density * edge.velocity * momentumThickness) / edge.viscosity;
  const friction = frictionCompressible(reynolds, edge.viscosity / edge.wallViscosity, densityWeight);
  const stanton = (friction / 2) * edge.prandtl ** (-2 / 3);
  return {
    axial,
    radius,
    momentumThickness,
    displacementThickness: shape * momentumThickness,
    friction,
    shear: (friction / 2) * dynamic,
    heatFlux: stanton * edge.density * edge.velocity * (recoveryEnthalpy - edge.wallEnthalpy),
  };
}

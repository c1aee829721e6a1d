/**
 * The catalogue of quantities: every number that any face prints is in it.
 * The workbench, the command line, the figures and the documentation all read this one list.
 */

import { airQuantities } from './catalogue/air.ts';
import { changeQuantities } from './catalogue/change.ts';
import { comparisonQuantities } from './catalogue/comparison.ts';
import { conditionQuantities, vacuumAndSeaLevelQuantities } from './catalogue/conditions.ts';
import { coolingQuantities } from './catalogue/cooling.ts';
import { cycleQuantities } from './catalogue/cycle.ts';
import { contourQuantities, engineQuantities } from './catalogue/engine.ts';
import type { CatalogueEntry } from './catalogue/entry.ts';
import { exchangeQuantities, flightPointQuantities, flightQuantities } from './catalogue/flight.ts';
import { heatQuantities } from './catalogue/heat.ts';
import { inputQuantities } from './catalogue/inputs.ts';
import { lossQuantities } from './catalogue/losses.ts';
import { pintleQuantities } from './catalogue/pintle.ts';
import { plugQuantities } from './catalogue/plug.ts';
import { plumeQuantities } from './catalogue/plume.ts';
import { publishedQuantities } from './catalogue/published.ts';
import { nameInSeparation, separationQuantities } from './catalogue/separation.ts';
import { thrustPartQuantities } from './catalogue/thrustParts.ts';
import { vehicleQuantities } from './catalogue/vehicle.ts';
import { wallQuantities } from './catalogue/wall.ts';
import { wholeFlowQuantities } from './catalogue/wholeFlow.ts';

export type { CatalogueEntry, Dimension, DisplayUnit, QuantityPlace } from './catalogue/entry.ts';

export const catalogue: readonly CatalogueEntry[] = [
  ...engineQuantities,
  ...vacuumAndSeaLevelQuantities,
  ...conditionQuantities,
  ...changeQuantities,
  ...thrustPartQuantities,
  ...separationQuantities,
  ...contourQuantities,
  ...wallQuantities,
  ...plumeQuantities,
  ...plugQuantities,
  ...pintleQuantities,
  ...lossQuantities,
  ...heatQuantities,
  ...coolingQuantities,
  ...cycleQuantities,
  ...comparisonQuantities,
  ...publishedQuantities,
  ...airQuantities,
  ...inputQuantities,
  ...flightQuantities,
  ...flightPointQuantities,
  ...exchangeQuantities,
  ...vehicleQuantities,
  ...wholeFlowQuantities,
];

const byName = new Map(catalogue.map((entry) => [entry.name, entry]));

/** The entry of this exact name, if there is one. */
export function findQuantity(name: string): CatalogueEntry | undefined {
  return byName.get(name);
}

/** The entry of a name that the program itself wrote; throws on a slip of the programmer. */
export function quantity(name: string): CatalogueEntry {
  const entry = byName.get(name);
  if (!entry) throw new Error(`No quantity named ${name} in the catalogue`);
  return entry;
}

/**
 * Name in the catalogue of the number at a path of the answer, e.g.
 * `engines.bell.altitudes[3].thrust` → `thrust`, `engines.bell.wall[9].mach` → `wall.mach`.
 * Paths of compared quantities (`comparison.quantities[2].base`) need the row to know what they are:
 * give its `quantity` as `compared`. So do those of published figures (`engines.bell.published[0].value`).
 */
export function quantityNameAt(path: string, compared?: string): string | undefined {
  const plain = path.replace(/\[\d+\]/g, '');
  const inComparison = /^comparison\.(.*)$/.exec(plain);
  if (inComparison) return nameInComparison(inComparison[1] ?? '', compared);
  const ofVehicle = /^vehicles\.(.*)$/.exec(plain);
  if (ofVehicle) return nameOfVehicle(ofVehicle[1] ?? '', compared);
  const inEngine = /^engines\.[^.]+\.(.*)$/.exec(plain);
  const inside = inEngine?.[1];
  if (inside === undefined) return undefined;
  if (inside.startsWith('chamber.composition.')) return 'chamber.composition';
  if (/^published(Checks|Solve)?\./.test(inside)) return nameInPublished(inside, compared);
  const band = /^bands\.(.+)\.(low|high)$/.exec(inside);
  if (band) return quantityNameAt(`engines.x.${band[1]}`, compared);
  const plume = /^plume\.(?:seaLevel|vacuum|altitudes|ambients)\.(.+)$/.exec(inside)?.[1];
  if (plume !== undefined) return /^(altitude|ambientPressure)$/.test(plume) ? plume : `plume.${plume}`;
  const plainName = inside.replace(/^(altitudes|ambients)\./, '').replace(/^modes\./, '');
  if (plainName.startsWith('separation.')) return nameInSeparation(plainName);
  return plainName
    .replace(/^thrustParts\.((vacuum|seaLevel)\.)?(parts\.)?/, 'thrustParts.')
    .replace(/^cycle\.(vacuum|seaLevel)\./, 'cycle.')
    .replace(/^mass\.(low|high|relations\.mass)$/, 'mass.engine')
    .replace(/^positions\./, '')
    .replace(/^heat\.walls\.points\.(axial|radius)$/, 'wall.$1')
    .replace(/^cooling\.walls\.(?:points|skirt)\.(axial|radius)$/, 'wall.$1')
    .replace(/^cooling\.walls\.points\.adiabaticTemperature$/, 'heat.adiabaticTemperature')
    .replace(/^(heat|cooling)\.walls\.(?:points\.|skirt\.)?/, '$1.')
    .replace(/^change\.(band|back)\.(low|high)\./, 'change.')
    .replace(/^change\.estimates\./, 'change.')
    .replace(/^contour\.bodies\.outline\./, 'contour.wall.');
}

function nameInComparison(inside: string, compared: string | undefined): string | undefined {
  if (inside === 'crossings') return 'comparison.crossing';
  if (inside === 'quantities.altitude') return 'altitude';
  if (/^quantities\.(difference|band\.(low|high))$/.test(inside)) return 'comparison.difference';
  if (inside === 'quantities.share') return 'comparison.share';
  return compared;
}

function nameOfVehicle(inside: string, compared: string | undefined): string | undefined {
  const row = /^comparison\.rows\.(base|other|difference|share)$/.exec(inside)?.[1];
  if (row !== undefined) return row === 'difference' || row === 'share' ? `comparison.${row}` : compared;
  return inside.replace(/^(own|exchanged)\./, 'flight.');
}

function nameInPublished(inside: string, compared: string | undefined): string | undefined {
  const key = inside.split('.').at(-1);
  if (key === 'altitude' || key === 'ambientPressure') return key;
  return key === 'share' ? 'published.share' : compared;
}

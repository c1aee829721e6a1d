/** A computed flow’s thrust against that of the model of its nozzle, in words. */

import type { AgainstModel, FlowField } from '../../answer/flow/index.ts';
import { formatPressure } from '../numbers/formatNumber.ts';

/** Less than this share of the thrust is not told; less than that not where there is little room. */
const SLIGHT = 1e-3;
const NOTABLE = 1e-2;

/** The field's thrust against the model's, and from what it differs: one sentence; empty where there is nothing to hold it against. */
export function againstWords(field: FlowField): string {
  const { mean, byModel } = field.thrustCoefficient;
  if (field.against === null || byModel === null) return '';
  const told = partsAgainst(field.against, byModel)
    .filter(([share]) => Math.abs(share) >= SLIGHT)
    .map(([share, what]) => `${signed(share)} ${what}`);
  const whole = `Thrust against the model’s: ${signed(mean / byModel - 1)}`;
  return told.length === 0 ? `${whole}.` : `${whole}; ${told.join(', ')}.`;
}

/** The same in brief, where it differs by a per cent or more: what most of it comes from. Empty otherwise. */
export function chieflyAgainstWords(field: Pick<FlowField, 'against' | 'thrustCoefficient'>): string {
  const { mean, byModel } = field.thrustCoefficient;
  if (field.against === null || byModel === null || Math.abs(mean / byModel - 1) < NOTABLE) return '';
  const parts = partsAgainst(field.against, byModel);
  const [share, what] = parts.reduce((most, part) => (Math.abs(part[0]) > Math.abs(most[0]) ? part : most));
  return `Thrust against the model’s: ${signed(mean / byModel - 1)}, chiefly ${signed(share)} ${what}.`;
}

/** Shares of the thrust by which a field differs from the model of its nozzle, each with its words. */
function partsAgainst(
  { gas, perMass, base, baseByModel, basePressure, suction, wake }: AgainstModel,
  byModel: number,
): readonly (readonly [share: number, what: string])[] {
  return [
    [-suction / byModel, 'by suction of still air at walls round the jet, which only the model reckons'],
    [wake / byModel, 'as its wake is not at the air’s pressure'],
    [gas, 'of gas that comes through'],
    [perMass, 'of thrust for each kilogram'],
    [
      (base - baseByModel) / byModel,
      `by the base${basePressure === null ? '' : ` (${formatPressure(basePressure)} in the field)`}`,
    ],
  ];
}

function signed(share: number): string {
  const text = Math.abs(100 * share).toFixed(1);
  return text === '0.0' ? 'the same' : `${share > 0 ? '+' : '−'}${text}\u00a0%`;
}

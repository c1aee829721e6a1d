/** Computed flows as a reader at a terminal meets them. */

import { show } from '../../../answer/display.ts';
import type { FlowField } from '../../../answer/flow/index.ts';
import { flowFinding, troubleWords } from '../../../telling/figures/flowWords.ts';
import { formatLength } from '../../../telling/numbers/formatNumber.ts';
import { tableOf } from './sweepText.ts';
import { wrapped } from './wrap.ts';

export function flowTable(fields: readonly FlowField[], width: number): string {
  const head = [
    'air',
    'thrust coefficient',
    'by its model',
    'shock on the axis',
    'disk by law',
    'first cell (law)',
    'steps',
  ];
  const rows = fields.map((field) => [
    show('ambientPressure', field.ambientPressure).text,
    coefficientOf(field),
    field.thrustCoefficient.byModel.toFixed(4),
    shockOf(field),
    lawOf(field),
    cellOf(field),
    `${field.steps}${field.steady ? '' : ', mean'}${field.broke === 0 ? '' : `, broke ${field.broke}×`}`,
  ]);
  return [
    tableOf([head, ...rows]),
    ...(fields.some(({ kernel }) => kernel === 'reference')
      ? [wrapped('Computed by the plain reference, without WebAssembly: the same flow, more slowly.', width)]
      : []),
    ...fields.map((field) => wrapped(`${flowFinding(field)} ${troubleWords(field)}`.trimEnd(), width)),
    wrapped(
      'Inviscid, computed: no turbulence, so the jet does not mix with the air and nothing rubs on the walls. By law: where a published law puts the Mach disk behind an under-expanded exit, or the length of a shock cell near the matched pressure.',
      width,
    ),
  ].join('\n\n');
}

function coefficientOf({ thrustCoefficient: { mean, swing }, leaves }: FlowField): string {
  const swings = swing > 1e-3 ? ` ± ${(100 * swing).toFixed(1)} %` : '';
  return `${mean.toFixed(4)}${swings}${leaves === null ? '' : ', separated'}`;
}

function shockOf({ mainShock }: FlowField): string {
  if (mainShock === null) return 'none seen';
  return `${formatLength(mainShock.behind)}${mainShock.disk ? ', Mach disk' : ''}`;
}

function lawOf({ byLaw: { machDisk } }: FlowField): string {
  return machDisk === null ? '–' : formatLength(machDisk);
}

function cellOf({ firstCell, byLaw: { cellLength } }: FlowField): string {
  const law = cellLength === null ? '–' : formatLength(cellLength);
  return `${firstCell === null ? '–' : formatLength(firstCell)} (${law})`;
}

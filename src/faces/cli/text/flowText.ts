/** Computed flows as a reader at a terminal meets them. */

import { show } from '../../../answer/display.ts';
import type { FlowField } from '../../../answer/flow/index.ts';
import { againstWords } from '../../../telling/figures/flowAgainst.ts';
import {
  endedWords,
  flightWords,
  flowFinding,
  insideBellWords,
  troubleWords,
} from '../../../telling/figures/flowWords.ts';
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
    field.thrustCoefficient.byModel?.toFixed(4) ?? '–',
    shockOf(field),
    lawOf(field),
    cellOf(field),
    `${field.steps}${field.ended !== undefined ? ', broke' : field.steady ? '' : ', mean'}${field.broke === 0 ? '' : `, broke ${field.broke}×`}`,
  ]);
  return [
    tableOf([head, ...rows]),
    ...kernelLines(fields, width),
    ...fields.map((field) =>
      wrapped(
        [
          flowFinding(field),
          insideBellWords(field),
          againstWords(field),
          troubleWords(field),
          endedWords(field),
        ]
          .filter((words) => words !== '')
          .join(' '),
        width,
      ),
    ),
    wrapped(
      `Inviscid, computed: no turbulence, so the jet does not mix with the air and nothing rubs on the walls. ${outsideWords(fields)} Shocks and cells are told from the lip on. By law: where a published law puts the Mach disk behind an under-expanded exit, or the length of a shock cell near the matched pressure.`,
      width,
    ),
  ].join('\n\n');
}

/** All are computed in one wind, or in none. */
function outsideWords([field]: readonly FlowField[]): string {
  return field === undefined ? '' : flightWords(field);
}

function kernelLines(fields: readonly FlowField[], width: number): readonly string[] {
  return fields.some(({ kernel }) => kernel === 'reference')
    ? [wrapped('Computed by the plain reference, without WebAssembly: the same flow, more slowly.', width)]
    : [];
}

/** Shares of the greatest below which nothing is told. */
const NOTHING = 1e-4;
/** Of the full feed: rounds to nothing. */
const SLIGHT = 5e-3;

/** A flow through time, moment after moment. */
export function momentTable(fields: readonly FlowField[], width: number): string {
  const head = ['time', 'to be fed', 'fed', 'chamber', 'leaves', 'thrust', 'shock on the axis'];
  const most = Math.max(...fields.map(({ moment }) => Math.abs(moment?.thrust ?? 0)));
  const mostGas = Math.max(...fields.map(({ moment }) => Math.abs(moment?.massFlow ?? 0)));
  const rows = fields.flatMap((field) => {
    const { moment } = field;
    if (moment === undefined) return [];
    return [
      [
        `${(moment.time * 1e3).toFixed(2)} ms`,
        `${(100 * moment.asked).toFixed(0)} %`,
        `${(100 * (Math.abs(moment.fed) < SLIGHT ? 0 : moment.fed)).toFixed(0)} %`,
        `${(100 * moment.chamber).toFixed(1)} %`,
        show('massFlow', Math.abs(moment.massFlow) < NOTHING * mostGas ? 0 : moment.massFlow).text,
        show('thrust', Math.abs(moment.thrust) < NOTHING * most ? 0 : moment.thrust).text,
        shockOf(field),
      ],
    ];
  });
  const leaves = fields[0]?.leaves ?? null;
  const last = fields.at(-1);
  const trouble =
    last === undefined
      ? ''
      : [insideBellWords(last), troubleWords(last), endedWords(last)]
          .filter((words) => words !== '')
          .join(' ');
  return [
    tableOf([head, ...rows]),
    ...kernelLines(fields, width),
    ...(leaves === null
      ? []
      : [
          wrapped(
            `From the first moment the gas is made to leave the wall ${formatLength(leaves.axial, 2)} behind the throat, at the estimate of ${leaves.by} for the full engine.`,
            width,
          ),
        ]),
    ...(trouble === '' ? [] : [wrapped(trouble, width)]),
    wrapped(
      `Inviscid, computed through time: no turbulence, and no gas but that of the full engine, at less pressure. ${outsideWords(fields)} To be fed: over the full feed, put in; a valve is slower. Fed: what comes in; it falls short while the chamber is nearly empty, where the gas would have to come in faster than sound. Chamber: its pressure over the full one. Leaves: all that passes the lip just then; at a start the air that stood in the nozzle too, pushed out ahead of the gas. Thrust: of the same, the air’s pressure taken off.`,
      width,
    ),
  ].join('\n\n');
}

function coefficientOf({ thrustCoefficient: { mean, swing }, leaves }: FlowField): string {
  const swings = swing > 1e-3 ? ` ± ${(100 * swing).toFixed(1)} %` : '';
  return `${mean.toFixed(4)}${swings}${leaves === null ? '' : ', separated'}`;
}

function shockOf({ mainShock, form }: FlowField): string {
  if (mainShock === null) return 'none seen';
  return `${formatLength(mainShock.behind)}${mainShock.disk && form === 'round' ? ', Mach disk' : ''}`;
}

function lawOf({ byLaw: { machDisk } }: FlowField): string {
  return machDisk === null ? '–' : formatLength(machDisk);
}

function cellOf({ firstCell, byLaw: { cellLength } }: FlowField): string {
  return firstCell === null || cellLength === null
    ? '–'
    : `${formatLength(firstCell)} (${formatLength(cellLength)})`;
}

/** Why a number of the answer is null, in one place for the printed answer and for single numbers. */

import type { Plume } from '../physics/plume/index.ts';
import type { PlumeFigures } from './plumeModel.ts';
import type { EngineSolution } from './solution.ts';

export interface Absence {
  readonly why: string;
  readonly mend: string;
}

/** The models tell why and what to do in one text, the advice in its last sentence. */
export function inTwo(absent: string): Absence {
  const sentences = absent.split(/(?<=[.!?])\s+(?=[A-Z])/);
  const mend = sentences.length > 1 ? sentences.at(-1) : undefined;
  return mend === undefined
    ? { why: absent, mend: 'Ask at a lower ambient pressure, or choose another nozzle.' }
    : { why: sentences.slice(0, -1).join(' '), mend };
}

export function noWallLayer({ input }: EngineSolution): Absence {
  const none = input.losses === 'none';
  return {
    why: none ? 'The study asks for no losses.' : 'This nozzle has no wall of its own, so that nothing rubs.',
    mend: none ? 'Delete losses: none.' : 'Choose a nozzle with a wall, such as a bell.',
  };
}

export const NO_BULK_DENSITY: Absence = {
  why: 'The density of what is stored is not known: a gas, or an ingredient without a density.',
  mend: 'State a density for ingredients of your own; a gas has none until its tank pressure is stated.',
};

/** Where two phases of one substance stand together, the gas has no sound speed, hence no Mach number. */
export function noSoundSpeed(absent: string | null): Absence {
  return {
    why: absent ?? 'The gas has no sound speed of its own there.',
    mend: 'Use pressure, temperature or velocity there instead, or chemistry: frozen.',
  };
}

export const NO_MACH_ON_WALL =
  'Two phases of one substance stand together here, so the gas has no sound speed.';

/** @param note of the thrust by surfaces in vacuum, where it has no sum */
export function noField(hasParts: boolean, note: string | undefined): Absence {
  return {
    why: hasParts
      ? 'The nozzle has no wall of its own: its flow is one-dimensional, and nothing has to close.'
      : inTwo(note ?? '').why,
    mend: 'Choose a cone, a bell or a plug to see a field.',
  };
}

export function noAltitudeWith(ambientPressure: number): Absence {
  return {
    why: `No standard air has a pressure of ${Number(ambientPressure.toPrecision(3))} Pa.`,
    mend: 'Use the pressure itself.',
  };
}

type PlumeKey = keyof PlumeFigures;

const PLUME_NEEDS: readonly (readonly [PlumeKey, (plume: Plume) => string | null])[] = [
  ['regime', ({ lip }) => lip.absent],
  ['boundaryTurn', ({ lip }) => lip.absent],
  ['boundaryAngle', ({ lip }) => lip.absent],
  ['boundaryMach', ({ lip }) => lip.absent],
  ['boundaryPressure', ({ lip }) => lip.absent],
  ['fullyExpandedMach', ({ fullyExpanded }) => fullyExpanded.absent],
  ['fullyExpandedDiameter', ({ fullyExpanded }) => fullyExpanded.absent],
  ['cellLength', ({ cellLength }) => cellLength.absent],
  ['machDisk', ({ machDisk }) => machDisk.absent],
  ['shockMeeting', ({ meeting }) => meeting.absent],
  [
    'firstCrossing',
    ({ outline }) =>
      outline.absent ??
      (outline.value?.firstCrossing === null ? 'Nothing runs together within what is computed.' : null),
  ],
];

const OTHER_PLUME = 'Ask at another ambient pressure, or choose another nozzle.';

/** What a plume lacks, by the key of its figures. */
export function plumeAbsences(plume: Plume): readonly (Absence & { readonly key: PlumeKey })[] {
  return PLUME_NEEDS.flatMap(([key, absentOf]) => {
    const why = absentOf(plume);
    return why === null ? [] : [{ key, why, mend: OTHER_PLUME }];
  });
}

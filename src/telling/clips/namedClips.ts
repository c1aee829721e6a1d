/** The clips of a study by name, as a script names them and a package holds them. */

import type { StudyAnswer } from '../../answer/model.ts';
import { flowEngines } from '../figures/flowKinds.ts';
import type { ClipKind, ClipRequest } from './clipKinds.ts';

export interface NamedClip {
  readonly name: string;
  /** What moves, in words. */ readonly about: string;
  readonly asked: Pick<ClipRequest, 'figure' | 'engine'> & { readonly kind: ClipKind };
  /** The figure that shows the same where nothing may move. */ readonly still: string;
}

export function namedClips(
  answer: Pick<StudyAnswer, 'engines' | 'vehicles'>,
  sweepIds: readonly string[],
): readonly NamedClip[] {
  const engines = Object.values(answer.engines);
  if (engines.length === 0) return [];
  const drawn = [
    ['specific-impulse', 'specific impulse'],
    ['thrust', 'thrust'],
    ['pressure-along-wall', 'pressure along the walls'],
  ] as const;
  return [
    clip('cut-climb', 'Engines cut open, climbing', { figure: 'cut', kind: 'altitude' }, 'cut-at-sea-level'),
    clip(
      'cut-throttle',
      'Engines cut open, throttling',
      { figure: 'cut', kind: 'throttle' },
      'cut-at-sea-level',
    ),
    ...drawn.map(([figure, words]) =>
      clip(`${figure}-climb`, `The climb over ${words}`, { figure, kind: 'altitude' }, figure),
    ),
    ...[
      ...drawn,
      ...answer.vehicles.map(({ id, name }) => [`ascent-${id}`, `the way up of ${name}`] as const),
      ...sweepIds.map((id) => [`sweep-${id}`, `the sweep ${id}`] as const),
    ].map(([figure, words]) =>
      clip(`${figure}-drawn`, `Drawn in: ${words}`, { figure, kind: 'build-up' }, figure),
    ),
    ...engines.map(({ id, name }) =>
      clip(
        `rings-${id}`,
        `${name} growing ring by ring`,
        { figure: 'push', engine: id, kind: 'rings' },
        'push',
      ),
    ),
    ...flowEngines(answer).flatMap(({ id, name }) => [
      clip(
        `flow-${id}-climb`,
        `The whole flow of ${name}, climbing`,
        { figure: `flow-${id}`, kind: 'altitude' },
        `flow-${id}`,
      ),
      clip(
        `flow-${id}-drift`,
        `The whole flow of ${name}, specks drifting with the gas`,
        { figure: `flow-${id}`, kind: 'drift' },
        `flow-${id}`,
      ),
    ]),
  ];
}

const clip = (name: string, about: string, asked: NamedClip['asked'], still: string): NamedClip => ({
  name,
  about,
  asked,
  still,
});

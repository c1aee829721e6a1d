/** The clips of a study by name, as a script names them and a package holds them. */

import type { StudyAnswer } from '../../answer/model.ts';
import type { ClipKind, ClipRequest } from './clipKinds.ts';

export interface NamedClip {
  readonly name: string;
  readonly asked: Pick<ClipRequest, 'figure' | 'engine'> & { readonly kind: ClipKind };
  /** The figure that shows the same where nothing may move. */ readonly still: string;
}

export function namedClips(
  answer: Pick<StudyAnswer, 'engines' | 'vehicles'>,
  sweepIds: readonly string[],
): readonly NamedClip[] {
  const engines = Object.keys(answer.engines);
  if (engines.length === 0) return [];
  return [
    { name: 'cut-climb', asked: { figure: 'cut', kind: 'altitude' }, still: 'cut-at-sea-level' },
    { name: 'cut-throttle', asked: { figure: 'cut', kind: 'throttle' }, still: 'cut-at-sea-level' },
    ...['specific-impulse', 'thrust', 'pressure-along-wall'].map((figure) => ({
      name: `${figure}-climb`,
      asked: { figure, kind: 'altitude' as const },
      still: figure,
    })),
    ...[
      'specific-impulse',
      'thrust',
      'pressure-along-wall',
      ...answer.vehicles.map(({ id }) => `ascent-${id}`),
      ...sweepIds.map((id) => `sweep-${id}`),
    ].map((figure) => ({
      name: `${figure}-drawn`,
      asked: { figure, kind: 'build-up' as const },
      still: figure,
    })),
    ...engines.map((engine) => ({
      name: `rings-${engine}`,
      asked: { figure: 'push', engine, kind: 'rings' as const },
      still: 'push',
    })),
  ];
}

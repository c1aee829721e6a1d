/** That a flow was computed without friction stands in every picture of it, whatever is left out. */

import { describe, expect, test } from 'vitest';
import { type FlowField, SHOWN } from '../../src/answer/flow/index.ts';
import { CAUTION_SHORT } from '../../src/telling/caution.ts';
import { flowClimb } from '../../src/telling/clips/flowClimb.ts';
import { figureFlow } from '../../src/telling/figures/figureFlow.ts';
import { figureFlowAlong } from '../../src/telling/figures/figureFlowAlong.ts';
import type { FramePart } from '../../src/telling/figures/frame.ts';
import type { FigureOptions } from '../../src/telling/figures/options.ts';
import { ENGINE_STYLES } from '../../src/telling/look/engineStyles.ts';
import { type Scene, textsOf } from '../../src/telling/scene/scene.ts';
import { field } from './jetField.ts';

const wordsOf = (scene: Scene): string =>
  textsOf(scene.children)
    .map(({ text }) => text)
    .join(' ');

const pictures = (options: FigureOptions, over: Partial<FlowField> = {}): readonly Scene[] => [
  ...SHOWN.map((shown) => figureFlow(field(over), shown, { ...options, streamlines: 7 })),
  figureFlow(field(over), 'speed', { ...options, drift: 0.5 }),
  figureFlowAlong(field(over), null, ENGINE_STYLES[0], options),
  flowClimb(
    [
      field({ ...over, ambientPressure: 101_325, altitude: 0 }),
      field({ ...over, ambientPressure: 54_048, altitude: 5000 }),
    ],
    { ...options, from: 0, to: 5000 },
  ).at(0.5),
];

const all: readonly FramePart[] = ['title', 'subtitle', 'notes'];

describe.each(['16:9', '9:16', '1:1', 'print'] as const)('%s', (size) => {
  const options = { size, theme: 'light' } as const;

  // Between two places of a climb the subtitle is longest.
  test.each([undefined, 11_300])('in the subtitle; looked at %s m', (altitude) => {
    for (const scene of pictures({ ...options, ...(altitude !== undefined && { altitude }) }))
      expect(wordsOf(scene)).toMatch(/inviscid, computed/i);
  });

  test('beside the caution where subtitle and notes are left out', () => {
    for (const without of [all, ['subtitle'] as const])
      for (const scene of pictures({ ...options, without }))
        expect(wordsOf(scene)).toContain(`Inviscid, computed: no turbulence. ${CAUTION_SHORT}`);
  });

  test('that it broke on its way to rest too', () => {
    const ended = { code: 'field-broke', what: 'A cell has no pressure.', mend: 'None.' };
    for (const without of [[], all, ['subtitle'], ['title', 'notes']] as const)
      for (const scene of pictures({ ...options, without }, { ended }))
        expect(wordsOf(scene)).toMatch(/broke on its way to rest/i);
  });

  test('once, where the subtitle stands', () => {
    for (const scene of pictures({ ...options, without: ['notes'] }))
      expect(wordsOf(scene).match(/inviscid/gi)).toHaveLength(1);
  });
});

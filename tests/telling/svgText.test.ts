import { expect, it } from 'vitest';
import { type Scene, sceneToSvg } from '../../src/telling/index.ts';
import { textWidth } from '../../src/telling/look/measureText.ts';

const scene: Scene = {
  width: 100,
  height: 50,
  title: 't',
  description: 'd',
  theme: 'light',
  transparent: false,
  children: [
    { kind: 'text', x: 1, y: 20, text: 'At the pad', size: 10, weight: 400, anchor: 'start', fill: 'ink' },
  ],
};

it('a line of text keeps its width on a machine without the family, where that is asked for', () => {
  const width = Number(/textLength="([\d.]+)"/.exec(sceneToSvg(scene, { steadyWidths: true }))?.[1]);
  expect(width).toBeCloseTo(textWidth('At the pad', 10, 400), 1);
  expect(sceneToSvg(scene)).not.toContain('textLength');
});

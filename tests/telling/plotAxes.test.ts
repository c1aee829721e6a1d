import { expect, test } from 'vitest';
import { quantity } from '../../src/answer/catalogue.ts';
import { unitFor } from '../../src/answer/display.ts';
import { plotIn, type Side } from '../../src/telling/figures/plotAxes.ts';
import { layoutOf } from '../../src/telling/look/formats.ts';
import { boxesOverlap, textBox } from '../../src/telling/scene/box.ts';
import { textsOf } from '../../src/telling/scene/scene.ts';

const layout = layoutOf('1:1');
const side = (name: string, from: number, to: number, inRatios: boolean): Side => ({
  from,
  to,
  inRatios,
  unit: unitFor(quantity(name), [from, to]),
  label: quantity(name).label,
});

test('a side in ratios with little room has powers of ten, as many as it has room for, none over another', () => {
  const { label } = layout.type;
  for (const height of [6, 7.5, 9, 12, 20].map((rows) => rows * label)) {
    const { words } = plotIn(
      { x: 0, y: 0, width: 30 * label, height },
      side('wholeFlow.axial', 0, 10, false),
      side('wholeFlow.pressure', 1e3, 1.3e7, true),
      layout,
    );
    const ticks = textsOf(words).filter(({ anchor }) => anchor === 'end');
    expect(ticks.length).toBeGreaterThanOrEqual(2);
    for (const { text } of ticks) expect(Number(text)).toBe(10 ** Math.round(Math.log10(Number(text))));
    const boxes = ticks.map(textBox);
    expect(
      boxes.some((one, i) => boxes.slice(i + 1).some((other) => boxesOverlap(one, other))),
      `${height}`,
    ).toBe(false);
  }
});

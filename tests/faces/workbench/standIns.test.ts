/** Which picture stands where another is being painted, and where it belongs on another drawing. */

import { describe, expect, it } from 'vitest';
import type { FlowPaint } from '../../../src/faces/workbench/flow/messages.ts';
import type { Painted } from '../../../src/faces/workbench/flow/standIns.ts';
import { carriedBox, isPlacePainted, remember, standIn } from '../../../src/faces/workbench/flow/standIns.ts';

const placing: FlowPaint['placing'] = {
  scale: 100,
  axisX: 300,
  topY: 50,
  top: -0.2,
  box: { x: 200, y: 50, width: 200, height: 400 },
};
const painted = (key: string, fineness: string, look: Partial<FlowPaint> = {}): Painted => ({
  field: { key, engine: 'cold', ambientPressure: 101325, mode: null, fineness } as Painted['field'],
  paint: {
    id: `${key} pressure`,
    key,
    shown: 'pressure',
    theme: 'light',
    streamlines: false,
    ratio: 1,
    placing,
    ...look,
  },
});

describe('while a picture is being painted', () => {
  it('the one before stands, of the same inputs, drawn the same way', () => {
    const coarse = painted('a', 'coarse');
    remember('inputs', coarse);
    expect(standIn('inputs', painted('b', 'normal'))).toBe(coarse);
    expect(standIn('other inputs', painted('b', 'normal'))).toBeNull();
    expect(standIn('inputs', painted('b', 'normal', { shown: 'density' }))).toBeNull();
    expect(standIn('inputs', painted('b', 'normal', { theme: 'dark' }))).toBeNull();
    expect(standIn('inputs', painted('b', 'normal', { streamlines: true }))).toBeNull();
  });

  it('none stands for another engine, another air or another mode', () => {
    remember('inputs', painted('a', 'coarse'));
    const { field, paint } = painted('b', 'normal');
    for (const other of [{ engine: 'warm' }, { ambientPressure: 90e3 }, { mode: 'lower bell' }]) {
      const elsewhere = { ...field, ...other } as Painted['field'];
      expect(standIn('inputs', { field: elsewhere, paint })).toBeNull();
      expect(isPlacePainted('inputs', elsewhere)).toBe(false);
    }
    expect(isPlacePainted('inputs', field)).toBe(true);
    expect(isPlacePainted('other inputs', field)).toBe(false);
  });

  it('is forgotten with its inputs', () => {
    remember('inputs', painted('a', 'coarse'));
    remember('other inputs', painted('c', 'coarse'));
    expect(standIn('inputs', painted('b', 'normal'))).toBeNull();
  });
});

describe('on another drawing', () => {
  const { axisX, topY: faceY, top, box: jetBox } = placing;

  it('the same one, it lies where it was painted', () => {
    expect(carriedBox(placing, { axisX, faceY, top, jetBox }, 100)).toEqual(jetBox);
  });

  it('each metre of it keeps its place', () => {
    // A point 1 m from the throat plane, 0.5 m right of the axis.
    const box = carriedBox(placing, { axisX: 700, faceY: 80, top: -0.3, jetBox }, 40);
    const share = { x: (300 + 100 * 0.5 - 200) / 200, y: (50 + 100 * 1.2 - 50) / 400 };
    expect(box.x + share.x * box.width).toBeCloseTo(700 + 40 * 0.5, 9);
    expect(box.y + share.y * box.height).toBeCloseTo(80 + 40 * 1.3, 9);
  });
});

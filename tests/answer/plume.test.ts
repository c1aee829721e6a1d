import { describe, expect, test } from 'vitest';
import { plumeAt } from '../../src/answer/plume.ts';
import type { PlumeFigures } from '../../src/answer/plumeModel.ts';
import { solveOne, solveText } from './solveText.ts';

const booster = `{ propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 25 } }`;

describe('the plume in the answer', () => {
  test('goes from over-expanded at the pad to its widest in vacuum', async () => {
    const { plume, altitudes, contour } = await solveOne(booster);
    expect(plume.seaLevel.regime).toBe('over-expanded');
    expect(plume.vacuum.regime).toBe('under-expanded');
    expect(plume.altitudes.map(({ altitude }) => altitude)).toEqual(
      altitudes.map(({ altitude }) => altitude),
    );
    const turns = [...plume.altitudes, plume.vacuum].map(({ boundaryTurn }) => boundaryTurn ?? Number.NaN);
    for (let i = 1; i < turns.length; i++) expect(turns[i]!).toBeGreaterThan(turns[i - 1]!);
    const [first] = plume.vacuum.boundary;
    expect(first!.axial).toBeCloseTo(contour.nozzleLength, 6);
    expect(first!.radius).toBeCloseTo(contour.exitRadius, 6);
  });

  test('is sketched only behind what is computed, and no shape is sketched twice', async () => {
    const { plume } = await solveOne(booster);
    for (const { boundary } of [plume.seaLevel, plume.vacuum, ...plume.altitudes]) {
      const from = boundary.findIndex(({ sketch }) => sketch);
      expect(from).toBeGreaterThan(0);
      expect(boundary.slice(from).every(({ sketch }) => sketch)).toBe(true);
    }
  });

  test('lengths grow with the engine, angles do not', async () => {
    const { plume: small } = await solveOne(booster);
    const { plume: large } = await solveOne(booster.replace('200 mm', '400 mm'));
    const at10 = (rows: readonly PlumeFigures[]): PlumeFigures => rows[4]!;
    const [a, b] = [at10(small.altitudes), at10(large.altitudes)];
    expect(b.boundaryTurn).toBeCloseTo(a.boundaryTurn!, 9);
    expect(b.cellLength! / a.cellLength!).toBeCloseTo(2, 9);
    // At 15 km the jet is under-expanded enough for a Mach disk, and too much for the linear wave.
    const disks = [small, large].map(({ altitudes }) =>
      altitudes.find(({ altitude }) => altitude === 15_000),
    );
    expect(disks[1]!.machDisk! / disks[0]!.machDisk!).toBeCloseTo(2, 9);
    expect(disks[0]!.cellLength).toBeNull();
    expect(a.machDisk).toBeNull();
  });

  test('a nozzle from which the gas has let go has no jet at its lip, but a fully expanded one', async () => {
    const { plume, reasons } = await solveOne(booster.replace('areaRatio: 25', 'areaRatio: 90'));
    expect(plume.seaLevel.boundaryTurn).toBeNull();
    expect(plume.seaLevel.boundary).toEqual([]);
    expect(plume.seaLevel.fullyExpandedMach).toBeGreaterThan(2);
    expect(reasons.find(({ path }) => path === 'plume.seaLevel.boundaryTurn')?.reason).toMatch(
      /leaves the wall/,
    );
  });

  test('that at an ambient pressure is the same as in the rows', async () => {
    const { answer, solutions } = await solveText(`one: ${booster}`, 'ambients: [0.2 bar]');
    const row = answer.engines.one!.plume.ambients[0]!;
    const asked = plumeAt(solutions.get('one')!, 0.2e5);
    // The chemistry starts from another neighbour: the last digits differ.
    expect(asked.boundaryTurn).toBeCloseTo(row.boundaryTurn!, 9);
    expect(asked.cellLength).toBeCloseTo(row.cellLength!, 9);
    expect(asked.boundary.length).toBe(row.boundary.length);
  });
});

import { beforeAll, describe, expect, it } from 'vitest';
import { type StudyAnswer, solveStudy } from '../../src/answer/index.ts';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { readStudy } from '../../src/study/index.ts';
import { figureAscent, sceneToSvg } from '../../src/telling/index.ts';

/** A perfect gas, so that it is quick. Invented. */
const TEXT = `plumeline: 1
question: What does it carry?
engines:
  bell:
    propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }
    chamber: { pressure: 100 bar }
    size: { thrust: 800 kN, at: vacuum }
    nozzle: { kind: bell, areaRatio: 25 }
  wide:
    like: bell
    size: { same: throat, as: bell }
    nozzle: { areaRatio: 40 }
vehicles:
  booster:
    first: { engine: bell, count: 5, propellant: 210 t, dry: 16 t }
    second: { specificImpulse: 355 s, thrust: 300 kN, propellant: 36 t, dry: 3.6 t }
    drag: { area: 11 m2 }
    orbit: { altitude: 200 km }
  heavy:
    like: booster
    first: { count: 2 }
`;

let answer: StudyAnswer;
beforeAll(async () => {
  const read = readStudy(TEXT);
  if (!read.ok) throw new Error(read.problems.map(({ what }) => what).join(' '));
  answer = await solveStudy(read.study, openDataShelf());
}, 120_000);

describe('the figure of an ascent', () => {
  it.each(['16:9', '9:16', '1:1'] as const)(
    'in %s shows four curves for each engine, the losses and the caution',
    (size) => {
      const [booster] = answer.vehicles;
      const scene = figureAscent(booster!, answer, { size, theme: 'light' });
      const svg = sceneToSvg(scene!);
      expect(svg.match(/class="engine-1 curve"/g)).toHaveLength(4);
      expect(svg.match(/class="engine-2 curve"/g)).toHaveLength(4);
      for (const words of [
        'altitude',
        'speed',
        'dynamic pressure',
        'throttle',
        'gravity',
        'not for building',
      ]) {
        expect(svg).toContain(words);
      }
      expect(svg).not.toContain('NaN');
    },
  );

  it('is left out where a vehicle does not rise, and the answer says why', () => {
    const heavy = answer.vehicles[1]!;
    expect(figureAscent(heavy, answer, { size: '16:9', theme: 'light' })).toBeNull();
    expect(heavy.problem?.code).toBe('flight-does-not-rise');
    expect(heavy.words).toContain('does not fly');
  });

  it('tells the share of a payload that is more than nearly nothing', () => {
    const { rows } = answer.vehicles[0]!.comparison!;
    const payload = rows.find(({ quantity }) => quantity === 'flight.payload')!;
    expect(payload.share).toBeCloseTo(payload.difference! / payload.base!, 12);
  });
});

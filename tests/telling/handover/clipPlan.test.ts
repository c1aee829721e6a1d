import { describe, expect, test } from 'vitest';
import { readScript } from '../../../src/study/script/index.ts';
import { namedClips, notesOnWords, timedFrames, wordsOfClip } from '../../../src/telling/clips/index.ts';
import { clipPlan } from '../../../src/telling/handover/clipPlan.ts';
import { mediaFiles } from '../../../src/telling/handover/mediaFiles.ts';
import { mediaSlots } from '../../../src/telling/handover/mediaSlots.ts';
import { timedCuts } from '../../../src/telling/handover/timedCuts.ts';

const text = `---
cuts:
  short: { length: 12 s, keep: [climbs] }
---

# A film

## One {#one}

> outlines of both engines

Here are two engines, and they burn the same, as far as anybody knows. {#two}

## Two: ../../etc {#Two.way}

> cut-climb from 5 km to vacuum

The second scene has some words, and while they are said both engines climb. {#climbs weight=5}

And this one is left out of the short cut, for it says very little and weighs nothing at all. {#idle weight=0}
`;
const read = readScript(text);
const cuts = timedCuts({ read, text, told: new Map() });
const slots = mediaSlots(cuts.cuts);
const known = namedClips(
  {
    engines: { bell: { id: 'bell', name: 'B' }, plug: { id: 'plug', name: 'P' } } as never,
    vehicles: [{ id: 'booster', name: 'Booster' } as never],
  },
  ['ratio'],
);
const usual = { shapes: ['16:9'], clips: [], clipShapes: ['16:9'] } as const;

describe('the clips of a package', () => {
  test('are as long as the script shows them, one more for a cut that shows them for another time', () => {
    const { planned, notes } = clipPlan(slots, known, usual);
    expect(notes).toEqual([]);
    expect(planned.map(({ stem }) => stem)).toEqual([
      '02-two-way-cut-climb',
      'cut-short-02-two-way-cut-climb',
    ]);
    const [whole, short] = planned;
    const lengths = cuts.cuts.map(({ timed }) => timed.scenes.find(({ id }) => id === 'Two.way')!.seconds);
    expect(timedFrames(whole!.timing).frames).toBe(Math.round(30 * lengths[0]!));
    expect(timedFrames(short!.timing).frames).toBe(Math.round(30 * lengths[1]!));
    expect(lengths[1]).toBeLessThan(lengths[0]!);
  });

  test('a long time is filled by the last picture, a short one gets three seconds', () => {
    const slot = slots.find(({ name }) => name === 'cut-climb')!;
    const [long] = clipPlan([{ ...slot, seconds: 40 }], known, usual).planned;
    expect(long!.timing.seconds).toBe(40);
    expect(long!.timing.holdLast).toBe(24.5);
    const [brief] = clipPlan([{ ...slot, seconds: 0.4 }], known, usual).planned;
    expect(brief!.timing.seconds).toBe(3);
  });

  test('come in the shapes asked for, the first one for the timeline; others by name', () => {
    const { planned, notes } = clipPlan([], known, {
      ...usual,
      clips: ['rings-bell', 'ascent-booster-drawn', 'nothing-like-it'],
      clipShapes: ['16:9', '9:16'],
    });
    expect(planned.map(({ stem, size }) => `${stem} ${size}`)).toEqual([
      'rings-bell 16:9',
      'rings-bell-9x16 9:16',
      'ascent-booster-drawn 16:9',
      'ascent-booster-drawn-9x16 9:16',
    ]);
    expect(planned[0]!.clip.asked).toEqual({ figure: 'push', engine: 'bell', kind: 'rings' });
    expect(notes).toEqual([expect.stringMatching(/nothing-like-it.*cut-climb.*sweep-ratio-drawn/)]);
  });

  test('whose words ask for what cannot be filmed say so, once', () => {
    const words = 'cut-climb from 5 km to 100 km';
    const asked = slots.map((slot) => ({ ...slot, shown: { ...slot.shown, words } }));
    expect(clipPlan(asked, known, usual).notes).toEqual([
      expect.stringMatching(/from 5 km to 100 km.*“100 km” is no altitude from pad to 60 km/),
    ]);
  });

  test('no name leaves the folder of the package', () => {
    for (const { stem, ownStem } of slots) {
      expect(stem).toMatch(/^[a-z0-9-]+$/);
      expect(ownStem).toMatch(/^[a-z0-9-]+$/);
    }
  });
});

describe('what a script shows', () => {
  const files = new Set(['figures/outlines-16x9.png', 'figures/cut-at-sea-level-16x9.png']);
  const setting = { files, endings: ['16x9'] };
  const shown = slots.find(({ name }) => name === 'cut-climb')!;

  test('is its clip, where that is there', () => {
    const { mediaOf, stills } = mediaFiles(
      slots,
      [{ file: 'clips/x.mp4', frames: null, slots: [shown] }],
      known,
      setting,
    );
    expect(mediaOf('', 'Two.way', shown.shown)).toEqual({ file: 'clips/x.mp4', frames: null });
    expect(stills).toContainEqual({
      from: 'figures/outlines-16x9.png',
      to: 'scenes/01-one-outlines.png',
    });
  });

  test('is the still of the same figure, where it is not', () => {
    const { mediaOf } = mediaFiles(slots, [], known, setting);
    expect(mediaOf('', 'Two.way', shown.shown)).toEqual({
      file: 'scenes/02-two-way-cut-climb.png',
      frames: null,
    });
  });

  test('is nothing, where nothing is drawn', () => {
    const { mediaOf, stills } = mediaFiles(slots, [], known, { files: new Set(), endings: ['16x9'] });
    expect(mediaOf('', 'Two.way', shown.shown)).toBeNull();
    expect(stills).toEqual([]);
  });
});

test('words behind the name of a clip say where and how far', () => {
  expect(wordsOfClip('cut-climb from pad to 20 km')).toEqual({ from: 0, to: 20_000 });
  expect(wordsOfClip('cut-climb from 5 km to vacuum, both engines')).toEqual({ from: 5000, to: 'vacuum' });
  expect(wordsOfClip('cut-throttle at 10 km from 100 % to 62.5 %')).toEqual({
    at: 10_000,
    throttles: [1, 0.625],
  });
  expect(wordsOfClip('rings-bell at the pad')).toEqual({ at: 0 });
  expect(wordsOfClip('cut-climb from here to there at 400 km')).toEqual({});
});

test('words behind the name of a clip that it cannot follow are told', () => {
  expect(notesOnWords('cut-climb from pad to vacuum at 10 km')).toEqual([]);
  expect(notesOnWords('cut-throttle at 10 km from 100 % to 60 %')).toEqual([]);
  expect(notesOnWords('cut-climb')).toEqual([]);
  expect(notesOnWords('cut-climb from here to 20 km at 400 km')).toEqual([
    expect.stringContaining('“here” is no altitude'),
    expect.stringContaining('“400 km” is no altitude'),
  ]);
  expect(notesOnWords('cut-climb from 5 km to 60 %')).toEqual([
    expect.stringContaining('from 5 km to 60 % nothing moves'),
  ]);
});

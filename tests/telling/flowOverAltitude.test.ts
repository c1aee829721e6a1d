import { beforeAll, describe, expect, test } from 'vitest';
import { CAUTION } from '../../src/answer/caution.ts';
import { usedSources } from '../../src/answer/cited/index.ts';
import type { FlowField } from '../../src/answer/flow/index.ts';
import type { StudyAnswer } from '../../src/answer/model.ts';
import { flowClimb } from '../../src/telling/clips/flowClimb.ts';
import { flowDriftClip } from '../../src/telling/clips/flowDriftClip.ts';
import { clipOf, frameRateOf, namedClips, USUAL_TIMING } from '../../src/telling/clips/index.ts';
import { figureFlow } from '../../src/telling/figures/figureFlow.ts';
import { type FigureSubject, figureKinds } from '../../src/telling/figures/figureKinds.ts';
import { drawnBetween, flowMorph } from '../../src/telling/figures/flowMorph.ts';
import { flowNear, nearWords } from '../../src/telling/figures/flowNear.ts';
import { flowOfClip, flowOfFigure } from '../../src/telling/figures/flowsWanted.ts';
import { modelsDrawn, type PackageFigure } from '../../src/telling/figures/packageFigures.ts';
import { flowsShown } from '../../src/telling/handover/flowsShown.ts';
import type { MediaSlot } from '../../src/telling/handover/mediaSlots.ts';
import { packagePage } from '../../src/telling/page/packagePage.ts';
import { textBox } from '../../src/telling/scene/box.ts';
import { textsOf } from '../../src/telling/scene/scene.ts';
import { sceneToSvg } from '../../src/telling/scene/svg.ts';
import { solveText, studyOf } from '../answer/solveText.ts';
import { field } from './jetField.ts';

const shock = (behind: number) => ({ behind, machAhead: 4, pressureRise: 10, disk: true });
const at = (ambientPressure: number, behind: number, altitude: number): FlowField =>
  field({ ambientPressure, altitude, mainShock: shock(behind) });
/** Air of 1976 at sea level, 5 and 10 km, by a table. */
const flows = [at(101_325, 0.2, 0), at(54_048, 0.3, 5000), at(26_500, 0.4, 10_000)];

describe('between computed altitudes', () => {
  test('the nearest in ln p is shown, and said so', () => {
    expect(flowNear(flows, 'bell', 2000)).toBe(flows[0]);
    expect(flowNear(flows, 'bell', 3000)).toBe(flows[1]);
    expect(flowNear(flows, 'bell', 'vacuum')).toBe(flows[2]);
    expect(flowNear(flows, 'other', 0)).toBeNull();
    expect(nearWords(flows[0]!, 2000)).toBe(
      'computed in still air of 1.01\u00a0bar, the nearest to 2\u00a0km',
    );
    expect(nearWords(flows[0]!, 0)).toBe('');
    const last = field({ thinnest: true, ambientPressure: 50 });
    expect(nearWords(last, 'vacuum')).toBe('');
  });

  test('the shock moves evenly in ln p, and does not jump where the field shown changes', () => {
    const place = (pressure: number): number => drawnBetween(flowMorph(flows, pressure)).mainShock!.behind;
    for (const share of [0, 0.2, 0.499, 0.501, 0.9, 1]) {
      const pressure = 101_325 * (54_048 / 101_325) ** share;
      expect(place(pressure)).toBeCloseTo(0.2 * 1.5 ** share, 5);
    }
    // Beyond the thinnest air there is nothing to go by.
    expect(place(0)).toBe(0.4);
    expect(place(2e5)).toBe(0.2);
  });

  test('what is not the same shock is not drawn longer', () => {
    const [first, second] = flows as [FlowField, FlowField];
    const asComputed = (of: FlowField) => ({ field: of, longer: 1, beside: null });
    const none = { ...second, mainShock: null };
    expect(flowMorph([first, none], 8e4)).toEqual(asComputed(first));
    const weak = { ...second, mainShock: { ...shock(0.3), disk: false } };
    expect(flowMorph([first, weak], 6e4)).toEqual(asComputed(weak));
    const otherMode = { ...second, mode: 'high' };
    expect(flowMorph([first, otherMode], 6e4)).toEqual(asComputed(otherMode));
    // Too far apart to be drawn at the middle of the way; so nowhere on it, or the picture would jump.
    const far = { ...second, mainShock: shock(0.33) };
    for (const pressure of [1e5, 7.5e4, 5.5e4]) expect(flowMorph([first, far], pressure).longer).toBe(1);
    // Ahead of the end there is nothing to go by.
    const inside = flows.map((each) => ({ ...each, end: 0.35 }));
    expect(flowMorph(inside, 8e4).longer).toBe(1);
  });

  test('only what lies behind the end is moved: of a plug its wake, not its body', () => {
    const plug = (ambientPressure: number, behind: number): FlowField =>
      field({
        form: 'plug',
        ambientPressure,
        end: 0.15,
        lip: { axial: 0.05, radius: 0.3 },
        mainShock: shock(behind),
      });
    // 0.2 and 0.3 m behind the cut.
    const both = [plug(4e4, 0.3), plug(2e4, 0.4)];
    for (const share of [0.2, 0.499, 0.501, 0.8]) {
      const moved = drawnBetween(flowMorph(both, 4e4 * 0.5 ** share));
      expect(0.05 + moved.mainShock!.behind - 0.15).toBeCloseTo(0.2 * 1.5 ** share, 5);
      const [was, is] = [both[0]!.blocks[0]!.axial, moved.blocks[0]!.axial];
      for (const [k, x] of was.entries()) {
        if (x <= 0.15) expect(is[k]).toBe(x);
        else expect(is[k]).not.toBe(x);
      }
    }
  });

  test('the lines of the mesh go from one place to the next and do not jump in between', () => {
    const [first, second] = flows as [FlowField, FlowField];
    const [mesh] = second.blocks;
    const wider = { ...second, blocks: [{ ...mesh!, radius: mesh!.radius.map((r) => 1.3 * r) }] };
    const edgeAt = (share: number): number => {
      const pressure = 101_325 * (54_048 / 101_325) ** share;
      return drawnBetween(flowMorph([first, wider], pressure)).blocks[0]!.radius.at(-1)!;
    };
    for (const share of [0, 0.3, 0.499, 0.501, 1])
      expect(edgeAt(share)).toBeCloseTo(0.4 * (1 + 0.3 * share), 4);
  });
});

describe('clips of a whole flow', () => {
  const options = { size: '16:9', theme: 'light' } as const;

  test('a climb shows one field at a time, and which', () => {
    const climb = flowClimb(flows, { ...options, from: 0, to: 10_000 });
    const [begin, end] = [0, 1].map((share) => sceneToSvg(climb.at(share)));
    expect(begin).toContain('field of the pad, 1.01\u00a0bar');
    expect(end).toContain('field of 10\u00a0km, 0.27\u00a0bar');
    for (const svg of [begin, end]) {
      expect(svg).toContain('inviscid, computed');
      expect(svg).toContain('No turbulence');
    }
    for (const share of [0, 1]) {
      const words = textsOf(climb.at(share).children).map(({ text }) => text);
      expect(words.join(' ')).toContain('3 fields computed, the nearest is shown');
    }
    expect(climb.notes.join(' ')).toContain('1.01\u00a0bar, 0.54\u00a0bar, 0.27\u00a0bar');
  });

  test.each(['16:9', '9:16', '1:1', 'print'] as const)(
    '%s: all that stands by a climb has room, and its words carry what it is and the caution',
    (size) => {
      const all = flows.map((each) => ({
        ...each,
        steady: false,
        insideBell: true,
        leaves: { axial: 0.05, by: 'Schmucker 1973' },
      }));
      const thinnest = field({ ambientPressure: 10, altitude: null, thinnest: true });
      const climb = flowClimb([...all, thinnest], { size, theme: 'dark', from: 0, to: 'vacuum' });
      for (const share of [0, 0.5, 1]) {
        const scene = climb.at(share);
        const texts = textsOf(scene.children);
        for (const { text, box } of texts.map((node) => ({ text: node.text, box: textBox(node) })))
          expect(box.x >= 0 && box.x + box.width <= scene.width, text).toBe(true);
        expect(texts.map(({ text }) => text).join(' ')).toContain('Model: flow-field.');
      }
      expect(textsOf(climb.at(1).children).map(({ text }) => text)).toContain(
        'field of the thinnest air, 0.00010\u00a0bar',
      );
      expect(climb.description).toContain('inviscid, computed');
      expect(climb.description).toContain(CAUTION);
    },
  );

  test('the words of a climb tell its first field, its last, and where it turns into another kind', () => {
    const shocks = [0.4, 0.42, 0.44, 0.46].map((behind, k) =>
      field({ altitude: 1000 * k, ambientPressure: 1e5 - 1e4 * k, mainShock: shock(behind) }),
    );
    const none = field({ altitude: 5000, ambientPressure: 5e4, mainShock: null });
    const { description } = flowClimb([...shocks, none], { ...options, from: 0, to: 5000 });
    for (const told of ['At sea level', 'At 3\u00a0km', 'At 5\u00a0km']) expect(description).toContain(told);
    for (const left of ['At 1\u00a0km', 'At 2\u00a0km']) expect(description).not.toContain(left);
  });

  test('it keeps one scale, also where a shorter nozzle works first', () => {
    const [first, ...others] = flows as [FlowField, ...FlowField[]];
    const short = { ...first, lip: { axial: 0, radius: 0.15 }, insideBell: true };
    const climb = flowClimb([short, ...others], { ...options, from: 0, to: 10_000 });
    const [begin, end] = [0, 1].map((share) =>
      JSON.stringify(
        climb.at(share).children.filter((node) => node.kind === 'group' && node.name === 'scale'),
      ),
    );
    expect(begin).toContain('mm');
    expect(begin).toBe(end);
  });

  test('moments of a flow through time are drawn at one scale, however far their shock is', () => {
    const moment = { event: 'start', time: 0, asked: 1, fed: 1, chamber: 1, massFlow: 1, thrust: 1 } as const;
    const drawn = (mainShock: FlowField['mainShock']) =>
      figureFlow(field({ moment, seen: 5, mainShock }), 'mach', options).children.filter(
        (node) => node.kind === 'group' && node.name === 'scale',
      );
    expect(drawn(shock(0.4))).toHaveLength(1);
    expect(drawn(shock(4))).toEqual(drawn(shock(0.4)));
  });

  test('specks drift, the same in every run', () => {
    const frames = (): readonly string[] => {
      const clip = clipOf(flowDriftClip(field(), options), { ...USUAL_TIMING, rate: frameRateOf('25') });
      return [0, 60, 61].map((n) => sceneToSvg(clip.frame(n)));
    };
    const [first, again] = [frames(), frames()];
    expect(again).toEqual(first);
    expect(first[1]).not.toBe(first[2]);
    expect(first[0]).toContain('Specks drift with the gas');
  });
});

describe('figures of a whole flow among those of a study', () => {
  let answer: StudyAnswer;
  let subject: FigureSubject;
  beforeAll(async () => {
    ({ answer } = await solveText(
      'bell: { name: Birch, propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3000 K }, chamber: { pressure: 50 bar }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 8, halfAngle: 15 deg } }\nbest: { like: bell, name: Bound, nozzle: { kind: adapting, areaRatio: 8 } }',
    ));
    subject = { answer, curves: {}, flows };
  });

  test('a package that shows one names its model, what it leaves out, and the works it rests on', async () => {
    const scene = figureFlow(flows[0]!, 'pressure', { size: '16:9', theme: 'light' });
    const study = await studyOf(
      'bell: { propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3000 K }, chamber: { pressure: 50 bar }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 8 } }',
    );
    const pageWith = (figures: readonly PackageFigure[]): string =>
      packagePage({
        answer,
        study,
        figures,
        ...{ sentences: [], analogies: [], worth: null, needs: [], vehicleWorths: [], fonts: [] },
      });
    const shown: readonly PackageFigure[] = [{ name: 'flow-bell-16x9', scene, inPage: false }];
    for (const words of ['flow-field', 'In pictures of the whole flow, inviscid, computed: No turbulence']) {
      expect(pageWith(shown)).toContain(words);
      expect(pageWith([])).not.toContain(words);
    }
    const used = (figures: readonly PackageFigure[]) =>
      usedSources({
        ...{ study, answer, solutions: new Map(), sentences: [], analogies: [], rows: [] },
        shown: modelsDrawn(figures),
      }).filter(({ usedFor }) => usedFor.includes('model flow-field'));
    expect(used([])).toEqual([]);
    expect(used(shown).map(({ id }) => id)).toContain('toro-1994');
  });

  test('are there for the engines that have fields, and draw the nearest one', () => {
    const names = figureKinds(subject)
      .map(({ name }) => name)
      .filter((name) => name.startsWith('flow-'));
    expect(names).toEqual([
      'flow-bell',
      'flow-bell-mach-number',
      'flow-bell-temperature',
      'flow-bell-density',
      'flow-bell-speed',
      'flow-bell-density-gradient',
      'flow-bell-along',
    ]);
    expect(figureKinds({ answer, curves: {} }).some(({ name }) => name.startsWith('flow-'))).toBe(false);
    for (const kind of figureKinds(subject).filter(({ name }) => name.startsWith('flow-'))) {
      const scene = kind.draw({ size: '16:9', theme: 'light', altitude: 3000 })!;
      expect(scene.description, kind.name).toContain('the nearest to 3\u00a0km');
      expect(scene.description, kind.name).toContain('No turbulence');
      expect(sceneToSvg(scene), kind.name).not.toContain('NaN');
    }
  });

  test('have tables: what was found, and the law beside it', () => {
    const table = (name: string): string =>
      figureKinds(subject)
        .find((kind) => kind.name === name)!
        .csv({ size: '16:9', theme: 'light', altitude: 5000 });
    for (const name of ['flow-bell', 'flow-bell-along'])
      expect(table(name).split('\r\n')[2], name).toMatch(
        /^,,what it is,.*Inviscid, computed\. No turbulence/,
      );
    expect(table('flow-bell')).toMatch(/wholeFlow\.shock.*,54048,0\.3,/);
    expect(table('flow-bell')).toMatch(/plume\.machDisk.*,0\.4,.*by the published law/);
    expect(table('flow-bell-along').match(/wholeFlow\.temperature/g)!.length).toBeGreaterThan(7);
  });

  test('by their names it is known what is to be computed', () => {
    expect(flowOfFigure(answer, 'flow-bell-speed', 5000)).toMatchObject({
      engine: 'bell',
      at: { place: { altitude: 5000 } },
    });
    // A bound has no walls, so no field.
    expect(flowOfFigure(answer, 'flow-best', 0)).toBeNull();
    expect(flowOfFigure(answer, 'thrust', 0)).toBeNull();
    const way = { from: 0, to: 'vacuum', at: 0 } as const;
    expect(flowOfClip(answer, { figure: 'flow-bell', ...way })).toEqual({
      engine: 'bell',
      at: { from: 0, to: 'vacuum' },
    });
    expect(flowOfClip(answer, { figure: 'flow-bell', kind: 'drift', ...way })!.at).toMatchObject({
      place: { altitude: 0 },
    });
    const clips = namedClips(answer, []).map(({ name }) => name);
    expect(clips).toContain('flow-bell-climb');
    expect(clips).not.toContain('flow-best-climb');
  });
});

test('what a script and a package show of whole flows, each once', async () => {
  const { answer } = await solveText(
    'bell: { name: Birch, propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3000 K }, chamber: { pressure: 50 bar }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 8, halfAngle: 15 deg } }',
  );
  const slot = (name: string, words: string) => ({
    name,
    shown: { at: 'line', figure: name, words } as unknown as MediaSlot['shown'],
  });
  const found = flowsShown(
    answer,
    [slot('flow-bell-speed', ''), slot('thrust', ''), slot('flow-bell-climb', 'from 5 km to 20 km')],
    namedClips(answer, []),
    ['flow-bell-drift', 'cut-climb'],
  );
  expect(found.figures).toEqual(['flow-bell-speed', 'flow-bell']);
  expect(found.wanted).toEqual([
    { engine: 'bell', at: { place: { altitude: 0, ambientPressure: expect.closeTo(101_325, 0) } } },
    { engine: 'bell', at: { from: 5000, to: 20_000 } },
  ]);
});

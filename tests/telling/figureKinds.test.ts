import { readFileSync } from 'node:fs';
import { Resvg } from '@resvg/resvg-js';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Crew } from '../../src/answer/asked/crew.ts';
import { localCrew } from '../../src/answer/asked/localCrew.ts';
import { plainAsk } from '../../src/answer/asked/plainAsk.ts';
import { quantityNameAt } from '../../src/answer/catalogue.ts';
import { altitudeCurve } from '../../src/answer/conditions.ts';
import { findNeed, type Need, needRequestOf } from '../../src/answer/needs/index.ts';
import { type CheckedSentence, checkSentences } from '../../src/answer/sentences/index.ts';
import { type SolvedStudy, solveStudyLive } from '../../src/answer/solve.ts';
import {
  type VehicleWorth,
  vehicleWorths,
  type WorthTable,
  worthTable,
} from '../../src/answer/worth/index.ts';
import { openDataShelf } from '../../src/faces/disk/data.ts';
import { knownNames } from '../../src/study/names.ts';
import { readStudy } from '../../src/study/read.ts';
import { figureKinds } from '../../src/telling/figures/figureKinds.ts';
import type { FigureKind } from '../../src/telling/figures/kind.ts';
import { CAUTION_SHORT, type Scene, sceneToSvg } from '../../src/telling/index.ts';
import { layoutOf } from '../../src/telling/look/formats.ts';
import { formatValue } from '../../src/telling/numbers/formatNumber.ts';
import { boxesOverlap, textBox } from '../../src/telling/scene/box.ts';
import { type SceneNode, textsOf } from '../../src/telling/scene/scene.ts';

const SHAPES = ['16:9', '9:16', '1:1', 'print'] as const;
/** Drawn by figures.test.ts as well, where their own words are held. */
const OLD = /^(specific-impulse|thrust|cut-|pressure-along|outlines|ascent|sweep|map|temperatures)/;

let solved: SolvedStudy;
let kinds: readonly FigureKind[] = [];
let known: ReadonlyMap<string, readonly number[]>;
let crew: Crew;
let found: {
  readonly worth: WorthTable;
  readonly needs: readonly Need[];
  readonly sentences: readonly CheckedSentence[];
  readonly vehicleWorths: readonly VehicleWorth[];
};
beforeAll(async () => {
  const shelf = openDataShelf();
  const text = readFileSync(new URL('../../examples/alder-booster/study.yaml', import.meta.url), 'utf8');
  const outcome = readStudy(text, { file: 'example', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const { study } = outcome;
  solved = await solveStudyLive(study, shelf);
  const { answer, solutions } = solved;
  crew = await localCrew(study, shelf);
  const curves = Object.fromEntries([...solutions].map(([id, solution]) => [id, altitudeCurve(solution)]));
  known = numbersByName({ engines: answer.engines, vehicles: answer.vehicles }, curves);
  const few = { ...study, sentences: study.sentences.slice(0, 3) };
  found = {
    vehicleWorths: vehicleWorths(study, answer, solutions),
    worth: await worthTable(study, crew),
    needs: [await findNeed(study, crew, needRequestOf(study, study.needs[0]!))],
    sentences: await checkSentences(few, crew, { flips: false }),
  };
  kinds = figureKinds({ answer, curves, ...found });
}, 400_000);

/** Every number of the answer, and of the engines at finer altitudes, under its name in the catalogue. */
function numbersByName(
  found: unknown,
  curves: Readonly<Record<string, readonly unknown[]>>,
): ReadonlyMap<string, readonly number[]> {
  const numbers = new Map<string, number[]>();
  const walk = (value: unknown, path: string): void => {
    if (typeof value === 'number') {
      const name = quantityNameAt(path);
      if (name !== undefined) numbers.set(name, [...(numbers.get(name) ?? []), value]);
    } else if (Array.isArray(value)) for (const [i, item] of value.entries()) walk(item, `${path}[${i}]`);
    else if (typeof value === 'object' && value !== null)
      for (const [key, item] of Object.entries(value)) walk(item, path === '' ? key : `${path}.${key}`);
  };
  walk(found, '');
  for (const [id, rows] of Object.entries(curves))
    for (const [i, row] of rows.entries()) walk(row, `engines.${id}.altitudes[${i}]`);
  return numbers;
}

const OF_ROWS = { quantity: 1, place: 5, value: 6, low: 7, high: 8 } as const;
/** Cells of the rows of a figure's table, head and caution left out. */
const rowsOf = (kind: FigureKind): readonly (readonly string[])[] =>
  kind
    .csv({ size: '16:9', theme: 'light' })
    .trimEnd()
    .split('\r\n')
    .slice(2)
    .map((line) =>
      [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
        ([, quoted, bare]) => quoted?.replaceAll('""', '"') ?? bare ?? '',
      ),
    );

const named = (name: string): FigureKind => kinds.find((kind) => kind.name === name)!;
const drawn = (kind: FigureKind, size: (typeof SHAPES)[number], theme: 'light' | 'dark' = 'light'): Scene =>
  kind.draw({ size, theme })!;
const fresh = (): readonly FigureKind[] =>
  kinds.filter(({ name, draw }) => !OLD.test(name) && draw({ size: '16:9', theme: 'light' }) !== null);

/** Texts outside axes, grids and heads, for these carry no numbers of the answer. */
function labelsIn(nodes: readonly SceneNode[]): string[] {
  return nodes.flatMap((node) => {
    if (node.kind === 'text') return [node.text];
    if (node.kind !== 'group' || /^(axis|grid|head|foot)/.test(node.name ?? '')) return [];
    return labelsIn(node.children);
  });
}

describe('the figures of a study', () => {
  test('are the kinds that a study can have', () => {
    expect(fresh().map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        'push',
        'heat-along-wall',
        'losses',
        'worth',
        'velocity-losses-booster',
        'exchange-rates-booster',
      ]),
    );
    expect(new Set(kinds.map(({ name }) => name)).size).toBe(kinds.length);
  });

  test('keep all words in the safe area, apart from each other and large enough; the caution stands in each', () => {
    for (const kind of fresh())
      for (const size of SHAPES) {
        const scene = drawn(kind, size);
        const { safe } = layoutOf(size);
        const texts = textsOf(scene.children);
        const least = 0.026 * Math.min(scene.width, scene.height) * 0.999;
        const boxes = texts.map((node) => ({ text: node.text, box: textBox(node) }));
        for (const { text, box } of boxes) {
          const where = `${kind.name} ${size} “${text}”`;
          expect(box.x, where).toBeGreaterThanOrEqual(safe.left - 1);
          expect(box.x + box.width, where).toBeLessThanOrEqual(safe.right + 1);
          expect(box.y, where).toBeGreaterThanOrEqual(safe.top - 1);
          expect(box.y + box.height, where).toBeLessThanOrEqual(safe.bottom + 2);
        }
        for (const node of texts) expect(node.size, `${kind.name} ${size}`).toBeGreaterThanOrEqual(least);
        const over: string[] = [];
        boxes.forEach((one, i) => {
          for (const other of boxes.slice(i + 1)) {
            const tight = ({ box }: typeof one) => ({
              x: box.x + 1,
              y: box.y + 3,
              width: box.width - 2,
              height: box.height - 6,
            });
            if (boxesOverlap(tight(one), tight(other))) over.push(`${one.text} / ${other.text}`);
          }
        });
        expect(over, `${kind.name} ${size}`).toEqual([]);
        expect(texts.map(({ text }) => text).join(' '), kind.name).toContain(CAUTION_SHORT);
        expect(scene.description).toMatch(/not for building, pressurising or firing/);
      }
  });

  test('say the rows of their bars in full', () => {
    for (const name of ['losses', 'velocity-losses-booster', 'exchange-rates-booster'])
      for (const size of SHAPES) {
        const words = textsOf(drawn(named(name), size).children).map(({ text }) => text);
        expect(
          words.filter((text) => text.includes('…')),
          `${name} ${size}`,
        ).toEqual([]);
      }
  });

  test('say in words what their colour is, where it is not pressure', () => {
    expect(drawn(named('cut-at-sea-level'), '16:9').description).not.toContain('Colour');
    expect(drawn(named('cut-mach-number'), '16:9').description).toMatch(/Colour: Mach number.* at Mach \d/);
    expect(drawn(named('cut-temperature'), '16:9').description).toMatch(/Colour: temperature.* at \d+.K/);
  });

  test('are the same bytes twice, in both themes, and an outside reader draws them', () => {
    for (const kind of fresh())
      for (const theme of ['light', 'dark'] as const) {
        const svg = sceneToSvg(drawn(kind, '16:9', theme));
        expect(sceneToSvg(drawn(kind, '16:9', theme))).toBe(svg);
        expect(new Resvg(svg, { font: { loadSystemFonts: false } }).render().asPng().length).toBeGreaterThan(
          5000,
        );
      }
  });

  test('carry a table each, with the caution', () => {
    for (const { name, draw, csv } of kinds) {
      if (draw({ size: '16:9', theme: 'light' }) === null) continue;
      const table = csv({ size: '16:9', theme: 'light' });
      expect(table, name).toContain('not for building, pressurising or firing');
      expect(table.split('\r\n').length, name).toBeGreaterThan(3);
    }
  });

  /** Made of several numbers of the catalogue, or of engines solved anew; held to what was found, and that to the catalogue, below. */
  const MADE = /^(exchange-rates|sentence|need|worth)/;

  test('have in their tables the catalogue’s own numbers, to the last bit', () => {
    let held = 0;
    for (const kind of kinds) {
      if (MADE.test(kind.name) || kind.draw({ size: '16:9', theme: 'light' }) === null) continue;
      for (const cells of rowsOf(kind)) {
        const [name, value] = [cells[OF_ROWS.quantity]!, cells[OF_ROWS.value]!];
        if (value === '') continue;
        expect(known.get(name) ?? [], `${kind.name}: ${name} ${value}`).toContain(Number(value));
        held += 1;
      }
    }
    expect(held).toBeGreaterThan(2000);
  });

  test('have in the others what was found, to the last bit, and that is what the catalogue tells', async () => {
    const { worth, needs, sentences, vehicleWorths: worths } = found;
    /** Engines solved anew, asked in another order, agree but for what an iteration leaves. */
    const held = (name: string, value: number, quantityName: string): void => {
      const near = (known.get(quantityName) ?? []).some(
        (one) => Math.abs(one - value) <= 1e-7 * Math.abs(one),
      );
      expect(near, `${name}: ${quantityName} ${value}`).toBe(true);
    };
    const values = (name: string, cell: number): readonly number[] =>
      rowsOf(named(name)).flatMap((cells) => (cells[cell] === '' ? [] : [Number(cells[cell])]));

    const sides = worth.rows.flatMap(({ quantity, base, other, bound }) =>
      [base, other, bound].flatMap((side) => (side?.found == null ? [] : [{ quantity, ...side.found }])),
    );
    expect(values('worth', OF_ROWS.value)).toEqual(sides.map(({ value }) => value));
    expect(values('worth', OF_ROWS.low)).toEqual(sides.flatMap(({ low }) => low ?? []));
    for (const { quantity, value } of sides) held('worth', value, quantity);

    for (const { id, numbers } of sentences) {
      const name = `sentence-${id}`;
      expect(values(name, OF_ROWS.value)).toEqual(numbers.map(({ value }) => value));
      expect(values(name, OF_ROWS.high)).toEqual(numbers.map(({ high }) => high));
      for (const { expression, quantity, value } of numbers)
        if (quantity !== null && !expression.includes('(z')) held(name, value, quantity);
    }

    const [need] = needs;
    const points = rowsOf(named('need-as-good-in-vacuum')).filter(([what]) => what === 'point');
    const swept = need!.sweep.curves.flatMap(({ points: all }) => all.map(({ x, y }) => [x, y]));
    expect(points.map((cells) => [Number(cells[3]), Number(cells[6])])).toEqual(swept);
    // The bell as the study states it, and the plug, which does not move.
    const own = need!.sweep.curves.map(({ points: all }) => all.find(({ x }) => x === 25)!.y!);
    for (const value of own) held('need', value, 'vacuum.specificImpulse');

    const [{ exchange }] = worths as [VehicleWorth];
    expect(values('exchange-rates-booster', OF_ROWS.value)).toEqual(
      exchange.rates.map((rate) => rate.payload),
    );
    // Two of them anew, by payloads told on both sides of what the study states.
    const slope = async (input: string, at: number, step: number): Promise<number> => {
      const asks = [at + step, at - step].map((value) => ({
        ...plainAsk('booster', 'flight.payload', null),
        inputs: [{ input, value }],
      }));
      const [told] = await crew.tell(asks, [{}]);
      const [up, down] = told!.map((one) => (one.ok ? one.value : Number.NaN));
      return (up! - down!) / (2 * step);
    };
    const rate = (stage: string, lever: string): number =>
      exchange.rates.find((one) => one.stage === stage && one.lever === lever)!.payload;
    const dry = await slope('first.dry', 16_000, 200);
    const second = await slope('second.dry', 3600, 50);
    expect(dry / rate('first', 'dryMass')).toBeCloseTo(1, 2);
    expect(second / rate('second', 'dryMass')).toBeCloseTo(1, 2);
  });

  /** Every label of these is a number of the table. */
  const LABELLED = [
    ...['push', 'losses', 'velocity-losses-booster', 'exchange-rates-booster'],
    ...['specific-impulse', 'thrust', 'pressure-along-wall', 'heat-along-wall'],
  ];
  /** Where curves cross or end, between the rows of the table. */
  const PLACE = /(?:at|up to) [\d.]+\u00a0km/;

  test('draw no number that is not in their table', () => {
    for (const name of LABELLED) {
      const kind = named(name);
      const values = rowsOf(kind).flatMap((cells) =>
        [OF_ROWS.place, OF_ROWS.value, OF_ROWS.low, OF_ROWS.high].map((i) => Number(cells[i] ?? '') || 0),
      );
      // Newtons, pascals, kilometres, per cent, millimetres, tonnes; differences of two shown stand as they are.
      const scales = [1, 1e-3, 1e3, 100, 1e-5, 1e-6];
      const labels = labelsIn(drawn(kind, '16:9').children).filter((label) => !PLACE.test(label));
      for (const label of labels)
        for (const [written] of label.matchAll(/(?<![\w.])−?\d[\d\u00a0]*(?:\.\d+)?/g)) {
          const plain = written.replaceAll('\u00a0', '').replace('−', '-');
          const value = Number(plain);
          const half = 0.5 * 10 ** -(plain.split('.')[1]?.length ?? 0);
          // Three digits may have rounded whole hundreds.
          const close = (one: number): boolean =>
            Math.abs(one - value) <= Math.max(half * 1.001, 0.006 * Math.abs(one));
          const found = values.some((one) => scales.some((scale) => close(one * scale)));
          expect(found, `${kind.name}: ${written} in “${label}”`).toBe(true);
        }
    }
  });
});

describe('where the push acts', () => {
  test('its sum is no thrust yet where losses follow: these are told', () => {
    const scene = drawn(named('push'), '16:9');
    const words = textsOf(scene.children).map(({ text }) => text);
    expect(words).toContain('sum');
    expect(words).not.toContain('thrust');
    for (const id of ['bell', 'plug']) {
      const { name, seaLevel } = solved.answer.engines[id]!;
      const thrust = formatValue('thrust', seaLevel.thrust!);
      expect(words.join(' ').replaceAll('\u00a0', ' ')).toContain(
        `${name} has ${thrust}`.replaceAll('\u00a0', ' '),
      );
      expect(scene.description).toContain(`with losses ${thrust}`);
    }
  });

  test('the labels add up to the thrust of the answer, and an arrow is as long as its force', () => {
    const scene = drawn(named('push'), '16:9');
    const panels = scene.children.flatMap((node) =>
      node.kind === 'group' && node.name?.endsWith(' push') ? [node] : [],
    );
    const engines = ['bell', 'plug'].map((id) => solved.answer.engines[id]!);
    expect(panels).toHaveLength(2);
    const scales = panels.map((panel, i) => {
      const engine = engines[i]!;
      const { parts, sum } = engine.thrustParts.seaLevel;
      const said = panel.children.flatMap((node) =>
        node.kind === 'text' && node.weight === 600 ? [Number(node.text.replace('−', '-'))] : [],
      );
      expect(said).toHaveLength(parts.length + 1);
      const total = said.pop()!;
      // Each label is rounded to a kilonewton.
      expect(Math.abs(said.reduce((all, one) => all + one, 0) - total)).toBeLessThanOrEqual(
        0.5 * (parts.length + 1),
      );
      expect(Math.abs(total - sum! / 1000)).toBeLessThanOrEqual(0.5);
      // Two ways to the thrust: by surfaces, by the exit.
      expect(sum! / engine.seaLevel.thrust!).toBeGreaterThan(0.97);
      expect(sum! / engine.seaLevel.thrust!).toBeLessThan(1.03);
      const arrows = panel.children.flatMap((node) =>
        node.kind === 'path' && node.fill !== undefined ? [node] : [],
      );
      const [first] = arrows;
      const [, from = 0] = first!.d.match(/-?[\d.]+/g)!.map(Number);
      const tip = first!.d.match(/-?[\d.]+/g)!.map(Number)[7]!;
      expect(first!.fill).toBe('ink');
      expect(arrows[1]!.fill).toBe('paper');
      return Math.abs(from - tip) / parts[0]!.force;
    });
    expect(scales[1]! / scales[0]!).toBeCloseTo(1, 3);
  });
});

test('title, conditions and notes can be left out; the caution cannot', () => {
  const bare = named('losses').draw({
    size: '16:9',
    theme: 'light',
    without: ['title', 'subtitle', 'notes'],
  })!;
  const words = textsOf(bare.children)
    .map(({ text }) => text)
    .join(' ');
  expect(words).toContain(CAUTION_SHORT);
  expect(words).not.toContain('Models:');
  expect(words).not.toContain('delivers');
});

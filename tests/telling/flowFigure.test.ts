import { describe, expect, test } from 'vitest';
import { type FlowField, fieldAlong } from '../../src/answer/flow/index.ts';
import { withoutModels } from '../../src/answer/flow/timedFlow.ts';
import { flowTable, momentTable } from '../../src/faces/cli/text/flowText.ts';
import { atWall, axisShocks, firstCell, mainShock } from '../../src/physics/wholeFlow/index.ts';
import { CAUTION_SHORT } from '../../src/telling/caution.ts';
import { figureFlow } from '../../src/telling/figures/figureFlow.ts';
import { figureFlowAlong } from '../../src/telling/figures/figureFlowAlong.ts';
import { againstWords, chieflyAgainstWords } from '../../src/telling/figures/flowAgainst.ts';
import { flowLines } from '../../src/telling/figures/flowPlane.ts';
import { flowRows } from '../../src/telling/figures/flowRows.ts';
import { flowFinding } from '../../src/telling/figures/flowWords.ts';
import { ENGINE_STYLES } from '../../src/telling/look/engineStyles.ts';
import { boxesOverlap, textBox } from '../../src/telling/scene/box.ts';
import { type Scene, textsOf } from '../../src/telling/scene/scene.ts';
import { sceneToSvg } from '../../src/telling/scene/svg.ts';
import { block, field } from './jetField.ts';

describe('shocks on the axis', () => {
  test('a Mach disk where the pressure rises most and the flow turns subsonic', () => {
    const [shock, ...more] = axisShocks(field().blocks[0]!, 0, 1);
    expect(more).toEqual([]);
    // From the fourth middle, 0.35 m, to the fifth.
    expect(shock!.behind).toBeCloseTo(0.4, 6);
    expect(shock!.pressureRise).toBeCloseTo(15, 4);
    expect(shock!.machAhead).toBe(5);
    expect(shock!.disk).toBe(true);
  });

  test('of several strong ones the first is told, unless it is much weaker', () => {
    const shock = (behind: number, pressureRise: number) => ({
      behind,
      pressureRise,
      machAhead: 3,
      disk: false,
    });
    expect(mainShock([shock(1, 2), shock(2, 8), shock(3, 10)])!.behind).toBe(2);
    expect(mainShock([shock(1, 3), shock(3, 10)])!.behind).toBe(3);
    expect(mainShock([shock(1, 2.4)])).toBeNull();
  });

  test('weak rises are the nozzle’s own; a cell ends where the pressure is farthest on its first side again', () => {
    const wave = block([2e5, 1.4e5, 0.8e5, 0.6e5, 0.9e5, 1.3e5, 1.2e5, 0.9e5]);
    expect(mainShock(axisShocks(wave, 0, 1))).toBeNull();
    expect(firstCell(wave, 0, 1e5, 1)).toBeCloseTo(0.55, 6);
    expect(firstCell(wave, 0, 1e5, 0.4)).toBeNull();
  });
});

test('a table of flows says which field broke on its way', () => {
  const table = flowTable([field(), field({ broke: 1 })], 200);
  expect(table).toContain('400, mean, broke 1×');
  expect(table.match(/On its way the field broke once/g)).toHaveLength(1);
});

test('a table tells the first cell beside its law', () => {
  const byLaw = { machDisk: null, cellLength: 0.5 };
  expect(flowTable([field({ firstCell: 0.45, byLaw })], 200)).toContain('450\u00a0mm (500\u00a0mm)');
  expect(flowTable([field({ byLaw })], 200)).not.toContain('(500\u00a0mm)');
});

test('a table of moments says by what it was computed, what the gas is made to do and what went wrong', () => {
  const moment: FlowField['moment'] = {
    event: 'start',
    time: 1e-3,
    asked: 0.5,
    fed: 0.031,
    chamber: 0.01,
    massFlow: 1,
    thrust: 100,
  };
  const told = (over: Partial<FlowField>): string => momentTable([field({ moment, ...over })], 400);
  const ended = { code: 'field-broke', what: 'No state at x = 1 m.', mend: 'Shorter steps.' };
  const brokeOff = field({ moment: { ...moment, ended } });
  const words =
    'Behind this moment the field broke, at first order and in shorter steps too: No state at x = 1 m.';
  expect(momentTable([brokeOff], 400)).toContain(words);
  expect(figureFlow(brokeOff, 'pressure', { size: '16:9', theme: 'light' }).description).toContain(words);
  const all = told({ kernel: 'reference', leaves: { axial: 0.05, by: 'Schmucker 1973' }, rescued: 7 });
  expect(all.replaceAll(/\s+/g, ' ')).toContain(
    'the air that stood in the nozzle too, pushed out ahead of the gas',
  );
  expect(all).toMatch(/1\.00 ms\s+50 %\s+3 %\s+1\.0 %/);
  const lines = [
    'Computed by the plain reference, without WebAssembly',
    'the gas is made to leave the wall 50\u00a0mm behind the throat, at the estimate of Schmucker 1973 for the full engine',
    'On its way the field took some of its cells at first order in 7 of 400 steps.',
  ];
  for (const line of lines) {
    expect(all).toContain(line);
    expect(told({})).not.toContain(line);
  }
});

describe('a computed flow as a figure', () => {
  test.each(['16:9', '9:16', '1:1', 'print'] as const)('%s: finding, what it is, the caution', (size) => {
    const scene = figureFlow(field(), 'pressure', { size, theme: 'light' });
    expect(scene.title).toBe(
      'At 12\u00a0km the Mach disk of Birch <B>’s jet stands 400\u00a0mm behind the lip.',
    );
    const words = textsOf(scene.children)
      .map(({ text }) => text)
      .join(' ');
    expect(words).toContain('inviscid, computed');
    expect(words).toContain('No turbulence');
    expect(words).toContain(CAUTION_SHORT);
    const svg = sceneToSvg(scene);
    expect(svg).not.toContain('<B>');
    expect(svg).not.toContain('NaN');
  });

  test('what it is made to do, and what is not seen, is said', () => {
    const drawn = (over: Partial<FlowField>) =>
      figureFlow(field(over), 'density gradient', { size: '16:9', theme: 'dark' });
    expect(drawn({ leaves: { axial: 0.05, by: 'Schmucker 1973' } }).description).toContain(
      'made to leave the wall at the estimate of Schmucker 1973',
    );
    // In the nozzle of 0.4 m: from 0.1 bar at 0.15 m to 1 bar at 0.25 m.
    const bell = {
      axisBlock: 1,
      blocks: [block([3e5, 1e4, 1e5, 1.1e5]), block([1e5])],
      lip: { axial: 0.4, radius: 0.3 },
    };
    expect(drawn({ ...bell, leaves: { axial: 0.1, by: 'Schmucker 1973' } }).title).toBe(
      'At 12\u00a0km gas that is made to leave Birch <B>’s wall 100\u00a0mm behind the throat is stopped by a shock on the axis 200\u00a0mm behind it.',
    );
    for (const leaves of [null, { axial: 0.05, by: 'Schmucker 1973' }]) {
      expect(drawn({ insideBell: true, leaves }).description).toContain(
        'The bell round the jet is not in the picture.',
      );
      expect(drawn({ leaves }).description).not.toContain('round the jet');
    }
    expect(drawn({ mainShock: null }).title).toContain('no strong shock');
    // 400 mm behind a lip at 0 m, of a plug that ends at 0.3 m.
    expect(drawn({ form: 'plug', lip: { axial: 0, radius: 0.3 }, end: 0.3 }).title).toContain(
      'the gas that leaves Birch <B>’s plug is pressed together on the axis 100\u00a0mm behind it',
    );
    // What is said below such a picture has room, to its end.
    const dual = drawn({ insideBell: true, steady: false, byLaw: { machDisk: 2, cellLength: 3 } });
    const foot = textsOf(dual.children).map(({ text }) => text);
    expect(foot.some((text) => text.endsWith('Model: flow-field.'))).toBe(true);
    // Strong and weak by a key of its own.
    expect(textsOf(drawn({}).children).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['change of density over a lip radius', '× 2', '× 1000']),
    );
    expect(drawn({ thinnest: true }).title).toContain('Nearly in vacuum');
    expect(drawn({}).description).not.toContain('On its way');
    expect(drawn({ broke: 2, rescued: 7 }).description).toContain(
      'On its way the field broke 2 times and went on with shorter steps, at first order for a while; it took some of its cells at first order in 7 of 400 steps.',
    );
  });

  test('the density’s change over a length, on a field where it is known', () => {
    const even = block(Array.from({ length: 6 }, (_, i) => 1e5 * Math.exp(0.2 * i)));
    // ln ρ rises by 0.2 over each 0.1 m: by 0.6 over 0.3 m.
    for (const { value } of flowLines(even, 'density gradient', 0.3).flat())
      expect(value).toBeCloseTo(0.6, 4);
  });
});

describe('of an expansion–deflection nozzle', () => {
  const jet = block([1e5, 9e4]);
  const withWake = (mach: number, leaves: FlowField['leaves'] = null) =>
    flowFinding(field({ form: 'pintle', leaves, blocks: [jet, jet, jet, block([5e4, 5e4], [0.2, mach])] }));

  test('whether the gas behind the pintle moves says whether its wake is open', () => {
    expect(withWake(2.5)).toBe(
      'At 12\u00a0km the wake behind Birch <B>’s pintle is closed: the gas fills the nozzle.',
    );
    expect(withWake(2.5, { axial: 0.1, by: 'Schmucker 1973' })).toBe(
      'At 12\u00a0km the wake behind Birch <B>’s pintle is closed: the gas meets behind it, and is made to leave the wall 100\u00a0mm behind the throat.',
    );
    // Slower than sound again at the lip, behind a shock that stands in the nozzle: not open for that.
    const shocked = block([5e4, 5e4, 2e5], [0.2, 3, 0.5]);
    expect(flowFinding(field({ form: 'pintle', blocks: [jet, jet, jet, shocked] }))).toContain('is closed');
    expect(withWake(0.1, { axial: 0.1, by: 'Schmucker 1973' })).toBe(
      'At 12\u00a0km the wake behind Birch <B>’s pintle is open: the gas runs along the wall round gas slower than sound, and is made to leave the wall 100\u00a0mm behind the throat.',
    );
  });
});

describe('what is said of a field against the model of its nozzle', () => {
  const against = {
    passes: 0.994,
    passesByModel: 1,
    gas: -0.006,
    perMass: 2e-4,
    base: 0.004,
    baseByModel: 0.0211,
    basePressure: 46_000,
    suction: -0.05,
    wake: 0,
  };

  test('the whole, and what is worth telling of its parts', () => {
    expect(againstWords(field({ against, thrustCoefficient: { mean: 1.7, swing: 0, byModel: 1.71 } }))).toBe(
      'Thrust against the model’s: −0.6\u00a0%; +2.9\u00a0% by suction of still air at walls round the jet, which only the model reckons, −0.6\u00a0% of gas that comes through, −1.0\u00a0% by the base (0.46\u00a0bar in the field).',
    );
    const alike = { ...against, gas: 0, base: 0, baseByModel: 0, basePressure: null, suction: 0 };
    expect(
      againstWords(field({ against: alike, thrustCoefficient: { mean: 1.7101, swing: 0, byModel: 1.71 } })),
    ).toBe('Thrust against the model’s: the same.');
    const open = { ...alike, wake: -0.0342 };
    expect(
      againstWords(field({ against: open, thrustCoefficient: { mean: 1.6758, swing: 0, byModel: 1.71 } })),
    ).toBe('Thrust against the model’s: −2.0\u00a0%; −2.0\u00a0% as its wake is not at the air’s pressure.');
    expect(againstWords(field())).toBe('');
  });

  test('in brief from a per cent on, with what most of it comes from', () => {
    const told = (mean: number) =>
      chieflyAgainstWords(
        field({ against: { ...against, suction: 0 }, thrustCoefficient: { mean, swing: 0, byModel: 1.71 } }),
      );
    expect(told(1.68)).toBe(
      'Thrust against the model’s: −1.8\u00a0%, chiefly −1.0\u00a0% by the base (0.46\u00a0bar in the field).',
    );
    expect(told(1.7)).toBe('');
    expect(chieflyAgainstWords(field())).toBe('');
  });
});

test('a field that broke on its way to rest says so, and not that it is a mean', () => {
  const ended = { code: 'field-broke', what: 'A cell has no pressure.', mend: 'None.' };
  const { description } = figureFlow(field({ ended, steady: false }), 'pressure', {
    size: '16:9',
    theme: 'light',
  });
  expect(description).toContain('This is not how the gas comes to rest');
  expect(description).toContain('A cell has no pressure.');
  expect(description).not.toContain('the mean over the last steps');
});

test('the pressure along its axis and wall says so too, and its table, which knows no swing', () => {
  const broke = field({ ended: { code: 'field-broke', what: 'A cell has no pressure.', mend: 'None.' } });
  const told = (shown: FlowField): string =>
    figureFlowAlong(shown, null, ENGINE_STYLES[0], { size: '16:9', theme: 'light' }).description;
  expect(told(broke)).toContain('This is not how the gas comes to rest');
  expect(told(broke)).not.toContain('a mean of');
  expect(told(field())).toContain('the wall, a mean of a jet that flaps');
  const thrust = (shown: FlowField) =>
    flowRows(shown).find(({ quantity }) => quantity === 'wholeFlow.thrustCoefficient')!;
  expect(thrust(broke).low).toBeUndefined();
  expect(thrust(field()).low).toBeCloseTo(1.7 * 0.99, 12);
});

test('its finding is that it broke, not where a shock of it stands', () => {
  const broke = field({ ended: { code: 'field-broke', what: 'A cell has no pressure.', mend: 'None.' } });
  expect(flowFinding(field())).toContain('Mach disk');
  expect(flowFinding(broke)).toBe(
    'At 12\u00a0km the whole flow of Birch <B> broke on its way to rest: the last field that held.',
  );
});

describe('what is said of a field against the published laws', () => {
  const words = (over: Partial<FlowField>): string =>
    figureFlow(field(over), 'pressure', { size: '16:9', theme: 'light' }).description;

  test('a disk beside its law, a cell only where no law has a disk', () => {
    // 0.4 m found, 0.5 m by the law: a fifth less.
    expect(words({ byLaw: { machDisk: 0.5, cellLength: 0.3 } })).toContain(
      'the Mach disk stands at 400\u00a0mm, by the published law at 500\u00a0mm (−20\u00a0%).',
    );
    expect(words({ byLaw: { machDisk: null, cellLength: 0.3 }, firstCell: 0.33, mainShock: null })).toContain(
      'the first shock cell ends at 330\u00a0mm, by the law at 300\u00a0mm (+10\u00a0%).',
    );
    expect(words({ byLaw: { machDisk: null, cellLength: 0.3 } })).not.toContain('shock cell');
    expect(words({ form: 'plug' })).not.toContain('by the published law');
  });

  test('where gas with friction would let go is hatched, and how many criteria say so', () => {
    const at = (axial: number) => ({ axial, areaRatio: 2, pressure: 1e4 });
    const separation: FlowField['separation'] = {
      case: 'restricted' as never,
      place: at(0.05),
      earliest: at(0.02),
      latest: at(0.08),
      counted: 4,
      lettingGo: 3,
      massFlow: 1,
    };
    expect(words({ separation })).toContain('where gas with friction leaves the wall, by 3 of 4 criteria');
    expect(words({ separation: { ...separation, lettingGo: 0 } })).not.toContain('Hatched');
    const svg = (given: FlowField['separation']): string =>
      sceneToSvg(figureFlow(field({ separation: given }), 'pressure', { size: '16:9', theme: 'light' }));
    expect(svg(separation)).toContain('pattern');
    expect(svg(null)).not.toContain('pattern');
  });
});

test('of a moment nothing is told that models have of the full engine', () => {
  const at = (axial: number) => ({ axial, areaRatio: 2, pressure: 1e4 });
  const full = field({
    leaves: { axial: 0.05, by: 'Schmucker 1973' },
    separation: {
      case: 'restricted' as never,
      place: at(0.05),
      earliest: at(0.02),
      latest: at(0.08),
      counted: 4,
      lettingGo: 3,
      massFlow: 1,
    },
  });
  const moment: FlowField['moment'] = {
    event: 'stop',
    time: 1e-3,
    asked: 0.5,
    fed: 0.5,
    chamber: 0.6,
    massFlow: 1,
    thrust: 100,
  };
  const drawn = (shown: FlowField): string =>
    [
      figureFlow(shown, 'pressure', { size: '16:9', theme: 'light' }),
      figureFlowAlong(shown, null, ENGINE_STYLES[0], { size: '16:9', theme: 'light' }),
    ]
      .map((scene) => `${scene.description} ${sceneToSvg(scene)}`)
      .join(' ');
  const told = drawn({ ...withoutModels(full), moment });
  for (const words of ['by law', 'by the published law', 'Hatched']) {
    expect(drawn(full)).toContain(words);
    expect(told).not.toContain(words);
  }
  expect(told).toContain('at the estimate of Schmucker 1973 for the full engine');
  expect(flowRows(full).some(({ quantity }) => quantity === 'thrustCoefficient')).toBe(true);
  expect(flowRows({ ...withoutModels(full), moment }).map(({ quantity }) => quantity)).toEqual([
    'wholeFlow.shock',
    'wholeFlow.cell',
    'wholeFlow.thrustCoefficient',
  ]);
});

// Close together, as near the matched pressure: 0.45 m found, 0.47 m by the law, the shock at 0.4 m; and the law ahead.
describe.each([0.47, 0.43, 0.41])('a shock, a cell and its law at %f m', (cellLength) => {
  const close = field({ firstCell: 0.45, byLaw: { machDisk: null, cellLength } });
  const wordsOf = (scene: Scene, names: readonly string[]) =>
    textsOf(scene.children).filter(({ text }) => names.includes(text));

  test.each(['16:9', '9:16', '1:1', 'print'] as const)('%s: no name lies over another', (size) => {
    for (const scene of [
      figureFlow(close, 'pressure', { size, theme: 'light' }),
      figureFlowAlong(close, null, ENGINE_STYLES[0], { size, theme: 'light' }),
    ]) {
      const names = ['Mach disk', 'cell', 'cell by law', 'lip', 'air outside', 'on the axis', 'on the wall'];
      const boxes = wordsOf(scene, names).map(textBox);
      expect(boxes.length).toBeGreaterThanOrEqual(3);
      const over = boxes.flatMap((one, i) => boxes.slice(i + 1).filter((other) => boxesOverlap(one, other)));
      expect(over).toEqual([]);
    }
  });
});

test('along the axis the name of the air is not under a curve', () => {
  // Near the air’s pressure of 0.194 bar all the way to the right.
  const wave = block([3e5, 1e5, 3e4, 1e4, 1e5, 3e4, 1.9e4, 1.7e4, 1.5e4, 1.4e4]);
  const scene = figureFlowAlong(field({ blocks: [wave], seen: 1 }), null, ENGINE_STYLES[0], {
    size: '16:9',
    theme: 'light',
  });
  const air = textBox(textsOf(scene.children).find(({ text }) => text === 'air outside')!);
  const curve = scene.children.find((node) => node.kind === 'group' && node.name === 'ink curve')!;
  const numbers = JSON.stringify(curve)
    .match(/"d":"([^"]*)"/)![1]!
    .match(/-?\d+(\.\d+)?/g)!
    .map(Number);
  const points = Array.from({ length: numbers.length / 2 }, (_, k) => numbers.slice(2 * k, 2 * k + 2));
  const over = points.filter(
    ([x, y]) => x! > air.x && x! < air.x + air.width && y! > air.y && y! < air.y + air.height,
  );
  expect(points.length).toBeGreaterThan(5);
  expect(over).toEqual([]);
});

test('a cell that is told nowhere has its reason in the table', () => {
  const note = (over: Partial<FlowField>) =>
    flowRows(field(over)).find(({ quantity }) => quantity === 'wholeFlow.cell');
  expect(note({ byLaw: { machDisk: 0.5, cellLength: 0.3 } })!.note).toContain('where a law puts a Mach disk');
  expect(note({ form: 'plug', byLaw: { machDisk: null, cellLength: null } })!.note).toContain(
    'no law has cells',
  );
  const byLaw = { machDisk: null, cellLength: 0.3 };
  expect(note({ byLaw })!.note).toBe('not seen between the shock and 0.60 m behind the lip');
  expect(note({ byLaw, firstCell: 0.45 })).toMatchObject({ value: 0.45 });
  expect(note({ byLaw, firstCell: 0.45 })!.note).toBeUndefined();
});

test('a field along its axis and its wall, cell by cell', () => {
  const [axis, wall] = fieldAlong(
    field({
      axisBlock: 1,
      blocks: [block([3e5, 1e5]), block([5e4, 2e4])],
      walls: [{ kind: 'wall', line: [], side: { block: 0, row: 4, from: 0, to: 2 } }],
    }),
  );
  expect(axis!.line).toBe('axis');
  expect(axis!.points.map(({ pressure }) => pressure)).toEqual([3e5, 1e5, 5e4, 2e4]);
  expect(wall!.line).toBe('wall');
  expect(wall!.points.map(({ axial }) => Number(axial.toFixed(6)))).toEqual([0.05, 0.15]);
  expect(wall!.points.map(({ speed }) => speed)).toEqual([2000, 2000]);
});

test('at a wall the gas is told on it, half a cell beyond the middle of the last', () => {
  // Exactly where it falls by the same share from cell to cell; where it turns, that of the cell itself.
  expect(atWall(8e5, 4e5, 2e5)).toBeCloseTo(8e5 * Math.SQRT2, 6);
  expect(atWall(8e5, 4e5, 6e5)).toBe(8e5);
  expect(atWall(0, 10, 20)).toBe(0);
});

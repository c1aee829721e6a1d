import { describe, expect, test } from 'vitest';
import { editStudy, readStudy } from '../../src/study/index.ts';
import type { EngineInput } from '../../src/study/model.ts';

const engine = `    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }
    chamber: { pressure: 100 bar, efficiency: 97.5 % }
    size: { throat: 235 mm }
    nozzle: { kind: bell, areaRatio: 25 }
`;

function study(published: string, body = engine, rest = ''): string {
  return `plumeline: 1
question: Do they fit?
engines:
  bell:
${body}    published:${published}
${rest}sources:
  leaflet: { title: Leaflet of invented engines }
`;
}

function enginesOf(text: string): readonly EngineInput[] {
  const outcome = readStudy(text);
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what }) => what).join('\n'));
  return outcome.study.engines;
}

const told = (text: string): readonly string[] => {
  const outcome = readStudy(text);
  return outcome.ok ? [] : outcome.problems.map(({ code, path }) => `${code} ${path}`);
};

const good = `
      - { quantity: thrust, value: 812 ± 4 kN, at: vacuum, source: leaflet } # from the cover
      - { quantity: seaLevel.specificImpulse, value: 3000 m/s, source: a talk given in 1961 }
      - { quantity: chamber.pressure, value: 1450 psi, source: leaflet }`;

describe('published figures of an engine', () => {
  test('are read with value, ±, digits, place and source', () => {
    const [bell] = enginesOf(study(good));
    const [thrust, impulse, pressure] = bell!.published!.rows;
    expect(thrust).toMatchObject({
      quantity: 'thrust',
      value: { value: 812e3, plusMinus: 4e3, text: '812 ± 4 kN' },
      rounding: 500,
      at: { kind: 'vacuum' },
      source: { key: 'leaflet' },
      path: 'engines.bell.published[0]',
    });
    // A speed over standard gravity, 9.80665 m/s² exactly.
    expect(impulse!.value.value).toBeCloseTo(3000 / 9.80665, 10);
    expect(impulse!.rounding).toBeCloseTo(5 / 9.80665, 10);
    expect(impulse).toMatchObject({
      quantity: 'specificImpulse',
      at: { kind: 'altitude', altitude: { value: 0 } },
      source: { words: 'a talk given in 1961' },
    });
    expect(pressure).toMatchObject({ quantity: 'chamber.pressure', at: null });
  });

  test('may stand under rows, beside solveFor', () => {
    const [bell] = enginesOf(study(`\n      solveFor: areaRatio\n      rows:${good.replace(/^/gm, '  ')}`));
    expect(bell!.published!.rows).toHaveLength(3);
    expect(bell!.published!.solveFor).toMatchObject({ input: 'areaRatio', stated: true });
  });

  const solving = (input: string): string =>
    ` { solveFor: ${input}, rows: [{ quantity: massFlow, value: 240 kg/s, source: leaflet }] }`;

  test.each([
    ['areaRatio', engine.replace(', areaRatio: 25', '')],
    ['chamberPressure', engine.replace('pressure: 100 bar, ', '')],
    ['chamberPressure', engine.replace(/ {4}chamber.*\n/, '')],
    ['efficiency', engine.replace(', efficiency: 97.5 %', '')],
    ['throatDiameter', engine.replace(/ {4}size.*\n/, '')],
    ['massFlow', engine.replace(/ {4}size.*\n/, '')],
  ])('let the engine leave out %s', (input, body) => {
    const outcome = readStudy(study(solving(input), body));
    if (!outcome.ok) throw new Error(outcome.problems[0]?.what);
    expect(outcome.study.engines[0]!.published!.solveFor).toMatchObject({ input, stated: false });
    // Of efficiency that is left to the rows nothing is said; a chamber left out whole states none.
    const warned = outcome.warnings.map(({ code }) => code);
    expect(warned).toEqual(body.includes('chamber') ? [] : ['efficiency-not-stated']);
  });

  test('are not inherited, and nor is what they settle', () => {
    const wide = '  wide:\n    like: bell\n    nozzle: { areaRatio: 60 }\n';
    const [, derived] = enginesOf(study(good, engine, wide));
    expect(derived!.published).toBeNull();
    const left = engine.replace(', areaRatio: 25', '');
    expect(told(study(solving('areaRatio'), left, '  other:\n    like: bell\n    name: Other\n'))).toEqual([
      'settled-input-not-inherited engines.other',
    ]);
    expect(enginesOf(study(solving('areaRatio'), left, wide))[1]!.nozzle.areaRatio.value).toBe(60);
  });

  const row = (text: string): string => `\n      - { ${text} }`;
  const place = 'engines.bell.published[0]';
  test.each([
    ['nothing', '', 'value-missing engines.bell.published'],
    ['an empty list', ' []', 'value-missing engines.bell.published'],
    ['a word', ' thrust', 'value-of-other-form engines.bell.published'],
    ['an item that is no map', '\n      - thrust', `value-of-other-form ${place}`],
    ['no quantity', row('value: 1 kN, at: vacuum, source: leaflet'), `key-missing ${place}.quantity`],
    ['no value', row('quantity: thrust, at: vacuum, source: leaflet'), `key-missing ${place}.value`],
    ['no place', row('quantity: thrust, value: 1 kN, source: leaflet'), `key-missing ${place}.at`],
    ['no source', row('quantity: thrust, value: 1 kN, at: vacuum'), `key-missing ${place}.source`],
    [
      'an unknown key',
      row('quantity: thrust, value: 1 kN, at: vacuum, source: leaflet, by: me'),
      `key-unknown ${place}.by`,
    ],
    [
      'an unknown quantity',
      row('quantity: isp, value: 300 s, at: vacuum, source: leaflet'),
      `published-quantity-unknown ${place}.quantity`,
    ],
    [
      'a unit of another kind',
      row('quantity: thrust, value: 1 kg, at: vacuum, source: leaflet'),
      `unit-of-other-kind ${place}.value`,
    ],
    [
      'a value that is not positive',
      row('quantity: thrust, value: 0 kN, at: vacuum, source: leaflet'),
      `value-out-of-range ${place}.value`,
    ],
    [
      'a place where it means nothing',
      row('quantity: massFlow, value: 1 kg/s, at: vacuum, source: leaflet'),
      `published-place-without-meaning ${place}.at`,
    ],
    [
      'a place said twice',
      row('quantity: vacuum.thrust, value: 1 kN, at: vacuum, source: leaflet'),
      `published-place-without-meaning ${place}.at`,
    ],
    [
      'a place that is none',
      row('quantity: thrust, value: 1 kN, at: the moon, source: leaflet'),
      `place-unknown ${place}.at`,
    ],
    [
      'a source that is not in the study',
      row('quantity: thrust, value: 1 kN, at: vacuum, source: leaflett'),
      `source-unknown ${place}.source`,
    ],
    ['rows that are missing', ' { solveFor: areaRatio }', 'key-missing engines.bell.published.rows'],
    ['an input that cannot be settled', solving('length'), 'word-unknown engines.bell.published.solveFor'],
  ])('%s is told', (_, published, problem) => {
    expect(told(study(published))).toEqual([problem]);
  });

  test('a symbol of the trade leads to the name', () => {
    const outcome = readStudy(study(row('quantity: Isp, value: 300 s, at: vacuum, source: leaflet')));
    expect(outcome.ok ? '' : outcome.problems[0]!.mend).toMatch(/^Did you mean specificImpulse\?/);
  });

  test('an edit and its undoing leave every byte, comments included', () => {
    const text = study(good);
    const path = ['engines', 'bell', 'published', 0, 'value'];
    const edited = editStudy(text, [{ path, value: '815 ± 4 kN' }]);
    expect(edited).toBe(text.replace('812 ± 4 kN', '815 ± 4 kN'));
    expect(editStudy(edited, [{ path, value: '812 ± 4 kN' }])).toBe(text);
    const elsewhere = editStudy(text, [{ path: ['engines', 'bell', 'nozzle', 'areaRatio'], value: '30' }]);
    expect(elsewhere).toContain('# from the cover');
    expect(editStudy(elsewhere, [{ path: ['engines', 'bell', 'nozzle', 'areaRatio'], value: '25' }])).toBe(
      text,
    );
    expect(() => editStudy(text, [{ path, value: '815 bar' }])).toThrow(/force/);
  });
});

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { CAUTION } from '../../../src/answer/caution.ts';
import type { CheckAnswer } from '../../../src/answer/sentences/index.ts';
import { visibleLength } from '../../../src/faces/cli/text/wrap.ts';
import { runMain } from './runMain.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-check-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));
const example = fileURLToPath(new URL('../../../examples/alder-booster', import.meta.url));

/** Perfect gas through an ideal nozzle: thrust in vacuum above thrust at the pad, whatever the numbers. */
function studyFolder(name: string, sentences: string, pressure = '70 bar'): string {
  const folder = join(place, name);
  mkdirSync(folder);
  writeFileSync(
    join(folder, 'study.yaml'),
    `plumeline: 1
question: Which?
engines:
  cold: { propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 300 K }, chamber: { pressure: ${pressure}, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 } }
sentences:
${sentences}
`,
  );
  return folder;
}

const good =
  '  - { id: grows, say: It pushes harder in vacuum., holds: cold.thrust(vacuum) > cold.thrust(0 km) }';
const wrong = '{ id: falls, say: It pushes less in vacuum., holds: cold.thrust(vacuum) < cold.thrust(0 km)';
const words = ({ out }: { readonly out: string }): string => out.replace(/\s+/g, ' ');

describe('plumeline check', () => {
  test('nothing fails: exit 0, words, numbers, the caution last, within the width', async () => {
    const ran = await runMain(['check', studyFolder('good', good)]);
    expect(ran.status).toBe(0);
    expect(words(ran)).toMatch(
      /safe to say 100 % grows “It pushes harder in vacuum\.” Numbers The thrust of cold in vacuum is/,
    );
    expect(words(ran)).toContain('1 safe to say. Nothing that is said fails.');
    expect(words(ran).endsWith(CAUTION.replace(/\s+/g, ' '))).toBe(true);
    for (const line of ran.out.split('\n')) expect(visibleLength(line)).toBeLessThanOrEqual(100);
  });

  test('a said sentence that fails: exit 1, with what is true instead; kept ones do not count', async () => {
    const said = await runMain(['check', studyFolder('said', `  - ${wrong} }`)]);
    expect(said.status).toBe(1);
    expect(words(said)).toMatch(
      /don’t say 0 % falls .* Instead The thrust of cold in vacuum is .* more than that at the pad/,
    );
    expect(words(said)).toContain('Said, but fails: falls.');
    const kept = await runMain(['check', studyFolder('kept', `  - ${wrong}, said: false }`)]);
    expect(kept.status).toBe(0);
    expect(kept.out).toContain('(kept, not said)');
  });

  test('a test that cannot be read: exit 1, with the reason', async () => {
    const ran = await runMain([
      'check',
      studyFolder('unread', '  - { id: odd, say: So., holds: cold.thrust(vacuum) > 3 bar }'),
    ]);
    expect(ran.status).toBe(1);
    expect(words(ran)).toMatch(
      /^Which\? Verdict Holds in Sentence test cannot be read odd .* cannot be read: .*force.*pressure/,
    );
    // Line 6 of the file; the test begins behind `  - { id: odd, say: So., holds: `.
    expect(words(ran)).toContain('Where line 6, column 33: “cold.thrust(vacuum) > 3 bar”');
    expect(words(ran)).toContain('1 test cannot be read. Said, but fails: odd.');
  });

  test('a test of an analogy that cannot be read: in its own words, with its place', async () => {
    const analogy = (leg: string, breaks: string): string => `${good}
analogies:
  - { id: kick, say: Like a kick., stands: [{ this: foot, for: gas }], holdsFor: a nozzle,
      legs: [{ say: It kicks harder., holds: ${leg} }],
      breaksWhere: [{ say: on ice, when: ${breaks} }] }`;
    const fine = 'cold.thrust(vacuum) > 1 N';
    const leg = await runMain(['check', studyFolder('leg', analogy('cold.thrust(vacuum) > 3 bar', fine))]);
    expect(leg.status).toBe(1);
    expect(words(leg)).toMatch(/cannot be checked analogy kick/);
    expect(words(leg)).toContain('Where line 9, column 46: “cold.thrust(vacuum) > 3 bar”');
    const breaks = await runMain(['check', studyFolder('break', analogy(fine, 'cold.thrust(0 km) > 3 bar'))]);
    expect(words(breaks)).toContain('Where line 10, column 42: “cold.thrust(0 km) > 3 bar”');
  });

  test('a reason that no part of the test looks at is told beside a green verdict', async () => {
    const because = good.replace('in vacuum.', 'in vacuum because its flame is hotter there.');
    const ran = await runMain(['check', studyFolder('because', because)]);
    expect(ran.status).toBe(0);
    expect(words(ran)).toMatch(
      /safe to say 100 % grows .* Reason The reason is not tested: “because its flame is hotter there”/,
    );
  });

  test('JSON of a fixed form, that --before reads back: which verdicts changed', async () => {
    const limit = '  - { id: hard, say: It pushes hard., holds: cold.thrust(vacuum) > 80 kN }';
    const before = await runMain(['check', studyFolder('before', limit), '--json']);
    const found = JSON.parse(before.out) as CheckAnswer;
    expect(found).toMatchObject({ format: 'plumeline check 1', caution: CAUTION });
    expect(found.sentences[0]).toMatchObject({ id: 'hard', verdict: 'safe to say', share: 1 });
    expect(found.sentences[0]!.numbers[0]).toMatchObject({ quantity: 'thrust' });
    const file = join(place, 'before.json');
    writeFileSync(file, before.out);
    // Half the pressure, half the thrust.
    const after = await runMain(['check', studyFolder('after', limit, '35 bar'), '--before', file]);
    expect(after.status).toBe(1);
    expect(words(after)).toContain('Changed since the earlier check - hard: safe to say → don’t say');
    const again = await runMain(['check', join(place, 'before'), '--before', file]);
    expect(again.out).toContain('No verdict has changed.');
  });

  test('analogies and reported facts are checked beside the sentences; a said one that fails counts', async () => {
    const analogy = (holds: string, rest = ''): string => `${good}
facts: [{ id: ran, say: It ran once., sources: [log] }]
sources: { log: { title: The log of the invented bench } }
analogies:
  - { id: kick${rest}, say: Like a kick., stands: [{ this: foot, for: gas }], legs: [{ say: It kicks harder out there., holds: ${holds} }], holdsFor: a nozzle, breaksWhere: [on ice] }`;
    const right = await runMain([
      'check',
      studyFolder('likeness', analogy('cold.thrust(vacuum) > cold.thrust(0 km)')),
    ]);
    expect(right.status).toBe(0);
    expect(words(right)).toMatch(/reported ran .*Source \[log\] The log of the invented bench/);
    expect(words(right)).toMatch(/safe to say analogy kick .*“It kicks harder out there\.” – right\./);
    expect(words(right)).toContain('2 safe to say, 1 reported.');
    const falls = 'cold.thrust(vacuum) < cold.thrust(0 km)';
    const wrongOne = await runMain(['check', studyFolder('likeness-wrong', analogy(falls)), '--json']);
    expect(wrongOne.status).toBe(1);
    expect(JSON.parse(wrongOne.out)).toMatchObject({
      facts: [{ id: 'ran', verdict: 'reported' }],
      analogies: [{ id: 'kick', verdict: 'don’t say', legs: [{ verdict: 'wrong' }] }],
    });
    const kept = await runMain(['check', studyFolder('likeness-kept', analogy(falls, ', said: false'))]);
    expect(kept.status).toBe(0);
  });

  test('--before compares analogies as well', async () => {
    const likeness = (holds: string): string => `${good}
analogies:
  - { id: kick, say: Like a kick., stands: [{ this: foot, for: gas }], legs: [{ say: It kicks harder out there., holds: ${holds} }], holdsFor: a nozzle, breaksWhere: [on ice] }`;
    const rises = 'cold.thrust(vacuum) > cold.thrust(0 km)';
    const before = await runMain(['check', studyFolder('kick-before', likeness(rises)), '--json']);
    const file = join(place, 'kick.json');
    writeFileSync(file, before.out);
    const folder = studyFolder('kick-after', likeness('cold.thrust(vacuum) < cold.thrust(0 km)'));
    const after = await runMain(['check', folder, '--before', file]);
    expect(words(after)).toContain('Changed since the earlier check - analogy kick: safe to say → don’t say');
    const json = await runMain(['check', folder, '--before', file, '--json']);
    expect(JSON.parse(json.out)).toMatchObject({
      changed: [],
      changedAnalogies: [{ id: 'kick', before: 'safe to say', after: 'don’t say' }],
    });
    const old = JSON.parse(before.out) as Record<string, unknown>;
    writeFileSync(file, JSON.stringify({ format: old['format'], sentences: old['sentences'] }));
    expect((await runMain(['check', folder, '--before', file])).out).toContain('No verdict has changed.');
    writeFileSync(file, JSON.stringify({ ...old, analogies: [{ id: 3 }] }));
    expect((await runMain(['check', folder, '--before', file])).status).toBe(2);
  });

  test('bad input: exit 2', async () => {
    const folder = studyFolder('any', good);
    expect((await runMain(['check', join(place, 'nowhere')])).status).toBe(2);
    expect((await runMain(['check', folder, '--before', join(place, 'none.json')])).status).toBe(2);
    const other = join(place, 'other.json');
    writeFileSync(other, '{"format":"something else"}');
    const ran = await runMain(['check', folder, '--before', other]);
    expect(ran.status).toBe(2);
    expect(ran.err).toContain('is no check of sentences');
    expect(
      (await runMain(['check', studyFolder('said-odd', '  - { id: a, say: b, said: perhaps }')])).status,
    ).toBe(2);
  });

  test('the example: true, open and false sentences; flip points; conditions', {
    timeout: 120_000,
  }, async () => {
    const ran = await runMain(['check', example, '--json']);
    expect(ran.status).toBe(0);
    const { sentences } = JSON.parse(ran.out) as CheckAnswer;
    const verdict = Object.fromEntries(sentences.map((one) => [one.id, one.verdict]));
    expect(verdict).toMatchObject({
      'on-the-way': 'safe to say',
      'bell-runs-full': 'safe to say',
      'a-bound': 'safe to say',
      'pad-gain': 'say with care',
      'always-better': 'don’t say',
    });
    const full = sentences.find(({ id }) => id === 'bell-runs-full')!;
    expect(full.alternatives.length).toBeGreaterThan(3);
    expect(full.conditions.join(' ')).toMatch(/Engines: Alder B\. Surroundings: at the pad\./);
    expect(full.flips[0]!.input).toMatch(/chamber\.pressure|areaRatio/);
    for (const one of sentences.filter(({ verdict: is }) => is !== 'not checked')) {
      expect(one.numbers.length, one.id).toBeGreaterThan(0);
      expect(one.wording ?? one.instead, one.id).not.toBeNull();
      expect(one.sources.length, one.id).toBeGreaterThan(0);
    }
  });
});

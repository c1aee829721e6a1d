import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { runMain } from './runMain.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-review-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

const study = (areaRatio: number, say = 'It pushes harder in vacuum.'): string => `plumeline: 1
question: Which <script>alert(1)</script> pushes harder?
engines:
  cold: { propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 300 K }, chamber: { pressure: 70 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: ${areaRatio} } }
sentences:
  - { id: grows, say: ${say}, holds: cold.thrust(vacuum) > cold.thrust(0 km) }
  - { id: falls, say: It pushes less., said: false, holds: cold.thrust(vacuum) < cold.thrust(0 km) }
facts:
  - { id: first, say: It was the first of its kind., sources: [leaflet] }
sources:
  leaflet: { title: A leaflet, year: 1961, where: in print }
`;
const folder = (name: string): string => {
  const at = join(place, name);
  mkdirSync(at);
  writeFileSync(join(at, 'study.yaml'), study(10));
  return at;
};
const words = ({ out }: { readonly out: string }): string => out.replace(/\s+/g, ' ');

describe('plumeline review', () => {
  test('signs, stands, and is void after a change of what was reviewed: told by check and by the fact sheet', async () => {
    const at = folder('whole');
    const signed = await runMain(['review', at, '--by', 'J. Doe', '--date', '2026-11-26']);
    expect(signed.status).toBe(0);
    expect(words(signed)).toContain('3 signed by J. Doe on 2026-11-26');
    const file = readFileSync(join(at, 'review.yaml'), 'utf8');
    expect(file).toContain('safe to say');

    const standing = await runMain(['check', at]);
    expect(words(standing)).toContain(
      'Reviewed, and unchanged since: grows (J. Doe, 2026-11-26), falls (J. Doe, 2026-11-26), first (J. Doe, 2026-11-26).',
    );

    writeFileSync(join(at, 'study.yaml'), study(10, 'It pushes much harder in vacuum.'));
    const voided = await runMain(['check', at, '--json']);
    const { reviews } = JSON.parse(voided.out) as {
      reviews: { id: string; stands: boolean; changed: string[] }[];
    };
    expect(reviews.filter(({ stands }) => !stands).map(({ id }) => id)).toEqual(['grows']);
    expect(reviews[0]!.changed).toEqual(['the words were “It pushes harder in vacuum.”']);

    const packed = join(place, 'package');
    expect((await runMain(['pack', at, '--out', packed])).status).toBe(0);
    const sheet = JSON.parse(readFileSync(join(packed, 'fact-sheet.json'), 'utf8'));
    expect(sheet.date).toBe('2026-11-26');
    expect(sheet.items.map(({ id }: { id: string }) => id)).toEqual(['grows', 'falls', 'first']);
    expect(sheet.items[0].signOffs[0].words).toMatch(/void since a later change: the words were/);
    const page = readFileSync(join(packed, 'fact-sheet.html'), 'utf8');
    expect(page).toMatch(/2 of 3 by J\. Doe \(2026-11-26\); 1 sign-off is void since a later change/);
    expect(page).not.toContain('<script');
    expect(page).toContain('cold.thrust(vacuum) &gt; cold.thrust(0 km)');

    // The day of the package is an input: the same study, the same bytes, wherever it lies.
    const again = join(place, 'elsewhere', 'again');
    mkdirSync(join(place, 'elsewhere'));
    expect((await runMain(['pack', at, '--out', again])).status).toBe(0);
    expect(readFileSync(join(again, 'manifest.json'), 'utf8')).toBe(
      readFileSync(join(packed, 'manifest.json'), 'utf8'),
    );
  });

  test('a number that changes as spoken voids it too', async () => {
    const at = folder('number');
    await runMain(['review', at, '--by', 'A', '--sentences', 'grows', '--date', '2026-11-26']);
    writeFileSync(join(at, 'study.yaml'), study(20));
    expect(words(await runMain(['check', at]))).toMatch(
      /grows: Reviewed by A on 2026-11-26; void since .*no longer so: cold\.thrust/,
    );
  });

  test('the script is signed with its numbers as they read, and an edit of its words voids that', async () => {
    const at = folder('script');
    const script = (words: string): void =>
      writeFileSync(
        join(at, 'script.md'),
        `# A film\n\n${words} {{cold.thrust(vacuum)}}. {#one}\n\nAnd that is it. {#two}\n`,
      );
    script('It pushes with');
    const signed = await runMain([
      ...['review', at, '--by', 'J. Doe', '--sentences', 'script.md', '--date', '2026-11-26'],
    ]);
    expect(words(signed)).toContain('script.md: 2 lines. “A film” 1 signed by J. Doe');
    const standing = 'Reviewed, and unchanged since: script.md (J. Doe, 2026-11-26).';
    expect(words(await runMain(['check', at]))).toContain(standing);

    script('It pushes hard, with');
    const voided = words(await runMain(['check', at]));
    expect(voided).toMatch(/script\.md: Reviewed by J\. Doe on 2026-11-26; void since a later change/);
    expect(voided).toMatch(/no longer so: one: It pushes with [\d.]+ kN\.; now: one: It pushes hard, with/);
    const packed = join(place, 'script-package');
    expect((await runMain(['pack', at, '--out', packed])).status).toBe(0);
    const sheet = JSON.parse(readFileSync(join(packed, 'fact-sheet.json'), 'utf8'));
    expect(sheet.script.signOffs[0].stands).toBe(false);
    expect(readFileSync(join(packed, 'fact-sheet.html'), 'utf8')).toMatch(
      /“A film”, 2 lines\. Reviewed by J\. Doe on 2026-11-26; void since/,
    );

    // The words as they were, another number: void too.
    script('It pushes with');
    expect(words(await runMain(['check', at]))).toContain(standing);
    writeFileSync(join(at, 'study.yaml'), study(20));
    expect(words(await runMain(['check', at]))).toMatch(/void since .*no longer so: one: It pushes with/);
  });

  test('a stranger’s id, an odd day and an unreadable file end it in words', async () => {
    const at = folder('odd');
    const unknown = await runMain(['review', at, '--by', 'A', '--sentences', 'grow']);
    expect(unknown.status).toBe(2);
    expect(unknown.err).toMatch(/Did you mean grows\?/);
    expect((await runMain(['review', at, '--by', 'A', '--date', 'today'])).err).toMatch(/no day/);
    writeFileSync(join(at, 'review.yaml'), 'mine');
    const unread = await runMain(['review', at, '--by', 'A']);
    expect(unread.status).toBe(2);
    expect(readFileSync(join(at, 'review.yaml'), 'utf8')).toBe('mine');
  });
});

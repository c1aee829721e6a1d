import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { afterAll, describe, expect, test } from 'vitest';
import { readScript } from '../../../src/study/script/index.ts';
import { resolveScript } from '../../../src/telling/script/index.ts';
import { timeScript } from '../../../src/telling/time/timeScript.ts';
import { scriptTimeline } from '../../../src/telling/timeline/scriptTimeline.ts';
import { otioSchema } from './otioSchema.ts';

const evil = '</script><script>a</script> \u202e "quoted" {% x %}';
const text = `# A film

## First {#one}

> cut-in-vacuum, both

Here are two engines, and they burn the same. {#two says=known}

> outlines of both engines

> cut-in-vacuum, beside them

The second line has seven words only. {#seven pause=1.5s}

## ${evil} {#odd}

Nothing is shown here, and nothing is checked. {#last}
`;
const { script, problems } = readScript(text, { sentences: ['known'] });
const resolved = resolveScript(script, new Map());
const timed = timeScript(script, () => ({ written: '', said: '', value: null, dimension: null }));
const written = scriptTimeline({
  name: 'A film',
  caution: 'Caution.',
  resolved,
  timed,
  mediaOf: (scene, { words }) =>
    scene !== 'one'
      ? null
      : words.startsWith('outlines')
        ? { file: 'clips/01-one-outlines', frames: 90 }
        : words === 'cut-in-vacuum, both' || words === 'cut-in-vacuum, beside them'
          ? { file: 'scenes/01-one-cut-in-vacuum.png', frames: null }
          : null,
  verdicts: new Map([['known', 'safe to say']]),
});

const place = mkdtempSync(join(tmpdir(), 'plumeline-otio-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

interface Told {
  readonly seconds: number;
  readonly tracks: readonly {
    readonly kind: string;
    readonly clips: readonly {
      readonly name: string;
      readonly start: number;
      readonly seconds: number;
      readonly media: string | null;
      readonly missing: boolean;
      readonly pictures: { readonly first: string; readonly last: string; readonly count: number } | null;
      readonly markers: readonly {
        name: string;
        colour: string;
        start: number;
        seconds: number;
        comment: string;
      }[];
    }[];
  }[];
}

/** What the reference library finds; a reason where there is no Python, or no such library in it. */
function byReference(): Told | string {
  const path = join(place, 'timeline.otio');
  writeFileSync(path, written);
  const reader = fileURLToPath(new URL('./readTimeline.py', import.meta.url));
  try {
    return JSON.parse(
      execFileSync(process.env.OTIO_PYTHON ?? 'python3', [reader, path], {
        encoding: 'utf8',
        stdio: ['ignore', 'pipe', 'pipe'],
      }),
    ) as Told;
  } catch (error) {
    const {
      status = null,
      code = '',
      stderr = '',
    } = error as { status?: number | null; code?: string; stderr?: string };
    if (status === 3) return 'this Python has no opentimelineio';
    if (code === 'ENOENT') return 'there is no Python here';
    throw new Error(stderr || String(error));
  }
}

describe('the timeline', () => {
  test('reads without problems, and keeps the rules of its published schemas', () => {
    // The reader itself leaves tags and hidden signs out, and says so.
    expect(problems.filter(({ code }) => code !== 'not-said' && code !== 'hidden-sign')).toEqual([]);
    const validate = new Ajv({ strict: true, allowUnionTypes: true }).compile(otioSchema);
    validate(JSON.parse(written));
    expect(validate.errors).toBeNull();
    const bent = JSON.parse(written) as { tracks: { children: { kind: string }[] } };
    bent.tracks.children[0]!.kind = 'Pictures';
    expect(validate(bent)).toBe(false);
  });

  test('its tracks last as long as the script, in whole frames; lines are marked where they are said', () => {
    const { tracks } = JSON.parse(written);
    const lengths = tracks.children.map(
      (track: { children: { source_range: { duration: { value: number } } }[] }) =>
        track.children.reduce((sum, { source_range }) => sum + source_range.duration.value, 0),
    );
    // Tenths of a second are three frames of thirty.
    expect(tracks.children.map(({ name }: { name: string }) => name)).toEqual([
      'Pictures',
      'Pictures 2',
      'Voice',
    ]);
    expect(lengths).toEqual(Array.from({ length: 3 }, () => Math.round(timed.seconds * 30)));
    expect(JSON.stringify(tracks)).not.toContain('\u202e');
  });

  const found = byReference();
  test.skipIf(typeof found === 'string')(
    `the reference library opens it and finds the same${typeof found === 'string' ? `: not run, ${found}` : ''}`,
    () => {
      const { seconds, tracks } = found as Told;
      expect(seconds).toBeCloseTo(timed.seconds, 9);
      const [pictures, above, voice] = tracks;
      expect([pictures!.kind, above!.kind, voice!.kind]).toEqual(['Video', 'Video', 'Audio']);
      // What is shown beside the outlines lies on a track above them, at the same time.
      expect(above!.clips.map(({ media }) => media)).toEqual(['scenes/01-one-cut-in-vacuum.png']);
      expect(above!.clips[0]!.start).toBeCloseTo(pictures!.clips[1]!.start, 9);
      expect(pictures!.clips.map(({ media, missing }) => [media, missing])).toEqual([
        ['scenes/01-one-cut-in-vacuum.png', false],
        ['clips/01-one-outlines/', false],
        [null, true],
      ]);
      expect(pictures!.clips.map(({ pictures: numbered }) => numbered)).toEqual([
        null,
        { first: 'clips/01-one-outlines/00000.png', last: 'clips/01-one-outlines/00089.png', count: 90 },
        null,
      ]);
      const [one, odd] = voice!.clips;
      expect(one!.seconds).toBeCloseTo(timed.scenes[0]!.seconds, 9);
      expect(odd!.start).toBeCloseTo(timed.scenes[1]!.start, 9);
      const [two, seven] = one!.markers;
      expect(two).toMatchObject({ name: 'two: safe to say', colour: 'GREEN', start: 0 });
      expect(two!.comment).toBe('Here are two engines, and they burn the same.');
      // Seven words at 140 a minute take 3.0 s, and 1.5 s of silence follow.
      expect(seven!.seconds).toBeCloseTo(4.5, 9);
      expect(seven!.start).toBeCloseTo(timed.scenes[0]!.lines[1]!.start, 9);
    },
  );
});

/** A package with a script: clips, timelines, pages to read from; a small study, so that it is quick. */

import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { CAUTION } from '../../../src/answer/caution.ts';
import { gatherMaterials } from '../../../src/answer/materials.ts';
import { solveStudyLive } from '../../../src/answer/solve.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { type ClipSubject, type PackedClips, packClips } from '../../../src/faces/package/packClips.ts';
import type { PackInput } from '../../../src/faces/package/packInput.ts';
import { type PackedStudy, packStudy } from '../../../src/faces/package/packStudy.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';
import { CAUTION_SHORT } from '../../../src/telling/caution.ts';
import { NOTHING_SWEPT } from '../../../src/telling/figures/sweptFigures.ts';
import { readScriptOf, tellScript } from '../../../src/telling/script/index.ts';
import { buildFilmPageIfOlder } from '../../browser/built.ts';

const text = `plumeline: 1
question: Which?
engines:
  cold:
    name: Cold
    propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 300 K }
    chamber: { pressure: 70 bar, efficiency: 100 % }
    size: { throat: 100 mm }
    nozzle: { kind: ideal, areaRatio: 10 }
package: { shapes: [print, 9:16] }
`;
const evil = '</script><img src=x onerror=alert(1)> \u202e [x](javascript:alert) =cmd';
const script = `---
cuts:
  short: { length: 10 s, keep: [thrust] }
---

# A film ${evil}

## First ${evil} {#one}

> cut-climb from 10 km to vacuum, ${evil}

It climbs. {#climb weight=0}

## Second {#two}

> thrust, over altitude

It pushes with {{cold.thrust(pad)}}. ${evil} {#thrust}
`;

let place: string;
let subject: ClipSubject;
let input: PackInput;
let filmed: PackedClips;
let packed: PackedStudy;

beforeAll(async () => {
  buildFilmPageIfOlder();
  place = await mkdtemp(join(tmpdir(), 'plumeline-pack-script-'));
  const shelf = openDataShelf();
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) throw new Error(outcome.problems.map(({ what }) => what).join(' '));
  const { study } = outcome;
  const solved = await solveStudyLive(study, shelf, { version: '0.0.0' });
  const read = readScriptOf(script, study);
  const told = await tellScript(study, read, await localCrew(study, shelf));
  const materials = await gatherMaterials(study.engines, shelf);
  subject = { study, solved, swept: NOTHING_SWEPT, script: { read, text: script, told }, materials };
  filmed = await packClips(subject);
  const { clips } = filmed;
  input = {
    study,
    text,
    solved,
    sentences: [],
    analogies: [],
    comparison: null,
    script: subject.script,
    clips,
  };
  packed = await packStudy(input, join(place, 'one'));
}, 240_000);
afterAll(async () => {
  await filmed.discard();
  await rm(place, { recursive: true, force: true });
});

const file = async (name: string): Promise<string> =>
  (await readFile(join(packed.folder, ...name.split('/')))).toString();

interface Clip {
  readonly media_references: { readonly DEFAULT_MEDIA: { readonly target_url?: string } };
}

describe('a package with a script', () => {
  test('has the clip that the script shows, as long as it is shown, and its timeline refers to it', async () => {
    expect(filmed.notes).toEqual([]);
    expect(filmed.clips.map(({ file: name }) => name)).toEqual(['clips/01-one-cut-climb.mp4']);
    const { tracks } = JSON.parse(await file('timeline.otio'));
    const media = tracks.children[0].children.map(
      ({ media_references }: Clip) => media_references.DEFAULT_MEDIA.target_url ?? null,
    );
    expect(media).toEqual(['clips/01-one-cut-climb.mp4', 'scenes/02-two-thrust.png']);
    for (const name of media) expect(packed.files).toContain(name);
    expect(await file('clips/clips.csv')).toContain(CAUTION);
    const probe = spawnSync('ffprobe', [
      ...['-v', 'error', '-show_entries', 'stream=nb_frames,width,height', '-of', 'csv=p=0'],
      join(packed.folder, 'clips', '01-one-cut-climb.mp4'),
    ]);
    // Where there is no such reader, the film tests decode films by the browser.
    if (probe.status === 0)
      expect(probe.stdout.toString().trim()).toBe(`1920,1080,${filmed.clips[0]!.frameCount}`);
  });

  test('its manifest has the hash of the pictures of an MP4 film, and of all else the bytes', async () => {
    const { files } = JSON.parse(await file('manifest.json'));
    const [clip] = filmed.clips;
    expect(files['clips/01-one-cut-climb.mp4']).toEqual({
      frames: clip!.frameCount,
      framesSha256: clip!.framesDigest,
    });
    for (const name of packed.files.filter((each) => !/\.mp4$|^manifest/.test(each))) {
      const bytes = await readFile(join(packed.folder, ...name.split('/')));
      expect(files[name].sha256, name).toBe(createHash('sha256').update(bytes).digest('hex'));
    }
  });

  test('has its figures in the shapes that the study asks for', () => {
    const shapes = packed.files.flatMap((name) => /^figures\/thrust-(.*)\.svg$/.exec(name)?.[1] ?? []);
    expect(shapes).toEqual(['print', '9x16']);
  });

  test('has a page to read from for the whole and for each cut, with the numbers in it', async () => {
    for (const name of ['whole', 'cut-short']) {
      const page = await file(`script/${name}-reading.html`);
      expect(page).toMatch(/It pushes with \d+(?:\.\d+)?\u00a0kN\./);
      expect(page).toContain(CAUTION_SHORT.split(';')[0]);
    }
    expect(await file('script/cut-short-reading.html')).not.toContain('It climbs');
  });

  test('hostile words are words in every output', async () => {
    for (const name of packed.files.filter((each) => /\.(html|svg)$/.test(each))) {
      const content = await file(name);
      expect(content, name).not.toMatch(/<img|onerror=alert\(1\)>/i);
      expect(content, name).not.toContain('\u202e');
    }
    for (const name of packed.files.filter((each) => /\.(csv|vtt|srt|otio|txt|json)$/.test(each))) {
      const content = await file(name);
      expect(content, name).not.toContain('\u202e');
      if (name.endsWith('.csv')) expect(content, name).not.toMatch(/(^|,)"?=cmd/m);
    }
    for (const name of packed.files) expect(name).toMatch(/^[\w/.-]+$/);
    expect(packed.files.some((name) => name.includes('..'))).toBe(false);
  });
});

describe('clips', () => {
  test('stopped, they leave nothing behind', async () => {
    const before = (await readdir(tmpdir())).filter((name) => name.startsWith('plumeline-clips-'));
    const stop = new AbortController();
    const stopped = packClips(subject, {
      signal: stop.signal,
      onFrame: (_, done) => {
        if (done > 0) stop.abort(new Error('enough'));
      },
    });
    await expect(stopped).rejects.toThrow('enough');
    const after = (await readdir(tmpdir())).filter((name) => name.startsWith('plumeline-clips-'));
    expect(after.filter((name) => !before.includes(name))).toEqual([]);
  });

  test('without an encoder they are numbered pictures, which is told, and the timeline has them', async () => {
    vi.stubEnv('CHROME', '');
    vi.stubEnv('PATH', place);
    try {
      const { clips, notes, discard } = await packClips(subject);
      expect(notes).toEqual([expect.stringMatching(/No Chromium or Chrome was found.*numbered pictures/)]);
      const without = await packStudy({ ...input, clips }, join(place, 'without')).finally(
        () => void discard(),
      );
      const folder = 'clips/01-one-cut-climb';
      const laid = without.files.filter((name) => name.startsWith('clips/0'));
      const { frameCount } = clips[0]!;
      expect(frameCount).toBe(filmed.clips[0]!.frameCount);
      expect(laid).toEqual([
        ...Array.from({ length: frameCount }, (_, n) => `${folder}/${String(n).padStart(5, '0')}.png`),
        `${folder}/clip.json`,
      ]);
      expect((await readdir(join(without.folder, folder))).length).toBe(laid.length);
      const { files } = JSON.parse((await readFile(join(without.folder, 'manifest.json'))).toString());
      expect(Object.keys(files)).toEqual(expect.arrayContaining(laid));
      const timeline = JSON.parse((await readFile(join(without.folder, 'timeline.otio'))).toString());
      expect(timeline.tracks.children[0].children[0].media_references.DEFAULT_MEDIA).toMatchObject({
        OTIO_SCHEMA: 'ImageSequenceReference.1',
        target_url_base: `${folder}/`,
        available_range: { duration: { value: frameCount } },
      });
    } finally {
      vi.unstubAllEnvs();
    }
  });
});

/** Films as a browser and, where there is one, an outside reader find them. */

import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenedFilmPage, openFilmPage } from '../../../src/faces/film/filmPage.ts';
import { writeFilm } from '../../../src/faces/film/writeFilm.ts';
import { writeFrames } from '../../../src/faces/film/writeFrames.ts';
import {
  type Clip,
  clipOf,
  type FrameRate,
  flashMeter,
  frameRateOf,
  USUAL_TIMING,
} from '../../../src/telling/clips/index.ts';
import type { Scene, SceneNode } from '../../../src/telling/scene/scene.ts';
import { buildFilmPageIfOlder } from '../../browser/built.ts';

const [width, height] = [192, 128];
let place: string;
let opened: OpenedFilmPage;

beforeAll(async () => {
  buildFilmPageIfOlder();
  place = await mkdtemp(join(tmpdir(), 'plumeline-film-'));
  opened = await openFilmPage();
});
afterAll(async () => {
  await opened?.close();
  await rm(place, { recursive: true, force: true });
});

/** A disc that wanders over a ground, with a soft cloud and words. */
function sceneAt(share: number, transparent: boolean): Scene {
  const cloud: SceneNode = {
    kind: 'group',
    blur: { deviation: 8, x: 0, y: 0, width: 96, height },
    children: [{ kind: 'circle', x: 48, y: 64, radius: 30, fill: 'engine-1' }],
  };
  const disc: SceneNode = { kind: 'circle', x: 110 + 50 * share, y: 40, radius: 24, fill: 'engine-2' };
  const words: SceneNode = {
    kind: 'text',
    x: 150,
    y: 118,
    text: 'γ ≤ 12 km',
    size: 16,
    weight: 600,
    anchor: 'middle',
    fill: 'ink',
    halo: true,
  };
  return {
    width,
    height,
    title: 'test',
    description: 'test',
    theme: 'light',
    transparent,
    children: [cloud, words, disc],
  };
}

function clipWith(rate: FrameRate, transparent: boolean, at = sceneAt): Clip {
  const movement = {
    name: 'test',
    title: 'Test',
    description: 'test',
    notes: [],
    at: (share: number) => at(share, transparent),
  };
  return clipOf(movement, { ...USUAL_TIMING, rate, seconds: 1, holdFirst: 0.2, holdLast: 0.2 });
}

const digestOf = async (path: string): Promise<string> =>
  createHash('sha256')
    .update(await readFile(path))
    .digest('hex');
const hasProbe = spawnSync('ffprobe', ['-version']).status === 0;

function probed(path: string): Record<string, string> {
  const printed = execFileSync('ffprobe', [
    '-v',
    'error',
    '-count_frames',
    '-show_entries',
    'stream=codec_name,width,height,color_range,color_space,r_frame_rate,nb_read_frames:stream_tags=alpha_mode:format=duration',
    '-of',
    'default=nw=1',
    path,
  ]);
  return Object.fromEntries(
    printed
      .toString()
      .trim()
      .split('\n')
      .map((line) => line.split('=') as [string, string]),
  );
}

/** Pictures of a film at times [s], over a ground, as the browser's own player decodes them. */
async function decoded(page: Page, path: string, times: readonly number[], ground: string) {
  const given = {
    base64: (await readFile(path)).toString('base64'),
    times,
    ground,
    type: path.endsWith('mp4') ? 'video/mp4' : 'video/webm',
    /** [s] no film of these tests has longer ones */ frame: 1 / 20,
  };
  const { seconds, packed } = await page.evaluate(
    async ({ base64, times: wanted, ground: colour, type, frame }) => {
      const video = document.createElement('video');
      video.muted = true;
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      // A seek may be over before its picture is there.
      let shown = Number.NEGATIVE_INFINITY;
      const told: VideoFrameRequestCallback = (_now, { mediaTime }) => {
        shown = mediaTime;
        video.requestVideoFrameCallback(told);
      };
      video.requestVideoFrameCallback(told);
      video.src = URL.createObjectURL(new Blob([bytes], { type }));
      await new Promise((resolve, reject) => {
        video.onloadeddata = resolve;
        video.onerror = () => reject(new Error(video.error?.message));
      });
      const canvas = new OffscreenCanvas(video.videoWidth, video.videoHeight);
      const pen = canvas.getContext('2d')!;
      const pictures: string[] = [];
      for (const time of wanted) {
        const seeked = new Promise((resolve) => {
          video.onseeked = resolve;
        });
        video.currentTime = time;
        await seeked;
        for (let looks = 0; time - shown < -1e-3 || time - shown > frame; looks++) {
          if (looks > 500) throw new Error(`no picture of ${time} s, the last was of ${shown} s`);
          await new Promise((resolve) => setTimeout(resolve, 10));
        }
        pen.fillStyle = colour;
        pen.fillRect(0, 0, canvas.width, canvas.height);
        pen.drawImage(video, 0, 0);
        let letters = '';
        for (const byte of pen.getImageData(0, 0, canvas.width, canvas.height).data)
          letters += String.fromCharCode(byte);
        pictures.push(btoa(letters));
      }
      return { seconds: video.duration, packed: pictures };
    },
    given,
  );
  return { seconds, pictures: packed.map((one) => [...Buffer.from(one, 'base64')]) };
}

/** The picture as it should be, straight RGBA. */
async function drawnRgba(scene: Scene): Promise<Buffer> {
  const { theme, transparent } = scene;
  const order = { width, height, theme, transparent, rate: frameRateOf('25'), codec: 'vp9' as const };
  const base64 = await opened.page.evaluate(([first, step]) => globalThis.plumelineFilm.pixels(first, step), [
    order,
    scene.children,
  ] as const);
  return Buffer.from(base64, 'base64');
}

const meanDifference = (a: readonly number[], b: ArrayLike<number>): { mean: number; worst: number } => {
  let [sum, worst] = [0, 0];
  for (let i = 0; i < a.length; i++) {
    if (i % 4 === 3) continue;
    const apart = Math.abs(a[i]! - b[i]!);
    sum += apart;
    worst = Math.max(worst, apart);
  }
  return { mean: sum / (0.75 * a.length), worst };
};

describe('a film with alpha', () => {
  it('is the same bytes twice, has its tag, and its soft edges show no fringe over grey', async () => {
    const clip = clipWith(frameRateOf('24'), true);
    const paths = [join(place, 'a1.webm'), join(place, 'a2.webm')] as const;
    const [one, two] = [
      await writeFilm(opened, clip, 'vp9', paths[0]),
      await writeFilm(opened, clipWith(frameRateOf('24'), true), 'vp9', paths[1]),
    ];
    expect(one.framesDigest).toBe(two.framesDigest);
    expect(await digestOf(paths[0])).toBe(await digestOf(paths[1]));
    const { seconds, pictures } = await decoded(opened.page, paths[0], [0, 23.5 / 24], 'rgb(128,128,128)');
    expect(seconds).toBeCloseTo(1, 2);
    for (const [i, share] of [0, 1].entries()) {
      const straight = await drawnRgba(sceneAt(share, true));
      const expected = straight.map((value, k) => {
        const alpha = straight[k - (k % 4) + 3]! / 255;
        return Math.round(alpha * value + (1 - alpha) * 128);
      });
      // Every second pixel's colour, and what the encoder takes: a premultiplied film would be off by 40 in the cloud.
      const { mean } = meanDifference(pictures[i]!, expected);
      expect(mean).toBeLessThan(3);
      const cloud = [...Array(60).keys()].map((k) => 4 * (64 * width + 10 + k));
      for (const at of cloud)
        for (const c of [0, 1, 2])
          expect(Math.abs(pictures[i]![at + c]! - expected[at + c]!)).toBeLessThan(16);
    }
  });

  it.skipIf(!hasProbe)('is what an outside reader says it is (skipped where there is no ffprobe)', () => {
    expect(probed(join(place, 'a1.webm'))).toMatchObject({
      codec_name: 'vp9',
      width: '192',
      height: '128',
      nb_read_frames: '24',
      'TAG:alpha_mode': '1',
      color_range: 'tv',
    });
  });
});

describe('a filled film', () => {
  it('keeps black black and white white, and has its length', async () => {
    const clip = clipWith(frameRateOf('29.97'), false);
    const path = join(place, 'b.mp4');
    const [one, two] = [
      await writeFilm(opened, clip, 'h264', path),
      await writeFilm(opened, clip, 'h264', join(place, 'b2.mp4')),
    ];
    expect(one.framesDigest).toBe(two.framesDigest);
    const { seconds, pictures } = await decoded(opened.page, path, [0], 'red');
    expect(seconds).toBeCloseTo((30 * 1001) / 30_000, 2);
    const { mean } = meanDifference(pictures[0]!, await drawnRgba(sceneAt(0, false)));
    expect(mean).toBeLessThan(3);
    // The paper of the light theme, at a corner; taken for full range it would be off by 19.
    for (const [i, value] of [0xfa, 0xfa, 0xf7].entries())
      expect(Math.abs(pictures[0]![i]! - value)).toBeLessThanOrEqual(6);
  });

  it.skipIf(!hasProbe)('is what an outside reader says it is (skipped where there is no ffprobe)', () => {
    expect(probed(join(place, 'b.mp4'))).toMatchObject({
      codec_name: 'h264',
      nb_read_frames: '30',
      r_frame_rate: '30000/1001',
      color_range: 'tv',
      color_space: 'bt709',
    });
  });
});

describe('a clip that flashes', () => {
  const flashing = (share: number, transparent: boolean): Scene => ({
    ...sceneAt(0, transparent),
    children: [
      { kind: 'rect', x: 0, y: 0, width, height, fill: Math.floor(12 * share) % 2 === 0 ? 'paper' : 'ink' },
    ],
  });

  it('is refused, whatever its form, and leaves nothing behind', async () => {
    const movement = {
      name: 'flash',
      title: 'Flash',
      description: '',
      notes: [],
      at: (share: number) => flashing(share, false),
    };
    const even = { ...USUAL_TIMING, holdFirst: 0, holdLast: 0, ease: 'even' } as const;
    const clip = clipOf(movement, { ...even, rate: frameRateOf('25'), seconds: 1 });
    const before = await readdir(place);
    await expect(writeFilm(opened, clip, 'vp9', join(place, 'flash.webm'))).rejects.toThrow(
      /flashes .* times within a second/,
    );
    await expect(writeFrames(clip, join(place, 'flash'))).rejects.toThrow(/flashes/);
    expect(await readdir(place)).toEqual(before);
  });

  it('is found so in its decoded frames; a calm one is not', async () => {
    const calm = join(place, 'a1.webm');
    const times = Array.from({ length: 24 }, (_, n) => (n + 0.5) / 24);
    const meter = flashMeter(frameRateOf('24'));
    for (const picture of (await decoded(opened.page, calm, times, 'white')).pictures)
      meter.add(Uint8Array.from(picture), width, height);
    expect(meter.verdict().passes).toBe(true);
  });
});

describe('a clip that is stopped', () => {
  it('leaves no half film and no half folder', async () => {
    const before = await readdir(place);
    for (const write of [
      (options: object) =>
        writeFilm(opened, clipWith(frameRateOf('25'), true), 'vp9', join(place, 'c.webm'), options),
      (options: object) => writeFrames(clipWith(frameRateOf('25'), true), join(place, 'c'), options),
    ]) {
      const ending = new AbortController();
      const onProgress = (done: number): void => {
        if (done >= 10) ending.abort();
      };
      await expect(write({ signal: ending.signal, onProgress })).rejects.toThrow();
    }
    expect(await readdir(place)).toEqual(before);
  });
});

describe('numbered pictures', () => {
  it('are as many as there are frames, the same bytes twice, with how fast they go', async () => {
    const clip = clipWith(frameRateOf('25'), true);
    const written = await writeFrames(clip, join(place, 'd'));
    await writeFrames(clipWith(frameRateOf('25'), true), join(place, 'e'));
    expect(written).toMatchObject({ frames: 25, form: 'frames' });
    const names = await readdir(join(place, 'd'));
    expect(names.filter((name) => name.endsWith('.png')).length).toBe(25);
    for (const name of ['00000.png', '00012.png', '00024.png'])
      expect(await digestOf(join(place, 'd', name))).toBe(await digestOf(join(place, 'e', name)));
    expect(JSON.parse(await readFile(join(place, 'd', 'clip.json'), 'utf8'))).toMatchObject({
      framesPerSecond: '25',
      frames: 25,
    });
    await expect(writeFrames(clip, join(place, 'd'))).rejects.toThrow(/not empty/);
  });
});

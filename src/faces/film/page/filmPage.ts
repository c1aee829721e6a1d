/** The script of the page without a window in which the command line has its films encoded. */

import { canEncodeVideo, Quality } from 'mediabunny';
import type { FlashVerdict } from '../../../telling/clips/flashVerdict.ts';
import { FONT_FAMILY } from '../../../telling/look/themeCss.ts';
import type { FilmCodec } from '../filmModel.ts';
import type { SceneStep } from '../sceneSteps.ts';
import { type FilmMaker, type FilmOrder, filmMaker } from './filmMaker.ts';
import { frameCanvas } from './frameCanvas.ts';

/** What the command line calls. */
export interface FilmPage {
  ready(weights: readonly number[]): Promise<void>;
  canEncode(codec: FilmCodec, width: number, height: number): Promise<boolean>;
  begin(order: FilmOrder): Promise<void>;
  add(step: SceneStep | null): Promise<void>;
  finish(): Promise<FlashVerdict>;
  cancel(): Promise<void>;
  /** One picture alone, straight RGBA as base64; for tests of the drawing. */
  pixels(order: FilmOrder, step: SceneStep): string;
}

declare global {
  var plumelineFilm: FilmPage;
  /** Given by the command line. */ function plumelineWrite(position: number, base64: string): Promise<void>;
}

let maker: FilmMaker | null = null;
/** Frames are drawn in the order in which they come. */
let last: Promise<void> = Promise.resolve();

const running = (): FilmMaker => {
  if (maker === null) throw new Error('No film has been begun.');
  return maker;
};

globalThis.plumelineFilm = {
  async ready(weights) {
    const faces = weights.map(
      (weight) => new FontFace(FONT_FAMILY, `url(/${weight}.ttf)`, { weight: String(weight) }),
    );
    for (const face of faces) document.fonts.add(await face.load());
  },
  canEncode: (codec, width, height) =>
    canEncodeVideo(codec === 'h264' ? 'avc' : 'vp9', { width, height, quality: new Quality('high') }),
  async begin(order) {
    last = Promise.resolve();
    maker = await filmMaker(order, (position, bytes) => plumelineWrite(position, base64Of(bytes)));
  },
  add(step) {
    last = last.then(() => running().add(step));
    return last;
  },
  async finish() {
    await last;
    const verdict = await running().finish();
    maker = null;
    return verdict;
  },
  async cancel() {
    const stopped = maker;
    maker = null;
    await stopped?.cancel();
  },
  pixels: (order, step) => base64Of(new Uint8Array(frameCanvas(order).draw(step).buffer)),
};

/** Pieces small enough for one call. */
const PIECE = 0x8000;

function base64Of(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += PIECE) text += String.fromCharCode(...bytes.subarray(i, i + PIECE));
  return btoa(text);
}

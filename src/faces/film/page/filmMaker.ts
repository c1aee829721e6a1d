/** Frames in, a film out: drawn, watched for flashes, encoded by the browser, written in pieces. */

import {
  Mp4OutputFormat,
  Output,
  Quality,
  StreamTarget,
  type StreamTargetChunk,
  VideoSample,
  VideoSampleSource,
  WebMOutputFormat,
} from 'mediabunny';
import { flashMeter, groundsUnder } from '../../../telling/clips/flashMeter.ts';
import type { FlashVerdict } from '../../../telling/clips/flashVerdict.ts';
import type { FrameRate } from '../../../telling/clips/frameRate.ts';
import type { FilmCodec } from '../filmModel.ts';
import type { SceneStep } from '../sceneSteps.ts';
import { type FrameLook, frameCanvas } from './frameCanvas.ts';
import { planesSize, writePlanes } from './limitedYuv.ts';

export interface FilmOrder extends FrameLook {
  readonly rate: FrameRate;
  readonly codec: FilmCodec;
}

export interface FilmMaker {
  /** The next frame; null: the same as before. */ add(step: SceneStep | null): Promise<void>;
  finish(): Promise<FlashVerdict>;
  cancel(): Promise<void>;
}

/** Bytes written at a time. */
const PIECE = 1 << 20;
/** [s] between pictures that are whole by themselves, for jumping about in an edit. */
const WHOLE_EVERY = 1;

export async function filmMaker(
  order: FilmOrder,
  write: (position: number, bytes: Uint8Array) => Promise<void>,
): Promise<FilmMaker> {
  const { width, height, rate, codec, transparent } = order;
  const canvas = frameCanvas(order);
  const meter = flashMeter(rate, groundsUnder(transparent));
  const output = new Output({
    format: codec === 'h264' ? new Mp4OutputFormat() : new WebMOutputFormat(),
    target: new StreamTarget(
      new WritableStream<StreamTargetChunk>({ write: ({ data, position }) => write(position, data) }),
      { chunked: true, chunkSize: PIECE },
    ),
  });
  const source = new VideoSampleSource({
    codec: codec === 'h264' ? 'avc' : 'vp9',
    quality: new Quality('high'),
    keyFrameInterval: WHOLE_EVERY,
    alpha: transparent ? 'keep' : 'discard',
  });
  output.addVideoTrack(source, { frameRate: rate.num / rate.den });
  await output.start();
  const planes = new Uint8Array(planesSize(width, height, transparent));
  let pixels: Uint8ClampedArray<ArrayBuffer> | null = null;
  let frame = 0;
  return {
    async add(step) {
      if (step !== null || pixels === null) {
        pixels = canvas.draw(step ?? []);
        writePlanes(planes, pixels, width, height, transparent);
      }
      meter.add(pixels, width, height);
      const sample = new VideoSample(planes, {
        format: transparent ? 'I420A' : 'I420',
        codedWidth: width,
        codedHeight: height,
        timestamp: (frame * rate.den) / rate.num,
        duration: rate.den / rate.num,
        colorSpace: { primaries: 'bt709', transfer: 'bt709', matrix: 'bt709', fullRange: false },
      });
      frame += 1;
      await source.add(sample);
      sample.close();
    },
    async finish() {
      await output.finalize();
      return meter.verdict();
    },
    cancel: () => output.cancel(),
  };
}

/** SVG to PNG, with words kept inside the file. */

import { crc32 } from 'node:zlib';
import { type RenderedImage, Resvg, renderAsync } from '@resvg/resvg-js';
import { FONT_FAMILY } from '../../telling/look/themeCss.ts';
import { fontFiles } from './fontFiles.ts';

type Words = Readonly<Record<string, string>>;

export interface DrawnPicture {
  readonly png: Buffer;
  /** RGBA, row by row. */ readonly pixels: Buffer;
  readonly width: number;
  readonly height: number;
}

/** Only the bundled fonts are used, so that the same drawing gives the same bytes everywhere. */
const optionsFor = (width: number) => ({
  fitTo: { mode: 'width' as const, value: width },
  font: { fontFiles: [...fontFiles], loadSystemFonts: false, defaultFontFamily: FONT_FAMILY },
});

export function pictureOf(svg: string, width: number, words: Words): DrawnPicture {
  const drawn = new Resvg(svg, optionsFor(width)).render();
  return { png: pngWith(drawn, words), pixels: drawn.pixels, width: drawn.width, height: drawn.height };
}

export function pngOf(svg: string, width: number, words: Words): Buffer {
  return pictureOf(svg, width, words).png;
}

/** The same picture, drawn on another thread. */
export async function pngAside(svg: string, width: number, words: Words): Promise<Buffer> {
  return pngWith(await renderAsync(svg, optionsFor(width)), words);
}

const pngWith = (drawn: RenderedImage, words: Words): Buffer => withWords(Buffer.from(drawn.asPng()), words);

/** International text chunks (iTXt, PNG specification, third edition, 11.3.3.4) put before the end of the file. */
function withWords(png: Buffer, words: Readonly<Record<string, string>>): Buffer {
  const end = png.length - 12;
  const chunks = Object.entries(words).map(([keyword, value]) => textChunk(keyword, value));
  return Buffer.concat([png.subarray(0, end), ...chunks, png.subarray(end)]);
}

function textChunk(keyword: string, value: string): Buffer {
  const body = Buffer.concat([
    Buffer.from('iTXt', 'latin1'),
    Buffer.from(keyword, 'latin1'),
    // Ends of keyword, compression flag and method, language and translated keyword: all empty.
    Buffer.from([0, 0, 0, 0, 0]),
    Buffer.from(value, 'utf8'),
  ]);
  const chunk = Buffer.alloc(body.length + 8);
  chunk.writeUInt32BE(body.length - 4, 0);
  body.copy(chunk, 4);
  chunk.writeUInt32BE(checksum(body), chunk.length - 4);
  return chunk;
}

/** CRC-32 as PNG has it; own table where this Node has no built-in. */
function checksum(bytes: Buffer): number {
  if (typeof crc32 === 'function') return crc32(bytes) >>> 0;
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

/**
 * Packs the bundled fonts for pages: WOFF, which keeps every table of the font and packs each by itself (W3C, WOFF File Format 1.0,
 * 2012). Kept as files, so that a page has the same bytes whatever packs here. Run after changing a font: node scripts/fonts/woff.mjs
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';

const folder = new URL('../../assets/fonts/', import.meta.url);
const HEADER = 44;
const ENTRY = 20;
const padded = (length) => (length + 3) & ~3;

function woffOf(font) {
  const count = font.readUInt16BE(4);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = 12 + 16 * i;
    const [offset, length] = [font.readUInt32BE(at + 8), font.readUInt32BE(at + 12)];
    const plain = font.subarray(offset, offset + length);
    const packed = deflateSync(plain, { level: 9 });
    // A table that does not shrink is kept as it is.
    return {
      tag: font.subarray(at, at + 4),
      sum: font.readUInt32BE(at + 4),
      length,
      bytes: packed.length < length ? packed : plain,
    };
  });
  const places = [];
  let end = HEADER + ENTRY * count;
  for (const { bytes } of tables) {
    places.push(end);
    end += padded(bytes.length);
  }
  const out = Buffer.alloc(end);
  out.write('wOFF', 0, 'latin1');
  font.copy(out, 4, 0, 4);
  out.writeUInt32BE(end, 8);
  out.writeUInt16BE(count, 12);
  out.writeUInt32BE(12 + 16 * count + tables.reduce((sum, { length }) => sum + padded(length), 0), 16);
  out.writeUInt16BE(1, 20);
  tables.forEach(({ tag, sum, length, bytes }, i) => {
    const at = HEADER + ENTRY * i;
    tag.copy(out, at);
    out.writeUInt32BE(places[i], at + 4);
    out.writeUInt32BE(bytes.length, at + 8);
    out.writeUInt32BE(length, at + 12);
    out.writeUInt32BE(sum, at + 16);
    bytes.copy(out, places[i]);
  });
  return out;
}

for (const name of ['Regular', 'SemiBold', 'Bold']) {
  const font = readFileSync(new URL(`SourceSans3-${name}.ttf`, folder));
  writeFileSync(new URL(`SourceSans3-${name}.woff`, folder), woffOf(font));
}

import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { embeddedFonts } from '../../../src/faces/package/fontFiles.ts';

const WEIGHTS = [400, 600, 700] as const;
const filesOf = (form: 'truetype' | 'woff') =>
  embeddedFonts(WEIGHTS, form).map(({ base64 }) => Buffer.from(base64, 'base64'));

/** Tables by their tags. TrueType: OpenType specification, table directory. */
const tablesOf = (font: Buffer) =>
  Array.from({ length: font.readUInt16BE(4) }, (_, i) => {
    const at = 12 + 16 * i;
    const start = font.readUInt32BE(at + 8);
    return [
      font.toString('latin1', at, at + 4),
      font.subarray(start, start + font.readUInt32BE(at + 12)),
    ] as const;
  });

/** WOFF File Format 1.0 (W3C, 2012), sections 3 to 5. */
const packedTablesOf = (font: Buffer) =>
  Array.from({ length: font.readUInt16BE(12) }, (_, i) => {
    const at = 44 + 20 * i;
    const [start, packed, length] = [4, 8, 12].map((place) => font.readUInt32BE(at + place)) as [
      number,
      number,
      number,
    ];
    const bytes = font.subarray(start, start + packed);
    return [font.toString('latin1', at, at + 4), packed < length ? inflateSync(bytes) : bytes] as const;
  });

test('fonts of pages hold every table of the fonts of drawings, in less than half the bytes', () => {
  const [plain, packed] = [filesOf('truetype'), filesOf('woff')];
  packed.forEach((font, i) => {
    expect(font.toString('latin1', 0, 4)).toBe('wOFF');
    expect(font.readUInt32BE(8)).toBe(font.length);
    expect(font.length).toBeLessThan(0.5 * plain[i]!.length);
    const [own, whole] = [packedTablesOf(font), tablesOf(plain[i]!)];
    expect(own.map(([tag]) => tag)).toEqual(whole.map(([tag]) => tag));
    for (const [k, [tag, bytes]] of whole.entries()) expect(own[k]![1].equals(bytes), tag).toBe(true);
  });
});

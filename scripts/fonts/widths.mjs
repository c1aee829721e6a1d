/**
 * Reads the advance widths out of the bundled fonts and writes src/telling/look/fontWidths.ts,
 * so that figures can be laid out without a browser. Run after changing a font: node scripts/fonts/widths.mjs
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = new URL('../../', import.meta.url);
const weights = { 400: 'Regular', 600: 'SemiBold', 700: 'Bold' };
/** Code point ranges that a figure may contain and that the table holds. */
const ranges = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x370, 0x3ff],
  [0x400, 0x45f],
  [0x1e40, 0x1e41],
  [0x1e9e, 0x1e9e],
  [0x2000, 0x200a],
  [0x2010, 0x2044],
  [0x2070, 0x209c],
  [0x20ac, 0x20ac],
  [0x2190, 0x2199],
  [0x2202, 0x2265],
  [0x25a0, 0x25cf],
];

function tables(bytes) {
  const found = {};
  for (let i = 0; i < bytes.readUInt16BE(4); i++) {
    const entry = 12 + 16 * i;
    found[bytes.toString('latin1', entry, entry + 4)] = bytes.readUInt32BE(entry + 8);
  }
  return found;
}

/** Glyph index by code point, from the segments of the font's 32-bit character map (format 12). */
function characterMap(bytes, cmap) {
  for (let i = 0; i < bytes.readUInt16BE(cmap + 2); i++) {
    const start = cmap + bytes.readUInt32BE(cmap + 4 + 8 * i + 4);
    if (bytes.readUInt16BE(start) !== 12) continue;
    const map = new Map();
    for (let g = 0; g < bytes.readUInt32BE(start + 12); g++) {
      const group = start + 16 + 12 * g;
      const [first, last, glyph] = [0, 4, 8].map((at) => bytes.readUInt32BE(group + at));
      for (let code = first; code <= last; code++) map.set(code, glyph + code - first);
    }
    return map;
  }
  throw new Error('the font has no format 12 character map');
}

function widthsOf(file) {
  const bytes = readFileSync(new URL(`assets/fonts/${file}`, root));
  const at = tables(bytes);
  const unitsPerEm = bytes.readUInt16BE(at.head + 18);
  if (unitsPerEm !== 1000) throw new Error(`${file}: expected 1000 units per em, found ${unitsPerEm}`);
  const longMetrics = bytes.readUInt16BE(at.hhea + 34);
  const map = characterMap(bytes, at.cmap);
  const width = (glyph) => bytes.readUInt16BE(at.hmtx + 4 * Math.min(glyph, longMetrics - 1));
  return ranges.map(([first, last]) => {
    const list = [];
    for (let code = first; code <= last; code++) list.push(map.has(code) ? width(map.get(code)) : 0);
    return list.join(' ');
  });
}

const lines = [
  '/**',
  ' * Advance widths in thousandths of the type size, 0 where the font has no such character.',
  ' * Written by scripts/fonts/widths.mjs from assets/fonts; do not edit.',
  ' */',
  '',
  '/** First and last code point of each run of widths. */',
  `export const WIDTH_RANGES: readonly (readonly [number, number])[] = [${ranges.map((r) => `[${r.join(', ')}]`).join(', ')}];`,
  '',
  '/** Widths by weight, one text of numbers for each range. */',
  'export const WIDTH_TEXT: Readonly<Record<400 | 600 | 700, readonly string[]>> = {',
];
for (const [weight, name] of Object.entries(weights)) {
  lines.push(`  ${weight}: [`);
  for (const text of widthsOf(`SourceSans3-${name}.ttf`)) lines.push(`    '${text}',`);
  lines.push('  ],');
}
lines.push('};', '');
writeFileSync(fileURLToPath(new URL('src/telling/look/fontWidths.ts', root)), lines.join('\n'));
console.log('src/telling/look/fontWidths.ts written');

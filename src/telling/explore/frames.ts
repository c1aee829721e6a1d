/** Pictures at many altitudes, each piece of drawing kept once. */

export interface Frames {
  /** Pieces of SVG. */ readonly parts: readonly string[];
  /** Which pieces make up each picture, in order. */ readonly frames: readonly (readonly number[])[];
}

/** Attributes that are places and sizes in pixels. */
const PLACES =
  / (?:d|x|y|x1|x2|y1|y2|cx|cy|r|rx|ry|width|height|points|textLength|stroke-width|font-size)="[^"]*"/g;

/** Places to tenths of a pixel, finer than any screen shows at this size; words and their numbers stay as they are. */
const rounded = (svg: string): string =>
  svg.replace(/<[^>]*>/g, (tag) =>
    tag
      .replace(/ style="[^"]*"/g, '')
      .replace(PLACES, (place) =>
        place.replace(/-?\d+\.\d\d+/g, (number) => String(Number(Number(number).toFixed(1)))),
      ),
  );

export function framesOf(svgs: readonly string[]): Frames {
  const indices = new Map<string, number>();
  const frames = svgs.map((svg) =>
    rounded(svg)
      .split(/(?=<)/)
      .map((part) => {
        const known = indices.get(part);
        if (known !== undefined) return known;
        indices.set(part, indices.size);
        return indices.size - 1;
      }),
  );
  return joined([...indices.keys()], frames);
}

/** Neighbours that always stand together become one piece: fewer indices. */
function joined(parts: readonly string[], frames: readonly (readonly number[])[]): Frames {
  const next = new Map<number, number | null>();
  const before = new Map<number, number | null>();
  const keep = (map: Map<number, number | null>, key: number, value: number): void => {
    map.set(key, !map.has(key) || map.get(key) === value ? value : null);
  };
  for (const frame of frames) {
    frame.forEach((part, i) => {
      keep(next, part, frame[i + 1] ?? -1);
      keep(before, part, frame[i - 1] ?? -1);
    });
  }
  const leads = (part: number): boolean => {
    const ahead = before.get(part) ?? -1;
    return ahead < 0 || next.get(ahead) !== part;
  };
  const text: string[] = [];
  const numbers = new Map<number, number>();
  for (const part of parts.keys()) {
    if (!leads(part)) continue;
    let whole = parts[part]!;
    for (let at = next.get(part) ?? -1; at >= 0 && !leads(at); at = next.get(at) ?? -1) whole += parts[at]!;
    numbers.set(part, text.length);
    text.push(whole);
  }
  return {
    parts: text,
    frames: frames.map((frame) => frame.filter(leads).map((part) => numbers.get(part)!)),
  };
}

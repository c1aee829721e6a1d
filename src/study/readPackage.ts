/** Reading of what a study asks of its package. */

import { isSeq } from 'yaml';
import { type Cursor, choiceAt, entriesAt, itemsAt, offsetAt, refuseOtherKeys, textAt } from './cursor.ts';
import {
  PACKAGE_SHAPES,
  type PackageInput,
  type PackageShape,
  packageKeys,
  USUAL_PACKAGE,
} from './packageForm.ts';
import { quote, type Report } from './report.ts';

const MOST_CLIPS = 20;

export function readPackage(cursor: Cursor | undefined, report: Report): PackageInput {
  if (cursor === undefined) return USUAL_PACKAGE;
  const entries = entriesAt(
    cursor,
    'what is asked of the package',
    'Write { shapes: [16:9, print] }.',
    report,
  );
  if (entries === null) return USUAL_PACKAGE;
  refuseOtherKeys(entries, packageKeys, 'package', report);
  return {
    shapes: shapesAt(entries.get('shapes'), report) ?? USUAL_PACKAGE.shapes,
    clips: clipsAt(entries.get('clips'), report),
    clipShapes: shapesAt(entries.get('clipShapes'), report) ?? USUAL_PACKAGE.clipShapes,
  };
}

/** One shape, or a list of them; null where there is none to take. */
function shapesAt(cursor: Cursor | undefined, report: Report): readonly PackageShape[] | null {
  if (cursor === undefined) return null;
  const field = { is: 'choice', options: PACKAGE_SHAPES, meaning: 'Shape of a picture.' } as const;
  const items = isSeq(cursor.node)
    ? (itemsAt(cursor, 'a list of shapes', 'Write [16:9, print].', report) ?? [])
    : [cursor];
  const shapes = items.flatMap((item) => choiceAt(item, field, report) ?? []);
  if (items.length > 0) return shapes.length === 0 ? null : [...new Set(shapes)];
  report.problem(
    {
      code: 'value-missing',
      what: `${quote(cursor.path)} lists no shape.`,
      mend: `Name one or more of ${PACKAGE_SHAPES.join(', ')}, or leave the key out.`,
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

function clipsAt(cursor: Cursor | undefined, report: Report): readonly string[] {
  if (cursor === undefined) return [];
  const mend = 'Write [cut-climb].';
  const items = itemsAt(cursor, 'a list of clips', mend, report) ?? [];
  if (items.length > MOST_CLIPS) {
    report.problem(
      {
        code: 'too-many-values',
        what: `${quote(cursor.path)} lists ${items.length} clips; up to ${MOST_CLIPS} are made.`,
        mend: 'Keep those that are shown.',
      },
      cursor.path,
      offsetAt(cursor),
    );
    return [];
  }
  return items.flatMap((item) => textAt(item, 'the name of a clip', mend, report)?.trim() ?? []);
}

/** Another kind of nozzle for an engine, as edits of the study's text. */

import { type Field, type Fields, nozzleForms } from './form.ts';
import type { EngineInput } from './model.ts';
import { parseAsText, type StudyEdit } from './textEdit.ts';

export type NozzleKind = keyof typeof nozzleForms;

export const nozzleKinds = Object.keys(nozzleForms) as readonly NozzleKind[];

/** Of the whole area ratio, for a second area ratio that has no default. Common practice, no source. */
const SMALLER_SHARE = 1 / 3;

/**
 * The area ratio stays; every other key of the old kind goes, so that the new kind begins with its defaults. A smaller area
 * ratio without a default becomes a third of the whole one.
 *
 * @param text the study, of which `engine` was read
 */
export function editsForNozzleKind(
  text: string,
  engine: EngineInput,
  kind: NozzleKind,
): readonly StudyEdit[] {
  const at = (key: string): StudyEdit['path'] => ['engines', engine.id, 'nozzle', key];
  const document = parseAsText(text);
  const { areaRatio } = engine.nozzle;
  const old = Object.keys(nozzleForms[engine.nozzle.kind]).filter(
    (key) => key !== 'areaRatio' && document.hasIn(at(key)),
  );
  const fields: Fields = nozzleForms[kind];
  const needed = Object.entries(fields).filter(([key, field]) => key !== 'areaRatio' && isNeeded(field));
  return [
    { path: at('kind'), value: kind },
    ...old.map((key) => ({ path: at(key), value: null })),
    { path: at('areaRatio'), value: areaRatio.text },
    ...needed.map(([key]) => ({
      path: at(key),
      value: Number((SMALLER_SHARE * areaRatio.value).toPrecision(2)),
    })),
  ];
}

/** A number that the study has to state. */
function isNeeded(field: Field): boolean {
  return field.is === 'quantity' && field.byDefault === undefined && field.optional !== true;
}

/** Inputs that an engine leaves to its published rows: which they are, and that nobody inherits them. */
import { type Cursor, keyOffset } from './cursor.ts';
import type { Published, SettledInput } from './model.ts';
import { settledAt } from './publishedForm.ts';
import type { PublishedDraft } from './readPublished.ts';
import { quote, type Report } from './report.ts';
import { BROKEN, type EngineDraft, type EngineSections } from './sections.ts';

/** Whether the sections state that input. A size of any form states throat and flow. */
function isStated(input: SettledInput, sections: EngineSections): boolean {
  const { section: name, key } = settledAt[input];
  const section = sections[name];
  if (section === null || section === BROKEN) return section === BROKEN;
  return name === 'size' ? section.entries.size > 0 : section.entries.has(key);
}

export function publishedOf({ rows, solveFor }: PublishedDraft, sections: EngineSections): Published {
  return {
    rows,
    solveFor: solveFor && { ...solveFor, stated: isStated(solveFor.input, sections) },
  };
}

/** A section that is absent because all it would say is left to the published rows. */
export function withRoomFor(
  settled: SettledInput | null,
  sections: EngineSections,
  engine: Cursor,
): EngineSections {
  if (settled === null) return sections;
  const name = settledAt[settled].section;
  if (sections[name] !== null || name === 'nozzle') return sections;
  const empty = {
    entries: new Map<string, Cursor>(),
    cursor: { node: null, key: engine.key, path: `${engine.path}.${name}` },
    silent: false,
  };
  return name === 'size'
    ? { ...sections, size: { ...empty, form: 'throat' } }
    : { ...sections, chamber: { ...empty, form: 'chamber' } };
}

/**
 * Published figures are of one engine and are not inherited; nor is what they settle. An engine that is like one
 * with such an input must state its own: told here, and told once.
 */
export function leftByBase(
  id: string,
  base: EngineDraft | 'broken' | null,
  sections: EngineSections,
  engine: Cursor,
  report: Report,
): SettledInput | null {
  if (base === null || base === 'broken') return null;
  const left = base.engine?.published?.solveFor ?? null;
  if (left === null || left.stated || isStated(left.input, sections)) return null;
  const { section, key } = settledAt[left.input];
  if (left.input === 'efficiency') return null;
  report.problem(
    {
      code: 'settled-input-not-inherited',
      what: `${quote(id)} is like ${quote(base.engine!.id)}, whose ${section}.${key} is left to its published rows; those are not inherited.`,
      mend: `Give ${quote(id)} its own ${section}: { ${key}: … }, or published rows of its own.`,
    },
    engine.path,
    keyOffset(engine),
  );
  return left.input;
}

import { expect, test } from 'vitest';
import { editStudy } from '../../src/study/edit.ts';
import { editsForNozzleKind, nozzleKinds } from '../../src/study/nozzleKind.ts';
import { readStudy } from '../../src/study/read.ts';

const text = `plumeline: 1
question: Which one?
engines:
  # the one that flies
  flies:
    propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }
    chamber: { pressure: 100 bar }
    size: { throat: 200 mm }
    nozzle: { kind: bell, areaRatio: 35, length: 70 %, throatAngle: 33 deg } # as built
  other:
    like: flies
    size: { throat: 220 mm }
`;

function engineOf(studyText: string, id: string) {
  const outcome = readStudy(studyText);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.study.engines.find((engine) => engine.id === id)!;
}

test.each(nozzleKinds)('a bell becomes %s, keeps its area ratio and its comments, and goes back', (kind) => {
  const changed = editStudy(text, editsForNozzleKind(text, engineOf(text, 'flies'), kind));
  const { nozzle } = engineOf(changed, 'flies');
  expect(nozzle.kind).toBe(kind);
  expect(nozzle.areaRatio.value).toBe(35);
  expect(changed).toContain('# the one that flies');
  const back = editStudy(changed, editsForNozzleKind(changed, engineOf(changed, 'flies'), 'bell'));
  expect(engineOf(back, 'flies').nozzle).toMatchObject({ kind: 'bell', throatAngle: null });
});

test('an engine that is like another gets a nozzle of its own; the other keeps its', () => {
  const changed = editStudy(text, editsForNozzleKind(text, engineOf(text, 'other'), 'dualBell'));
  expect(engineOf(changed, 'other').nozzle).toMatchObject({ kind: 'dualBell' });
  expect(engineOf(changed, 'flies').nozzle).toMatchObject({ kind: 'bell' });
});

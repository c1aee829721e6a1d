import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { STUDY_FORMAT } from '../../src/study/form.ts';
import {
  checkMigrations,
  type Migration,
  migrateStudy,
  studyMigrations,
} from '../../src/study/migrations.ts';
import { readStudy } from '../../src/study/read.ts';
import { goodStudy } from './badStudies.ts';

/** Two migrations of a file form that never was, to hold the machinery to its rules. */
const rename: Migration = {
  to: 2,
  name: 'ask becomes question',
  migrate(document) {
    document.set('question', document.get('ask'));
    document.delete('ask');
    return document;
  },
};
const shout: Migration = {
  to: 3,
  name: 'questions end with a mark',
  migrate(document) {
    document.set('question', `${String(document.get('question'))}?`);
    return document;
  },
};

describe('migrations of the study file', () => {
  test('every migration has a test of its own', () => {
    for (const { to } of studyMigrations) {
      const path = new URL(`./migrations/to-${to}.test.ts`, import.meta.url);
      expect(existsSync(path), `tests/study/migrations/to-${to}.test.ts`).toBe(true);
    }
  });

  test('the list has no gap and ends at the current version', () => {
    expect(() => checkMigrations(studyMigrations, STUDY_FORMAT)).not.toThrow();
    expect(() => checkMigrations([shout], 2)).toThrow(/leads to 3/);
    expect(() => checkMigrations([rename], 3)).toThrow(/do not lead to version 3/);
  });

  test('they follow one another, keep comments, and leave the tree they were given alone', () => {
    const text = 'plumeline: 1 # the first\nask: Why\n';
    const document = parseDocument(text);
    const migrated = migrateStudy(document, 1, [rename, shout], 3);
    expect(migrated.toJS()).toEqual({ plumeline: 3, question: 'Why?' });
    expect(String(migrated)).toContain('# the first');
    expect(String(document)).toBe(text);
    expect(migrateStudy(migrated, 3, [rename, shout], 3).toJS()).toEqual({ plumeline: 3, question: 'Why?' });
  });

  test('a newer file, a version that is none, and no version at all are refused by name', () => {
    const codes = (text: string): readonly string[] => {
      const outcome = readStudy(text, { file: 'study.yaml' });
      return outcome.ok ? [] : outcome.problems.map((problem) => problem.code);
    };
    const newer = codes(goodStudy.replace('plumeline: 1', `plumeline: ${STUDY_FORMAT + 1}`));
    const none = codes(goodStudy.replace('plumeline: 1', 'plumeline: soon'));
    const missing = codes(goodStudy.replace('plumeline: 1\n', ''));
    for (const found of [newer, none, missing]) expect(found).toHaveLength(1);
    expect(new Set([newer[0], none[0], missing[0]]).size).toBe(3);
  });
});

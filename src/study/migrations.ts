/**
 * From each version of the file form to the next. A migration is pure: it gets the tree of a study one version
 * older, works on a copy and returns it, so that comments and places stay. Versions count 1, 2, 3 without gaps;
 * every migration has a test of its own in tests/study/migrations.
 */
import type { Document } from 'yaml';
import { STUDY_FORMAT } from './form.ts';

export interface Migration {
  /** The version it makes, from the one before. */ readonly to: number;
  /** What it does, in words; its test carries the same name. */ readonly name: string;
  migrate(document: Document.Parsed): Document.Parsed;
}

/** In order. The first version needs none. */
export const studyMigrations: readonly Migration[] = [];

/** Throws where the list has a gap or does not end at the current version: a mistake in the program. */
export function checkMigrations(migrations: readonly Migration[], current: number): void {
  migrations.forEach((migration, i) => {
    if (migration.to !== i + 2)
      throw new Error(`migration ${i + 1} leads to ${migration.to}, not to ${i + 2}`);
  });
  if (migrations.length !== current - 1)
    throw new Error(`${migrations.length} migrations do not lead to version ${current}`);
}

/** The tree in the current form, by every migration after version `from`. The tree given is left alone. */
export function migrateStudy(
  document: Document.Parsed,
  from: number,
  migrations: readonly Migration[] = studyMigrations,
  current: number = STUDY_FORMAT,
): Document.Parsed {
  checkMigrations(migrations, current);
  let migrated = document;
  for (const migration of migrations.slice(from - 1)) {
    migrated = migration.migrate(migrated.clone() as Document.Parsed);
    migrated.set('plumeline', migration.to);
  }
  return migrated;
}

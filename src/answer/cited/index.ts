export { BIBLIOGRAPHY, citesNothing, worksNamedIn } from './bibliography.ts';
export { type DataRowUsed, dataRowsUsed } from './dataRows.ts';
export { type SourcesOf, type UsedSource, usedSources } from './usedSources.ts';
export type { Work, WorkType } from './work.ts';

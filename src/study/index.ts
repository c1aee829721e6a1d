/** The study: its file form, its units, reading and writing. */
export { editStudy, type ListEdit, newStudyText, type StudyChange, type StudyEdit } from './edit.ts';
export { STUDY_FORMAT } from './form.ts';
export type * from './model.ts';
export { type KnownName, knownNames } from './names.ts';
export { placeInAnalogy, placeInTest } from './placeInTest.ts';
export { type ReadOptions, readStudy } from './read.ts';
export { describeStudyProblem } from './report.ts';
export { formatQuantity, type ParsedQuantity, parseQuantity } from './units.ts';
export type { QuantityKind } from './unitTable.ts';

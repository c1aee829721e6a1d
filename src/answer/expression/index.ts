/** Tests and expressions over catalogue quantities: ordinary algebra and a few plain words, see docs/sentences.md. */
export { compileExpression, compileTest } from './compile.ts';
export type * from './model.ts';
export { scopeOf } from './scopeOf.ts';
export { testProblem } from './testProblem.ts';

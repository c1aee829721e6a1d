/** Tests and expressions over catalogue quantities: ordinary algebra and a few plain words, see docs/sentences.md. */
export type * from './model.ts';

/** Finding things of a study by plain words: words compared, ranked, and a place or an engine read out of them. */
export { findQuantities } from './findQuantities.ts';
export { type Findable, indexOf, type Ranked, rank } from './rank.ts';
export { type Named, readWanted, saysName, type Wanted } from './readWanted.ts';
export { fitOf, wordsOf, wordsWanted } from './words.ts';

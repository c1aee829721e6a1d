/** Whether the second engine of a pair is worth it. */
export type * from './model.ts';
export { worthTable } from './worthTable.ts';
export { rowWords, sideWords, worthWords } from './worthWords.ts';

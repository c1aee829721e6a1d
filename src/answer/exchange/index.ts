/** What a second, a kilogram or a per cent is worth to a vehicle. */
export { exchangeTable } from './exchangeTable.ts';
export type * from './model.ts';

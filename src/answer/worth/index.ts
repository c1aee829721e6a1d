/** Whether the second engine of a pair is worth it. */
export type * from './model.ts';
export { type VehicleWorth, vehicleWorths } from './vehicleWorth.ts';
export { worthTable } from './worthTable.ts';
export { EXCHANGE_HEAD, exchangeRows, rowWords, sideWords, worthWords } from './worthWords.ts';

export * from './air/index.ts';
export * from './constants.ts';
export * from './cycle/index.ts';
export * from './euler/index.ts';
export * from './flow/index.ts';
export * from './gas/index.ts';
export * from './heat/index.ts';
export * from './nozzle/index.ts';

export * from './air/index.ts';
export * from './nozzle/index.ts';

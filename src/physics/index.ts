export * from './air/index.ts';

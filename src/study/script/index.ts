/** The script of a study: `script.md` read, see docs/script.md. */
export type * from './model.ts';
export { type ReadScriptOptions, readScript, SCRIPT_FILE } from './readScript.ts';
export { placesIn } from './source.ts';

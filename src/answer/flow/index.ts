/** The whole flow of a study's engines. */
export { type FlowPlace, flowFields } from './flowFields.ts';
export { FINENESSES, type Fineness, type FlowField, SHOWN, type Shown } from './model.ts';

/** Between the page and the worker that computes finer fields on the graphics processor. */

import type { Problem } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';
import type { ListedFlow } from '../../flows/flowList.ts';

export interface FinerOrder {
  readonly number: number;
  /** Its engines are solved once as long as they stay. */ readonly study: Study;
  readonly mark: string;
  /** The field that it begins from. */ readonly from: ListedFlow;
  /** Shaders run in software count as well: for tests. */ readonly software: boolean;
}

export type FinerReport =
  | { readonly number: number; readonly is: 'field'; readonly field: ListedFlow }
  | { readonly number: number; readonly is: 'failed'; readonly problem: Problem }
  /** A mistake of the program. */
  | { readonly number: number; readonly is: 'fault'; readonly message: string };

/** A text as read: expressions and tests, each with its place in the text. Names are not yet looked up. */

import type { ComparisonOperator, Exponents } from './model.ts';

/** Offsets into the text; `end` stands behind the last sign. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface NumberNode extends Span {
  readonly is: 'number';
  /** SI */ readonly value: number;
  /** SI size as a difference: the zero of °C and °F does not enter. */ readonly asDifference: number;
  readonly dimension: Exponents;
  /** True for °C and °F: a point on a scale, not an amount. */ readonly degrees: boolean;
  /** True for a percentage. */ readonly percent: boolean;
  /** True where no unit is written. */ readonly bare: boolean;
}

export type Station = 'injector' | 'throat' | 'lip';

/** What stands inside the brackets behind a quantity. */
export type Argument = Span &
  (
    | { readonly is: 'vacuum' }
    | { readonly is: 'pad' }
    | { readonly is: 'station'; readonly station: Station }
    | { readonly is: 'areaRatio'; readonly value: Expression }
    | { readonly is: 'distance'; readonly value: Expression; readonly side: 'behind' | 'ahead' }
    | { readonly is: 'part'; readonly kind: string; readonly name: string }
    | { readonly is: 'set'; readonly input: string; readonly value: Expression }
    | { readonly is: 'place'; readonly value: Expression }
  );

export interface NameNode extends Span {
  readonly is: 'name';
  readonly name: string;
  /** Null where there are no brackets. */ readonly args: readonly Argument[] | null;
}

export type Expression =
  | NumberNode
  | NameNode
  | (Span & { readonly is: 'negative'; readonly of: Expression })
  | (Span & {
      readonly is: 'binary';
      readonly operator: '+' | '-' | '*' | '/' | '^';
      readonly left: Expression;
      readonly right: Expression;
    })
  | (Span & { readonly is: 'call'; readonly name: string; readonly args: readonly Expression[] })
  | (Span & {
      readonly is: 'extreme';
      readonly kind: 'highest' | 'lowest';
      readonly gives: 'value' | 'place';
      readonly body: Expression;
      readonly range: RangeNode;
    });

/** `z from 0 km to vacuum at 65 points` */
export interface RangeNode extends Span {
  readonly variable: string;
  readonly from: Expression | 'vacuum';
  readonly to: Expression | 'vacuum';
  readonly points: number | null;
}

export type Trend = 'rises' | 'falls' | 'does not rise' | 'does not fall' | 'constant';

export type Test =
  | (Span & {
      readonly is: 'compare';
      readonly operator: Exclude<ComparisonOperator, 'about' | 'not about'>;
      readonly left: Expression;
      readonly right: Expression;
    })
  | (Span & {
      readonly is: 'about';
      readonly left: Expression;
      readonly right: Expression;
      /** A plain number is a share of the right side. */ readonly tolerance: Expression;
    })
  | (Span & {
      readonly is: 'apart';
      readonly operator: '<' | '<=' | '>' | '>=';
      readonly left: Expression;
      readonly right: Expression;
      readonly by: Expression;
    })
  | (Span & { readonly is: 'and' | 'or'; readonly parts: readonly Test[] })
  | (Span & { readonly is: 'not'; readonly of: Test })
  | (Span & {
      readonly is: 'quantified';
      readonly quantifier: 'every' | 'some' | 'none';
      readonly range: RangeNode;
      readonly body: Test;
    })
  | (Span & {
      readonly is: 'trend';
      readonly trend: Trend;
      readonly body: Expression;
      readonly range: RangeNode;
      /** Only for `constant`. */ readonly tolerance: Expression | null;
    })
  | (Span & {
      readonly is: 'extremePlace';
      readonly kind: 'highest' | 'lowest';
      readonly body: Expression;
      readonly range: RangeNode;
      readonly low: Expression | 'vacuum' | null;
      readonly high: Expression | 'vacuum' | null;
    });

export type Node = Expression | Test;

const TESTS: ReadonlySet<string> = new Set([
  'compare',
  'about',
  'apart',
  'and',
  'or',
  'not',
  'quantified',
  'trend',
  'extremePlace',
]);

export const isTest = (node: Node): node is Test => TESTS.has(node.is);

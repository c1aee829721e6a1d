/** A question that explainers get, the number that answers it, and between what that number must lie by other means. */

/** A number of the answer. */
export interface QuestionNumber {
  readonly label: string;
  /** In the grammar of docs/sentences.md, over the engines of the starter. */ readonly expression: string;
  readonly unit: string;
  /** Of the unit in one SI unit. */ readonly perSI: number;
  readonly digits: number;
  /** [unit] Found without this program’s models of nozzle and flow. */ readonly band: Band;
  /** How the band was found, and from which source. */ readonly how: string;
}

export interface Band {
  readonly least: number;
  readonly greatest: number;
}

export interface Question {
  readonly slug: string;
  readonly asked: string;
  /** Folder under starters/. */ readonly starter: string;
  readonly numbers: readonly [QuestionNumber, ...QuestionNumber[]];
  /** One or two sentences; `{1}`, `{2}` stand for the numbers with their units. */ readonly answer: string;
  /** Under which conditions it is so. */ readonly conditions: string;
  readonly trap: string;
  readonly figure: QuestionFigure;
}

/** What picture shows it, drawn from the same starter. */
export type QuestionFigure =
  | { readonly kind: 'thrust over altitude' | 'specific impulse over altitude' | 'outlines' }
  | { readonly kind: 'pressure along the wall' | 'cut view'; readonly altitude: number }
  /** One of the starter’s own sweeps. */
  | { readonly kind: 'sweep'; readonly id: string };

/** A value with a share of it to either side. */
export const about = (value: number, share: number): Band => ({
  least: value * (1 - share),
  greatest: value * (1 + share),
});

export const between = (one: number, other: number): Band => ({
  least: Math.min(one, other),
  greatest: Math.max(one, other),
});

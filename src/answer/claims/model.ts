/** What somebody says, found in a text: claims, and what each probably means. Nothing of it counts until it is accepted. */

export type ClaimsFormat = 'text' | 'webvtt' | 'srt';

/** A piece of the text as it stands in its file. */
export interface Passage {
  readonly text: string;
  /** From 1. */ readonly line: number;
  /** Start of the caption [s]; null in plain text. */ readonly time: number | null;
  /** Its end [s]. */ readonly until: number | null;
}

export type ClaimKind =
  /** A number with its unit. */
  | 'number'
  /** One against another. */
  | 'comparison'
  /** The most of all. */
  | 'superlative'
  /** Always, never, everywhere. */
  | 'absolute';

export interface ProposedQuantity {
  /** Name in the catalogue. */ readonly quantity: string;
  readonly label: string;
  /** What in the sentence speaks for it. */ readonly because: string;
  readonly score: number;
}

export interface Claim {
  /** From 1, in the order of the text. */ readonly number: number;
  readonly say: string;
  readonly line: number;
  /** [s] */ readonly time: number | null;
  readonly kind: ClaimKind;
  /** As written. */ readonly numbers: readonly string[];
  readonly absolutes: readonly string[];
  /** Likeliest first. */ readonly quantities: readonly ProposedQuantity[];
  /** Ids in the study, in the order of the sentence. */ readonly engines: readonly string[];
  /** A test that compiles; it is a proposal, and may miss what was meant. */ readonly test: string | null;
  /** What the test takes for granted though the sentence does not say it. */ readonly assumed: readonly string[];
  /** Why there is no test. */ readonly whyNot: string | null;
}

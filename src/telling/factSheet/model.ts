/** The fact sheet: everything that is said, with what it rests on. */

import type { Verdict } from '../../answer/sentences/model.ts';
import type { Reference } from '../sources/reference.ts';

export interface FactSheetNumber {
  readonly expression: string;
  readonly label: string | null;
  readonly words: string;
  /** [SI] middle value and the two between which 95 % of the draws lie */ readonly value: number;
  readonly low: number;
  readonly high: number;
  /** The two, as people read them; null where the number is made of several quantities. */ readonly within:
    | string
    | null;
  readonly equation: string | null;
  /** Page of docs/methods. */ readonly model: string | null;
}

export interface FactSheetSignOff {
  readonly by: string;
  readonly date: string;
  readonly stands: boolean;
  readonly words: string;
}

export interface FactSheetItem {
  readonly kind: 'sentence' | 'fact' | 'analogy';
  readonly id: string;
  readonly say: string;
  readonly said: boolean;
  readonly verdict: Verdict;
  readonly label: string;
  /** [–] */ readonly share: number | null;
  readonly shareWords: string | null;
  readonly test: string | null;
  readonly wording: string | null;
  readonly instead: string | null;
  readonly why: string;
  readonly numbers: readonly FactSheetNumber[];
  /** Of an analogy: part, verdict, what is found. */ readonly parts: readonly string[];
  readonly conditions: readonly string[];
  readonly models: readonly string[];
  readonly sources: readonly string[];
  readonly signOffs: readonly FactSheetSignOff[];
}

export interface FactSheetScript {
  readonly title: string;
  /** As they read, with their live numbers. */ readonly lines: readonly {
    readonly id: string;
    readonly text: string;
  }[];
  /** Of `script.md` as its owner wrote it. */ readonly sha256: string;
  readonly signOffs: readonly FactSheetSignOff[];
}

export interface FactSheet {
  readonly format: 'plumeline fact sheet 1';
  readonly caution: string;
  readonly question: string;
  readonly program: { readonly name: string; readonly version: string };
  readonly study: { readonly file: 'study.yaml'; readonly sha256: string };
  /** As given, or of the latest sign-off; null where there is neither. */ readonly date: string | null;
  readonly engines: readonly { readonly id: string; readonly name: string; readonly description: string }[];
  /** Tested so, all of them. */ readonly conditions: readonly string[];
  readonly items: readonly FactSheetItem[];
  /** The script that says them; null where the study has none. */ readonly script: FactSheetScript | null;
  readonly references: readonly Reference[];
}

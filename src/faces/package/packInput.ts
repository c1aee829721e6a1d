/** What a package is made of. */

import type { CheckedAnalogy } from '../../answer/analogies/model.ts';
import type { DataRowUsed } from '../../answer/cited/index.ts';
import type { MeasuredSeries } from '../../answer/measured/model.ts';
import type { Need } from '../../answer/needs/index.ts';
import type { SignOffStanding } from '../../answer/review/index.ts';
import type { CheckedComparison } from '../../answer/sentences/comparePair.ts';
import type { CheckedSentence } from '../../answer/sentences/model.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import type { VehicleWorth, WorthTable } from '../../answer/worth/index.ts';
import type { Study } from '../../study/model.ts';
import type { Swept } from '../../telling/figures/sweptFigures.ts';
import type { ScriptParts } from '../../telling/handover/timedCuts.ts';
import type { DrawnFigures } from './drawnFigures.ts';
import type { ExploreFrames } from './exploreFile.ts';
import type { PackedClip } from './packClips.ts';
import type { PictureMakers } from './pictureMakers.ts';

export interface PackInput {
  readonly study: Study;
  /** `study.yaml` as its owner wrote it. */ readonly text: string;
  readonly solved: SolvedStudy;
  /** The study's sentences, checked. */ readonly sentences: readonly CheckedSentence[];
  /** Its analogies, checked. */ readonly analogies: readonly CheckedAnalogy[];
  /** Its pair, each difference with its band. */ readonly comparison: CheckedComparison | null;
  /** Its measured points, each beside what is computed there. */
  readonly measured?: readonly MeasuredSeries[];
  /** Its sweeps and maps, worked out. */ readonly swept?: Swept;
  /** Gain and price of its pair; null where it has one engine. */ readonly worth?: WorthTable | null;
  /** What the other engine is worth to the vehicles. */ readonly vehicleWorths?: readonly VehicleWorth[];
  /** What it would take, found. */ readonly needs?: readonly Need[];
  /** Rows of data about coolants and walls that it uses. */ readonly rows?: readonly DataRowUsed[];
  /** Sign-offs of `review.yaml`, and whether they stand. */ readonly standings?: readonly SignOffStanding[];
  /** Day of the package, `2026-11-26`; never from a clock. Null: none is given. */ readonly date?:
    | string
    | null;
  /** Its script, read, and its numbers; null where it has none. */ readonly script?: ScriptParts | null;
  /** Those of its figures that need no sentence, drawn already. */ readonly drawn?: DrawnFigures;
  /** The cards of its sentences, drawn already. */ readonly cards?: DrawnFigures;
  /** What moves on its page for viewers, drawn already; null where it has no engine. */
  readonly explore?: ExploreFrames | null;
  /** Who makes its pictures; absent: makers of its own. */ readonly makers?: PictureMakers;
  /** Its clips, made. */ readonly clips?: readonly PackedClip[];
  /** Ends the work; the promise is then rejected with its reason, and nothing is written. */ readonly signal?: AbortSignal;
  /** Told before each figure is drawn. */ readonly onFigure?: (
    name: string,
    which: number,
    count: number,
  ) => void;
}

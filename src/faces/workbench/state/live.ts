/** The live answer: one number of one engine, or of one against the other, at the altitude on the scale. */

import { computed, effect, signal } from '@preact/signals';
import { needsOf } from '../../../answer/asked/askProblem.ts';
import type { AskedAmbient } from '../../../answer/asked/model.ts';
import { plainAsk } from '../../../answer/asked/plainAsk.ts';
import { type CatalogueEntry, findQuantity } from '../../../answer/catalogue.ts';
import { geometricAltitudeAtPressure } from '../../../physics/air/index.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import type { PairSpans } from '../workshop/deskMessages.ts';
import { tellNumbers } from '../workshop/workshop.ts';
import { altitude, setAltitude } from './altitude.ts';
import type { LiveAsk } from './liveHash.ts';
import { liveRoute } from './liveRoute.ts';
import { engineInputs, shownEngines } from './pair.ts';
import { solved, solving } from './studyStore.ts';
import { chosenPair } from './view.ts';

/** What is asked; null before the study is there, or where the address names what is not. */
export const liveAsk = computed((): LiveAsk | null => {
  const route = liveRoute.value;
  if (route === null || route.sentence !== null) return null;
  const ids = engineInputs.value.map(({ id }) => id);
  if (route.ask !== null) {
    const { quantity, of, against } = route.ask;
    const isKnown = ids.includes(of) && (against === null || ids.includes(against));
    return isKnown && findQuantity(quantity) !== undefined ? route.ask : null;
  }
  const [base, other] = shownEngines.value.map(({ id }) => id);
  if (base === undefined) return null;
  return {
    quantity: 'specificImpulse',
    of: other ?? base,
    against: other === undefined ? null : base,
    at: null,
  };
});

export const liveEntry = computed((): CatalogueEntry | null =>
  liveAsk.value === null ? null : (findQuantity(liveAsk.value.quantity) ?? null),
);

export interface LiveNumber {
  /** [SI] */ readonly of: number;
  /** [SI]; null where there is nothing to hold it against. */ readonly against: number | null;
}
/** The last known, and why there is none. */
export const liveNumber = signal<LiveNumber | null>(null);
export const liveAbsence = signal<string | null>(null);
/** Of the number shown; null until it is known. */
export const liveSpan = signal<PairSpans | null>(null);

/** Room for a hand that is still moving the scale [ms]. */
const spanPause = 300;

function ambientHere(): AskedAmbient {
  const here = altitude.value;
  return Number.isFinite(here) ? { kind: 'altitude', altitude: here * 1000 } : { kind: 'vacuum' };
}

let latest = 0;
async function tellHere({ quantity, of, against }: LiveAsk, entry: CatalogueEntry): Promise<void> {
  latest += 1;
  const mine = latest;
  const ambient = needsOf(entry).ambient ? ambientHere() : null;
  const ids = against === null ? [of] : [of, against];
  const [own, other] = await tellNumbers(ids.map((id) => plainAsk(id, quantity, ambient)));
  if (mine !== latest || own === undefined) return;
  const absent = own.ok ? other : own;
  liveAbsence.value = absent === undefined || absent.ok ? null : absent.problem.what;
  liveNumber.value =
    own.ok && (other === undefined || other.ok) ? { of: own.value, against: other?.value ?? null } : null;
}

async function spanHere(
  { quantity, of, against }: LiveAsk,
  entry: CatalogueEntry,
  ended: AbortSignal,
): Promise<void> {
  const here = altitude.value;
  const place = !needsOf(entry).ambient ? null : Number.isFinite(here) ? here * 1000 : 'vacuum';
  const engines = against === null ? [of] : [against, of];
  const [spans] = await askDesk('spans', { engines, places: [{ quantity, altitude: place }] }, ended);
  if (!ended.aborted) liveSpan.value = spans ?? null;
}

/** Follows address, altitude and study, while the live answer is shown. */
export function followLive(): void {
  effect(() => {
    const at = liveRoute.value?.ask?.at;
    if (at === undefined || at === null) return;
    if (at.kind === 'vacuum') setAltitude(Number.POSITIVE_INFINITY);
    else {
      const metres = at.kind === 'altitude' ? at.altitude : geometricAltitudeAtPressure(at.pressure);
      setAltitude(metres / 1000);
    }
  });
  effect(() => {
    const ask = liveRoute.value?.ask ?? null;
    if (ask?.against != null && ask.against !== ask.of) chosenPair.value = [ask.against, ask.of];
  });
  effect(() => {
    const ask = liveAsk.value;
    const entry = liveEntry.value;
    void altitude.value;
    if (ask === null || entry === null || solved.value === null || solving.value) return;
    tellHere(ask, entry).catch(reportError);
    liveSpan.value = null;
    const gone = new AbortController();
    const timer = setTimeout(() => {
      spanHere(ask, entry, gone.signal).catch((error: unknown) => {
        if (!(error instanceof QuestionEnded)) reportError(error);
      });
    }, spanPause);
    return () => {
      clearTimeout(timer);
      gone.abort();
    };
  });
}

/** Pictures of whole flows as the page has them: painted by a worker, held by what they show. */

import { signal } from '@preact/signals';
import type { FlowPaint, FlowPainted, FlowPaintOrder } from './messages.ts';

/** Counts up with every picture that comes. */
export const picturesThere = signal(0);

/** Pictures held: those of two engines over a whole climb, and as many of the look before. */
const MOST = 80;
const pictures = new Map<string, ImageBitmap>();
/** Whose cells could not be had: it is asked for again when its field is listed anew. */
const missing = new Set<string>();
/** What cannot be painted. */
const faulty = new Set<string>();

let worker: Worker | null = null;
let asked = '';

/** Names of fields of which any picture came. */
const painted = new Set<string>();
export const isPainted = (key: string): boolean => painted.has(key);

export const pictureOf = (id: string): ImageBitmap | null => pictures.get(id) ?? null;

/** Paint these, the first first; asked again with the same it does nothing. */
export function paint(wanted: readonly FlowPaint[]): void {
  const open = wanted.filter(({ id }) => !pictures.has(id) && !missing.has(id) && !faulty.has(id));
  const now = open.map(({ id }) => id).join();
  if (now === asked) return;
  asked = now;
  if (open.length === 0 && worker === null) return;
  worker ??= started();
  worker.postMessage({ wanted: open } satisfies FlowPaintOrder);
}

/** The cells of these fields are there now. */
export function forgetMissing(keys: readonly string[]): void {
  const listed = new Set(keys);
  for (const id of missing) {
    if (!listed.has(keyOf(id))) continue;
    missing.delete(id);
    asked = '';
  }
}

/** Of the field that the picture of this name shows. */
const keyOf = (id: string): string => id.slice(0, id.indexOf(' '));

function started(): Worker {
  const fresh = new Worker(new URL('./painterWorker.ts', import.meta.url), { type: 'module' });
  fresh.addEventListener('message', ({ data }: MessageEvent<FlowPainted>) => take(data));
  fresh.addEventListener('error', (event) => {
    reportError(new Error(event.message || 'The painter of whole flows failed.'));
    fresh.terminate();
    if (worker !== fresh) return;
    worker = null;
    asked = '';
  });
  return fresh;
}

function take(report: FlowPainted): void {
  const { id, picture } = report;
  if (picture === null) {
    const fault = 'fault' in report ? report.fault : undefined;
    if (fault !== undefined) reportError(new Error(`A whole flow could not be painted: ${fault}`));
    (fault === undefined ? missing : faulty).add(id);
  } else {
    pictures.set(id, picture);
    painted.add(keyOf(id));
    const [oldest] = pictures.keys();
    if (pictures.size > MOST && oldest !== undefined) {
      pictures.get(oldest)?.close();
      pictures.delete(oldest);
    }
  }
  picturesThere.value += 1;
}

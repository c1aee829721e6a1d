/** In a worker of its own: a hand that takes its share of a field. */

import { type HandWork, workAsHand } from '../../src/physics/euler/index.ts';

addEventListener('message', ({ data }: MessageEvent<HandWork>) => workAsHand(data));
// Once this script has run to its end: before that a message waits for the giver’s own turn, which it does not take while it steps.
setTimeout(() => postMessage('ready'));

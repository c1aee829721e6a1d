/** Claims as a reader at a terminal meets them. */

import type { Claim } from '../../../answer/claims/index.ts';
import { placeInFilm } from '../../../telling/script/index.ts';
import { padEnd, wrapped } from './wrap.ts';

export interface ClaimsParts {
  readonly claims: readonly Claim[];
  readonly accepted: readonly Claim[];
  readonly caution: string;
  /** As given; null where none was. */ readonly study: string | null;
}

export function claimsText({ claims, accepted, caution, study }: ClaimsParts, width: number): string {
  const parts = [
    claims.length === 0
      ? 'No claims were found: no sentence with a number and its unit, a comparison, a superlative or an absolute word. Only English is read.'
      : claims.map((claim) => claimText(claim, width)).join('\n\n'),
    lastLine(claims, accepted, study),
    caution,
  ];
  return parts.map((part, i) => (i === 0 && claims.length > 0 ? part : wrapped(part, width))).join('\n\n');
}

function lastLine(claims: readonly Claim[], accepted: readonly Claim[], study: string | null): string {
  if (accepted.length > 0) {
    return `Written into the study as kept, not said: ${accepted.map(({ number }) => number).join(', ')}. Now: plumeline check ${study ?? ''}`.trim();
  }
  const tested = claims.filter(({ test }) => test !== null).length;
  return `${claims.length} claims, ${tested} with a proposed test. What they mean is a guess by words and units, in English; nothing counts until it is accepted with --accept.`;
}

function claimText(claim: Claim, width: number): string {
  const { number, say, line, time, kind, quantities, test, assumed, whyNot } = claim;
  const row = (label: string, text: string): string =>
    wrapped(text, width, ' '.repeat(12), `  ${padEnd(label, 9)} `);
  const at = time === null ? `line ${line}` : `line ${line}, ${placeInFilm(time)}`;
  return [
    `${number}  ${kind}  (${at})`,
    wrapped(`“${say}”`, width, '  '),
    ...quantities.map(({ label, quantity, because }, i) =>
      row(i === 0 ? 'Means' : 'or', `${label} (${quantity}), by ${because}`),
    ),
    ...(test === null ? [] : [row('Test', test)]),
    ...assumed.map((text) => row('Assumes', text)),
    ...(whyNot === null ? [] : [row('No test', whyNot)]),
  ].join('\n');
}

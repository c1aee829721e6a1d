import { shareText } from '../../../answer/sentences/words.ts';

/** `holds in 97 % of what is not known` */
export function shareWords(share: number): string {
  if (share === 1) return 'holds throughout';
  if (share === 0) return 'never holds';
  return `holds in ${shareText(share)} of what is not known`;
}

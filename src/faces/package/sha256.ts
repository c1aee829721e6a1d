import { createHash } from 'node:crypto';

/** SHA-256, hexadecimal; of a text in UTF-8. */
export const sha256 = (content: string | Buffer): string =>
  createHash('sha256').update(content).digest('hex');

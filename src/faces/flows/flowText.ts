/** A whole flow as text: numbers of the cells as the bytes of 32-bit floats, lowest byte first, in base 64. */

import type { FlowField } from '../../answer/flow/index.ts';

export const FLOW_FORMAT = 'plumeline flow field 9';

/** @throws Error where it is no whole flow */
export function flowOfText(text: string, bytesOf: (base64: string) => ArrayBuffer = decoded): FlowField {
  const read = JSON.parse(text, (_key, value: unknown) =>
    typeof value === 'object' && value !== null && 'floats' in value && typeof value.floats === 'string'
      ? new Float32Array(bytesOf(value.floats))
      : value,
  ) as { readonly format?: unknown } & FlowField;
  const { format, ...field } = read;
  if (format !== FLOW_FORMAT) throw new Error('no flow field');
  return field;
}

export function flowText(field: FlowField, base64Of: (bytes: Uint8Array) => string = encoded): string {
  return JSON.stringify({ format: FLOW_FORMAT, ...field }, (_key, value: unknown) =>
    value instanceof Float32Array
      ? { floats: base64Of(new Uint8Array(value.buffer, value.byteOffset, value.byteLength)) }
      : value,
  );
}

/** Bytes that are made letters at once. */
const PIECE = 0x8000;

function encoded(bytes: Uint8Array): string {
  let letters = '';
  for (let at = 0; at < bytes.length; at += PIECE)
    letters += String.fromCharCode(...bytes.subarray(at, at + PIECE));
  return btoa(letters);
}

/** Everywhere there, slower than what Node has of its own. */
function decoded(base64: string): ArrayBuffer {
  const bytes = atob(base64);
  const out = new Uint8Array(bytes.length);
  for (let i = 0; i < bytes.length; i++) out[i] = bytes.charCodeAt(i);
  return out.buffer;
}

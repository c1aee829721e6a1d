/** A number with so many decimals and a true minus; a plus where it is wanted. What rounds to nothing has no sign. */
export function textOfSigned(value: number, decimals: number, signed: boolean): string {
  const digits = Math.abs(value).toFixed(decimals);
  if (Number(digits) === 0) return digits;
  return value < 0 ? `−${digits}` : signed ? `+${digits}` : digits;
}

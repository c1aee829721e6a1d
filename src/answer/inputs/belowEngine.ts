/** The path inside the engine or the vehicle: `engines.bell.chamber.pressure` → `chamber.pressure`. */
export function belowEngine(path: string): string {
  return path.replace(/^(?:engines|vehicles)\.[^.]+\./, '');
}

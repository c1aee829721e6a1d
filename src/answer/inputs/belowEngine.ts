/** The path inside the engine: `engines.bell.chamber.pressure` → `chamber.pressure`. */
export function belowEngine(path: string): string {
  return path.replace(/^engines\.[^.]+\./, '');
}

/** Where the command line writes: results to one stream, everything else to the other. */
export interface Terminal {
  /** Results. */ out(text: string): void;
  /** Progress, warnings, errors. */ err(text: string): void;
  /** Columns to wrap at. */ readonly width: number;
  /** Milliseconds since the command began. */ elapsed(): number;
}

const NARROW = 60;
const WIDE = 100;

export function processTerminal(): Terminal {
  const begun = performance.now();
  process.stdout.on('error', stopWhenNobodyReads);
  return {
    out: (text) => process.stdout.write(`${text}\n`),
    err: (text) => process.stderr.write(`${text}\n`),
    width: Math.min(WIDE, Math.max(NARROW, process.stdout.columns ?? WIDE)),
    elapsed: () => performance.now() - begun,
  };
}

/** Says what is being done, but only once the command has taken long enough for somebody to wonder. */
export function sayIfSlow(terminal: Terminal, what: string): void {
  if (terminal.elapsed() > 800) terminal.err(what);
}

/** `plumeline … | head` closes the pipe early: that is the reader's wish, not an error. */
function stopWhenNobodyReads(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
}

import { main } from '../../../src/faces/cli/main.ts';

export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line in this process, its streams caught; `elapsed` pretends how long it has taken [ms]. */
export async function runMain(args: readonly string[], elapsed = 0): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const status = await main(args, {
    out: (text) => void out.push(text),
    err: (text) => void err.push(text),
    width: 100,
    elapsed: () => elapsed,
  });
  return { status, out: out.join('\n'), err: err.join('\n') };
}

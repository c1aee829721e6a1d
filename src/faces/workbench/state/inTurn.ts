/** Edits follow one another: each is made on the text the one before left. */

let queue: Promise<unknown> = Promise.resolve();

export function inTurn<Result>(task: () => Promise<Result>): Promise<Result> {
  const turn = queue.then(task);
  queue = turn.catch(() => undefined);
  return turn;
}

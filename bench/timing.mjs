/** Time per unit of work: warm-up, then samples until the time is used up; least and median in seconds. */
export function measure(work, perRound, warmUp, seconds) {
  let end = performance.now() + warmUp * 1000;
  while (performance.now() < end) work();
  const samples = [];
  end = performance.now() + seconds * 1000;
  while (performance.now() < end || samples.length < 5) {
    const start = performance.now();
    work();
    samples.push((performance.now() - start) / 1000 / perRound);
  }
  samples.sort((a, b) => a - b);
  return { least: samples[0], median: samples[Math.floor(samples.length / 2)], samples: samples.length };
}

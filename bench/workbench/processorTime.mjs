/** Processor time of a page by thread, from the browser's own trace: it does not grow where others are at work beside. */

/** Does the work under a trace. @returns what the work returned, and the tasks of each thread of the page [ms of processor time] */
export async function traced(browser, page, work) {
  await browser.startTracing(page, {
    categories: ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline'],
  });
  const result = await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  const threads = new Map();
  for (const { name, pid, tid, args } of traceEvents)
    if (name === 'thread_name') threads.set(`${pid}:${tid}`, args.name);
  const tasks = { page: [], workers: [] };
  for (const { name, ph, pid, tid, tdur } of traceEvents) {
    if (ph !== 'X' || name !== 'RunTask' || tdur === undefined) continue;
    const thread = threads.get(`${pid}:${tid}`) ?? '';
    if (thread === 'CrRendererMain') tasks.page.push(tdur / 1000);
    else if (thread.startsWith('DedicatedWorker')) tasks.workers.push(tdur / 1000);
  }
  return { result, tasks };
}

/** Threads that a frame passes on its way from the event to the screen. */
const onTheWay = /^(CrRendererMain|Compositor|VizCompositorThread|ThreadPoolForegroundWorker)/;

/**
 * The same by steps: the work marks each with `performance.mark('step')`.
 * @returns what the work returned, and for each step the processor time of all threads on the way to its frame [ms], one after the other
 */
export async function tracedSteps(browser, page, work) {
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', 'blink.user_timing'] });
  const result = await work();
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  const threads = new Map();
  for (const { name, pid, tid, args } of traceEvents)
    if (name === 'thread_name') threads.set(`${pid}:${tid}`, args.name);
  const marks = traceEvents.filter(({ name, cat }) => name === 'step' && cat.includes('user_timing'));
  const starts = marks.map(({ ts }) => ts).sort((a, b) => a - b);
  const steps = starts.map(() => 0);
  for (const { name, ph, pid, tid, ts, tdur } of traceEvents) {
    if (ph !== 'X' || tdur === undefined || ts < starts[0]) continue;
    const thread = threads.get(`${pid}:${tid}`) ?? '';
    const counts = thread.startsWith('ThreadPool') ? name === 'RasterTask' : name.endsWith('RunTask');
    if (!counts || !onTheWay.test(thread)) continue;
    steps[starts.findLastIndex((start) => start <= ts)] += tdur / 1000;
  }
  return { result, steps };
}

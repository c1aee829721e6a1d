/** Processor time of single threads, and binding them to one core; on Linux only. */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';

const TASKS = '/proc/self/task';
export const canTell = existsSync(`${TASKS}/${process.pid}/schedstat`) && existsSync('/proc/stat');

/** Threads of this program, by their ids. */
export const threadsNow = () => (canTell ? readdirSync(TASKS) : []);

/** Of a thread: time at work, and time ready to work while others had the cores [ms]. */
export function spentBy(thread) {
  const [work, queue] = readFileSync(`${TASKS}/${thread}/schedstat`, 'utf8').split(' ').map(Number);
  return { work: work / 1e6, queue: queue / 1e6 };
}

export const mainThread = String(process.pid);

const TICK = 10;
/** Processor time of all other programs, less a constant [ms]. */
export function spentByOthers() {
  const [, user, nice, system, , , irq, softirq, stolen] = readFileSync('/proc/stat', 'utf8')
    .split('\n', 1)[0]
    .split(/\s+/)
    .map(Number);
  const own = process.cpuUsage();
  return (user + nice + system + irq + softirq + stolen) * TICK - (own.user + own.system) / 1e3;
}

/** The cores that this program may use, as `taskset` writes them; null where that cannot be told. */
export function coresAllowed() {
  const { status, stdout } = spawnSync('taskset', ['-p', '-c', mainThread], { encoding: 'utf8' });
  return status === 0 ? (stdout.split(': ')[1]?.trim() ?? null) : null;
}

/** Binds every thread of this program to these cores. */
export const bindTo = (cores) => call('taskset', '-a', '-p', '-c', cores, mainThread);

/** Every thread goes before all other programs, the main thread before its hands as one that has slept does otherwise. */
export function goAhead() {
  call('chrt', '-a', '-r', '-p', '1', mainThread);
  call('chrt', '-r', '-p', '2', mainThread);
}

export const goInTurn = () => call('chrt', '-a', '-o', '-p', '0', mainThread);

function call(tool, ...args) {
  const { status, stderr, error } = spawnSync(tool, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${tool} failed: ${error?.message ?? stderr}`);
}

/**
 * Stop when the process that started this one is gone: npm runs a script through a shell, and some shells die of a
 * SIGTERM without passing it on. On Windows a process keeps the number of its parent; there this does nothing.
 */
export function stopWithParent() {
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent) process.kill(process.pid, 'SIGTERM');
  }, 500).unref();
}

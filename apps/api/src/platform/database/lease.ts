import { closeSync, openSync, rmSync, statSync, utimesSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';

const RENEW_MS = 1000;
/** A lease that was not renewed for this long belongs to a process that died. */
const STALE_MS = 10_000;

/**
 * Runs `work` while no other process on this machine does, by a file that is renewed as long as the work goes on.
 * No process number is kept in it: in a container the one that died and the one that comes after have the same.
 */
export async function withLease<T>(file: string, work: () => Promise<T>): Promise<T> {
  while (!take(file)) await pause(100);
  const renew = setInterval(() => utimesSync(file, new Date(), new Date()), RENEW_MS);
  try {
    return await work();
  } finally {
    clearInterval(renew);
    rmSync(file, { force: true });
  }
}

function take(file: string): boolean {
  try {
    closeSync(openSync(file, 'wx', 0o600));
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    const age = Date.now() - (statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    if (age > STALE_MS) rmSync(file, { force: true });
    return false;
  }
}

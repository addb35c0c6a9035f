import { monitorEventLoopDelay } from 'node:perf_hooks';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { Workers } from '../../apps/api/src/platform/workers.js';
import { measured } from './measured.js';

const LIMITS = { longestMs: 2000, mostMiB: 64, file: new URL('./endless.mjs', import.meta.url).href };
let workers: Workers;
beforeEach(() => void (workers = new Workers(1, LIMITS)));
afterEach(() => workers.onApplicationShutdown());

/** The names of `endless.mjs` stand for jobs of the house here. */
const job = (name: string) => name as 'carryFire';
const give = (value: number) => value as never;

it.each([
  { name: 'loop', way: 'run' },
  { name: 'eat', way: 'run' },
  { name: 'loop', way: 'runPatiently' },
  { name: 'eat', way: 'runPatiently' },
] as const)('a computation that does not end ($name, $way) is ended at its limit; the house lives on meanwhile, and computes again', async ({ name, way }) => {
  const delay = monitorEventLoopDelay({ resolution: 5 });
  delay.enable();
  let turns = 0;
  const turning = setInterval(() => (turns += 1), 10);
  const begun = performance.now();
  await expect(workers[way](job(name), give(0))).rejects.toThrow(/took too long|too much memory/);
  const tookS = (performance.now() - begun) / 1000;
  clearInterval(turning);
  delay.disable();
  expect(turns).toBeGreaterThan(5);
  expect(await workers[way](job('fine'), give(21))).toBe(42);
  measured('R21', `${name} (${way}) ended after ${tookS.toFixed(1)} s, event loop p99 ${(delay.percentile(99) / 1e6).toFixed(0)} ms`);
});

it('a patient computation that waits behind a long one has its whole time for itself', async () => {
  const first = workers.runPatiently(job('loop'), give(0)).catch((error: Error) => error.message);
  expect(await workers.runPatiently(job('fine'), give(4))).toBe(8);
  expect(await first).toMatch(/took too long/);
});

// What the fire costs in time, one pit on one core. Other programs on the machine make every figure worse: the least is said too.
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { advise, beliefFromBytes, carryFire, REFERENCE_SHAPE } from '@stokehold/domain/fire';
import { epochS, later } from '@stokehold/domain/quantity';
import { AIR, BAND, STANDARD } from './fire-night.mjs';

const around = { weather: { windMPerS: 1.5, fromFireEndRad: 1.5, ambientTempC: 15, rainFrac: 0 }, air: AIR, foodLoadFrac: 0.6 };
const wood = { ...STANDARD, onCart: 20, offcuts: 10 };

/** Carrying a minute with its readings, with fan and due time, with the quick and the full advice. */
export function speed(table) {
  const start = epochS(0);
  const look = { at: later(start, 120), bed: 'full', left: 'some', fireEndTempC: 125, stackEndTempC: 123, on: { pieces: [STANDARD], raked: true }, position: 'door' };
  const base = { shape: REFERENCE_SHAPE, seed: 1, around, band: BAND, lastLookAt: start, wantsOutlook: false, readings: [] };
  const { belief } = carryFire({ ...base, from: { at: start, state: 'full' }, to: later(start, 600), look });
  const to = later(start, 660);
  const carry = (more) => carryFire({ ...base, from: { belief }, to, readings: [{ until: to, fireEndTempC: 124, stackEndTempC: 122 }], ...more });
  const believed = beliefFromBytes(belief);
  const jobs = {
    'carry a minute, readings': () => carry({}),
    'the same with fan and due': () => carry({ wantsOutlook: true }),
    'advice, quick': () => advise(believed, { ...around, band: BAND, wood, effort: 'quick', seed: 1 }),
    'advice, full': () => advise(believed, { ...around, band: BAND, wood, seed: 1 }),
  };
  const rows = {};
  const told = {};
  for (const [name, job] of Object.entries(jobs)) {
    for (let i = 0; i < 30; i++) job();
    const times = Array.from({ length: 60 }, () => timed(job)).sort((a, b) => a - b);
    told[name] = { leastMs: times[0], p95Ms: times[57] };
    rows[name] = { 'least ms': times[0].toFixed(2), 'median ms': times[30].toFixed(2), 'p95 ms': times[57].toFixed(2) };
  }
  table(`One pit, one core; a belief is ${(belief.length / 1024).toFixed(0)} kB`, rows);
  const update = told['carry a minute, readings'].leastMs;
  return { updateMs: update, forecastMs: told['the same with fan and due'].leastMs - update, decisionP95Ms: told['advice, full'].p95Ms };
}

function timed(job) {
  const from = performance.now();
  job();
  return performance.now() - from;
}

/** Printed by the fire's bench itself; alone only when asked for by name. */
if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  speed((title, rows) => {
    console.log(`\n${title}`);
    console.table(rows);
  });
}

// Rounds as routes: a vehicle is a person, a customer a task with a hard window, travel is walking, and only walking counts.
// What it holds the search to: windows, travel, insertion, the checker. What it does not: chains, latest safe, breaks, pairs, even load.
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { afterIterations } from '@stokehold/scheduling/search';
import { checkRounds, planRounds } from '@stokehold/scheduling/rounds';

const DATA = JSON.parse(readFileSync(new URL('../published/rounds-solomon.json', import.meta.url), 'utf8'));
const FROM = 1_800_000_000;
/** Distances are cut to one decimal; a second stands for a tenth. */
const TENTHS = 10;
const tenths = ([, ax, ay], [, bx, by]) => Math.floor(TENTHS * Math.hypot(ax - bx, ay - by));

/** Everybody's way home is a pinned task of one second at the depot, at its closing time. */
const homeTask = (id, atS) => ({ id, kind: 'handover', place: '0', lengthS: 1, earliestAt: FROM + atS, dueAt: FROM + atS, latestAt: FROM + atS, people: 1 });

/** An instance as a night of rounds; capacity is left out and looked at afterwards. */
export function roundsOfRoutes(name, { vehicles = DATA.instances[name].vehicles } = {}) {
  const { rows } = DATA.instances[name];
  const [depot, ...customers] = rows;
  const closesS = TENTHS * depot[5];
  const names = Array.from({ length: vehicles }, (_, i) => String(i + 1).padStart(2, '0'));
  const tasks = customers.map(([number, , , , ready, due, service]) => ({
    id: `customer-${String(number).padStart(2, '0')}`, kind: 'haul', place: String(number), lengthS: TENTHS * service,
    earliestAt: FROM + TENTHS * ready, dueAt: FROM + TENTHS * due, latestAt: FROM + TENTHS * due, people: 1,
  }));
  return {
    from: FROM, until: FROM + closesS + 1, places: rows.map(([number]) => String(number)), walkS: rows.map((a) => rows.map((b) => tenths(a, b))),
    people: names.map((n) => ({ id: `vehicle-${n}`, startsAt: FROM, endsAt: FROM + closesS + 1, skills: [], atPlace: '0', freeFrom: FROM, breaks: [] })),
    pits: [], tasks: [...tasks, ...names.map((n) => homeTask(`home-${n}`, closesS))], frozen: [], promises: [],
    pins: names.map((n) => ({ work: { kind: 'task', taskId: `home-${n}` }, personIds: [`vehicle-${n}`], startsAt: FROM + closesS })),
    parameters: { evenly: 0 },
  };
}

/** Distance, vehicles that leave the depot, and the heaviest load of one, of a plan. */
export function routesOf(name, plan) {
  const { rows } = DATA.instances[name];
  const loads = new Map();
  for (const { work, personIds } of plan.assignments) {
    if (work.kind !== 'task' || !work.taskId.startsWith('customer-')) continue;
    loads.set(personIds[0], (loads.get(personIds[0]) ?? 0) + rows[Number(work.taskId.slice(9))][3]);
  }
  return { distance: plan.levels.walkS / TENTHS, vehicles: loads.size, heaviest: Math.max(0, ...loads.values()), capacity: DATA.instances[name].capacity };
}

const SEEDS = Number(process.env.SEEDS ?? 20);
const BUDGETS = [500, 2000, 8000];
const p95 = (numbers) => [...numbers].sort((a, b) => a - b)[Math.min(numbers.length - 1, Math.ceil(0.95 * numbers.length) - 1)];

function row(name, best, iterations) {
  const problem = roundsOfRoutes(name);
  const runs = Array.from({ length: SEEDS }, (_, i) => {
    const [from, cpu] = [performance.now(), process.cpuUsage()];
    const { plan } = planRounds(problem, { seed: i + 1, stop: afterIterations(iterations) });
    const { user, system } = process.cpuUsage(cpu);
    return { ...routesOf(name, plan), ms: performance.now() - from, cpuMs: (user + system) / 1000, faults: checkRounds(problem, plan).length + plan.levels.unplaced + plan.levels.pastLatestS };
  });
  return {
    instance: name, iterations, 'wall ms p95': Math.round(p95(runs.map(({ ms }) => ms))), 'CPU ms p95': Math.round(p95(runs.map(({ cpuMs }) => cpuMs))), proven: best,
    'distance p95': p95(runs.map(({ distance }) => distance)), best: Math.min(...runs.map(({ distance }) => distance)), 'seeds at the optimum': `${runs.filter(({ distance }) => distance === best).length} of ${SEEDS}`,
    'over capacity': runs.filter(({ heaviest, capacity }) => heaviest > capacity).length, violations: runs.reduce((sum, { faults }) => sum + faults, 0),
  };
}

/** Prints distance against the proven optimum: 780 feasible routes of R101 enumerated, 210 452 route sets of C101. */
export async function run() {
  console.log(`Solomon 25 customers through the same search, distances cut to one decimal, ${SEEDS} seeds`);
  console.table([['R101', 617.1], ['C101', 191.3]].flatMap(([name, best]) => BUDGETS.map((iterations) => row(name, best, iterations))));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();

// Cook plans: drawn yards by seed, each plan through the checker; cost over the bound, by iterations.
// Times are processor time of this process: a shared machine stretches the clock on the wall.
import { pathToFileURL } from 'node:url';
import { checkCookPlan, generatedYard, planCooks } from '@stokehold/scheduling/cook-plan';
import { afterIterations } from '@stokehold/scheduling/search';

const YARDS = [
  { name: '3 pits, 6 cooks, 1 service', pits: 3, cooks: 6, services: 1 },
  { name: '6 pits, 14 cooks, 2 services', pits: 6, cooks: 14, services: 2 },
  { name: '12 pits, 40 cooks, 3 services', pits: 12, cooks: 40, services: 3 },
];
const SEEDS = [1, 2, 3];
const BUDGETS = [0, 1000, 5000];
/** The bound takes longest; it is the same for each budget. */
const BOUND_STEPS = 40;
const cpuMs = () => process.cpuUsage().user / 1000;
const percent = (frac) => (Number.isNaN(frac) ? '-' : Math.round(frac * 1000) / 10);
const median = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];

function row({ name, ...yard }, iterations) {
  const runs = SEEDS.map((seed) => {
    const problem = generatedYard({ ...yard, seed });
    const from = cpuMs();
    const plan = planCooks(problem, { seed, stop: afterIterations(iterations), boundSteps: iterations === BUDGETS.at(-1) ? BOUND_STEPS : 0 });
    const { unplaced, lateMillionths, keptTooLongS, crewOverS, costCents } = plan.levels;
    return { ms: cpuMs() - from, unplaced, late: lateMillionths, keptTooLongS, crewOverS, costCents, gap: plan.boundCents > 0 ? costCents / plan.boundCents - 1 : NaN, violations: checkCookPlan(problem, plan).length };
  });
  const of = (key) => median(runs.map((run) => run[key]));
  return {
    yard: name, iterations, 'cpu ms': Math.round(of('ms')), unplaced: of('unplaced'), 'over the chance': of('late'), 'kept too long s': of('keptTooLongS'), 'crew over s': of('crewOverS'), 'cost cents': of('costCents'),
    'over bound %': percent(of('gap')), 'worst %': percent(Math.max(...runs.map(({ gap }) => gap))), violations: runs.reduce((sum, one) => sum + one.violations, 0),
  };
}

/** Prints one row a yard and budget. */
export async function run() {
  planCooks(generatedYard({ pits: 3, cooks: 8, services: 2, seed: 9 }), { seed: 1, stop: afterIterations(200) });
  console.log('Median of 3 seeds; iterations 0 is the first draft alone; the bound, at the last budget, takes most of its time');
  console.table(YARDS.flatMap((yard) => BUDGETS.map((iterations) => row(yard, iterations))));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();

// Cook plans: drawn yards by seed, each plan through the checker; cost over the bound, by iterations.
// Times are processor time of this process: a shared machine stretches the clock on the wall.
import { pathToFileURL } from 'node:url';
import { checkCookPlan, generatedYard, inventedSaturday, planCooks } from '@stokehold/scheduling/cook-plan';
import { afterIterations } from '@stokehold/scheduling/search';
import highsLoader from 'highs';
import { cookPlanAsMip, smallYard } from '../published/cook-plan-as-mip.mjs';

const YARDS = [
  { name: '3 pits, 6 cooks, 1 service', pits: 3, cooks: 6, services: 1 },
  { name: '6 pits, 14 cooks, 2 services', pits: 6, cooks: 14, services: 2 },
  { name: '12 pits, 40 cooks, 3 services', pits: 12, cooks: 40, services: 3 },
];
const SEEDS = [1, 2, 3];
const BUDGETS = [0, 1000, 5000];
/** The bound takes longest; it is the same for each budget. */
const BOUND_STEPS = 40;
/** What the library is given for one yard. */
const LIBRARY_S = 60;
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

/** The planned Saturday: two services, 14 cooks, 6 pits. */
function saturday(iterations) {
  const problem = inventedSaturday();
  const from = cpuMs();
  const plan = planCooks(problem, { seed: 1, stop: afterIterations(iterations), boundSteps: BOUND_STEPS });
  const { unplaced, keptTooLongS, crewOverS, costCents } = plan.levels;
  return {
    iterations, 'cpu ms': Math.round(cpuMs() - from), unplaced, ...Object.fromEntries(plan.services.map(({ serviceId, lateMillionths }) => [`${serviceId} late %`, lateMillionths / 1e4])), 'kept too long s': keptTooLongS, 'crew over s': crewOverS,
    'cost cents': costCents, 'over bound %': percent(costCents / plan.boundCents - 1), violations: checkCookPlan(problem, plan).length,
  };
}

/** Ours beside the best of HiGHS, a general library for mixed-integer programmes, where it gets there within the time. */
function beside(highs, name, problem, limitS) {
  const plan = planCooks(problem, { seed: 1, stop: afterIterations(BUDGETS.at(-1)), boundSteps: BOUND_STEPS });
  const from = cpuMs();
  const { Status: status, ObjectiveValue: best } = highs.solve(cookPlanAsMip(problem), { time_limit: limitS, mip_rel_gap: 0 });
  const { unplaced, lateMillionths, keptTooLongS, costCents } = plan.levels;
  return {
    yard: name, 'library says': status, 'its cpu s': Math.round((cpuMs() - from) / 100) / 10, 'its cost cents': status === 'Infeasible' ? '-' : Math.round(best), 'our cost cents': unplaced + lateMillionths + keptTooLongS > 0 ? '-' : costCents,
    'ours over its %': status === 'Infeasible' ? '-' : Math.abs(percent(costCents / best - 1)), 'its over our bound %': status === 'Infeasible' ? '-' : percent(best / plan.boundCents - 1),
  };
}

/** Prints one row a yard and budget. */
export async function run() {
  planCooks(generatedYard({ pits: 3, cooks: 8, services: 2, seed: 9 }), { seed: 1, stop: afterIterations(200) });
  console.log('Median of 3 seeds; iterations 0 is the first draft alone; the bound, at the last budget, takes most of its time');
  console.table(YARDS.flatMap((yard) => BUDGETS.map((iterations) => row(yard, iterations))));
  console.log('\nThe planned Saturday: each service is to be late at most 5 times in 100');
  console.table(BUDGETS.map(saturday));
  console.log(`\nBeside a general library: drawn yards of 2 pits and 5 cooks, and the Saturday, in steps of an hour with people enough; ${LIBRARY_S} s at most`);
  const highs = await highsLoader();
  const whole = { ...inventedSaturday(), parameters: { stepS: 3600 } };
  console.table([...[1, 2, 3, 4].map((seed) => beside(highs, `drawn, seed ${seed}`, smallYard(seed), LIBRARY_S)), beside(highs, 'the Saturday', { ...whole, crew: whole.crew.map((stretch) => ({ ...stretch, people: 40 })) }, LIBRARY_S)]);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();

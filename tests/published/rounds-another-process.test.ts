// Same input, seed and iterations give the same plan, also with the input shuffled and in another process: there is no outside figure
// for it, the plan of this process stands against that of another.
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { afterIterations } from '@stokehold/scheduling/search';
import { generatedNight, planRounds, promisesOf, repairRounds, type RoundProblem } from '@stokehold/scheduling/rounds';

const ITERATIONS = 300;
const options = (seed: number) => ({ seed, stop: afterIterations(ITERATIONS) });

/** Reads a problem and plans it, and again as a repair of that plan; reads the built libraries, as the product does. */
const CHILD = `
  import { readFileSync } from 'node:fs';
  import { afterIterations } from '@stokehold/scheduling/search';
  import { planRounds, promisesOf, repairRounds } from '@stokehold/scheduling/rounds';
  const { problem, seed } = JSON.parse(readFileSync(0, 'utf8'));
  const options = () => ({ seed, stop: afterIterations(${ITERATIONS}) });
  const { plan, planHash } = planRounds(problem, options());
  const repaired = repairRounds({ ...problem, promises: promisesOf(plan, problem.from), people: problem.people.map((one) => ({ ...one, freeFrom: problem.from + 900 })) }, plan, options());
  console.log(JSON.stringify([planHash, repaired.planHash]));
`;

function elsewhere(problem: RoundProblem, seed: number): unknown {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  return JSON.parse(execFileSync(process.execPath, ['--input-type=module', '--eval', CHILD], { cwd: root, input: JSON.stringify({ problem, seed }), encoding: 'utf8' }));
}

/** The same night, every list of it the other way round. */
const turned = (problem: RoundProblem): RoundProblem => ({
  ...problem, people: [...problem.people].reverse(), pits: [...problem.pits].reverse(), tasks: [...problem.tasks].reverse(),
  places: [...problem.places].reverse(), walkS: [...problem.walkS].reverse().map((row) => [...row].reverse()),
});

it.each([1, 2])('a night is planned and repaired alike in another process, and with its input turned round (night %d)', (seed) => {
  const problem = generatedNight({ pits: 6, people: 3, seed, hours: 6 });
  const { plan, planHash } = planRounds(problem, options(seed));
  const later = { ...problem, promises: promisesOf(plan, problem.from), people: problem.people.map((one) => ({ ...one, freeFrom: (problem.from + 900) as typeof problem.from })) };
  const here = [planHash, repairRounds(later, plan, options(seed)).planHash];
  expect(elsewhere(problem, seed)).toEqual(here);
  expect(elsewhere(turned(problem), seed)).toEqual(here);
  expect(planRounds(problem, options(seed + 1)).planHash).not.toBe(planHash);
});

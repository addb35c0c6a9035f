// Loading of one pit: drawn pits by seed, each plan through the checker; how many are proven best, and how far the rest may be off.
// Times are processor time of this process: a shared machine stretches the clock on the wall.
import { pathToFileURL } from 'node:url';
import { checkPlacement, generatedPit, planPlacement } from '@stokehold/scheduling/placement';

const PITS = [
  { name: '3 zones, 2 cooks of up to 8', zones: 3, grates: 1, cooks: 2, pieces: 8, loadFrac: 0.8 },
  { name: '3 zones, 4 cooks of up to 10', zones: 3, grates: 1, cooks: 4, pieces: 10, loadFrac: 0.8 },
  { name: '4 zones x 2 grates, 4 cooks of up to 12', zones: 4, grates: 2, cooks: 4, pieces: 12, loadFrac: 0.7 },
  { name: '6 zones x 2 grates, 6 cooks of up to 10', zones: 6, grates: 2, cooks: 6, pieces: 10, loadFrac: 0.7 },
  { name: '4 zones x 2 grates, 5 cooks, more food than grate', zones: 4, grates: 2, cooks: 5, pieces: 10, loadFrac: 1.2 },
];
const SEEDS = Array.from({ length: 20 }, (_, seed) => seed + 1);
const cpuMs = () => process.cpuUsage().user / 1000;

/** Prints one row a kind of pit. */
export async function run() {
  planPlacement(generatedPit({ ...PITS[2], seed: 99 }));
  console.table(PITS.map(({ name, ...pit }) => {
    const runs = SEEDS.map((seed) => {
      const problem = generatedPit({ ...pit, seed });
      const from = cpuMs();
      const plan = planPlacement(problem);
      const off = plan.levels.unplaced > plan.bound.unplaced ? undefined : plan.levels.priceS / Math.max(1, plan.bound.priceS) - 1;
      return { ms: cpuMs() - from, proven: plan.proven, off, violations: checkPlacement(problem, plan).length, unplaced: plan.levels.unplaced };
    });
    const times = runs.map(({ ms }) => ms).sort((a, b) => a - b);
    const open = runs.filter(({ proven }) => !proven);
    return {
      pit: name, 'cpu ms median': Math.round(times[10]), 'p95': Math.round(times[18]), proven: `${runs.length - open.length} of ${runs.length}`,
      'open: most above bound %': open.length === 0 ? 0 : Math.round(Math.max(...open.map(({ off }) => (off === undefined ? 0 : off * 100)))), 'open: pieces above bound': open.filter(({ off }) => off === undefined).length,
      violations: runs.reduce((sum, one) => sum + one.violations, 0),
    };
  }));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();

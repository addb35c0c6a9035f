// Wood and cost: the pull of drawn yards with its bound and gap, the balance in the night, the seasoning of forty lots, the cost sheet.
// Times are the caller's clock, best and median of a few: read them as rough on a shared machine.
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { dryBasis, epochS } from '@stokehold/domain/quantity';
import { forecastSeasoning, stackAir } from '@stokehold/domain/wood';
import { afterIterations } from '@stokehold/scheduling/search';
import { checkPull, generatedYard, planPull, repullWood } from '@stokehold/scheduling/wood-pull';
import * as cost from '@stokehold/domain/cost';

const ITERATIONS = 120_000;
const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
const timed = (work) => {
  const from = performance.now();
  const value = work();
  return { value, ms: performance.now() - from };
};
const median = (numbers) => [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];

function pullRow(yard) {
  const runs = SEEDS.map((seed) => {
    const problem = generatedYard({ ...yard, seed });
    const { value, ms } = timed(() => planPull(problem, { seed: 1, stop: afterIterations(ITERATIONS) }));
    const offcuts = value.loads.flatMap(({ wood }) => wood.filter(({ isOffcut }) => isOffcut)).reduce((sum, { pieces }) => sum + pieces, 0);
    return { ms, gap: value.gapFrac, bound: value.boundMills, short: value.worth.shortJ, mixOff: value.worth.mixOffJ, offcuts, violations: checkPull(problem, value).length };
  });
  return {
    yard: `${yard.pits} pits x ${yard.lots} lots, ${yard.plenty} of the need${yard.offcuts ? ', offcuts' : ''}`, 'ms median': Math.round(median(runs.map(({ ms }) => ms))), 'ms worst': Math.round(Math.max(...runs.map(({ ms }) => ms))), 'bound $ median': Number((median(runs.map(({ bound }) => bound)) / 1000).toFixed(2)),
    'gap % median': Number((100 * median(runs.map(({ gap }) => gap))).toFixed(2)), 'gap % worst': Number((100 * Math.max(...runs.map(({ gap }) => gap))).toFixed(2)),
    'short MJ': Math.round(runs.reduce((sum, { short }) => sum + short, 0) / 1e6), 'beside the mix MJ': Math.round(runs.reduce((sum, { mixOff }) => sum + mixOff, 0) / 1e6),
    'offcuts burned': Math.round(median(runs.map(({ offcuts }) => offcuts))), violations: runs.reduce((sum, run) => sum + run.violations, 0),
  };
}

/** Four hours in: a third is burned, one pit burns 30 % more. */
function inTheNight() {
  const problem = generatedYard({ pits: 12, lots: 40, seed: 1, plenty: 1.5, offcuts: true });
  const plan = planPull(problem, { seed: 1, stop: afterIterations(ITERATIONS) });
  const from = problem.from + 4 * 3600;
  const pits = problem.pits.map((pit, i) => ({ ...pit, hours: pit.hours.slice(4).map((hour) => ({ ...hour, needJ: Math.round(hour.needJ * (i === 0 ? 1.3 : 1)) })) }));
  const first = plan.loads.filter((load) => load.from < from);
  const carts = first.flatMap((load) => load.wood.map((wood) => ({ id: `cart ${load.pitId} ${wood.pileId}`, lotId: wood.lotId, place: load.pitId, cartOf: load.pitId, pieces: Math.floor(wood.pieces / 2) }))).filter(({ pieces }) => pieces > 0);
  const taken = (id) => first.flatMap(({ wood }) => wood).filter((wood) => wood.pileId === id).reduce((sum, { pieces }) => sum + pieces, 0);
  const now = { ...problem, from, pits, piles: [...problem.piles.map((pile) => ({ ...pile, pieces: pile.pieces - taken(pile.id) })), ...carts] };
  const before = { toHaul: plan.loads.filter((load) => load.from >= from), needJ: new Map(problem.pits.map((pit) => [pit.id, pit.hours.slice(4).reduce((sum, { needJ }) => sum + needJ, 0)])), missingJ: new Map(), wishes: new Map() };
  const { value, ms } = timed(() => repullWood(now, before, { seed: 1, stop: afterIterations(ITERATIONS) }));
  return { what: 'one of 12 pits burns 30 % more', ms: Math.round(ms), 'gap %': Number((100 * value.plan.gapFrac).toFixed(2)), hauls: value.plan.hauls.length, 'pits told otherwise': new Set(value.changes.map(({ pitId }) => pitId)).size, 'short MJ': Math.round(value.plan.worth.shortJ / 1e6), 'loads kept': value.kept.length };
}

function seasoning() {
  const air = stackAir({ months: Array.from({ length: 12 }, (_, i) => ({ tempC: 12 - 10 * Math.cos((i / 6) * Math.PI), humidityFrac: 0.68 })) });
  const now = epochS(1_800_000_000);
  const lots = Array.from({ length: 40 }, (_, i) => ({ species: 'white-oak', thicknessM: 0.07 + i * 0.001, readings: [90, 60, 30, 0].map((days) => ({ at: now - days * 86_400, moisture: dryBasis(0.2 + i * 0.003 + days * 0.001), deviation: 0.02 })) }));
  const { ms } = timed(() => lots.map((lot) => forecastSeasoning(lot, air, now, dryBasis(0.15))));
  return { what: 'forty lots, three years ahead', ms: Math.round(ms) };
}

/** Prints the pulls, the balance in the night, the forecasts and the cost sheet. */
export async function run() {
  planPull(generatedYard({ pits: 4, lots: 10, seed: 99, plenty: 2 }), { seed: 1, stop: afterIterations(5000) });
  console.log(`Pulls, ${SEEDS.length} drawn nights each, ${ITERATIONS} iterations; two pits of five want a mix of wood`);
  console.table([
    { pits: 12, lots: 40, plenty: 2 }, { pits: 12, lots: 40, plenty: 2, offcuts: true }, { pits: 12, lots: 40, plenty: 1.1 }, { pits: 12, lots: 40, plenty: 1.1, offcuts: true },
    { pits: 6, lots: 20, plenty: 1.5, offcuts: true }, { pits: 12, lots: 40, plenty: 0.9, offcuts: true },
  ].map(pullRow));
  console.table([inTheNight()]);
  console.table([seasoning()]);
  console.table(costRows());
}

function costRows() {
  const night = cost.drawnNight({ checks: 500, cooks: 24, pits: 12, lots: 40, people: 8 });
  const runs = Array.from({ length: 9 }, () => timed(() => cost.costSheet(night)));
  return [{ what: 'cost sheet of a night of 500 checks', 'ms median': Number(median(runs.map(({ ms }) => ms)).toFixed(1)), 'ms worst': Number(Math.max(...runs.map(({ ms }) => ms)).toFixed(1)), cents: runs[0].value.totalCents }];
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await run();

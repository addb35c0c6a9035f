import { randomStream, type RandomStream } from '@stokehold/domain/quantity';
import { anneal, type Reworkable, type StopRule } from '../search/index.js';
import { compareLevels, Draft } from './draft.js';
import { layCheapest, WORTH } from './lay.js';
import type { CookPlanLevels } from './plan.js';
import type { Choice, CookTable } from './table.js';

/** Places passed over when cooks are laid again: mostly few; now and then half, so that others are tried. */
const SKIP_FRAC = 0.08;
const BOLD_SKIP_FRAC = 0.5;
const BOLD_FRAC = 0.2;

/** Cooks that need most of a pit for longest go on first. */
function byNeed(table: CookTable): readonly number[] {
  const need = table.problem.cooks.map(({ areaM2 }, c) => areaM2 * Math.max(0, ...table.choices[c]!.flat().map(({ steps }) => steps)));
  return need.map((_, c) => c).sort((a, b) => need[b]! - need[a]! || a - b);
}

const isFixed = (table: CookTable, cook: number) => table.problem.cooks[cook]!.fixed !== undefined;

/** A whole plan at once: what is fixed, then the greatest need first, each where it costs least. */
export function firstDraft(table: CookTable): Draft {
  const draft = new Draft(table);
  const order = byNeed(table);
  for (const cook of order) if (isFixed(table, cook)) {
    const choice = table.choices[cook]!.flat()[0];
    if (choice) draft.put(choice, choice.first);
  }
  for (const cook of order) if (!isFixed(table, cook)) layCheapest(draft, cook);
  return draft;
}

function ruin(draft: Draft, random: RandomStream): readonly number[] {
  const { table } = draft;
  const cooks = table.problem.cooks.map((_, c) => c).filter((c) => !isFixed(table, c));
  if (cooks.length === 0) return [];
  const way = random.next();
  if (way < 0.45) return Array.from({ length: 1 + random.below(4) }, () => cooks[random.below(cooks.length)]!);
  const pits = way < 0.8 ? 1 : 2;
  const lifted = Array.from({ length: pits }, () => random.below(table.problem.pits.length)).flatMap((pit) => draft.onPit[pit]!.filter((c) => !isFixed(table, c)));
  const more = random.next() < 0.3 ? [cooks[random.below(cooks.length)]!] : [];
  return [...lifted, ...more];
}

const priceOf = (levels: CookPlanLevels) =>
  levels.unplaced * WORTH.unplaced + levels.lateMillionths * WORTH.late + levels.keptTooLongS * WORTH.kept + levels.crewOverS * WORTH.crew + levels.costCents;

/** Annealing over the draft: cooks or whole pits lifted and laid again. */
function reworkable(draft: Draft): Reworkable & { best(): { readonly chosen: readonly (Choice | undefined)[]; readonly on: Int32Array } } {
  const copy = () => ({ chosen: [...draft.chosen], on: Int32Array.from(draft.on) });
  let levels = draft.levels();
  let accepted = copy();
  let best = copy();
  let bestLevels = levels;
  const rank = byNeed(draft.table).reduce((ranks, cook, i) => ranks.set(cook, i), new Map<number, number>());
  return {
    change: (random) => {
      const lifted = [...new Set([...ruin(draft, random), ...draft.chosen.flatMap((choice, c) => (choice ? [] : [c]))])];
      for (const cook of lifted) draft.lift(cook);
      const skip = random.next() < BOLD_FRAC ? BOLD_SKIP_FRAC : SKIP_FRAC;
      const drawn = random.next() < 0.5 ? new Map(lifted.map((cook) => [cook, random.next()])) : rank;
      for (const cook of lifted.sort((a, b) => drawn.get(a)! - drawn.get(b)! || a - b)) layCheapest(draft, cook, random, skip);
      levels = draft.levels();
    },
    cost: () => priceOf(levels),
    accept: () => { accepted = copy(); },
    reject: () => { draft.copyFrom(accepted.chosen, accepted.on); },
    keepIfBest: () => {
      if (compareLevels(levels, bestLevels) < 0) [best, bestLevels] = [copy(), levels];
    },
    backToBest: () => {
      draft.copyFrom(best.chosen, best.on);
      accepted = copy();
      levels = draft.levels();
    },
    best: () => best,
  };
}

/** The best plan found within the stop rule, from the first draft on; the same seed and iterations give the same plan. */
export function searchCookPlan(table: CookTable, { seed, stop }: { readonly seed: number; readonly stop: StopRule }): { readonly draft: Draft; readonly iterations: number } {
  const draft = firstDraft(table);
  const work = reworkable(draft);
  const warm = Math.max(20, Math.round(draft.levels().costCents / Math.max(1, table.problem.pits.length) / 4));
  const iterations = anneal(work, { random: randomStream(seed), stop, warm, cold: 2, firstCycle: 1000 });
  const { chosen, on } = work.best();
  draft.copyFrom(chosen, on);
  return { draft, iterations };
}

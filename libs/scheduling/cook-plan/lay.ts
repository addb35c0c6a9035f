import type { RandomStream } from '@stokehold/domain/quantity';
import type { Draft } from './draft.js';
import type { Choice } from './table.js';

/** What the levels are worth while searching; kept plans are compared in strict order. */
export const WORTH = { unplaced: 1e9, late: 400, kept: 50, crew: 50 };

/** So few possible steps are all looked at. */
const FEW_STEPS = 12;
/** In its time as late as may be first; then, too late, as early as may be. */
function everyStep({ first, last, high }: Choice): readonly number[] {
  const well = Math.min(last, high);
  const inTime = Array.from({ length: Math.max(0, well - first + 1) }, (_, i) => well - i);
  const from = Math.max(first, well + 1);
  return [...inTime, ...Array.from({ length: last - from + 1 }, (_, i) => from + i)];
}

/** Steps worth looking at for this choice: as late as may be, and where it fits to what lies on the pit already. */
function stepsToTry(draft: Draft, choice: Choice): readonly number[] {
  const { first, last, steps } = choice;
  if (last - first <= FEW_STEPS) return everyStep(choice);
  const [low, high] = [Math.max(first, choice.low), Math.min(last, choice.high)];
  const anchors: number[] = [];
  const window = draft.window(choice.pit);
  if (window) anchors.push(window[0], window[1] - steps);
  for (const other of draft.onPit[choice.pit]!) {
    const on = draft.on[other]!;
    anchors.push(on + draft.chosen[other]!.steps, on - steps);
  }
  anchors.push(first, low);
  if (low > high) return [Math.min(last, Math.max(first, choice.high)), ...anchors.filter((on) => on >= first && on <= last)];
  return [high, ...anchors.filter((on) => on >= low && on < high), ...(draft.fits(choice, high) ? [] : anchors.filter((on) => on >= first && on <= last && (on < low || on > high)))];
}

/** What a cook at this step adds: fire, its own, and what is not well. */
function addedCost(draft: Draft, choice: Choice, on: number): number {
  const { table } = draft;
  const window = draft.window(choice.pit);
  const off = on + choice.steps;
  const before = window ? table.burnCents(choice.pit, choice.heat, window[0], window[1]) : 0;
  const after = table.burnCents(choice.pit, choice.heat, window ? Math.min(window[0], on) : on, window ? Math.max(window[1], off) : off);
  const late = on > choice.high ? (table.lateMillionths(choice, on) - table.mayBeLateMillionths(choice)) * WORTH.late : 0;
  const kept = on < choice.low ? table.keptTooLongS(choice, on) * WORTH.kept : 0;
  return after - before + table.ownCents(choice, on) + late + kept;
}

/** Puts a cook where it costs least; not at all when no pit takes it. With `random`, some places are passed over. */
export function layCheapest(draft: Draft, cook: number, random?: RandomStream, skipFrac = 0): void {
  const skip = () => random !== undefined && random.next() < skipFrac;
  const choices = draft.table.choices[cook]!.filter(() => !skip()).flatMap((ofPit) => ofPit.filter((choice) => {
    const others = draft.onPit[choice.pit]!;
    return others.length === 0 || draft.chosen[others[0]!]!.heat === choice.heat;
  }));
  const best = cheapest(draft, choices, (choice) => stepsToTry(draft, choice), skip) ?? cheapest(draft, choices, everyStep, skip);
  if (best) draft.put(best.choice, best.on);
}

function cheapest(draft: Draft, choices: readonly Choice[], stepsOf: (choice: Choice) => readonly number[], skip: () => boolean): { readonly choice: Choice; readonly on: number } | undefined {
  let best: { readonly choice: Choice; readonly on: number; readonly cost: number } | undefined;
  for (const choice of choices) for (const on of stepsOf(choice)) {
    if (skip()) continue;
    const cost = addedCost(draft, choice, on);
    if ((best && cost >= best.cost) || !draft.fits(choice, on)) continue;
    best = { choice, on, cost };
  }
  return best;
}

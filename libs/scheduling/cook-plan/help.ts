import { epochS } from '@stokehold/domain/quantity';
import type { Draft } from './draft.js';
import type { Help } from './plan.js';
import type { Choice } from './table.js';

type Kind = Help['code'];
/** Gentle remedies first, where they help alike. */
const ORDER: readonly Kind[] = ['earlier', 'wrap', 'another-pit', 'hotter'];

/** What a choice is beside the present one; the first that is true. */
function kindOf(draft: Draft, now: Choice, other: Choice): Kind | undefined {
  const { ways } = draft.table.problem.cooks[now.cook]!;
  const [before, after] = [ways[now.way]!, ways[other.way]!];
  if (after.tempC > before.tempC) return 'hotter';
  if (after.tempC < before.tempC) return undefined;
  if (after.wrapAfterS !== undefined && before.wrapAfterS === undefined) return 'wrap';
  return other.pit === now.pit ? (other.way === now.way ? 'earlier' : undefined) : 'another-pit';
}

/** Chance of the service and cost of the plan, as the draft stands. */
function standing(draft: Draft, service: number): { readonly late: number; readonly cents: number } {
  const late = draft.chosen.reduce((sum, choice, cook) => (choice && draft.table.service[cook] === service ? sum + draft.table.lateMillionths(choice, draft.on[cook]!) : sum), 0);
  return { late: Math.min(1e6, late), cents: draft.levels().costCents };
}

/** The latest step that keeps this choice in its time, or else the earliest that fits. */
function stepOf(draft: Draft, choice: Choice): number | undefined {
  for (let on = Math.min(choice.high, choice.last); on >= choice.first; on--) if (draft.fits(choice, on)) return on;
  for (let on = choice.first; on <= choice.last; on++) if (draft.fits(choice, on)) return on;
  return undefined;
}

/**
 * What would help a service at risk: each cook that is over its share, alone, otherwise; the best of each kind that lowers
 * the chance. The draft is left as it was.
 */
export function helpFor(draft: Draft, service: number): readonly Help[] {
  const { problem, choices, stepS } = draft.table;
  const now = standing(draft, service);
  const found: Help[] = [];
  for (const [cook, present] of [...draft.chosen].entries()) {
    const on = draft.on[cook]!;
    if (!present || draft.table.service[cook] !== service || problem.cooks[cook]!.fixed || on <= present.high) continue;
    draft.lift(cook);
    for (const choice of choices[cook]!.flat()) {
      const code = kindOf(draft, present, choice);
      const step = code && stepOf(draft, choice);
      if (code === undefined || step === undefined) continue;
      draft.put(choice, step);
      const { late, cents } = standing(draft, service);
      if (late < now.late) found.push({ code, cookId: problem.cooks[cook]!.id, start: { cookId: problem.cooks[cook]!.id, pitId: problem.pits[choice.pit]!.id, way: choice.way, onAt: epochS(problem.from + step * stepS) }, lateMillionths: late, moreCents: cents - now.cents });
      draft.lift(cook);
    }
    draft.put(present, on);
  }
  const better = (a: Help, b: Help) => a.lateMillionths - b.lateMillionths || a.moreCents - b.moreCents;
  const best = new Map<string, Help>();
  for (const help of found.sort(better)) if (!best.has(`${help.cookId}/${help.code}`)) best.set(`${help.cookId}/${help.code}`, help);
  return [...best.values()].sort((a, b) => better(a, b) || ORDER.indexOf(a.code) - ORDER.indexOf(b.code) || a.cookId.localeCompare(b.cookId));
}

// Pinwheel scheduling: one task a day, task i at least once in every a(i) days. For us: one person, equal checks, no walking,
// a check a slot, latest safe a(i) slots. Vectors and answers: Kawamura, Proof of the density threshold conjecture for pinwheel
// scheduling (STOC 2024), and Gasieniec, Smith, Wild (ALENEX 2022) where named; the rest confirmed by exhaustive search of the
// finite state space, which the last test repeats.
import { later, type EpochS, type PersonId, type PitId } from '@stokehold/domain/quantity';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterIterations } from '@stokehold/scheduling/search';
import { boundOf, checkRounds, dispatchRounds, loadOf, planRounds, type RoundPlan, type RoundProblem } from '@stokehold/scheduling/rounds';

const SLOT_S = 360;
const from = 1_800_000_000 as EpochS;
const slot = (n: number) => later(from, n * SLOT_S);
const ana = 'ana' as PersonId;

/** Due and latest safe fall together: a slot late is a slot unsafe. The first check may come in any of the first a(i) slots. */
const yard = (vector: readonly number[], slots: number): RoundProblem => ({
  from, until: slot(slots), places: ['yard'], walkS: [[0]],
  people: [{ id: ana, startsAt: from, endsAt: slot(slots), skills: [], atPlace: 'yard', freeFrom: from, breaks: [] }],
  pits: vector.map((period, i) => ({
    id: `pit-${String.fromCharCode(65 + i)}` as PitId, place: 'yard', weight: 1, checkS: SLOT_S,
    first: { earliestAt: from, dueAt: slot(period - 1), latestSafeAt: slot(period - 1) }, gap: { earliestS: SLOT_S, dueS: period * SLOT_S, latestSafeS: period * SLOT_S },
  })),
  tasks: [], frozen: [], pins: [], promises: [],
});

/** The plan that a certificate spells, letter by letter, for ever. */
function spelled(problem: RoundProblem, letters: string): RoundPlan {
  const slots = (problem.until - problem.from) / SLOT_S;
  const made = new Map<string, { nth: number; next: { dueAt: EpochS; latestSafeAt: EpochS; earliestAt: EpochS } }>();
  const assignments = Array.from({ length: slots }, (_, n): RoundPlan['assignments'][number] => {
    const pit = problem.pits.find(({ id }) => id === `pit-${letters[n % letters.length]}`)!;
    const { nth, next } = made.get(pit.id) ?? { nth: 1, next: pit.first };
    const startsAt = slot(n);
    made.set(pit.id, { nth: nth + 1, next: { earliestAt: later(startsAt, pit.gap.earliestS), dueAt: later(startsAt, pit.gap.dueS), latestSafeAt: later(startsAt, pit.gap.latestSafeS) } });
    return {
      work: { kind: 'check', pitId: pit.id, nth }, personIds: [ana], startsAt, endsAt: slot(n + 1), dueAt: next.dueAt, latestSafeAt: next.latestSafeAt, slackS: next.latestSafeAt - startsAt,
      lateS: Math.max(0, startsAt - next.dueAt), pastLatestS: Math.max(0, startsAt - next.latestSafeAt), earlyS: Math.max(0, next.earliestAt - startsAt), reason: { code: 'only-one-able', late: [] },
    };
  });
  const levels = { unsafeS: 0, unsafeChecks: 0, unplaced: 0, pastLatestS: 0, lateWeightedS: 0, tasksLateS: 0, uneven: 0, unevenUnpleasant: 0, promises: 0, walkS: 0 };
  return { assignments, unplaced: [], levels, bound: boundOf(problem) };
}

const density = (vector: readonly number[]) => vector.reduce((sum, period) => sum + 1 / period, 0);

describe('pinwheel vectors with a schedule', () => {
  it.each([
    { row: 'W2', vector: [2, 4, 4], printed: 1, letters: 'ABAC' },
    { row: 'W3', vector: [2, 4, 8, 8], printed: 1, letters: 'ABACABAD' },
    { row: 'W4', vector: [3, 4, 5, 8], printed: 0.9083, letters: 'ADBACABC' },
    { row: 'W5, published', vector: [4, 5, 5, 7, 7], printed: 0.9357, letters: 'BACDBAECABDCAE' },
    { row: 'W6, two distinct periods', vector: [3, 3, 6, 6], printed: 1, letters: 'ABCABD' },
    { row: 'W7, two distinct periods', vector: [3, 6, 6, 6, 6], printed: 1, letters: 'ABCADE' },
    { row: 'W8', vector: [3, 5, 5, 5], printed: 0.9333, letters: 'DABAC' },
    { row: 'W13', vector: [3, 4, 6, 7], printed: 0.8929, letters: 'ABCABD' },
  ])('$row $vector: the checker finds $letters without a fault, and the load is the density', ({ vector, printed, letters }) => {
    const problem = yard(vector, 3 * letters.length * 4);
    expect(checkRounds(problem, spelled(problem, letters))).toEqual([]);
    expect(Math.abs(density(vector) - printed)).toBeLessThan(0.00005);
    // Whole seconds of work in an hour: within half a second of 3600. The second hour, when every pit has fallen due.
    expect(Math.abs(loadOf(problem)[1]!.loadFrac - printed)).toBeLessThan(0.0003);
    expect(loadOf(problem)[1]!.fails).toBe(false);
  });

  it('the checker bites when two letters are exchanged', () => {
    const problem = yard([2, 4, 8, 8], 64);
    const found = checkRounds(problem, spelled(problem, 'ABCAABAD'));
    expect(found).toContainEqual({ code: 'wrong-level', where: 'unsafeS' });
  });
});

describe('pinwheel vectors without a schedule', () => {
  it.each([
    { row: 'W1', vector: [2, 3, 6] }, { row: 'W1', vector: [2, 3, 12] }, { row: 'W9', vector: [2, 5, 5, 10] }, { row: 'W10', vector: [2, 4, 6, 12] },
    { row: 'W11', vector: [3, 4, 5, 5] }, { row: 'W12', vector: [3, 4, 5, 7] }, { row: 'W14', vector: [3, 5, 5, 6, 30] },
  ])('$row $vector: no plan keeps every fire, and each says so', ({ vector }) => {
    expect(schedule(vector)).toBeUndefined();
    const problem = yard(vector, 120);
    for (const plan of [dispatchRounds(problem), planRounds(problem, { seed: 1, stop: afterIterations(30) }).plan]) {
      expect(checkRounds(problem, plan)).toEqual([]);
      expect(plan.levels.unsafeS).toBeGreaterThan(0);
    }
  });

  it('a load over 1 is told before planning', () => {
    const [, hour] = loadOf(yard([2, 3, 4], 40));
    expect(hour).toMatchObject({ fails: true, missingPeople: 1 });
    expect(boundOf(yard([2, 3, 4], 40)).peopleForSafe).toBe(2);
  });
});

it('5/6 theorem (Kawamura 2024): every drawn vector with density up to 5/6 has a schedule that the checker accepts', () => {
  const vectors = fc.array(fc.integer({ min: 2, max: 12 }), { minLength: 1, maxLength: 5 }).filter((vector) => density(vector) <= 5 / 6 + 1e-12);
  fc.assert(fc.property(vectors, (vector) => {
    const letters = schedule(vector);
    expect(letters).toBeDefined();
    const problem = yard(vector, 4 * letters!.length);
    const plan = spelled(problem, letters!);
    const idle = plan.assignments.filter(({ work }) => work.kind === 'check');
    expect(checkRounds(problem, { ...plan, assignments: idle })).toEqual([]);
  }), { numRuns: 100, examples: [[[2, 6, 6]], [[3, 4, 4]]] });
});

/** A schedule found by walking the finite states (days left of each task) depth first until one comes back; or none exists. */
function schedule(vector: readonly number[]): string | undefined {
  const dead = new Set<string>();
  const path: string[] = [];
  const seen = new Map<string, number>();
  const walk = (left: readonly number[]): string | undefined => {
    const key = left.join();
    const back = seen.get(key);
    if (back !== undefined) return path.slice(back).join('');
    if (dead.has(key)) return undefined;
    seen.set(key, path.length);
    const order = left.map((days, i) => ({ days, i })).sort((a, b) => a.days - b.days);
    for (const { i } of order) {
      const next = left.map((days, k) => (k === i ? vector[k]! : days - 1));
      if (next.some((days) => days <= 0)) continue;
      path.push(String.fromCharCode(65 + i));
      const found = walk(next);
      if (found) return found;
      path.pop();
    }
    seen.delete(key);
    dead.add(key);
    return undefined;
  };
  return walk(vector);
}

import { describe, expect, it } from 'vitest';
import { afterIterations } from '../search/index.js';
import { handBreak, handNight, handPerson, handPit, minute } from './hand-night.js';
import { checkRounds, planRounds, validateRounds } from './index.js';

const longStretch = (stretch: number) => {
  // 240 min; a break of 20 anywhere from 30 to 200: without a limit it may come at 200, after 200 min of work.
  const ana = { ...handPerson('ana', { breaks: [handBreak('rest', 30, 200, 20)] }), stretchS: stretch * 60 };
  return handNight({ people: [ana, handPerson('ben')], pits: [handPit('pit-1', 10), handPit('pit-2', 20), handPit('pit-3', 28)] });
};

describe('the longest stretch of work', () => {
  it.each([120, 150, 180])('of %d minutes is kept before and after the break', (stretch) => {
    const problem = longStretch(stretch);
    expect(validateRounds(problem).ok).toBe(true);
    const { plan } = planRounds(problem, { seed: 1, stop: afterIterations(300) });
    expect(checkRounds(problem, plan)).toEqual([]);
    const rest = plan.assignments.find(({ work }) => work.kind === 'break')!;
    // Work from 0 to 240 with 20 of rest: the break begins by `stretch` and ends no earlier than 240 less `stretch`.
    expect(rest.startsAt).toBeLessThanOrEqual(minute(stretch));
    expect(rest.endsAt).toBeGreaterThanOrEqual(minute(240 - stretch));
  });

  it('that cannot last until the end of the shift ends the work before it', () => {
    const problem = longStretch(60);
    const { plan } = planRounds(problem, { seed: 1, stop: afterIterations(300) });
    expect(checkRounds(problem, plan)).toEqual([]);
    const own = plan.assignments.filter(({ work, personIds }) => work.kind !== 'break' && personIds.includes(problem.people[0]!.id));
    const rest = plan.assignments.find(({ work }) => work.kind === 'break')!;
    expect(rest.startsAt).toBeLessThanOrEqual(minute(60));
    expect(Math.max(...own.map(({ endsAt }) => endsAt))).toBeLessThanOrEqual(rest.endsAt + 3600);
  });

  it('is a rule that bites', () => {
    const problem = longStretch(180);
    const { plan } = planRounds(problem, { seed: 1, stop: afterIterations(50) });
    const strict = { ...problem, people: problem.people.map((person) => ({ ...person, stretchS: 900 })) };
    expect(checkRounds(strict, plan).map(({ code }) => code)).toContain('stretch-too-long');
  });

  it.each([0, 599, 17 * 3600])('of %d s is refused', (stretchS) => {
    const found = validateRounds({ ...longStretch(120), people: [{ ...handPerson('ana'), stretchS }] });
    expect(found).toMatchObject({ ok: false, refusal: { code: 'length-out-of-range', where: 'people.ana.stretchS' } });
  });
});

it('a check whose window stands open when the crew changes has an owner on one side', () => {
  const problem = handNight({ people: [handPerson('ana', { until: 120 }), handPerson('ben', { from: 120 })], pits: [handPit('pit-1', 10)] });
  const { plan } = planRounds(problem, { seed: 1, stop: afterIterations(100) });
  expect(checkRounds(problem, plan)).toEqual([]);
  // Nobody has the checks after the change: cut off, and a check of the first crew listed instead.
  const cut = { ...plan, assignments: plan.assignments.filter(({ startsAt }) => startsAt < minute(120)) };
  expect(checkRounds(problem, cut)).toContainEqual({ code: 'handover-without-owner', where: 'pit-1' });
});

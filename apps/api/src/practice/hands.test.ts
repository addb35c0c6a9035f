import { type EpochS, epochS, later, type PersonId, randomStream } from '@stokehold/domain/quantity';
import { expect, it } from 'vitest';
import { type Call, type Hand, PracticeCrew } from './hands.js';

const START = epochS(1_800_000_000);
const ines = 'ines' as PersonId;
const call = (more: Partial<Call> = {}): Call => ({ alarmId: 'a', people: [ines], presses: false, isOver: false, ...more });

/** After how many minutes somebody takes note of what calls them from the start on; absent for what they never do in a quarter of an hour. */
async function takesNote(calls: readonly Call[], { busyS = 0, restsS = 0 } = {}): Promise<Record<string, number>> {
  const noted: Record<string, number> = {};
  let now: EpochS = START;
  const hand = {
    id: ines, comesAt: START, goesAt: later(START, 36_000), busyUntil: later(START, Math.max(busyS, restsS)), restsUntil: later(START, restsS), errand: undefined, hears: new Map(), playedByHand: false,
  } as unknown as Hand;
  const nothing = async () => 0;
  const crew = new PracticeCrew(
    [hand], { check: nothing, task: nothing, break: nothing, takeNote: async (_, alarmId) => void (noted[alarmId] = (now - START) / 60) },
    { plan: async () => null, tasks: async () => [], isAway: async () => false, walkS: () => 0, calls: async () => calls.filter(({ alarmId }) => noted[alarmId] === undefined) }, randomStream(1),
  );
  for (let minute = 0; minute <= 15; minute++) await crew.minute((now = later(START, 60 * minute)));
  return noted;
}

it('free hands take note of a call a minute later; full ones put down what they hold first', async () => {
  expect(await takesNote([call()])).toEqual({ a: 1 });
  expect(await takesNote([call()], { busyS: 120 })).toEqual({ a: 2 });
  expect(await takesNote([call()], { busyS: 600 })).toEqual({ a: 3 });
});
it('a break is one: only what presses is heard', async () => {
  expect(await takesNote([call(), call({ alarmId: 'b', presses: true })], { restsS: 600 })).toEqual({ a: 10, b: 3 });
});
it('what is over waits, and what calls others is theirs', async () => {
  expect(await takesNote([call({ isOver: true }), call({ alarmId: 'b', people: [] })])).toEqual({ a: 10 });
});

import { expect, it } from 'vitest';
import { fromIso, later, type EpochS, type PersonId, type PitId } from '../quantity/index.js';
import { openChecks, type FireToHand, type Handing } from './handover.js';

const at = (time: string): EpochS => fromIso(`2027-01-16T${time}:00Z`);
const [ana, bo, cy] = ['ana', 'bo', 'cy'] as PersonId[] as [PersonId, PersonId, PersonId];
const fire = (pit: string, due: string, planned?: readonly [PersonId, string]): FireToHand => ({
  pitId: pit as PitId, dueAt: at(due), latestSafeAt: later(at(due), 600), ...(planned && { planned: { personId: planned[0], startsAt: at(planned[1]) } }),
});
const handing: Handing = { until: at('07:00'), by: ana, to: null, nextCrew: [cy] };
const owners = (fires: readonly FireToHand[], more: Partial<Handing> = {}) => openChecks(fires, { ...handing, ...more }).map(({ pitId, side, ownerId }) => [pitId, side, ownerId]);

it('a check that the plan gives to somebody before they leave is theirs', () => {
  expect(owners([fire('bess', '06:58', [bo, '06:55'])])).toEqual([['bess', 'this-crew', bo]]);
});
it('a check due before the end that nobody has is the signer’s', () => {
  expect(owners([fire('bess', '06:58')])).toEqual([['bess', 'this-crew', ana]]);
});
it('a check due after the end is the next crew’s: the one handed to, else the first who comes, else the crew', () => {
  expect(owners([fire('bess', '07:05')], { to: bo })).toEqual([['bess', 'next-crew', bo]]);
  expect(owners([fire('bess', '07:05')])).toEqual([['bess', 'next-crew', cy]]);
  expect(owners([fire('bess', '07:05')], { nextCrew: [] })).toEqual([['bess', 'next-crew', null]]);
});
it('a check planned for after the end is not this crew’s, though its due time is', () => {
  expect(owners([fire('bess', '06:58', [bo, '07:04'])])).toEqual([['bess', 'this-crew', ana]]);
});
it('every fire has an owner on one side, the most urgent first', () => {
  const all = owners([fire('nell', '07:20'), fire('bess', '06:50', [bo, '06:50']), fire('ruth', '06:55')], { by: null });
  expect(all).toEqual([['bess', 'this-crew', bo], ['ruth', 'next-crew', cy], ['nell', 'next-crew', cy]]);
  expect(owners([])).toEqual([]);
});

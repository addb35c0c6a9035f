import { expect, it } from 'vitest';
import { type EpochS, epochS, later, type PitId } from '../quantity/index.js';
import { alarmAfter } from './alarm.js';
import { alarmConditions, alarmSteps, type NightNow, type OpenAlarm } from './alarm-conditions.js';

const NOW = epochS(1_800_000_000);
const A = 'a' as PitId;
const B = 'b' as PitId;
type Fire = NightNow['fires'][number];
const fire = (more: Partial<Fire> = {}): Fire => ({ pitId: A, lightAt: later(NOW, -7200), mode: 'burning', latestSafeAt: later(NOW, 900), ...more });
const night = (fires: readonly Fire[], more: Partial<NightNow> = {}): NightNow => ({ now: NOW, fires, ...more });
const alarm = (more: Partial<OpenAlarm> = {}): OpenAlarm => ({ id: '1', kind: 'past-latest-safe', pitId: A, state: 'unacknowledged', acknowledgedAt: undefined, ...more });
const kinds = (of: NightNow, open: readonly OpenAlarm[] = []) => alarmConditions(of, open).map(({ kind, pitId }) => `${kind} ${pitId}`);

it('a quiet night has no alarm, and a check that is due is none', () => {
  expect(kinds(night([fire()], { wood: { splitsLeft: 60, splitsNeeded: 40 } }))).toEqual([]);
  expect(kinds(night([fire({ latestSafeAt: NOW })]))).toEqual([]);
});

it('a fire is past its latest safe time from the second after it on', () => {
  expect(kinds(night([fire({ latestSafeAt: later(NOW, -1) }), fire({ pitId: B })]))).toEqual(['past-latest-safe a']);
});

it('a bed nearly out or out needs hands, from light-up on', () => {
  expect(kinds(night([fire({ mode: 'bed-nearly-out' }), fire({ pitId: B, mode: 'out' })]))).toEqual(['bed-nearly-out a', 'bed-nearly-out b']);
  expect(kinds(night([fire({ mode: 'out', lightAt: later(NOW, 60) })]))).toEqual([]);
});

it('wood is short below the need, and enough again only with 2 splits or 5 % to spare', () => {
  const wood = (splitsLeft: number) => night([], { wood: { splitsLeft, splitsNeeded: 100 } });
  const standing = [alarm({ kind: 'wood-short', pitId: null, state: 'acknowledged' })];
  expect(kinds(wood(99))).toEqual(['wood-short null']);
  expect(kinds(wood(100))).toEqual([]);
  expect(kinds(wood(104), standing)).toEqual(['wood-short null']);
  expect(kinds(wood(105), standing)).toEqual([]);
});

it('a condition without an alarm begins one, and one that has its alarm begins no second', () => {
  const late = night([fire({ latestSafeAt: later(NOW, -60) })]);
  expect(alarmSteps(late, [])).toEqual({ began: [{ kind: 'past-latest-safe', pitId: A }], steps: [] });
  expect(alarmSteps(late, [alarm()])).toEqual({ began: [], steps: [] });
});

it('an alarm ends with its condition, and with its pit', () => {
  const standing = alarm();
  expect(alarmSteps(night([fire()]), [standing]).steps).toEqual([{ alarm: standing, step: 'condition-ended' }]);
  expect(alarmSteps(night([]), [standing]).steps).toEqual([{ alarm: standing, step: 'condition-ended' }]);
});

it('a condition that comes back before anybody took note takes up its old alarm', () => {
  const returned = alarm({ state: 'returned-unacknowledged' });
  expect(alarmSteps(night([fire({ latestSafeAt: later(NOW, -1) })]), [returned])).toEqual({ began: [], steps: [{ alarm: returned, step: 'condition-began' }] });
});

it('wood that was not counted this time leaves its alarm as it stands', () => {
  expect(alarmSteps(night([]), [alarm({ kind: 'wood-short', pitId: null })])).toEqual({ began: [], steps: [] });
});

it('ten minutes after somebody took note, a fire still past its time asks again', () => {
  const late = night([fire({ latestSafeAt: later(NOW, -1200) })]);
  const noted = (ago: number) => alarm({ state: 'acknowledged', acknowledgedAt: later(NOW, -ago) as EpochS });
  expect(alarmSteps(late, [noted(599)]).steps).toEqual([]);
  expect(alarmSteps(late, [noted(600)]).steps.map(({ step }) => step)).toEqual(['reminder-due']);
});

it('the same look twice changes nothing the second time', () => {
  const looks = [night([fire()]), night([fire({ latestSafeAt: later(NOW, -1), mode: 'out' }), fire({ pitId: B })], { wood: { splitsLeft: 1, splitsNeeded: 9 } })];
  const states = ['unacknowledged', 'acknowledged', 'returned-unacknowledged'] as const;
  for (const look of looks) {
    for (const state of states) {
      const before = [alarm({ state, acknowledgedAt: state === 'acknowledged' ? later(NOW, -900) : undefined })];
      const { began, steps } = alarmSteps(look, before);
      const stepped = before.map((one) => {
        const step = steps.find(({ alarm: of }) => of === one)?.step;
        return step ? { ...one, state: alarmAfter(one.state, step), acknowledgedAt: undefined } : one;
      });
      const after = [...stepped, ...began.map((condition, n) => alarm({ ...condition, id: `new ${n}` }))].filter((one) => one.state !== 'normal');
      expect(alarmSteps(look, after)).toEqual({ began: [], steps: [] });
    }
  }
});

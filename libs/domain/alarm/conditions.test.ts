import { describe, expect, it } from 'vitest';
import { type DeviceId, type EpochS, epochS, later, type PersonId, type PitId, type ProbeId } from '../quantity/index.js';
import { alarmConditions, type NightNow } from './conditions.js';
import type { OpenAlarm } from './open.js';
import { NORMAL, standingAfter } from './state.js';
import { alarmSteps } from './steps.js';

const NOW = epochS(1_800_000_000);
const A = 'a' as PitId;
const B = 'b' as PitId;
type Fire = NightNow['fires'][number];
const fire = (more: Partial<Fire> = {}): Fire => ({ pitId: A, lightAt: later(NOW, -7200), mode: 'burning', latestSafeAt: later(NOW, 900), ...more });
const night = (fires: readonly Fire[], more: Partial<NightNow> = {}): NightNow => ({ now: NOW, fires, ...more });
const alarm = (more: Partial<OpenAlarm> = {}): OpenAlarm => ({ id: '1', kind: 'past-latest-safe', pitId: A, ...NORMAL, state: 'unacknowledged', raisedAt: later(NOW, -60), acknowledgedAt: undefined, ...more });
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

it('a temperature that runs away is told first, of a pit that burns or not, and holds for a quarter of an hour', () => {
  expect(kinds(night([fire({ mode: 'out' })], { runningAway: [B] }))).toEqual(['running-away b', 'bed-nearly-out a']);
  const standing = (secondsAgo: number, state: OpenAlarm['state']) => [alarm({ kind: 'running-away', pitId: B, state, raisedAt: later(NOW, -secondsAgo) })];
  expect(kinds(night([]), standing(899, 'acknowledged'))).toEqual(['running-away b']);
  expect(kinds(night([]), standing(900, 'acknowledged'))).toEqual([]);
  expect(kinds(night([]), standing(60, 'returned-unacknowledged'))).toEqual([]);
  expect(alarmSteps(night([]), standing(900, 'unacknowledged')).steps.map(({ step }) => step.kind)).toEqual(['condition-ended']);
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
  expect(alarmSteps(late, [])).toEqual({ began: [{ condition: { kind: 'past-latest-safe', pitId: A }, suppressedBy: null }], steps: [] });
  expect(alarmSteps(late, [alarm()])).toEqual({ began: [], steps: [] });
});

it('an alarm ends with its condition, and with its pit', () => {
  const standing = alarm();
  expect(alarmSteps(night([fire()]), [standing]).steps).toEqual([{ alarm: standing, step: { kind: 'condition-ended' } }]);
  expect(alarmSteps(night([]), [standing]).steps).toEqual([{ alarm: standing, step: { kind: 'condition-ended' } }]);
});

it('a condition that comes back before anybody took note takes up its old alarm', () => {
  const returned = alarm({ state: 'returned-unacknowledged' });
  expect(alarmSteps(night([fire({ latestSafeAt: later(NOW, -1) })]), [returned])).toEqual({ began: [], steps: [{ alarm: returned, step: { kind: 'condition-began' } }] });
});

it('wood that was not counted this time leaves its alarm as it stands', () => {
  expect(alarmSteps(night([]), [alarm({ kind: 'wood-short', pitId: null })])).toEqual({ began: [], steps: [] });
});

it('ten minutes after somebody took note, a fire still past its time asks again', () => {
  const late = night([fire({ latestSafeAt: later(NOW, -1200) })]);
  const noted = (ago: number) => alarm({ state: 'acknowledged', acknowledgedAt: later(NOW, -ago) as EpochS });
  expect(alarmSteps(late, [noted(599)]).steps).toEqual([]);
  expect(alarmSteps(late, [noted(600)]).steps.map(({ step }) => step.kind)).toEqual(['reminder-due']);
});

describe('a check keeps the band alarm of its fire quiet', () => {
  const bands = [{ pitId: A, side: 'below-band' as const, comesBack: false }];
  const quiet = (more: Partial<Fire>) => alarmSteps(night([fire(more)], { bands }), []).began[0]?.suppressedBy;
  it('for five minutes after it, and for five before it is due, for the prompt says so already', () => {
    expect(quiet({ lookedAt: later(NOW, -299) })).toBe('after-check');
    expect(quiet({ lookedAt: later(NOW, -300) })).toBeNull();
    expect(quiet({ dueAt: later(NOW, 300) })).toBe('check-due');
    expect(quiet({ dueAt: later(NOW, 301) })).toBeNull();
    expect(quiet({ dueAt: later(NOW, -60) })).toBe('check-due');
  });
  it('and when that is over and it is still below, it calls', () => {
    const standing = alarm({ kind: 'below-band', suppressedBy: 'after-check' });
    expect(alarmSteps(night([fire()], { bands }), [standing]).steps).toEqual([{ alarm: standing, step: { kind: 'suppression-ended' } }]);
  });
  it('one that comes back by itself is quiet as well, until it does not; what somebody took note of stays as it is', () => {
    const coming = [{ pitId: A, side: 'below-band' as const, comesBack: true }];
    expect(alarmSteps(night([fire()], { bands: coming }), []).began[0]?.suppressedBy).toBe('comes-back');
    const steps = (more: Partial<OpenAlarm>, seen: Partial<NightNow>) => alarmSteps(night([fire()], seen), [alarm({ kind: 'below-band', ...more })]).steps.map(({ step }) => step.kind);
    expect(steps({ suppressedBy: 'comes-back' }, { bands })).toEqual(['suppression-ended']);
    expect(steps({}, { bands: coming })).toEqual(['suppressed']);
    expect(steps({ state: 'acknowledged', acknowledgedAt: NOW }, { bands: coming })).toEqual([]);
  });
  it('and a look that did not see the bands lets none of them call', () => {
    expect(alarmSteps(night([fire()]), [alarm({ kind: 'below-band', suppressedBy: 'check-due' })]).steps).toEqual([]);
    expect(alarmSteps(night([fire({ lookedAt: NOW })]), [alarm({ kind: 'below-band' })]).steps.map(({ step }) => step.kind)).toEqual(['suppressed']);
  });
  it('but never a bed that is nearly out', () => {
    expect(alarmSteps(night([fire({ mode: 'out', lookedAt: NOW })]), []).began[0]?.suppressedBy).toBeNull();
  });
});

it('a shelf ends by itself, at its time and not before', () => {
  const shelved = (until: number) => alarm({ kind: 'above-band', shelf: { until: later(NOW, until), by: 'p' as PersonId, way: 'timed' } });
  const bands = [{ pitId: A, side: 'above-band' as const, comesBack: false }];
  const steps = (until: number) => alarmSteps(night([fire()], { bands }), [shelved(until)]).steps.map(({ step }) => step.kind);
  expect(steps(1)).toEqual([]);
  expect(steps(0)).toEqual(['shelf-ended']);
});

it('each failed probe has an alarm of its own; one that was not looked at keeps it', () => {
  const probes = ['p', 'q'].map((probeId) => ({ probeId: probeId as ProbeId, pitId: A }));
  expect(alarmSteps(night([], { probes }), []).began).toHaveLength(2);
  const standing = alarm({ kind: 'probe-failed', probeId: 'p' as ProbeId, raisedAt: later(NOW, -900) });
  expect(alarmSteps(night([]), [standing]).steps).toEqual([]);
  expect(alarmSteps(night([], { probes: [] }), [standing]).steps).toHaveLength(1);
});

it('the same look twice changes nothing the second time', () => {
  const bands = [{ pitId: A, side: 'below-band' as const, comesBack: false }];
  const looks = [
    night([fire()]), night([fire({ latestSafeAt: later(NOW, -1), mode: 'out' }), fire({ pitId: B })], { wood: { splitsLeft: 1, splitsNeeded: 9 } }),
    night([fire({ lookedAt: NOW })], { bands }), night([fire()], { bands, gusts: [B], gateways: ['g' as DeviceId] }),
  ];
  const states = ['unacknowledged', 'acknowledged', 'returned-unacknowledged'] as const;
  const shelves = [null, { until: NOW, by: 'p' as PersonId, way: 'timed' as const }];
  for (const look of looks) {
    for (const kind of ['past-latest-safe', 'below-band'] as const) for (const state of states) for (const shelf of shelves) for (const suppressedBy of [null, 'check-due' as const]) {
      const before = [alarm({ kind, state, shelf, suppressedBy, acknowledgedAt: state === 'acknowledged' ? later(NOW, -900) : undefined })];
      const { began, steps } = alarmSteps(look, before);
      const stepped = before.map((one) => steps.reduce((so, { step }) => ({ ...so, ...standingAfter(so, step), acknowledgedAt: undefined }), one));
      const after = [...stepped, ...began.map(({ condition, suppressedBy: by }, n) => alarm({ ...condition, id: `new ${n}`, suppressedBy: by }))].filter((one) => one.state !== 'normal');
      expect(alarmSteps(look, after)).toEqual({ began: [], steps: [] });
    }
  }
});

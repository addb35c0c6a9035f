import { expect, it } from 'vitest';
import { epochS, later, type PitId } from '../quantity/index.js';
import { gustsAhead, gustsSeen, type WindAhead } from './gusts.js';

const NOW = epochS(1_800_000_000);
const pits = [{ id: 'west' as PitId, fireEndHeadingDeg: 270 }, { id: 'east' as PitId, fireEndHeadingDeg: 90 }, { id: 'north' as PitId, fireEndHeadingDeg: 0 }];
const hour = (more: Partial<WindAhead> = {}): WindAhead => ({ from: later(NOW, 1800), until: later(NOW, 5400), gustMPerS: 9, fromDeg: 270, ...more });
const on = (hours: readonly WindAhead[], seenGustMPerS = 2) => gustsAhead({ now: NOW, withinS: 3600, hours, seenGustMPerS, pits }).map(({ pitId, onto }) => `${pitId} ${onto}`);

it('a west wind blows onto the firebox that looks west and the stack of the pit that looks east, not across', () => expect(on([hour()])).toEqual(['west firebox', 'east stack']));
it('weak gusts, gusts after the hour, and a wind without direction warn of nothing', () => {
  for (const more of [{ gustMPerS: 6 }, { from: later(NOW, 3601), until: later(NOW, 7200) }, { fromDeg: undefined }, { until: NOW }]) expect(on([hour(more)])).toEqual([]);
});
it('gusts that blow already are no news', () => expect(on([hour()], 8)).toEqual([]));
it('two bad hours are one warning a pit, of the first', () => expect(gustsAhead({ now: NOW, withinS: 7200, hours: [hour(), hour({ from: later(NOW, 5400), until: later(NOW, 9000) })], seenGustMPerS: 0, pits }).map(({ at }) => at)).toEqual([hour().from, hour().from]));

const told = (minutes: number, gustMPerS: number, fromDeg = 270) => ({ seenAt: later(NOW, minutes * 60), windMPerS: gustMPerS / 1.6, gustMPerS, fromDeg });
const seen = (winds: readonly ReturnType<typeof told>[], fireEndHeadingDeg = 270, hours = 10) => gustsSeen(winds, { from: NOW, until: later(NOW, hours * 3600), fireEndHeadingDeg })
  .map(({ from, until, onto }) => [(from - NOW) / 60, (until - NOW) / 60, onto]);

it('gusts are remembered from when they were told to when they were told to be over, onto the end that looks into them', () => {
  const night = [told(0, 3), told(60, 9), told(90, 10), told(140, 3)];
  expect(seen(night)).toEqual([[60, 140, 'firebox']]);
  expect(seen(night, 90)).toEqual([[60, 140, 'stack']]);
  expect(seen(night, 0)).toEqual([[60, 140, 'side']]);
});
it('a wind that turns is two stretches; one that nobody tells of again holds for two hours', () => expect(seen([told(60, 9), told(90, 9, 90)])).toEqual([[60, 90, 'firebox'], [90, 210, 'stack']]));
it('gusts told before the night reach into it, and none reaches past its end', () => expect(seen([told(-30, 9), told(20, 3), told(100, 9)], 270, 2)).toEqual([[0, 20, 'firebox'], [100, 120, 'firebox']]));

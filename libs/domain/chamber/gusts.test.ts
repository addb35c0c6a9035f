import { expect, it } from 'vitest';
import { epochS, later, type PitId } from '../quantity/index.js';
import { gustsAhead, type WindAhead } from './gusts.js';

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

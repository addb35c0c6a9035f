import { expect, it } from 'vitest';
import { epochS, later, type ProbeId } from '../quantity/index.js';
import { paceAfter, type ProbeNow, standingOf } from './standing.js';

const NOW = epochS(1_800_000_000);
const probe = (id: string, tempC: number | undefined, more: Partial<ProbeNow> = {}): ProbeNow => ({
  id: id as ProbeId, use: 'chamber', end: id === 'f' ? 'fire-end' : 'stack-end', tempC, last: { at: later(NOW, -10), quality: 'good' }, paceS: 10, ...more,
});
const pit = (probes: readonly ProbeNow[], fireEndOverK = 6) =>
  Object.fromEntries(standingOf({ now: NOW, probes, ambientTempC: 12, fireEndOverK }).map(({ id, quality, reason }) => [id, `${quality} ${reason ?? ''}`.trim()]));

it('two probes that agree are good', () => expect(pit([probe('f', 124), probe('s', 119)])).toEqual({ f: 'good', s: 'good' }));
it('a cold pit is good', () => expect(pit([probe('f', 13), probe('s', 12)])).toEqual({ f: 'good', s: 'good' }));
it('one that reads the air while its neighbour is hot is shorted: suspect, for the neighbour may be the wrong one', () => expect(pit([probe('f', 18), probe('s', 119)])).toEqual({ f: 'suspect short', s: 'good' }));
it('one that reads below the air while its neighbour is hot is connected the wrong way round', () => expect(pit([probe('f', -40), probe('s', 119)])).toEqual({ f: 'suspect reversed', s: 'good' }));
it('one that is merely cooler is not shorted', () => expect(pit([probe('f', 75), probe('s', 119)])).toEqual({ f: 'good', s: 'good' }));
it('ends that are read the other way round than the fire stands are both doubted', () => {
  expect(pit([probe('f', 112), probe('s', 128)], 15)).toEqual({ f: 'suspect swapped-ends', s: 'suspect swapped-ends' });
  expect(pit([probe('f', 112), probe('s', 128)], 4)).toEqual({ f: 'good', s: 'good' });
});
it('a meat probe as hot as the air hangs in the air; meat on the pit is never that hot', () => {
  expect(pit([probe('s', 121), probe('m', 119, { use: 'food', end: undefined })])).toEqual({ s: 'good', m: 'suspect in-air' });
  expect(pit([probe('s', 121), probe('m', 95, { use: 'food', end: undefined })])).toEqual({ s: 'good', m: 'good' });
});
it('three missed readings are stale, twelve are missing, by its own pace', () => {
  const silent = (s: number, paceS = 10) => pit([probe('f', 121, { last: { at: later(NOW, -s), quality: 'good' }, paceS })])['f'];
  expect([silent(30), silent(31), silent(120), silent(121)]).toEqual(['good', 'suspect stale', 'suspect stale', 'bad missing']);
  expect([silent(360, 120), silent(1440, 120), silent(1441, 120)]).toEqual(['good', 'suspect stale', 'bad missing']);
});
it('one that is bad by itself says why, whatever its neighbours say', () => {
  expect(pit([probe('f', undefined, { last: { at: NOW, quality: 'bad', reason: 'open' } }), probe('s', 119)])).toEqual({ f: 'bad open', s: 'good' });
});
it('the pace of a probe follows its readings, and a silence is no pace', () => {
  expect(paceAfter(undefined, 120)).toBe(120);
  expect(paceAfter(10, 20)).toBe(12);
  expect(paceAfter(10, 3600)).toBe(10);
  expect(paceAfter(undefined, 3600)).toBe(10);
});

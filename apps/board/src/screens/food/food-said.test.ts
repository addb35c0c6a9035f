import type { AfterPitView, CookForecast, CookView, FindingView } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../../units/figures.js';
import '../../words/food.js';
import type { SayFoodWords } from '../../words/food.js';
import { sayIn } from '../../words/words.js';
import { afterSaid } from './after-said.js';
import { coreShape } from './core-shape.js';
import { cooksInOrder, doneSaid, findingSaid, remediesSaid, whatIfSaid } from './food-said.js';

const en = sayIn('en', 'food') as SayFoodWords;
const es = sayIn('es', 'food') as SayFoodWords;
const us = figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' });
const metric = figuresOf({ units: 'metric', timeZone: 'America/Chicago', language: 'es' });
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

const forecast = (more: Partial<CookForecast> = {}): CookForecast => ({
  madeAt: '2027-01-16T05:00:00Z', p10At: '2027-01-16T09:00:00Z', p50At: '2027-01-16T10:10:00Z', p90At: '2027-01-16T11:40:00Z', p95At: '2027-01-16T12:10:00Z', neverFrac: 0, phase: 'plateau', coreC: 68, wrapAt: null,
  hotYieldFrac: 0.62, problem: null, ...more,
});
const finding = (more: Partial<FindingView> = {}): FindingView => ({
  limit: 'cooking', code: 'food-code', edition: '2022', section: '3-401.11(B)', outcome: 'open', measured: { tempC: 57.8, durationS: 240 }, required: { tempC: 57.7778, durationS: 1680 }, runsOutAt: null, remedies: [], answered: false, ...more,
});

const after = (cool: Partial<AfterPitView['cool']> = {}): AfterPitView => ({
  offAt: '2027-01-16T10:10:00Z', leavesC: 95, peakC: 96.4, peakAt: '2027-01-16T10:50:00Z', hold: { limitC: 54.4444, section: '3-501.16(A)(1)', coreBelowAt: null, outsideBelowAt: '2027-01-16T11:10:00Z', endsC: 82 },
  cool: { fromAt: '2027-01-16T15:10:00Z', section: '3-501.14(A)', advice: 'cut-by', byAt: '2027-01-16T15:40:00Z', thickestM: 0.0508, ...cool },
});

describe('what is said of food after the pit', () => {
  it('carry-over, hot holding and when to cut, with sections and on the yard\'s clock', () => {
    expect(afterSaid(en, us, after(), 0.0508).map(plain)).toEqual([
      'comes off Sat 04:10 with its core about 203 °F, which goes up to about 206 °F at 04:50',
      'core stays at or above 130.0 °F (3-501.16(A)(1)) until it is cooled, then about 180 °F',
      'its outside falls below 130.0 °F about Sat 05:10 already',
      'to keep 3-501.14(A), cut it to 2.0 in by Sat 09:40; cooling begins Sat 09:10',
      'flat pieces of 2.0 in at most cool in time from Sat 09:10',
    ]);
  });
  it.each(['cools-whole', 'cut-before-it-goes-in', 'too-slow-even-cut'] as const)('%s is a sentence in both languages and calls nothing safe', (advice) => {
    for (const say of [en, es]) expect(afterSaid(say, metric, after({ advice, byAt: null, thickestM: null }), 0.05).join(' ')).not.toMatch(/safe|compliant|segur|after\.|\{\{/i);
  });
});

describe('what is said of food', () => {
  it('a done time is a band on the yard\'s clock', () => expect(doneSaid(en, us, forecast())).toBe('about Sat 04:10, most likely 03:00 to 05:40'));
  it('heat that never does it is said with its share, and what to do', () => {
    expect(plain(doneSaid(en, us, forecast({ p10At: null, p50At: null, p90At: null, neverFrac: 0.9, problem: 'not-in-this-heat' })))).toContain('90 %');
  });
  it('a finding says what was measured against which section, in the yard\'s units', () => {
    expect(plain(findingSaid(en, us, finding()))).toBe('measured 136.0 °F for 4 min against 3-401.11(B), which asks 136.0 °F for 28 min');
    expect(plain(findingSaid(es, metric, finding()))).toBe('se midió 57.8 °C durante 4 min frente a 3-401.11(B), que pide 57.8 °C durante 28 min');
  });
  it('a few seconds stay seconds', () => expect(plain(findingSaid(en, us, finding({ required: { tempC: 62.7778, durationS: 15 } })))).toContain('145.0 °F for 15 s'));
  it('a limit at risk says what can still be done, one that is dealt with says so', () => {
    expect(remediesSaid(en, finding({ outcome: 'at-risk', remedies: ['cut-smaller', 'ice-bath'] }))).toBe('what can still be done: cut it smaller, ice bath');
    expect(remediesSaid(en, finding({ outcome: 'missed', remedies: ['discard'], answered: true }))).toBe('dealt with, see the log');
    expect(remediesSaid(en, finding())).toBeUndefined();
  });
  it('a change of a minute is none; later and earlier are said with the time', () => {
    const at = { lateS: null, p50At: '2027-01-16T10:10:00Z', p95At: null };
    expect(whatIfSaid(en, us, { ...at, middleS: 60 })).toContain('about the same time');
    expect(whatIfSaid(en, us, { ...at, middleS: 5400 })).toBe('done 1 h 30 later, about Sat 04:10');
    expect(whatIfSaid(en, us, { ...at, middleS: -600 })).toContain('10 min earlier');
    expect(whatIfSaid(en, us, { middleS: null, lateS: null, p50At: null, p95At: null })).toContain('not get done');
  });
});

it('cooks stand by when they are done; what waits comes after, what is off last', () => {
  const cook = (id: string, more: object) => ({ id, onAt: null, offAt: null, comesOffAt: null, ...more }) as unknown as CookView;
  const on = { onAt: '2027-01-16T00:00:00Z' };
  expect(
    cooksInOrder([cook('off', { ...on, offAt: '2027-01-16T03:00:00Z' }), cook('waits', {}), cook('late', { ...on, forecast: forecast({ p50At: '2027-01-16T12:00:00Z' }) }), cook('soon', { ...on, forecast: forecast() })]).map(({ id }) => id),
  ).toEqual(['soon', 'late', 'waits', 'off']);
});

it('the picture of a core runs left to right and bottom to top; a reading that was not used is marked', () => {
  const core = { from: '2027-01-16T00:00:00Z', stepS: 3600, p10: [4, 30, 50], p50: [4, 40, 60], p90: [4, 50, 70] };
  const log = [{ id: 'a', kind: 'reading', stage: 'cooking', at: '2027-01-16T01:00:00Z', tempC: 40, verdict: 'used', corrected: false }, { id: 'b', kind: 'reading', stage: 'cooking', at: '2027-01-16T01:30:00Z', tempC: 119, verdict: 'reads-pit-air', corrected: false }];
  const course = { core, log, cut: { done: { coreTempC: 95, tenderHoursAt90: null } } } as unknown as Parameters<typeof coreShape>[0]['course'];
  const shape = coreShape({ course, nowMs: Date.parse('2027-01-16T01:00:00Z'), width: 200, height: 100 })!;
  expect(shape.middle.map(([x]) => x)).toEqual([0, 100, 200]);
  expect(shape.middle[2]![1]).toBeLessThan(shape.middle[0]![1]);
  expect(shape.readings.map(({ id, used }) => [id, used])).toEqual([['a', true], ['b', false]]);
  expect(shape.readings[0]!.at).toEqual(shape.middle[1]);
  expect(shape.nowX).toBe(100);
  expect(shape.doneY).toBeLessThan(shape.middle[2]![1]);
  expect(coreShape({ course: { ...course, core: null }, nowMs: 0, width: 1, height: 1 })).toBeUndefined();
});

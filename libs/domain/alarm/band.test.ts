import { describe, expect, it } from 'vitest';
import { epochS, later } from '../quantity/index.js';
import { type BandAsk, comesBack, lastMeanC, outOfBand, together } from './band.js';

const NOW = epochS(1_800_000_000);
/** The last sample is now, the ones before it every `everyS`. */
const ask = (temps: readonly number[], more: Partial<BandAsk> = {}, everyS = 10) =>
  outOfBand({ now: NOW, lowC: 118, highC: 124, noiseK: 0.2, samples: temps.map((tempC, nth) => ({ at: later(NOW, -everyS * (temps.length - 1 - nth)), tempC })), ...more });

it('five of six samples outside raise it, four do not', () => {
  expect(ask([125, 125, 123, 125, 125, 125])).toBe('above-band');
  expect(ask([125, 123, 123, 125, 125, 125])).toBeUndefined();
  expect(ask([117, 117, 117, 117, 117, 119])).toBe('below-band');
});
it('a minute of samples outside is long enough, half a minute is not', () => {
  expect(ask([121, 121, 121, 125, 125, 125])).toBeUndefined();
  expect(ask([125, 125, 125, 125, 125])).toBe('above-band');
  expect(ask([125, 125, 125, 125])).toBeUndefined();
});
it('it ends only a deadband inside, for a whole minute', () => {
  const seven = (last: number) => [last, last, last, last, last, last, last];
  expect(ask(seven(123.5), { was: 'above-band' })).toBe('above-band');
  expect(ask(seven(122.9), { was: 'above-band' })).toBeUndefined();
  expect(ask([123.5, 122, 122, 122, 122, 122, 122], { was: 'above-band' })).toBe('above-band');
  expect(ask(seven(118.5), { was: 'below-band' })).toBe('below-band');
});
it('a noisy probe widens the deadband, to three tenths of the band at most', () => {
  const inside = [122.8, 122.8, 122.8, 122.8, 122.8, 122.8, 122.8];
  expect(ask(inside, { was: 'above-band', noiseK: 0.5 })).toBe('above-band');
  expect(ask([122.1, 122.1, 122.1, 122.1, 122.1, 122.1, 122.1], { was: 'above-band', noiseK: 9 })).toBeUndefined();
});
it('old samples and none say nothing', () => {
  expect(ask([])).toBeUndefined();
  expect(outOfBand({ now: later(NOW, 301), lowC: 118, highC: 124, noiseK: 0, samples: [0, 1, 2, 3, 4, 5].map((n) => ({ at: later(NOW, n - 5), tempC: 130 })) })).toBeUndefined();
});
it('a probe that is read every two minutes takes ten, and raises too', () => expect(ask([125, 125, 125, 125, 125, 125], {}, 120)).toBe('above-band'));
it('it swings from one side to the other', () => expect(ask([116, 116, 116, 116, 116, 116], { was: 'above-band' })).toBe('below-band'));

const at = (s: number, tempC: number) => ({ at: later(NOW, s), tempC });
const every10 = (count: number, tempC: number, endsS = 0) => Array.from({ length: count }, (_, nth) => at(endsS - 10 * (count - 1 - nth), tempC));
it('the probes of a chamber count together, each reading with the last of the others', () => {
  expect(together([{ samples: [at(-10, 120), at(0, 124)], overK: 0 }, { samples: [at(-12, 116), at(-2, 120)], overK: 0 }])).toEqual([at(-10, 118), at(0, 122)]);
  expect(together([])).toEqual([]);
  expect(together([{ samples: [at(0, 120)], overK: 0 }, { samples: [], overK: 0 }])).toEqual([at(0, 120)]);
});
it('a probe that died at the fire end leaves the chamber to the stack end, less what lies between them', () => {
  const [fireEnd, stackEnd] = [{ samples: every10(12, 131, -300), overK: 8 }, { samples: every10(12, 113), overK: -8 }];
  expect(together([fireEnd, stackEnd]).map(({ tempC }) => tempC)).toEqual(Array(12).fill(121));
});
it('what a dead probe last showed is held for three of its readings and no longer', () => {
  const lately = together([{ samples: every10(12, 100, -60), overK: 0 }, { samples: every10(12, 120), overK: 0 }]).map(({ tempC }) => tempC);
  expect(lately).toEqual([...Array(9).fill(110), 120, 120, 120]);
});
it('probes read every ten seconds and every two minutes count together', () => {
  expect(together([{ samples: every10(3, 120), overK: 0 }, { samples: [at(-330, 124), at(-210, 124), at(-90, 124)], overK: 0 }])).toEqual([at(-20, 122), at(-10, 122), at(0, 122)]);
});

describe('a chamber that is out of its band needs nobody', () => {
  const back = (nowC: number, thenC: number | undefined, was = false) => comesBack({ side: 'below-band', nowC, thenC, lowC: 118, highC: 124, was });
  it('when it lies inside again and only the deadband is missing', () => expect([back(118.4, 110), back(118.6, 110)]).toEqual([false, true]));
  it('when its fire brings it back in the time that there is to act, and not when nothing is forecast', () => expect([back(112, 119), back(112, 117), back(112, undefined)]).toEqual([true, false, false]));
  it('and says so steadily: what counted as coming back does until it is half a kelvin short of it', () => expect([back(112, 117.6, true), back(112, 117.4, true)]).toEqual([true, false]));
  it('where it stands is the last minute, or the last reading where it is read seldom', () => {
    expect(lastMeanC([...every10(6, 110, -60), ...every10(6, 120)])).toBe(120);
    expect(lastMeanC([at(-240, 110), at(-120, 112), at(0, 119)])).toBe(119);
  });
  it('on either side', () => expect(comesBack({ side: 'above-band', nowC: 126, thenC: 123, lowC: 118, highC: 124, was: false })).toBe(true));
});

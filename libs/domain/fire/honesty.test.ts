import { describe, expect, it } from 'vitest';
import { epochS, later } from '../quantity/index.js';
import { checkOutcome, forecastErrors, type KeptForecast, skillOf } from './index.js';

const FROM = epochS(1_800_000_000);
const at = (minutes: number) => later(FROM, minutes * 60);
const kept: KeptForecast = { from: FROM, stepS: 600, p10: [119, 116, 113, 110], p50: [120, 118, 116, 114], p90: [121, 120, 119, 118], tempC: 120, quarterBeforeTempC: 121.5 };
const told = (happened: readonly (readonly [number, number])[], looks: readonly number[] = []) => ({
  forecasts: [kept], happened: happened.map(([minute, tempC]) => ({ at: at(minute), tempC })), looks: looks.map(at), leadsS: [600, 900, 1800],
});

describe('a forecast beside what came', () => {
  it('errs by what it said less what was measured; persistence by the temperature then, the trend by its quarter of an hour', () => {
    const errors = forecastErrors(told([[10, 117], [15, 118], [30, 121]]));
    // By hand: at 15 min the fan stands between its steps, 117; the trend falls 1.5 K a quarter of an hour.
    expect(errors.map(({ leadS, modelK, persistenceK, trendK, covered }) => [leadS, modelK, persistenceK, trendK, covered])).toEqual([
      [600, 1, 3, 2, true], [900, -1, 2, 0.5, true], [1800, -7, -1, -4, false],
    ]);
  });
  it('speaks of a fire that nobody touches: what came after the next look does not count, nor what nobody measured', () => {
    expect(forecastErrors(told([[10, 117], [15, 118], [30, 121]], [12])).map(({ leadS }) => leadS)).toEqual([600]);
    expect(forecastErrors(told([[30, 121]])).map(({ leadS }) => leadS)).toEqual([1800]);
    expect(forecastErrors({ ...told([[60, 100]]), leadsS: [3600] })).toEqual([]);
  });
  it('has skill against persistence and trend: 1 less the ratio of the root mean squares', () => {
    const [ten] = skillOf(forecastErrors({ ...told([[10, 117]]), leadsS: [600] }));
    expect(ten).toMatchObject({ count: 1, rmseK: 1, persistenceRmseK: 3, trendRmseK: 2, coveredFrac: 1 });
    expect(ten?.skillAgainstPersistenceFrac).toBeCloseTo(2 / 3, 12);
    expect(ten?.skillAgainstTrendFrac).toBeCloseTo(0.5, 12);
    expect(skillOf([])).toEqual([]);
  });
  it('says for a check when the band was to be left, when it was, and the degree-minutes outside', () => {
    const happened = [0, 10, 20, 30].map((minute, nth) => ({ at: at(minute), tempC: [120, 119, 115, 113][nth]! }));
    const outcome = checkOutcome({ kept, until: at(30), happened, band: { lowC: 117, highC: 123 } });
    // By hand: below 117 by 0, 0, 2 and 4 K at ten minutes' distance: 10 x (0 + 1 + 3).
    expect(outcome).toMatchObject({ forecastTempC: 114, cameTempC: 113, covered: true, leavesAt: at(20), leftAt: at(20), outOfBandKMin: 40 });
  });
});

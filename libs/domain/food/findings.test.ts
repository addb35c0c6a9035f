import { describe, expect, it } from 'vitest';
import { epochS, later } from '../quantity/index.js';
import { airFor, seenAlong } from './air-ahead.js';
import { cutByCode } from './cuts.js';
import { callingLimits, type CookRecord, findingsOf, type Stage } from './findings.js';
import { fToC } from './history.js';
import { FOOD_CODE_2022 } from './limits/food-code-2022.js';
import type { LimitName, Remedy } from './limits/limit.js';

const on = epochS(1_800_000_000);
const at = (minutes: number) => later(on, 60 * minutes);
const temps = (stage: Stage, ...points: readonly (readonly [minutes: number, tempF: number])[]) => points.map(([minutes, tempF]) => ({ at: at(minutes), tempC: fToC(tempF), stage }));
const record = (more: Partial<CookRecord> = {}): CookRecord => ({ cut: cutByCode('chicken')!, pieceKg: 1.8, onAt: on, temps: [], actions: [], pitAir: [], ...more });
const outcomes = (one: CookRecord, now: number) => findingsOf(FOOD_CODE_2022, one, at(now)).map(({ limit, outcome }) => `${limit} ${outcome}`);
const action = (minutes: number, limit: LimitName, what: Remedy) => ({ at: at(minutes), limit, action: what });

describe('a cook\'s whole record', () => {
  it('nothing read is said: not measured, and it calls for nobody', () => {
    expect(outcomes(record(), 60)).toEqual(['cooking not-measured']);
    expect(callingLimits(findingsOf(FOOD_CODE_2022, record(), at(60)))).toEqual([]);
  });
  it('cooked, held, cooled, kept cold, reheated: each by its own readings', () => {
    const whole = record({
      offAt: at(150),
      temps: [...temps('cooking', [0, 40], [60, 110], [120, 160], [140, 168]), ...temps('holding', [160, 165], [200, 150]), ...temps('cooling', [210, 140], [220, 134], [300, 69], [500, 40]), ...temps('cold', [510, 39]), ...temps('reheating', [900, 39], [960, 166], [961, 166])],
    });
    expect(outcomes(whole, 1000)).toEqual(['cooking met', 'come-up met', 'hot-hold met', 'cooling met', 'cooling met', 'cold-hold met', 'reheat met']);
  });
  it('of two pieces read at one time the colder counts for cooking, the warmer for cooling', () => {
    expect(outcomes(record({ offAt: at(120), temps: [...temps('cooking', [0, 40], [100, 168]), ...temps('cooking', [0, 40], [100, 150]), ...temps('holding', [121, 150])] }), 200)).toContain('cooking missed');
    expect(outcomes(record({ temps: [...temps('cooling', [0, 140], [100, 60], [300, 40]), ...temps('cooling', [0, 140], [100, 100], [300, 40])] }), 400)).toContain('cooling missed');
  });
  it('off the pit without its temperature it is missed once the rise is over, and not before', () => {
    const pulled = record({ offAt: at(100), temps: temps('cooking', [0, 40], [99, 158]) });
    expect(outcomes(pulled, 120)).toContain('cooking open');
    expect(outcomes(pulled, 170)).toContain('cooking missed');
  });
  it('a missed limit calls until the food is dealt with; one at risk until it is measured to be well', () => {
    const missed = record({ offAt: at(100), temps: temps('cooking', [0, 40], [99, 150]) });
    expect(callingLimits(findingsOf(FOOD_CODE_2022, missed, at(200)))).toEqual(['cooking']);
    expect(callingLimits(findingsOf(FOOD_CODE_2022, { ...missed, actions: [action(201, 'cooking', 'discard')] }, at(210)))).toEqual([]);
    expect(callingLimits(findingsOf(FOOD_CODE_2022, { ...missed, actions: [action(201, 'hot-hold', 'discard')] }, at(210)))).toEqual(['cooking']);
    const risky = record({ temps: temps('cooling', [0, 140], [20, 132], [40, 127]) });
    expect(callingLimits(findingsOf(FOOD_CODE_2022, { ...risky, actions: [action(41, 'cooling', 'ice-bath')] }, at(45)))).toEqual(['cooling']);
    expect(callingLimits(findingsOf(FOOD_CODE_2022, { ...risky, temps: [...risky.temps, ...temps('cooling', [60, 90])] }, at(60)))).toEqual([]);
  });
  it('served within four hours out of control is met, forgotten it is missed', () => {
    const out = record({ temps: temps('out', [0, 140]) });
    expect(outcomes(out, 300)).toContain('time-control missed');
    expect(outcomes({ ...out, actions: [action(200, 'time-control', 'serve-now')] }, 300)).toContain('time-control met');
  });
  it('the oven of a small roast is a matter of the plan: said, and no alarm', () => {
    const roast = record({ cut: cutByCode('pork-shoulder')!, pieceKg: 4, offAt: at(600), pitAir: [{ at: at(0), tempC: 121 }, { at: at(600), tempC: 122 }], temps: [...temps('cooking', [0, 40], [300, 150], [590, 200]), ...temps('holding', [601, 190])] });
    expect(outcomes(roast, 610)).toContain('roast-oven missed');
    expect(callingLimits(findingsOf(FOOD_CODE_2022, roast, at(610)))).toEqual([]);
  });
});

describe('the air that lies ahead', () => {
  it('is what was seen, shifted to the zone, and then comes back to the middle of the band', () => {
    const seen = [{ at: at(0), tempC: 110 }, { at: at(60), tempC: 112 }];
    const air = airFor({ seen, onAt: on, now: at(60), bandMiddleC: 121, zoneShiftK: 3 });
    const value = (minutes: number) => air.tempC[minutes / 5]!;
    expect(value(0)).toBe(113);
    expect(value(60)).toBe(115);
    expect(value(100)).toBeCloseTo(124 + (112 - 121) * Math.exp(-1), 6);
    expect(value(295)).toBeGreaterThan(123.5);
    expect(air.sdK![0]).toBeLessThan(air.sdK![40]!);
  });
  it('what has been stays as it was, however the zone stands beside the chamber now', () => {
    const seen = [{ at: at(0), tempC: 110, zoneShiftK: 4 }, { at: at(60), tempC: 112, zoneShiftK: 6 }];
    const past = (zoneShiftK: number) => [...Array.from(airFor({ seen, onAt: on, now: at(60), bandMiddleC: 121, zoneShiftK }).tempC).slice(0, 12)];
    expect(past(3)).toEqual(past(-9));
    expect(past(3)[0]).toBe(114);
  });
  it('a cook that was moved keeps the air that it had, each place from the moment on at which it came there', () => {
    const near = [0, 20, 40, 60, 80].map((minutes) => ({ at: at(minutes), tempC: 130 + minutes / 10, zoneShiftK: 8 }));
    const far = [-10, 30, 50, 70].map((minutes) => ({ at: at(minutes), tempC: 115 + minutes / 10, zoneShiftK: -4 }));
    const seen = seenAlong([{ from: at(0), until: at(45), seen: near }, { from: at(45), seen: far }]);
    expect(seen.map((one) => [(one.at - on) / 60, one.tempC])).toEqual([[0, 130], [20, 132], [40, 134], [45, 118], [50, 120], [70, 122]]);
    const air = airFor({ seen, onAt: on, now: at(80), bandMiddleC: 121, zoneShiftK: -4 });
    expect([0, 40, 45, 75].map((minutes) => air.tempC[minutes / 5])).toEqual([138, 142, 114, 118]);
  });
  it('one that came off had nothing round it that the pit did afterwards', () =>
    expect(seenAlong([{ from: at(0), until: at(30), seen: [{ at: at(10), tempC: 120 }, { at: at(40), tempC: 60 }] }])).toEqual([{ at: at(10), tempC: 120 }]));
  it('with nothing seen it is the band', () => expect(airFor({ seen: [], onAt: at(120), now: at(0), bandMiddleC: 121, zoneShiftK: 0 }).tempC[10]).toBe(121));
});

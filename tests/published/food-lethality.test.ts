import { describe, expect, it } from 'vitest';
import { epochS, type EpochS } from '../../libs/domain/quantity/index.js';
import { growthLog, growthPerHour, type Killing, lethalityAtLeastS, lethalityS, logReduction, PERFRINGENS, SALMONELLA_IN_MEAT } from '../../libs/domain/food/lethality.js';
import { timeBetweenS } from '../../libs/domain/food/history.js';
import { meatRows, type MeatLog, poultryRows } from '../../libs/domain/food/limits/fsis-appendix-a-2021.js';

const toC = (tempF: number) => (tempF - 32) / 1.8;
/** Readings in °F at minutes. */
const line = (...points: readonly (readonly [minutes: number, tempF: number])[]) => points.map(([minutes, tempF]) => ({ at: (minutes * 60) as EpochS, tempC: toC(tempF) }));
const dense = (hours: number, tempF: (h: number) => number, every = 1 / 3600 * 10) => Array.from({ length: Math.round(hours / every) + 1 }, (_, i) => ({ at: (i * every * 3600) as EpochS, tempC: toC(tempF(i * every)) }));
const steady = (minutes: number, tempF: number) => line([0, tempF], [minutes, tempF]);
const near = (value: number, expected: number, share: number) => expect(Math.abs(value / expected - 1), `${value} beside ${expected}`).toBeLessThanOrEqual(share);

describe('F at 150 °F with z 10 °F, D150 10.29 s, worked by hand from the formula (tolerance 0.5 %)', () => {
  it.each([
    { what: '130 °F for 112 min', temps: steady(112, 130), f: 67.2, log: 6.531 }, { what: '135 °F for 36 min', temps: steady(36, 135), f: 68.305, log: 6.638 },
    { what: '140 °F for 12 min', temps: steady(12, 140), f: 72, log: 6.997 }, { what: '155 °F for 22 s', temps: steady(22 / 60, 155), f: 69.57, log: 6.761 },
    { what: 'a ramp from 120 to 140 °F at 1 °F a minute', temps: line([0, 120], [20, 140]), f: 25.797, log: 2.507 },
    { what: 'a ramp from 130 to 145 °F at 0.25 °F a minute', temps: line([0, 130], [60, 145]), f: 319.183, log: 31.019 },
    { what: '132 °F 30 min, 136 °F 15 min, 140 °F 5 min', temps: line([0, 132], [30, 132], [30, 136], [45, 136], [45, 140], [50, 140]), f: 94.358, log: 9.17 },
    { what: 'ten readings five minutes apart', temps: line(...[124, 127, 130, 132, 134, 135, 136, 137, 137.5, 138].map((f, i) => [5 * i, f] as const)), f: 79.488, log: 7.725 },
  ])('$what: $f s, $log log', ({ temps, f, log }) => {
    near(lethalityS(temps, SALMONELLA_IN_MEAT), f, 0.005);
    near(logReduction(temps, SALMONELLA_IN_MEAT, 99).log, log, 0.005);
  });
  it('the colder end of each stretch gives 70.883 s for the ten readings, the trapezoid 79.971: the exact lies between', () => {
    const temps = line(...[124, 127, 130, 132, 134, 135, 136, 137, 137.5, 138].map((f, i) => [5 * i, f] as const));
    near(lethalityAtLeastS(temps, SALMONELLA_IN_MEAT), 70.883, 0.005);
    expect(lethalityAtLeastS(temps, SALMONELLA_IN_MEAT)).toBeLessThan(lethalityS(temps, SALMONELLA_IN_MEAT));
    expect(lethalityS(temps, SALMONELLA_IN_MEAT)).toBeLessThan(79.971 * 1.0001);
  });
  it('a core of one time constant, 40 °F into 225 °F, 6 h, for 4.5 h: 59.13 s, 5.747 log', () => {
    const temps = dense(4.5, (h) => 225 - 185 * Math.exp(-h / 6));
    near(lethalityS(temps, SALMONELLA_IN_MEAT), 59.13, 0.005);
  });
  it('z from 130 °F 112 min and 150 °F 67 s is 9.99 °F, from 147 °F 134 s and 157 °F 14 s 10.19 °F (two rows of the table)', () => {
    expect(20 / Math.log10((112 * 60) / 67)).toBeCloseTo(9.99, 2);
    expect(10 / Math.log10(134 / 14)).toBeCloseTo(10.19, 2);
  });
  it('nothing beyond the table is claimed: 31 log are shown as 6.5 and said to be capped', () => {
    expect(logReduction(line([0, 130], [60, 145]))).toEqual({ log: 6.5, capped: true });
  });
});

describe('exact stretches against quadrature', () => {
  const killings: readonly Killing[] = [SALMONELLA_IN_MEAT, { refC: 70, zK: 7.5, decimalS: 20 }];
  /** Gauss with two points in each of many slices: fifth-order, apart from the closed form. */
  const quadrature = (f: (t: number) => number, to: number, slices = 4000) => {
    let sum = 0;
    for (let i = 0; i < slices; i++) for (const g of [-1, 1]) sum += (to / slices / 2) * f((to / slices) * (i + 0.5 + (0.5 * g) / Math.sqrt(3)));
    return sum;
  };
  it.each([[20, 55, 3600], [55, 95, 1800], [95, 40, 7200], [60, 60, 900], [60, 60.0000001, 900]])('from %d to %d °C in %d s', (from, to, seconds) => {
    const temps = [{ at: epochS(0), tempC: from }, { at: epochS(seconds), tempC: to }];
    const at = (t: number) => from + ((to - from) * t) / seconds;
    for (const killing of killings) near(lethalityS(temps, killing), quadrature((t) => 10 ** ((at(t) - killing.refC) / killing.zK), seconds), 1e-6);
    for (const growing of Object.values(PERFRINGENS)) {
      const integral = quadrature((t) => growthPerHour(at(t), growing) / 3600, seconds);
      const expected = Math.log10((1 + growing.q0 * 10 ** integral) / (1 + growing.q0));
      expect(Math.abs(growthLog(temps, growing) - expected)).toBeLessThan(1e-5);
    }
  });
  it('a history cut into more readings of the same straight lines is worth the same', () => {
    const coarse = line([0, 120], [60, 150]);
    const fine = line(...Array.from({ length: 61 }, (_, i) => [i, 120 + i / 2] as const));
    near(lethalityS(fine, SALMONELLA_IN_MEAT), lethalityS(coarse, SALMONELLA_IN_MEAT), 1e-9);
    expect(growthLog(fine, PERFRINGENS.beef)).toBeCloseTo(growthLog(coarse, PERFRINGENS.beef), 9);
  });
});

describe('Clostridium perfringens in beef while cooling (Juneja and others 2011; straight within each stage, tolerance 1 %)', () => {
  it('grows 0.9809, 2.1266 and 2.5840 log10 an hour at 30, 40 and 45 °C, most (2.606) at 46.0 °C', () => {
    for (const [tempC, rate] of [[30, 0.9809], [40, 2.1266], [45, 2.584], [46, 2.606]] as const) near(growthPerHour(tempC, PERFRINGENS.beef), rate, 0.001);
    const rates = Array.from({ length: 450 }, (_, i) => growthPerHour(10 + i / 10, PERFRINGENS.beef));
    expect(Math.abs(10 + rates.indexOf(Math.max(...rates)) / 10 - 46)).toBeLessThanOrEqual(0.11);
  });
  const celsius = (...points: readonly (readonly [hours: number, tempC: number])[]) => points.map(([hours, tempC]) => ({ at: (hours * 3600) as EpochS, tempC }));
  it.each([
    { what: '54 to 27 °C in 1.5 h, to 4 °C in 5 h (paper: 1.29, from memory)', temps: celsius([0, 54], [1.5, 27], [6.5, 4]), log: 1.27 },
    { what: '130 to 80 °F in 1.5 h, to 40 °F in 5 h', temps: line([0, 130], [90, 80], [390, 40]), log: 1.195 },
    { what: '135 to 70 °F in 2 h, to 41 °F in 4 h: the limit of the Food Code', temps: line([0, 135], [120, 70], [360, 41]), log: 0.868 },
    { what: 'the first stage missed by an hour', temps: line([0, 135], [180, 70], [360, 41]), log: 2.086 },
  ])('$what: $log log', ({ temps, log }) => near(growthLog(temps, PERFRINGENS.beef), log, 0.01));
  it('nothing grows outside its range', () => {
    expect(growthLog(celsius([0, 60], [10, 56]), PERFRINGENS.beef)).toBeCloseTo(0, 12);
    expect(growthLog(celsius([0, 9], [100, 3]), PERFRINGENS.pork)).toBeCloseTo(0, 12);
  });
});

describe('come-up: time from 50 to 130 °F of a core with one time constant, tau ln((Ta - 50)/(Ta - 130))', () => {
  it.each([[6, 3.666], [9, 5.498], [10, 6.109]])('225 °F, tau %d h: %d h', (tau, hours) => {
    const temps = dense(14, (h) => 225 - 185 * Math.exp(-h / tau), 1 / 60);
    near(timeBetweenS(temps, toC(50), toC(130)) / 3600, hours, 0.001);
  });
});

// FSIS Cooking Guideline (Appendix A) 2021, tables 2 and 6 (pages 35 and 59), as printed: °F, 6.5-log, 7-log, 5-log; "m" minutes, else seconds.
const MEAT = `130 112m 121m 86m|132 71m 77m 55m|133 56m 62m 44m|135 36m 37m 28m|136 28m 32m 22m|138 18m 19m 14m|140 12m 12m 9m|141 9m 10m 7m|143 6m 6m 5m|144 5m 5m 4m|145 4m 4m 3m|147 134 144 103|149 85 91 65
|150 67 72 52|152 43 46 33|154 27 29 21|155 22 23 17|157 14 15 11|158 0 0 0|159 0 0 0|160 0 0 0`;
const seconds = (cell: string) => (cell.endsWith('m') ? Number(cell.slice(0, -1)) * 60 : Number(cell));
const rowsOf = (table: string) => table.split('|').map((row) => row.trim().split(/\s+/));

describe('FSIS Appendix A 2021, meat', () => {
  it.each(rowsOf(MEAT))('%s °F: %s, %s, %s', (tempF, ...cells) => {
    ([6.5, 7, 5] as const satisfies readonly MeatLog[]).forEach((log, i) => expect(meatRows(log).find((row) => row.tempF === Number(tempF))?.holdS).toBe(seconds(cells[i]!)));
  });
  it('has these rows and no others', () => expect(meatRows(6.5).map(({ tempF }) => tempF)).toEqual(rowsOf(MEAT).map(([tempF]) => Number(tempF))));
  it('6.5 and 5 log are one straight line, rounded up to the minute below 146 °F and to the second above; 136 °F (28.01 min, printed 28) is the exception; D150 10.29 s for the one, 10.30 s for the other', () => {
    for (const log of [6.5, 5] as const)
      for (const { tempF, holdS } of meatRows(log).filter(({ tempF: f }) => f < 158 && !(log === 6.5 && f === 136))) {
        const exactS = log * (log === 5 ? 10.3 : 10.29) * 10 ** ((150 - tempF) / 10);
        expect(holdS, `${log} log at ${tempF} °F`).toBe(tempF < 146 ? 60 * Math.ceil(exactS / 60 - 1e-9) : Math.ceil(exactS - 1e-9));
      }
  });
});

// Tables 3 and 4 (pages 37 and 38), 7-log: °F, chicken at 1, 5, 12 % fat, turkey at 1, 5, 12 %.
const POULTRY = `136 63.3m 68.4m 81.4m 64m 65.3m 70.8m|137 50.1m 54.3m 65.5m 51.9m 53.2m 58.5m|139 31.6m 34.4m 43m 34.4m 35.4m 40.4m|140 25.2m 27.5m 35m 28.1m 29m 33.7m|142 16.1m 17.6m 23.5m 18.9m 19.5m 23.7m
|143 13m 14.2m 19.3m 15.5m 16.1m 19.8m|145 8.4m 9.2m 13m 10.5m 10.8m 13.8m|146 6.8m 7.4m 10.6m 8.7m 8.9m 11.5m|148 4.4m 4.7m 6.8m 5.8m 5.9m 7.7m|150 2.7m 2.8m 4.2m 3.8m 3.7m 4.9m|151 2.1m 2.1m 3.1m 3m 2.9m 3.8m
|153 1.2m 1.3m 1.6m 1.8m 1.9m 2.1m|154 55.9 1m 1.1m 1.5m 1.5m 1.6m|155 44.2 47.7 54.4 1.2m 1.2m 1.3m|157 27.7 29.8 34 47.9 48.8 50.4|158 21.9 23.6 26.9 38.8 39.6 40.9|160 13.7 14.8 16.9 25.6 26.1 26.9
|161 10.8 11.7 13.3 20.8 21.2 21.9|163 0 0 0 13.7 13.9 14.4|164 0 0 0 11.1 11.3 11.7|165 0 0 0 0 0 0`;
describe('FSIS Appendix A 2021, poultry', () => {
  it.each(rowsOf(POULTRY))('%s °F: chicken %s %s %s, turkey %s %s %s', (tempF, ...cells) => {
    const at = (bird: 'chicken' | 'turkey', fat: number) => poultryRows(bird, fat).find((row) => row.tempF === Number(tempF))!.holdS;
    [at('chicken', 1), at('chicken', 5), at('chicken', 12), at('turkey', 1), at('turkey', 5), at('turkey', 12)].forEach((holdS, i) => expect(holdS).toBeCloseTo(seconds(cells[i]!), 6));
  });
  it('fat that is not known reads the 12 % column (p. 39); another bird the longer of both tables (p. 36)', () => {
    expect(poultryRows('chicken', undefined)).toEqual(poultryRows('chicken', 12));
    expect(poultryRows('chicken', 7)).toEqual(poultryRows('chicken', 12));
    expect(poultryRows('other', undefined).find(({ tempF }) => tempF === 136)?.holdS).toBeCloseTo(81.4 * 60, 6);
    expect(poultryRows('other', undefined).find(({ tempF }) => tempF === 160)?.holdS).toBeCloseTo(26.9, 6);
  });
});

import { describe, expect, it } from 'vitest';
import { epochS, type EpochS } from '../../libs/domain/quantity/index.js';
import { lastFallS, worstOf } from '../../libs/domain/food/history.js';
import { callsForHands, cookingKindOf, judgeComeUp, judgeCooking, judgeReheat, judgeRoastOven } from '../../libs/domain/food/judge-cooking.js';
import { judgeColdHold, judgeCooling, judgeHotHold, judgeTimeControl } from '../../libs/domain/food/judge-keeping.js';
import { FOOD_CODE_2013 } from '../../libs/domain/food/limits/food-code-2013.js';
import { FOOD_CODE_2022 as CODE } from '../../libs/domain/food/limits/food-code-2022.js';
import { FSIS_B_OPTION_1, FSIS_B_OPTION_2, FSIS_B_OPTION_3 } from '../../libs/domain/food/limits/fsis-appendix-b-2021.js';
import { EDITIONS } from '../../libs/domain/food/own-limits.js';
import { withOwn } from '../../libs/domain/food/own-limits.js';

const toC = (tempF: number) => (tempF - 32) / 1.8;
const line = (...points: readonly (readonly [minutes: number, tempF: number])[]) => points.map(([minutes, tempF]) => ({ at: (minutes * 60) as EpochS, tempC: toC(tempF) }));
const minutes = (at: number) => epochS(at * 60);

describe('US Food Code 2022, as printed in states\' adoptions', () => {
  // 3-401.11(B)(2), °F and hold; s = seconds, else minutes.
  it.each([[130, 112], [133, 56], [135, 36], [136, 28], [138, 18], [140, 12], [144, 5], [145, 4], [147, 134 / 60], [149, 85 / 60], [155, 22 / 60], [157, 14 / 60], [158, 0]])('roast chart: %d °F for %d min', (tempF, holdMin) => {
    expect(CODE.cooking.roast.rows.find((row) => row.tempF === tempF)?.holdS).toBeCloseTo(holdMin * 60, 9);
    const held = (short: number) => judgeCooking(CODE, 'roast', { line: line([0, 40], [1, tempF], [1 + holdMin - short, tempF], [2 + holdMin, 70]), over: true });
    expect(held(0).outcome).toBe('met');
    if (holdMin > 1) expect(held(0.5).outcome).toBe('missed');
  });
  it.each([
    { kind: 'intact', tempF: 145, holdS: 15, section: '3-401.11(A)(1)' }, { kind: 'ground', tempF: 155, holdS: 17, section: '3-401.11(A)(2)' }, { kind: 'ground', tempF: 145, holdS: 180, section: '3-401.11(A)(2)' },
    { kind: 'ground', tempF: 150, holdS: 60, section: '3-401.11(A)(2)' }, { kind: 'ground', tempF: 158, holdS: 0, section: '3-401.11(A)(2)' }, { kind: 'poultry', tempF: 165, holdS: 0, section: '3-401.11(A)(3)' },
  ] as const)('$kind: $tempF °F for $holdS s, $section', ({ kind, tempF, holdS, section }) => {
    expect(CODE.cooking[kind]).toMatchObject({ section });
    expect(CODE.cooking[kind].rows).toContainEqual({ tempF, holdS });
  });
  it('ovens: under 10 lb still 350 °F, convection 325 °F; 10 lb or more 250 °F', () => {
    const oven = (pieceKg: number, tempF: number) => judgeRoastOven(CODE, { line: line([0, tempF], [60, tempF]), pieceKg }).outcome;
    expect([oven(6, 250), oven(6, 249), oven(4, 325), oven(4, 300)]).toEqual(['met', 'missed', 'met', 'missed']);
    expect(CODE.roastOvens.rows).toContainEqual({ oven: 'still-dry', belowKg: 4.5359237, atLeastF: 350 });
  });
  it('holding, cooling, reheating, time as control', () => {
    expect([CODE.hotHold.tempF, CODE.hotHoldRoast.tempF, CODE.coldHold.tempF]).toEqual([135, 130, 41]);
    expect(CODE.cooling.stages).toEqual([{ fromF: 135, toF: 70, withinS: 7200 }, { fromF: 135, toF: 41, withinS: 21_600 }]);
    expect(CODE.reheat).toMatchObject({ tempF: 165, holdS: 15, fromF: 41, withinS: 7200, section: '3-403.11(A), (D)' });
    expect(CODE.timeControl).toMatchObject({ withinS: 4 * 3600, startsColdF: 41, startsHotF: 135 });
    expect(CODE.timeControlCold).toMatchObject({ withinS: 6 * 3600, warmestF: 70 });
    expect([CODE.cooking.roast.section, CODE.cooling.section, CODE.hotHold.section, CODE.coldHold.section]).toEqual(['3-401.11(B)', '3-501.14(A)', '3-501.16(A)(1)', '3-501.16(A)(2)']);
  });
  it('editions differ: before 2017 ground meat 15 s at 155 °F and poultry 15 s at 165 °F; reheating is 15 s in both', () => {
    expect(FOOD_CODE_2013.cooking.ground.rows).toContainEqual({ tempF: 155, holdS: 15 });
    expect(FOOD_CODE_2013.cooking.poultry.rows).toEqual([{ tempF: 165, holdS: 15 }]);
    expect([FOOD_CODE_2013.reheat.holdS, CODE.reheat.holdS]).toEqual([15, 15]);
  });
});

describe('cooking', () => {
  it('57.8 °C (136 °F) for 4 min against 3-401.11: open, with both numbers, and never a word of being fit', () => {
    const finding = judgeCooking(CODE, 'roast', { line: line([0, 40], [10, 136], [14, 136]), over: false });
    expect(finding).toMatchObject({ outcome: 'open', section: '3-401.11(B)', edition: '2022', required: { durationS: 28 * 60 } });
    expect(finding.measured?.tempC).toBeCloseTo(57.78, 2);
    expect(finding.measured?.durationS).toBeCloseTo(240, 6);
    expect(JSON.stringify(finding)).not.toMatch(/\bsafe|compliant/i);
    expect(finding.shelvable).toBe(false);
  });
  it('between two rows the one below holds: 139 °F needs the 18 min of 138 °F', () => {
    const at = (held: number) => judgeCooking(CODE, 'roast', { line: line([0, 40], [10, 139], [10 + held, 139]), over: true }).outcome;
    expect([at(17.8), at(18.1)]).toEqual(['missed', 'met']);
  });
  it('154 °F for 27 s after a missed endpoint of 158 °F meets another row of the same table (FSIS Appendix A p. 67: their example)', () => {
    const finding = judgeCooking({ ...CODE, cooking: { ...CODE.cooking, roast: { ...CODE.cooking.roast, rows: [{ tempF: 154, holdS: 27 }, { tempF: 158, holdS: 0 }] } } }, 'roast', { line: line([0, 100], [60, 154], [60.45, 154], [80, 120]), over: true });
    expect(finding.outcome).toBe('met');
  });
  it('two short stretches do not make one long hold', () => {
    expect(judgeCooking(CODE, 'roast', { line: line([0, 100], [1, 140], [8, 140], [9, 130], [10, 140], [16, 140], [17, 120]), over: true }).outcome).toBe('missed');
  });
  it('poultry is never held to the meat chart: 145 °F for 20 min is open', () => {
    expect(cookingKindOf({ meat: 'poultry', state: 'intact' })).toBe('poultry');
    expect(judgeCooking(CODE, 'poultry', { line: line([0, 40], [100, 145], [120, 145]), over: false }).outcome).toBe('open');
  });
  it('the limit is raised by the probe\'s error: 165 °F with a probe good to 1 °F means 166 °F (FSIS Appendix A p. 20)', () => {
    const reads = (tempF: number) => judgeCooking(CODE, 'poultry', { line: line([0, 40], [90, tempF]), over: true, probeErrorK: 1 / 1.8 }).outcome;
    expect([reads(165.5), reads(166)]).toEqual(['missed', 'met']);
  });
  it('165 °F is compared unrounded: 73.8 °C, shown as 74, is not enough', () => {
    expect(judgeCooking(CODE, 'poultry', { line: [{ at: epochS(0), tempC: 73.8 }], over: true }).outcome).toBe('missed');
    expect(judgeCooking(CODE, 'poultry', { line: [{ at: epochS(0), tempC: toC(165) }], over: true }).outcome).toBe('met');
  });
  it('falling before its hold is done is a risk while something can be done; off and cold it is missed; unread it is not measured', () => {
    const record = line([0, 40], [200, 139], [205, 134]);
    expect(judgeCooking(CODE, 'roast', { line: record, over: false })).toMatchObject({ outcome: 'at-risk', remedies: ['raise-heat', 'keep-cooking'] });
    expect(judgeCooking(CODE, 'roast', { line: record, over: true })).toMatchObject({ outcome: 'missed', remedies: ['recook', 'discard'] });
    expect(judgeCooking(CODE, 'roast', { line: [], over: true })).toMatchObject({ outcome: 'not-measured', remedies: ['measure-now'] });
  });
  it('of several probes the coldest at each instant counts, never the mean (FSIS Appendix A p. 22)', () => {
    const lot = worstOf([line([0, 40], [100, 170]), line([0, 40], [100, 160])], 'coldest');
    expect(judgeCooking(CODE, 'poultry', { line: lot, over: true }).outcome).toBe('missed');
  });
});

describe('the guidelines of FSIS as a set of limits', () => {
  const FSIS = EDITIONS['fsis-2021-option-2'];
  it.each([
    { what: 'poultry of unknown fat at 145 °F, table 4, turkey at 12 %: 13.8 min', kind: 'poultry' as const, tempF: 145, holdMin: 13.8, code: 'fsis-appendix-a' },
    { what: 'a roast at 140 °F, table 2, 6.5 log: 12 min', kind: 'roast' as const, tempF: 140, holdMin: 12, code: 'fsis-appendix-a' },
    { what: 'ground meat at 150 °F, table 2, 6.5 log: 67 s', kind: 'ground' as const, tempF: 150, holdMin: 67 / 60, code: 'fsis-appendix-a' },
  ])('$what', ({ kind, tempF, holdMin, code }) => {
    const held = (heldMin: number) => judgeCooking(FSIS, kind, { line: line([0, 40], [10, tempF], [10 + heldMin, tempF]), over: true });
    expect([held(holdMin - 0.05).outcome, held(holdMin + 0.05).outcome]).toEqual(['missed', 'met']);
    expect(held(holdMin + 0.05)).toMatchObject({ code, edition: '2021' });
  });
  it('cools by the option that was chosen, and what FSIS does not speak of is the Food Code\'s and says so', () => {
    expect(judgeCooling(FSIS, { line: line([0, 130], [30, 115]), now: minutes(30) })[0]).toMatchObject({ code: 'fsis-appendix-b', section: 'Appendix B option 2' });
    expect(judgeHotHold(FSIS, { line: line([0, 150]), roast: false })).toMatchObject({ code: 'food-code', edition: '2022' });
  });
});

describe('come-up, 50 to 130 °F in 6 h (FSIS Appendix A p. 24)', () => {
  const ask = (record: ReturnType<typeof line>, nowMin: number, upperMin?: number) => judgeComeUp(CODE, 'roast', { line: record, now: minutes(nowMin), ...(upperMin !== undefined && { upperAt: minutes(upperMin) }) });
  it('through in time is met, still on its way is open with the time that is left', () => {
    expect(ask(line([0, 40], [30, 50], [330, 130], [400, 150]), 400).outcome).toBe('met');
    const open = ask(line([0, 40], [30, 50], [150, 90]), 150);
    expect(open).toMatchObject({ outcome: 'open', runsOutAt: 60 * (30 + 360) });
  });
  it('a forecast past the limit is a risk hours before, with what can be done', () => {
    expect(ask(line([0, 40], [30, 50], [150, 70]), 150, 500)).toMatchObject({ outcome: 'at-risk', remedies: ['raise-heat'] });
    expect(ask(line([0, 40], [30, 50], [150, 70]), 150, 380).outcome).toBe('open');
  });
  it('over it is missed, and a slump adds to it', () => {
    expect(ask(line([0, 50], [200, 110], [260, 95], [420, 129]), 421).outcome).toBe('missed');
    expect(ask(line([0, 50], [370, 130], [380, 132]), 380).outcome).toBe('missed');
  });
  it('after a lethal row was met time counts no more: cooling through the range is cooling\'s matter', () => {
    expect(ask(line([0, 50], [200, 130], [300, 160], [400, 120], [900, 60]), 900).outcome).toBe('met');
  });
});

describe('cooling, worked by straight lines between readings', () => {
  const K1 = line([0, 155], [20, 138], [40, 121], [60, 106], [90, 87], [120, 72], [180, 55], [240, 46], [300, 41], [360, 39]);
  const K2 = line([0, 148], [30, 126], [60, 107], [90, 92], [120, 79], [150, 69], [180, 61], [240, 51], [300, 45], [360, 41.5], [390, 40]);
  const curve = (rate: number) => Array.from({ length: 3 * 3600 }, (_, i) => ({ at: epochS(4 * i), tempC: toC(38 + 112 * Math.exp((-rate * 4 * i) / 3600)) }));
  it.each([
    { what: 'passes', record: K1, crosses: [23.53, 127.06, 300], took: [103.53, 276.47], outcomes: ['met', 'met'] },
    { what: 'fails the first stage and passes the total', record: K2, crosses: [17.73, 147, 370], took: [129.27, 352.27], outcomes: ['missed', 'met'] },
    { what: '38 + 112 exp(-0.9 h) passes', record: curve(0.9), crosses: [0.16 * 60, 1.392 * 60, 4.022 * 60], took: [1.232 * 60, 3.862 * 60], outcomes: ['met', 'met'] },
    { what: '38 + 112 exp(-0.55 h) fails both', record: curve(0.55), crosses: [0.261 * 60, 2.278 * 60, 6.582 * 60], took: [2.016 * 60, 6.32 * 60], outcomes: ['missed', 'missed'] },
  ])('$what', ({ record, crosses, took, outcomes }) => {
    [135, 70, 41].forEach((tempF, i) => expect(Math.abs(lastFallS(record, toC(tempF))! / 60 - crosses[i]!)).toBeLessThan(0.05));
    const findings = judgeCooling(CODE, { line: record, now: record.at(-1)!.at });
    findings.forEach((finding, i) => expect(Math.abs(finding.measured!.durationS / 60 - took[i]!)).toBeLessThan(0.06));
    expect(findings.map(({ outcome }) => outcome)).toEqual(outcomes);
  });
  it('the first against Appendix B option 1: 130 to 80 °F in 74.59 min, 80 to 40 °F in 226.00 min', () => {
    const findings = judgeCooling({ code: 'fsis-appendix-b', edition: '2021', cooling: FSIS_B_OPTION_1 }, { line: K1, now: minutes(360) });
    expect(findings.map(({ outcome }) => outcome)).toEqual(['met', 'met']);
    expect(findings[0]!.measured!.durationS / 60).toBeCloseTo(74.59, 2);
    expect(findings[1]!.measured!.durationS / 60).toBeCloseTo(226, 2);
  });
  it('options of Appendix B start where they start: 130, 120 and 130 °F', () => expect([FSIS_B_OPTION_1, FSIS_B_OPTION_2, FSIS_B_OPTION_3].map(({ stages }) => stages[0]!.fromF)).toEqual([130, 120, 130]));
  it('a first stage that will be missed raises its alarm before it is too late, with what can still be done', () => {
    const slow = curve(0.55);
    const alarmAt = [30, 45, 60, 75, 90, 105].find((min) => {
      const seen = slow.filter(({ at }) => at <= min * 60);
      return judgeCooling(CODE, { line: seen, now: minutes(min) })[0]!.outcome === 'at-risk';
    });
    expect(alarmAt).toBeLessThanOrEqual(60);
    const finding = judgeCooling(CODE, { line: slow.filter(({ at }) => at <= 60 * 60), now: minutes(60) })[0]!;
    expect(finding.remedies.slice(0, 2)).toEqual(['cut-smaller', 'ice-bath']);
    expect(callsForHands(finding)).toBe(true);
    expect(finding.runsOutAt! - 3600).toBeGreaterThan(3600);
  });
  it('the quick course raises none', () => {
    for (const min of [20, 40, 60, 90]) {
      const seen = curve(0.9).filter(({ at }) => at <= min * 60);
      expect(judgeCooling(CODE, { line: seen, now: minutes(min) }).map(callsForHands)).toEqual([false, false]);
    }
  });
  it('the whole runs from 135 °F, not from the pass at 70: a quick first stage leaves more for the second', () => {
    const quick = line([0, 135], [60, 70], [355, 41]);
    expect(judgeCooling(CODE, { line: quick, now: minutes(360) }).map(({ outcome }) => outcome)).toEqual(['met', 'met']);
  });
  it('no reading for hours counts as time gone: missed without a crossing', () => {
    const stale = line([0, 140], [30, 120]);
    expect(judgeCooling(CODE, { line: stale, now: minutes(400) }).map(({ outcome }) => outcome)).toEqual(['missed', 'missed']);
  });
});

describe('holding, reheating, time as control', () => {
  it('hot: 134.9 °F is below the limit though both print as 57 °C; 130 °F holds for a roast', () => {
    expect(judgeHotHold(CODE, { line: line([0, 150], [60, 134.9]), roast: false }).outcome).toBe('missed');
    expect(judgeHotHold(CODE, { line: line([0, 150], [60, 131], [120, 131]), roast: true }).outcome).toBe('met');
  });
  it('sinking towards the limit it is a risk before it is under it', () => {
    const finding = judgeHotHold(CODE, { line: line([0, 150], [30, 144], [60, 138]), roast: false });
    expect(finding).toMatchObject({ outcome: 'at-risk' });
    expect(finding.runsOutAt).toBeGreaterThan(3600);
    expect(judgeHotHold(CODE, { line: line([0, 150], [60, 149.5], [120, 149]), roast: false }).outcome).toBe('met');
  });
  it('cold: 41 °F is kept, 41.5 °F is not', () => {
    expect(judgeColdHold(CODE, { line: line([0, 38], [60, 41]) }).outcome).toBe('met');
    expect(judgeColdHold(CODE, { line: line([0, 38], [60, 41.5]) }).outcome).toBe('missed');
  });
  it('reheating: 165 °F for 15 s within 2 h; a course that will not get there is a risk', () => {
    expect(judgeReheat(CODE, { line: line([0, 41], [100, 165], [101, 166]), now: minutes(101) }).outcome).toBe('met');
    expect(judgeReheat(CODE, { line: line([0, 41], [30, 60], [60, 80]), now: minutes(60) })).toMatchObject({ outcome: 'at-risk', runsOutAt: 7200 });
    expect(judgeReheat(CODE, { line: line([0, 41], [30, 80], [60, 120]), now: minutes(60) }).outcome).toBe('open');
    expect(judgeReheat(CODE, { line: line([0, 41], [125, 165], [126, 166]), now: minutes(126) }).outcome).toBe('missed');
  });
  it('four hours out of control: served within is met, unmarked past it is missed, shortly before it a risk', () => {
    const ask = (nowMin: number, more: object = {}) => judgeTimeControl(CODE, { kind: 'four-hours', leftControlAt: minutes(0), startC: toC(140), now: minutes(nowMin), ...more }).outcome;
    expect([ask(100), ask(220), ask(241), ask(300, { goneAt: minutes(230) })]).toEqual(['open', 'at-risk', 'missed', 'met']);
    expect(ask(10, { startC: toC(100) })).toBe('missed');
  });
  it('six hours only from cold, and never above 70 °F', () => {
    const ask = (more: object) => judgeTimeControl(CODE, { kind: 'six-hours-cold', leftControlAt: minutes(0), startC: toC(40), now: minutes(300), ...more }).outcome;
    expect([ask({ warmestC: toC(65) }), ask({ warmestC: toC(72) }), ask({}), ask({ startC: toC(140), warmestC: toC(140) })]).toEqual(['open', 'missed', 'not-measured', 'missed']);
  });
});

describe('a kitchen\'s own values', () => {
  it('stricter ones stand in the place of the code\'s', () => {
    const own = withOwn(CODE, { hotHoldC: 60, coolingFirstS: 5400, cookingC: { poultry: 75 }, reheatC: 75 });
    if (!own.ok) throw new Error(own.refusal.code);
    expect(judgeHotHold(own.value, { line: [{ at: epochS(0), tempC: 59 }], roast: false }).outcome).toBe('missed');
    expect(judgeCooking(own.value, 'poultry', { line: [{ at: epochS(0), tempC: 74.5 }], over: true }).outcome).toBe('missed');
    expect(judgeCooling(own.value, { line: line([0, 135], [100, 70], [300, 41]), now: minutes(300) }).map(({ outcome }) => outcome)).toEqual(['missed', 'met']);
  });
  it('a laxer one is refused with what the code prints', () => {
    expect(withOwn(CODE, { hotHoldC: 55 })).toMatchObject({ ok: false, refusal: { code: 'laxer-than-code', field: 'hotHoldC', printed: '135 °F (57 °C) or above' } });
    expect(withOwn(CODE, { coolingTotalS: 8 * 3600 })).toMatchObject({ ok: false, refusal: { field: 'coolingTotalS' } });
    expect(withOwn(CODE, { cookingC: { poultry: 70 } })).toMatchObject({ ok: false, refusal: { field: 'cookingC', section: '3-401.11(A)(3)' } });
    expect(withOwn(CODE, { coldHoldC: 6 })).toMatchObject({ ok: false });
    expect(withOwn(CODE, {}).ok).toBe(true);
  });
});

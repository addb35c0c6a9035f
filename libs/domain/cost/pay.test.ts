import { describe, expect, it } from 'vitest';
import { fromIso } from '../quantity/index.js';
import { payOf, PLAIN_PAY } from './index.js';

const at = (time: string) => fromIso(`2027-03-13T${time}:00Z`);
const next = (time: string) => fromIso(`2027-03-14T${time}:00Z`);
const night = [{ from: at('22:00'), until: next('06:00') }];
const ana = { spans: [{ from: at('20:00'), until: next('06:00') }], breaks: [{ from: at('23:00'), until: at('23:15') }, { from: next('02:00'), until: next('02:30') }], centsPerHour: 2000 };

describe('what a shift costs', () => {
  it('ten hours with a rest of 15 min that is paid and a meal of 30 that is not: 9.5 h at 20.00 (29 CFR 785.18, 785.19)', () => {
    expect(payOf(ana, PLAIN_PAY, night)).toEqual({ paidS: 34_200, unpaidBreakS: 1800, nightS: 27_000, overtimeS: 0, costCents: 19_000 });
  });
  it('the yard pays a tenth more at night: 7.5 of them at 2.00 more', () => {
    expect(payOf(ana, { ...PLAIN_PAY, nightExtraPermille: 100 }, night).costCents).toBe(20_500);
  });
  it('beyond eight hours half as much again: 1.5 h at 10.00 more', () => {
    expect(payOf(ana, { ...PLAIN_PAY, overtimeAfterS: 8 * 3600, overtimeExtraPermille: 500 }, night)).toMatchObject({ overtimeS: 5400, costCents: 20_500 });
  });
  it('a yard that pays every break, and one that pays none', () => {
    expect(payOf(ana, { ...PLAIN_PAY, paidBreakUpToS: 3600 }, night).paidS).toBe(36_000);
    expect(payOf(ana, { ...PLAIN_PAY, paidBreakUpToS: 0 }, night).paidS).toBe(33_300);
  });
  it('somebody who was away for an hour is paid for two stretches; nobody there costs nothing', () => {
    expect(payOf({ ...ana, breaks: [], spans: [{ from: at('20:00'), until: at('22:00') }, { from: at('23:00'), until: next('01:00') }] }, PLAIN_PAY, night)).toMatchObject({ paidS: 4 * 3600, nightS: 2 * 3600 });
    expect(payOf({ ...ana, spans: [], breaks: [] }, PLAIN_PAY, night).costCents).toBe(0);
  });
});

import { describe, expect, it } from 'vitest';
import { FormReading } from '../../parts/form-reading.js';
import { figuresOf } from '../../units/figures.js';
import { draftOf, rulesOf } from './pay-draft.js';

const reading = () => new FormReading(figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' }), 'America/Chicago');
const rules = { paidBreakUpToS: 1200, nightFrom: '22:00', nightUntil: '06:00', nightExtraPermille: 125, overtimeAfterS: 10 * 3600, overtimeExtraPermille: 500 };

describe('pay rules in their fields', () => {
  it('20 minutes, 12.5 %, after 10 hours 50 %', () => {
    expect(draftOf(rules)).toMatchObject({ breakMin: '20', nightPercent: '12.5', overtimeHours: '10', overtimePercent: '50' });
  });
  it('what is shown is what is kept', () => {
    expect(rulesOf(draftOf(rules), reading())).toEqual(rules);
  });
  it('no overtime is an empty field, and the other way round', () => {
    const none = { ...rules, overtimeAfterS: 24 * 3600 };
    expect(draftOf(none).overtimeHours).toBe('');
    expect(rulesOf(draftOf(none), reading())).toEqual(none);
  });
  it('a time that is none and a share over three times the rate are told at their fields', () => {
    const form = reading();
    expect(rulesOf({ ...draftOf(rules), nightFrom: '25:00', overtimePercent: '400' }, form)).toBeUndefined();
    expect(Object.keys(form.wrongs)).toEqual(['nightFrom', 'overtimePercent']);
  });
});

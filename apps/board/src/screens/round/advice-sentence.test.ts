import type { AdviceView } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../../units/figures.js';
import '../../words/round.js';
import { sayIn } from '../../words/words.js';
import type { round } from '../../words/en/round.js';
import { adviceSentence } from './advice-sentence.js';

const advice: AdviceView = {
  madeAt: '2027-03-13T08:11:00Z',
  action: 'two',
  lookAgainAt: '2027-03-13T08:50:00Z',
  freshOnDoorSide: true,
  reason: { code: 'bed-low', bedKg: 1.1, fullBedKg: 2.4, tempC: 121, splitLeftFrac: 0.3 },
  leavesBandAt: null,
  otherwise: { action: 'one', leavesBandAt: '2027-03-13T08:38:00Z' },
  source: 'forecast',
};
const now = Date.parse('2027-03-13T08:12:00Z');
const metric = { units: 'metric', timeZone: 'America/Chicago' } as const;
const english = { say: sayIn<typeof round>('en', 'round'), figures: figuresOf({ ...metric, language: 'en' }) };
const spanish = { say: sayIn<typeof round>('es', 'round'), figures: figuresOf({ ...metric, language: 'es' }) };

describe('advice as a person says it', () => {
  it('says what to do, why, what one split would bring, and where the fresh one goes', () => {
    const { order, reason } = adviceSentence(advice, english.say, english.figures, now);
    expect(order).toBe('Put two splits on.');
    expect(reason).toBe('Bed is low: 1.1 of 2.4\u00a0kg. One split would leave the band at 02:38; this one holds it. Fresh one on the door side.');
  });

  it('says the same in Spanish', () => {
    const { order, reason } = adviceSentence(advice, spanish.say, spanish.figures, now);
    expect(order).toBe('Ponga dos leños.');
    expect(reason).toContain('La cama de brasas está baja: 1.1 de 2.4\u00a0kg.');
    expect(reason).toContain('Un leño saldría de la banda a las 02:38');
  });

  it('raking only says when to look again and speaks of no fresh split', () => {
    const rake: AdviceView = { ...advice, action: 'rake', otherwise: null, reason: { ...advice.reason, code: 'split-has-life' } };
    expect(adviceSentence(rake, english.say, english.figures, now).reason).toBe('The split still has life in it: 30\u00a0% left. Look again at 02:50.');
  });

  it.each([
    { what: 'lies in the past', leavesBandAt: null, other: '2027-03-13T08:10:00Z' },
    { what: 'comes in the same minute as this one', leavesBandAt: '2027-03-13T08:38:20Z', other: '2027-03-13T08:38:00Z' },
    { what: 'would hold longer than this one', leavesBandAt: '2027-03-13T08:30:00Z', other: '2027-03-13T08:38:00Z' },
  ])('a comparison that $what is no reason and is not said', ({ leavesBandAt, other }) => {
    const one: AdviceView = { ...advice, leavesBandAt, otherwise: { action: 'one', leavesBandAt: other } };
    expect(adviceSentence(one, english.say, english.figures, now).reason).not.toContain('leave the band');
  });

  it('a yard in US units reads pounds', () => {
    const us = figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' });
    // By hand: 1.1 kg / 0.45359237 = 2.43 lb, 2.4 kg = 5.29 lb.
    expect(adviceSentence(advice, english.say, us, now).reason).toContain('2.4 of 5.3\u00a0lb');
  });
});

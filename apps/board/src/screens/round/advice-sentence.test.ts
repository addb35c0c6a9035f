import type { AdviceView } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../../units/figures.js';
import '../../words/round.js';
import { sayIn } from '../../words/words.js';
import type { round } from '../../words/en/round.js';
import '../../words/fire.js';
import type { fire } from '../../words/en/fire.js';
import { adviceSentence } from './advice-sentence.js';

const advice: AdviceView = {
  madeAt: '2027-03-13T08:11:00Z',
  action: 'two',
  air: null,
  expects: null,
  alternatives: [],
  lookAgainAt: '2027-03-13T08:50:00Z',
  freshOnDoorSide: true,
  reason: { code: 'bed-low', bedKg: 1.1, fullBedKg: 2.4, tempC: 121, splitLeftFrac: 0.3 },
  leavesBandAt: null,
  otherwise: { action: 'one', leavesBandAt: '2027-03-13T08:38:00Z' },
  source: 'forecast',
};
const now = Date.parse('2027-03-13T08:12:00Z');
const metric = { units: 'metric', timeZone: 'America/Chicago' } as const;
const english = { say: sayIn<typeof round>('en', 'round'), fire: sayIn<typeof fire>('en', 'fire'), figures: figuresOf({ ...metric, language: 'en' }), nowMs: now };
const spanish = { say: sayIn<typeof round>('es', 'round'), fire: sayIn<typeof fire>('es', 'fire'), figures: figuresOf({ ...metric, language: 'es' }), nowMs: now };

describe('advice as a person says it', () => {
  it('says what to do, why, what one split would bring, and where the fresh one goes', () => {
    const { order, reason } = adviceSentence(advice, english);
    expect(order).toBe('Put two splits on.');
    expect(reason).toBe('Bed is low: 1.1 of 2.4\u00a0kg. One split would leave the band at 02:38; this one holds it. Fresh one on the door side.');
  });

  it('says the same in Spanish', () => {
    const { order, reason } = adviceSentence(advice, spanish);
    expect(order).toBe('Ponga dos leños.');
    expect(reason).toContain('La cama de brasas está baja: 1.1 de 2.4\u00a0kg.');
    expect(reason).toContain('Un leño saldría de la banda a las 02:38');
  });

  it('raking only says when to look again and speaks of no fresh split', () => {
    const rake: AdviceView = { ...advice, action: 'rake', otherwise: null, reason: { ...advice.reason, code: 'split-has-life' } };
    expect(adviceSentence(rake, english).reason).toBe('The split still has life in it: 30\u00a0% left. Look again at 02:50.');
  });

  it.each([
    { what: 'lies in the past', leavesBandAt: null, other: '2027-03-13T08:10:00Z' },
    { what: 'comes in the same minute as this one', leavesBandAt: '2027-03-13T08:38:20Z', other: '2027-03-13T08:38:00Z' },
    { what: 'would hold longer than this one', leavesBandAt: '2027-03-13T08:30:00Z', other: '2027-03-13T08:38:00Z' },
  ])('a comparison that $what is no reason and is not said', ({ leavesBandAt, other }) => {
    const one: AdviceView = { ...advice, leavesBandAt, otherwise: { action: 'one', leavesBandAt: other } };
    expect(adviceSentence(one, english).reason).not.toContain('leave the band');
  });

  it('a yard in US units reads pounds', () => {
    const us = figuresOf({ units: 'us', timeZone: 'America/Chicago', language: 'en' });
    // By hand: 1.1 kg / 0.45359237 = 2.43 lb, 2.4 kg = 5.29 lb.
    expect(adviceSentence(advice, { ...english, figures: us }).reason).toContain('2.4 of 5.3\u00a0lb');
  });

  it('air is named in the order of the hands: the screen before the wood, door and damper after it', () => {
    const air: AdviceView = {
      ...advice, air: { set: { door: 'two-fingers', damper: 'three-quarters', screen: true }, changes: ['door', 'damper', 'screen'], reason: 'air-wind' },
    };
    expect(adviceSentence(air, english).order).toBe('Wind screen up first. Put two splits on. Fire door to two fingers. Damper to three quarters.');
    expect(adviceSentence(air, english).reason).toContain('The wind works on this fire; look again at 02:50.');
    expect(adviceSentence(air, spanish).order).toBe('Primero ponga la mampara. Ponga dos leños. Puerta del fuego a dos dedos. Tiro a tres cuartos.');
  });

  it('only what changes is named, and a screen that goes is named last', () => {
    const away: AdviceView = { ...advice, action: 'rake', air: { set: { door: 'usual', damper: 'open', screen: false }, changes: ['door', 'screen'], reason: 'air-usual' } };
    expect(adviceSentence(away, english).order).toBe('Rake only. Fire door back to an inch. Take the wind screen away.');
  });
});

import type { AdviceChoiceView, AdviceView } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { figuresOf } from '../../units/figures.js';
import type { fire } from '../../words/en/fire.js';
import type { round } from '../../words/en/round.js';
import '../../words/fire.js';
import '../../words/round.js';
import { sayIn } from '../../words/words.js';
import { choicesSaid } from './choices.js';

const nowMs = Date.parse('2027-03-13T08:12:00Z');
const saying = (language: 'en' | 'es') => ({
  say: sayIn<typeof round>(language, 'round'), fire: sayIn<typeof fire>(language, 'fire'), nowMs,
  figures: figuresOf({ units: 'metric', timeZone: 'America/Chicago', language }),
});
const choice = (more: Partial<AdviceChoiceView>): AdviceChoiceView => ({
  action: 'one', air: null, lookAgainAt: '2027-03-13T08:42:00Z', leavesBandAt: null, outOfBandKMin: 0, inBandMin: null, woodKg: null, bedLostRiskFrac: 0, ...more,
});
const advice = (more: Partial<AdviceView>) => ({ action: 'two', alternatives: [], expects: null, ...more }) as AdviceView;

describe('what else, and what it would do', () => {
  it('each choice says what it brings; a risk for the bed only where there is one', () => {
    const said = choicesSaid(
      advice({
        expects: choice({ action: 'two', inBandMin: 71.6, woodKg: 2.44 }),
        alternatives: [choice({ leavesBandAt: '2027-03-13T08:38:00Z' }), choice({ action: 'rake', leavesBandAt: '2027-03-13T08:12:00Z', bedLostRiskFrac: 0.05 })],
      }),
      saying('en'),
    );
    expect(said.map(({ isAdvice, what, brings }) => [isAdvice, what, brings])).toEqual([
      [true, 'Put two splits on.', 'holds the band · 72 min in band · 2.4\u00a0kg of dry wood · next look 02:42'],
      [false, 'Put one split on.', 'leaves the band at 02:38 · next look 02:42'],
      [false, 'Rake only.', 'is out of the band already · bed lost in 5\u00a0% · next look 02:42'],
    ]);
  });

  it('a choice with the air names it, in Spanish too', () => {
    const alternatives = [choice({ action: 'rake', air: { set: { door: 'one-finger', damper: 'open', screen: false }, changes: ['door'], reason: 'air-cooler' } })];
    expect(choicesSaid(advice({ alternatives }), saying('es'))[0]!.what).toBe('Solo empareje las brasas. Puerta del fuego a un dedo.');
  });

  it('where the pencil spoke there is nothing to compare', () => {
    expect(choicesSaid(advice({ expects: choice({}) }), saying('en'))).toEqual([]);
  });
});

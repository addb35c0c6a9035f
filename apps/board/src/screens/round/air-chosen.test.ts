import { airSet, type AirSetView } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import type { fire } from '../../words/en/fire.js';
import '../../words/fire.js';
import { sayIn } from '../../words/words.js';
import { airChosen, changedSaid, USUAL_AIR } from './air-chosen.js';

const advised: AirSetView = { door: 'two-fingers', damper: 'open', screen: false };

describe('how the air was left', () => {
  it('until somebody says otherwise it is as it was found: nothing is sent that nobody did', () => {
    expect(airSet.safeParse(USUAL_AIR).success).toBe(true);
    expect(airChosen(undefined, USUAL_AIR, advised)).toBe('before');
    expect(airChosen({ ...USUAL_AIR }, USUAL_AIR, advised)).toBe('before');
    expect(airChosen({ ...advised }, USUAL_AIR, advised)).toBe('advised');
    expect(airChosen({ ...advised, damper: 'half' }, USUAL_AIR, advised)).toBeUndefined();
  });

  it('of the advice only what changes is said', () => {
    expect(changedSaid(advised, ['door'], sayIn<typeof fire>('en', 'fire'))).toBe('two fingers');
    expect(changedSaid({ ...advised, screen: true }, ['door', 'damper', 'screen'], sayIn<typeof fire>('es', 'fire'))).toBe('dos dedos, abierto del todo, con mampara');
  });
});

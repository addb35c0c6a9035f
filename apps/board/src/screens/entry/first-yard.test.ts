import { firstRun } from '@stokehold/domain/contract';
import { describe, expect, it } from 'vitest';
import { afterHash } from './after-hash.js';
import { firstRunOf, wrongIn, type FirstYard } from './first-yard.js';

const yard: FirstYard = {
  yardName: 'Hollow Creek', timeZone: 'America/Chicago', units: 'us', yardLanguage: 'es',
  name: 'Ines', language: 'en', pin: '270418', pinAgain: '270418', deviceName: 'desk',
};

describe('the first sheet', () => {
  it('filled in, it is what the contract takes', () => {
    expect(wrongIn(yard)).toEqual({});
    expect(firstRun.safeParse(firstRunOf(yard, 'a-token-of-at-least-twenty')).success).toBe(true);
  });

  it.each([
    [{ yardName: '  ' }, { yardName: 'needed' }],
    [{ timeZone: 'Middle of Nowhere' }, { timeZone: 'unknownZone' }],
    [{ pin: '123456', pinAgain: '123456' }, { pin: 'pinWeak' }],
    [{ pin: '444444', pinAgain: '444444' }, { pin: 'pinWeak' }],
    [{ pinAgain: '270419' }, { pinAgain: 'pinDiffers' }],
  ] as const)('%o is met with %o', (change, wrong) => {
    expect(wrongIn({ ...yard, ...change })).toEqual(wrong);
  });

  it('a code or token is read from behind the #, whatever stands there', () => {
    expect(afterHash('#K7M2-P9QX')).toBe('K7M2-P9QX');
    expect(afterHash('')).toBe('');
    expect(afterHash('#%E0%A4%A')).toBe('');
  });
});

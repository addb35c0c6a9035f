import { describe, expect, it } from 'vitest';
import { readArguments } from './arguments.js';

describe('what is typed when the house is opened', () => {
  it.each([
    { given: [], read: {} },
    { given: ['--practice'], read: { practice: {} } },
    { given: ['--practice', '--at', '01:00', '--seed', '7'], read: { practice: { at: '01:00', seed: 7 } } },
    { given: ['--seed=0', '--practice'], read: { practice: { seed: 0 } } },
  ])('$given', ({ given, read }) => expect(readArguments(given)).toEqual(read));

  it.each([
    { given: ['--practise'], says: "Unknown option '--practise'" },
    { given: ['now'], says: "Unexpected argument 'now'" },
    { given: ['--practice', '--at'], says: "Option '--at <value>' argument missing" },
    { given: ['--practice', '--at', '1am'], says: "--at takes a time of the night such as 01:00, and not '1am'" },
    { given: ['--practice', '--at', '24:00'], says: "and not '24:00'" },
    { given: ['--practice', '--seed', '1.5'], says: "--seed takes a whole number of up to nine digits, and not '1.5'" },
    { given: ['--practice', '--seed='], says: "--seed takes a whole number of up to nine digits, and not ''" },
    { given: ['--at', '01:00'], says: 'give --practice too' },
    { given: ['--seed', '7'], says: 'give --practice too' },
  ])('$given is refused in words that say what to type', ({ given, says }) => {
    expect(() => readArguments(given)).toThrow(says);
    expect(() => readArguments(given)).toThrow('What can be given: --practice, and with it --at 01:00 and --seed 7.');
  });
});

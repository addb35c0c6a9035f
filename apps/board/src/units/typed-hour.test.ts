import { describe, expect, it } from 'vitest';
import { typedHour } from './typed-hour.js';

describe('a typed time of day', () => {
  it.each([
    ['19:30', '19:30'], ['7:05', '07:05'], ['1930', '19:30'], ['730', '07:30'], ['19.30', '19:30'], ['19h30', '19:30'], [' 7 pm ', '19:00'],
    ['7:30 p. m.', '19:30'], ['12 am', '00:00'], ['12:15 pm', '12:15'], ['0', '00:00'], ['23', '23:00'], ['730a', '07:30'],
  ])('%s is %s', (text, hour) => expect(typedHour(text)).toBe(hour));
  it.each(['', '24:00', '19:60', '13 pm', '0 am', 'noon', '7:5', '-1', '12345'])('%s is none', (text) => expect(typedHour(text)).toBeUndefined());
});

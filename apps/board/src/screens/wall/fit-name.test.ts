import { expect, it } from 'vitest';
import { fitNamePx } from './fit-name.js';

const room = { roomPx: 400, wantedPx: 112, leastPx: 79 };

it.each([
  // By hand: 400 px / (0.485 x 8 letters) = 103 px.
  { name: 'Larch', px: 112 },
  { name: 'Tamarack', px: 103 },
  { name: 'The long one by the shed', px: 79 },
])('$name stands at $px px', ({ name, px }) => {
  expect(fitNamePx({ name, ...room })).toBe(px);
});

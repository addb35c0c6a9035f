import { expect, it } from 'vitest';
import { bodiesAt, CELLS, coreC, meatTables, shapeMember, stepEnds } from '../../libs/domain/food/bodies.js';
import { courseOf, evenPiece, fallsTo, peakOf, type Piece } from '../../libs/domain/food/after-pit.js';
import { vapourPressurePa, vapourTransfer } from '../../libs/domain/food/humid-air.js';
import { settleSurface, STEFAN_BOLTZMANN, stepMember } from '../../libs/domain/food/step.js';

const toC = (tempF: number) => (tempF - 32) / 1.8;
const toF = (tempC: number) => tempC * 1.8 + 32;
const composition = { waterFrac: 0.62, proteinFrac: 0.18, fatFrac: 0.19, ashFrac: 0.01 };
const near = (value: number | undefined, expected: number, tolerance: number) => expect(Math.abs((value ?? NaN) - expected), `${value} beside ${expected}`).toBeLessThanOrEqual(tolerance);

/** A brisket of 12 cm pulled at 203 °F from a 250 °F pit, with the profile that the pit left. */
function pulled(): Piece {
  const meat = meatTables(composition);
  const body = bodiesAt([toC(40)], meat);
  const surface = { airC: toC(250), draughtWPerM2K: 8, radiantWPerM2K4: 0.9 * STEFAN_BOLTZMANN, fireWPerM2: 0, vapourKgPerSM2Pa: 0.17 * vapourTransfer(8), vapourPa: vapourPressurePa(0.03), storeKgPerM2: 0.5, paceFactor: 1 };
  shapeMember(body, 0, 0.06, 0.6);
  settleSurface(body, meat, 0, surface);
  const ends = stepEnds(0.06, 86_400);
  for (let step = 1; coreC(body, 0) < toC(203); step++) stepMember(body, meat, 0, ends[step]! - ends[step - 1]!, surface);
  return { composition, halfM: 0.06, exponent: 0.6, tempC: [...body.tempC] };
}

// The same equations on a fine grid, apart from this code; temperatures in °F as the record gives them, within 2 °F and 0.25 h.
it('bare on the bench at 21 °C it peaks at 207.7 °F after half an hour and is at 180 °F after 2.1 h, at 165 °F after 2.9 h', () => {
  const course = courseOf(pulled(), [{ where: 'bench', airC: 21, forS: 5 * 3600 }]);
  near(toF(peakOf(course).coreC), 207.7, 2);
  near(peakOf(course).atS / 3600, 0.5, 0.25);
  near(fallsTo(course, course.coreC, toC(180))! / 3600, 2.1, 0.25);
  near(fallsTo(course, course.coreC, toC(165))! / 3600, 2.9, 0.25);
});
it('in an insulated box it peaks at 210.6 °F after 1.1 h and is still at 184 °F after 8 h', () => {
  const course = courseOf(pulled(), [{ where: 'insulated-box', airC: 21, forS: 8 * 3600 }]);
  near(toF(peakOf(course).coreC), 210.6, 2);
  near(peakOf(course).atS / 3600, 1.1, 0.4);
  near(toF(course.coreC.at(-1)!), 184, 3);
});
it('venting on the bench for 15 minutes before the box removes most of the overshoot', () => {
  const boxed = peakOf(courseOf(pulled(), [{ where: 'insulated-box', airC: 21, forS: 3 * 3600 }])).coreC;
  const vented = peakOf(courseOf(pulled(), [{ where: 'bench', airC: 21, forS: 900 }, { where: 'insulated-box', airC: 21, forS: 3 * 3600 }])).coreC;
  expect(boxed - vented).toBeGreaterThan(0.8);
});
it('a whole brisket of 12 cm in moving air of 3 °C takes about 3 h from 130 to 80 °F', () => {
  const course = courseOf(evenPiece({ composition, halfM: 0.06, exponent: 0.6, tempC: toC(140) }), [{ where: 'moving-chiller', airC: 3, forS: 12 * 3600 }]);
  near((fallsTo(course, course.coreC, toC(80))! - fallsTo(course, course.coreC, toC(130))!) / 3600, 3, 0.35);
});
it('a thin piece in a box whose wall decides cools as one lump: T = Ta + (T0 - Ta) exp(-t/tau), tau = rho cp L / h, Bi 0.05', () => {
  const halfM = 0.02;
  const course = courseOf(evenPiece({ composition, halfM, exponent: 0, tempC: 80 }), [{ where: 'insulated-box', airC: 20, forS: 20 * 3600 }]);
  // rho cp of this meat near 50 °C by Choi and Okos, 3.34 kJ/kgK x 1019 kg/m3.
  const tau = (1019 * 3340 * halfM) / 1.2;
  for (const i of [10, 100, 300]) near(course.coreC[Math.min(i, course.coreC.length - 1)], 20 + 60 * Math.exp(-course.atS[Math.min(i, course.atS.length - 1)]! / tau), 1);
});
it('the core rises before it falls, and the coldest part is never warmer than the warmest', () => {
  const piece = pulled();
  const course = courseOf(piece, [{ where: 'bench', airC: 21, forS: 3600 }]);
  expect(piece.tempC).toHaveLength(CELLS);
  expect(peakOf(course).coreC).toBeGreaterThan(course.coreC[0]!);
  course.atS.forEach((_, i) => expect(course.coldestC[i]!).toBeLessThanOrEqual(course.warmestC[i]! + 1e-9));
});

import type { HoldRow } from './limit.js';

const MINUTE_S = 60;

/** °F, and the time at it for 6.5, 7 and 5 log of Salmonella, s. */
type MeatRow = readonly [tempF: number, log65S: number, log7S: number, log5S: number];
const m = (minutes: number) => minutes * MINUTE_S;

/** Meat, tables 2 and 6 (pages 35 and 59): the rows that were read. [FSIS-A21]. A row between two of these is not made up: the one below holds. */
const MEAT: readonly MeatRow[] = [
  [130, m(112), m(121), m(86)], [132, m(71), m(77), m(55)], [133, m(56), m(62), m(44)], [135, m(36), m(37), m(28)], [136, m(28), m(32), m(22)], [138, m(18), m(19), m(14)], [140, m(12), m(12), m(9)],
  [141, m(9), m(10), m(7)], [143, m(6), m(6), m(5)], [144, m(5), m(5), m(4)], [145, m(4), m(4), m(3)], [147, 134, 144, 103], [149, 85, 91, 65], [150, 67, 72, 52], [152, 43, 46, 33], [154, 27, 29, 21],
  [155, 22, 23, 17], [157, 14, 15, 11], [158, 0, 0, 0], [159, 0, 0, 0], [160, 0, 0, 0],
];
export type MeatLog = 6.5 | 7 | 5;
/** Rows of one column, cold to hot. [FSIS-A21] tables 2 and 6. The 5-log column needs support of its own but for patties. */
export const meatRows = (log: MeatLog): readonly HoldRow[] => MEAT.map(([tempF, log65S, log7S, log5S]) => ({ tempF, holdS: log === 6.5 ? log65S : log === 7 ? log7S : log5S }));

/** °F, then minutes for 7 log at 1, 5 and 12 % fat: chicken, turkey. Below a minute the source prints seconds; here in s. */
type PoultryRow = readonly [tempF: number, chicken1: number, chicken5: number, chicken12: number, turkey1: number, turkey5: number, turkey12: number];

/** Poultry, tables 3 and 4 (pages 37 and 38): the rows that were read, in s. [FSIS-A21]. Not monotone in fat: copied, never fitted. */
const POULTRY: readonly PoultryRow[] = [
  [136, m(63.3), m(68.4), m(81.4), m(64), m(65.3), m(70.8)], [137, m(50.1), m(54.3), m(65.5), m(51.9), m(53.2), m(58.5)], [139, m(31.6), m(34.4), m(43), m(34.4), m(35.4), m(40.4)],
  [140, m(25.2), m(27.5), m(35), m(28.1), m(29), m(33.7)], [142, m(16.1), m(17.6), m(23.5), m(18.9), m(19.5), m(23.7)], [143, m(13), m(14.2), m(19.3), m(15.5), m(16.1), m(19.8)],
  [145, m(8.4), m(9.2), m(13), m(10.5), m(10.8), m(13.8)], [146, m(6.8), m(7.4), m(10.6), m(8.7), m(8.9), m(11.5)], [148, m(4.4), m(4.7), m(6.8), m(5.8), m(5.9), m(7.7)],
  [150, m(2.7), m(2.8), m(4.2), m(3.8), m(3.7), m(4.9)], [151, m(2.1), m(2.1), m(3.1), m(3), m(2.9), m(3.8)], [153, m(1.2), m(1.3), m(1.6), m(1.8), m(1.9), m(2.1)],
  [154, 55.9, m(1), m(1.1), m(1.5), m(1.5), m(1.6)], [155, 44.2, 47.7, 54.4, m(1.2), m(1.2), m(1.3)], [157, 27.7, 29.8, 34, 47.9, 48.8, 50.4], [158, 21.9, 23.6, 26.9, 38.8, 39.6, 40.9],
  [160, 13.7, 14.8, 16.9, 25.6, 26.1, 26.9], [161, 10.8, 11.7, 13.3, 20.8, 21.2, 21.9], [163, 0, 0, 0, 13.7, 13.9, 14.4], [164, 0, 0, 0, 11.1, 11.3, 11.7], [165, 0, 0, 0, 0, 0, 0],
];
export type Bird = 'chicken' | 'turkey' | 'other';
const COLUMN = { chicken: { 1: 1, 5: 2, 12: 3 }, turkey: { 1: 4, 5: 5, 12: 6 } } as const;

/** 7-log rows of a bird; fat unknown or above 5 % reads the 12 % column (p. 39), another bird the longer of the two tables (p. 36). [FSIS-A21] */
export function poultryRows(bird: Bird, fatPercent: number | undefined): readonly HoldRow[] {
  const fat = fatPercent === undefined || fatPercent > 5 ? 12 : fatPercent > 1 ? 5 : 1;
  return POULTRY.map((row) => ({
    tempF: row[0], holdS: bird === 'other' ? Math.max(row[COLUMN.chicken[fat]], row[COLUMN.turkey[fat]]) : row[COLUMN[bird][fat]],
  }));
}

/** Where the tables are found, for a finding. [FSIS-A21] */
export const FSIS_A_2021 = { code: 'fsis-appendix-a', edition: '2021', meatSection: 'tables 2 and 6, p. 35 and 59', poultrySection: 'tables 3 and 4, p. 37 and 38', comeUpSection: 'p. 24' } as const;

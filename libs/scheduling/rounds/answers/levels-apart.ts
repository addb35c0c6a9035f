import type { Levels } from '../plan.js';

const NAMES = ['unsafeS', 'unsafeChecks', 'unplaced', 'pastLatestS', 'lateWeightedS', 'tasksLateS', 'uneven', 'unevenUnpleasant', 'promises', 'walkS'] as const satisfies readonly (keyof Levels)[];

/** What one level costs more (positive) or less (negative). */
export interface LevelCost {
  readonly level: keyof Levels;
  readonly by: number;
}

/** Level by level, what the second plan costs more than the first; levels that stay are left out. Held to rounds/answers/why-person.test.ts */
export const levelsApart = (one: Levels, other: Levels): readonly LevelCost[] =>
  NAMES.map((level) => ({ level, by: other[level] - one[level] })).filter(({ by }) => by !== 0);

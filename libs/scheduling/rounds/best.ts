import { clashS } from './cost.js';
import { compareRanks, levelsOf, ranked } from './levels.js';
import { copyRoster, restoreRoster, type Roster } from './roster.js';

/** Seconds and number of unsafe checks, work without a place, seconds past latest. */
const LEVELS_OF_WHOLE = 4;

/** What the guide puts so far above the best is not better by the levels either, in eighths of a weighted second. */
const FAR_ABOVE = 8000;

/** The best roster so far, by the levels themselves and not by the guide. */
export class Best {
  readonly roster: Roster;
  private rank: readonly number[];
  private price: number;
  /** How often a better one was found. */
  found = 0;

  constructor(first: Roster) {
    this.roster = copyRoster(first);
    this.rank = this.rankOf(first);
    this.price = first.sums[0]!;
  }

  /** Keeps a roster if it is better and no checks of a pit overlap in it. */
  offer(roster: Roster): void {
    if (roster.sums[0]! > this.price + FAR_ABOVE) return;
    const rank = this.rankOf(roster);
    if (compareRanks(rank, this.rank) >= 0 || clashS(roster) > 0) return;
    restoreRoster(this.roster, roster);
    this.rank = rank;
    this.price = roster.sums[0]!;
    this.found += 1;
  }

  /** Every fire is in time and all work has its place: the first four levels are 0. */
  isWhole(): boolean {
    return this.rank.slice(0, LEVELS_OF_WHOLE).every((level) => level === 0);
  }

  /** A fire is looked at past its latest safe that somebody could be at in time, as far as the first looks tell. */
  get fallsShort(): boolean {
    return this.rank[0]! > this.roster.night.opening.unsafeS;
  }

  /** Whole, no fire later than the first looks make it, no promise changed: only evenness and walks could get better. */
  get isEnough(): boolean {
    const [late, tasksLate] = this.rank.slice(LEVELS_OF_WHOLE);
    return this.isWhole() && late === 2 * this.roster.night.opening.lateWeightedS && tasksLate === 0;
  }

  private rankOf(roster: Roster): readonly number[] {
    return ranked(levelsOf(roster), roster.night);
  }
}

import { recount } from './cost.js';
import type { NightPit } from './night.js';
import { copyRoster, indexOn, placedBeside, type Roster } from './roster.js';

/** A roster whose checks are numbered without a hole, and the checks that were missed, each with the moment it was due. */
export interface Closed {
  readonly roster: Roster;
  readonly missedS: ReadonlyMap<number, number>;
}

/**
 * Checks that were left out on the way leave no hole in the numbers: the nth check of the plan is the nth that somebody
 * makes. Left out are then the last of each chain; where a fire is late for want of them, they are the missed ones. A pit
 * with a pinned check keeps its numbers, because the pin means one of them.
 */
export function closeHoles(open: Roster): Closed {
  const roster = copyRoster(open);
  const missedS = new Map<number, number>();
  for (const pit of roster.night.pits) {
    const due = missedDueS(roster, pit);
    const isPinned = pit.jobs.some((j) => roster.night.jobs[j]!.pinned);
    if (!isPinned) close(roster, pit);
    const out = pit.jobs.filter((j) => roster.placed[j] === 0);
    if (isPinned) for (const [j, atS] of due) missedS.set(j, atS);
    else [...due.values()].forEach((atS, i) => missedS.set(out[i]!, atS));
  }
  recount(roster);
  return { roster, missedS };
}

/**
 * The checks left out although the fire falls due before the next one, with that due time. What falls due so shortly before the end
 * that it could not be ended by then is the next crew's, unless latest safe passes before.
 */
function missedDueS(roster: Roster, pit: NightPit): ReadonlyMap<number, number> {
  const due = new Map<number, number>();
  for (const j of pit.jobs) {
    if (roster.placed[j]! > 0) continue;
    const before = placedBeside(roster, j, -1);
    const after = placedBeside(roster, j, 1);
    const { checkS, gap } = pit.source;
    const dueS = before < 0 ? pit.firstDueS : roster.startS[before]! + gap.dueS;
    const latestS = before < 0 ? pit.firstLatestS : roster.startS[before]! + gap.latestSafeS;
    const isMissed = after < 0 ? dueS + checkS <= pit.keepS || latestS < pit.keepS : dueS < roster.startS[after]!;
    if (isMissed || roster.night.jobs[j]!.pinned) due.set(j, dueS);
  }
  return due;
}

/** Gives each placed check of a pit the first number that is free. */
function close(roster: Roster, { jobs }: NightPit): void {
  jobs.filter((j) => roster.placed[j]! > 0).forEach((from, i) => {
    const to = jobs[i]!;
    if (to === from) return;
    for (let person = 0; person < roster.night.people.length; person++) {
      const index = indexOn(roster, person, from);
      if (index >= 0) roster.list[person * roster.night.columns.jobs + index] = to;
    }
    roster.startS[to] = roster.startS[from]!;
    roster.placed[to] = roster.placed[from]!;
    roster.placed[from] = 0;
  });
}

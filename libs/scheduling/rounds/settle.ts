import { startCost, linksOf } from './cost.js';
import { copyRoster, endS, placeAfter, walkS, type Roster } from './roster.js';
import { isAppointment } from './insertion.js';

/**
 * Lets checks that would be made early wait for their even place where the list has room, so that they do not creep
 * forward when people are idle. Never makes any level worse.
 */
export function settle(roster: Roster): Roster {
  const settled = copyRoster(roster);
  const { night, startS } = settled;
  for (const [person, list] of settled.lists.entries()) {
    for (let i = list.length - 1; i >= 0; i--) {
      const j = list[i]!;
      const job = night.jobs[j]!;
      if (job.kind !== 'check' || isAppointment(job) || startS[j]! >= job.targetS) continue;
      const next = list[i + 1];
      const roomS = next === undefined ? night.people[person]!.endS - endS(settled, j) : startS[next]! - walkS(night, placeAfter(settled, person, i + 1), night.jobs[next]!.place) - endS(settled, j);
      const before = startS[j]!;
      const cost = linksOf(settled, j, job) + startCost(settled, j, job);
      startS[j] = before + Math.max(0, Math.min(roomS, job.targetS - before));
      if (linksOf(settled, j, job) + startCost(settled, j, job) > cost) startS[j] = before;
    }
  }
  return settled;
}

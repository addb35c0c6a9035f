import { linkPrice, startPrice, tailPrice } from './cost.js';
import { refreshLinks } from './list-change.js';
import { copyRoster, jobAt, placeAfter, type Roster, walkS } from './roster.js';

/**
 * Lets checks that would be made early wait for their even place where the list has room, so that they do not creep
 * forward when people are idle. Never makes any level worse.
 */
export function settle(roster: Roster): Roster {
  const settled = copyRoster(roster);
  const { night: { columns }, startS } = settled;
  for (let person = 0; person < columns.people; person++) {
    for (let i = settled.count[person]! - 1; i >= 0; i--) {
      const j = jobAt(settled, person, i);
      if (columns.isCheck[j] === 0 || columns.isAppointment[j] === 1 || startS[j]! >= columns.targetS[j]!) continue;
      const before = startS[j]!;
      const price = ownPrice(settled, j);
      startS[j] = before + Math.max(0, Math.min(roomAfter(settled, person, i), columns.targetS[j]! - before));
      if (ownPrice(settled, j) > price) startS[j] = before;
      else refreshLinks(settled, j);
    }
  }
  return settled;
}

/** Seconds by which a job can wait without moving what follows. */
function roomAfter(roster: Roster, person: number, index: number): number {
  const { night } = roster;
  const j = jobAt(roster, person, index);
  const doneS = roster.startS[j]! + night.columns.lengthS[j]!;
  if (index + 1 === roster.count[person]) return night.columns.homeS[person]! - doneS;
  const next = jobAt(roster, person, index + 1);
  return roster.startS[next]! - walkS(night, placeAfter(roster, person, index + 1), night.columns.place[next]!) - doneS;
}

function ownPrice(roster: Roster, j: number): number {
  const pit = roster.night.columns.pit[j]!;
  const next = roster.after[j]!;
  const onward = next < 0 ? tailPrice(roster, pit, j) : linkPrice(roster, pit, j, roster.startS[next]!);
  return linkPrice(roster, pit, roster.before[j]!, roster.startS[j]!) + onward + startPrice(roster, j, roster.startS[j]!);
}

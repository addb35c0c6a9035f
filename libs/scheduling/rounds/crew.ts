import type { Night } from './night.js';
import { listOf, walkS, type Roster } from './roster.js';

/** A person while the dispatch walks through the night. */
export interface CrewMember {
  readonly index: number;
  freeS: number;
  place: number;
  /** Has just ended a job at `freeS`, so may go on with the round although the next check is not quite due. */
  onRound: boolean;
  workS: number;
  /** Fixed blocks still ahead, in order of start. */
  readonly blocks: number[];
  /** Breaks still to give, in order of their latest start. */
  readonly breaks: number[];
  readonly list: number[];
}

/** Everybody as they stand at the start, their facts and pinned starts still ahead of them. */
export function crewOf(night: Night, facts: Roster): CrewMember[] {
  return night.people.map((person, index) => ({
    index,
    freeS: person.readyS,
    place: person.place,
    onRound: false,
    workS: person.workedS,
    blocks: [...listOf(facts, index)],
    breaks: night.jobs.flatMap((job, j) => (job.kind === 'break' && job.able[0] === index && job.fixedS === undefined ? [j] : [])),
    list: [],
  }));
}

/** Walks into every fixed block that has begun by `nowS`. */
export function enterBlocks(night: Night, member: CrewMember, nowS: number): void {
  for (;;) {
    const j = member.blocks[0];
    if (j === undefined) return;
    const job = night.jobs[j]!;
    if (job.releaseS > nowS && job.releaseS > member.freeS) return;
    member.blocks.shift();
    member.list.push(j);
    member.freeS = Math.max(member.freeS, job.releaseS + job.lengthS);
    if (job.place >= 0) member.place = job.place;
    member.onRound = job.kind !== 'absence' && job.kind !== 'break';
  }
}


/**
 * When this person could start a job if they left at `nowS` or when free, or undefined if it would run into their shift's
 * end, a fixed block, or a break that could then no longer begin in its window.
 */
export function startFor(night: Night, member: CrewMember, j: number, releaseS: number, nowS: number): number | undefined {
  const job = night.jobs[j]!;
  const startS = Math.max(Math.max(nowS, member.freeS) + walkS(night, member.place, job.place), releaseS);
  const doneS = startS + job.lengthS;
  if (doneS > night.people[member.index]!.endS || startS > job.hardLatestS) return undefined;
  const block = member.blocks[0];
  if (block !== undefined) {
    const ahead = night.jobs[block]!;
    const from = job.place >= 0 ? job.place : member.place;
    if (doneS + walkS(night, from, ahead.place) > ahead.releaseS) return undefined;
  }
  return fitsBreaks(night, member, j, doneS, job.place >= 0 ? job.place : member.place) ? startS : undefined;
}

/** Breaks between now and the next fixed block must find room on either side of it. */
function fitsBreaks(night: Night, member: CrewMember, j: number, doneS: number, placeThen: number): boolean {
  let freeS = doneS;
  let place = placeThen;
  let next = 0;
  for (const b of member.breaks) {
    if (b === j) continue;
    const rest = night.jobs[b]!;
    freeS = Math.max(freeS, rest.releaseS);
    for (;;) {
      const block = member.blocks[next];
      const ahead = block === undefined ? undefined : night.jobs[block]!;
      if (!ahead || freeS + rest.lengthS + walkS(night, place, ahead.place) <= ahead.releaseS) break;
      freeS = Math.max(freeS, ahead.releaseS + ahead.lengthS);
      if (ahead.place >= 0) place = ahead.place;
      next += 1;
    }
    if (freeS > rest.hardLatestS) return false;
    freeS += rest.lengthS;
  }
  return true;
}

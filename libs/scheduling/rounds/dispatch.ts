import { crewOf, enterBlocks, startFor, type CrewMember } from './crew.js';
import type { Job, Night } from './night.js';
import { append, bareRoster, emptyRoster, endS, walkS, type Roster } from './roster.js';
import { recount } from './cost.js';

/** Two people who meet wait at most this long for each other, unless the task is due. Source: common practice, no source. */
const MEET_S = 900;
/** What a second of walking weighs against a second of uneven work when somebody is chosen. Source: tests/bench/rounds.mjs. */
const WALK_TO_WORK = 20;

/** Whoever was promised a job is preferred to somebody who has worked so much less, s. Source: common practice, no source. */
const PROMISED = 600 * WALK_TO_WORK;

/** A task presses this long before its latest start; until then checks that are due go first. Source: tests/bench/rounds.mjs. */
const TASK_AHEAD_S = 300;

/** A break waits for the fires until this long before its last moment; then it is taken. Source: common practice, no source. */
const BREAK_AHEAD_S = 600;

/** A job that could be begun now, and how urgent it is. */
interface Candidate {
  readonly job: number;
  /** Not before this. */
  readonly releaseS: number;
  /** Somebody who waits sets out from here on; somebody on a round may from `releaseS`. */
  readonly readyS: number;
  readonly urgentS: number;
  /** Checks: their latest safe. */
  readonly latestSafeS: number;
}

interface Floor {
  readonly night: Night;
  readonly crew: readonly CrewMember[];
  readonly roster: Roster;
  /** Next check of each pit. */
  readonly nextLink: number[];
  readonly open: Set<number>;
  /** What is not yet given out, most urgent first; made anew after something was given. */
  waiting: readonly Candidate[] | undefined;
}

/**
 * The night by hand: at each moment the most urgent work goes to whoever is free, near and has done least; breaks come at
 * staggered targets. Instant, and the start of every search. Most urgent deadline first keeps every fire within twice its
 * even share where any rule can (bamboo garden trimming, [KAWAMURA-2024] section 1 and the papers named there).
 */
export function dispatchRoster(night: Night): Roster {
  const roster = emptyRoster(night);
  const floor: Floor = {
    night, roster, crew: crewOf(night, roster), nextLink: night.pits.map(() => 0),
    open: new Set(night.jobs.flatMap((job, j) => (job.kind !== 'check' && roster.placed[j] === 0 ? [j] : []))), waiting: undefined,
  };
  placePinned(floor);
  const horizonS = Math.max(0, ...night.people.map((person) => person.endS));
  let nowS = Math.min(0, ...floor.crew.map((member) => member.freeS));
  while (nowS <= horizonS) {
    for (const member of floor.crew) enterBlocks(night, member, nowS);
    while (assignOne(floor, nowS));
    const next = nextMoment(floor, nowS);
    if (next === undefined) break;
    nowS = next;
  }
  return rosterFrom(floor);
}

/** What everybody was given, in order of time, as a roster of its own. */
function rosterFrom({ night, crew, roster: { startS } }: Floor): Roster {
  const given = bareRoster(night);
  given.startS.set(startS);
  for (const member of crew) {
    enterBlocks(night, member, Infinity);
    const list = member.list.sort((a, b) => startS[a]! - startS[b]! || night.jobs[a]!.lengthS - night.jobs[b]!.lengthS || a - b);
    for (const j of list) append(given, j, member.index);
  }
  recount(given);
  return given;
}

/** Pinned starts become fixed blocks of the people named, or of the nearest who have the time. */
function placePinned(floor: Floor): void {
  const { night, roster, crew } = floor;
  const pinned = night.jobs.flatMap((job, j) => (job.fixedS !== undefined && !job.frozen ? [j] : [])).sort((a, b) => night.jobs[a]!.releaseS - night.jobs[b]!.releaseS || a - b);
  for (const j of pinned) {
    const job = night.jobs[j]!;
    const able = job.able.map((person) => crew[person]!).filter((member) => roomFor(night, member, job));
    const chosen = able.sort((a, b) => walkS(night, a.place, job.place) - walkS(night, b.place, job.place) || a.index - b.index).slice(0, job.people);
    floor.open.delete(j);
    if (chosen.length < job.people) continue;
    for (const member of chosen) {
      member.blocks.push(j);
      member.blocks.sort((a, b) => night.jobs[a]!.releaseS - night.jobs[b]!.releaseS);
    }
    roster.startS[j] = job.releaseS;
    roster.placed[j] = job.people;
  }
}

/** Whether a fixed start leaves a person time to come from the fixed work before it and to reach the one after. */
function roomFor(night: Night, member: CrewMember, job: Job): boolean {
  const person = night.people[member.index]!;
  let place = person.place;
  let freeS = person.readyS;
  let fits = job.releaseS + job.lengthS <= person.endS;
  for (const j of member.blocks) {
    const block = night.jobs[j]!;
    if (block.releaseS >= job.releaseS) {
      const from = job.place >= 0 ? job.place : place;
      fits &&= job.releaseS + job.lengthS + walkS(night, from, block.place) <= block.releaseS;
      break;
    }
    freeS = Math.max(freeS, block.releaseS + block.lengthS);
    if (block.place >= 0) place = block.place;
  }
  return fits && freeS + walkS(night, place, job.place) <= job.releaseS;
}

/** Everything not yet given out, most urgent first; of each pit only the next check. */
function candidates(floor: Floor): readonly Candidate[] {
  return (floor.waiting ??= waitingNow(floor));
}

function waitingNow(floor: Floor): readonly Candidate[] {
  const { night, open, roster } = floor;
  const found: Candidate[] = [];
  for (const [p, pit] of night.pits.entries()) {
    while (floor.nextLink[p]! < pit.jobs.length && roster.placed[pit.jobs[floor.nextLink[p]!]!]! > 0) floor.nextLink[p]! += 1;
    const link = floor.nextLink[p]!;
    const j = pit.jobs[link];
    if (j === undefined) continue;
    const before = link === 0 ? undefined : roster.startS[pit.jobs[link - 1]!]!;
    const job = night.jobs[j]!;
    const { gap } = pit.source;
    const dueS = before === undefined ? pit.firstDueS : before + gap.dueS;
    if (dueS >= pit.keepS) continue;
    const releaseS = before === undefined ? job.releaseS : Math.max(job.releaseS, before + gap.earliestS, endS(roster, pit.jobs[link - 1]!));
    const latestSafeS = before === undefined ? pit.firstLatestS : before + gap.latestSafeS;
    found.push({ job: j, releaseS, readyS: Math.max(releaseS, Math.min(job.targetS - Math.floor(gap.dueS / 10), dueS)), urgentS: dueS, latestSafeS });
  }
  for (const j of open) {
    const job = night.jobs[j]!;
    const late = job.kind === 'break' ? job.targetS : job.latestS - TASK_AHEAD_S;
    const releaseS = job.kind === 'break' ? Math.min(Math.max(job.releaseS, job.targetS), job.hardLatestS) : job.releaseS;
    found.push({ job: j, releaseS, readyS: releaseS, urgentS: late, latestSafeS: Infinity });
  }
  return found.sort((a, b) => a.urgentS - b.urgentS || a.job - b.job);
}

/** Gives out the most urgent work that somebody can begin now; false if there is none. */
function assignOne(floor: Floor, nowS: number): boolean {
  const { night, crew } = floor;
  const idle = crew.filter((member) => member.freeS <= nowS && nowS < night.people[member.index]!.endS);
  if (idle.length === 0) return false;
  const waiting = candidates(floor);
  for (const candidate of waiting) {
    const job = night.jobs[candidate.job]!;
    const aheadS = aheadFor(night, job);
    if (candidate.releaseS - aheadS > nowS) continue;
    if (job.kind !== 'check' && keepsFromFires(floor, job, waiting, nowS)) continue;
    if (job.people > 1) {
      if (assignTogether(floor, candidate, nowS)) return true;
      continue;
    }
    let best: { readonly member: CrewMember; readonly startS: number; readonly score: number } | undefined;
    for (const member of idle) {
      if (!job.able.includes(member.index)) continue;
      if (candidate.readyS - aheadS > nowS && !(member.onRound && member.freeS === nowS)) continue;
      const startS = startFor(night, member, candidate.job, candidate.releaseS, nowS);
      if (startS === undefined) continue;
      const promised = job.promise?.people.includes(member.index) ? PROMISED : 0;
      const score = (startS - nowS) * WALK_TO_WORK + member.workS - promised;
      if (!best || score < best.score) best = { member, startS, score };
    }
    if (best) {
      give(floor, [best.member], candidate.job, best.startS);
      return true;
    }
  }
  return false;
}

/**
 * Whether a task or break begun now would hold people whom the fires need before it ends: due checks as long as the task can wait,
 * checks up to latest safe once it presses. Counted by how many checks the others can make meanwhile, less the longest walk.
 */
function keepsFromFires({ night, crew }: Floor, job: Job, waiting: readonly Candidate[], nowS: number): boolean {
  if (job.kind === 'break' && nowS >= job.hardLatestS - BREAK_AHEAD_S) return false;
  const pressing = nowS >= job.latestS - TASK_AHEAD_S;
  const untilS = nowS + aheadFor(night, job) + job.lengthS;
  const needed = waiting.filter(({ urgentS, latestSafeS, job: j }) => night.jobs[j]!.kind === 'check' && (pressing ? latestSafeS : urgentS) < untilS);
  if (needed.length === 0) return false;
  const spellS = Math.max(...needed.map(({ job: j }) => night.jobs[j]!.lengthS + aheadFor(night, night.jobs[j]!)));
  const others = crew
    .map((member) => (night.people[member.index]!.endS > untilS ? Math.max(0, Math.ceil((untilS - Math.max(nowS, member.freeS)) / spellS)) : 0))
    .sort((a, b) => a - b);
  const spare = others.slice(0, Math.max(0, others.length - job.people)).reduce((sum, checks) => sum + checks, 0);
  return spare < needed.length;
}

/** How long before its time somebody must set out at the most. */
const aheadFor = (night: Night, job: Job) => (job.place < 0 ? 0 : night.farthestS[job.place]!);

/** Two people for one task: the two who can be there first, if they need not wait long for each other. */
function assignTogether(floor: Floor, { job: j, releaseS }: Candidate, nowS: number): boolean {
  const { night, crew } = floor;
  const job = night.jobs[j]!;
  const arrivals = crew
    .filter((member) => job.able.includes(member.index))
    .flatMap((member) => {
      const startS = startFor(night, member, j, releaseS, nowS);
      return startS === undefined ? [] : [{ member, startS }];
    })
    .sort((a, b) => a.startS - b.startS || a.member.workS - b.member.workS || a.member.index - b.member.index)
    .slice(0, job.people);
  if (arrivals.length < job.people) return false;
  const startS = arrivals.at(-1)!.startS;
  if (startS - nowS > MEET_S && startS <= job.targetS) return false;
  if (arrivals.some(({ member }) => startFor(night, member, j, startS, nowS) !== startS)) return false;
  give(floor, arrivals.map(({ member }) => member), j, startS);
  return true;
}

function give(floor: Floor, members: readonly CrewMember[], j: number, startS: number): void {
  const job = floor.night.jobs[j]!;
  for (const member of members) {
    member.list.push(j);
    member.freeS = startS + job.lengthS;
    if (job.place >= 0) member.place = job.place;
    member.onRound = job.kind !== 'break';
    if (job.kind === 'break') member.breaks.splice(member.breaks.indexOf(j), 1);
    else member.workS += job.lengthS;
  }
  floor.waiting = undefined;
  floor.roster.startS[j] = startS;
  floor.roster.placed[j] = members.length;
  floor.open.delete(j);
}

/** The next moment at which anything can change: somebody becomes free, or work becomes ready for somebody who waits. */
function nextMoment(floor: Floor, nowS: number): number | undefined {
  const { night, crew } = floor;
  let next = Infinity;
  const consider = (atS: number) => {
    if (atS > nowS && atS < next) next = atS;
  };
  for (const member of crew) {
    consider(member.freeS);
    const block = member.blocks[0];
    if (block !== undefined) consider(night.jobs[block]!.releaseS + night.jobs[block]!.lengthS);
    for (const rest of member.breaks) consider(night.jobs[rest]!.hardLatestS - BREAK_AHEAD_S);
    for (const rest of member.breaks) consider(night.jobs[rest]!.hardLatestS);
  }
  for (const j of floor.open) consider(night.jobs[j]!.latestS - TASK_AHEAD_S);
  for (const { job, readyS, releaseS } of candidates(floor)) {
    const aheadS = aheadFor(night, night.jobs[job]!);
    consider(readyS - aheadS);
    consider(readyS);
    consider(releaseS - aheadS);
  }
  return next === Infinity ? undefined : next;
}


import type { Job, Night } from './night.js';
import type { Hindrance, UnplacedReason } from './plan.js';
import { endS, indexOn, jobAt, listOf, walkS, type Roster } from './roster.js';

/** For each person the first rule that keeps them from beginning a job at a moment; people whom nothing hinders are left out. */
export function hindrancesAt(roster: Roster, j: number, atS: number): readonly Hindrance[] {
  const { night } = roster;
  return night.people.flatMap((_, person) => {
    if (indexOn(roster, person, j) >= 0) return [];
    const found = hindranceOf(roster, night.jobs[j]!, person, atS);
    return found ? [found] : [];
  });
}

function hindranceOf(roster: Roster, job: Job, person: number, atS: number): Hindrance | undefined {
  const { night, startS } = roster;
  const first = roster.count[person]! > 0 ? night.jobs[jobAt(roster, person, 0)]! : undefined;
  const { id: personId, readyS, endS: homeS, place: home } = night.people[person]!;
  if (!job.able.includes(person)) return { personId, code: job.pinned ? 'pinned-elsewhere' : 'skill' };
  if (atS < Math.min(readyS, first?.releaseS ?? readyS) || atS + job.lengthS > homeS) return { personId, code: 'not-on-shift' };
  let place = home;
  for (let i = 0; i < roster.count[person]!; i++) {
    const j = jobAt(roster, person, i);
    const other = night.jobs[j]!;
    const meet = startS[j]! < atS + job.lengthS && atS < startS[j]! + other.lengthS;
    if (meet && other.kind === 'absence') return { personId, code: 'absent' };
    if (meet && other.work) return { personId, code: other.kind === 'break' ? 'on-break' : 'busy', work: other.work };
    if (startS[j]! + other.lengthS <= atS) {
      if (other.place >= 0) place = other.place;
      if (startS[j]! + other.lengthS + walkS(night, place, job.place) > atS) return other.work ? { personId, code: 'too-far', work: other.work } : { personId, code: 'too-far' };
    }
  }
  return undefined;
}

/** Why a piece of work found no place, and the least that would admit it. */
export function unplacedReason(roster: Roster, j: number, atS: number): UnplacedReason {
  const { night } = roster;
  const job = night.jobs[j]!;
  const hindrances = hindrancesAt(roster, j, Math.max(0, atS));
  if (job.fixedS !== undefined) return { code: 'pin-in-the-way', hindrances, relax: { code: 'drop-pin' } };
  const onShift = night.people.filter((person) => person.endS > Math.max(person.readyS, job.releaseS));
  if (onShift.length === 0) return { code: 'nobody-on-shift', hindrances, relax: { code: 'one-person-more' } };
  const skill = skillOf(night, job);
  if (job.able.length < job.people) {
    return skill === undefined
      ? { code: 'no-two-together', hindrances, relax: { code: 'one-person-more' } }
      : { code: 'nobody-with-skill', hindrances, relax: { code: 'teach-skill', skill } };
  }
  if (job.kind === 'check') return { code: 'no-time-left', hindrances, relax: { code: 'one-person-more' } };
  return { code: job.people > 1 ? 'no-two-together' : 'no-time-left', hindrances, relax: laterLatest(roster, job) };
}

/** From when somebody able would be free for good: so much later the work could begin, if their shift lasts. */
function laterLatest(roster: Roster, job: Job): UnplacedReason['relax'] {
  const free = job.able
    .map((person) => {
      const last = listOf(roster, person).at(-1);
      return { atS: last === undefined ? roster.night.people[person]!.readyS : endS(roster, last), homeS: roster.night.people[person]!.endS };
    })
    .filter(({ atS, homeS }) => atS + job.lengthS <= homeS)
    .sort((a, b) => a.atS - b.atS)[job.people - 1];
  return free ? { code: 'later-latest', byS: Math.max(0, free.atS - job.latestS) } : { code: 'one-person-more' };
}

function skillOf({ problem }: Night, { work }: Job): string | undefined {
  if (work?.kind === 'check') return problem.pits.find((pit) => pit.id === work.pitId)?.skill;
  return work?.kind === 'task' ? problem.tasks.find((task) => task.id === work.taskId)?.skill : undefined;
}


import { fromIso, MINUTE_S } from '@stokehold/domain/quantity';
import type { PlanChange, PlanDecision, PlanView, TaskKind, Work, YardState } from '@stokehold/domain/contract';
import type { SaySharedWords } from '../../words/shared.js';
import type { SayNightWords } from '../../words/night.js';

/** What the sentences need: the words of a language, the clock of the yard, and the names of those who work and burn. */
export interface Telling {
  readonly say: SayNightWords;
  readonly shared: SaySharedWords;
  readonly time: (iso: string) => string;
  readonly names: Names;
}
export interface Names {
  readonly pit: (id: string | null) => string | undefined;
  readonly person: (id: string | null) => string | undefined;
  readonly task: (id: string) => { readonly kind: TaskKind; readonly pit: string | undefined } | undefined;
  readonly breakOf: (breakId: string) => string | undefined;
}

/** Names of pits, people, tasks and breaks, as far as the state knows them. */
export function namesIn(state: YardState): Names {
  const pits = new Map<string, string>(state.pits.map(({ pit }) => [pit.id, pit.name]));
  const people = new Map<string, string>(state.people.map(({ id, name }) => [id, name]));
  const tasks = new Map<string, YardState['tasks'][number]>(state.tasks.map((task) => [task.id, task]));
  const breaks = new Map(state.shift?.people.flatMap(({ name, breaks: list }) => list.map(({ id }) => [id, name] as const)) ?? []);
  const pit = (id: string | null) => (id === null ? undefined : pits.get(id));
  return {
    pit,
    person: (id) => (id === null ? undefined : people.get(id)),
    task: (id) => {
      const task = tasks.get(id);
      return task && { kind: task.kind, pit: pit(task.pitId) };
    },
    breakOf: (id) => breaks.get(id),
  };
}

/** 'check of Larch', 'turn at Larch', 'break of Odell', as a sentence or a name begins. */
export function workInWords(work: Work, { say, shared, names }: Pick<Telling, 'say' | 'shared' | 'names'>): string {
  if (work.kind === 'check') return say('work.check', { pit: names.pit(work.pitId) ?? say('aPit') });
  if (work.kind === 'break') return say('work.break', { person: names.breakOf(work.breakId) ?? say('somebody') });
  const task = names.task(work.taskId);
  if (!task) return say('work.task');
  return task.pit ? say('work.taskAt', { task: shared(`task.${task.kind}`), pit: task.pit }) : shared(`task.${task.kind}`);
}

/** Why the plan was made anew, as the end of a sentence. */
export function causeInWords({ because }: Pick<PlanView, 'because'>, { say, names }: Pick<Telling, 'say' | 'names'>): string {
  return say(`because.${because.cause}`, {
    pit: names.pit(because.pitId) ?? say('aPit'),
    person: names.person(because.personId) ?? say('somebody'),
  });
}

/** One change as a sentence, with what began it: "Check of Larch: Ana, now 02:16 instead of 02:10, because this ran over: check of Bess." */
export function changeInWords(change: PlanChange, telling: Telling): string {
  return causedInWords(withoutCause(change, telling), change, telling);
}

function causedInWords(change: string, { work, because }: PlanChange, telling: Telling): string {
  const { say, names } = telling;
  const about = because.work ? workInWords(because.work, telling) : '';
  switch (because.code) {
    case 'person-not-there':
      return say('why.person-not-there', { change, person: names.person(because.personId) ?? say('somebody') });
    case 'due-moved':
      return work.kind === 'check' ? say('why.fire-due', { change, pit: names.pit(work.pitId) ?? say('aPit') }) : say('why.due-moved', { change });
    case 'made-room':
      return about ? say('why.made-room', { change, work: about }) : say('why.fits-better', { change });
    case 'work-before-ran-over':
      return about ? say('why.work-before-ran-over', { change, work: about }) : say('why.not-reported', { change });
    default:
      return say(`why.${because.code}`, { change });
  }
}

function withoutCause(change: PlanChange, telling: Telling): string {
  const { say, time, names } = telling;
  const who = (side: PlanChange['from']) => side?.people.map((id) => names.person(id) ?? say('somebody')).join(say('and')) || say('nobody');
  const at = (side: PlanChange['from']) => (side ? time(side.startsAt) : '');
  return say(`change.${change.code}`, {
    work: capital(workInWords(change.work, telling)),
    from: at(change.from),
    to: at(change.to),
    fromWho: who(change.from),
    toWho: who(change.to),
  });
}

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What people decided before this plan was made and is still listed, the latest first. */
export const decisionsListed = ({ decisions }: Pick<PlanView, 'decisions'>, nowS: number): readonly PlanDecision[] => decisions.filter(({ listedUntil }) => fromIso(listedUntil) > nowS);

/** A start moved by no more than this is one of many small moves, not news. */
const SMALL_MOVE_S = 5 * MINUTE_S;
const movedS = ({ from, to }: PlanChange) => (from && to ? Math.abs(fromIso(to.startsAt) - fromIso(from.startsAt)) : Infinity);

/** The changes worth a sentence, in the order of the night; the small moves are only counted. */
export function newsOf(changes: readonly PlanChange[]): { readonly news: readonly PlanChange[]; readonly smallMoves: number } {
  const small = (change: PlanChange) => change.code === 'moved' && movedS(change) <= SMALL_MOVE_S;
  const startOf = ({ from, to }: PlanChange) => to?.startsAt ?? from?.startsAt ?? '';
  const news = changes.filter((change) => !small(change)).sort((a, b) => startOf(a).localeCompare(startOf(b)));
  return { news, smallMoves: changes.length - news.length };
}

/** How good the plan is known to be: how near to the least lateness that any plan could have. */
export function searchInWords({ search }: Pick<PlanView, 'search'>, say: SayNightWords): string {
  const gap = search.gapWeightedS < MINUTE_S ? say('search.best') : say('search.gap', { span: `${Math.round(search.gapWeightedS / MINUTE_S)} min` });
  return search.improved ? `${say('search.improved', { count: search.iterations })} ${gap}` : gap;
}

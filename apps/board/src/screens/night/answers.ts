import { fromIso, MINUTE_S } from '@stokehold/domain/quantity';
import type { HindranceView, LevelCost, Relaxation, Supposition, WhatIfView, WhyView, Work, YardState } from '@stokehold/domain/contract';
import type { Figures } from '../../units/figures.js';
import type { SayPlanWords } from '../../words/plan.js';
import { changeInWords, newsOf, workInWords, type Telling } from './plan-changes.js';

// What the house answers about its plan, as sentences.

export interface Answering extends Telling {
  readonly plan: SayPlanWords;
  readonly figures: Pick<Figures, 'span' | 'percent'>;
}

const rounded = (seconds: number, { figures }: Pick<Answering, 'figures'>) => figures.span(Math.max(MINUTE_S, Math.round(Math.abs(seconds) / MINUTE_S) * MINUTE_S));

/** One level's cost as a noun, without more or less; nothing for what is said elsewhere or too small to say. */
function costOf({ level, by }: LevelCost, answering: Answering): string | undefined {
  const { plan, figures } = answering;
  const share = Math.abs(by) / 1e6;
  switch (level) {
    case 'unsafeS':
      return plan('cost.unsafe', { span: rounded(by, answering) });
    case 'unplaced':
      return plan('cost.unplaced', { count: Math.abs(by) });
    case 'pastLatestS':
      return plan('cost.pastLatest', { span: rounded(by, answering) });
    case 'lateWeightedS':
      return Math.abs(by) < MINUTE_S / 2 ? undefined : plan('cost.late', { span: rounded(by, answering) });
    case 'tasksLateS':
      return Math.abs(by) < MINUTE_S / 2 ? undefined : plan('cost.tasksLate', { span: rounded(by, answering) });
    case 'uneven':
      return share < 0.01 ? undefined : plan('cost.uneven', { percent: figures.percent(share) });
    case 'unevenUnpleasant':
      return share < 0.01 ? undefined : plan('cost.unpleasant', { percent: figures.percent(share) });
    case 'walkS':
      return Math.abs(by) < MINUTE_S / 2 ? undefined : plan('cost.walk', { span: rounded(by, answering) });
    case 'promises':
    case 'unsafeChecks':
      return undefined;
  }
}

/** What something costs, level by level: "3 min of late checks more, changes what people were told". Empty where nothing worth saying. */
export function costsInWords(costs: readonly LevelCost[], answering: Answering): string {
  const { plan } = answering;
  return costs
    .flatMap((cost) => {
      if (cost.level === 'promises') return plan(cost.by > 0 ? 'cost.promises' : 'cost.promisesKept');
      const what = costOf(cost, answering);
      return what === undefined ? [] : plan(cost.by > 0 ? 'cost.more' : 'cost.less', { what });
    })
    .join(', ');
}

const nameOf = (id: string | null, { names, say }: Telling) => names.person(id) ?? say('somebody');
export const peopleInWords = (people: readonly string[], telling: Telling) => people.map((id) => nameOf(id, telling)).join(telling.say('and'));

/** "Odell is busy then: Check of Larch" */
export function hindranceInWords({ personId, code, work }: HindranceView, answering: Answering): string {
  const { plan } = answering;
  const why = code === 'busy' && work ? plan('hindrance.busyWith', { work: workInWords(work, answering) }) : plan(`hindrance.${code}`);
  return `${nameOf(personId, answering)} ${why}`;
}

export function relaxInWords(relax: Relaxation | null, answering: Answering): string {
  const { plan, shared, figures } = answering;
  switch (relax?.code) {
    case undefined:
      return plan('relax.none');
    case 'drop-pin':
      return plan('relax.drop-pin');
    case 'skip-break':
      return plan('relax.skip-break', { person: nameOf(relax.personId, answering) });
    case 'later-latest':
      return plan('relax.later-latest', { span: figures.span(relax.byS) });
    case 'teach-skill':
      return plan('relax.teach-skill', { person: nameOf(relax.personId, answering), skill: shared(`skill.${relax.skill}`) });
    case 'one-person-more':
      return relax.skill ? plan('relax.one-person-more-skill', { skill: shared(`skill.${relax.skill}`) }) : plan('relax.one-person-more');
  }
}

/** Why not in time: what the matter is, who was hindered by what, and what would help; empty where all is in time. */
export function lateInWords({ state, lateS, hindrances, relax }: Pick<WhyView, 'state' | 'lateS' | 'hindrances' | 'relax'>, answering: Answering): readonly string[] {
  const { plan } = answering;
  if (state === 'in-time') return [];
  const matter = state === 'unplaced' ? plan('late.unplaced') : plan(`late.${state}`, { span: rounded(lateS, answering) });
  const help = relax ? `${plan('relax.title')} ${relaxInWords(relax, answering)}.` : plan('relax.none');
  return [matter, ...hindrances.map((one) => `${hindranceInWords(one, answering)}.`), help];
}

/** What was supposed, as the head of its answer. */
export function supposedInWords(what: Supposition, answering: Answering): string {
  const { plan, time, names, figures } = answering;
  switch (what.code) {
    case 'person-less':
      return plan('if.said.person-less', { who: nameOf(what.personId, answering), time: time(what.fromAt) });
    case 'person-late':
      return plan('if.said.person-late', { who: nameOf(what.personId, answering), span: figures.span(what.byS) });
    case 'pit-more':
      return plan('if.said.pit-more', { pit: names.pit(what.pitId) ?? answering.say('aPit'), time: time(what.lightAt) });
    case 'break-moved':
      return plan('if.said.break-moved', { who: names.breakOf(what.breakId) ?? answering.say('somebody'), time: time(what.startsAt) });
    case 'work-given':
      return plan('if.said.work-given', { who: peopleInWords(what.people ?? [], answering), work: workInWords(what.work, answering) });
  }
}

/** What would happen, the gravest first: fires past latest safe, work without a place, hours that fail, then the changes. */
export function whatIfInWords(answer: WhatIfView, answering: Answering): { readonly grave: readonly string[]; readonly changes: readonly string[]; readonly costs: string } {
  const { plan, time } = answering;
  const works = (list: readonly Work[]) => [...new Set(list.map((work) => workInWords(work, answering)))].join(', ');
  const hours = answer.failing.filter(({ skill }) => skill === null).map(({ fromAt, untilAt }) => `${time(fromAt)}–${time(untilAt)}`).join(', ');
  const grave = [
    answer.pastLatest.length > 0 ? plan('if.pastLatest', { works: works(answer.pastLatest) }) : '',
    answer.unplaced.length > 0 ? plan('if.unplaced', { works: works(answer.unplaced) }) : '',
    hours ? plan('if.failing', { hours }) : '',
  ].filter(Boolean);
  const { news } = newsOf(answer.changes);
  const costs = costsInWords(answer.costs, answering);
  return { grave, changes: news.map((change) => changeInWords(change, answering)), costs: costs && plan('if.all', { costs }) };
}

/** The work of the next hours that can be asked about, in order of time; what has no place comes first. */
export function workToAsk({ plan }: Pick<YardState, 'plan'>, untilS: number): readonly Work[] {
  if (!plan) return [];
  const soon = plan.assignments.filter(({ startsAt }) => fromIso(startsAt) <= untilS).map(({ work }) => work);
  return [...plan.unplaced.map(({ work }) => work), ...soon];
}

import type { Finding, FindingFigures, HousePart, PartState, PartView } from '@stokehold/domain/contract';
import { ageText } from '../../parts/age.js';
import type { Figures } from '../../units/figures.js';
import type { SayStatusWords } from '../../words/status.js';

export interface Saying {
  readonly say: SayStatusWords;
  readonly figures: Figures;
}
/** A part of the house in words. */
export interface PartSaid {
  readonly part: HousePart | 'server';
  readonly state: PartState;
  readonly name: string;
  readonly stands: string;
  readonly since: string | undefined;
  readonly means: string;
  readonly still: string | undefined;
  readonly toDo: string | undefined;
}

const DAY_MS = 86_400_000;
const STATES: readonly PartState[] = ['down', 'limps', 'works', 'unused'];

/** An instant as short as it can be told from another: the time, the day with it, or the date. */
export function whenText(at: string, now: string, figures: Figures): string {
  const agoMs = Date.parse(now) - Date.parse(at);
  return agoMs < 0.8 * DAY_MS ? figures.time(at) : agoMs < 6 * DAY_MS ? figures.dayTime(at) : figures.date(at);
}

/** Since when, and for how long where that is a minute or more. */
export function sinceText(since: string, now: string, { say, figures }: Saying): string {
  const seconds = (Date.parse(now) - Date.parse(since)) / 1000;
  const time = whenText(since, now, figures);
  return seconds < 60 ? say('since', { time }) : say('sinceFor', { time, span: figures.span(seconds) });
}

/** What is wrong comes first, the worst of it on top; all else keeps its order. */
export const worstFirst = <T extends { readonly state: PartState }>(parts: readonly T[]): readonly T[] => [...parts].sort((one, other) => STATES.indexOf(one.state) - STATES.indexOf(other.state));

/** A part at an instant of the yard's clock. Held to part-said.test.ts */
export function partSaid({ part, state, finding, since, figures: given }: PartView, now: string, saying: Saying): PartSaid {
  const { say, figures } = saying;
  const { count, of, usedFrac, leftBytes, sizeBytes, answerS, aheadS = 0, lastAt, names, elsewhere } = given;
  const values = {
    ...(count !== undefined && { count }),
    ...(of !== undefined && { of }),
    used: usedFrac === undefined ? '' : figures.percent(Math.floor(usedFrac * 100) / 100),
    left: leftBytes === undefined ? '' : figures.bytes(leftBytes),
    size: sizeBytes === undefined ? '' : figures.bytes(sizeBytes),
    ms: answerS === undefined ? '' : figures.count(Math.max(1, answerS * 1000)),
    last: lastAt === undefined ? '' : whenText(lastAt, now, figures),
    names: names?.join(', ') ?? '',
    span: ageText(Math.abs(aheadS)),
  };
  const told = finding === 'probes-rest' ? { ...values, count: of ?? 0 } : values;
  const means = say(meansOf(finding, given), told);
  return {
    part, state, name: say(`part.${part}`), stands: say(`state.${state}`),
    since: since === null ? undefined : sinceText(since, now, saying),
    means: finding === 'tick-late' && lastAt !== undefined ? `${means} ${say('tick-late.lastTold', told)}` : means,
    still: state === 'down' || state === 'limps' ? say(`${finding}.still` as 'disk-full.still', told) : undefined,
    toDo: state === 'works' ? undefined : say(finding === 'database-full' && elsewhere ? 'database-full.doElsewhere' : (`${finding}.do` as 'disk-full.do'), told),
  };
}

/** Which sentence says what a finding means. */
function meansOf(finding: Finding, { elsewhere, aheadS = 0 }: FindingFigures): Parameters<SayStatusWords>[0] {
  if (finding === 'clock-held') return aheadS > 0 ? 'clock-held.ahead' : 'clock-held.back';
  return finding === 'disk-room' && elsewhere ? 'disk-room.elsewhere' : `${finding}.means`;
}

/** What a board finds by itself, when nothing newer comes: the server is away, or its database. */
export function lostSaid(lost: 'server-away' | 'database-lost', last: { readonly age: string; readonly lastAt: string } | undefined, { say, figures }: Saying): PartSaid {
  const of = lost === 'server-away' ? 'server-away' : 'database-away';
  const part = lost === 'server-away' ? 'server' : 'database';
  return {
    part, state: 'down', name: say(`part.${part}`), stands: say('state.down'), since: last && say('since', { time: figures.time(last.lastAt) }),
    means: last ? say(`${lost}.means`, { age: last.age }) : say(`${lost}.never`), still: say(`${of}.still`), toDo: say(`${of}.do`),
  };
}

import type { Problem, YardState } from '@stokehold/domain/contract';
import type { Figures } from '../units/figures.js';
import type { SayRefusalWords } from '../words/refusal.js';

const RULES = [
  'skill', 'shift', 'people', 'earliest', 'break-owner', 'twice', 'two-things-at-once', 'walk', 'absent', 'break-window', 'frozen', 'no-place', 'latest-safe', 'pin', 'order', 'other',
] as const;

interface Knowing {
  readonly say: SayRefusalWords;
  readonly figures: Pick<Figures, 'time' | 'span'>;
  /** The yard, where it is known on this screen: it has the names. */
  readonly state: Pick<YardState, 'people' | 'pits'> | undefined;
}

/** A refusal with the figures it speaks of: what is the matter, what to do, and whom or what it is about. */
export function refusalInWords({ code, values = {} }: Pick<Problem, 'code' | 'values'>, knowing: Knowing): string {
  return [knowing.say(`refusal.${code}`), ...about(values, knowing)].join(' ');
}

type Value = string | number | undefined;

function about(values: Readonly<Record<string, Value>>, { say, figures, state }: Knowing): readonly string[] {
  const { personId, pitId, pit, name, left, pieces, placed, zones, zone, aheadS, doneAt, rule, lateS } = values;
  const who = state?.people.find(({ id }) => id === personId)?.name ?? state?.pits.find((one) => one.pit.id === pitId)?.pit.name ?? pit ?? name;
  const known = RULES.find((one) => one === rule);
  const said: readonly (string | false | undefined)[] = [
    known && say(`rule.${known}`),
    who !== undefined && say('refused.about', { name: who }),
    typeof left === 'number' && left > 0 && say('refused.left', { left }),
    typeof placed === 'number' && typeof pieces === 'number' && say('refused.placed', { placed, pieces }),
    typeof zones === 'number' && say('refused.zones', { zones }),
    typeof zone === 'number' && say('refused.zone', { zone }),
    typeof aheadS === 'number' && say('refused.ahead', { count: Math.ceil(aheadS / 60) }),
    typeof doneAt === 'string' && say('refused.doneAt', { time: figures.time(doneAt) }),
    typeof lateS === 'number' && say('refused.past', { span: figures.span(lateS) }),
  ];
  return said.filter((one) => typeof one === 'string');
}
